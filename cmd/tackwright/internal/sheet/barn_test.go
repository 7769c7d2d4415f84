package sheet

import (
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// monday is the day of every test.
var monday = fixtures.Monday

var posted = Stamp{Version: 3, By: "Ana Reyes", At: model.Instant{Date: monday - 3, Minute: fixtures.At("17:05")},
	Printed: model.Instant{Date: monday, Minute: fixtures.At("07:10")}}

// pull is the sheet of a barn's Monday whose rides have those turns, by start,
// lesson and rider. The plan must break no rule: an example that nobody could
// have planned proves nothing.
func pull(t *testing.T, b *fixtures.Barn, turns ...*model.Turn) *PullList {
	t.Helper()
	w := b.Week()
	p := fixtures.Plan(w, turns...)
	for _, v := range model.Broken(w.Audit(p)) {
		t.Errorf("the example breaks %q: %s", v.Rule.Name, v.Words)
	}
	l, err := Pull(w, p, monday, posted)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// pads changes which pads a turn has, and the chart row that approves it.
func pads(b *fixtures.Barn, t *model.Turn, pads ...*model.Piece) *model.Turn {
	t.Pads = pads
	for _, r := range b.Chart {
		if r.Horse == t.Horse && r.Seat == t.Seat {
			r.Pads = pads
		}
	}
	return t
}

// bays is a barn whose cross ties have so many.
func bays(n int) *fixtures.Barn {
	b := fixtures.New()
	b.House.CrossTies = n
	return b
}
