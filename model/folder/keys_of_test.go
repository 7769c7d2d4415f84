package folder

import (
	"strings"
	"testing"
)

func TestOneTableOfThePageIsShownByItself(t *testing.T) {
	page, known := KeysOf("horse")
	if !strings.HasPrefix(page, "# `[[horse]]`\n") || !strings.Contains(page, "`[[horse.out]]`") || strings.Contains(page, "`[[rider]]`") {
		t.Error(page)
	}
	if again, _ := KeysOf("[[horse]]"); again != page {
		t.Error("the brackets of the file are not taken")
	}
	if page, _ := KeysOf("horses"); page != "" || len(known) != len(sections) {
		t.Errorf("%q, %q", page, known)
	}
}

// Quantities of one unit are told apart by what they measure.
func TestNoTwoFormsOfThePageHaveOneName(t *testing.T) {
	_, rest, _ := strings.Cut(Keys(), "# How things are written")
	table, _, _ := strings.Cut(rest, "# What people write")
	seen := map[string]bool{}
	for _, line := range strings.Split(table, "\n") {
		cells := strings.Split(line, " | ")
		if len(cells) < 3 {
			continue
		}
		if seen[cells[0]] {
			t.Errorf("%q is there twice", cells[0])
		}
		seen[cells[0]] = true
	}
	if len(seen) < 10 {
		t.Errorf("%d forms", len(seen))
	}
}
