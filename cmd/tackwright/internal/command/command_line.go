package command

import (
	"slices"
	"strings"
)

// commandLine is another command as an answer offers it.
type commandLine struct {
	name         string
	said         []string
	flags, about []string // about: which ride it is about
}

func (l *commandLine) with(flags ...string) *commandLine {
	l.flags = append(l.flags, flags...)
	return l
}

// words are what is typed behind tackwright, by. Where a name begins as a flag does,
// all that is no flag stands behind two dashes.
func (l *commandLine) words(by ...string) []string {
	flags := slices.Concat(l.flags, l.about, by)
	if slices.ContainsFunc(l.said, func(s string) bool { return strings.HasPrefix(s, "-") }) {
		return slices.Concat([]string{l.name}, flags, []string{"--"}, l.said)
	}
	return slices.Concat([]string{l.name}, l.said, flags)
}

// typed is the line as a person types it.
func (l *commandLine) typed(by ...string) string {
	line := "tackwright"
	for _, w := range l.words(by...) {
		line += " " + typed(w)
	}
	return line
}
