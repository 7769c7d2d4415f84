package command

import (
	"bytes"
	"context"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"tackwright/fixtures"
)

// planned is what planning a new folder writes to standard error.
func planned(t *testing.T, terminal bool) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "larkfield")
	env := Env{Now: func() time.Time { return time.Date(2026, 11, 25, 7, 10, 0, 0, time.UTC) }, Terminal: terminal}
	var out, said bytes.Buffer
	for _, args := range [][]string{{"new", dir}, {"plan", dir, "--today", "2026-11-23"}} {
		said.Reset()
		if status := Run(context.Background(), env, nil, &out, &said, args); status != Done {
			t.Fatalf("%q ends with %d: %s", args, status, &said)
		}
	}
	return said.String()
}

// screen is what a terminal of 80 letters shows of a line that is written over
// itself: each letter stands where the last one written there was.
func screen(t *testing.T, text string) string {
	t.Helper()
	var shown []rune
	for _, part := range strings.Split(text, "\r") {
		letters := []rune(part)
		if len(letters) >= 80 {
			t.Errorf("%d letters do not stand on one line: %q", len(letters), part)
		}
		shown = append(letters, shown[min(len(letters), len(shown)):]...)
	}
	return strings.TrimRight(string(shown), " ")
}

func TestOnATerminalALineSaysHowFarEachGoalIsAndIsGoneInTheEnd(t *testing.T) {
	said := planned(t, true)
	line, rest, _ := strings.Cut(said, "planned in")
	if rest != " 0.0 s\n" || screen(t, line) != "" {
		t.Errorf("in the end the terminal shows %q", screen(t, line)+"planned in"+rest)
	}
	if !strings.Contains(line, "\rlooking for a first plan, 0 s") {
		t.Errorf("no line at the start in %q", line)
	}
}

func TestWhereNoTerminalIsNothingIsSaidOfTheWayThere(t *testing.T) {
	if said := planned(t, false); said != "planned in 0.0 s\n" {
		t.Errorf("%q", said)
	}
}

func TestTheLineSaysGoalBestBoundAndSeconds(t *testing.T) {
	var said bytes.Buffer
	now := time.Date(2026, 11, 25, 7, 10, 0, 0, time.UTC)
	p := showProgress(&said, fixtures.New().Week(), func() time.Time { return now })
	p.mu.Lock()
	now = now.Add(12 * time.Second)
	p.mu.Unlock()
	for _, c := range []struct {
		goal string
		want string
	}{
		{"seat a", "rides on the ground: 40 so far, at least 30, 12 s"},
		{"fair a", "twentieths of its allowance that the busiest h...: 40 so far, at least 30, 12 s"},
		{"wishes", "weight of wishes not met: 40 so far, at least 30, 12 s"},
	} {
		p.tell(c.goal, 40, 30)
		p.mu.Lock()
		if got := screen(t, said.String()); got != c.want || utf8.RuneCountInString(got) > 79 {
			t.Errorf("%q, want %q", got, c.want)
		}
		p.mu.Unlock()
	}
	p.end()
	if got := screen(t, said.String()); got != "" {
		t.Errorf("in the end it shows %q", got)
	}
}
