package folder

import (
	"os"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestThePageOfEveryKeyIsMadeFromWhatTheReaderGoesBy(t *testing.T) {
	const golden = "testdata/keys.md"
	got := Keys()
	if *update {
		if err := os.WriteFile(golden, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(strings.ReplaceAll(string(want), "\r\n", "\n"), got); d != "" {
		t.Errorf("run the test with -update, and look at what changed (-want +got):\n%s", d)
	}
}

func TestEveryKeySaysWhatItMeansAndHowItIsWritten(t *testing.T) {
	var walk func(s *sheet)
	walk = func(s *sheet) {
		if s.about == "" {
			t.Errorf("%s says nothing of itself", s.head)
		}
		for _, l := range s.lines {
			if l.means == "" || l.like == "" || l.lacking == "" != l.must {
				t.Errorf("%s of %s is not described", l.name, s.head)
			}
			if l.sub != nil {
				walk(l.sub)
			}
		}
	}
	for _, s := range sections {
		walk(s.sheet)
	}
	for _, s := range []*sheet{noteKeys.sheet(), postedKeys.sheet(), riddenKeys.sheet(), planKeys.sheet(), tickKeys.sheet(), changeKeys.sheet(), standingKeys.sheet()} {
		walk(s)
	}
}

func TestEveryExampleOnThePageCanBeRead(t *testing.T) {
	tried := 0
	var walk func(s *sheet)
	walk = func(s *sheet) {
		for _, l := range s.lines {
			for _, like := range append(strings.Split(l.like, " or "), l.shown()) {
				r := newReader()
				root := r.parse("page", []byte("x = "+like))
				if len(root.pairs) == 1 && len(r.troubles) == 0 {
					l.try(r, root.pairs[0].val)
				}
				for _, x := range r.troubles {
					if !strings.HasPrefix(x.Message, "there is no ") { // the names are nobody's here
						t.Errorf("%s of %s:\n%s", l.name, s.head, x)
					}
				}
				tried++
			}
			if l.sub != nil {
				walk(l.sub)
			}
		}
	}
	for _, s := range append([]*sheet{noteKeys.sheet(), postedKeys.sheet(), riddenKeys.sheet(), planKeys.sheet(), tickKeys.sheet(), changeKeys.sheet(), standingKeys.sheet()}, sheets()...) {
		walk(s)
	}
	if tried < 300 {
		t.Errorf("only %d examples were tried", tried)
	}
}

func sheets() []*sheet {
	var all []*sheet
	for _, s := range sections {
		all = append(all, s.sheet)
	}
	return all
}
