package folder

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"tackwright/model"
)

// row is a row of a sheet: key, what it says, key, what it says ...
func row(table, at string, said ...string) Entry {
	e := Entry{Table: table, At: at}
	for i := 0; i < len(said); i += 2 {
		if said[i+1] == "" {
			e.Empty = append(e.Empty, said[i])
			continue
		}
		e.Values = append(e.Values, Value{Key: said[i], Said: Said{Text: said[i+1]}, At: at + " " + said[i]})
	}
	return e
}

var (
	kim  = &model.Person{Name: "Kim Alder"}
	noon = model.Instant{Date: model.On(2026, 11, 25), Minute: 12 * 60}
)

// imports lays rows over the folder and writes it.
func imports(t *testing.T, dir string, rows []Entry, take ...string) *Import {
	t.Helper()
	f, err := Open(dir)
	if err != nil {
		f, err = Begin(dir, "Larkfield")
	}
	if err != nil {
		t.Fatal(err)
	}
	i, wrong, err := f.Import(rows, take)
	if err != nil || len(wrong) > 0 {
		t.Fatal(err, wrong)
	}
	if _, err := i.Write(kim, noon); err != nil {
		t.Fatal(err)
	}
	return i
}

func edited(t *testing.T, dir, file, old, new string) {
	t.Helper()
	name := filepath.Join(dir, file)
	text, err := os.ReadFile(name)
	if err != nil || !strings.Contains(string(text), old) {
		t.Fatalf("%s has no %q: %v\n%s", file, old, err, text)
	}
	if err := os.WriteFile(name, []byte(strings.Replace(string(text), old, new, 1)), 0o666); err != nil {
		t.Fatal(err)
	}
}

func put(t *testing.T, dir, file, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o666); err != nil {
		t.Fatal(err)
	}
}

func holds(t *testing.T, dir, file, want string) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(dir, file))
	if err != nil || !strings.Contains(string(text), want) {
		t.Errorf("%s has no %q: %v\n%s", file, want, err, text)
	}
}

var herd = []Entry{
	row("person", "People 2", "name", "Kim Alder", "role", "instructor"),
	row("horse", "Horses 2", "name", "Duke", "weight", "472 kg", "foaled", "2012", "kept", ""),
	row("horse", "Horses 3", "name", "Pepper", "weight", "430 kg", "foaled", "2014", "kept", "field 2", "apart", "Duke"),
}

func TestAFolderIsMadeOfRows(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	i := imports(t, dir, herd)
	if i.What() != "imported 1 person, 2 horses" {
		t.Error(i.What())
	}
	holds(t, dir, "horses.toml", "[[horse]]\nname = \"Pepper\"\nweight = \"430 kg\"\nfoaled = 2014\nkept = \"field 2\"\napart = [\"Duke\"]\n")
	f, err := Open(dir)
	if err != nil || len(f.Mistakes()) > 0 || len(f.Centre.Horses) != 2 {
		t.Error(err, f.Mistakes())
	}
}

// What begins has the settings of a new folder, explained, and none of its examples.
func TestAFolderBeginsEmpty(t *testing.T) {
	f, err := Begin(filepath.Join(t.TempDir(), "larkfield"), `The "Lark" field`)
	if err != nil || len(f.Mistakes()) > 0 {
		t.Fatal(err, f.Mistakes())
	}
	c := f.Centre
	if c.Name != `The "Lark" field` || len(c.Persons)+len(c.Arenas)+len(c.House.Levels) > 0 {
		t.Errorf("%q %v %v %v", c.Name, c.Persons, c.Arenas, c.House.Levels)
	}
	if text := string(f.text("centre.toml")); !strings.Contains(text, "# zone =") || !strings.Contains(text, "[house]") {
		t.Error(text)
	}
	if _, err := Begin(f.Dir, " "); err == nil {
		t.Error("a name that is none is taken")
	}
}

func TestASecondImportOfTheSameDoublesNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	before, err := os.ReadFile(filepath.Join(dir, "horses.toml"))
	if err != nil {
		t.Fatal(err)
	}
	i := imports(t, dir, herd)
	after, err := os.ReadFile(filepath.Join(dir, "horses.toml"))
	if err != nil || string(before) != string(after) || i.Same != 3 || len(i.Added)+len(i.Changed)+len(i.Listed) > 0 {
		t.Errorf("%v %+v\n%s", err, i, after)
	}
}

func TestASecondImportChangesOnlyWhatIsAsImportWroteIt(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	edited(t, dir, "horses.toml", `weight = "472 kg"`, `weight = "480 kg" # on the new scale`)
	anew := []Entry{herd[0],
		row("horse", "Horses 2", "name", "Duke", "weight", "475 kg", "foaled", "2011", "kept", "stall 3"),
		row("horse", "Horses 3", "name", "Pepper", "weight", "433 kg", "foaled", "2014", "kept", ""),
		row("horse", "Horses 4", "name", "Wren", "weight", "390 kg", "foaled", "2015"),
	}
	i := imports(t, dir, anew)
	holds(t, dir, "horses.toml", `weight = "480 kg" # on the new scale`)
	holds(t, dir, "horses.toml", "foaled = 2011\nkept = \"stall 3\"\n")
	holds(t, dir, "horses.toml", "weight = \"433 kg\"\nfoaled = 2014\napart") // the stall is gone; apart has no column now
	holds(t, dir, "horses.toml", `name = "Wren"`)
	if len(i.Listed) != 1 || i.Listed[0].String() != "horse Duke" || len(i.Listed[0].Keys) != 1 ||
		i.Listed[0].Keys[0].Folder != "480 kg" || i.Listed[0].Keys[0].Sheet != "475 kg" {
		t.Errorf("%+v", i.Listed)
	}
	i = imports(t, dir, anew, "Duke")
	holds(t, dir, "horses.toml", `weight = "475 kg" # on the new scale`)
	if len(i.Listed) > 0 {
		t.Errorf("%+v", i.Listed)
	}
}

