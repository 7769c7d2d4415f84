package sheet

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/fixtures"
	"tackwright/model"
)

// guarded is an ordinary Monday on which every figure and word that is nobody's
// business is one that can be found again.
func guarded() (*fixtures.Barn, []*model.Turn) {
	b, turns := ordinary()
	mia := b.Mia
	mia.Weight, mia.Height, mia.Level, mia.Support = 54321, 16789, "beginner", true
	mia.Cautions = []string{"Zcaution"}
	mia.Bans = []*model.Horse{b.Horses[4]}
	mia.Likings = []model.Liking{{Horse: b.Horses[4], Dislike: true, Weight: 4}}
	mia.FormUntil = monday + 123
	mia.Away = []model.Period{{From: monday + 3, Until: monday + 3, Why: "Zhospital"}}
	b.Star.Weight, b.Star.MaxLoad = 612345, 98765
	b.Horses[4].Out = []model.Out{{Why: model.Lame, From: model.Instant{Date: monday - 5}}}
	return b, turns
}

// markup are what a page holds beside what can be read: tags, and its style.
var markup = regexp.MustCompile(`(?s)<style>.*?</style>|<[^>]*>`)

// forms are all that a sheet can leave the program as.
func forms(t *testing.T, s *paper.Sheet) map[string]string {
	t.Helper()
	answer, err := json.Marshal(paper.Answered(s))
	if err != nil {
		t.Fatal(err)
	}
	var pages strings.Builder
	for _, p := range paper.Pages(s) {
		pages.WriteString(p.SVG())
	}
	return map[string]string{"text": paper.Written(s), "CSV": paper.CSV(s), "page": paper.HTML(s), "pages": pages.String(), "JSON": string(answer)}
}

func TestNoSheetTellsASurnameAWeightOrAnythingOfHealth(t *testing.T) {
	b, turns := guarded()
	for _, x := range every(t, b, turns...) {
		for form, text := range forms(t, x.sheet) {
			text = strings.ToLower(markup.ReplaceAllString(text, " "))
			for _, ours := range []string{"lameness for a vet", "lame for a vet", "a rider's health", "a rider&#39;s health", "lamenessforavet"} {
				text = strings.ReplaceAll(text, ours, "")
			}
			secrets := []string{"secret", "hidden", "54321", "54.3", "119.7", "612345", "1678", "98765", "98.7", "lame", "beginner", "zhospital", "26 mar", "kg", "lb"}
			if x.name != "instructor" {
				secrets = append(secrets, "zcaution", "caution on file")
			}
			for _, secret := range secrets {
				if strings.Contains(text, secret) {
					t.Errorf("%s as %s tells %q", x.name, form, secret)
				}
			}
		}
	}
}

func TestCautionsAreOnTheInstructorsSheetAndItSaysForWhomItIs(t *testing.T) {
	b, turns := guarded()
	for _, x := range every(t, b, turns...) {
		text := paper.Written(x.sheet)
		if is := x.name == "instructor"; strings.Contains(text, "Zcaution") != is || strings.Contains(text, "For the instructor alone") != is {
			t.Errorf("%s:\n%s", x.name, text)
		}
	}
}

func TestEverySheetForTheBarnCarriesTheCautions(t *testing.T) {
	b, turns := ordinary()
	for _, x := range every(t, b, turns...) {
		for form, text := range forms(t, x.sheet) {
			if form == "CSV" {
				continue // rows alone
			}
			text = letters(strings.NewReplacer("&#39;", "'", "! ", "").Replace(text))
			for _, want := range append([]string{"and the go-ahead for the instructor"}, Cautions...) {
				if form != "pages" && !strings.Contains(text, letters(want)) {
					t.Errorf("%s as %s does not say: %s", x.name, form, want)
				}
			}
		}
	}
}
