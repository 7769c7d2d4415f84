package desk_test

import (
	"net/http"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/model"
)

// saysNot fails for each of the words that a page says.
func saysNot(t testing.TB, page string, all ...string) {
	t.Helper()
	for _, x := range all {
		if strings.Contains(words(page), x) {
			t.Errorf("the page says %q", x)
		}
	}
}

// Nobody carries what can no longer be; who waits with the list in her hand is told
// for whom, and sees the list once the day is mended.
func TestThePullListWaitsForTheDayToBeMended(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post("/horse/Wicket/out?on="+wednesday, http.StatusOK, "from", "07:35", "why", "lame")
	b.found()
	job := b.at
	waits := b.get("/pull/"+wednesday, http.StatusOK)
	says(t, waits, "Version 6", "Wed 14 Oct is to be mended first", "ask the instructor")
	saysNot(t, waits, "Carry", "0 of")
	if !strings.Contains(waits, "data-fresh") {
		t.Error("the list that waits is not looked at anew")
	}
	b.post(job+"/post", http.StatusOK)
	says(t, b.get("/pull/"+wednesday, http.StatusOK), "Version 7", "Carry", "0 of ")
	says(t, b.get(job, http.StatusOK), "It stands, as version 7. 4 rides are not as posted before.")
}

func TestADayIsNotClosedBeforeItsFirstLesson(t *testing.T) {
	now := &clock{}
	b := open(t, demo(t), func(o *desk.Options) { o.Now = now.now }).nell()
	b.planned()
	saysNot(t, b.get("/day/"+wednesday, http.StatusOK), "Close the day")
	now.passes(3 * time.Hour)
	says(t, b.get("/day/"+wednesday, http.StatusOK), "Close the day")
}

func TestALessonIsCutShortAndTheHeatStandsAtTheTopOfTheDay(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	b.planned()
	b.post("/day/"+wednesday+"/happened", http.StatusOK, "kind", "weather", "temperature-such-as-84f-or-29c", "35C", "humidity-in-percent", "80")
	day := b.get("/day/"+wednesday, http.StatusOK)
	if at := strings.Index(day, "make 175"); at < 0 || at > strings.Index(day, "Horses</h2>") {
		t.Error("the day does not begin with the heat")
	}
	b.post("/day/"+wednesday+"/happened", http.StatusOK, "kind", "shorten", "lesson", "Wed 13:30", "minutes-that-it-then-lasts", "30")
	says(t, b.found(), "14:00 Walter", "After does not ride", "The lesson ends before this part")
}

// Who cannot plan is not sent to; and on a day without lessons nothing is to plan.
func TestWhoCannotPlanIsNotSentToPlan(t *testing.T) {
	d := open(t, demo(t), withPhrases)
	b := d.browser()
	b.post("/enter", http.StatusOK, "phrase", phrases[model.Barn])
	day := b.get("/day/"+wednesday, http.StatusOK)
	says(t, day, "No plan yet")
	saysNot(t, day, "to plan it")
	saysNot(t, b.get("/day/2026-10-12", http.StatusOK), "No plan yet")
}
