package desk_test

import (
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestAWayOutNamesTheRiderAndSaysWhatBecomesOfIt(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post(rideOf(t, b.get("/day/2026-10-15", http.StatusOK), "Lionel")+"/ways", http.StatusOK)
	page := b.found()
	says(t, page, "Then Lionel has", "posted at once, as the next version")
	saysNot(t, page, "Then it has", "..")
}

// Of all who wait, who has a place at once with the others has room.
func TestWhoHasAPlaceAtOnceIsNotToldThatThereIsNone(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post("/week/"+wednesday+"/room", http.StatusOK)
	page := b.found()
	_, lottie, _ := strings.Cut(words(page), "Lottie Waiting")
	lottie, _, _ = strings.Cut(lottie, "Cosmo Waiting")
	if !strings.Contains(lottie, "At once with the others") || strings.Contains(lottie, "No room") {
		t.Errorf("of Lottie is said: %s", lottie)
	}
	says(t, page, "What would change for others", "(ask first)")
}

func TestAMistakeThatAsksHasNoStopBehindIt(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	wrong := b.post("/add/fit", http.StatusConflict, "field0", "Wicket", "field1", "S99")
	says(t, wrong, "Did you mean &#34;S9&#34;?")
	saysNot(t, wrong, "?.")
}

func TestWhatWasSavedIsSaidWhereItStands(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	page := b.post("/add/horse", http.StatusOK, "field0", "Clover")
	says(t, page, "Saved: Clover.")
	if !strings.Contains(page, `<details id="horse" open>`) {
		t.Error("the horses are folded away")
	}
	if strings.Contains(b.at, "Clover") {
		t.Errorf("the address names it: %s", b.at)
	}
}

func TestAFolderThatNamesNobodySaysHowToNameSomebody(t *testing.T) {
	dir := demo(t)
	file := filepath.Join(dir, "centre.toml")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(strings.ReplaceAll(string(text), "[[person]]", "[[nobody]]")), 0o666); err != nil {
		t.Fatal(err)
	}
	b := open(t, dir, nil).browser()
	says(t, b.get("/name", http.StatusOK), "names nobody who may come in here", "[[person]]")
}

func TestAnotherYearIsSaid(t *testing.T) {
	b := open(t, demo(t), nil).browser()
	says(t, b.get("/day/2027-03-02", http.StatusOK), "Tuesday 2 March 2027")
	says(t, b.get("/week/2027-03-02", http.StatusOK), "Week of Mon 1 Mar 2027")
	saysNot(t, b.get("/day/"+wednesday, http.StatusOK), "2026")
}

func TestAWeekWithoutRidesIsNothingToPlan(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.post("/week/2027-12-27/plan", http.StatusOK)
	says(t, b.found(), "Nothing to plan in the week of Mon 27 Dec", "Back to the week")
	saysNot(t, b.get("/pull/2027-12-28", http.StatusOK), "0 of 0", "Print")
}
