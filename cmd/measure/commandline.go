package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"time"
)

// build makes the program that is measured by its command line.
func build(ctx context.Context, dir string) (string, error) {
	program := filepath.Join(dir, "tackwright")
	cmd := exec.CommandContext(ctx, "go", "build", "-o", program, "tackwright/cmd/tackwright")
	if complaints, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("tackwright cannot be built (%w); with --tackwright FILE one that is there is measured\n%s", err, complaints)
	}
	return program, nil
}

// commandLine notes the mishap in a folder with three years of posted weeks, and has the program mend and
// post the date: from the start of its process to the end, reading and writing included, until all is
// proved.
func (t task) commandLine(ctx context.Context, m *mishap) (outcome, error) {
	t.Part = "typed"
	dir, err := os.MkdirTemp("", "measure")
	if err != nil {
		return outcome{}, err
	}
	defer os.RemoveAll(dir)
	if err := writeCentre(dir, m.w, m.plan); err != nil {
		return outcome{}, err
	}
	centre := filepath.Join(dir, "centre")
	by, now := m.c.Persons[0].Name, m.at.Date.String()+"T"+m.at.Minute.String()
	if _, _, err := t.run(ctx, "note", centre, "out", m.lame.Name, "--lame", "--from", m.at.Minute.String(), "--now", now, "--by", by); err != nil {
		return outcome{}, err
	}
	start := time.Now()
	said, ended, err := t.run(ctx, "repair", centre, m.at.Date.String(), "--now", now, "--limit", t.Limit.String(), "--post", "--by", by, "--json")
	if err != nil {
		return outcome{}, err
	}
	o := outcome{Task: t, Rides: len(m.c.Repair(m.at.Date, 1, m.at).Rides), Horses: len(m.c.Horses), Seconds: time.Since(start).Seconds()}
	o.CPU, _ = used(ended)
	var answer struct {
		Goals  []goal
		Posted int
	}
	if err := json.Unmarshal(said, &answer); err != nil {
		return outcome{}, err
	}
	if answer.Posted != yearsBehind+2 {
		return outcome{}, fmt.Errorf("what stands is version %d, after %d posted before", answer.Posted, yearsBehind+1)
	}
	o.Goals = answer.Goals
	return o, nil
}

// run runs the program and returns what it says.
func (t task) run(ctx context.Context, args ...string) ([]byte, *os.ProcessState, error) {
	cmd := exec.CommandContext(ctx, t.Program, args...)
	var out, complaints bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &complaints
	if err := cmd.Run(); err != nil {
		return nil, nil, fmt.Errorf("tackwright %s: %w\n%s", args[0], err, tail(complaints.String()))
	}
	return out.Bytes(), cmd.ProcessState, nil
}
