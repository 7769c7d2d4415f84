package main

import (
	"bytes"
	"context"
	"os"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/command"
)

// The demo centre written as sheets and imported into a new folder is the same
// centre: its week is planned the same, byte for byte, and check finds the same.
func TestTheDemoCentreComesBackFromItsSheets(t *testing.T) {
	demo, err := os.OpenRoot("../../examples/sallowdene")
	if err != nil {
		t.Fatal(err)
	}
	defer demo.Close()
	dir := t.TempDir()
	t.Chdir(dir)
	for _, d := range []string{"demo", "fromxlsx", "fromcsv"} {
		if err := os.CopyFS(d, demo.FS()); err != nil {
			t.Fatal(err)
		}
	}
	said := func(line ...string) string {
		t.Helper()
		var out, errOut bytes.Buffer
		env := command.Env{Now: func() time.Time { return time.Date(2026, time.November, 25, 15, 34, 0, 0, time.UTC) }, By: "Nell Ashworthy"}
		if status := command.Run(context.Background(), env, nil, &out, &errOut, line); status != command.Done {
			t.Fatalf("%s: %s", line, errOut.String())
		}
		return out.String()
	}
	said("import", "demo", "--template", "demo.xlsx")
	said("import", "demo", "--template", "sheets")
	plan := said("plan", "demo", "--json")
	for d, file := range map[string]string{"fromxlsx": "demo.xlsx", "fromcsv": "sheets"} {
		before, err := os.ReadDir(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range before { // its records stay
			if strings.HasSuffix(e.Name(), ".toml") {
				if err := os.Remove(d + "/" + e.Name()); err != nil {
					t.Fatal(err)
				}
			}
		}
		said("import", d+"/new", file) // a folder of its own, so that nothing of the old one is read
		after, err := os.ReadDir(d + "/new")
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range after {
			if strings.HasSuffix(e.Name(), ".toml") {
				if err := os.Rename(d+"/new/"+e.Name(), d+"/"+e.Name()); err != nil {
					t.Fatal(err)
				}
			}
		}
		if err := os.RemoveAll(d + "/new"); err != nil {
			t.Fatal(err)
		}
		if got := strings.ReplaceAll(said("plan", d, "--json"), d+"/", "demo/"); got != plan {
			t.Errorf("%s: another plan:\n%s", d, got)
		}
		for _, look := range []string{"check", "due"} {
			if got, want := messages(said(look, d, "--json")), messages(said(look, "demo", "--json")); got != want {
				t.Errorf("%s: %s says otherwise:\n%s\nnot\n%s", d, look, got, want)
			}
		}
	}
}

// messages are the lines of an answer that say what is found, wherever it stands.
func messages(answer string) string {
	var all []string
	for _, line := range strings.Split(answer, "\n") {
		if strings.Contains(line, `"message"`) || strings.Contains(line, `"what"`) {
			all = append(all, line)
		}
	}
	return strings.Join(all, "\n")
}
