package folder

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write what is found into the files of testdata")

// openTxtar opens the folder that an archive describes.
func openTxtar(t testing.TB, a *txtar.Archive) *Folder {
	t.Helper()
	dir := t.TempDir()
	for _, file := range a.Files {
		if file.Name == "want" {
			continue
		}
		name := filepath.Join(dir, filepath.FromSlash(file.Name))
		if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, file.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	f, err := Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func openText(t testing.TB, text string) *Folder {
	t.Helper()
	return openTxtar(t, &txtar.Archive{Files: []txtar.File{{Name: "all.toml", Data: []byte(text)}}})
}

func shown(ts []Trouble) string {
	var b strings.Builder
	for _, t := range ts {
		b.WriteString(t.String() + "\n")
	}
	return b.String()
}

// eachCase runs the archives of a folder of testdata: what show makes of each
// folder is what its file "want" says.
func eachCase(t *testing.T, dir string, show func(*Folder) string) {
	files, err := filepath.Glob(filepath.Join("testdata", dir, "*.txtar"))
	if err != nil || len(files) == 0 {
		t.Fatal("no cases", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			a, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			got := show(openTxtar(t, a))
			want := &a.Files[len(a.Files)-1]
			if want.Name != "want" || got == "" {
				t.Fatalf("a case ends with what is wanted, and says something; got %q", got)
			}
			if *update {
				want.Data = []byte(got)
				if err := os.WriteFile(file, txtar.Format(a), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			if d := cmp.Diff(string(bytes.TrimSpace(want.Data)), strings.TrimSpace(got)); d != "" {
				t.Errorf("%s (-want +got):\n%s", strings.TrimSpace(string(a.Comment)), d)
			}
		})
	}
}

func TestEveryMistakeIsNamedWithItsPlaceAndHowToMendIt(t *testing.T) {
	eachCase(t, "mistakes", func(f *Folder) string { return shown(f.Mistakes()) })
}