func TestWhatWasTakenOutByHandIsListed(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	edited(t, dir, "horses.toml", "[[horse]]\nname = \"Pepper\"\nweight = \"430 kg\"\nfoaled = 2014\nkept = \"field 2\"\napart = [\"Duke\"]\n", "")
	i := imports(t, dir, herd)
	if len(i.Listed) != 1 || i.Listed[0].String() != "horse Pepper" || i.Listed[0].Why != takenOf {
		t.Errorf("%+v", i.Listed)
	}
	i = imports(t, dir, herd, "horse Pepper")
	if len(i.Added) != 1 {
		t.Errorf("%+v", i.Added)
	}
	holds(t, dir, "horses.toml", `name = "Pepper"`)
}

func TestARowThatIsGoneFromTheSheetIsListedAndGoesByItsName(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	i := imports(t, dir, herd[:2])
	if len(i.Listed) != 1 || i.Listed[0].String() != "horse Pepper" || i.Listed[0].Why != gone {
		t.Errorf("%+v", i.Listed)
	}
	imports(t, dir, herd[:2], "Pepper")
	f, err := Open(dir)
	if err != nil || len(f.Centre.Horses) != 1 {
		t.Error(err, f.Centre.Horses)
	}
}

func TestAnEntryOfAPersonsOwnIsListedAndItsFileKept(t *testing.T) {
	dir := t.TempDir()
	put(t, dir, "centre.toml", "[centre]\nname = \"Larkfield\"\n[[person]]\nname = \"Kim Alder\"\nrole = \"instructor\"\n")
	put(t, dir, "horses.toml", "# mine\nhorse = [{ name = \"Duke\", weight = \"472 kg\", foaled = 2010 }]\n")
	i := imports(t, dir, herd)
	if len(i.Listed) != 1 || i.Listed[0].String() != "horse Duke" || i.Same != 1 {
		t.Errorf("%+v", i.Listed)
	}
	holds(t, dir, "horses-imported.toml", `name = "Pepper"`)
	imports(t, dir, herd, "Duke")
	holds(t, dir, "horses.toml", "# mine\nhorse = [{ name = \"Duke\", weight = \"472 kg\", foaled = 2012 }]\n")
}

func TestARenamedHorseIsTheSameHorse(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	edited(t, dir, "horses.toml", `name = "Duke"`, "name = \"The Duke\"\nwas = \"Duke\"")
	i := imports(t, dir, herd)
	if len(i.Added) > 0 {
		t.Errorf("%+v", i.Added)
	}
}

func TestAnImportCanBeUndone(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "larkfield")
	imports(t, dir, herd)
	imports(t, dir, append([]Entry{row("horse", "Horses 4", "name", "Wren")}, herd...))
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.Undo(0, kim, noon); err != nil {
		t.Fatal(err)
	}
	if f, err = Open(dir); err != nil || len(f.Centre.Horses) != 2 {
		t.Error(err, f.Centre.Horses)
	}
	if i := imports(t, dir, herd); i.Same != 3 {
		t.Errorf("%+v", i)
	}
}

func TestMistakesAreToldByTheirCells(t *testing.T) {
	f, err := Begin(filepath.Join(t.TempDir(), "larkfield"), "Larkfield")
	if err != nil {
		t.Fatal(err)
	}
	_, wrong, err := f.Import([]Entry{
		row("horse", "A2", "name", "Duke", "weight", "heavy"),
		row("horse", "A3", "name", "Duke", "barrel", "huge"),
		row("rider", "B2", "name", "Ada Grey", "support", "perhaps", "never_on", "Dike"),
		row("lesson", "C2", "name", "Tue", "day", "Tuesday", "start", "10:00", "length", "45 min"),
	}, nil)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, w := range wrong {
		got = append(got, w.At+": "+w.Message+" / "+w.Mend)
	}
	text := strings.Join(got, "\n")
	for _, want := range []string{
		`A2 weight: "heavy" is not a horse's weight`,
		`A3 name: the horse "Duke" is here twice: it is at A2 name as well`,
		`A3 barrel: "huge" is not a barrel`,
		`B2 support: "perhaps" is a text; here belongs yes or no / write yes or no`,
		`B2 never_on: there is no horse "Dike" / did you mean "Duke"?`,
		`C2: it has no arena / fill in its arena, such as: Indoor`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("not said: %s\n%s", want, text)
		}
	}
	if _, err := os.Stat(f.Dir); err == nil {
		t.Error("the folder was made all the same")
	}
}
