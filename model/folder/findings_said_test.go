package folder

import (
	"strings"
	"testing"
)

// larkfield is a folder with a rider in a lesson and nothing missing but a horse.
const larkfield = `[centre]
name = "Larkfield"
today = 2026-11-23
[[person]]
name = "Kim"
role = "instructor"
[[arena]]
name = "Indoor"
[[horse]]
name = "Duke"
weight = "472 kg"
foaled = 2012
[[tack]]
tag = "S1"
kind = "saddle"
billets = "long"
needs_pad = false
[[tack]]
tag = "G1"
kind = "girth"
family = "short"
size = "26 in"
[[fit]]
horse = "Duke"
seat = "S1"
girth = "26 in"
until = 2027-03-01
[[rider]]
name = "Ada"
weight = "62 kg"
form_until = 2027-06-30
seat = "17 in"
extras = ["hand hold"]
[[tack]]
tag = "X1"
kind = "hand hold"
[[lesson]]
name = "Mon 10:00"
arena = "Indoor"
instructor = "Kim"
start = 10:00
length = "45 min"
day = "Mon"
riders = ["Ada"]
`

func TestAMistakeIsToldOnceAndNotAgainAsAFinding(t *testing.T) {
	if f := openText(t, larkfield); len(f.Mistakes()) > 0 || len(f.Findings(0)) > 0 {
		t.Fatalf("%s\n%s", shown(f.Mistakes()), shown(f.Findings(0)))
	}
	for _, c := range []struct{ right, wrong string }{
		{`weight = "472 kg"`, `weight = "79 lb"`},
		{`weight = "472 kg"`, `weight = 472 kg`},
		{`foaled = 2012`, `foaled = 2105`},
		{`weight = "62 kg"`, `weigth = "62 kg"`},
		{`form_until = 2027-06-30`, `form_until = "30 June"`},
		{`seat = "17 in"`, `seat = "17 hands"`},
		{`girth = "26 in"`, `girth = "26"`},
		{`until = 2027-03-01`, `until = 2027-3-1`},
		{`billets = "long"`, `billets = "lang"`},
		{`family = "short"`, `family = "shrt"`},
		{`kind = "hand hold"`, `kind = 3`},
		{`seat = "S1"`, `seat = "S2"`},
		{`arena = "Indoor"`, `arena = "Outdoor"`},
		{`riders = ["Ada"]`, `riders = ["Eda"]`},
		{`day = "Mon"`, `day: "Mon"`},
	} {
		text := strings.Replace(larkfield, c.right, c.wrong, 1)
		f := openText(t, text)
		if text == larkfield || len(f.Mistakes()) != 1 || len(f.Findings(0)) > 0 {
			t.Errorf("%s:\n%s\nand found:\n%s", c.wrong, shown(f.Mistakes()), shown(f.Findings(0)))
		}
	}
}
