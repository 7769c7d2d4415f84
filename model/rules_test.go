package model

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
)

func TestEveryRuleIsWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range Rules {
		if r.Name == "" || seen[r.Name] || RuleNamed(r.Name) != r {
			t.Errorf("%q: no name of its own", r.Name)
		}
		seen[r.Name] = true
		if !slices.Contains([]Class{Care, Stock, Timetable}, r.Class) {
			t.Errorf("%s: class %q", r.Name, r.Class)
		}
		if r.audit == nil {
			t.Errorf("%s: no audit", r.Name)
		}
	}
}

func TestASentenceSaysInTheTradesWordsWhatIsAsked(t *testing.T) {
	told := regexp.MustCompile(`\b(stays?|is|are|has|have|works|goes|ride|holds|approves|no more|does not)\b`)
	for _, r := range Rules {
		s := r.Sentence
		switch {
		case s == "":
			t.Errorf("%s: no sentence", r.Name)
		case strings.HasSuffix(s, "."), !unicode.IsLower(rune(s[0])), strings.TrimSpace(s) != s:
			t.Errorf("%s: %q starts in lower case and ends without a dot", r.Name, s)
		case !told.MatchString(s) || len(strings.Fields(s)) < 6:
			t.Errorf("%s: %q says nothing", r.Name, s)
		}
	}
}

// That many of each are agreed: no rule slips out of care unseen.
func TestSixteenRulesAreCare(t *testing.T) {
	want := map[Class]int{Care: 16, Stock: 3, Timetable: 5}
	got := map[Class]int{}
	for _, r := range Rules {
		got[r.Class]++
	}
	for c, n := range want {
		if got[c] != n {
			t.Errorf("%s: %d rules, want %d", c, got[c], n)
		}
	}
}
