package sheet

import (
	"encoding/xml"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/sheet/paper"
)

// asPDF writes a sheet into a file.
func asPDF(t *testing.T, s *paper.Sheet) string {
	t.Helper()
	pdf, err := paper.PDF(s, time.Date(2026, time.November, 23, 7, 10, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, pdf, 0o666); err != nil {
		t.Fatal(err)
	}
	return file
}

// poppler runs one of the programs of an independent reader of PDF. A computer
// without it cannot tell, and CI installs it.
func poppler(t *testing.T, program string, args ...string) (out string, there bool) {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal(err)
		}
		return "", false
	}
	text, err := exec.Command(program, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", program, err, text)
	}
	return string(text), true
}

// found is a word where poppler finds it, in points.
type found struct {
	XMin  float64 `xml:"xMin,attr"`
	YMin  float64 `xml:"yMin,attr"`
	XMax  float64 `xml:"xMax,attr"`
	YMax  float64 `xml:"yMax,attr"`
	Words string  `xml:",chardata"`
}

func TestAnotherReaderFindsEveryWordOfAPDFApartFromTheOthers(t *testing.T) {
	for day, sheets := range onDays(t) {
		for _, x := range sheets {
			if strings.Contains(day, "Letter") || day == "large" && x.name != "chart" {
				continue // hundreds of pages of the same
			}
			out, there := poppler(t, "pdftotext", "-bbox", asPDF(t, x.sheet), "-")
			if !there {
				return
			}
			var doc struct {
				Pages []struct {
					Words []found `xml:"word"`
				} `xml:"body>doc>page"`
			}
			if err := xml.Unmarshal([]byte(out), &doc); err != nil {
				t.Fatal(err)
			}
			pages := paper.Pages(x.sheet)
			if len(doc.Pages) != len(pages) {
				t.Fatalf("%s, %s: %d pages of %d", day, x.name, len(doc.Pages), len(pages))
			}
			for n, p := range doc.Pages {
				apart(t, fmt.Sprintf("%s, %s, page %d", day, x.name, n+1), p.Words)
				want := map[string]int{}
				for _, text := range pages[n].Texts {
					for _, word := range strings.Fields(text.Words) {
						want[word]++
					}
				}
				for _, w := range p.Words {
					want[w.Words]--
				}
				for word, n := range want {
					if n != 0 && !strings.ContainsAny(word, "さくら_\u0308") { // no letters of Europe; lines; an accent that no letter joins
						t.Errorf("%s, %s: %q is %d times too few", day, x.name, word, n)
					}
				}
			}
		}
	}
}

func apart(t *testing.T, where string, words []found) {
	t.Helper()
	for i, a := range words {
		for _, b := range words[:i] {
			// The box of a word is as high as its type may reach: its middle half is letters.
			ah, bh := (a.YMax-a.YMin)/4, (b.YMax-b.YMin)/4
			if a.XMin < b.XMax-0.5 && b.XMin < a.XMax-0.5 && a.YMin+ah < b.YMax-bh && b.YMin+bh < a.YMax-ah {
				t.Errorf("%s: %q stands on %q", where, a.Words, b.Words)
			}
		}
	}
}

func TestThePDFHoldsItsTypeAndIsInBlackAndWhite(t *testing.T) {
	b, turns := ordinary()
	for _, x := range every(t, b, turns...) {
		file := asPDF(t, x.sheet)
		out, there := poppler(t, "pdffonts", file)
		if !there {
			return
		}
		for _, line := range strings.Split(strings.TrimSpace(out), "\n")[2:] {
			if !regexp.MustCompile(`\byes\b`).MatchString(line) {
				t.Errorf("%s: not in the file: %s", x.name, line)
			}
		}
		ppm := filepath.Join(t.TempDir(), "page")
		poppler(t, "pdftoppm", "-r", "40", file, ppm)
		pages, err := filepath.Glob(ppm + "*.ppm")
		if err != nil || len(pages) != len(paper.Pages(x.sheet)) {
			t.Fatalf("%s: %d pages, %v", x.name, len(pages), err)
		}
		for _, page := range pages {
			data, err := os.ReadFile(page)
			if err != nil {
				t.Fatal(err)
			}
			if dots := data[len(data)%3:]; !grey(dots[60:]) { // a short head, then three bytes a dot
				t.Errorf("%s: %s has colour", x.name, filepath.Base(page))
			}
		}
	}
}

// grey reports whether every dot has as much red as green and blue.
func grey(dots []byte) bool {
	for i := 0; i+2 < len(dots); i += 3 {
		if dots[i] != dots[i+1] || dots[i+1] != dots[i+2] {
			return false
		}
	}
	return true
}
