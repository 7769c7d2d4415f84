package folder

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Span is a place in a file of the folder: the bytes [Start, End) of File. The
// zero Span is no place at all.
type Span struct {
	File  string `json:"file,omitempty"` // relative to the folder, with "/" between its parts
	Start int    `json:"start"`          // bytes
	End   int    `json:"end"`
	Line  int    `json:"line,omitempty"`   // of Start, from 1
	Col   int    `json:"column,omitempty"` // counted in letters, not bytes
}

// String is the place as "horses.toml:12:3".
func (s Span) String() string { return fmt.Sprintf("%s:%d:%d", s.File, s.Line, s.Col) }

// Trouble is something that is wrong in a folder, or missing from it.
//
// A mistake (cannot be read, dangling, duplicate, impossible) stops every
// command that solves. A finding (missing, expired, in conflict) is shown and
// planned around.
type Trouble struct {
	Mistake bool   `json:"mistake"`
	Span    Span   `json:"span"`
	Message string `json:"message"`         // what is wrong, in words
	Mend    string `json:"mend,omitempty"`  // how to put it right; "" where the message says it all
	Waits   int    `json:"waits,omitempty"` // of a finding: rides of the coming week that wait for it
	Line    string `json:"text,omitempty"`  // the line of the file that Span starts in
	Noun    any    `json:"-"`               // the noun of the model that it is about; nil: none
}

// String is the trouble as people read it: the place and the message, the line,
// a caret under the place, and how to mend it.
func (t Trouble) String() string {
	var b strings.Builder
	if t.Span.File != "" {
		b.WriteString(t.Span.File)
		if t.Span.Line > 0 {
			fmt.Fprintf(&b, ":%d:%d", t.Span.Line, t.Span.Col)
		}
		b.WriteString(": ")
	}
	b.WriteString(t.Message)
	switch {
	case t.Waits == 1:
		b.WriteString(" (1 ride of the coming week waits for it)")
	case t.Waits > 1:
		fmt.Fprintf(&b, " (%d rides of the coming week wait for it)", t.Waits)
	}
	if t.Span.Line > 0 {
		fmt.Fprintf(&b, "\n    %s\n    %s", t.Line, t.carets())
	}
	if t.Mend != "" {
		b.WriteString("\n  " + t.Mend)
	}
	return b.String()
}

// carets are the signs beneath the span, kept under it by the tabs of the line.
// Accents that stand on the letter before take no room.
func (t Trouble) carets() string {
	var b strings.Builder
	line := []rune(t.Line)
	col := min(t.Span.Col-1, len(line))
	for _, r := range line[:col] {
		switch {
		case r == '\t':
			b.WriteByte('\t')
		case !unicode.Is(unicode.Mn, r):
			b.WriteByte(' ')
		}
	}
	n, left := 0, t.Span.End-t.Span.Start
	for _, r := range line[col:] {
		if left <= 0 {
			break
		}
		left -= len(string(r))
		if !unicode.Is(unicode.Mn, r) {
			n++
		}
	}
	return b.String() + strings.Repeat("^", max(n, 1))
}

// sortTroubles puts mistakes before findings, and each in the order of places;
// findings for which more rides wait come first.
func sortTroubles(ts []Trouble) {
	slices.SortStableFunc(ts, func(a, b Trouble) int {
		switch {
		case a.Mistake != b.Mistake:
			if a.Mistake {
				return -1
			}
			return 1
		case a.Waits != b.Waits:
			return b.Waits - a.Waits
		case a.Span.File != b.Span.File:
			return strings.Compare(a.Span.File, b.Span.File)
		case a.Span.Start != b.Span.Start:
			return a.Span.Start - b.Span.Start
		}
		return strings.Compare(a.Message, b.Message)
	})
}
