package folder

import (
	"fmt"
	"strings"

	"tackwright/model"
)

// reader turns the tables of all files into a centre.
type reader struct {
	centre   *model.Centre
	sources  map[string]*source
	troubles []Trouble
	noun     any                   // that is being read
	entries  map[any]*node         // where each noun stands
	standing map[*model.Term]*node // files of standing/
	names
	today   model.Date
	history bool // in posted, ridden and old notes: names may be gone
}

// names are the nouns by their names.
type names struct {
	persons index[model.Person]
	arenas  index[model.Arena]
	horses  index[model.Horse]
	pieces  index[model.Piece]
	riders  index[model.Rider]
	lessons index[model.Lesson]
	terms   index[model.Term]
}

// mistake reports one at a place.
func (r *reader) mistake(at Span, message, mend string) {
	r.report(Trouble{Mistake: true, Span: at, Message: message, Mend: mend})
}

func (r *reader) report(t Trouble) {
	if t.Noun == nil {
		t.Noun = r.noun
	}
	if s := r.sources[t.Span.File]; s != nil && t.Span.Line > 0 {
		t.Line = s.line(t.Span.Line)
	}
	r.troubles = append(r.troubles, t)
}

func (r *reader) unknownKey(p *pair, head string, known []string) {
	mend := "its keys are: " + strings.Join(known, ", ")
	if near := nearest(p.key, known); near != "" {
		mend = "did you mean " + near + "?"
	}
	r.mistake(p.span(), fmt.Sprintf("%s has no key %q", head, p.key), mend)
}

func (r *reader) unknownWord(n *node, words string, known []string) {
	r.mistake(n.span(), fmt.Sprintf("%q is not %s", n.text, words), didYouMean(n.text, known))
}

// at is the place of a value within a noun's table; of its table where the path
// is empty or not there. A step is a key or the number of an item.
func (r *reader) at(noun any, path ...any) Span {
	n := r.entries[noun]
	if n == nil {
		return Span{}
	}
	whole := n.span()
	for _, step := range path {
		switch step := step.(type) {
		case string:
			p := n.get(step)
			if p == nil {
				return whole
			}
			n = p.val
		case int:
			n = n.item(step)
		}
	}
	return n.span()
}
