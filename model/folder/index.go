package folder

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"

	"github.com/pelletier/go-toml/v2/unstable"
)

// index finds the nouns of a kind by their names and by their old ones.
type index[T any] struct {
	kind  string // "horse"
	by    map[string]*T
	at    map[string]Span // of each name
	known []string        // in the order of the files
	gone  map[string]*T   // named by history alone
}

func newIndex[T any](kind string) index[T] {
	return index[T]{kind: kind, by: map[string]*T{}, at: map[string]Span{}, gone: map[string]*T{}}
}

// add takes in a name, or an old one, of a noun and reports one that is taken.
func (x *index[T]) add(r *reader, noun *T, name string, at Span) {
	if old := x.by[name]; old != nil {
		r.mistake(at, fmt.Sprintf("the %s %q is here twice: it is at %s as well", x.called(), name, x.at[name]),
			"give one of them another "+x.byWhat())
		return
	}
	for _, k := range x.known {
		if looksLike(k, name) || strings.EqualFold(k, name) {
			r.mistake(at, fmt.Sprintf("the %s %q cannot be told from %q at %s", x.called(), name, k, x.at[k]),
				"give one of them another "+x.byWhat()+", or copy the one from the other")
			break
		}
	}
	x.by[name], x.at[name] = noun, at
	x.known = append(x.known, name)
}

// called is what messages call a noun of the kind, before its name.
func (x *index[T]) called() string {
	if x.kind == "tack" {
		return "tag"
	}
	return x.kind
}

// byWhat is what nouns of the kind are told apart by.
func (x *index[T]) byWhat() string {
	if x.kind == "tack" {
		return "tag"
	}
	return "name"
}

// find is the noun of a name, or reports that there is none. What history names
// may be gone: it is then a noun that the centre does not have.
func (x *index[T]) find(r *reader, n *node, make func(name string) *T) (*T, bool) {
	if v := x.by[n.text]; v != nil {
		return v, true
	}
	if r.history {
		if x.gone[n.text] == nil {
			x.gone[n.text] = make(n.text)
		}
		return x.gone[n.text], true
	}
	mend := fmt.Sprintf("the folder has none yet: add a [[%s]]", x.kind)
	if near := nearest(n.text, x.known); near != "" {
		mend = fmt.Sprintf("did you mean %q?", near)
	} else if len(x.known) > 0 {
		mend = fmt.Sprintf("add a [[%s]] of that %s, or mend it", x.kind, x.byWhat())
	}
	message := fmt.Sprintf("there is no %s %q", x.called(), n.text)
	for _, k := range x.known {
		if looksLike(k, n.text) {
			message += ": the name at " + x.at[k].String() + " looks the same but is made of other characters"
			mend = "copy the name from there"
			break
		}
	}
	r.mistake(n.span(), message, mend)
	return nil, false
}

// to is a form that names a noun of the index.
func to[T any](kind, like string, in func(*reader) *index[T], make func(name string) *T) form[*T] {
	f := form[*T]{words: "the name of a " + kind, like: like, shape: shape{names: kind}}
	if strings.ContainsRune("aeiou", rune(kind[0])) {
		f.words = "the name of an " + kind
	}
	if kind == "tack" {
		f.words = "the tag of a piece"
	}
	f.read = func(r *reader, n *node) (*T, bool) {
		if n.kind != unstable.String {
			notA(r, n, f)
			return nil, false
		}
		return in(r).find(r, n, make)
	}
	return f
}

// badName says what is wrong with a name; "" is nothing.
func badName(s string) string {
	switch {
	case strings.TrimSpace(s) == "":
		return "a name cannot be empty"
	case strings.TrimSpace(s) != s:
		return "a name does not begin or end with a blank"
	}
	for _, c := range s {
		if unicode.IsControl(c) || c == unicode.ReplacementChar {
			return "a name stands on one line and has no control characters"
		}
	}
	return ""
}

// goneNames are the names that records have and the folder has not.
func (x *index[T]) goneNames() []string { return slices.Sorted(maps.Keys(x.gone)) }
