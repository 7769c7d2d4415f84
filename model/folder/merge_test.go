package folder

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

// The centre's file before a sheet is imported again, what the sheet says of the
// horse that an import wrote, and the file afterwards. What a person added between
// stays where it is.
func TestATableIsChangedInItsPlace(t *testing.T) {
	for _, x := range []struct {
		what            string
		wrote           Entry
		byHand          string // what a person made of the file
		says            Entry
		want            string
		change, refused int
	}{
		{"a value", row("horse", "1", "name", "Duke", "weight", "472 kg"),
			"# mine\n[[horse]]\nname = \"Duke\"   # the old one\nweight = \"472 kg\" # scale\nlooks = \"bay\"\n# end\n",
			row("horse", "1", "name", "Duke", "weight", "475 kg"),
			"# mine\n[[horse]]\nname = \"Duke\"   # the old one\nweight = \"475 kg\" # scale\nlooks = \"bay\"\n# end\n", 1, 0},
		{"a key that is new, where the file has no last line end", row("horse", "1", "name", "Duke", "weight", "472 kg"),
			"[[horse]]\nname = \"Duke\"\nweight = \"472 kg\" # scale",
			row("horse", "1", "name", "Duke", "weight", "472 kg", "foaled", "2012"),
			"[[horse]]\nname = \"Duke\"\nweight = \"472 kg\" # scale\nfoaled = 2012\n", 1, 0},
		{"a key that is gone", row("horse", "1", "name", "Duke", "weight", "472 kg", "kept", "field"),
			"[[horse]]\nname = \"Duke\"\n# where?\nkept = \"field\"\nweight = \"472 kg\"\n",
			row("horse", "1", "name", "Duke", "weight", "472 kg", "kept", ""),
			"[[horse]]\nname = \"Duke\"\n# where?\nweight = \"472 kg\"\n", 1, 0},
		{"limits under a header of their own", row("horse", "1", "name", "Duke", "limits.day", "2 h"),
			"[[horse]]\nname = \"Duke\"\n[horse.limits]\nday = \"2 h\"\n\n# Pepper\n[[horse]]\nname = \"Pepper\"\n",
			row("horse", "1", "name", "Duke", "limits.day", "3 h"),
			"[[horse]]\nname = \"Duke\"\nlimits = { day = \"3 h\" }\n\n# Pepper\n[[horse]]\nname = \"Pepper\"\n", 1, 0},
		{"limits with points", row("horse", "1", "name", "Duke", "limits.day", "2 h"),
			"[[horse]]\nname = \"Duke\"\nlimits.day = \"2 h\"\n",
			row("horse", "1", "name", "Duke", "limits.day", "3 h"),
			"[[horse]]\nname = \"Duke\"\nlimits = { day = \"3 h\" }\n", 1, 0},
		{"a list over several lines", row("horse", "1", "name", "Duke", "mounting", "ramp, block"),
			"[[horse]]\nname = \"Duke\"\nmounting = [\n  \"ramp\",  # the long one\n  \"block\",\n]\nkept = \"field\"\n",
			row("horse", "1", "name", "Duke", "mounting", "ramp"),
			"[[horse]]\nname = \"Duke\"\nmounting = [\"ramp\"]\nkept = \"field\"\n", 1, 0},
		{"what says the same in another way", row("horse", "1", "name", "Duke", "mounting", "ramp", "weighed", "2026-11-25"),
			"[[horse]]\nname = \"Duke\"\nmounting = \"ramp\"\nweighed = \"2026-11-25\"\n",
			row("horse", "1", "name", "Duke", "mounting", "ramp", "weighed", "2026-11-25"),
			"[[horse]]\nname = \"Duke\"\nmounting = \"ramp\"\nweighed = \"2026-11-25\"\n", 0, 0},
		{"a key that a person took out", row("horse", "1", "name", "Duke", "weight", "472 kg", "kept", "field"),
			"[[horse]]\nname = \"Duke\"\nweight = \"472 kg\"\n",
			row("horse", "1", "name", "Duke", "weight", "472 kg", "kept", "field"),
			"[[horse]]\nname = \"Duke\"\nweight = \"472 kg\"\n", 0, 1},
		{"a key that the sheet leaves empty and a person filled in", row("horse", "1", "name", "Duke", "weight", "472 kg", "kept", ""),
			"[[horse]]\nname = \"Duke\"\nweight = \"472 kg\"\nkept = \"field\"\n",
			row("horse", "1", "name", "Duke", "weight", "472 kg", "kept", ""),
			"[[horse]]\nname = \"Duke\"\nweight = \"472 kg\"\nkept = \"field\"\n", 0, 0},
	} {
		t.Run(x.what, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "larkfield")
			imports(t, dir, []Entry{herd[0], x.wrote})
			put(t, dir, "horses.toml", x.byHand)
			f, err := Open(dir)
			if err != nil {
				t.Fatal(err)
			}
			i, wrong, err := f.Import([]Entry{x.says}, nil)
			if err != nil || len(wrong) > 0 {
				t.Fatal(err, wrong)
			}
			if len(i.Changed) != x.change || len(i.Listed) != x.refused || len(i.Added) > 0 {
				t.Errorf("changed %+v, listed %+v, added %+v", i.Changed, i.Listed, i.Added)
			}
			if x.change > 0 {
				if _, err := i.Write(kim, noon); err != nil {
					t.Fatal(err)
				}
			}
			got, err := os.ReadFile(filepath.Join(dir, "horses.toml"))
			if err != nil || string(got) != x.want {
				t.Errorf("%v\n%s\nnot\n%s", err, got, x.want)
			}
		})
	}
}

// Somebody else writes between the reading and the writing: nothing is written over.
func TestAnImportStopsWhereTheFolderHasChangedMeanwhile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	i, _, err := f.Import([]Entry{row("horse", "1", "name", "Duke", "weight", "475 kg")}, nil)
	if err != nil {
		t.Fatal(err)
	}
	edited(t, dir, "horses.toml", "472 kg", "480 kg")
	var changed *ChangedError
	if _, err := i.Write(kim, noon); !errors.As(err, &changed) {
		t.Error(err)
	}
	holds(t, dir, "horses.toml", "480 kg")
}
