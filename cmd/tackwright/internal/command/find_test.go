package command

import (
	"testing"

	"tackwright/model"
)

// A barn computer in England has no key for Å, and a phone none for ł.
func TestANameIsFoundByAKeyboardThatHasNoAccents(t *testing.T) {
	c := &model.Centre{Horses: []*model.Horse{{Name: "Ångström"}, {Name: "Señorita Élan"}, {Name: "D’Artagnan"}, {Name: "Łysek"}, {Name: "Lysander"}}}
	for said, want := range map[string]string{"angstrom": "Ångström", "Ang": "Ångström", "elan": "Señorita Élan", "D'Art": "D’Artagnan", "lysek": "Łysek", "Lys": "Lysander"} {
		if h, err := horseNamed(c, said); err != nil || h.Name != want {
			t.Errorf("%q finds %v (%v), want %s", said, h, err, want)
		}
	}
}

// Where nobody gave one of them a mark, sheets call both José.
func TestACommandNamesInFullARiderWhoIsCalledAsAnotherIs(t *testing.T) {
	a, b, x := &model.Rider{Name: "José Álvarez", First: "José"}, &model.Rider{Name: "José Müller", First: "José"}, &model.Rider{Name: "Ida Roe", First: "Ida"}
	c := &model.Centre{Riders: []*model.Rider{a, b, x}}
	for r, want := range map[*model.Rider]string{a: `"José Álvarez"`, b: `"José Müller"`, x: "Ida"} {
		if got := typed(answersTo(c, r)); got != want {
			t.Errorf("%s is typed %s, want %s", r.Name, got, want)
		}
	}
}
