package folder

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"github.com/pelletier/go-toml/v2/unstable"
)

// node is a value of a file: a text, number, date ..., a list or a table.
type node struct {
	kind unstable.Kind // InlineTable for every table, however it is written
	text string        // of a text what it says, of other plain values as written
	extent
	items []*node // of a list
	pairs []*pair // of a table, in the order of the file
	made  made    // of a table or list of tables
	torn  bool    // part of it could not be read
	bad   bool    // an item of a list that has a mistake and is left out
}

// pair is one key of a table with its value.
type pair struct {
	key    string
	extent // of the key
	val    *node
}

// made says how a table came about, which decides where TOML lets it go on.
type made int

const (
	byValue  made = iota // written as a value: complete
	byHeader             // [a.b] or an item of [[a.b]]
	byPath               // the a of [a.b]
	byDots               // the a of a.b = 1
)

// get is the pair of a key, or nil.
func (n *node) get(key string) *pair {
	if n != nil {
		for _, p := range n.pairs {
			if p.key == key {
				return p
			}
		}
	}
	return nil
}

// item is the one of a list that became value number i; a value alone is a list
// of it.
func (n *node) item(i int) *node {
	for _, x := range n.items {
		if x.bad {
			continue
		}
		if i == 0 {
			return x
		}
		i--
	}
	return n
}

// parse reads one file into a tree whose every part knows its place. What is
// not TOML is reported, and reading goes on at the next header.
func parse(file string, data []byte) (*node, []Trouble) {
	p := &parser{src: newSource(file, data), single: map[string]bool{}, words: map[string]string{}}
	p.root = &node{kind: unstable.InlineTable, made: byHeader, extent: p.src.extent(0, 0)}
	p.here = p.root
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		p.wrong(p.src.span(0, 0), "this file is saved as UTF-16", "save it as UTF-8")
		return p.root, p.troubles
	}
	p.base = len(data) - len(bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")))
	for p.base < len(data) && p.read() {
	}
	return p.root, p.troubles
}

type parser struct {
	src      *source
	base     int // where in the file the text given to toml starts
	toml     unstable.Parser
	root     *node
	here     *node // the table that keys go to
	troubles []Trouble
	single   map[string]bool // many tables that were met between single brackets
	pairs    slab[pair]
	nodes    slab[node]
	words    map[string]string
}

func (p *parser) wrong(s Span, message, mend string) {
	if n := len(p.troubles); n > 0 && p.troubles[n-1].Span.Start == s.Start {
		return // met again after reading went on
	}
	p.troubles = append(p.troubles, p.src.trouble(s, message, mend))
}

// read reads from base on, and reports whether there is a place further down
// from which to read on after an error.
func (p *parser) read() bool {
	text := p.src.data[p.base:]
	p.toml.Reset(text)
	end := 0 // of the last expression
	for p.toml.NextExpression() {
		e := p.toml.Expression()
		switch e.Kind {
		case unstable.KeyValue:
			p.put(p.here, e)
			end = int(e.Raw.Offset + e.Raw.Length)
		case unstable.Table, unstable.ArrayTable:
			end = p.header(e)
		}
	}
	if p.toml.Error() == nil {
		return false
	}
	var pe *unstable.ParserError
	at, n := end, 1
	if errors.As(p.toml.Error(), &pe) {
		r := p.toml.Range(pe.Highlight)
		at, n = int(r.Offset), max(1, int(r.Length))
	}
	span := p.src.span(p.base+at, min(p.base+at+n, len(p.src.data)))
	what, mend := meant(p.toml.Error().Error(), p.src.line(span.Line), p.src.data[span.Start:])
	p.wrong(span, what, mend)
	p.here.torn = true
	next := p.src.nextHeader(p.base+max(at, end), p.base)
	if next < 0 {
		return false
	}
	p.base = next
	return true
}

