package folder

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

const herdFile = `# The herd of Larkfield.

[[horse]]
name = "Bramble"   # came in March
weight = "400 kg"  # by scale
foaled = 2011
looks = "grey"
limits = { day = "2 h", week_days = 4 }

# Moth is lent out in summer.
[[horse]]
name = "Moth"
weight = "410 kg"
foaled = 2010
`

func edits(t *testing.T, f *Folder, e Entry) (string, []Wrong) {
	t.Helper()
	_, wrong, err := f.Edit(e, f.Centre.Persons[0], model.Instant{Date: monday, Minute: 600})
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(filepath.Join(f.Dir, "herd.toml"))
	if err != nil {
		t.Fatal(err)
	}
	return string(text), wrong
}

func bramble(values ...string) Entry {
	e := Entry{Table: "horse", Values: []Value{{Key: "name", Said: Said{Text: "Bramble"}}}}
	for i := 0; i < len(values); i += 2 {
		e.Values = append(e.Values, Value{Key: values[i], Said: Said{Text: values[i+1]}, At: values[i]})
	}
	return e
}

func TestAnEditThroughAFormChangesItsValueAlone(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	got, _ := edits(t, f, bramble("weight", "412 kg"))
	if want := strings.Replace(herdFile, `"400 kg"  # by scale`, `"412 kg"  # by scale`, 1); got != want {
		t.Errorf("the file is:\n%s", got)
	}
	if h := reopen(t, f).Centre.Horses; h[0].Weight != 412_000 {
		t.Errorf("%s weighs %d g", h[0].Name, h[0].Weight)
	}
}

func TestAValueGoesWhereAFormLeavesItEmpty(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	e := bramble()
	e.Empty = []string{"looks"}
	if got, _ := edits(t, f, e); got != strings.Replace(herdFile, "looks = \"grey\"\n", "", 1) {
		t.Errorf("the file is:\n%s", got)
	}
}

func TestANewEntryStandsBehindTheLastOfItsKind(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	e := Entry{Table: "horse", Values: []Value{{Key: "name", Said: Said{Text: "Tad"}}, {Key: "foaled", Said: Said{Text: "2015"}}}}
	edits(t, f, e)
	got, err := os.ReadFile(filepath.Join(f.Dir, "yard.toml")) // whose horses come last
	if want := yard + "\n[[horse]]\nname = \"Tad\"\nfoaled = 2015\n"; err != nil || string(got) != want {
		t.Errorf("%v; the file is:\n%s", err, got)
	}
	if n := len(reopen(t, f).Centre.Horses); n != 5 {
		t.Errorf("%d horses", n)
	}
}

func TestAMistakeInAFormIsToldByItsFieldAndChangesNothing(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	got, wrong := edits(t, f, bramble("weight", "a lot"))
	if len(wrong) != 1 || wrong[0].At != "weight" || got != herdFile {
		t.Errorf("%+v; the file is:\n%s", wrong, got)
	}
}

func TestAnEditOfAFileThatChangedMeanwhileIsRefused(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	if err := os.WriteFile(filepath.Join(f.Dir, "herd.toml"), []byte(herdFile+"# mine\n"), 0o666); err != nil {
		t.Fatal(err)
	}
	_, _, err := f.Edit(bramble("weight", "412 kg"), f.Centre.Persons[0], model.Instant{Date: monday, Minute: 600})
	var changed *ChangedError
	if !errors.As(err, &changed) {
		t.Error(err)
	}
}

func TestAnEditCanBeUndone(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	edits(t, f, bramble("weight", "412 kg"))
	f = reopen(t, f)
	if _, err := f.Undo(0, f.Centre.Persons[0], model.Instant{Date: monday, Minute: 700}); err != nil {
		t.Fatal(err)
	}
	if text, err := os.ReadFile(filepath.Join(f.Dir, "herd.toml")); err != nil || string(text) != herdFile {
		t.Errorf("%v; the file is:\n%s", err, text)
	}
}

func TestAnEntryThatIsRenamedKeepsItsOldNames(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)},
		txtar.File{Name: "apart.toml", Data: []byte("[[horse]]\nname = \"Tad\"\nfoaled = 2015\napart = [\"Bramble\"]\n")})
	for _, x := range []struct{ was, name, want string }{
		{"Bramble", "Briar", `was = ["Bramble"]`},
		{"Briar", "Rose", `was = ["Bramble", "Briar"]`},
		{"Rose", "Bramble", `was = ["Briar", "Rose"]`},
	} {
		e := Entry{Table: "horse", Was: x.was, Values: []Value{{Key: "name", Said: Said{Text: x.name}}}}
		got, wrong := edits(t, f, e)
		if len(wrong) > 0 || !strings.Contains(got, `name = "`+x.name+`"   # came in March`) || !strings.Contains(got, x.want) {
			t.Fatalf("%v; the file is:\n%s", wrong, got)
		}
		f = reopen(t, f)
		if m := f.Mistakes(); len(m) > 0 {
			t.Fatal(m)
		}
		for _, h := range f.Centre.Horses {
			if h.Name == "Tad" && (len(h.Apart) != 1 || h.Apart[0].Name != x.name) {
				t.Errorf("it is apart from %v", h.Apart)
			}
		}
	}
	if all, err := f.History(1); err != nil || all[0].What != "changed horse Rose to Bramble: name, was" {
		t.Errorf("%v: %+v", err, all)
	}
}

func TestAnEntryIsNotGivenTheNameOfAnother(t *testing.T) {
	f := openYard(t, txtar.File{Name: "herd.toml", Data: []byte(herdFile)})
	e := Entry{Table: "horse", Was: "Bramble", Values: []Value{{Key: "name", Said: Said{Text: "Moth"}, At: "name"}}}
	if got, wrong := edits(t, f, e); len(wrong) == 0 || got != herdFile {
		t.Errorf("%v; the file is:\n%s", wrong, got)
	}
	e = Entry{Table: "fit", Was: "Bramble S1", Values: []Value{{Key: "horse", Said: Said{Text: "Moth"}}}}
	if _, _, err := f.Edit(e, f.Centre.Persons[0], model.Instant{Date: monday, Minute: 600}); err == nil {
		t.Error("a row of the chart is renamed")
	}
}
