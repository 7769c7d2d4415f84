package desk_test

import (
	"bytes"
	"errors"
	"mime/multipart"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

var hidden = regexp.MustCompile(`<label for="(field\d+)">[^<]*<code>([^<]*)</code></label>(?s:.*?)name="was-field\d+" value="([^"]*)"`)

// fields of a form by their keys: the id, and what was in it when it was shown.
func fields(page string) map[string][2]string {
	all := map[string][2]string{}
	for _, m := range hidden.FindAllStringSubmatch(page, -1) {
		all[m[2]] = [2]string{m[1], m[3]}
	}
	return all
}

// form is the path and the page of the form of an entry.
func (b *browser) form(name string) (path, page string) {
	b.t.Helper()
	m := regexp.MustCompile(`href="(/edit/[^"]+)"><strong>` + name + `<`).FindStringSubmatch(b.get("/records", http.StatusOK))
	if m == nil {
		b.t.Fatalf("%s is not among the records", name)
	}
	return m[1], b.get(m[1], http.StatusOK)
}

func TestAFormChangesItsTableAloneAndCanBeTakenBack(t *testing.T) {
	dir := demo(t)
	file := filepath.Join(dir, "horses.toml")
	before, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	b := open(t, dir, nil).nell()
	path, page := b.form("Wicket")
	looks := fields(page)["looks"]
	b.post(path, http.StatusOK, looks[0], "palomino, one white sock, new scar", "was-"+looks[0], looks[1])
	after, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if want := strings.Replace(string(before), `"palomino, one white sock"`, `"palomino, one white sock, new scar"`, 1); string(after) != want || string(before) == want {
		t.Errorf("the file is:\n%s", after)
	}
	says(t, b.get("/history", http.StatusOK), "Nell Ashworthy: changed horse Wicket: looks")
	b.post("/undo", http.StatusOK, "change", "1")
	if again, err := os.ReadFile(file); err != nil || string(again) != string(before) {
		t.Errorf("%v; the file is:\n%s", err, again)
	}
}

func TestTwoWhoEditOneEntryAtOnceLoseNothing(t *testing.T) {
	dir := demo(t)
	d := open(t, dir, nil)
	one, two := d.nell(), d.nell()
	path, page := one.form("Wicket")
	two.form("Wicket")
	looks, kept := fields(page)["looks"], fields(page)["kept"]
	one.post(path, http.StatusOK, looks[0], "golden", "was-"+looks[0], looks[1], kept[0], kept[1], "was-"+kept[0], kept[1])
	// Another key is written beside it.
	two.post(path, http.StatusOK, looks[0], looks[1], "was-"+looks[0], looks[1], kept[0], "stall 9", "was-"+kept[0], kept[1])
	// The same key is not written over.
	says(t, two.post(path, http.StatusConflict, looks[0], "cream", "was-"+looks[0], looks[1]), "Somebody changed this meanwhile", "golden")
	for _, h := range read(t, dir).Centre.Horses {
		if h.Name == "Wicket" && (h.Looks != "golden" || h.Kept != "stall 9") {
			t.Errorf("Wicket is %q, kept in %q", h.Looks, h.Kept)
		}
	}
}

func TestAFormTellsAMistakeInTheWordsOfTheFiles(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	path, page := b.form("Wicket")
	weight := fields(page)["weight"]
	says(t, b.post(path, http.StatusConflict, weight[0], "a lot", "was-"+weight[0], weight[1]), "Write it like")
}

func TestAHorseThatIsCalledOtherwiseIsTheSameHorse(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	path, page := b.form("Wicket")
	name := fields(page)["name"]
	says(t, b.post(path, http.StatusConflict, name[0], "", "was-"+name[0], name[1]), "It needs one")
	says(t, b.post(path, http.StatusConflict, name[0], "Pilot", "was-"+name[0], name[1]), "Pilot")
	b.post(path, http.StatusOK, name[0], "Cricket", "was-"+name[0], name[1])
	f := read(t, dir)
	if m := f.Mistakes(); len(m) > 0 {
		t.Fatal(m)
	}
	for _, h := range f.Centre.Horses {
		if h.Name == "Wicket" || h.Name == "Cricket" && !slices.Equal(h.Was, []string{"Wicket"}) {
			t.Errorf("%s was %q", h.Name, h.Was)
		}
	}
	says(t, b.get("/day/"+wednesday, http.StatusOK), "Alban Cricket W1")
	says(t, b.get("/history", http.StatusOK), "changed horse Wicket to Cricket: name, was")
}

func TestAFormUnfoldsOnlyWhatHoldsSomething(t *testing.T) {
	b := open(t, demo(t), nil).nell()
	_, page := b.form("Wicket")
	for part, open := range map[string]bool{"How much it may work": false, "Weight by tape": false} {
		if strings.Contains(page, "<details open><summary>"+part) != open || !strings.Contains(page, "<summary>"+part) {
			t.Errorf("%s: not as it should be", part)
		}
	}
	path, page := b.form("Domino")
	days := fields(page)["limits.week_days"]
	b.post(path, http.StatusOK, days[0], "4", "was-"+days[0], days[1])
	if !strings.Contains(b.get(path, http.StatusOK), "<details open><summary>How much it may work") {
		t.Error("what holds something is folded")
	}
}

func TestAnEntryIsAdded(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	f := fields(b.get("/add/horse", http.StatusOK))
	before := len(read(t, dir).Centre.Horses)
	b.post("/add/horse", http.StatusOK, f["name"][0], "Tad", f["foaled"][0], "2015", f["weight"][0], "480 kg")
	if horses := read(t, dir).Centre.Horses; len(horses) != before+1 || horses[before].Name != "Tad" || horses[before].Weight != 480_000 {
		t.Errorf("%d horses; the last is %+v", len(horses), horses[len(horses)-1])
	}
}

// sent is a form with a file.
func (b *browser) sent(path string, want int, name, text, button string) string {
	b.t.Helper()
	var form bytes.Buffer
	w := multipart.NewWriter(&form)
	part, err := w.CreateFormFile("sheet", name)
	if err == nil {
		_, err = part.Write([]byte(text))
	}
	if err == nil {
		err = errors.Join(w.WriteField("do", button), w.Close())
	}
	if err != nil {
		b.t.Fatal(err)
	}
	r, err := b.Post(strings.TrimSuffix(b.address, "/")+path, w.FormDataContentType(), &form)
	return b.done(r, err, path, want)
}

func TestASpreadsheetIsLookedAtAndThenTakenIn(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	const sheet = "name,weight,foaled\nTad,480 kg,2015\n"
	before := len(read(t, dir).Centre.Horses)
	says(t, b.sent("/import", http.StatusOK, "Horses.csv", sheet, "say"), "It would add 1")
	if n := len(read(t, dir).Centre.Horses); n != before {
		t.Errorf("%d horses after a look", n)
	}
	says(t, b.sent("/import", http.StatusOK, "Horses.csv", sheet, "take"), "1 added")
	if n := len(read(t, dir).Centre.Horses); n != before+1 {
		t.Errorf("%d horses", n)
	}
	says(t, b.sent("/import", http.StatusConflict, "Horses.csv", "name,weight\nTod,a lot\n", "take"), "Nothing is taken in before these are mended", "Horses.csv!B2")
	says(t, b.sent("/import", http.StatusConflict, "Horses.exe", sheet, "take"), "ends in .xlsx or .csv")
	if xlsx := b.get("/template.xlsx", http.StatusOK); !strings.HasPrefix(xlsx, "PK") {
		t.Error("the template is no XLSX")
	}
}
