package command

import (
	"slices"
	"testing"
)

func TestANameThatBeginsAsAFlagStandsBehindTwoDashes(t *testing.T) {
	for rider, want := range map[string]string{
		"Ada":      `tackwright take yard Ada lift 3 --on "2 May" --date today --by NAME`,
		"-Ada Roe": `tackwright take --on "2 May" --date today --by NAME -- yard "-Ada Roe" lift 3`,
	} {
		l := &commandLine{name: "take", said: []string{"yard", rider, "lift", "3"}, about: []string{"--date", "today"}}
		if got := l.with("--on", "2 May").typed(byName...); got != want {
			t.Errorf("%s, not %s", got, want)
		}
		if words := l.words(); slices.Contains(words, "--by") || words[0] != "take" {
			t.Errorf("the words are %q", words)
		}
	}
}
