package desk

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

// notesOn are the notes in force for a date, of those that about picks.
func (v *visit) notesOn(d model.Date, about func(*model.Note) bool) []noteView {
	c := v.reading.Centre
	var all []noteView
	for _, n := range model.Standing(c.Notes) {
		if n.Date <= d && d <= max(n.Date, n.Through) && about(n) {
			x := noteView{Number: n.Number, Words: noteWords(c, n), Liftable: v.notes() && ofRide(n) || v.slip(n)}
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
		words := fmt.Sprintf("note %d no longer stands", n.Undoes)
		if i := slices.IndexFunc(c.Notes, func(x *model.Note) bool { return x.Number == n.Undoes && x.Undoes == 0 }); i >= 0 {
			words += ": " + noteWords(c, c.Notes[i])
		}
		return words
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
	if n.Kind == model.NoteHands {
		add(n.Hands.Words())
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
