package folder

import (
	"strings"
	"unicode"
)

// nearest is the one of known that is written most like word, or "" where none
// comes near: more than a third of it would have to be typed anew.
func nearest(word string, known []string) string {
	best, at := "", len([]rune(word))/3+1
	for _, k := range known {
		if d := distance(strings.ToLower(word), strings.ToLower(k)); d <= at && (best == "" || d < at) {
			best, at = k, d
		}
	}
	if best == "" { // half a name is near to the whole: "Ada" to "Ada Grey"
		for _, k := range known {
			if len(word) > 2 && strings.HasPrefix(strings.ToLower(k), strings.ToLower(word)) {
				return k
			}
		}
	}
	return best
}

// distance is how many letters must be put in, left out, changed or swapped
// with their neighbour to make b from a.
func distance(a, b string) int {
	s, t := []rune(a), []rune(b)
	older, old, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range row {
		row[j] = j
	}
	for i := range s {
		older, old, row = old, row, older
		row[0] = i + 1
		for j := range t {
			change := 1
			if s[i] == t[j] {
				change = 0
			}
			row[j+1] = min(old[j]+change, old[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && s[i] == t[j-1] && s[i-1] == t[j] {
				row[j+1] = min(row[j+1], older[j-1]+1)
			}
		}
	}
	return row[len(t)]
}

func isASCII(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r > unicode.MaxASCII }) < 0
}

// looksLike reports whether two names that differ in their bytes look the same:
// one writes an accented letter as one character, the other as a letter and an
// accent that stands on it (as file names on some computers are written).
func looksLike(a, b string) bool {
	if a == b || isASCII(a) || isASCII(b) {
		return false
	}
	s, t := letters(a), letters(b)
	if len(s) != len(t) {
		return false
	}
	for i := range s {
		one, other := s[i], t[i]
		if len(one) < len(other) {
			one, other = other, one // the one with an accent apart is longer
		}
		if one != other && !(marked(one) && !marked(other) && other[0] > unicode.MaxASCII) {
			return false
		}
	}
	return true
}

// letters splits a name into letters, each with the accents that stand on it.
func letters(s string) []string {
	var out []string
	for _, r := range s {
		if unicode.Is(unicode.Mn, r) && len(out) > 0 {
			out[len(out)-1] += string(r)
		} else {
			out = append(out, string(r))
		}
	}
	return out
}

func marked(letter string) bool { return len([]rune(letter)) > 1 }
