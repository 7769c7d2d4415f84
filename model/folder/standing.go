package folder

import (
	"bytes"
	"fmt"
	"slices"

	"tackwright/model"
)

// standingEntry is a file of standing/ as it is written.
type standingEntry struct {
	term     *model.Term
	by       *model.Person
	at       model.Instant
	pairings []model.Pairing
}

var standingPairingKeys = &table[model.Pairing]{
	head:  "[[pairing]]",
	about: "A rider's usual horse and seat in a lesson of the term. One whose rider, lesson or horse is no longer in the folder does not count.",
	keys: []key[model.Pairing]{
		is("rider", rider, "the rider", "", func(p *model.Pairing, v *model.Rider) { p.Rider = v }),
		is("lesson", lesson, "the lesson", "", func(p *model.Pairing, v *model.Lesson) { p.Lesson = v }),
		is("horse", horse, "the horse", "", func(p *model.Pairing, v *model.Horse) { p.Horse = v }),
		is("seat", tack, "tag of the seat", "none stated", func(p *model.Pairing, v *model.Piece) { p.Seat = v }),
	},
}

var standingKeys = &table[standingEntry]{
	head:  "standing/*.toml",
	about: "The standing pairings of a term, as its ordinary week was solved and the coordinator took it. A pairing in the centre's own files stands before those of that rider here.",
	keys: []key[standingEntry]{
		is("term", term, "the term", "", func(s *standingEntry, v *model.Term) { s.term = v }),
		is("by", person, "who took it", "", func(s *standingEntry, v *model.Person) { s.by = v }),
		is("at", instants, "when", "", func(s *standingEntry, v model.Instant) { s.at = v }),
		is("pairing", list(tableForm("a pairing", `{ rider = "Ada Grey", lesson = "Tue 10:00", horse = "Duke", seat = "S3" }`, standingPairingKeys), "a list of pairings"),
			"its pairings", "none", func(s *standingEntry, v []model.Pairing) { s.pairings = v }),
	},
}

// readStanding reads the files of standing/ and lays their pairings behind the
// person's own. It goes last, so that what those are is settled.
func (r *reader) readStanding(files []*node) {
	r.history = true
	for _, root := range files {
		var s standingEntry
		before := len(r.troubles)
		standingKeys.read(r, root, &s)
		if len(r.troubles) > before || !slices.Contains(r.centre.Terms, s.term) {
			continue
		}
		if old := r.standing[s.term]; old != nil {
			r.mistake(root.spot("term"), fmt.Sprintf("two files have the standing pairings of %s: the other is at %s", s.term.Name, old.spot("term")), "keep the one that is meant")
			continue
		}
		r.standing[s.term] = root
		own := len(s.term.Pairings)
		for _, p := range s.pairings {
			if r.isHere(&p) && !slices.ContainsFunc(s.term.Pairings[:own], func(q model.Pairing) bool {
				return q.Rider == p.Rider && (q.Lesson == nil || q.Lesson == p.Lesson)
			}) {
				s.term.Pairings = append(s.term.Pairings, p)
			}
		}
	}
	r.history = false
}

// isHere reports whether a pairing is of nouns that the folder has; a seat that
// it has not is left out.
func (r *reader) isHere(p *model.Pairing) bool {
	if !slices.Contains(r.centre.Pieces, p.Seat) {
		p.Seat = nil
	}
	return slices.Contains(r.centre.Riders, p.Rider) && slices.Contains(r.centre.Lessons, p.Lesson) && slices.Contains(r.centre.Horses, p.Horse)
}

// WriteStanding writes pairings as the standing ones of a term, in the place of
// those that were written before, and returns the file, as seen from the folder.
// Term, riders, lessons, horses and seats are known by their names. See wrong.go
// for its errors.
func (f *Folder) WriteStanding(t *model.Term, pairings []model.Pairing, by *model.Person, at model.Instant) (string, error) {
	c, err := writer(by, at)
	if err != nil {
		return "", err
	}
	c.What = "standing pairings of " + t.Name
	name := f.standingFile(t)
	return name, f.write(&c, func(d disk) ([]target, error) {
		now, err := f.asRead(d, name)
		return []target{{name: name, now: now, text: standingText(t, pairings, c), keep: true}}, err
	})
}

// standingFile is where a term's standing pairings are, or else are to be: under
// its first date.
func (f *Folder) standingFile(t *model.Term) string {
	taken := map[string]bool{}
	for x, root := range f.r.standing {
		if x.Name == t.Name {
			return root.src.file
		}
		taken[root.src.file] = true
	}
	name := fmt.Sprintf("standing/%s.toml", t.First)
	for i := 2; taken[name]; i++ {
		name = fmt.Sprintf("standing/%s-%d.toml", t.First, i)
	}
	return name
}

func standingText(t *model.Term, pairings []model.Pairing, c Change) []byte {
	var b bytes.Buffer
	line := func(key, value string) { fmt.Fprintf(&b, "%s = %s\n", key, value) }
	b.WriteString("# Written by: tackwright term --write. A pairing in the centre's own files stands before these.\n\n")
	line("term", quote(t.Name))
	line("by", quote(c.By))
	line("at", instantText(c.At))
	for _, p := range pairings {
		b.WriteString("\n[[pairing]]\n")
		line("rider", quote(p.Rider.Name))
		line("lesson", quote(p.Lesson.Name))
		line("horse", quote(p.Horse.Name))
		if p.Seat != nil {
			line("seat", quote(p.Seat.Tag))
		}
	}
	return b.Bytes()
}
