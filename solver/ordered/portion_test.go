package ordered

import "testing"

func TestAPortionIsBetweenWhatIsEasyAndWhatIsHard(t *testing.T) {
	const met, all = 4, 12
	p := portion{hard: all}
	for i, want := range []int{8, 6, 7} {
		n := p.of(met, all)
		if n != want {
			t.Fatalf("portion %d: %d of %d, want %d", i, n, all, want)
		}
		if n == 6 {
			p.easy = n
		} else {
			p.hard = n
		}
	}
	if n := p.of(met, all); n != all || p != (portion{}) {
		t.Errorf("nothing is left between 6 that are easy and 7 that are hard: %d and %+v, want all and a new start", n, p)
	}
}

func TestWhereTheBestSolutionMeetsWhatWasHardMoreIsAskedFor(t *testing.T) {
	p := portion{hard: 6}
	if n := p.of(8, 12); n != 10 {
		t.Errorf("%d, want 10: half of those that it does not meet", n)
	}
}
