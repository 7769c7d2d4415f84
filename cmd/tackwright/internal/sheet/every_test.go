package sheet

import (
	"fmt"
	"testing"

	unicode "golang.org/x/text/unicode/norm"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// named is a sheet with the name of what was asked for.
type named struct {
	name  string
	sheet *paper.Sheet
}

// every sheet of a barn's Monday whose rides have those turns.
func every(t *testing.T, b *fixtures.Barn, turns ...*model.Turn) []named {
	t.Helper()
	l := pull(t, b, turns...) // the plan keeps every rule
	w := b.Week()
	p := fixtures.Plan(w, turns...)
	made := func(s *paper.Sheet, err error) *paper.Sheet {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	return []named{
		{"chart", made(LessonChart(w, p, monday, posted))},
		{"wall", made(WallChart(w, p, monday, posted))},
		{"tack", made(TackDay(w, p, monday, posted))},
		{"week", made(HorseWeeks(w, p, monday, posted, nil))},
		{"pull", l.Sheet()},
		{"rack", l.RackSheet()},
		{"cards", made(HorseCards(w, p, monday, posted, nil))},
		{"instructor", made(InstructorSheet(w, p, monday, posted, nil))},
		{"fit", FitChart(b.Centre, monday, posted, nil)},
		{"tags", Tags(b.Centre, monday, posted)},
		{"blank-chart", BlankChart(b.Centre, monday, posted)},
		{"blank-pull", BlankPull(b.Centre, monday, posted)},
	}
}

// beside are the sheets that are made from something else than a day's plan.
func beside(t *testing.T) []named {
	return []named{{"moved", MovedSheet([]*Moved{mended(t), mended(t)})}, {"work", months(9).Sheet()}}
}

// onDays are the sheets of every kind of day, by the name of the day.
func onDays(t *testing.T) map[string][]named {
	all := map[string][]named{"beside": beside(t)}
	for day, make := range days {
		b, turns := make()
		all[day] = every(t, b, turns...)
		b, turns = make()
		b.House.Paper = "Letter"
		all[day+", Letter"] = every(t, b, turns...)
	}
	return all
}

// european is a day whose names are in all scripts of Europe, accented, joined
// and apart, and as long as people's are.
func european() (*fixtures.Barn, []*model.Turn) {
	b := fixtures.New()
	b.Name = "Zażółć gęślą jaźń, Þórshöfn ja Řež"
	b.Star.Name, b.Oak.Looks = "Љубичица Ђорђевић", "rød, grøn, blå; ἀργυρᾶ"
	b.Mia.First, b.Mia.Mark = "Αναστασία", "Ψ"
	b.Mia.Cautions = []string{"Ελληνικά"}
	armenian, georgian, welsh := b.Rider("Անահիտ"), b.Rider("თამარ"), b.Rider("Zoe\u0308 Ŵynne-Țurcanu")
	snow := b.Horse("Ǫʒǯǥ Sápmi Snjór")
	b.Row(snow, b.Oak)
	b.Lesson(monday, "09:00-09:45", b.Mia).Name = "Пони, ѓ ќ ґ ї є"
	b.Lesson(monday, "10:00-10:45", armenian).Name = "Çağdaş İğne ə"
	b.Lesson(monday, "11:00-11:45", georgian)
	b.Lesson(monday, "12:00-12:45", welsh)
	t := b.Turn(b.Star, b.Oak)
	return b, []*model.Turn{t, t, t, b.Turn(snow, b.Oak)}
}

// moving is a day on which two saddles go round nine horses, four of which ride at
// once, each the other's after.
func moving() (*fixtures.Barn, []*model.Turn) {
	b := fixtures.New()
	horses := []*model.Horse{b.Star}
	for i := range 8 {
		horses = append(horses, b.Horse(fmt.Sprintf("Horse %d", i+2)))
	}
	seats := []*model.Piece{b.Oak, b.Saddle("ash"), b.Saddle("elm"), b.Saddle("yew")}
	for _, h := range horses {
		for _, s := range seats {
			b.Row(h, s)
		}
	}
	var turns []*model.Turn
	for i := range 8 {
		start := 8*60 + 60*model.Minute(i)
		l := b.Lesson(monday, start.String()+"-"+(start+45).String())
		for k, s := range seats {
			r := b.Rider(fmt.Sprintf("Rider %d%d", i, k))
			l.Places = append(l.Places, model.Place{Rider: r})
			turns = append(turns, b.Turn(horses[(2*i+k*(1+i%2))%9], s))
		}
	}
	return b, turns
}

// norm joins accents to their letters, as the type has them.
func norm(s string) string { return unicode.NFC.String(paper.Plain(s)) }
