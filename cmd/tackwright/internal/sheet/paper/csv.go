package paper

import (
	"encoding/csv"
	"slices"
	"strings"
	"unicode/utf8"
)

// CSV is the tables of the sheet as RFC 4180 has it: one row of heads, then the
// rows of every part. Before the columns of the tables stand the part and what
// stands over the row, behind them date, plan and when it was printed. A cell
// that a spreadsheet would take for a formula begins with an apostrophe.
func CSV(s *Sheet) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	write := func(cells []string) {
		for i := range cells {
			cells[i] = Harmless(Plain(cells[i]))
		}
		w.Write(cells) // a strings.Builder takes everything
	}
	var heads []string
	for i := range s.Parts {
		for _, h := range s.Parts[i].Table.heads() {
			if h != "" && !slices.Contains(heads, h) {
				heads = append(heads, h)
			}
		}
	}
	write(slices.Concat([]string{"part", "of"}, heads, []string{"date", "plan", "printed"}))
	for i := range s.Parts {
		part := &s.Parts[i]
		over := ""
		for n, r := range part.Table.Rows {
			if r.Over != "" {
				over = strings.Join(append([]string{r.Over}, r.Says...), "; ")
			}
			cells := make([]string, len(heads))
			for k, c := range r.Cells {
				if at := slices.Index(heads, part.Table.Columns[k].Head); at >= 0 {
					cells[at] = c.flat()
				}
			}
			if len(r.Cells) > 0 || r.Over != "" && !followed(part.Table.Rows[n+1:]) {
				write(slices.Concat([]string{part.Title, over}, cells, []string{s.Date, s.Plan, s.PrintedAt}))
			}
		}
	}
	w.Flush()
	return b.String()
}

// followed reports whether the next row belongs under what stands over this one.
func followed(rows []Row) bool {
	return len(rows) > 0 && rows[0].Over == "" && len(rows[0].Cells) > 0
}

// Harmless keeps a cell from being taken for a formula; full-width signs count as
// the plain ones do in some languages.
func Harmless(cell string) string {
	if first, _ := utf8.DecodeRuneInString(cell); cell != "" && strings.ContainsRune("=+-@\t\r\n＝＋－＠", first) {
		return "'" + cell
	}
	return cell
}
