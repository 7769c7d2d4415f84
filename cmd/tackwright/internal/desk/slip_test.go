package desk_test

import (
	"net/http"
	"strconv"
	"strings"
	"testing"

	"tackwright/model"
)

// instructor is a browser at which an instructor has come in and said her name.
func (d *opened) instructor(name string) *browser {
	b := d.browser()
	b.post("/enter", http.StatusOK, "phrase", phrases[model.Instructor])
	b.post("/name", http.StatusOK, "name", name)
	return b
}

// outOf notes that a horse is out on the Wednesday, and is the note's number.
func (b *browser) outOf(dir, horse, why string) string {
	b.t.Helper()
	b.post("/horse/"+horse+"/out?on="+wednesday, http.StatusOK, "from", "07:35", "why", why)
	notes := read(b.t, dir).Centre.Notes
	return strconv.Itoa(notes[len(notes)-1].Number)
}

func TestAnInstructorTakesBackTheWrongHorseNotedLame(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	b := open(t, dir, withPhrases).instructor("Oona Tarrowby")
	note := b.outOf(dir, "Wicket", "lame")
	job := b.at
	back := "Take note " + note + " back"
	says(t, b.found(), "You noted: horse out, Wicket, lame", back)
	for _, path := range []string{"/day/" + wednesday, "/horse/Wicket?on=" + wednesday} {
		says(t, b.get(path, http.StatusOK), back)
	}
	page := b.post("/lift", http.StatusOK, "note", note)
	if b.at != "/day/"+wednesday || strings.Contains(words(page), "Wicket is out (lame)") || strings.Contains(words(page), "Mend the day") {
		t.Errorf("%s: %s", b.at, words(page))
	}
	says(t, page, "note "+note+" no longer stands: horse out, Wicket, lame")
	// What was found for it is not posted any more; both notes stay on record.
	b.post(job+"/post", http.StatusConflict)
	notes := read(t, dir).Centre.Notes
	if n, u := notes[len(notes)-2], notes[len(notes)-1]; n.Horse.Name != "Wicket" || u.Undoes != n.Number || u.By.Name != "Oona Tarrowby" {
		t.Errorf("noted: %+v, %+v", n, u)
	}
}

func TestWhatIsNoSlipAnInstructorDoesNotTakeBack(t *testing.T) {
	dir := demo(t)
	open(t, dir, nil).nell().planned()
	d := open(t, dir, withPhrases)
	b, other := d.instructor("Oona Tarrowby"), d.instructor("Petra Hallowes")
	stop := b.outOf(dir, "Pilot", "vet's stop")
	if strings.Contains(words(b.found()), "Take note") {
		t.Error("a vet's stop is offered to be taken back")
	}
	says(t, b.post("/lift", http.StatusConflict, "note", stop), "s stop: it is not taken back")
	lame := b.outOf(dir, "Wicket", "lame")
	job := b.at
	b.found()
	if strings.Contains(other.get("/day/"+wednesday, http.StatusOK), "Take note "+lame) {
		t.Error("it is offered to somebody else")
	}
	says(t, other.post("/lift", http.StatusConflict, "note", lame), "written by somebody else")
	if page := b.post(job+"/post", http.StatusOK); strings.Contains(page, "Take note") {
		t.Error("what is posted can be taken back")
	}
	says(t, b.post("/lift", http.StatusConflict, "note", lame), "was posted with note "+lame+" in it: the office takes it back")
}
