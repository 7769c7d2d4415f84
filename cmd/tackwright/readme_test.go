package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/command"
)

// The README shows what the program prints, shortened at "...".
func TestTheReadmeShowsWhatTheDemoPrints(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	folder := t.TempDir()
	if err := os.CopyFS(folder+"/examples/sallowdene", os.DirFS("../../examples/sallowdene")); err != nil {
		t.Fatal(err)
	}
	sheets, err := filepath.Abs("internal/spreadsheet/testdata/fernhill.xlsx")
	if err != nil {
		t.Fatal(err)
	}
	mapping, err := os.ReadFile("internal/importing/testdata/fernhill.toml")
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(folder)
	var printed []string
	env := command.Env{Now: func() time.Time { return time.Date(2026, time.November, 25, 15, 34, 0, 0, time.UTC) }, By: "Nell Ashworthy"}
	for _, line := range []string{
		"plan examples/sallowdene",
		"why examples/sallowdene Clemency --date 2026-10-17",
		"ways examples/sallowdene Lionel --date 2026-10-15",
		"pull examples/sallowdene 2026-10-14",
		"post examples/sallowdene",
		"note examples/sallowdene out Wicket --lame --from 07:40 --now 2026-10-14T07:40",
		"repair examples/sallowdene 2026-10-14 --from 07:40",
	} {
		var out, errOut bytes.Buffer
		if status := command.Run(context.Background(), env, nil, &out, &errOut, strings.Fields(line)); status != command.Done {
			t.Fatalf("%s: %s", line, errOut.String())
		}
		printed = append(printed, strings.Split(out.String(), "\n")...)
	}
	// A spreadsheet in which nobody says the unit of a column.
	if err := os.WriteFile("own.toml", bytes.Replace(mapping, []byte("\"Weight\" = \"weight (kg)\"\n"), nil, 1), 0o666); err != nil {
		t.Fatal(err)
	}
	var out, errOut bytes.Buffer
	if status := command.Run(context.Background(), env, nil, &out, &errOut, []string{"import", "fernhill", sheets, "--mapping", "own.toml"}); status != command.No {
		t.Fatalf("import: %d %s", status, errOut.String())
	}
	printed = append(printed, strings.Split(errOut.String(), "\n")...)
	shown := 0
	for i, block := range strings.Split(string(readme), "```") {
		if i%2 == 0 || strings.HasPrefix(block, "\ngo ") || strings.HasPrefix(block, "\ntackwright ") {
			continue // prose, or what is typed
		}
		for _, line := range strings.Split(block, "\n") {
			if line == "..." || line == "" {
				continue
			}
			shown++
			if !slices.Contains(printed, line) {
				t.Errorf("the README shows what is not printed: %s", line)
			}
		}
	}
	if shown < 60 {
		t.Errorf("the README shows %d lines of output", shown)
	}
}

// The picture in the README is the wall chart of a day of the demo.
func TestTheReadmesPictureIsOfTheDemo(t *testing.T) {
	const picture = "../../examples/wall.svg"
	folder := filepath.Join(t.TempDir(), "sallowdene")
	if err := os.CopyFS(folder, os.DirFS("../../examples/sallowdene")); err != nil {
		t.Fatal(err)
	}
	drawn := filepath.Join(folder, "wall.svg")
	env := command.Env{Now: func() time.Time { return time.Date(2026, time.November, 25, 15, 34, 0, 0, time.UTC) }}
	for _, line := range [][]string{{"plan", folder}, {"sheet", folder, "wall", "2026-10-17", "--to", drawn}} {
		var out, errOut bytes.Buffer
		if status := command.Run(context.Background(), env, nil, &out, &errOut, line); status != command.Done {
			t.Fatalf("%s: %s", line, errOut.String())
		}
	}
	got, err := os.ReadFile(drawn)
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile(picture, got, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(picture); err != nil || !bytes.Equal(got, want) {
		t.Errorf("%s is not what is drawn: go test ./cmd/tackwright -run Picture -update", picture)
	}
}
