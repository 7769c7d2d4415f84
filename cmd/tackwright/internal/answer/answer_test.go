package answer

import (
	"encoding/json"
	"testing"
)

func TestAListWithNothingInItIsThere(t *testing.T) {
	type ride struct {
		Horse string   `json:"horse"`
		Pads  []string `json:"pads"`
	}
	type day struct {
		Rides []*ride  `json:"rides"`
		Works []ride   `json:"works"`
		First *ride    `json:"first"`
		None  *ride    `json:"none,omitempty"`
		Notes []string `json:"notes"`
	}
	d := &day{Rides: []*ride{{Horse: "Duke"}}, First: &ride{Horse: "Nell", Pads: []string{"P1"}}}
	Whole(d)
	got, err := json.Marshal(d)
	const want = `{"rides":[{"horse":"Duke","pads":[]}],"works":[],"first":{"horse":"Nell","pads":["P1"]},"notes":[]}`
	if err != nil || string(got) != want {
		t.Errorf("%s %v", got, err)
	}
}
