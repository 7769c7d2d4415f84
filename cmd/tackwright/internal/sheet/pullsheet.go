package sheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Sheet is the pull list for paper: by time, a group for each horse that is tacked
// up, then what moves and what goes back.
func (l *PullList) Sheet() *paper.Sheet {
	s := l.blankSheet("Pull list")
	t := &pullText{PullList: l}
	crew := crews(l.house, l.TackUps, func(u TackUp) model.Minute { return model.Minute(u.OnBy) })
	for i, c := range crew {
		part := paper.Part{Title: join(": ", "Pull", lower(c.title)), Table: paper.Table{Columns: pullColumns()}}
		if i == 0 {
			part.Says = t.tiesWords()
		}
		var all []Piece
		for _, u := range c.of {
			all = append(all, u.carry()...)
		}
		part.Says = append(part.Says, signWords(all))
		for _, u := range c.of {
			part.Table.Rows = append(part.Table.Rows, t.tackUpRows(u)...)
		}
		if len(c.of) > 0 {
			s.Parts = append(s.Parts, part)
		}
	}
	if l.Rides == 0 {
		words := "No rides on this date."
		if len(l.Ground) > 0 {
			words = "No ride has a horse on this date."
		}
		s.Parts = append(s.Parts, paper.Part{Says: []string{words}})
	}
	s.Parts = append(s.Parts, t.changeoverPart(), t.besidePart(), t.putAwayPart(), t.notCheckedPart(),
		paper.Part{Title: "Notes", Table: paper.Table{Columns: []paper.Column{{}}, Rows: []paper.Row{{Write: []string{""}}, {Write: []string{""}, Stays: true}, {Write: []string{""}, Stays: true}}}})
	s.Parts = slices.DeleteFunc(s.Parts, func(p paper.Part) bool { return len(p.Table.Rows) == 0 && len(p.Says) == 0 })
	return s
}

