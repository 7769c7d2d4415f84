package importing

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model/folder"
)

// Reading is what a spreadsheet says.
type Reading struct {
	Entries []folder.Entry
	NotRead []string // sheets and columns that are not read, in words
	ReadAs  []string // names that were taken for fuller ones, in words
	Torn    bool     // a sheet could not be read at all, so that what others name may be missing
	cells   map[string]cell
	blanks  map[string]string // where a row has nothing for a head
}

// Read reads sheets as the mapping says, nil: by their names and heads. Names are
// understood as those that the folder and the sheets have. It returns all that is
// wrong with the sheets and heads; what is wrong in a cell the folder says, see
// [Reading.Wrong].
func Read(sheets []*spreadsheet.Sheet, m *Mapping, f *folder.Folder) (*Reading, []Problem) {
	r := &reading{Reading: &Reading{cells: map[string]cell{}, blanks: map[string]string{}}, order: m.order(), names: namesOf(f)}
	met := map[*SheetMapping]bool{}
	var all []*source
	for _, s := range sheets {
		sources := m.sources(s)
		if len(sources) == 0 && bare(s.Name) != bare(readFirst) {
			r.NotRead = append(r.NotRead, fmt.Sprintf("the sheet %q", s.Name))
		}
		for _, x := range sources {
			met[x.own] = true
			all = append(all, x)
		}
	}
	if m != nil {
		for i := range m.Sheets {
			if !met[&m.Sheets[i]] {
				r.Torn = true
				r.problem(m.file, "", fmt.Sprintf("there is no sheet %q in what is imported", m.Sheets[i].Name), "write its name as its tab has it; there are: "+sheetNames(sheets))
			}
		}
	}
	if len(all) == 0 && len(sheets) > 0 {
		r.Torn = true
		r.problem(sheets[0].Title, "", "no sheet has a name that says what it lists", "call them "+strings.Join(titles(), ", ")+
			"; or say in a mapping what each of these is: "+sheetNames(sheets))
	}
	var rows []*row
	for _, k := range kinds { // so that what others name is known
		for _, s := range all {
			if s.kind == k {
				rows = append(rows, r.rows(s)...)
			}
		}
	}
	rows = r.lessons(rows)
	r.understand(rows)
	r.Entries = r.entries(rows)
	r.levels(f)
	return r.Reading, together(r.problems)
}

func sheetNames(sheets []*spreadsheet.Sheet) string {
	var all []string
	for _, s := range sheets {
		all = append(all, fmt.Sprintf("%q", s.Name))
	}
	return strings.Join(all, ", ")
}

type reading struct {
	*Reading
	order    folder.Order
	problems []Problem
	names    names
}

func (r *reading) problem(at, head, message, mend string) {
	r.problems = append(r.problems, Problem{At: at, Head: head, Message: message, Mend: mend})
}

// row is a row of a sheet that lists something.
type row struct {
	s     *source
	at    string
	cells []*said           // that say something, in the order of the columns
	empty []string          // keys whose column is there, and the cell says nothing
	items map[string][]*row // rows of other sheets that go into it, by key
}

// said is what a cell of a row says.
type said struct {
	key string
	folder.Said
	at   string
	turn int
}

func (x *row) get(key string) *said {
	if i := slices.IndexFunc(x.cells, func(c *said) bool { return c.key == key }); i >= 0 {
		return x.cells[i]
	}
	return nil
}

func (x *row) text(key string) string {
	if c := x.get(key); c != nil {
		return c.Text
	}
	return ""
}

// rows are the rows of a sheet beneath its heads. One whose first cell begins with "#" and a
// blank is a remark.
func (r *reading) rows(s *source) []*row {
	if len(s.Rows) == 0 {
		return nil
	}
	at, heads, found := r.findHeads(s)
	if !found {
		r.Torn = true
		r.problem(s.Title, "", "no row of heads is found in it", "write heads above the columns, such as: "+strings.Join(s.kind.heads()[:min(6, len(s.kind.heads()))], ", ")+
			"; or say in a mapping what your own heads are")
		return nil
	}
	r.lookAtHeads(s, at, heads)
	var all []*row
	for i := at + 1; i < len(s.Rows); i++ {
		texts := s.Rows[i]
		first := slices.IndexFunc(texts, func(t string) bool { return t != "" })
		if first < 0 || strings.HasPrefix(texts[first], "# ") {
			continue
		}
		if x := r.row(s, i, at, heads); len(x.cells) > 0 {
			all = append(all, x)
		}
	}
	if (s.kind.table == "centre" || s.kind.table == "house") && len(all) > 1 {
		r.problem(all[1].at, "", "the sheet "+s.kind.title+" has one row", "put both into one")
		all = all[:1]
	}
	return all
}

