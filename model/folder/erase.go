package folder

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"
	"golang.org/x/text/unicode/norm"
)

// eraser takes a rider's names out of texts.
type eraser struct {
	names []*regexp.Regexp
	as    string // what stands in their place
}

// newEraser looks for names in any case of letters and in both ways in which
// accents are stored.
func newEraser(names []string) *eraser {
	e := &eraser{}
	for _, name := range names {
		var forms []string
		for _, form := range []string{name, norm.NFC.String(name), norm.NFD.String(name)} {
			if !slices.Contains(forms, form) {
				forms = append(forms, form)
				words := strings.Fields(form)
				for i := range words {
					words[i] = regexp.QuoteMeta(words[i])
				}
				e.names = append(e.names, regexp.MustCompile(`(?i)`+strings.Join(words, `\s+`)))
			}
		}
	}
	return e
}

// spans are where names stand in a text, as words of their own.
func (e *eraser) spans(s string) [][]int {
	var all [][]int
	for _, re := range e.names {
		for _, at := range re.FindAllStringIndex(s, -1) {
			before, _ := utf8.DecodeLastRuneInString(s[:at[0]])
			after, _ := utf8.DecodeRuneInString(s[at[1]:])
			if !ofAWord(before) && !ofAWord(after) {
				all = append(all, at)
			}
		}
	}
	slices.SortFunc(all, func(a, b []int) int { return a[0] - b[0] })
	return all
}

func ofAWord(r rune) bool {
	return r != utf8.RuneError && (unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.Mn, r))
}

func (e *eraser) in(s string) bool { return len(e.spans(s)) > 0 }

// mayBeIn reports whether a file can hold a name: as it stands, or with signs
// written by their numbers.
func (e *eraser) mayBeIn(data []byte) bool {
	return e.in(string(data)) || bytes.Contains(data, []byte(`\u`)) || bytes.Contains(data, []byte(`\U`)) || bytes.Contains(data, []byte(`\x`))
}

// replaced is the text with the neutral name in place of the names.
func (e *eraser) replaced(s string) string {
	var b strings.Builder
	end := 0
	for _, at := range e.spans(s) {
		if at[0] < end {
			continue
		}
		b.WriteString(s[end:at[0]] + e.as)
		end = at[1]
	}
	return b.String() + s[end:]
}

// edit puts text in the place of the bytes [start, end) of a file.
type edit struct {
	start, end int
	text       string
}

// apply makes edits, the outermost where one lies within another.
func apply(data []byte, edits []edit) []byte {
	slices.SortStableFunc(edits, func(a, b edit) int {
		if a.start != b.start {
			return a.start - b.start
		}
		return b.end - a.end
	})
	var out []byte
	at := 0
	for _, x := range edits {
		if x.start < at {
			continue
		}
		out = append(append(out, data[at:x.start]...), x.text...)
		at = x.end
	}
	return append(out, data[at:]...)
}

// outOfCentre takes a rider out of one of the centre's own files: her table and
// every entry that names her, and her name out of the remarks.
func (e *eraser) outOfCentre(name string, data []byte) []byte {
	if !e.mayBeIn(data) {
		return data
	}
	root, _ := parse(name, data)
	var edits []edit
	cut := func(n *node) { // an item of a list
		if n.made == byHeader {
			start, end := n.block()
			edits = append(edits, edit{start, end, ""})
		} else {
			start, end := n.listed()
			edits = append(edits, edit{start, end, ""})
		}
	}
	is := func(p *pair) bool { return p != nil && p.val.kind == unstable.String && e.isName(p.val.text) }
	var walk func(n *node)
	walk = func(n *node) {
		for _, x := range n.items {
			switch {
			case x.kind == unstable.String && e.isName(x.text), is(x.get("rider")):
				cut(x)
			default:
				walk(x)
			}
		}
		for _, p := range n.pairs {
			switch {
			case n == root && p.key == "rider" && p.val.kind == unstable.Array:
				for _, x := range p.val.items {
					if is(x.get("name")) {
						cut(x)
					} else {
						walk(x)
					}
				}
			case p.key == "riders" && is(p):
				edits = append(edits, edit{p.val.start, p.val.end, "[]"})
			default:
				walk(p.val)
			}
		}
		if n.kind == unstable.String && e.in(n.text) {
			edits = append(edits, edit{n.start, n.end, quote(e.replaced(n.text))})
		}
	}
	walk(root)
	return []byte(e.replaced(string(apply(data, edits))))
}

// isName reports whether a text is a name and no more.
func (e *eraser) isName(s string) bool {
	at := e.spans(s)
	return len(at) > 0 && at[0][0] == 0 && at[0][1] == len(s)
}

// outOfRecord takes a rider's name out of a file of the program's: the neutral
// one stands for it, and what was said about her is gone.
func (e *eraser) outOfRecord(name string, data []byte) []byte {
	root, _ := parse(name, data)
	var edits []edit
	var walk func(n *node, key string)
	walk = func(n *node, key string) {
		for _, x := range n.items {
			walk(x, key)
		}
		about := false // her
		if p := n.get("rider"); p != nil {
			about = e.isName(p.val.text)
		}
		for _, p := range n.pairs {
			switch {
			case about && p.key == "ground":
				edits = append(edits, edit{p.val.start, p.val.end, "[]"})
			case about && p.key == "words":
				edits = append(edits, edit{p.val.start, p.val.end, `""`})
			case n != root && p.key == "text" && p.val.kind == unstable.String && strings.HasPrefix(name, "posted/"):
				clean := e.outOfCentre
				if file := n.get("file"); file != nil && isStanding(file.val.text) {
					clean = e.outOfRecord
				}
				if text := clean(name, []byte(p.val.text)); string(text) != p.val.text {
					edits = append(edits, edit{p.val.start, p.val.end, block(string(text))})
				}
			case p.key == "text" && p.val.kind == unstable.String && strings.HasPrefix(name, "history/"):
				if e.mayBeIn([]byte(p.val.text)) { // what would bring her back is not kept
					edits = append(edits, edit{p.start, p.val.end, "# what it held is not kept: it named a rider who is forgotten"})
				}
			default:
				walk(p.val, p.key)
			}
		}
		if n.kind == unstable.String && e.in(n.text) {
			edits = append(edits, edit{n.start, n.end, quote(e.replaced(n.text))})
		}
	}
	walk(root, "")
	return []byte(e.replaced(string(apply(data, edits))))
}
