package paper

import (
	"strings"
	"sync"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/dejavu/dejavusanscondensed"
	"github.com/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/text/unicode/norm"
)

// The type has Latin, Greek (old accents too), Cyrillic, Armenian and Georgian
// letters, so that every European name can be set in it; it is narrow, so that a
// line holds much at a size that is read from arm's length.
const family = "sheet"

func withFont(f *fpdf.Fpdf) *fpdf.Fpdf {
	f.AddUTF8FontFromBytes(family, "", dejavusanscondensed.TTF)
	f.AddUTF8FontFromBytes(family, "B", dejavusanscondensedbold.TTF)
	return f
}

// point is a point of type in mm: 72 to the inch.
const point = 25.4 / 72

// ruler measures texts. A font is slow to read, so that it is read once.
var ruler struct {
	sync.Mutex
	*fpdf.Fpdf
	bold bool
}

// Width is how wide a text of so many points is, in mm.
func Width(s string, size float64, bold bool) float64 {
	ruler.Lock()
	defer ruler.Unlock()
	if ruler.Fpdf == nil {
		ruler.Fpdf = withFont(fpdf.New("P", "mm", "A4", ""))
		ruler.SetFont(family, "", 1000)
	}
	if bold != ruler.bold {
		ruler.SetFont(family, style(bold), 1000)
		ruler.bold = bold
	}
	return ruler.GetStringWidth(s) * size / 1000
}

func style(bold bool) string {
	if bold {
		return "B"
	}
	return ""
}

// printable is a text on one line whose letters and accents are joined, as the
// type has them.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF { // beyond what the PDF's font can hold
			return '\uFFFD'
		}
		return r
	}, norm.NFC.String(Plain(s)))
}

// Broken is a text in lines no wider than so many mm, parted between words where
// that can be, and else within one.
func Broken(s string, size float64, bold bool, width float64) (lines []string) {
	for _, part := range strings.Split(s, "\n") {
		line := ""
		for _, word := range strings.Fields(printable(part)) {
			if line != "" && Width(line+" "+word, size, bold) > width {
				lines, line = append(lines, line), ""
			}
			if line != "" {
				line += " "
			}
			for line == "" && Width(word, size, bold) > width {
				at := fits(word, size, bold, width)
				if at == len(word) {
					break
				}
				lines, word = append(lines, word[:at]), word[at:]
			}
			line += word
		}
		lines = append(lines, line)
	}
	return lines
}

// fits is where a word is cut to be no wider than so many mm; an accent that is
// joined to no letter stays with the one before it, and there is one letter at
// least.
func fits(word string, size float64, bold bool, width float64) int {
	at := 0
	for i := range word {
		if i > 0 && Width(word[:i], size, bold) > width {
			break
		}
		if i > 0 && norm.NFC.FirstBoundaryInString(word[i:]) == 0 {
			at = i
		}
	}
	if at == 0 { // the first letter and its accents
		return max(1, norm.NFC.NextBoundaryInString(word, true))
	}
	return at
}
