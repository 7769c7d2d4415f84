package desk

import (
	"cmp"
	"fmt"
	"strings"

	"tackwright/model"
)

// notesOn are the notes in force for a date, of those that about picks; may is that
// who looks may take some back.
func notesOn(c *model.Centre, d model.Date, may bool, about func(*model.Note) bool) []noteView {
	var all []noteView
	for _, n := range model.Standing(c.Notes) {
		if n.Date <= d && d <= max(n.Date, n.Through) && about(n) {
			x := noteView{Number: n.Number, Words: noteWords(c, n), Liftable: may && liftable(n)}
			if n.By != nil {
				x.By = n.By.Name
			}
			all = append(all, x)
		}
	}
	return all
}

// noteWords are a note in a line.
func noteWords(c *model.Centre, n *model.Note) string {
	var parts []string
	add := func(words string) {
		if words != "" {
			parts = append(parts, words)
		}
	}
	if n.Kind == "" {
		return fmt.Sprintf("note %d no longer stands", n.Undoes)
	}
	add(string(n.Kind))
	if n.Kind == model.NoteWeather {
		add(model.HeatWords(n.Warmth, n.Humidity, c.House.Units) + " (a person decides)")
	}
	if n.Rider != nil {
		add(n.Rider.Called())
	}
	if n.Horse != nil {
		add(n.Horse.Name)
	}
	if n.Piece != nil {
		add(n.Piece.Tag)
	}
	if n.Seat != nil {
		add(n.Seat.Tag)
	}
	if n.Lesson != nil {
		add(n.Lesson.Name)
	}
	if n.Arena != nil {
		add(n.Arena.Name)
	}
	if n.Instructor != nil {
		add(n.Instructor.Name)
	}
	add(string(n.Why))
	if n.From != 0 {
		add("from " + n.From.Clock(c.House.TwelveHour))
	}
	if n.Until != 0 {
		add("until " + n.Until.Clock(c.House.TwelveHour))
	}
	return cmp.Or(strings.Join(parts, ", "), "a note")
}
