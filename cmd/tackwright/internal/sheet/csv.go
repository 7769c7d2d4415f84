package sheet

import (
	"encoding/csv"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
)

// csvHead names the columns of the CSV layout.
var csvHead = []string{"list", "time", "horse", "piece", "kind", "size", "rack", "kept", "from", "looks", "rider",
	"lesson", "date", "plan", "printed", "off at", "in cross ties", "out of cross ties"}

// CSV is the pull list as RFC 4180 has it: a row of heads, then a row for each
// thing to carry. list is pull, changeover, beside the ring or put away; time is
// when the thing must be on, at the ring, or (put away) comes off, on a 24-hour
// clock. A piece that comes from another horse is in changeovers alone, where off
// at is when its window begins; what comes off there, and not for another horse,
// is under "changeover, off". Pieces of a first tack-up say when the horse is in
// the cross ties.
//
// A cell that a spreadsheet would take for a formula begins with an apostrophe.
func (l *PullList) CSV() string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	write := func(cells ...string) {
		for i := range cells {
			cells[i] = paper.Harmless(cells[i])
		}
		w.Write(cells) // a strings.Builder takes everything
	}
	write(append([]string(nil), csvHead...)...)
	row := func(list string, at Clock, horse string, p Piece, rider, lesson string, times ...string) {
		times = append(times, "", "", "")[:3]
		write(append([]string{list, at.String(), horse, p.Tag, p.Kind, p.Size, p.Rack, kept(p), p.From, p.Looks, rider, lesson,
			l.Date, l.Plan, l.Header.Printed}, times...)...)
	}
	for _, u := range l.TackUps {
		r, at := u.Rides[0], u.OnBy
		if u.OthersBy != 0 {
			at = u.OthersBy
		}
		in, out := "", ""
		if u.CrossTies != nil {
			in, out = u.CrossTies.From.String(), u.CrossTies.Until.String()
		}
		row("pull", at, u.Horse, Piece{Kind: bridle, KeptAt: u.Horse}, who(r), r.Lesson, "", in, out)
		for _, p := range u.Pieces {
			if p.From == "" {
				row("pull", at, u.Horse, p, who(r), r.Lesson, "", in, out)
			}
		}
	}
	for _, c := range l.Changeovers {
		for _, p := range c.Off {
			row("changeover, off", c.OffAt, c.From.Horse, p, who(c.From), c.From.Lesson, c.OffAt.String())
		}
		for _, p := range c.On {
			row("changeover", c.OnBy, c.To.Horse, p, who(c.To), c.To.Lesson, c.OffAt.String())
		}
	}
	for _, n := range l.BesideTheRing {
		for _, thing := range n.Things {
			row("beside the ring", n.Start, "", Piece{Kind: thing}, n.Rider, n.Lesson)
		}
	}
	for _, a := range l.PutAway {
		for _, p := range append([]Piece{a.Piece}, a.With...) {
			row("put away", a.From, a.Horse, p, "", "")
		}
	}
	w.Flush()
	return b.String()
}

func kept(p Piece) string {
	switch {
	case p.KeptWith != "":
		return "with " + p.KeptWith
	case p.KeptAt != "":
		return "at " + p.KeptAt
	}
	return ""
}
