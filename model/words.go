package model

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Count is a number with what it counts: "1 ride", "2 rides".
func Count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Sentence has words begin with a capital and end with a stop or a mark of their own; none stay none.
func Sentence(words string) string {
	first, n := utf8.DecodeRuneInString(words)
	if n == 0 {
		return ""
	}
	words = string(unicode.ToUpper(first)) + words[n:]
	if strings.ContainsAny(words[len(words)-1:], ".?!") {
		return words
	}
	return words + "."
}
