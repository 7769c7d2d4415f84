package spreadsheet

import (
	"fmt"
	"math"
	"regexp"
	"strings"

	"github.com/xuri/excelize/v2"
)

// format is how a cell shows a number.
type format struct {
	date, clock, length, percent bool
	unit                         string // that only the format has: "kg" of 0" kg"
}

// format is that of a style.
func (b *xlsxBook) format(style int) format {
	f, known := b.formats[style]
	if !known {
		if s, err := b.GetStyle(style); err == nil {
			f = formatOf(s.NumFmt, s.CustomNumFmt)
		}
		b.formats[style] = f
	}
	return f
}

var (
	literal  = regexp.MustCompile(`"([^"]*)"|\\(.)`)
	brackets = regexp.MustCompile(`\[[^\]]*\]`)
)

// formatOf reads the number of a built-in format (ISO/IEC 29500-1, 18.8.30), or
// the code of another.
func formatOf(number int, custom *string) format {
	switch {
	case custom != nil:
		return formatCode(*custom)
	case number == 9 || number == 10:
		return format{percent: true}
	case 14 <= number && number <= 17, 27 <= number && number <= 31, number == 36, 50 <= number && number <= 54, number == 57 || number == 58:
		return format{date: true}
	case 18 <= number && number <= 21, number == 45 || number == 47, 32 <= number && number <= 35, number == 55 || number == 56:
		return format{clock: true}
	case number == 22:
		return format{date: true, clock: true}
	case number == 46:
		return format{clock: true, length: true}
	}
	return format{}
}

func formatCode(code string) format {
	code, _, _ = strings.Cut(code, ";") // that of positive numbers
	var f format
	if m := literal.FindAllStringSubmatchIndex(code, -1); m != nil && strings.ContainsAny(code[:m[0][0]], "0#") {
		var unit strings.Builder
		for _, x := range literal.FindAllStringSubmatch(code, -1) {
			unit.WriteString(x[1] + x[2])
		}
		f.unit = strings.TrimSpace(unit.String())
	}
	bare := strings.ToLower(literal.ReplaceAllString(code, ""))
	f.length = strings.Contains(bare, "[h") || strings.Contains(bare, "[m")
	bare = brackets.ReplaceAllString(bare, "")
	if strings.Contains(bare, "general") || strings.ContainsAny(bare, "0#") && !strings.ContainsAny(bare, "yhd") {
		f.percent = strings.Contains(bare, "%")
		return f
	}
	f.unit = ""
	f.date = strings.ContainsAny(bare, "yd")
	f.clock = strings.ContainsAny(bare, "hs") || f.length
	return f
}

// show is a number as a person reads it.
func (f format) show(n float64, from1904 bool) string {
	switch {
	case f.percent:
		return plainNumber(n*100) + " %"
	case f.length || f.clock && !f.date && n < 1:
		minutes := int(math.Round(n * 24 * 60))
		if minutes < 0 {
			return plainNumber(n)
		}
		return fmt.Sprintf("%d:%02d", minutes/60, minutes%60)
	case f.date || f.clock:
		t, err := excelize.ExcelDateToTime(n+0.5/(24*60*60), from1904) // to the nearest second
		if err != nil || n < 1 || n > 2_958_465 {
			return plainNumber(n)
		}
		if day := n == math.Trunc(n); f.date && !f.clock || day {
			return t.Format("2006-01-02")
		}
		return t.Format("2006-01-02T15:04")
	case f.unit != "":
		return plainNumber(n) + " " + f.unit
	}
	return plainNumber(n)
}
