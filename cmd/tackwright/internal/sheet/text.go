package sheet

import (
	"fmt"
	"strings"

	"tackwright/model"
)

// Text is the pull list for a monospaced page, 80 columns wide. Whatever is to
// be carried has a box of its own; what hangs on another piece has none. Pages are
// as long as the house's paper, a form feed before each but the first, and each
// says what it is of.
func (l *PullList) Text() string {
	t := &pullText{PullList: l}
	t.block("")
	t.table()
	t.head()
	switch {
	case l.Rides == 0 && len(l.Ground) == 0:
		t.line("")
		t.line("no rides on " + l.dayName)
	case l.Rides == 0:
		t.line("")
		t.line("no ride has a horse on " + l.dayName)
	}
	t.tackUps()
	t.changeovers()
	t.beside()
	t.putAway()
	t.foot()
	pages := t.pages(linesOn(l.paper), t.again)
	first := "PULL LIST"
	pages[0] = pad(first, pageColumns-columns(pageOf(1, len(pages)))) + pageOf(1, len(pages)) + strings.TrimPrefix(pages[0], first)
	return strings.Join(pages, "\f")
}

// again heads a page but the first.
func (t *pullText) again(n, of int) string {
	var p page
	p.line(pad("PULL LIST", pageColumns-columns(pageOf(n, of))) + pageOf(n, of))
	p.para("", t.Centre)
	p.line(pad(t.short, pageColumns-columns("printed "+t.printed)) + "printed " + t.printed)
	p.line("")
	return p.String()
}

func pageOf(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) }

// goesOn is what stands above a part's block on a new page.
func (t *pullText) goesOn(part string, heads func(*pullText)) string {
	above := &pullText{PullList: t.PullList, widths: t.widths}
	above.line(part + ", continued")
	heads(above)
	return above.String()
}

// pullText is a pull list being set.
type pullText struct {
	*PullList
	page
	widths []int // of a line that names a piece, behind its box
}

// bridle is what a horse wears beside its tack set.
const bridle = "bridle or halter"

func (t *pullText) clock(c Clock) string { return model.Minute(c).Clock(t.twelve) }

// title heads a part of the sheet, with what tells an old part from a new one
// where the paper is torn.
func (t *pullText) title(words string) {
	t.part()
	t.line("")
	t.rule("=")
	t.line(pad(words, pageColumns-columns(t.short)) + t.short)
	t.rule("=")
}

func (t *pullText) head() {
	t.line("PULL LIST")
	t.para("", t.Centre)
	t.line(t.Day)
	t.para(label("plan"), t.Plan)
	t.para(label("printed"), t.printed)
	if t.Rides > 0 {
		t.para(label("rides"), fmt.Sprintf("%d, on %s", t.Rides, count(t.Horses, "horse")))
	}
	t.listed("on the ground", t.Ground, func(r Ride) string {
		return fmt.Sprintf("%s %s (%s)", t.clock(r.Start), r.Rider, r.Lesson)
	})
	t.listed("other work", t.Works, func(r Ride) string {
		s := fmt.Sprintf("%s to %s %s, %s", t.clock(r.Start), t.clock(r.End), r.Horse, r.Work)
		if r.By != "" {
			s += " (" + r.By + ")"
		}
		return s
	})
	if len(t.NotWorking) > 0 && t.Rides+len(t.Works) > 0 {
		t.para(label("not working"), strings.Join(t.NotWorking, ", "))
	}
	t.line("")
	for _, c := range t.Cautions {
		t.para("  ! ", c)
	}
	t.para("  ! ", t.Deferral)
}

func (t *pullText) listed(name string, rides []Ride, words func(Ride) string) {
	for i, r := range rides {
		if i > 0 {
			name = ""
		}
		t.para(label(name), words(r))
	}
}

// label leads a line of the head.
func label(name string) string {
	if name != "" {
		name += ":"
	}
	return pad(name, len("on the ground: "))
}

