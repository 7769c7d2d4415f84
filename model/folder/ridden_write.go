package folder

import (
	"bytes"
	"fmt"

	"tackwright/model"
)

// Close writes down what was ridden on x.Date, as far as it differs from what
// was posted, in ridden/. A date that was closed before is closed anew: history
// keeps what stood there. x.By and x.At must be set.
//
// It refuses what would be a mistake in the folder. See wrong.go for its errors.
func (f *Folder) Close(x *model.Ridden) error {
	c, err := writer(x.By, x.At)
	if err != nil {
		return err
	}
	text := riddenText(x)
	if wrong := f.tryRidden(text); wrong != nil {
		return refuse("%s", wrong.Message)
	}
	c.What = "closed " + x.Date.String()
	name := f.riddenFile(x.Date)
	return f.write(&c, func(d disk) ([]target, error) {
		now, err := f.asRead(d, name)
		return []target{{name: name, now: now, text: text, keep: true}}, err
	})
}

// riddenFile is where a date is closed: where it was, or else by its name.
func (f *Folder) riddenFile(date model.Date) string {
	for _, x := range f.Centre.Ridden {
		if n := f.r.entries[x]; x.Date == date && n != nil {
			return n.src.file
		}
	}
	return fmt.Sprintf("ridden/%s.toml", date)
}

// tryRidden reads a record as it would be written, and returns what is wrong.
func (f *Folder) tryRidden(text []byte) *Trouble {
	f.writing.Lock()
	defer f.writing.Unlock()
	r := *f.r
	r.troubles, r.noun, r.sources, r.history = nil, nil, map[string]*source{}, true
	root := r.parse("the record", text)
	e := riddenEntry{Ridden: &model.Ridden{}}
	riddenKeys.read(&r, root, &e)
	e.finish(&r, root)
	if len(r.troubles) == 0 {
		return nil
	}
	return &r.troubles[0]
}

// riddenText is a record as it is written; riddenKeys tells what each key means.
func riddenText(x *model.Ridden) []byte {
	var b bytes.Buffer
	line := func(key, value string) { fmt.Fprintf(&b, "%s = %s\n", key, value) }
	line("date", x.Date.String())
	line("by", quote(x.By.Name))
	line("at", instantText(x.At))
	for _, d := range x.Differs {
		b.WriteString("\n[[differs]]\n")
		line("how", quote(string(d.How)))
		if d.Lesson != nil {
			line("lesson", quote(d.Lesson.Name))
		}
		if d.Rider != nil {
			line("rider", quote(d.Rider.Name))
		}
		if d.End != 0 {
			if d.Start != 0 {
				line("start", clockText(d.Start))
			}
			line("end", clockText(d.End))
		}
		if d.Turn != nil {
			turnText(line, d.Turn)
		}
	}
	for _, w := range x.Works {
		b.WriteString("\n[[work]]\n")
		line("horse", quote(w.Horse.Name))
		line("kind", quote(w.Kind))
		line("start", clockText(w.Start))
		line("end", clockText(w.End))
		if w.Arena != nil {
			line("arena", quote(w.Arena.Name))
		}
		if w.Person != nil {
			line("person", quote(w.Person.Name))
		}
		turnText(func(key, value string) {
			if key != "horse" {
				line(key, value)
			}
		}, &model.Turn{Horse: w.Horse, Seat: w.Seat, Pads: w.Pads, Girth: w.Girth})
	}
	return b.Bytes()
}
