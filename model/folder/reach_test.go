package folder

import (
	"bytes"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

// yearsAgo adds posted weeks to a folder, one for each of the weeks before its
// own, of so many rides each and with the texts they were solved from.
func yearsAgo(t testing.TB, f *Folder, weeks, rides int) {
	t.Helper()
	var pattern []model.Told
	for _, p := range f.Centre.Posted {
		pattern = append(pattern, p.Told...)
	}
	first := f.r.today.WeekStart(f.Centre.House.WeekStarts)
	for i := 1; i <= weeks; i++ {
		from := first - model.Date(7*i)
		var b bytes.Buffer
		fmt.Fprintf(&b, "version = %d\nby = %s\nat = %sT16:00\nfrom = %s\nuntil = %s\n", 1000-i, quote(f.Centre.Persons[0].Name), from-3, from, from+6)
		for j := range rides {
			told := pattern[j%len(pattern)]
			told.Date = from + model.Date(j%6)
			writeTold(&b, &told)
		}
		for _, name := range f.planFrom() {
			fmt.Fprintf(&b, "\n%s\nfile = %s\ntext = %s\n", sourceHeader, quote(name), block(string(f.known[name])))
		}
		name := disk(f.Dir).path(postedName(from, 1000-i))
		if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// demo is the demo centre in a folder of its own.
func demo(t testing.TB) *Folder {
	t.Helper()
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../examples/sallowdene")); err != nil {
		t.Fatal(err)
	}
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func TestRecordsOfDatesThatCannotMatterAreNotRead(t *testing.T) {
	f := openYard(t)
	for _, weeks := range []model.Date{1, 10, 18, 19, 30, 150} {
		text := fmt.Sprintf("version = %d\nby = \"Jo Marsh\"\nat = %[2]sT07:00\nfrom = %[2]s\nuntil = %[2]s\n", weeks, monday-7*weeks)
		if err := disk(f.Dir).put(postedName(monday-7*weeks, int(weeks)), []byte(text)); err != nil {
			t.Fatal(err)
		}
		if err := disk(f.Dir).put(fmt.Sprintf("ridden/%s.toml", monday-7*weeks), []byte(fmt.Sprintf("date = %[1]s\nby = \"Jo Marsh\"\nat = %[1]sT07:00\n", monday-7*weeks))); err != nil {
			t.Fatal(err)
		}
	}
	read := func(f *Folder, err error) string {
		if err != nil {
			t.Fatal(err)
		}
		var out []string
		for _, p := range f.Centre.Posted {
			out = append(out, fmt.Sprint(p.Version))
		}
		if len(f.Centre.Ridden) != len(out) {
			t.Errorf("%d dates are closed, %d posted", len(f.Centre.Ridden), len(out))
		}
		return strings.Join(out, " ")
	}
	if got, want := read(Open(f.Dir)), "1 10 18 19"; got != want {
		t.Errorf("versions %s are read, want %s", got, want)
	}
	if got, want := read(OpenAround(f.Dir, monday-7*25)), "1 10 18 19 30"; got != want {
		t.Errorf("around an earlier week versions %s are read, want %s", got, want)
	}
	// What a horse on its own tack only wore then is not clean until somebody says so.
	mark := fmt.Sprintf("own_tack_only = [{ from = %s, end = %s }]\n", monday-7*30, monday-7*29)
	marked := strings.Replace(yard, "name = \"Duke\"\n", "name = \"Duke\"\n"+mark, 1)
	if err := disk(f.Dir).put("yard.toml", []byte(marked)); err != nil {
		t.Fatal(err)
	}
	if got, want := read(Open(f.Dir)), "1 10 18 19 30"; got != want {
		t.Errorf("with an old mark versions %s are read, want %s", got, want)
	}
	if v := post(t, reopen(t, f), monday, onGround); v != 151 {
		t.Errorf("the next is version %d: those that are not read count too", v)
	}
}

// The model looks back for a rider's latest ride, for the work of a run of dates
// and for the horse ridden most; whatever it finds, it finds the same.
func TestAWeekIsTheSameWithEveryRecordRead(t *testing.T) {
	f := demo(t)
	yearsAgo(t, f, 30, 60)
	part, err := Open(f.Dir)
	if err != nil {
		t.Fatal(err)
	}
	all, err := OpenAround(f.Dir, part.r.today-400)
	if err != nil {
		t.Fatal(err)
	}
	if a, b := len(part.Centre.Posted), len(all.Centre.Posted); a >= b || b != 30+len(f.Centre.Posted) {
		t.Fatalf("%d and %d versions are read", a, b)
	}
	nobody := func(f *Folder) string {
		w, p := onGround(f, f.r.today)
		return w.Fingerprint(p)
	}
	if a, b := nobody(part), nobody(all); a != b {
		t.Errorf("the weeks are %s and %s", a, b)
	}
}

func TestAWeekPostedBetweenItsTextsIsReadUpToThem(t *testing.T) {
	f := openYard(t)
	post(t, f, monday, adaRides)
	text := files(t, f.Dir)["posted/2026-11-23-v1.toml"]
	if got := string(withoutSources([]byte(text))); strings.Contains(got, "[[horse]]") || !strings.Contains(text, "[[horse]]") || !strings.Contains(got, "Ada Grey") {
		t.Error(got)
	}
	// A lesson of that very name does not end the record.
	if got := withoutSources([]byte("a = \"[[source]]\"\n")); len(got) != 17 {
		t.Errorf("%s", got)
	}
	g := openTxtar(t, &txtar.Archive{Files: []txtar.File{{Name: "yard.toml", Data: []byte(yard)}, {Name: "posted/a.toml", Data: []byte(text)}}})
	if got := shown(g.Mistakes()); got != "" || len(g.Centre.Posted) != 1 {
		t.Error(got)
	}
}

// dailies adds three years of dates closed and of notes, three on each date.
func dailies(t testing.TB, f *Folder) {
	t.Helper()
	jo, number := f.Centre.Persons[0], 1000
	for i := 1; i <= 780; i++ {
		date := f.r.today - model.Date(i*7/5) - 7
		at := model.Instant{Date: date, Minute: 1000}
		var b bytes.Buffer
		for range 3 {
			number++
			b.Write(noteText(&model.Note{Kind: model.NoteRiderAway, By: jo, At: at, Date: date, Rider: f.Centre.Riders[i%len(f.Centre.Riders)], Words: "has a cold"}, number))
			b.WriteString("\n")
		}
		for name, text := range map[string][]byte{fmt.Sprintf("notes/%s.toml", date): b.Bytes(),
			fmt.Sprintf("ridden/%s.toml", date): riddenText(&model.Ridden{Date: date, By: jo, At: at})} {
			if err := os.WriteFile(disk(f.Dir).path(name), text, 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func BenchmarkOpen(b *testing.B) {
	for _, c := range []struct {
		name   string
		weeks  int
		daily  bool
		around model.Date
	}{{"nothing before", 0, false, 0}, {"160 posted weeks of 75 rides", 160, false, 0}, {"the same, every one read", 160, false, 1200},
		{"the same, 780 dates closed and 2340 notes", 160, true, 0}} {
		f := demo(b)
		yearsAgo(b, f, c.weeks, 75)
		if c.daily {
			dailies(b, f)
		}
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				g, err := OpenAround(f.Dir, f.r.today-c.around)
				if err != nil || len(g.Mistakes()) > 0 {
					b.Fatal(err, shown(g.Mistakes()))
				}
				b.ReportMetric(float64(len(g.Centre.Posted)), "versions-read")
			}
		})
	}
}
