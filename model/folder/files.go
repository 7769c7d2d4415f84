package folder

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// own are the program's own sub-folders that are read with a folder. What is
// pencilled in plans/ is never an input, and history/ is for undoing.
var own = []string{"notes", "posted", "ridden", "standing"}

// aside are those that are read when they are asked for.
var aside = []string{"plans", "history", "ticks"}

// copies match names that editors and sync services give to copies of a file.
var copies = regexp.MustCompile(`(?i)~$|^#.*#$|^\.#|\.sw[a-p]$|\.(bak|orig|old|tmp|save|rej)$` +
	`|conflicted copy|sync-conflict|case conflict|\bconflict[-_ )]|- copy( \(\d+\))?\.toml$|^copy (\(\d+\) )?of | \(\d+\)\.toml$| copy( \d+)?\.toml$`)

// found is a file that is read, or one that is not.
type found struct {
	name   string // relative to the folder, with "/"
	unread string // why it is not read; "" it is
}

// look lists what a folder has, in the order of names.
func look(dir string) ([]found, error) {
	top, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	files := sift("", top)
	for _, e := range top {
		if !e.IsDir() || strings.HasPrefix(e.Name(), ".") || slices.Contains(aside, e.Name()) {
			continue
		}
		inside, err := os.ReadDir(filepath.Join(dir, e.Name()))
		if slices.Contains(own, e.Name()) {
			if err != nil {
				return nil, err
			}
			files = append(files, sift(e.Name()+"/", inside)...)
			continue
		}
		for _, f := range sift(e.Name()+"/", inside) {
			files = append(files, found{f.name, "only files at the top of the folder are read"})
		}
	}
	return files, nil
}

// sift takes the files that are read, and copies of such, from a listing.
func sift(under string, entries []os.DirEntry) []found {
	var files []found
	for _, e := range entries {
		name := e.Name()
		switch {
		case e.IsDir() || !strings.Contains(strings.ToLower(name), ".toml"):
		case isDated(name):
			files = append(files, found{name: under + name})
		case copies.MatchString(name):
			files = append(files, found{under + name, "it looks like a copy that an editor or a sync service made; join what it has into the file it is a copy of, and delete it"})
		case strings.HasPrefix(name, "."):
		case strings.EqualFold(filepath.Ext(name), ".toml"):
			files = append(files, found{name: under + name})
		default:
			files = append(files, found{under + name, "its name does not end in .toml"})
		}
	}
	slices.SortFunc(files, func(a, b found) int { return strings.Compare(a.name, b.name) })
	return files
}

// isDated reports whether a name is one that the program gives, of a date and
// perhaps a number: there are thousands of them, and none is a copy.
func isDated(name string) bool {
	date, ok := strings.CutSuffix(name, ".toml")
	return ok && date != "" && strings.Trim(date, "0123456789-v") == ""
}

// isTop reports whether a file is one of the centre's own.
func isTop(name string) bool { return !strings.Contains(name, "/") }

// isStanding reports whether a file has the standing pairings of a term.
func isStanding(name string) bool { return strings.HasPrefix(name, "standing/") }
