package folder

import (
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// The folder is described once, by the tables of the keys_*.go files. Reading,
// the nearest known key in a message, and the page of every key are all made
// from that description.

// form is how people write one kind of value.
type form[V any] struct {
	words string          // "a weight"
	like  string          // how it is written, for messages and the page
	about string          // what else the page says of the form; "" nothing
	sub   *sheet          // of a form that is, or may be, a table: its keys
	kinds []unstable.Kind // of values that it reads, where [either] is to choose
	read  func(r *reader, n *node) (V, bool)
	shape
}

// shape is what a column of a spreadsheet goes by.
type shape struct {
	many    bool     // a list
	choices []string // it is one of these words; nil: of any
	free    bool     // other words will do as well
	names   string   // it names a noun of this table: "horse"; "" none
}

// key of a table whose nouns are Ts.
type key[T any] struct {
	line
	read func(r *reader, n *node, into *T)
}

// line is what the page says of a key.
type line struct {
	name    string
	must    bool // the table is nothing without it
	words   string
	like    string
	about   string
	means   string
	lacking string // what holds where the key is not there
	example string
	sub     *sheet
	try     func(r *reader, n *node) // reads a value and forgets it
	shape
}

// sheet is what the page says of a table.
type sheet struct {
	head  string // as the file writes it: "[[horse]]"
	about string
	lines []line
}

// table of keys that fill a T.
type table[T any] struct {
	head  string
	about string
	keys  []key[T]
}

// is makes a key: its name, how its value is written, what it means, what holds
// where it is not there ("" where it must be there), and where the value goes.
func is[T, V any](name string, f form[V], means, lacking string, set func(*T, V)) key[T] {
	return key[T]{
		line: line{name: name, must: lacking == "", words: f.words, like: f.like, about: f.about,
			means: means, lacking: lacking, sub: f.sub, shape: f.shape, try: func(r *reader, n *node) { f.read(r, n) }},
		read: func(r *reader, n *node, into *T) {
			if v, ok := f.read(r, n); ok {
				set(into, v)
			}
		},
	}
}

// eg gives the key an example of its own, for messages and the page.
func (k key[T]) eg(example string) key[T] {
	k.example = example
	return k
}

func (t *table[T]) sheet() *sheet {
	s := &sheet{head: t.head, about: t.about}
	for _, k := range t.keys {
		s.lines = append(s.lines, k.line)
	}
	return s
}

// read fills into from a table of a file. It reports unknown and missing keys,
// and whether none of these and no other mistake was met.
func (t *table[T]) read(r *reader, n *node, into *T) bool {
	before := len(r.troubles)
	seen := make([]bool, len(t.keys))
	for _, p := range n.pairs {
		i := t.index(p.key)
		if i < 0 {
			r.unknownKey(p, t.head, t.names())
			if i = t.index(nearest(p.key, t.names())); i >= 0 {
				seen[i] = true // it is there, misspelt
			}
			continue
		}
		seen[i] = true
		t.keys[i].read(r, p.val, into)
	}
	for i, k := range t.keys {
		if k.must && !seen[i] && !n.torn {
			r.mistake(n.span(), fmt.Sprintf("%s has no %s", t.head, k.name), fmt.Sprintf("add a line such as: %s = %s", k.name, k.shown()))
		}
	}
	return len(r.troubles) == before
}

func (t *table[T]) key(name string) *key[T] {
	if i := t.index(name); i >= 0 {
		return &t.keys[i]
	}
	return nil
}

func (t *table[T]) index(name string) int {
	return slices.IndexFunc(t.keys, func(k key[T]) bool { return k.name == name })
}

func (t *table[T]) names() []string {
	var names []string
	for _, k := range t.keys {
		names = append(names, k.name)
	}
	return names
}

// shown is the key's example, or else the first way of writing its value.
func (l line) shown() string {
	if l.example != "" {
		return l.example
	}
	first, _, _ := strings.Cut(l.like, " or ")
	return first
}

// kindWords say what a value is, for messages.
var kindWords = map[unstable.Kind]string{
	unstable.String: "a text", unstable.Bool: "true or false", unstable.Float: "a number", unstable.Integer: "a number",
	unstable.LocalDate: "a date", unstable.LocalTime: "a time of day", unstable.LocalDateTime: "a date and time",
	unstable.DateTime: "a date and time in a time zone", unstable.Array: "a list", unstable.InlineTable: "a table",
}

// didYouMean is how to mend a word that is none of the known ones.
func didYouMean(word string, known []string) string {
	if near := nearest(word, known); near != "" {
		return fmt.Sprintf("did you mean %q?", near)
	}
	if len(known) > 12 {
		return ""
	}
	return `it is one of: "` + strings.Join(known, `", "`) + `"`
}

// notA reports a value of another type than the form's.
func notA[V any](r *reader, n *node, f form[V]) {
	if n.kind == unstable.Invalid {
		return // reported when the file was parsed
	}
	what := kindWords[n.kind]
	message := fmt.Sprintf("%s is %s; here belongs %s", n.shown(), what, f.words)
	if n.kind == unstable.Array || n.kind == unstable.InlineTable || n.kind == unstable.Bool {
		message = fmt.Sprintf("this is %s; here belongs %s", what, f.words)
	}
	r.mistake(n.span(), message, "write it like "+f.like)
}

// shown is a plain value as the file writes it.
func (n *node) shown() string {
	if n.kind == unstable.String {
		return fmt.Sprintf("%q", n.text)
	}
	return n.text
}

// textForm is a form that is written as a text and read by parse.
func textForm[V any](words, like, about string, parse func(string) (V, error)) form[V] {
	f := form[V]{words: words, like: like, about: about, kinds: []unstable.Kind{unstable.String}}
	f.read = func(r *reader, n *node) (v V, ok bool) {
		if n.kind != unstable.String {
			notA(r, n, f)
			return v, false
		}
		v, err := parse(n.text)
		if err == nil {
			return v, true
		}
		message := fmt.Sprintf("%q is not %s", n.text, words)
		if err.Error() != "" {
			message += ": " + err.Error()
		}
		r.mistake(n.span(), message, "write it like "+like)
		return v, false
	}
	return f
}

// list is a list of values of a form; one value alone counts as a list of it.
func list[V any](one form[V], words string) form[[]V] {
	f := form[[]V]{words: words, like: "[" + one.like + "]", about: one.about, sub: one.sub, shape: one.shape}
	f.many = true
	if first, _, more := strings.Cut(one.like, " or "); more {
		f.like = "[" + first + "]"
	}
	f.read = func(r *reader, n *node) ([]V, bool) {
		items := n.items
		if n.kind != unstable.Array {
			items = []*node{n}
		}
		vs, ok := make([]V, 0, len(items)), true
		for _, item := range items {
			v, good := one.read(r, item)
			item.bad = !good
			if ok = ok && good; good {
				vs = append(vs, v)
			}
		}
		return vs, ok || len(vs) > 0
	}
	return f
}

// tableForm is a form that is written as a table.
func tableForm[T any](words, like string, t *table[T]) form[T] {
	f := form[T]{words: words, like: like, sub: t.sheet()}
	f.read = func(r *reader, n *node) (v T, ok bool) {
		if n.kind != unstable.InlineTable {
			notA(r, n, f)
			return v, false
		}
		ok = t.read(r, n, &v)
		return v, ok
	}
	return f
}

// or is a form that may be written in one way as a plain value, in another as a
// table.
func or[V any](plain, asTable form[V], like string) form[V] {
	return form[V]{
		words: plain.words, like: like, about: plain.about, sub: asTable.sub, shape: plain.shape,
		read: func(r *reader, n *node) (V, bool) {
			if n.kind == unstable.InlineTable {
				return asTable.read(r, n)
			}
			return plain.read(r, n)
		},
	}
}

// within is the form with values outside [lo, hi] refused as impossible. Where
// why has two places for them, they are shown in the units of the folder, and so
// is the value.
func within[V ~int | ~int32 | ~int64](f form[V], lo, hi V, why string) form[V] {
	inner := f.read
	f.read = func(r *reader, n *node) (V, bool) {
		v, ok := inner(r, n)
		if ok && (v < lo || v > hi) {
			value, words := n.shown(), why
			if units := r.centre.House.Units; strings.Contains(why, "%s") {
				words = fmt.Sprintf(why, inUnits(lo, units), inUnits(hi, units))
				if _, unit, _ := strings.Cut(inUnits(v, units), " "); !strings.Contains(n.text, unit) {
					value += " (" + inUnits(v, units) + ")"
				}
			}
			r.mistake(n.span(), fmt.Sprintf("%s is impossible: %s", value, words), "mend the figure or its unit; it is written like "+f.like)
			return v, false
		}
		return v, ok
	}
	return f
}

// oneOf is one of a few words.
func oneOf[V ~string](words string, all ...V) form[V] {
	var names []string
	for _, v := range all {
		names = append(names, string(v))
	}
	f := form[V]{words: words, like: `"` + strings.Join(names, `" or "`) + `"`, shape: shape{choices: names}}
	f.read = func(r *reader, n *node) (V, bool) {
		if n.kind != unstable.String {
			notA(r, n, f)
			return "", false
		}
		for _, v := range all {
			if n.text == string(v) {
				return v, true
			}
		}
		r.unknownWord(n, words, names)
		return "", false
	}
	return f
}
