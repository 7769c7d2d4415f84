package main

import (
	"bytes"
	"context"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/command"
)

var words = regexp.MustCompile(`"[^"]*"|\S+`)

// Each runs at the demo centre with its week planned, and posted where it goes by that.
// To import needs a spreadsheet, and the page runs until it is
// stopped: their own tests run them.
func TestTheExampleOfEachCommandsHelpRuns(t *testing.T) {
	demo := os.DirFS("../../examples/sallowdene")
	env := command.Env{Now: func() time.Time { return time.Date(2026, time.October, 12, 8, 0, 0, 0, time.UTC) }, By: "Nell Ashworthy"}
	for file, text := range command.Manual() {
		name := strings.TrimSuffix(strings.TrimPrefix(file, "doc_"), ".go")
		_, example, ok := strings.Cut(text, "Example:\n\n  tackwright ")
		if !ok || name == "import" || name == "desk" {
			continue
		}
		t.Run(name, func(t *testing.T) {
			example, _, _ := strings.Cut(example, "\n")
			folder := t.TempDir()
			if err := os.CopyFS(folder+"/examples/sallowdene", demo); err != nil {
				t.Fatal(err)
			}
			t.Chdir(folder)
			lines := []string{"plan examples/sallowdene", example}
			if name == "repair" || name == "undo" || name == "calendar" {
				lines = []string{"plan examples/sallowdene", "post examples/sallowdene", example}
			}
			for _, line := range lines {
				var args []string
				for _, w := range words.FindAllString(line, -1) {
					args = append(args, strings.Trim(w, `"`))
				}
				var out, errOut bytes.Buffer
				if status := command.Run(context.Background(), env, nil, &out, &errOut, args); status != command.Done {
					t.Errorf("tackwright %s: ends with %d: %s", line, status, errOut.String())
				}
			}
		})
	}
}
