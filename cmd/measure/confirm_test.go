package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

func TestProvedValuesAreConfirmedByASecondSolver(t *testing.T) {
	if _, err := exec.LookPath("clasp"); err != nil {
		t.Log("clasp is not installed here")
		return
	}
	status, out, complaints := measured(t, "confirm", "--weeks", "30")
	if status != 0 || !strings.Contains(out, "weeks:   30 with ") || !strings.Contains(out, "0 not proved, 0 different") || complaints != "" {
		t.Errorf("status %d, %s\n%s", status, complaints, out)
	}
}

// A peer that finds one ride more on the ground than we prove is told, week by week.
func TestADifferentValueIsStatus1(t *testing.T) {
	dir := t.TempDir()
	script := "#!/bin/sh\necho '{\"Result\": \"OPTIMUM FOUND\", \"Models\": {\"Costs\": [99, 0, 0, 0, 0, 0, 0, 0, 0, 0]}}'\n"
	if err := os.WriteFile(filepath.Join(dir, "clasp"), []byte(script), 0o777); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir)
	status, out, complaints := measured(t, "confirm", "--weeks", "2")
	if status != 1 || !strings.Contains(complaints, "week 0 (random 0: ") || !strings.Contains(complaints, "and clasp 99") {
		t.Errorf("status %d, %s\n%s", status, complaints, out)
	}
}

func TestWithoutASecondSolverNothingIsConfirmedAndItSaysSo(t *testing.T) {
	t.Setenv("PATH", t.TempDir())
	if status, out, _ := measured(t, "confirm"); status != 0 || !strings.Contains(out, "nothing is confirmed: clasp is not installed") {
		t.Errorf("status %d, %s", status, out)
	}
}
