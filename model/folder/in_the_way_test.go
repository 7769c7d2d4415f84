package folder

import (
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// design.md: repair goes on over a mistake in an entry that nothing in its span
// refers to.
func TestAMistakeIsInTheWayOfTheDatesThatSpeakOfItsEntry(t *testing.T) {
	in := func(old, new string) string { return strings.Replace(yard, old, new, 1) }
	thursday := "[[lesson]]\nname = \"Thu 10:00\"\nday = \"Thursday\"\nstart = 10:00\nlength = \"45 min\"\narena = \"Indoor\"\ninstructor = \"Jo Marsh\"\nlevel = \"none\"\n"
	for _, c := range []struct {
		name, yard, note string
		want             bool
	}{
		{"a rider of that day", in(`"60 kg"`, `"60 stones"`), "", true},
		{"a rider of no lesson", yard + "[[rider]]\nname = \"Di\"\nweight = \"60 stones\"\n", "", false},
		{"a horse in the chart", in(`"500 kg"`, `"500 stones"`), "", true},
		{"a horse that no seat fits", in(`"480 kg"`, `"480 stones"`), "", false},
		{"a girth", in(`"26 in"`, `"26 ells"`), "", true},
		{"a seat that fits no horse", yard + "[[tack]]\ntag = \"S9\"\nkind = \"saddle\"\nsize = \"17 ells\"\n", "", false},
		{"a lesson of that day", in(`name = "Tue 10:00"`, "level = \"none\"\nname = \"Tue 10:00\""), "", true},
		{"a lesson of another day", yard + thursday, "", false},
		{"a note, which a person can read", yard, "[[note]]\nnumber = ", false},
	} {
		files := []txtar.File{{Name: "yard.toml", Data: []byte(c.yard)}}
		if c.note != "" {
			files = append(files, txtar.File{Name: "notes/2026-10-10.toml", Data: []byte(c.note)})
		}
		f := openTxtar(t, &txtar.Archive{Files: files})
		if len(f.Mistakes()) == 0 {
			t.Fatalf("%s: no mistake", c.name)
		}
		if got := len(f.InTheWay(f.Centre.Repair(monday+1, 1, model.Instant{}))) > 0; got != c.want {
			t.Errorf("%s: in the way %t, want %t", c.name, got, c.want)
		}
	}
}
