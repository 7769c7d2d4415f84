package folder

import (
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

func TestNotesOfEveryKindAreReadAndObeyed(t *testing.T) {
	keys := map[model.NoteKind]string{
		model.NoteHorseOut: "horse = \"Duke\"\nwhy = \"lame\"\nfrom = 07:40\nreview = 2026-11-26", model.NoteHorseBack: `horse = "Duke"`,
		model.NoteOwnTack: `horse = "Duke"`, model.NoteOwnTackEnd: `horse = "Duke"`, model.NotePieceOut: "tack = \"S1\"\nwords = \"torn\"",
		model.NotePieceBack: `tack = "S1"`, model.NoteCleaned: `tack = "S1"`, model.NoteRiderAway: `rider = "Ada Grey"`,
		model.NoteRiderAdded: "rider = \"Cy Reed\"\nlesson = \"Tue 10:00\"", model.NoteCancelled: `lesson = "Tue 10:00"`,
		model.NoteMoved: "lesson = \"Tue 10:00\"\nfrom = 11:00\nuntil = 11:45", model.NoteShortened: "lesson = \"Tue 10:00\"\nuntil = 10:30",
		model.NoteHands: "lesson = \"Tue 10:00\"\nleaders = 1", model.NoteWeather: "warmth = 84\nhumidity = 60",
		model.NoteArenaClosed: "arena = \"Indoor\"\nfrom = 12:00", model.NoteInstructor: "lesson = \"Tue 10:00\"\ninstructor = \"Jo Marsh\"",
		model.NoteAway: `instructor = "Kim Alder"`, model.NoteKeep: "rider = \"Ada Grey\"\nhorse = \"Duke\"\nseat = \"S1\"",
		model.NoteNever: "rider = \"Ada Grey\"\nhorse = \"Pepper\"", model.NoteForm: "rider = \"Ben Stone\"\nthrough = 2027-12-31",
		model.NoteWorkOff: "horse = \"Duke\"\nfrom = 12:00",
	}
	var b strings.Builder
	for i, kind := range model.NoteKinds {
		b.WriteString("[[note]]\nnumber = " + string(rune('0'+(i+10)/10)) + string(rune('0'+i%10)) + "\nkind = \"" + string(kind) +
			"\"\nat = 2026-11-24T07:40\nby = \"Jo Marsh\"\n" + keys[kind] + "\n\n")
	}
	b.WriteString("[[note]]\nnumber = 99\nundoes = 10\nat = 2026-11-24T08:00\nby = \"Kim Alder\"\n") // the horse is not lame at all
	f := openTxtar(t, &txtar.Archive{Files: []txtar.File{
		{Name: "all.toml", Data: []byte(whole(t))}, {Name: "notes/2026-11-24.toml", Data: []byte(b.String())},
	}})
	if got := shown(f.Mistakes()); got != "" {
		t.Fatal(got)
	}
	c := f.Centre
	if len(c.Notes) != len(model.NoteKinds)+1 {
		t.Fatalf("%d notes were read", len(c.Notes))
	}
	for i, n := range c.Notes[:len(model.NoteKinds)] {
		if n.Kind != model.NoteKinds[i] || n.Date != monday+1 || n.By != c.Persons[0] {
			t.Errorf("note %d is %+v", n.Number, n)
		}
	}
	duke, ben := c.Horses[0], c.Riders[1]
	if len(duke.Out) != 1 || duke.Out[0].Why != model.Appointment {
		t.Errorf("a note that was undone put Duke out: %v", duke.Out)
	}
	if ben.FormUntil != model.On(2027, 12, 31) {
		t.Errorf("the form runs until %s", ben.FormUntil)
	}
	if n := len(c.Pieces[0].Cleaned); n != 1 {
		t.Errorf("S1 was cleaned %d times", n)
	}
}

func TestRecordsKeepWhatTheFolderNoLongerHas(t *testing.T) {
	f := openTxtar(t, &txtar.Archive{Files: []txtar.File{
		{Name: "all.toml", Data: []byte(whole(t))},
		{Name: "posted/0002.toml", Data: []byte(`version = 2
by = "Jo Marsh"
at = 2026-11-13T16:00
from = 2026-11-16
until = 2026-11-22

[[ride]]
date = 2026-11-17
start = 10:00
end = 10:45
lesson = "Tuesday"
rider = "Ada Bell"
arena = "Indoor"
instructor = "Lou Field"
horse = "Rex"
seat = "S1"
girth = "G1"
pads = ["P1"]
extras = ["X1"]
work = 450000

[[ride]]
date = 2026-11-17
start = 10:00
end = 10:45
lesson = "Old lesson"
rider = "Di Old"
ground = ["no horse"]
`)},
		{Name: "ridden/2026-11-17.toml", Data: []byte(`date = 2026-11-17
by = "Lou Field"
at = 2026-11-17T18:00
[[differs]]
how = "cut short"
lesson = "Tuesday"
rider = "Ada Grey"
end = 10:30
[[differs]]
how = "extra ride"
lesson = "Old lesson"
rider = "Di Old"
horse = "Rex"
seat = "S1"
start = 10:00
end = 10:30
[[work]]
horse = "Duke"
kind = "lunging"
start = 09:00
length = "20 min"
`)}}})
	if got := shown(f.Mistakes()); got != "" {
		t.Fatal(got)
	}
	c := f.Centre
	told, ridden := c.Posted[0].Told, c.Ridden[0]
	// An old name is the noun of today; a name that is gone is a noun of its own.
	if told[0].Lesson != c.Lessons[0] || told[0].LessonName != "Tue 10:00" || told[0].Rider != c.Riders[0] {
		t.Errorf("old names are not found: %+v", told[0])
	}
	if rex := told[0].Turn.Horse; rex.Name != "Rex" || ridden.Differs[1].Turn.Horse != rex {
		t.Errorf("the horse that is gone is not one horse: %v", rex)
	}
	if told[0].Work != 450000 || told[1].Turn != nil || told[1].Rider.Name != "Di Old" || told[1].Lesson != ridden.Differs[1].Lesson {
		t.Errorf("what was told is %+v", told)
	}
	if d := ridden.Differs[0]; d.How != model.CutShort || d.End != 630 || d.Turn != nil {
		t.Errorf("what was ridden is %+v", d)
	}
	if w := ridden.Works; len(w) != 1 || w[0].On != ridden.Date || w[0].End != 560 {
		t.Errorf("other work is %+v", w)
	}
}