// lookAtHeads tells of columns that are not read, or not known what for.
func (r *reading) lookAtHeads(s *source, at int, heads []head) {
	seen := map[string]string{}
	var not []string
	for c, text := range s.Rows[at] {
		h, known := s.readHead(text)
		place := s.At(at, c)
		switch {
		case text == "":
		case known && h.key == "":
		case !known && s.kind.near(text) != "":
			r.problem(place, "", fmt.Sprintf("there is no head %q", text),
				fmt.Sprintf("did you mean %q? If the column is not to be read, say so in a mapping: not_read = [%q]", s.kind.near(text), text))
		case !known:
			not = append(not, fmt.Sprintf("%q", text))
		case seen[h.key] != "" && h.turn == 0 && !s.kind.column(h.key).Many:
			r.problem(place, text, fmt.Sprintf("%s is the column for %s already", seen[h.key], headOf(h.key)), "delete one of the two, or say in a mapping which is not read")
		default:
			seen[h.key] = place
		}
	}
	for c := range s.width() {
		under := func(row []string) bool { return c < len(row) && row[c] != "" && !strings.HasPrefix(row[0], "# ") }
		if !(c < len(s.Rows[at]) && s.Rows[at][c] != "") && slices.ContainsFunc(s.Rows[at+1:], under) {
			name, _, _ := strings.Cut(strings.TrimPrefix(s.At(0, c), s.Title+"!"), "1")
			not = append(not, name+" (which has no head)")
		}
	}
	if s.own != nil {
		for _, theirs := range append(sortedKeys(s.own.Columns), s.own.NotRead...) {
			if !slices.ContainsFunc(s.Rows[at], func(text string) bool { return bare(text) == bare(theirs) }) {
				r.problem(s.Title, "", fmt.Sprintf("the mapping speaks of a column %q that the sheet has not", theirs), "write the head as the sheet has it in row "+fmt.Sprint(at+1))
			}
		}
	}
	if len(not) > 0 {
		r.NotRead = append(r.NotRead, fmt.Sprintf("in %s, the %s headed %s", s.Title, columns(len(not)), strings.Join(not, ", ")))
	}
}

// width is how many columns a sheet has.
func (s *source) width() int {
	w := 0
	for _, row := range s.Rows {
		w = max(w, len(row))
	}
	return w
}

func columns(n int) string {
	if n == 1 {
		return "column"
	}
	return "columns"
}

var decimalComma = regexp.MustCompile(`(\d),(\d{1,2})(\D|$)`)

// row reads one row.
func (r *reading) row(s *source, i, headsAt int, heads []head) *row {
	x := &row{s: s, at: s.Row(i), items: map[string][]*row{}}
	r.place(x.at, cell{})
	add := func(h head, text, at, title string) {
		c := s.kind.column(h.key)
		if c == nil {
			return
		}
		text = s.own.ourWords(text, c.Many)
		v := &said{h.key, folder.Said{Text: text, Unit: h.unit, Order: r.order}, at, h.turn}
		if s.DecimalComma && !c.Many {
			v.Text = decimalComma.ReplaceAllString(text, "$1.$2$3")
		}
		if v.Blank() {
			if !slices.Contains(x.empty, h.key) {
				x.empty = append(x.empty, h.key)
				r.place(at, cell{head: title})
				r.blanks[x.at+" "+headOf(h.key)] = at
			}
			return
		}
		if old := x.get(h.key); old != nil {
			old.join(v, c.Many)
			return
		}
		r.place(at, cell{head: title, said: v.Text, quantity: h.unit == "" && strings.ContainsAny(c.Example, "0123456789") && strings.ContainsAny(c.Example, "kghimn")})
		x.cells = append(x.cells, v)
	}
	for c, h := range heads {
		text := ""
		if c < len(s.Rows[i]) {
			text = s.Rows[i][c]
		}
		if h.key != "" {
			add(h, text, s.At(i, c), s.Rows[headsAt][c])
		}
	}
	if len(x.cells) == 0 || s.own == nil {
		return x
	}
	for _, ours := range sortedKeys(s.own.Always) {
		if h, ok := s.kind.readHead(ours); ok && x.get(h.key) == nil {
			add(h, s.own.Always[ours], x.at, ours)
		}
	}
	return x
}

// join puts two columns of one key together: names in their turn, lists one behind
// the other.
func (v *said) join(w *said, list bool) {
	switch {
	case list:
		v.Text += "; " + w.Text
	case w.turn < v.turn:
		v.Text, v.turn = w.Text+" "+v.Text, w.turn
	default:
		v.Text += " " + w.Text
	}
}

func (r *reading) place(at string, c cell) {
	c.number = len(r.cells)
	r.cells[at] = c
}
