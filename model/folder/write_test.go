package folder

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// yard is a small centre in which two riders ride each Tuesday.
const yard = `
[centre]
name = "Larkfield"
today = 2026-11-23
[house]
elsewhere = ["forms"]
[[person]]
name = "Jo Marsh"
role = "office"
may_end = ["vet's stop", "cleaning", "check", "form"]
[[arena]]
name = "Indoor"
[[horse]]
name = "Duke"
weight = "500 kg"
foaled = 2012
[[horse]]
name = "Pepper"
weight = "480 kg"
foaled = 2014
[[tack]]
tag = "S1"
kind = "saddle"
size = "17 in"
billets = "long"
[[tack]]
tag = "P1"
kind = "pad"
with_seat = "S1"
[[tack]]
tag = "G1"
kind = "girth"
size = "26 in"
family = "short"
[[fit]]
horse = "Duke"
seat = "S1"
girth = "24-28 in"
by = "the saddle fitter"
approved = 2026-06-01
until = 2027-06-01
[[rider]]
name = "Ada Grey"
weight = "60 kg"
height = "165 cm"
[[rider]]
name = "Cy Reed"
weight = "70 kg"
height = "165 cm"
[[lesson]]
name = "Tue 10:00"
day = "Tuesday"
start = 10:00
length = "45 min"
arena = "Indoor"
instructor = "Jo Marsh"
riders = ["Ada Grey", "Cy Reed"]
`

var tuesdayMorning = model.Instant{Date: monday + 1, Minute: 7*60 + 40}

// openYard opens the small centre in a new folder.
func openYard(t testing.TB, more ...txtar.File) *Folder {
	t.Helper()
	f := openTxtar(t, &txtar.Archive{Files: append([]txtar.File{{Name: "yard.toml", Data: []byte(yard)}}, more...)})
	if got := shown(f.Mistakes()); got != "" {
		t.Fatal(got)
	}
	return f
}

func reopen(t testing.TB, f *Folder) *Folder {
	t.Helper()
	g, err := Open(f.Dir)
	if err != nil {
		t.Fatal(err)
	}
	if got := shown(g.Mistakes()); got != "" {
		t.Fatal(got)
	}
	return g
}

// adaRides is a plan of the week from a date on in which Ada Grey rides Duke.
func adaRides(f *Folder, from model.Date) (*model.Week, *model.Plan) {
	c := f.Centre
	w := c.Week(from, 7, model.Instant{})
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
	for i, r := range w.Rides {
		if r.Rider.Name == "Ada Grey" && r.State == model.Open {
			p.Turns[i] = &model.Turn{Horse: c.Horses[0], Seat: c.Pieces[0], Pads: c.Pieces[1:2], Girth: c.Pieces[2]}
		} else {
			p.Ground[i] = []string{`no horse "free"`, "a 'quote'"}
		}
	}
	p.Proof.Goals = []model.GoalResult{{Name: "seat a", Value: 1, Bound: 1, Proved: true}}
	p.Proof.Hash = w.Fingerprint(p)
	return w, p
}

// onGround is a plan of the week from a date on in which nobody rides.
func onGround(f *Folder, from model.Date) (*model.Week, *model.Plan) {
	w := f.Centre.Week(from, 7, model.Instant{})
	return w, &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: make([][]string, len(w.Rides))}
}

func post(t testing.TB, f *Folder, from model.Date, plan func(*Folder, model.Date) (*model.Week, *model.Plan)) int {
	t.Helper()
	w, p := plan(f, from)
	version, err := f.Post(w, p, f.Centre.Persons[0], model.Instant{Date: monday, Minute: 16 * 60})
	if err != nil {
		t.Fatal(err)
	}
	return version
}

func lame(f *Folder) *model.Note {
	return &model.Note{Kind: model.NoteHorseOut, By: f.Centre.Persons[0], At: tuesdayMorning, From: 7*60 + 40,
		Horse: f.Centre.Horses[0], Why: model.Lame, Review: monday + 3, Words: `short "in front"`}
}

func noted(t testing.TB, f *Folder, n *model.Note) int {
	t.Helper()
	number, err := f.AddNote(n)
	if err != nil {
		t.Fatal(err)
	}
	return number
}

