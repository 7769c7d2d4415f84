package command

import (
	"fmt"
	"path"
	"strings"

	"tackwright/model"
	"tackwright/model/folder"
)

// lastPosted is what was last posted for a date in a folder that has mistakes: a
// day goes on whatever cannot be read. Where only notes and records cannot,
// or what the date does not speak of, all else counts; else it is the plan as it
// was posted, with the week it was solved from. Nil is that none can be had.
func (c *call) lastPosted(f *folder.Folder, date model.Date, k clock) (*kept, error) {
	var v *model.Posted
	for _, p := range f.Centre.Posted {
		if p.From <= date && date <= p.Until {
			v = p
		}
	}
	if v == nil || !f.LastPosted(date) {
		return nil, nil
	}
	if p, err := posted(f, date, k.Begun()); f.RecordsAlone() || p != nil && len(f.InTheWay(p.week)) == 0 {
		if p != nil {
			p.stamp.Unread = unreadWords(f) + " could not be read"
		}
		return p, err
	}
	w, plan, wrong, err := f.ReadPosted(v)
	if err != nil || len(wrong) > 0 {
		return nil, err
	}
	p := &kept{week: w, plan: plan}
	p.stamp.Version, p.stamp.At = v.Version, v.At
	p.stamp.Unread = unreadWords(f) + " could not be read, so no note and no change since it was posted counts here"
	if v.By != nil {
		p.stamp.By = v.By.Name
	}
	return p, nil
}

// unreadWords names what could not be read.
func unreadWords(f *folder.Folder) string {
	var words []string
	for _, name := range f.Unread() {
		day, err := model.ParseDate(strings.TrimSuffix(path.Base(name), ".toml"))
		switch dir := path.Dir(name); {
		case name == "":
			words = append(words, "the centre")
		case err == nil && dir == "notes":
			words = append(words, "notes of "+day.Words())
		case err == nil && dir == "ridden":
			words = append(words, "what was ridden on "+day.Words())
		default:
			words = append(words, name)
		}
	}
	return strings.Join(words, ", ")
}

// goingOver tells on standard error of the mistakes that something is done in
// spite of.
func (c *call) goingOver(f *folder.Folder) {
	if wrong := f.Mistakes(); len(wrong) > 0 {
		fmt.Fprintf(c.err, "%s\n\nWarning: %s in the folder (%s); mend soon. All are listed by: tackwright check %s\n",
			wrong[0], model.Count(len(wrong), "mistake"), unreadWords(f), typed(f.Dir))
	}
}

// goOver are the kinds of note that are taken whatever else is wrong in the
// folder: on health, weather and absence.
var goOver = []model.NoteKind{model.NoteHorseOut, model.NoteOwnTack, model.NotePieceOut, model.NoteRiderAway,
	model.NoteCancelled, model.NoteWeather, model.NoteArenaClosed, model.NoteAway}
