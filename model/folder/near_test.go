package folder

import "testing"

func TestTheNearestWordIsTheOneThatIsMeant(t *testing.T) {
	for _, c := range []struct {
		word  string
		known []string
		want  string
	}{
		{"hieght", []string{"weight", "height"}, "height"},
		{"Duek", []string{"Duchess", "Duke"}, "Duke"},
		{"duke", []string{"Luke", "Duke"}, "Duke"},
		{"Ada", []string{"Ben Stone", "Ada Grey"}, "Ada Grey"},
		{"S11", []string{"G1", "S1"}, "S1"},
		{"colour", []string{"name", "closed"}, ""},
		{"Zorro", []string{"Duke"}, ""},
		{"x", nil, ""},
	} {
		if got := nearest(c.word, c.known); got != c.want {
			t.Errorf("nearest to %q of %v is %q, not %q", c.word, c.known, got, c.want)
		}
	}
}

func TestTheDistanceOfTwoWordsCountsLettersToTypeAnew(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"girth", "girth", 0}, {"grith", "girth", 1}, {"girt", "girth", 1}, {"girths", "girth", 1},
		{"garth", "girth", 1}, {"kitten", "sitting", 3}, {"Zoé", "Zoe", 1}} {
		if got := distance(c.a, c.b); got != c.want || distance(c.b, c.a) != c.want {
			t.Errorf("%q and %q are %d apart, not %d", c.a, c.b, got, c.want)
		}
	}
}

func TestNamesOfOtherCharactersThatLookTheSameAreSeen(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want bool
	}{
		{"Jos\u00e9", "Jose\u0301", true}, {"\u0439", "\u0438\u0306", true}, {"Jose", "Jose", false}, {"Jose", "Jos\u00e9", false},
		{"Rex", "Res", false}, {"Rex", "Rex1", false}, {"Jose\u0301", "Jose", false},
	} {
		if got := looksLike(c.a, c.b); got != c.want || looksLike(c.b, c.a) != c.want {
			t.Errorf("%+q and %+q look alike: %v", c.a, c.b, got)
		}
	}
}

func TestACaretStandsUnderWhatIsMeant(t *testing.T) {
	for _, c := range []struct{ line, at, want string }{
		{"\tname = \"x\"", `"x"`, "\t       ^^^"},
		{"Jose\u0301 = 1", "1", "       ^"},
		{"é = \"ü\"", "\"ü\"", "    ^^^"},
	} {
		s := newSource("all.toml", []byte(c.line))
		start := len(c.line) - len(c.at)
		if got := s.trouble(s.span(start, len(c.line)), "", "").carets(); got != c.want {
			t.Errorf("under %q stands %q, not %q", c.line, got, c.want)
		}
	}
}
