package main

import (
	"bytes"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const (
	module = "tackwright"
	root   = "../.." // of the house, as seen from here
)

// source is one Go file of the house.
type source struct {
	name    string // from the root: "model/week.go"
	imports []string
	lines   int
}

func (s source) dir() string        { return path.Dir(s.name) }
func (s source) test() bool         { return strings.HasSuffix(s.name, "_test.go") }
func (s source) in(dir string) bool { return s.dir() == dir || strings.HasPrefix(s.dir(), dir+"/") }

// ours reports whether the imported package is one of the house, or in one.
func ours(imported, dir string) bool {
	return imported == module+"/"+dir || strings.HasPrefix(imported, module+"/"+dir+"/")
}

// std reports whether a package is of Go's own library: no dot in the first
// part of its path.
func std(imported string) bool {
	first, _, _ := strings.Cut(imported, "/")
	return first != module && !strings.Contains(first, ".")
}

func sources(t *testing.T) []source {
	t.Helper()
	var all []source
	err := filepath.WalkDir(root, func(file string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && strings.HasPrefix(e.Name(), ".") && file != root:
			return fs.SkipDir
		case e.IsDir() || filepath.Ext(file) != ".go":
			return nil
		}
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, file)
		if err != nil {
			return err
		}
		s := source{name: filepath.ToSlash(name), lines: bytes.Count(text, []byte("\n"))}
		f, err := parser.ParseFile(token.NewFileSet(), file, text, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range f.Imports {
			imported, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			s.imports = append(s.imports, imported)
		}
		all = append(all, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(all) < 50 {
		t.Fatalf("only %d files were found: the root is elsewhere", len(all))
	}
	return all
}

// A wall says what the files of some folders may import.
var walls = []struct {
	sentence string
	of       func(source) bool
	may      func(imported string) bool
}{
	{"the model knows nothing but Go's own library",
		func(s source) bool { return s.dir() == "model" && !s.test() },
		std},
	{"the model knows no file",
		func(s source) bool { return s.dir() == "model" && !s.test() },
		func(i string) bool {
			return !slices.Contains([]string{"os", "io/fs", "io/ioutil", "path/filepath", "embed"}, i)
		}},
	{"the folder knows no solver, no sheet and no command",
		func(s source) bool { return s.in("model") && !s.test() },
		func(i string) bool { return std(i) || !strings.HasPrefix(i, module+"/") || ours(i, "model") }},
	{"only solver/sat knows gini",
		func(s source) bool { return s.dir() != "solver/sat" },
		func(i string) bool { return !slices.Contains(strings.Split(i, "/"), "gini") }},
	{"what orders goals and what solves clauses know no trade",
		func(s source) bool { return (s.in("solver/ordered") || s.in("solver/sat")) && !s.test() },
		func(i string) bool { return !strings.HasPrefix(i, module+"/") || ours(i, "solver/sat") }},
	{"the solver knows no folder of files",
		func(s source) bool { return s.in("solver") && !s.test() },
		func(i string) bool { return !ours(i, "model/folder") }},
	{"sheets and the page reach a plan only through the model and the results of the solver",
		func(s source) bool {
			return (s.in("cmd/tackwright/internal/sheet") || s.in("cmd/tackwright/internal/desk")) && !s.test()
		},
		func(i string) bool {
			return !strings.HasPrefix(i, module+"/") || ours(i, "model") || i == module+"/solver" ||
				ours(i, "cmd/tackwright/internal/sheet") || ours(i, "cmd/tackwright/internal/desk")
		}},
	{"a sheet is a pure function: it opens no folder",
		func(s source) bool { return s.in("cmd/tackwright/internal/sheet") && !s.test() },
		func(i string) bool { return !ours(i, "model/folder") && i != "os" }},
	{"of the sheets only what writes PDF and what writes a calendar know of instants, which they are told",
		func(s source) bool {
			return s.in("cmd/tackwright/internal/sheet") && !s.test() && !s.in("cmd/tackwright/internal/sheet/calendar") && path.Base(s.name) != "pdf.go"
		},
		func(i string) bool { return i != "time" }},
	{"only what writes PDF and measures its type knows how that is made",
		func(s source) bool {
			return s.dir() != "cmd/tackwright/internal/sheet/paper"
		},
		func(i string) bool { return !strings.Contains(i, "/fpdf") && !strings.Contains(i, "/dejavu") }},
	{"only what writes a calendar knows how that is made",
		func(s source) bool { return s.dir() != "cmd/tackwright/internal/sheet/calendar" },
		func(i string) bool { return !strings.Contains(i, "-ical") }},
	{"only cmd/tackwright/internal/spreadsheet knows excelize",
		func(s source) bool { return s.dir() != "cmd/tackwright/internal/spreadsheet" },
		func(i string) bool { return !strings.HasPrefix(i, "github.com/xuri/excelize") }},
	{"a spreadsheet is cells: what reads and writes it knows no trade",
		func(s source) bool { return s.in("cmd/tackwright/internal/spreadsheet") && !s.test() },
		func(i string) bool { return !strings.HasPrefix(i, module+"/") }},
	{"what a spreadsheet says reaches a centre only through its folder",
		func(s source) bool { return s.in("cmd/tackwright/internal/importing") && !s.test() },
		func(i string) bool {
			return !strings.HasPrefix(i, module+"/") || i == module+"/model/folder" || i == module+"/cmd/tackwright/internal/spreadsheet"
		}},
	{"nothing looks back at what is typed",
		func(s source) bool { return !s.in("cmd") },
		func(i string) bool { return !ours(i, "cmd") }},
	{"what tests are made of is in no program",
		func(s source) bool { return !s.test() && !s.in("fixtures") && !s.in("cmd/measure") },
		func(i string) bool { return !ours(i, "fixtures") }},
}

func TestEveryWallOfTheHouseStands(t *testing.T) {
	all := sources(t)
	for _, w := range walls {
		for _, s := range all {
			if !w.of(s) {
				continue
			}
			for _, i := range s.imports {
				if !w.may(i) {
					t.Errorf("%s imports %s: %s", s.name, i, w.sentence)
				}
			}
		}
	}
}

// A wall that stands around an empty plot holds nothing back.
func TestEveryWallHasSomethingBehindIt(t *testing.T) {
	all := sources(t)
	for _, w := range walls {
		if !slices.ContainsFunc(all, func(s source) bool { return w.of(s) && len(s.imports) > 0 }) {
			t.Errorf("no file is held by: %s", w.sentence)
		}
	}
}

func TestNoFileIsLong(t *testing.T) {
	for _, s := range sources(t) {
		if s.lines >= 500 {
			t.Errorf("%s has %d lines; one idea a file", s.name, s.lines)
		}
	}
}

func TestAPackageIsNamedForWhatItIs(t *testing.T) {
	for _, s := range sources(t) {
		for _, part := range strings.Split(s.dir(), "/") {
			if slices.Contains([]string{"util", "utils", "common", "helper", "helpers", "misc"}, part) {
				t.Errorf("%s: %q says nothing of what is in it", s.name, part)
			}
		}
	}
}

func TestTheTopOfTheHouseHoldsOnlyWhatBelongsThere(t *testing.T) {
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	belongs := []string{"README.md", "DEVELOPERS.md", "LICENSE", "go.mod", "go.sum", "cmd", "solver", "model", "fixtures", "examples"}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !slices.Contains(belongs, e.Name()) {
			t.Errorf("%s does not belong at the top", e.Name())
		}
	}
}
