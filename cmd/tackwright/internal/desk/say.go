package desk

import (
	"net/http"
	"strings"
	"time"

	"tackwright/model"
)

// timeOf reads a time of day from a form.
func timeOf(said string) (model.Minute, error) {
	t, err := time.Parse("15:04", strings.TrimSpace(said))
	if err != nil {
		return 0, &refused{http.StatusBadRequest, "that is not a time of day like 07:40"}
	}
	return model.Minute(t.Hour()*60 + t.Minute()), nil
}

// note writes a day note, unless it says nothing new or cannot be.
func (v *visit) note(n *model.Note) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	n.By, n.At = by, v.reading.At()
	if n.Kind == "" {
		_, err = v.reading.AddNote(n)
		v.readings.forget()
		return err
	}
	n.Hands = model.NoHands
	v.reading.Lock()
	why, same := v.reading.Centre.RefusesHold(n), v.reading.Centre.Repeats(n)
	v.reading.Unlock()
	switch {
	case why != "":
		return no("not noted: %s", why)
	case same != nil:
		return no("note %d says the very same and stands", same.Number)
	}
	_, err = v.reading.AddNote(n)
	v.readings.forget()
	return err
}

// horseOut notes that a horse does not work from a time on, and where its day is
// posted begins to mend that.
func horseOut(v *visit) error {
	h, err := v.horse()
	if err != nil {
		return err
	}
	d := v.date()
	from, err := timeOf(v.r.PostFormValue("from"))
	if err != nil {
		return err
	}
	why := model.OutWhy(v.r.PostFormValue("why"))
	switch why {
	case model.Lame, model.Ill, model.VetStop:
	default:
		return no("say why: lame, ill or stopped by the vet")
	}
	if d < v.reading.Today {
		return no("%s is over", d.Words())
	}
	if err := v.note(&model.Note{Kind: model.NoteHorseOut, Date: d, From: from, Horse: h, Why: why}); err != nil {
		return err
	}
	if v.reading.Centre.VersionOn(d) == 0 {
		return v.see("/day/" + d.String())
	}
	return v.mend(d, from)
}

// horseBack notes that a horse is sound again, on the word of who may end that.
func horseBack(v *visit) error {
	h, err := v.horse()
	if err != nil {
		return err
	}
	n := &model.Note{Kind: model.NoteHorseBack, Date: v.date(), Horse: h}
	if v.reading.Real && n.Date == v.reading.Today {
		n.From = v.reading.Now.Minute
	}
	if err := v.note(n); err != nil {
		return err
	}
	return v.see(horsePath(h, v.date()))
}

// riderAway notes that the rider of a ride does not come.
func riderAway(v *visit) error {
	_, ride, err := v.ride()
	if err != nil {
		return err
	}
	if err := v.note(&model.Note{Kind: model.NoteRiderAway, Date: ride.Date(), Rider: ride.Rider, Lesson: ride.Meeting.Lesson}); err != nil {
		return err
	}
	return v.see("/day/" + ride.Date().String())
}

// pair notes that a ride keeps a horse, or never has it.
func pair(kind model.NoteKind) func(*visit) error {
	return func(v *visit) error {
		_, ride, err := v.ride()
		if err != nil {
			return err
		}
		n := &model.Note{Kind: kind, Date: ride.Date(), Rider: ride.Rider, Lesson: ride.Meeting.Lesson}
		for _, h := range v.reading.Centre.Horses {
			if h.Name == v.r.PostFormValue("horse") {
				n.Horse = h
			}
		}
		if n.Horse == nil {
			return no("say which horse")
		}
		if err := v.note(n); err != nil {
			return err
		}
		return v.see(ridePath(ride))
	}
}

// ofRide reports whether a note is of a ride, which any instructor takes back. What
// stops a horse, a piece or a person is ended by who may end it, but for a slip.
func ofRide(n *model.Note) bool {
	return n.Kind == model.NoteKeep || n.Kind == model.NoteNever || n.Kind == model.NoteRiderAway
}

// slip reports whether a note is one that who looks can take back as her own slip.
func (v *visit) slip(n *model.Note) bool {
	by, err := v.person()
	return err == nil && v.notes() && v.reading.Centre.NoSlip(n, by, v.reading.Today) == ""
}

// slipsOn are her slips that are for a date, if they are any.
func (v *visit) slipsOn(d model.Date) []noteView { return v.notesOn(d, v.slip) }

// lift takes back a note of a ride, or a slip.
func lift(v *visit) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	for _, n := range model.Standing(v.reading.Centre.Notes) {
		if v.r.PostFormValue("note") != number(n.Number) {
			continue
		}
		if why := v.reading.Centre.NoSlip(n, by, v.reading.Today); !ofRide(n) && why != "" {
			return no("%s", why)
		}
		if err := v.note(&model.Note{Undoes: n.Number, Date: n.Date}); err != nil {
			return err
		}
		return v.see("/day/" + n.Date.String())
	}
	return no("that note does not stand any more")
}
