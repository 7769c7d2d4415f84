package folder

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	pelletier "github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
	"github.com/rogpeppe/go-internal/txtar"

	"tackwright/model"
)

func TestEveryNounKnowsWhereItStands(t *testing.T) {
	text := whole(t)
	f := openText(t, text)
	c := f.Centre
	for _, x := range []struct {
		noun any
		path []any
		want string
	}{
		{c, []any{"name"}, `"Larkfield"`},
		{&c.House, []any{"limits", "run"}, `"2h31m"`},
		{c.Horses[0], []any{"name"}, `"Duke"`},
		{c.Horses[0], []any{"out", 0, "why"}, `"appointment"`},
		{c.Horses[1], []any{"weight"}, `{ girth = "66 in", length = "60 in" }`},
		{c.Horses[1], []any{"weight", "length"}, `"60 in"`},
		{c.Lessons[0], []any{"riders", 0}, `"Ada Grey"`},
		{c.Lessons[0], []any{"riders", 1, "every_other"}, "true"},
		{c.Lessons[1], []any{"riders", 0, "rider"}, `"Ben Stone"`},
		{c.Riders[0], []any{"extras", 1}, `{ kind = "hand hold", size = "small" }`},
		{c.Riders[0], []any{"extras"}, `["safety stirrups", { kind = "hand hold", size = "small" }]`},
		{c.Terms[0], []any{"pairings", 0, "horse"}, `"Duke"`},
		{c.Bookings[0], []any{"on"}, "2026-11-24"},
		{c.Chart[0], []any{"girth"}, `"24-26 in"`},
	} {
		s := f.Span(x.noun, x.path...)
		if got := text[s.Start:s.End]; got != x.want || s.File != "all.toml" {
			t.Errorf("%v is at %v: %s, not %s", x.path, s, got, x.want)
		}
		if lines := strings.Split(text[:s.Start], "\n"); s.Line != len(lines) || s.Col != len([]rune(lines[len(lines)-1]))+1 {
			t.Errorf("%v is said to be at %v", x.path, s)
		}
	}
	s := f.Span(c.Chart[1])
	if got := text[s.Start:s.End]; !strings.HasPrefix(got, "[[fit]]\nhorse = \"Pepper\"") || !strings.HasSuffix(got, "until = 2027-03-01") {
		t.Errorf("a table is from its header to its last value, not %q", got)
	}
	if got := f.Span(c.Chart[1], "girth"); got != s {
		t.Errorf("a key that is not there is at its table, not at %v", got)
	}
	if got := f.Span(&model.Horse{}); got != (Span{}) {
		t.Errorf("a noun of no file is nowhere, not at %v", got)
	}
}

func TestLineEndsAndByteOrderMarksMakeNoDifference(t *testing.T) {
	text := whole(t)
	want := dump(openText(t, text))
	for name, x := range map[string]string{
		"CRLF": strings.ReplaceAll(text, "\n", "\r\n"), "BOM": "\ufeff" + text, "no last line end": strings.TrimSpace(text),
	} {
		f := openText(t, x)
		if got := shown(f.Mistakes()); got != "" {
			t.Errorf("%s: %s", name, got)
		}
		if dump(f) != want {
			t.Errorf("%s: the centre is another", name)
		}
		s := f.Span(f.Centre, "name")
		if x[s.Start:s.End] != `"Larkfield"` || s.Col != 8 {
			t.Errorf("%s: the name is at %v", name, s)
		}
	}
	if got := shown(openText(t, "\xff\xfe[\x00c\x00").Mistakes()); !strings.Contains(got, "UTF-16") {
		t.Errorf("a file in UTF-16 is not told: %s", got)
	}
}

