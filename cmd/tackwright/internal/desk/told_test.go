package desk_test

import (
	"net/http"
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
