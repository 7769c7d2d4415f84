package folder

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"tackwright/model"
)

// Post makes a plan stand: it is written into posted/ as the next version, with
// the week it was solved from (the centre's files as they are, and which notes
// stood), and replaces earlier versions on the dates that it covers. The week is
// one of f.Centre.
//
// It refuses a plan that breaks a rule, and any plan where the folder has
// mistakes (of a repair: in its way) or has changed since it was opened: what
// people go by must fit what is there. See wrong.go for its errors.
func (f *Folder) Post(w *model.Week, p *model.Plan, by *model.Person, at model.Instant) (version int, err error) {
	c, err := writer(by, at)
	if err != nil {
		return 0, err
	}
	if err := f.mayPost(w, p); err != nil {
		return 0, err
	}
	err = f.write(&c, func(d disk) ([]target, error) {
		if err := f.unchanged(d); err != nil {
			return nil, err
		}
		version = f.version + 1
		c.What = fmt.Sprintf("posted version %d, %s", version, datesInWords(w.From, w.Until))
		c.posted = version
		return []target{{name: postedName(w.From, version), text: f.postedText(w, p, version, c)}}, nil
	})
	if err != nil {
		return 0, err
	}
	f.version = version
	return version, nil
}

func (f *Folder) mayPost(w *model.Week, p *model.Plan) error {
	switch {
	case w.Centre != f.Centre:
		return refuse("the plan is of a week that this folder was not read for")
	case len(f.Mistakes()) > 0 && (!w.Mends || len(f.InTheWay(w)) > 0):
		return refuse("the folder has a mistake: %s", f.Mistakes()[0].Message)
	case len(f.NotesUnread()) > 0 && !f.seen:
		return refuse("a note could not be read, and nobody says that she has read it: %s", f.NotesUnread()[0].Message)
	case len(p.Turns) != len(w.Rides):
		return refuse("the plan is of another week: it has %d rides, the week has %d", len(p.Turns), len(w.Rides))
	}
	if broken := model.Broken(w.Audit(p)); len(broken) > 0 {
		return refuse("the plan breaks the rule %q: %s", broken[0].Rule.Name, broken[0].Words)
	}
	return nil
}

func datesInWords(from, until model.Date) string {
	if from == until {
		return from.Words()
	}
	return from.Words() + " to " + until.Words()
}

// postedText is a posted plan. The texts of the centre's files come last, so
// that who reads the record alone stops ahead of them.
func (f *Folder) postedText(w *model.Week, p *model.Plan, version int, c Change) []byte {
	var b bytes.Buffer
	line := func(key, value string) { fmt.Fprintf(&b, "%s = %s\n", key, value) }
	line("version", strconv.Itoa(version))
	line("by", quote(c.By))
	line("at", instantText(c.At))
	line("from", w.From.String())
	line("until", w.Until.String())
	if !w.Now.IsZero() {
		line("now", instantText(w.Now))
	}
	if p.Proof.Hash != "" {
		line("hash", quote(p.Proof.Hash))
	}
	if n := len(f.Centre.Notes); n > 0 {
		line("notes", strconv.Itoa(f.Centre.Notes[n-1].Number))
	}
	for _, g := range p.Proof.Goals {
		fmt.Fprintf(&b, "\n[[goal]]\nname = %s\nvalue = %d\nbound = %d\nproved = %t\n", quote(g.Name), g.Value, g.Bound, g.Proved)
	}
	day := model.Date(0)
	for _, t := range told(w, p) {
		if t.Date != day {
			day = t.Date
			fmt.Fprintf(&b, "\n# %s\n", w.DayName(day))
		}
		writeTold(&b, &t)
	}
	for _, name := range f.planFrom() {
		fmt.Fprintf(&b, "\n%s\nfile = %s\ntext = %s\n", sourceHeader, quote(name), block(string(f.known[name])))
	}
	return b.Bytes()
}

// Stands reports whether a plan is what is posted for the dates of its week, and
// notes for them say nothing else since.
func (f *Folder) Stands(w *model.Week, p *model.Plan) bool {
	var was []model.Told
	for d := w.From; d <= w.Until; d++ {
		for _, v := range slices.Backward(f.Centre.Posted) {
			if v.From <= d && d <= v.Until {
				if f.Centre.ChangedSince(v, d) {
					return false
				}
				was = append(was, of(d, v)...)
				break
			}
		}
	}
	sortTold(was)
	return slices.EqualFunc(told(w, p), was, func(x, y model.Told) bool {
		return x.Date == y.Date && x.Start == y.Start && x.End == y.End && x.LessonName == y.LessonName && x.Rider == y.Rider &&
			x.Arena == y.Arena && x.Instructor == y.Instructor && x.Turn.Equal(y.Turn)
	})
}

// planFrom are the files that a week is made from, but for notes and records.
func (f *Folder) planFrom() []string {
	var names []string
	for _, x := range f.listed {
		if x.unread == "" && (isTop(x.name) || isStanding(x.name)) {
			names = append(names, x.name)
		}
	}
	return names
}

const sourceHeader = "[[source]]"

// withoutSources is a posted file up to the texts of the centre's files. No line of
// what the program writes ahead of them begins so: a text there is on one line.
func withoutSources(data []byte) []byte {
	if i := bytes.Index(data, []byte("\n"+sourceHeader+"\n")); i >= 0 {
		return data[:i+1]
	}
	return data
}

// told are the rides that a plan tells, by date, start, lesson and rider.
func told(w *model.Week, p *model.Plan) []model.Told {
	all := w.TellsOf(p)
	sortTold(all)
	return all
}

func sortTold(all []model.Told) {
	slices.SortStableFunc(all, func(a, b model.Told) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Start, b.Start),
			cmp.Compare(a.LessonName, b.LessonName), cmp.Compare(a.Rider.Name, b.Rider.Name))
	})
}

// writeTold writes a ride under a header of its own, which is read several times
// faster than a list of all.
func writeTold(b *bytes.Buffer, t *model.Told) {
	line := func(key, value string) { fmt.Fprintf(b, "%s = %s\n", key, value) }
	b.WriteString("\n[[ride]]\n")
	line("date", t.Date.String())
	line("start", clockText(t.Start))
	line("end", clockText(t.End))
	line("lesson", quote(t.LessonName))
	line("rider", quote(t.Rider.Name))
	if t.Arena != nil {
		line("arena", quote(t.Arena.Name))
	}
	if t.Instructor != nil {
		line("instructor", quote(t.Instructor.Name))
	}
	if t.Turn == nil {
		line("ground", quotes(t.Ground))
		return
	}
	turnText(line, t.Turn)
	if t.Work != 0 {
		line("work", strconv.FormatInt(t.Work, 10))
	}
}
