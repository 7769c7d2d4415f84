package desk_test

import (
	"errors"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A person mends any of a centre's files by hand while the desk is open.
func TestAFileThatIsEditedByHandIsReadAnew(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	b.post("/horse/Wicket/out?on="+wednesday, http.StatusOK, "from", "07:35", "why", "lame")
	b.found()
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	b.found()
	past := "/day/2026-10-08"
	for _, x := range []struct{ files, was, is, path, says string }{
		{"horses.toml", "palomino, one white sock", "palomino, three white socks", "/horse/Wicket?on=" + wednesday, "three white socks"},
		{"posted/*.toml", `by = "Nell Ashworthy"`, `by = "Petra Hallowes"`, "/day/" + wednesday, "posted by Petra Hallowes"},
		{"notes/*.toml", `why = "lame"`, `why = "ill"`, "/day/" + wednesday, "Wicket is out (ill)"},
		{"ridden/*.toml", `by = "Dev Marchbank"`, `by = "Petra Hallowes"`, past + "/close", "Closed by Petra Hallowes"},
		{"plans/*.toml", "rider = ", "rider  = ", "/week/" + wednesday, "Edited by hand"},
	} {
		files, err := filepath.Glob(filepath.Join(dir, x.files))
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %v", x.files, err)
		}
		age(t, dir)
		if strings.Contains(words(b.get(x.path, http.StatusOK)), x.says) {
			t.Fatalf("%s says %q already", x.path, x.says)
		}
		for _, name := range files {
			text, err := os.ReadFile(name)
			if err == nil {
				err = os.WriteFile(name, []byte(strings.ReplaceAll(string(text), x.was, x.is)), 0o666)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		says(t, b.get(x.path, http.StatusOK), x.says)
	}
}

// age has everything in a folder be as if it had last changed an hour ago.
func age(t *testing.T, dir string) {
	t.Helper()
	long := time.Now().Add(-time.Hour)
	if err := filepath.WalkDir(dir, func(path string, _ os.DirEntry, err error) error {
		return errors.Join(err, os.Chtimes(path, long, long))
	}); err != nil {
		t.Fatal(err)
	}
}
