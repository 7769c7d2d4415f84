package importing

import (
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model/folder"
)

// sheet makes one of lines whose cells have bars between them.
func sheet(name string, lines ...string) *spreadsheet.Sheet {
	s := &spreadsheet.Sheet{Name: name, Title: name}
	for _, line := range lines {
		var row []string
		for _, cell := range strings.Split(line, "|") {
			row = append(row, strings.TrimSpace(cell))
		}
		s.Rows = append(s.Rows, row)
	}
	return s
}

func begun(t testing.TB) *folder.Folder {
	t.Helper()
	f, err := folder.Begin(filepath.Join(t.TempDir(), "larkfield"), "Larkfield")
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// says are the entries of a table as text: "name=Duke weight=1040 lb".
func says(r *Reading, table string) []string {
	var all []string
	for _, e := range r.Entries {
		if e.Table != table {
			continue
		}
		var words []string
		for _, v := range e.Values {
			words = append(words, v.Key+"="+valueWords(v))
		}
		all = append(all, strings.Join(words, " "))
	}
	return all
}

func valueWords(v folder.Value) string {
	text := strings.TrimSpace(v.Said.Text + " " + v.Said.Unit)
	for _, item := range v.Items {
		var words []string
		for _, w := range item.Values {
			words = append(words, w.Said.Text)
		}
		text += "(" + strings.Join(words, ",") + ")"
	}
	return text
}

func check(t *testing.T, got, want []string) {
	t.Helper()
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestACentresOwnWordsInCellsAreReadAsOurs(t *testing.T) {
	m := &Mapping{Sheets: []SheetMapping{{Name: "Sattelkammer", Is: "tack",
		Columns: map[string]string{"Tag": "tag", "Was": "kind", "Geht auf": "goes on"},
		Words:   map[string]string{"Sattel": "saddle", "Westernsattel": "western saddle"}}}}
	r, wrong := Read([]*spreadsheet.Sheet{sheet("Sattelkammer",
		"Tag | Was | Geht auf",
		"S1 | sattel |", // in whatever letters
		"X1 | Steigbügel | Westernsattel, Sattel",
		"X3 | Zügel | Sattel, alt; Westernsattel", // a comma between semicolons is a part of an item
		"X2 | Sattelgriff |")}, m, begun(t))       // not a part of a word
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	check(t, says(r, "tack"), []string{"tag=S1 kind=saddle", "tag=X1 kind=Steigbügel goes_on=western saddle; saddle",
		"tag=X3 kind=Zügel goes_on=Sattel, alt; western saddle", "tag=X2 kind=Sattelgriff"})
}

func TestAHeadIsReadInManyWays(t *testing.T) {
	for _, x := range []struct{ kind, head, key, unit string }{
		{"horses", "Name", "name", ""}, {"horses", "PONY", "name", ""}, {"horses", "weight (kg)", "weight", "kg"},
		{"horses", "Weight in lbs", "weight", "lb"}, {"horses", "Height [hh]", "height", "hh"}, {"horses", "days_off", "days_off", ""},
		{"horses", "limits day", "limits.day", ""}, {"horses", "Must be led?", "must_be_led", ""},
		{"horses", "Wt (lb)", "weight", "lb"}, {"riders", "form until", "form_until", ""}, {"riders", "Form expires:", "form_until", ""}, {"riders", "needs support", "support", ""},
		{"riders", "Surname", "name", ""}, {"lessons", "Minutes", "length", "min"}, {"tack", "Size (in)", "size", "in"},
		{"tack", "needs pad", "needs_pad", ""}, {"pairings", "saddle", "seat", ""}, {"fit", "Saddle", "seat", ""},
		{"places", "every other", "every_other", ""},
	} {
		h, ok := kindOf(x.kind).readHead(x.head)
		if !ok || h.key != x.key || h.unit != x.unit {
			t.Errorf("%s, %q: %+v %v", x.kind, x.head, h, ok)
		}
	}
	for _, text := range []string{"Owner", "Phone", "wieght", "", "(kg)"} {
		if h, ok := kindOf("horses").readHead(text); ok {
			t.Errorf("%q is %+v", text, h)
		}
	}
}

func TestALessonCanGoOverSeveralRows(t *testing.T) {
	r, wrong := Read([]*spreadsheet.Sheet{
		sheet("Terms", "name|first|last", "Winter|2026-11-23|2027-02-14"),
		sheet("Riders", "name", "Ada Grey", "Ben Stone", "Cleo Hale"),
		sheet("Horses", "name", "Duke"),
		sheet("Timetable", "Day|Time|Length|Ring|Teacher|Rider|Horse",
			"Tue|9:30|45 min|Indoor|Kim|Ada|duke",
			"||||Kim|ben stone",                     // the same lesson
			"|10:30|45 min|Indoor|Kim|Cleo Hale",    // the same day
			"Tue|09:30|45 min|Field|Lou|Cleo Hale"), // at the same time elsewhere
	}, nil, begun(t))
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	check(t, says(r, "lesson"), []string{
		"name=Tue 09:30 Indoor day=Tue start=9:30 length=45 min arena=Indoor instructor=Kim riders=Ada Grey;(Ada Grey)(Ben Stone)",
		"name=Tue 10:30 start=10:30 length=45 min arena=Indoor instructor=Kim riders=Cleo Hale; day=Tue",
		"name=Tue 09:30 Field day=Tue start=09:30 length=45 min arena=Field instructor=Lou riders=Cleo Hale;"})
	check(t, says(r, "term"), []string{"name=Winter first=2026-11-23 last=2027-02-14 pairings=(Ada Grey,Tue 09:30 Indoor,Duke)"})
	check(t, r.ReadAs, []string{"Ada as Ada Grey"})
}

func TestHoursInOneCellAreAStartAndAnEnd(t *testing.T) {
	r, wrong := Read([]*spreadsheet.Sheet{sheet("Lessons", "day|time", "Tue|10:00-10:45", "Tue|11.00 – 11.45", "Tue|2-2:45 pm", "Tue|5pm to 6 pm", "Tue|noon - 1", "Tue|4:00")}, nil, begun(t))
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	check(t, says(r, "lesson"), []string{
		"name=Tue 10:00 day=Tue start=10:00 end=10:45", "name=Tue 11:00 day=Tue start=11.00 end=11.45",
		"name=Tue 14:00 day=Tue start=2 pm end=2:45 pm", "name=Tue 17:00 day=Tue start=5pm end=6 pm",
		"name=Tue noon - 1 day=Tue start=noon - 1", "name=Tue 04:00 day=Tue start=4:00"})
}

func TestAGirthOfTheFitChartIsASizeOrATag(t *testing.T) {
	r, _ := Read([]*spreadsheet.Sheet{sheet("Tack", "tag|kind", "G4|girth", "G7|girth"), sheet("Fit chart", "horse|seat|girth", "Duke|S1|26 in", "Duke|S2|g4, G7")}, nil, begun(t))
	check(t, says(r, "fit"), []string{"horse=Duke seat=S1 girth=26 in", "horse=Duke seat=S2 girths=G4;G7;"})
}

func TestRowsOfOneLessonThatDisagreeAreAMistake(t *testing.T) {
	_, wrong := Read([]*spreadsheet.Sheet{sheet("Lessons", "name|start|rider", "One|10:00|Ada", "One|10:30|Ben")}, nil, begun(t))
	if len(wrong) != 1 || wrong[0].At != "Lessons!B3" || !strings.Contains(wrong[0].Message, "at Lessons!B2 it is") {
		t.Error(wrong)
	}
}

func TestPlacesAndPairingsGoIntoTheirLessonAndTerm(t *testing.T) {
	r, wrong := Read([]*spreadsheet.Sheet{
		sheet("Lessons", "name|riders", "One|Ada", "Two|Ben"),
		sheet("Places", "lesson|rider|from|every other", "One|Cleo|2026-11-23|yes", "Three|Ada|2026-11-23|"),
		sheet("Terms", "name", "Winter", "Spring"),
		sheet("Pairings", "term|rider|horse|seat", "Spring|Ada|Duke|S3"),
	}, nil, begun(t))
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	check(t, says(r, "lesson"), []string{"name=One riders=Ada;(Ada)(Cleo,2026-11-23,yes)", "name=Two riders=Ben;", "name=Three riders=(Ada,2026-11-23)"})
	check(t, says(r, "term"), []string{"name=Winter", "name=Spring pairings=(Ada,Duke,S3)"})
	_, wrong = Read([]*spreadsheet.Sheet{sheet("Terms", "name", "Winter", "Spring"), sheet("Pairings", "rider|horse", "Ada|Duke")}, nil, begun(t))
	if len(wrong) != 1 || !strings.Contains(wrong[0].Mend, "Winter, Spring") {
		t.Error(wrong)
	}
}

func TestNamesAndWordsOfTheHouseAreOneWhateverTheirCapitals(t *testing.T) {
	r, _ := Read([]*spreadsheet.Sheet{
		sheet("Riders", "first name|surname|level|never on|mounting", "Ada|Grey|Beginner|DUKE|Ramp", "Ada|Stone|beginner||ramp, Block"),
		sheet("Horses", "name|mounting", "Duke|RAMP"),
		sheet("Lessons", "name|riders", "One|Ada; Ada S.; Zoe"),
	}, nil, begun(t))
	check(t, says(r, "rider"), []string{"name=Ada Grey level=Beginner never_on=Duke; mounting=RAMP;", "name=Ada Stone level=Beginner mounting=RAMP;Block;"})
	check(t, says(r, "lesson"), []string{"name=One riders=Ada;Ada Stone;Zoe;"}) // Ada can be two: the folder says that there is none
	check(t, says(r, "house"), []string{"levels=Beginner;"})
}

func TestWhatIsNotReadIsTold(t *testing.T) {
	r, wrong := Read([]*spreadsheet.Sheet{sheet("Volunteers", "name"), sheet("Read first", "x"),
		sheet("Horses", "Our herd", "", "name|owner|phone", "# remark", "#12|x|y|z", "", "||")}, nil, begun(t))
	if len(wrong) > 0 {
		t.Fatal(wrong)
	}
	check(t, r.NotRead, []string{`the sheet "Volunteers"`, `in Horses, the columns headed "owner", "phone", D (which has no head)`})
	check(t, says(r, "horse"), []string{"name=#12"})
}

func TestHeadsThatCannotBeMeantAreMistakes(t *testing.T) {
	for heads, want := range map[string]string{
		"name|wieght":     `Horses!B1: there is no head "wieght"`,
		"name|pony":       "Horses!B1 (pony): Horses!A1 is the column for name already",
		"owner|phone|vet": "Horses: no row of heads is found in it",
	} {
		_, wrong := Read([]*spreadsheet.Sheet{sheet("Horses", heads, "Duke|x|y")}, nil, begun(t))
		if len(wrong) != 1 || !strings.HasPrefix(wrong[0].String(), want) {
			t.Errorf("%s: %v", heads, wrong)
		}
	}
}

func TestTheTemplateOffersListsWhereThereAreAny(t *testing.T) {
	cols := map[string]spreadsheet.Column{}
	for _, table := range Template(nil) {
		for _, c := range table.Columns {
			cols[table.Name+" "+c.Head] = c
		}
	}
	for name, want := range map[string]spreadsheet.Column{
		"Horses name":        {Must: true},
		"Horses barrel":      {Choices: []string{"narrow", "medium", "wide"}, Strict: true},
		"Horses must be led": {Choices: []string{"yes", "no"}, Strict: true},
		"Horses apart":       {From: "Horses"},
		"Horses weighed":     {Typed: true},
		"Tack kind":          {Choices: []string{"saddle", "western saddle", "bareback pad", "surcingle", "girth", "pad"}, Must: true},
		"Fit chart seat":     {From: "Tack", Must: true},
		"Riders barrels":     {Choices: []string{"narrow", "medium", "wide"}}, // several
		"Riders sidewalkers": {Choices: []string{"0", "1", "2"}, Strict: true},
		"Lessons instructor": {From: "People", Must: true},
		"Lessons start":      {Typed: true, Must: true},
		"Pairings rider":     {From: "Riders", Must: true},
	} {
		got, there := cols[name]
		if !there || !strings.Contains(got.Note, "Such as: ") {
			t.Errorf("%s: %+v", name, got)
		}
		if got.Must != want.Must || got.Strict != want.Strict || got.Typed != want.Typed || got.From != want.From || !slices.Equal(got.Choices, want.Choices) {
			t.Errorf("%s is %+v", name, got)
		}
	}
	if _, there := cols["Horses out"]; there {
		t.Error("what a cell cannot have is offered")
	}
}

// The examples of the template are as the folder takes them: filled in as they
// stand they name no more than entries that are not there, and two places of one
// rider.
func TestTheExamplesOfTheTemplateCanBeTyped(t *testing.T) {
	var sheets []*spreadsheet.Sheet
	for _, table := range Template(nil) {
		s := &spreadsheet.Sheet{Name: table.Name, Title: table.Name}
		var heads []string
		for _, c := range table.Columns {
			heads = append(heads, c.Head)
		}
		row := slices.Clone(table.Rows[0])
		row[0] = strings.TrimPrefix(row[0], "# such as ")
		s.Rows = [][]string{heads, row}
		sheets = append(sheets, s)
	}
	f := begun(t)
	r, wrong := Read(sheets, nil, f)
	_, mistakes, err := f.Import(r.Entries, nil)
	if err != nil || len(wrong) > 0 {
		t.Fatal(err, wrong)
	}
	notThere := regexp.MustCompile(`^there is no |is not a level of the house|is not held on|stands twice in`)
	for _, p := range r.Wrong(mistakes) {
		if !notThere.MatchString(p.Message) {
			t.Error(p)
		}
	}
}

func FuzzRead(f *testing.F) {
	f.Add(4, "name|weight (kg)|foaled\nDuke|472|2012\n{|[|#")
	f.Add(9, "Day|Time|Rider|Horse\nTue|10:00|Ada|Duke\n||Ben|")
	f.Add(11, "term|rider|horse\nA|B|C")
	f.Add(10, "lesson|rider|from\nA|B; C|2026-11-23\nA|{ rider = \"B\" }|x")
	f.Add(7, "first name|surname|form until|likes\nAda|Grey|3/4/2027|[\"x\", { horse = 1 }]")
	f.Fuzz(func(t *testing.T, n int, text string) {
		k := kinds[(n%len(kinds)+len(kinds))%len(kinds)]
		dir := begun(t)
		r, _ := Read([]*spreadsheet.Sheet{sheet(k.title, strings.Split(text, "\n")...)}, nil, dir)
		if _, mistakes, err := dir.Import(r.Entries, nil); err != nil {
			t.Error(err)
		} else {
			for _, p := range r.Wrong(mistakes) {
				if strings.Contains(p.String(), "spreadsheet.toml") {
					t.Errorf("it is told of a file that nobody has: %s", p)
				}
			}
		}
	})
}
