package paper

import (
	"strings"
	"unicode"

	"golang.org/x/text/width"
)

// Columns is how many columns of a monospaced page the text takes: two for a
// wide rune, none for a combining mark. Runes that are wide in East Asia alone
// count one, so that a page is the same whatever the computer's locale.
func Columns(s string) int {
	n := 0
	for _, r := range s {
		n += runeColumns(r)
	}
	return n
}

func runeColumns(r rune) int {
	switch {
	case unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf), 0x1160 <= r && r <= 0x11FF: // vowels and finals of Hangul join their syllable
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	}
	return 1
}

// Pad fills the text with spaces up to n columns.
func Pad(s string, n int) string { return s + strings.Repeat(" ", max(0, n-Columns(s))) }

// Plain is the text on one line, with nothing in it that could move the pen:
// control characters, and marks that turn the direction of writing.
func Plain(s string) string {
	s = strings.Map(func(r rune) rune {
		switch {
		case unicode.IsControl(r), r == 0x2028, r == 0x2029:
			return ' '
		case 0x202A <= r && r <= 0x202E, 0x2066 <= r && r <= 0x2069:
			return -1
		}
		return r
	}, s)
	return strings.Join(strings.Fields(s), " ")
}

// Wrap breaks the text into lines of at most n columns, between words where it
// can. There is at least one line.
func Wrap(s string, n int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(Plain(s)) {
		if line != "" && Columns(line)+1+Columns(word) > n {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		for Columns(word) > n {
			at := split(word, n)
			lines, word = append(lines, word[:at]), word[at:]
		}
		line += word
	}
	return append(lines, line)
}

// split is where a word is cut after at most n columns; a combining mark stays
// with the letter that it sits on.
func split(word string, n int) int {
	for at, r := range word {
		if n -= runeColumns(r); n < 0 && at > 0 {
			return at
		}
	}
	return len(word)
}
