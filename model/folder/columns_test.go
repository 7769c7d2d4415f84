package folder

import "testing"

// A form that named the program's own limit would promise a horse more work than
// its house allows.
func TestAHorseWithoutLimitsOfItsOwnHasThoseOfTheHouse(t *testing.T) {
	seen := 0
	for _, c := range Columns("horse") {
		if len(c.Key) > 7 && c.Key[:7] == "limits." {
			seen++
			if c.Lacking != theHouses {
				t.Errorf("%s: left empty, it is said to be %s", c.Key, c.Lacking)
			}
		}
	}
	if seen < 5 {
		t.Errorf("%d limits", seen)
	}
}
