package paper

import (
	"fmt"
	"strings"
	"testing"
)

func TestABlockIsNotTornByAPage(t *testing.T) {
	var p Mono
	p.Block("")
	p.Line("head")
	p.Part()
	p.Line("TITLE")
	for range 3 {
		p.Block("continued\n")
		p.Line("a")
		p.Line("b")
	}
	got := p.Pages(5, func(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) + "\n" })
	want := []string{"head\nTITLE\na\nb\n", "page 2 of 3\ncontinued\na\nb\n", "page 3 of 3\ncontinued\na\nb\n"}
	if strings.Join(got, "|") != strings.Join(want, "|") {
		t.Errorf("%q", got)
	}
}