func TestAnySplitOverFilesIsTheSameCentre(t *testing.T) {
	text := whole(t)
	dir := t.TempDir()
	// A file a table, the last table first, inner tables with their own.
	parts := strings.Split(strings.ReplaceAll(text, "\n[", "\x00["), "\x00")
	var files []string
	for _, p := range parts[1:] {
		if inner := strings.Index(p, "."); inner > 0 && inner < strings.Index(p, "]") {
			files[len(files)-1] += "\n" + p
		} else {
			files = append(files, p)
		}
	}
	for i, p := range files {
		name := filepath.Join(dir, string(rune('a'+i/26))+string(rune('a'+i%26))+".toml")
		if err := os.WriteFile(name, []byte(p), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	if got := shown(f.Mistakes()); got != "" || len(files) < 20 {
		t.Fatalf("%d files: %s", len(files), got)
	}
	if dump(f) != dump(openText(t, text)) {
		t.Error("the centre is another")
	}
}

func TestAFolderThatIsNotThereIsAnError(t *testing.T) {
	if _, err := Open(filepath.Join(t.TempDir(), "nowhere")); err == nil {
		t.Error("it was opened")
	}
}

// Two other readers say what is TOML: pelletier/go-toml's own, which shares our
// syntax tree but not what we make of it, and BurntSushi/toml, which lets some
// tables go on that the standard ends.
func FuzzFilesAreReadAsAnotherParserReadsThem(f *testing.F) {
	f.Add(whole(f))
	for _, s := range []string{"a.b = 1\n[a]\nc = 2", "[a.b]\n[a]\nb.c = 1", "[[a]]\n[a.b]\n[[a]]\n[a.b]", "a = [1, { b = [2,], },]\n", "[a]\n[a]",
		"x = 2026-02-30", "x = 10:60", "x = 07:32:00.", "x = 2026-11-25 07:40", "x = 1979-05-27T00:32:00-07:00", "x = 99999999999999999999", "x = 5E555", "x = -inf",
		"a = 1\na.b = 2", "a = {b = 1}\n[a.c]", "[a]\nb = '''\n[x]'''", "\"\" = 1", "a = +1_000\nb = 0x_1", "[a", "a = 'x\n[b]\nc = 1", "[a]\n[[a]]", "a = []\n[[a]]"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if strings.HasPrefix(text, "\xff\xfe") || strings.HasPrefix(text, "\xfe\xff") {
			return
		}
		root, troubles := parse("all.toml", []byte(text))
		var theirs, others map[string]any
		err := pelletier.Unmarshal([]byte(strings.TrimPrefix(text, "\ufeff")), &theirs)
		if (err == nil) != (len(troubles) == 0) {
			t.Fatalf("another reader: %v; ours: %s", err, shown(troubles))
		}
		if err := toml.Unmarshal([]byte(text), &others); err != nil && len(troubles) == 0 {
			t.Fatalf("another reader: %v; ours finds nothing", err)
		}
		if err == nil && !reflect.DeepEqual(keysOf(plainly(root)), keysOf(theirs)) {
			t.Errorf("read otherwise:\n%v\n%v", plainly(root), theirs)
		}
	})
}

func FuzzNoFileMakesOpenPanic(f *testing.F) {
	f.Add(whole(f))
	f.Add("[centre]\nname = \"x\"\n[[fit]]\n[[lesson]]\nriders = [{}]\n[[term]]\npairings = [{}]\n[[tack]]\nout = {}\n[[rider]]\nlikes = [{}]\n")
	f.Add("[[note]]\n[[ride]]\n")
	f.Fuzz(func(t *testing.T, text string) {
		for _, name := range []string{"all.toml", "notes/x.toml", "posted/x.toml", "ridden/x.toml"} {
			a := &txtar.Archive{Files: []txtar.File{{Name: name, Data: []byte(text)}, {Name: "x.toml", Data: []byte("[centre]\nname = \"x\"\n")}}}
			folder := openTxtar(t, a)
			_ = shown(folder.Mistakes()) + shown(folder.Findings(0))
		}
	})
}

// plainly is a tree as maps, lists and texts.
func plainly(n *node) any {
	switch {
	case n.pairs != nil || n.kind == unstable.InlineTable:
		m := map[string]any{}
		for _, p := range n.pairs {
			m[p.key] = plainly(p.val)
		}
		return m
	case n.kind == unstable.Array:
		list := []any{}
		for _, x := range n.items {
			list = append(list, plainly(x))
		}
		return list
	}
	return n.text
}

// keysOf forgets all plain values but texts.
func keysOf(v any) any {
	switch v := v.(type) {
	case map[string]any:
		m := map[string]any{}
		for k, x := range v {
			m[k] = keysOf(x)
		}
		return m
	case []map[string]any:
		list := []any{}
		for _, x := range v {
			list = append(list, keysOf(x))
		}
		return list
	case []any:
		list := []any{}
		for _, x := range v {
			list = append(list, keysOf(x))
		}
		return list
	}
	return nil
}
