package model_test

import (
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// words are those of all violations of an audit, a line each.
func words(vs []model.Violation) string {
	var lines []string
	for _, v := range vs {
		lines = append(lines, v.Words)
	}
	return strings.Join(lines, "\n")
}

func TestAGapThatIsTooShortSaysWhatTakesTheTime(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn, second *model.Turn)
		want   string
	}{
		{"the girth", func(b *fixtures.Barn, second *model.Turn) {
			second.Girth = b.Piece(&model.Piece{Tag: "G2", Kind: model.Girth, Family: model.ShortGirth, Label: model.Inches(24)})
		}, "10 are needed: it changes girth"},
		{"another ring", func(b *fixtures.Barn, _ *model.Turn) { b.Lessons[1].Arena = b.Arena("field") },
			"5 are needed: it goes from ring to ring"},
		{"the house asks", func(b *fixtures.Barn, _ *model.Turn) { b.House.Stay = 3 }, "3 are needed: it stays in the ring"},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := fixtures.New()
			b.Lesson(fixtures.Monday, "10:00-10:45", b.Mia)
			b.Lesson(fixtures.Monday, "10:45-11:30", b.Rider("Leo"))
			first, second := b.Turn(b.Star, b.Oak), b.Turn(b.Star, b.Oak)
			c.change(b, second)
			w := b.Week()
			if got := words(w.Audit(fixtures.Plan(w, first, second))); !strings.HasSuffix(got, c.want) {
				t.Errorf("told %q", got)
			}
		})
	}
}

func TestOneWrongGirthIsToldOnce(t *testing.T) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-10:45", b.Mia)
	turn := b.Turn(b.Star, b.Oak)
	turn.Girth = b.Piece(&model.Piece{Tag: "G2", Kind: model.Girth, Family: model.LongGirth, Label: model.Inches(48)})
	w := b.Week()
	if found := w.Audit(fixtures.Plan(w, turn)); len(found) != 1 {
		t.Errorf("told %q", words(found))
	}
}

func TestTheWordsOfTheAuditAreOnTheClockOfTheHouse(t *testing.T) {
	b := fixtures.New()
	b.House.TwelveHour, b.House.Limits.RunMinutes = true, 30
	b.Mia.Bans = []*model.Horse{b.Star}
	b.Lesson(fixtures.Monday, "14:00-14:45", b.Mia)
	b.Work(b.Star, fixtures.Monday, "14:30-15:15")
	w := b.Week()
	got := words(w.Audit(fixtures.Plan(w, b.Turn(b.Star, b.Oak))))
	if !strings.Contains(got, "2:00 pm Mia") || !strings.Contains(got, "2:30 pm lunging") || strings.Contains(got, "14:") {
		t.Errorf("told %q", got)
	}
}

func TestASentenceBeginsWithACapitalInAnyAlphabet(t *testing.T) {
	for words, want := range map[string]string{"the horse is out": "The horse is out.", "Łukasz Øster is away": "Łukasz Øster is away.", "émile rides": "Émile rides.", "asked of Ivor P.": "Asked of Ivor P.", "is it S9?": "Is it S9?", "": ""} {
		if got := model.Sentence(words); got != want {
			t.Errorf("%q becomes %q", words, got)
		}
	}
}
