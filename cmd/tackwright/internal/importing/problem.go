package importing

import (
	"cmp"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model/folder"
)

// Problem is something that is wrong in a spreadsheet or a mapping.
type Problem struct {
	At      string   // "Horses!C7"
	Head    string   // of the cell's column, as the sheet has it; "" none
	Message string   // what is wrong, in words
	Mend    string   // how to put it right
	Also    []string // other cells of the column in which the same is wrong
}

// String is the problem as people read it.
func (p Problem) String() string {
	var b strings.Builder
	b.WriteString(p.At)
	if p.Head != "" {
		fmt.Fprintf(&b, " (%s)", p.Head)
	}
	b.WriteString(": " + p.Message)
	if p.Mend != "" {
		b.WriteString("\n  " + p.Mend)
	}
	if len(p.Also) > 0 {
		b.WriteString("\n  the same in " + strings.Join(p.Also, ", "))
	}
	return b.String()
}

// ProblemsOf are those of reading files.
func ProblemsOf(all []spreadsheet.Problem) []Problem {
	var out []Problem
	for _, p := range all {
		out = append(out, Problem{At: p.At, Message: p.Message, Mend: p.Mend})
	}
	return out
}

// cell is a place that the reading came by.
type cell struct {
	number   int // in the order of reading
	head     string
	said     string
	quantity bool // it is a figure that wants a unit
}

// Wrong are the mistakes that the folder found in what was read, by cell, in the
// order of the sheets. Those that are the same all down a column are told once.
func (r *Reading) Wrong(wrong []folder.Wrong) []Problem {
	type placed struct {
		cell
		Problem
	}
	var all []placed
	for _, w := range wrong {
		p := Problem{At: w.At, Message: w.Message, Mend: w.Mend}
		if m := hasNo.FindStringSubmatch(w.Message); m != nil && r.blanks[w.At+" "+m[1]] != "" {
			w.At = r.blanks[w.At+" "+m[1]]
			p.At = w.At
		}
		c := r.cells[w.At]
		if w.At == "" {
			c.number = len(r.cells) + 1
			p.At = "in the folder"
			if w.Span.File != "" {
				p.At = w.Span.String()
			}
		}
		p.Head = c.head
		p.Mend = addTable.ReplaceAllStringFunc(p.Mend, func(s string) string {
			for _, k := range kinds {
				if k.items == "" && k.table == addTable.FindStringSubmatch(s)[1] {
					return "add it to the sheet " + k.title
				}
			}
			return s
		})
		if meant := dateMeant(c.said); meant != "" && strings.HasSuffix(w.Message, "is not a date") {
			p.Mend = meant
		} else if c.quantity && figure.MatchString(c.said) && strings.Contains(w.Message, " is not ") {
			p.Mend += fmt.Sprintf("; or put the unit into the head, for the whole column: %s (%s)", c.head, unitOf(w.Mend))
		}
		all = append(all, placed{c, p})
	}
	slices.SortStableFunc(all, func(a, b placed) int { return cmp.Compare(a.number, b.number) })
	var out []Problem
	for _, p := range all {
		out = append(out, p.Problem)
	}
	return together(out)
}

// together tells problems once that are the same all down a column. Whose mend is a
// name of its own stays by itself.
func together(all []Problem) []Problem {
	var out []Problem
	first := map[string]int{}
	for _, p := range all {
		sheet, _, _ := strings.Cut(p.At, "!")
		key := strings.Join([]string{sheet, p.Head, quoted.ReplaceAllString(p.Message, ""), p.Mend}, "\n")
		if i, again := first[key]; again && (p.Head != "" || strings.Contains(p.At, "!row ")) && !strings.Contains(p.Mend, "did you mean") {
			if p.At != out[i].At && !slices.Contains(out[i].Also, p.At[len(sheet)+1:]) {
				out[i].Also = append(out[i].Also, p.At[len(sheet)+1:])
			}
			continue
		}
		first[key] = len(out)
		out = append(out, p)
	}
	return out
}

var (
	addTable = regexp.MustCompile(`(?:the folder has none yet: )?add a \[\[(\w+)\]\](?: of that (?:name|tag))?`)
	hasNo    = regexp.MustCompile(`^it has no (.*)$`)
	quoted   = regexp.MustCompile(`^"[^"]*"`)
	figure   = regexp.MustCompile(`^[<\d][\d., ½/–-]*$`)
	unitIn   = regexp.MustCompile(`"[^"]*?\d ?([a-z]+)"`)
	dates    = regexp.MustCompile(`^(\d{1,2})[/.-](\d{1,2})[/.-](\d{2}|\d{4})$`)
	orderIs  = `or say in a mapping which comes first: dates = "day first"`
)

// unitOf is the unit of the example in how to mend a figure.
func unitOf(mend string) string {
	if m := unitIn.FindStringSubmatch(mend); m != nil {
		return m[1]
	}
	return "its unit"
}

// dateMeant is how to mend a date that can be two.
func dateMeant(said string) string {
	m := dates.FindStringSubmatch(said)
	if m == nil {
		return ""
	}
	day := folder.Reads("rider", "form_until", folder.Said{Text: said, Order: folder.DayFirst})
	month := folder.Reads("rider", "form_until", folder.Said{Text: said, Order: folder.MonthFirst})
	switch isDay, isMonth := day[0] != '"', month[0] != '"'; {
	case isDay && isMonth:
		return fmt.Sprintf("write it as year-month-day, %s or %s; %s", day, month, orderIs)
	case isDay:
		return fmt.Sprintf("write it as year-month-day, %s; %s", day, orderIs)
	case isMonth:
		return fmt.Sprintf("write it as year-month-day, %s; %s", month, strings.Replace(orderIs, "day first", "month first", 1))
	}
	return ""
}

func sortedKeys[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