// RackSheet is the pull list in the order in which a helper walks along the racks.
func (l *PullList) RackSheet() *paper.Sheet {
	s := l.blankSheet("Pull list by rack")
	t := &pullText{PullList: l}
	type fetch struct {
		Piece
		up TackUp
	}
	var all []fetch
	for _, u := range l.TackUps {
		for _, p := range u.Pieces {
			if !p.Travels && (p.From == "" || p.Waits) {
				p.From = ""
				all = append(all, fetch{p, u})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b fetch) int {
		return cmp.Or(cmp.Compare(spotOrder(a.Piece), spotOrder(b.Piece)), natural(a.KeptAt, b.KeptAt), natural(a.Rack, b.Rack), natural(a.Tag, b.Tag),
			cmp.Compare(a.up.OnBy, b.up.OnBy))
	})
	for _, c := range crews(l.house, all, func(f fetch) model.Minute { return model.Minute(f.up.OnBy) }) {
		part := paper.Part{Title: c.title, Table: paper.Table{Columns: []paper.Column{{Head: "where"}, {Head: "tag", Bold: true}, {Head: "what"},
			{Head: "for", Bold: true}, {Head: "on by"}, {Head: "looks like", Spread: true}, {Head: "pencil", Room: 14}}}}
		for _, f := range c.of {
			part.Table.Rows = append(part.Table.Rows, paper.Row{Cells: []paper.Cell{{Text: where(f.Piece), Box: true}, {Text: f.Tag + t.alongWith(f.Piece, f.up)},
				{Text: join(", ", t.cellsOf(f.Piece)[0], f.Size)}, {Text: f.up.Horse}, {Text: t.clock(f.up.OnBy)}, {Text: f.Looks}, {}}})
		}
		s.Parts = append(s.Parts, part)
	}
	if len(all) == 0 {
		s.Parts = []paper.Part{{Says: []string{"Nothing is to be carried on this date."}}}
	}
	return s
}

// alongWith are the tags of what is carried with a seat.
func (t *pullText) alongWith(seat Piece, u TackUp) (tags string) {
	for _, p := range u.Pieces {
		if p.Travels && p.KeptWith == seat.Tag {
			tags += " +" + p.Tag
		}
	}
	return tags
}

// blankSheet has what the sheet says of the day, and no part yet.
func (l *PullList) blankSheet(title string) *paper.Sheet {
	s := l.Header.sheet(title)
	t := &pullText{PullList: l}
	for _, r := range l.Ground {
		s.Facts = append(s.Facts, paper.Fact{Name: "on the ground", Words: t.groundWords(r)})
	}
	for _, r := range l.Works {
		s.Facts = append(s.Facts, paper.Fact{Name: "other work", Words: t.workWords(r)})
	}
	if len(l.NotWorking) > 0 && l.Rides+len(l.Works) > 0 {
		s.Facts = append(s.Facts, paper.Fact{Name: "not working", Words: strings.Join(l.NotWorking, ", ")})
	}
	return s
}

// pullColumns are those of the pull list, filled or blank.
func pullColumns() []paper.Column {
	return []paper.Column{{Head: "what"}, {Head: "tag", Bold: true}, {Head: "size"}, {Head: "where"}, {Head: "looks like", Spread: true}, {Head: "pencil", Room: 14}}
}

// pieceRow is a row that names a piece; what is not carried has no box.
func (t *pullText) pieceRow(p Piece, sign string) paper.Row {
	row := paper.Row{Stays: true, Cells: append(paper.Texts(t.cellsOf(p)...), paper.Cell{})}
	row.Cells[0].Box = sign == toCarry
	if sign != toCarry {
		row.Cells[0].Text = strings.TrimSpace(strings.TrimSpace(sign) + " " + row.Cells[0].Text)
	}
	return row
}

func (t *pullText) tackUpRows(u TackUp) []paper.Row {
	over := paper.Row{Over: "ON BY " + t.clock(u.OnBy) + "   " + u.Horse, Says: onOneLine(t.about(u))}
	for i, r := range u.Rides {
		words := t.clock(r.Start) + " to " + t.clock(r.End) + "  " + r.Rider + "  (" + join(", ", r.Lesson, r.Arena) + ")"
		switch {
		case r.Rider == "":
			words = t.clock(r.Start) + " to " + t.clock(r.End) + "  " + join("; ", join(", ", r.Work, r.Arena), r.By)
		default:
			if words = join("; ", words, t.mountWords(r)); len(r.Mounting) == 0 {
				words = strings.Replace(words, "; mounts: not recorded", "", 1)
			}
		}
		switch {
		case r.NewTack:
			words += "; TACK CHANGES before it: see changeovers"
		case i > 0:
			words += "; same tack, stays on"
		}
		over.Says = append(over.Says, words)
	}
	rows := []paper.Row{over}
	for _, p := range u.carry() {
		rows = append(rows, t.pieceRow(p, sign(p)))
	}
	return append(rows, paper.Row{Stays: true, Write: []string{"tacked up by", "untacked, from " + t.clock(u.OffFrom) + ", by"}})
}

// onOneLine puts what is said together, but for a warning, which has its own line.
func onOneLine(say []string) (lines []string) {
	for _, s := range say {
		if n := len(lines); n > 0 && !strings.HasPrefix(s, "!") && !strings.HasPrefix(lines[n-1], "!") {
			lines[n-1] += "; " + s
			continue
		}
		lines = append(lines, s)
	}
	return lines
}

func (t *pullText) changeoverPart() paper.Part {
	part := paper.Part{Title: "Changeovers: what moves, in order", Table: paper.Table{Columns: pullColumns()}}
	for _, c := range t.Changeovers {
		over := paper.Row{Over: "OFF AT " + t.clock(c.OffAt) + "   ON BY " + t.clock(c.OnBy) + "   " + t.what(c)}
		if c.NoTime {
			over.Says = append(over.Says, "! "+noTimeWords)
		}
		if len(c.Stays) > 0 {
			over.Says = append(over.Says, "stays on: "+strings.Join(c.Stays, ", "))
		}
		if c.Waits {
			over.Says = append(over.Says, "until then back to: "+strings.Join(c.racks(), ", "))
		}
		part.Table.Rows = append(part.Table.Rows, over)
		for _, p := range c.Off {
			again := ""
			if p.OnAgain != 0 && !p.Travels {
				again = "\n(on again by " + t.clock(p.OnAgain) + ")"
			}
			row := t.pieceRow(back(p), "")
			row.Cells[0].Text = "take off: " + row.Cells[0].Text + again
			part.Table.Rows = append(part.Table.Rows, row)
		}
		for _, p := range c.On {
			part.Table.Rows = append(part.Table.Rows, t.pieceRow(p, box(!p.Travels)))
		}
	}
	return part
}

func (t *pullText) besidePart() paper.Part {
	part := paper.Part{Title: "Beside the ring: what riders wear themselves", Table: paper.Table{Columns: []paper.Column{
		{Head: "time"}, {Head: "rider", Bold: true}, {Head: "where"}, {Head: "what", Spread: true}}}}
	for _, n := range t.BesideTheRing {
		for i, thing := range n.Things {
			row := paper.Row{Stays: i > 0, Cells: paper.Texts(t.clock(n.Start), n.Rider, n.Arena, thing)}
			row.Cells[3].Box = true
			part.Table.Rows = append(part.Table.Rows, row)
		}
	}
	return part
}

func (t *pullText) putAwayPart() paper.Part {
	part := paper.Part{Title: "Put away: after the last use, by rack spot", Table: paper.Table{Columns: []paper.Column{
		{Head: "where to"}, {Head: "tag", Bold: true}, {Head: "what", Spread: true}, {Head: "free at"}, {Head: "last on"}}}}
	for _, a := range t.PutAway {
		row := paper.Row{Cells: paper.Texts(where(a.Piece), a.Piece.Tag, a.Piece.Kind, t.clock(a.From), a.Horse)}
		row.Cells[0].Box = true
		for _, w := range a.With {
			row.Cells[1].Text += " +" + w.Tag
			row.Cells[2].Text += " + " + w.Kind
		}
		part.Table.Rows = append(part.Table.Rows, row)
	}
	return part
}

// mostNotChecked are as many as the list names; check names all.
const mostNotChecked = 12

func (t *pullText) notCheckedPart() paper.Part {
	part := paper.Part{Title: "Not checked"}
	for _, n := range t.NotChecked {
		of := strings.Join(n.Of, ", ")
		if more := len(n.Of) - mostNotChecked; more > 1 {
			of = fmt.Sprintf("%s and %d more", strings.Join(n.Of[:mostNotChecked], ", "), more)
		}
		part.Says = append(part.Says, n.What+": "+of)
	}
	if len(t.NotCheckedHere) > 0 {
		part.Says = append(part.Says, "not checked here, the centre keeps them elsewhere: "+strings.Join(t.NotCheckedHere, ", "))
	}
	return part
}

// lower is a title within another.
func lower(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToLower(s[:1]) + s[1:]
}