func (t *pullText) tackUps() {
	if len(t.TackUps) == 0 {
		return
	}
	t.title("PULL: what to carry to which horse")
	t.crossTies()
	var all []Piece
	for _, u := range t.TackUps {
		all = append(all, u.carry()...)
	}
	t.signs(all)
	t.heads()
	above := t.goesOn("PULL", (*pullText).heads)
	for _, u := range t.TackUps {
		t.block(above)
		t.rule("-")
		t.para("ON BY "+pad(t.clock(u.OnBy), 8)+"  ", u.Horse)
		for _, say := range t.about(u) {
			t.para("                ", say)
		}
		for _, p := range u.carry() {
			t.piece(sign(p), p)
		}
		for i, r := range u.Rides {
			t.ride(r)
			switch {
			case r.NewTack:
				t.line(rideIndent + "TACK CHANGES before it: see changeovers")
			case i > 0:
				t.line(rideIndent + "same tack, stays on")
			}
		}
		t.line("      tacked up by ____________   untacked, from " + t.clock(u.OffFrom) + ", by ____________")
	}
}

// about is what a helper needs to find the horse and its place.
func (t *pullText) about(u TackUp) []string {
	var say []string
	if horse := join("; ", u.Kept, u.Looks); horse != "" {
		say = append(say, horse)
	}
	switch {
	case u.CrossTies != nil:
		say = append(say, "in the cross ties "+t.clock(u.CrossTies.From)+" to "+t.clock(u.CrossTies.Until))
	case u.NoBay:
		say = append(say, "NO BAY FREE IN TIME: ask the instructor where to tack up")
	}
	if u.Again {
		say = append(say, "tacked up again after a rest")
	}
	for i, p := range u.WaitsFor {
		if i > 0 && p.From == u.WaitsFor[i-1].From {
			continue // said with the one before
		}
		var waits []string
		for _, q := range u.WaitsFor {
			if q.From == p.From && !q.Travels {
				waits = append(waits, q.Tag)
			}
		}
		say = append(say, fmt.Sprintf("! waits for %s from %s (off %s): no ready time", and(waits), p.From, t.clock(p.OffAt)))
	}
	if len(u.WaitsFor) > 0 {
		say = append(say, "all else at the horse by "+t.clock(u.OthersBy))
	}
	return say
}

func (t *pullText) crossTies() {
	c := t.CrossTies
	if c == nil {
		return
	}
	if c.First != 0 {
		t.para("", fmt.Sprintf("Tack up at most %s at once: the cross ties have %s. The first goes in at %s.",
			count(c.Bays, "horse"), count(c.Bays, "bay"), t.clock(c.First)))
	}
	for _, f := range c.TooFew {
		from, until := t.clock(f.From), t.clock(f.Until)
		if len(f.Horses) == 1 {
			t.para("  ! ", fmt.Sprintf("%s cannot be tacked up in time: it is free from %s and must be ready at %s.",
				f.Without, from, until))
			continue
		}
		t.para("  ! ", fmt.Sprintf("The bays are too few: %s would all have to be tacked up between %s and %s. %s is left without a bay.",
			and(f.Horses), from, until, f.Without))
	}
	t.line("")
}

// rideIndent sets what belongs to a ride below its line.
const rideIndent = "        "

func (t *pullText) ride(r Ride) {
	lead := "      " + t.clock(r.Start) + " to " + t.clock(r.End) + "  "
	if r.Rider == "" {
		t.para(lead, join("; ", join(", ", r.Work, r.Arena), r.By))
		return
	}
	t.para(lead, r.Rider+"  ("+join(", ", r.Lesson, r.Arena, r.Instructor)+")")
	mount := "mounts: not recorded"
	if len(r.Mounting) > 0 {
		mount = "mounts: " + strings.Join(r.Mounting, " or ")
	}
	t.para(rideIndent, join("; ", mount, hands(r)))
}

func hands(r Ride) string {
	var say []string
	if r.Leaders > 0 {
		say = append(say, count(r.Leaders, "leader"))
	}
	if r.Sidewalkers > 0 {
		say = append(say, count(r.Sidewalkers, "sidewalker"))
	}
	return strings.Join(say, ", ")
}