// header goes to the table that a header opens, and returns where it ends.
func (p *parser) header(e *unstable.Node) int {
	keys := p.keys(e, nil)
	start, end := p.src.around(keys[0].start, keys[len(keys)-1].end)
	whole := p.src.extent(start, end)
	p.here = &node{kind: unstable.InlineTable, made: byHeader, extent: whole} // nowhere, where it is refused
	at := p.root
	for _, k := range keys[:len(keys)-1] {
		if at = p.step(at, k, whole, byPath); at == nil {
			return end - p.base
		}
	}
	last := keys[len(keys)-1]
	old := at.get(last.key)
	kind := e.Kind
	if s := sectionOf(last.key); kind == unstable.Table && at == p.root && s != nil && s.many {
		kind = unstable.ArrayTable // read on as it is meant, so that what is in it is named too
		if !p.single[last.key] {
			p.single[last.key] = true
			p.wrong(last.span(), fmt.Sprintf("%s is written as [[%s]]", last.key, last.key),
				fmt.Sprintf("write [[%s]], here and wherever else it stands between single brackets", last.key))
		}
	}
	switch {
	case kind == unstable.ArrayTable && old == nil:
		list := &node{kind: unstable.Array, made: byHeader, extent: whole, items: []*node{p.here}}
		at.pairs = append(at.pairs, &pair{last.key, last.extent, list})
	case kind == unstable.ArrayTable && old.val.kind == unstable.Array && old.val.made == byHeader:
		old.val.items = append(old.val.items, p.here)
	case kind == unstable.Table && old == nil:
		at.pairs = append(at.pairs, &pair{last.key, last.extent, p.here})
	case kind == unstable.Table && old.val.made == byPath:
		old.val.made, old.val.extent, old.extent = byHeader, whole, last.extent
		p.here = old.val
	default:
		p.again(last, old)
	}
	return end - p.base
}

// step goes from a table to the one under a key, the last one of a list of
// tables, and makes it where there is none.
func (p *parser) step(at *node, k *pair, whole extent, how made) *node {
	old := at.get(k.key)
	if old == nil {
		val := &node{kind: unstable.InlineTable, made: how, extent: whole}
		at.pairs = append(at.pairs, &pair{k.key, k.extent, val})
		return val
	}
	val := old.val
	if val.kind == unstable.Array && val.made == byHeader && how == byPath {
		val = val.items[len(val.items)-1]
	}
	if val.kind != unstable.InlineTable || val.made == byValue || how == byDots && val.made != byDots {
		p.again(k, old)
		return nil
	}
	return val
}

func (p *parser) again(k, old *pair) {
	p.wrong(k.span(), fmt.Sprintf("%q is here twice: it is at %s already", k.key, old.span()), "keep one of the two")
}

// put puts a key and its value into a table.
func (p *parser) put(at *node, e *unstable.Node) {
	var few [4]*pair
	keys := p.keys(e, few[:0])
	start, end := p.base+int(e.Raw.Offset), p.base+int(e.Raw.Offset+e.Raw.Length)
	val := p.value(e.Value(), p.src.afterEquals(keys[len(keys)-1].end), end)
	if at.made == byHeader && at != p.root {
		at.end = end
	}
	for _, k := range keys[:len(keys)-1] {
		if at = p.step(at, k, p.src.extent(start, end), byDots); at == nil {
			return
		}
	}
	last := keys[len(keys)-1]
	if old := at.get(last.key); old != nil {
		p.again(last, old)
		return
	}
	last.val = val
	if at.pairs == nil {
		at.pairs = make([]*pair, 0, 12)
	}
	at.pairs = append(at.pairs, last)
}

func (p *parser) keys(e *unstable.Node, into []*pair) []*pair {
	for it := e.Key(); it.Next(); {
		n := it.Node()
		start := p.base + int(n.Raw.Offset)
		k := p.pairs.one()
		k.key, k.extent = p.word(n.Data), p.src.extent(start, start+int(n.Raw.Length))
		into = append(into, k)
	}
	return into
}

