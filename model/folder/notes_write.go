package folder

import (
	"bytes"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"tackwright/model"
)

// AddNote writes a day note down, at the end of the file in notes/ of the date
// on which it is written (At), under the next number, which it returns. By and
// At must be set; Number does not count. A note that says nothing but which
// earlier one it undoes has no Kind.
//
// It refuses what would be a mistake in the folder: a key that does not belong
// to the kind or lacks, a person who may not end a thing. It adds to what others
// have noted meanwhile, and never to a file that was edited by hand meanwhile.
// When it returns, the note lasts. See wrong.go for its errors.
func (f *Folder) AddNote(n *model.Note) (number int, err error) {
	c, err := writer(n.By, n.At)
	if err != nil {
		return 0, err
	}
	if what := noteNeeds[n.Kind].by; what != "" && !n.By.May(what) {
		return 0, refuse("%s may not end this; %s", n.By.Name, f.whoMay(what))
	}
	if wrong := f.tryNote(n); wrong != nil {
		return 0, refuse("%s", wrong.Message)
	}
	err = f.write(&c, func(d disk) ([]target, error) {
		if number, err = d.nextNote(); err != nil {
			return nil, err
		}
		if n.Undoes >= number {
			return nil, refuse("there is no note %d", n.Undoes)
		}
		c.What, c.note = noteInWords(n, number), number
		t, err := f.noteTarget(d, n.At.Date, noteText(n, number))
		return []target{t}, err
	})
	if err != nil {
		return 0, err
	}
	return number, nil
}

// whoMay names those who may end a thing.
func (f *Folder) whoMay(what model.Ends) string {
	var may []string
	for _, p := range f.Centre.Persons {
		if p.May(what) {
			may = append(may, p.Name)
		}
	}
	if len(may) == 0 {
		return fmt.Sprintf("nobody may yet: add %q to may_end of a person", what)
	}
	return "it is for " + strings.Join(may, " or ")
}

// noteTarget is the file of a date with the note at its end. A file to which
// nothing can be added, torn or written in another way, is left alone; the note
// then begins another of the date.
func (f *Folder) noteTarget(d disk, date model.Date, text []byte) (target, error) {
	for i := 1; ; i++ {
		name := fmt.Sprintf("notes/%s.toml", date)
		if i > 1 {
			name = fmt.Sprintf("notes/%s-%d.toml", date, i)
		}
		now, err := f.asLeft(d, name)
		if err != nil {
			return target{}, err
		}
		all := slices.Clone(now)
		if len(all) > 0 {
			if !bytes.HasSuffix(all, []byte("\n")) {
				all = append(all, '\n')
			}
			all = append(all, '\n')
		}
		all = append(all, text...)
		if _, troubles := parse(name, all); len(troubles) == 0 {
			return target{name: name, now: now, text: all}, nil
		}
	}
}

var numbers = regexp.MustCompile(`\bnumber\s*=\s*([0-9_]+)`)

// nextNote is the next free number of a note, those of torn files counted.
func (d disk) nextNote() (int, error) {
	files, err := look(string(d))
	if err != nil {
		return 0, err
	}
	last := 0
	for _, x := range files {
		if path.Dir(x.name) != "notes" {
			continue
		}
		data, err := d.read(x.name)
		if err != nil {
			return 0, err
		}
		for _, m := range numbers.FindAllSubmatch(data, -1) {
			if n, err := strconv.Atoi(strings.ReplaceAll(string(m[1]), "_", "")); err == nil && n < 1e8 {
				last = max(last, n)
			}
		}
	}
	return last + 1, nil
}

// tryNote reads a note as it would be written, and returns what is wrong in it.
func (f *Folder) tryNote(n *model.Note) *Trouble {
	f.writing.Lock()
	defer f.writing.Unlock()
	r := *f.r
	r.troubles, r.noun, r.sources, r.entries = nil, nil, map[string]*source{}, map[any]*node{}
	root := r.parse("the note", noteText(n, 1))
	for _, p := range root.pairs {
		for _, x := range p.val.items {
			r.readNote(x)
		}
	}
	if len(r.troubles) == 0 {
		return nil
	}
	return &r.troubles[0]
}

// noteText is a note as it is written; noteKeys tells what each key means.
func noteText(n *model.Note, number int) []byte {
	var b bytes.Buffer
	line := func(key, value string) { fmt.Fprintf(&b, "%s = %s\n", key, value) }
	named := func(key, name string) {
		if name != "" {
			line(key, quote(name))
		}
	}
	date := func(key string, d model.Date) {
		if d != 0 {
			line(key, d.String())
		}
	}
	time := func(key string, m model.Minute) {
		if m != 0 {
			line(key, clockText(m))
		}
	}
	b.WriteString("[[note]]\n")
	line("number", strconv.Itoa(number))
	named("kind", string(n.Kind))
	line("at", instantText(n.At))
	line("by", quote(n.By.Name))
	if n.Undoes != 0 {
		line("undoes", strconv.Itoa(n.Undoes))
	}
	if n.Date != n.At.Date {
		date("date", n.Date)
	}
	date("through", n.Through)
	time("from", n.From)
	time("until", n.Until)
	if n.Horse != nil {
		named("horse", n.Horse.Name)
	}
	if n.Piece != nil {
		named("tack", n.Piece.Tag)
	}
	if n.Rider != nil {
		named("rider", n.Rider.Name)
	}
	if n.Lesson != nil {
		named("lesson", n.Lesson.Name)
	}
	if n.Arena != nil {
		named("arena", n.Arena.Name)
	}
	if n.Instructor != nil {
		named("instructor", n.Instructor.Name)
	}
	if n.Seat != nil {
		named("seat", n.Seat.Tag)
	}
	named("why", string(n.Why))
	date("review", n.Review)
	if n.Kind == model.NoteHands {
		for _, h := range []struct {
			key string
			n   int
		}{{"leaders", n.Hands.Leaders}, {"sidewalkers", n.Hands.Sidewalkers}} {
			if h.n >= 0 {
				line(h.key, strconv.Itoa(h.n))
			}
		}
	}
	named("words", n.Words)
	if n.Kind == model.NoteWeather {
		line("warmth", strconv.Itoa(n.Warmth))
		line("humidity", strconv.Itoa(n.Humidity))
	}
	return b.Bytes()
}

// noteInWords is a note for history: its number, kind and what it is about.
func noteInWords(n *model.Note, number int) string {
	about := ""
	switch {
	case n.Kind == "":
		about = fmt.Sprintf("note %d does not stand", n.Undoes)
	case n.Horse != nil && n.Rider != nil:
		about = n.Rider.Name + ", " + n.Horse.Name
	case n.Horse != nil:
		about = n.Horse.Name
	case n.Piece != nil:
		about = n.Piece.Tag
	case n.Rider != nil:
		about = n.Rider.Name
	case n.Kind == model.NoteHands:
		about = n.Lesson.Name + ", " + n.Hands.Words()
	case n.Lesson != nil:
		about = n.Lesson.Name
	case n.Arena != nil:
		about = n.Arena.Name
	case n.Instructor != nil:
		about = n.Instructor.Name
	}
	return strings.TrimSuffix(strings.Join(slices.DeleteFunc([]string{fmt.Sprintf("wrote note %d", number), string(n.Kind), about},
		func(s string) bool { return s == "" }), ": "), ": ")
}