func (t *pullText) changeovers() {
	if len(t.Changeovers) == 0 {
		return
	}
	t.title("CHANGEOVERS: what moves, in order")
	t.heads()
	above := t.goesOn("CHANGEOVERS", (*pullText).heads)
	for _, c := range t.Changeovers {
		t.block(above)
		t.rule("-")
		t.para("OFF AT "+pad(t.clock(c.OffAt), 8)+"  ON BY "+pad(t.clock(c.OnBy), 8)+"  ", t.what(c))
		if c.NoTime {
			t.para("  ! ", "NO TIME BETWEEN: done in the ring as the riders change, when the instructor says so")
		}
		if len(c.Off) > 0 {
			t.line("      take off:")
		}
		for _, p := range c.Off {
			t.piece("    ", back(p))
			if p.OnAgain != 0 && !p.Travels {
				t.line("      (on again by " + t.clock(p.OnAgain) + ")")
			}
		}
		if c.SameHorse() && len(c.On) > 0 {
			t.line("      put on:")
		}
		for _, p := range c.On {
			t.piece(box(!p.Travels), p)
		}
		if len(c.Stays) > 0 {
			t.para("      stays on: ", strings.Join(c.Stays, ", "))
		}
		if c.Waits {
			t.para("      until then back to: ", strings.Join(c.racks(), ", "))
		}
	}
}

// what says who gives to whom.
func (t *pullText) what(c Changeover) string {
	if c.SameHorse() {
		return fmt.Sprintf("%s changes tack (after %s, for %s)", c.To.Horse, who(c.From), who(c.To))
	}
	return fmt.Sprintf("%s (after %s) gives to %s (for %s)", c.From.Horse, who(c.From), c.To.Horse, who(c.To))
}

func who(r Ride) string {
	if r.Rider != "" {
		return r.Rider
	}
	return r.Work
}

func (t *pullText) beside() {
	if len(t.BesideTheRing) == 0 {
		return
	}
	t.title("BESIDE THE RING: what riders wear themselves")
	var rows [][]string
	for _, n := range t.BesideTheRing {
		rows = append(rows, []string{t.clock(n.Start), n.Arena, n.Rider, ""})
	}
	widths := fit(4, []int{8, 18, 22, 0}, rows)
	above := t.goesOn("BESIDE THE RING", func(*pullText) {})
	for i, n := range t.BesideTheRing {
		t.block(above)
		for k, thing := range n.Things {
			row := append([]string(nil), rows[i]...)
			if k > 0 {
				row = []string{"", "", "", ""}
			}
			row[3] = thing
			t.cells("[ ] ", widths, row...)
		}
	}
}

func (t *pullText) putAway() {
	if len(t.PutAway) == 0 {
		return
	}
	t.title("PUT AWAY: after the last use, by rack spot")
	var rows [][]string
	for _, a := range t.PutAway {
		rows = append(rows, []string{where(a.Piece), a.Piece.Tag, a.Piece.Kind, t.clock(a.From), a.Horse})
		for _, w := range a.With {
			rows = append(rows, []string{"", w.Tag, w.Kind, "", ""})
		}
	}
	head := []string{"where to", "tag", "what", "free at", "last on"}
	widths := fit(boxed, []int{16, 16, 16, 8, 0}, append(rows, head))
	t.cells("    ", widths, head...)
	t.rule("-")
	above := t.goesOn("PUT AWAY", func(p *pullText) {
		p.cells("    ", widths, head...)
		p.rule("-")
	})
	for _, row := range rows {
		if row[0] != "" {
			t.block(above)
		}
		t.cells(box(row[0] != ""), widths, row...)
	}
}

func (t *pullText) foot() {
	if len(t.NotChecked)+len(t.NotCheckedHere) > 0 {
		t.title("NOT CHECKED")
		for _, n := range t.NotChecked {
			t.para("", n.What+": "+strings.Join(n.Of, ", "))
		}
		if len(t.NotCheckedHere) > 0 {
			t.para("", "not checked here, the centre keeps them elsewhere: "+strings.Join(t.NotCheckedHere, ", "))
		}
	}
	t.title("NOTES")
	for range 3 {
		t.line("")
		t.rule("_")
	}
}

func count(n int, of string) string {
	if n == 1 {
		return "1 " + of
	}
	return fmt.Sprintf("%d %ss", n, of)
}

// and lists names as people say them.
func and(names []string) string {
	last := len(names) - 1
	return join(" and ", strings.Join(names[:last], ", "), names[last])
}

// join puts the texts that are not empty together.
func join(by string, texts ...string) string {
	var some []string
	for _, s := range texts {
		if s != "" {
			some = append(some, s)
		}
	}
	return strings.Join(some, by)
}