// word is a text of the file, one string for all places where it stands: keys,
// dates and names come over and over.
func (p *parser) word(text []byte) string {
	s, met := p.words[string(text)]
	if !met {
		s = string(text)
		p.words[s] = s
	}
	return s
}

// slab makes values that live as long as one another, many at a time.
type slab[T any] []T

func (s *slab[T]) one() *T {
	if len(*s) == 0 {
		*s = make([]T, 64)
	}
	v := &(*s)[0]
	*s = (*s)[1:]
	return v
}

// value turns a value of the syntax tree into a node. The tree does not say
// where lists and tables end: the caller knows, or it is found from what is in
// them.
func (p *parser) value(v *unstable.Node, start, end int) *node {
	n := p.nodes.one()
	n.kind, n.text = v.Kind, p.word(v.Data)
	switch v.Kind {
	case unstable.Array:
		at := start + 1
		for it := v.Children(); it.Next(); {
			item := p.value(it.Node(), p.src.skip(at), -1)
			n.items = append(n.items, item)
			at = item.end
		}
		if end < 0 {
			end = p.src.skip(at) + 1
		}
	case unstable.InlineTable:
		at := start + 1
		for it := v.Children(); it.Next(); {
			e := it.Node()
			p.put(n, e)
			at = p.base + int(e.Raw.Offset+e.Raw.Length)
		}
		if end < 0 {
			end = p.src.skip(at) + 1
		}
		p.seal(n)
	default:
		start = p.base + int(v.Raw.Offset)
		end = start + int(v.Raw.Length)
	}
	n.extent = p.src.extent(start, end)
	if !plain(n) {
		p.wrong(n.span(), fmt.Sprintf("there is no such %s as %s", scalars[n.kind], n.text), realMend(scalars[n.kind], n.text))
		n.kind = unstable.Invalid
	}
	return n
}

// seal ends a table that was written as a value: nothing is added to it later.
func (p *parser) seal(n *node) {
	n.made = byValue
	for _, x := range n.pairs {
		if x.val.made == byDots {
			p.seal(x.val)
		}
	}
}

var scalars = map[unstable.Kind]string{
	unstable.Integer: "number", unstable.Float: "number", unstable.LocalDate: "date", unstable.LocalTime: "time",
	unstable.LocalDateTime: "date and time", unstable.DateTime: "date and time",
}

// plain reports whether a number, date or time is one: the syntax tree does not
// look at what the digits say.
func plain(n *node) bool {
	var err error
	switch n.kind {
	case unstable.Integer:
		_, err = strconv.ParseInt(n.text, 0, 64)
	case unstable.Float:
		_, err = strconv.ParseFloat(strings.ReplaceAll(n.text, "_", ""), 64)
	case unstable.LocalDate:
		_, err = time.Parse(time.DateOnly, n.text)
	case unstable.LocalTime:
		_, err = clock(n.text)
	case unstable.LocalDateTime, unstable.DateTime:
		date, rest := n.text[:min(10, len(n.text))], n.text[min(11, len(n.text)):]
		if _, err = time.Parse(time.DateOnly, date); err == nil {
			if i := strings.IndexAny(rest, "Zz+-"); i >= 0 {
				if zone := strings.ToUpper(rest[i:]); zone != "Z" {
					_, err = time.Parse("-07:00", zone)
				}
				rest = rest[:i]
			}
			if err == nil {
				_, err = clock(rest)
			}
		}
	}
	return err == nil
}

// clock reads the time of day of TOML, whose seconds may be left out.
func clock(s string) (time.Time, error) {
	if len(s) == len("15:04") {
		return time.Parse("15:04", s)
	}
	if len(s) < len("15:04:05") || strings.HasSuffix(s, ".") {
		return time.Time{}, errors.New("no time of day")
	}
	return time.Parse("15:04:05", s)
}