// files are all files under a folder with what they hold.
func files(t testing.TB, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	err := filepath.WalkDir(dir, func(path string, e os.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(path)
		name, _ := filepath.Rel(dir, path)
		all[filepath.ToSlash(name)] = string(data)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

func TestANoteOfEveryKindIsReadBackAsItWasWritten(t *testing.T) {
	f := openYard(t)
	c := f.Centre
	jo, duke, ada, tue, indoor, s1 := c.Persons[0], c.Horses[0], c.Riders[0], c.Lessons[0], c.Arenas[0], c.Pieces[0]
	notes := map[model.NoteKind]model.Note{
		model.NoteHorseOut: {Horse: duke, Why: model.Appointment, From: 480, Until: 540, Through: monday + 1, Review: monday + 2}, model.NoteHorseBack: {Horse: duke, From: 400},
		model.NoteOwnTack: {Horse: duke}, model.NoteOwnTackEnd: {Horse: duke}, model.NotePieceOut: {Piece: s1, Words: "a \\ and a \ttab"}, model.NotePieceBack: {Piece: s1},
		model.NoteCleaned: {Piece: s1, From: 100}, model.NoteRiderAway: {Rider: ada, Lesson: tue, Through: monday + 9}, model.NoteRiderAdded: {Rider: ada, Lesson: tue},
		model.NoteCancelled: {Lesson: tue}, model.NoteMoved: {Lesson: tue, From: 660, Until: 24 * 60, Arena: indoor}, model.NoteShortened: {Lesson: tue, Until: 630},
		model.NoteHands: {Lesson: tue, Hands: model.Hands{Leaders: 0, Sidewalkers: -1}}, model.NoteWeather: {Warmth: 0, Humidity: 60}, model.NoteArenaClosed: {Arena: indoor, From: 720},
		model.NoteInstructor: {Lesson: tue, Instructor: jo}, model.NoteAway: {Instructor: jo, From: 60}, model.NoteKeep: {Rider: ada, Horse: duke, Seat: s1}, model.NoteNever: {Rider: ada, Horse: duke},
		model.NoteForm: {Rider: ada, Through: monday + 365}, model.NoteWorkOff: {Horse: duke, From: 660},
	}
	var want []string
	for i, kind := range model.NoteKinds {
		n := notes[kind]
		n.Kind, n.By, n.At, n.Date = kind, jo, tuesdayMorning, monday+model.Date(i%2)
		if kind != model.NoteHands {
			n.Hands = model.NoHands
		}
		if n.Number = noted(t, f, &n); n.Number != i+1 {
			t.Errorf("a %s is note %d, want %d", kind, n.Number, i+1)
		}
		want = append(want, fields(&n))
	}
	undo := model.Note{By: jo, At: tuesdayMorning, Date: monday + 1, Undoes: 1, Hands: model.NoHands}
	undo.Number = noted(t, f, &undo)
	want = append(want, fields(&undo))
	var got []string
	for _, n := range reopen(t, f).Centre.Notes {
		got = append(got, fields(n))
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

// fields are all fields of a record, with nouns by their names, so that those of
// two readings can be compared.
func fields(record any) string {
	var b strings.Builder
	write(&b, reflect.ValueOf(record).Elem(), 2)
	return b.String()
}

func TestANoteThatWouldBeAMistakeIsRefusedAndNothingIsWritten(t *testing.T) {
	f := openYard(t)
	before := files(t, f.Dir)
	jo, duke := f.Centre.Persons[0], f.Centre.Horses[0]
	for want, n := range map[string]model.Note{
		`a note of the kind "horse out" has no why`:                  {Kind: model.NoteHorseOut, By: jo, At: tuesdayMorning, Horse: duke},
		`tack does not belong to a note of the kind "horse back"`:    {Kind: model.NoteHorseBack, By: jo, At: tuesdayMorning, Horse: duke, Piece: f.Centre.Pieces[0]},
		`there is no horse "Rex"`:                                    {Kind: model.NoteHorseBack, By: jo, At: tuesdayMorning, Horse: &model.Horse{Name: "Rex"}},
		"nobody is named who does this; name a person of the folder": {Kind: model.NoteHorseBack, At: tuesdayMorning, Horse: duke},
		"there is no note 7":                                         {Undoes: 7, By: jo, At: tuesdayMorning},
		"through 2026-11-20 is before date 2026-11-24":               {Kind: model.NoteRiderAway, By: jo, At: tuesdayMorning, Date: monday + 1, Through: monday - 3, Rider: f.Centre.Riders[0]},
		"a note has a kind, or undoes another note":                  {By: jo, At: tuesdayMorning},
	} {
		_, err := f.AddNote(&n)
		var refused *RefusedError
		if !errors.As(err, &refused) || refused.Why != want {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	after := files(t, f.Dir)
	delete(after, lockFile)
	if d := cmp.Diff(before, after); d != "" {
		t.Error(d)
	}
}

func TestANoteIsOnlyAddedToTheFileOfItsDate(t *testing.T) {
	hand := "# by hand, and no line end\n[[note]]\nnumber = 4_1\nkind = \"rider away\"\nat = 2026-11-24T06:00\nby = \"Jo Marsh\"\nrider = \"Cy Reed\""
	for name, c := range map[string]struct{ file, text, to string }{
		"a file by hand":              {"notes/2026-11-24.toml", hand, "notes/2026-11-24.toml"},
		"a torn file is left alone":   {"notes/2026-11-24.toml", hand + "\nhorse = \"Du", "notes/2026-11-24-2.toml"},
		"so is one with a plain list": {"notes/2026-11-24.toml", `note = [{ number = 41, kind = "rider away", at = 2026-11-24T06:00, by = "Jo Marsh", rider = "Cy Reed" }]`, "notes/2026-11-24-2.toml"},
		"another file of the date":    {"notes/mine.toml", hand, "notes/2026-11-24.toml"},
	} {
		t.Run(name, func(t *testing.T) {
			f := openTxtar(t, &txtar.Archive{Files: []txtar.File{{Name: "yard.toml", Data: []byte(yard)}, {Name: c.file, Data: []byte(c.text)}}})
			if n := noted(t, f, lame(f)); n != 42 {
				t.Errorf("it is note %d, and one was 41", n)
			}
			all := files(t, f.Dir)
			if got := all[c.to]; !strings.Contains(got, "number = 42") || c.to == c.file && !strings.HasPrefix(got, c.text) || c.to != c.file && all[c.file] != c.text {
				t.Errorf("%s holds %s", c.to, got)
			}
			g, err := Open(f.Dir)
			if err != nil || g.Centre.Horses[0].Out == nil {
				t.Errorf("the note is not obeyed: %v", err)
			}
		})
	}
}

func TestADateIsClosedAndClosedAgain(t *testing.T) {
	f := openYard(t, txtar.File{Name: "ridden/mine.toml", Data: []byte("date = 2026-11-17\nby = \"Jo Marsh\"\nat = 2026-11-17T18:00\n")})
	c := f.Centre
	jo, duke, ada, cy, tue := c.Persons[0], c.Horses[0], c.Riders[0], c.Riders[1], c.Lessons[0]
	turn := &model.Turn{Horse: duke, Seat: c.Pieces[0], Pads: c.Pieces[1:2], Girth: c.Pieces[2]}
	want := &model.Ridden{Date: monday - 6, By: jo, At: model.Instant{Date: monday - 6, Minute: 1100}, Differs: []model.Differs{
		{How: model.NoShow, Lesson: tue, Rider: ada},
		{How: model.ExtraRide, Lesson: tue, Rider: cy, Turn: turn, Start: 600, End: 24 * 60},
		{How: model.CutShort, Lesson: tue, Rider: ada, End: 620},
		{How: model.OtherHorse, Lesson: tue, Rider: cy, Turn: &model.Turn{Horse: duke}},
	}, Works: []*model.Work{
		{Horse: duke, Kind: "lunging", Start: 540, End: 560, Arena: c.Arenas[0], Person: jo, Seat: c.Pieces[0], Pads: c.Pieces[1:2], Girth: c.Pieces[2], On: monday - 6, Weekday: 2},
	}}
	for _, date := range []model.Date{monday - 6, monday + 1} {
		want.Date, want.Works[0].On = date, date
		if err := f.Close(want); err != nil {
			t.Fatal(err)
		}
	}
	g := reopen(t, f)
	if len(g.Centre.Ridden) != 2 || files(t, f.Dir)["ridden/2026-11-24.toml"] == "" {
		t.Fatalf("%d dates are closed", len(g.Centre.Ridden))
	}
	if d := cmp.Diff(fields(want), fields(g.Centre.Ridden[1])); d != "" {
		t.Error(d)
	}
	if got := files(t, f.Dir)["ridden/mine.toml"]; !strings.Contains(got, "no-show") {
		t.Errorf("a date that was closed in another file is closed in it again: %s", got)
	}
	var refused *RefusedError
	if err := f.Close(&model.Ridden{Date: monday, By: jo, At: tuesdayMorning, Differs: []model.Differs{{How: model.ExtraRide, Lesson: tue, Rider: cy}}}); !errors.As(err, &refused) {
		t.Errorf("an extra ride on no horse was taken: %v", err)
	}
}
