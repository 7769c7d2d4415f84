package sheet

import (
	"fmt"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Text is the pull list for a monospaced page, 80 columns wide. Whatever is to
// be carried has a box of its own; what hangs on another piece has none. Pages are
// as long as the house's paper, a form feed before each but the first, and each
// says what it is of.
func (l *PullList) Text() string {
	t := &pullText{PullList: l}
	t.Block("")
	t.table()
	t.head()
	switch {
	case l.Rides == 0 && len(l.Ground) == 0:
		t.Line("")
		t.Line("no rides on " + l.dayName)
	case l.Rides == 0:
		t.Line("")
		t.Line("no ride has a horse on " + l.dayName)
	}
	t.tackUps()
	t.changeovers()
	t.beside()
	t.putAway()
	t.foot()
	pages := t.Pages(paper.LinesOn(l.house.Paper), t.again)
	first := "PULL LIST"
	pages[0] = paper.Pad(first, paper.MonoColumns-paper.Columns(pageOf(1, len(pages)))) + pageOf(1, len(pages)) + strings.TrimPrefix(pages[0], first)
	return strings.Join(pages, "\f")
}

// again heads a page but the first.
func (t *pullText) again(n, of int) string {
	var p paper.Mono
	p.Line(paper.Pad("PULL LIST", paper.MonoColumns-paper.Columns(pageOf(n, of))) + pageOf(n, of))
	p.Para("", t.Centre)
	p.Line(paper.Pad(t.short, paper.MonoColumns-paper.Columns("printed "+t.printed)) + "printed " + t.printed)
	p.Line("")
	return p.String()
}

func pageOf(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) }

// goesOn is what stands above a part's block on a new page.
func (t *pullText) goesOn(part string, heads func(*pullText)) string {
	above := &pullText{PullList: t.PullList, widths: t.widths}
	above.Line(part + ", continued")
	heads(above)
	return above.String()
}

// pullText is a pull list being set.
type pullText struct {
	*PullList
	paper.Mono
	widths []int // of a line that names a piece, behind its box
}

// bridle is what a horse wears beside its tack set.
const bridle = "bridle or halter"

func (t *pullText) clock(c Clock) string { return model.Minute(c).Clock(t.twelve) }

// title heads a part of the sheet, with what tells an old part from a new one
// where the paper is torn.
func (t *pullText) title(words string) {
	t.Part()
	t.Line("")
	t.Rule("=")
	t.Line(paper.Pad(words, paper.MonoColumns-paper.Columns(t.short)) + t.short)
	t.Rule("=")
}

func (t *pullText) head() {
	t.Line("PULL LIST")
	t.Para("", t.Centre)
	t.Line(t.Day)
	t.Para(label("plan"), t.Plan)
	t.Para(label("printed"), t.printed)
	if t.Rides > 0 {
		t.Para(label("rides"), fmt.Sprintf("%d, on %s", t.Rides, model.Count(t.Horses, "horse")))
	}
	t.listed("on the ground", t.Ground, t.groundWords)
	t.listed("other work", t.Works, t.workWords)
	if len(t.NotWorking) > 0 && t.Rides+len(t.Works) > 0 {
		t.Para(label("not working"), strings.Join(t.NotWorking, ", "))
	}
	t.Line("")
	for _, c := range t.Cautions {
		t.Para("  ! ", c)
	}
	t.Para("  ! ", t.Deferral)
}

func (t *pullText) groundWords(r Ride) string {
	return fmt.Sprintf("%s %s (%s)", t.clock(r.Start), r.Rider, r.Lesson)
}

func (t *pullText) workWords(r Ride) string {
	s := fmt.Sprintf("%s to %s %s, %s", t.clock(r.Start), t.clock(r.End), r.Horse, r.Work)
	if r.By != "" {
		s += " (" + r.By + ")"
	}
	return s
}

func (t *pullText) listed(name string, rides []Ride, words func(Ride) string) {
	for i, r := range rides {
		if i > 0 {
			name = ""
		}
		t.Para(label(name), words(r))
	}
}

// label leads a line of the head.
func label(name string) string {
	if name != "" {
		name += ":"
	}
	return paper.Pad(name, len("on the ground: "))
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
	t.Line(signWords(all))
	t.heads()
	above := t.goesOn("PULL", (*pullText).heads)
	for _, c := range crews(t.house, t.TackUps, func(u TackUp) model.Minute { return model.Minute(u.OnBy) }) {
		for i, u := range c.of {
			t.Block(above)
			if i == 0 && c.title != "" {
				t.Rule("-")
				t.Line(strings.ToUpper(c.title))
			}
			t.tackUp(u)
		}
	}
}

func (t *pullText) tackUp(u TackUp) {
	t.Rule("-")
	t.Para("ON BY "+paper.Pad(t.clock(u.OnBy), 8)+"  ", u.Horse)
	for _, say := range t.about(u) {
		t.Para("                ", say)
	}
	for _, p := range u.carry() {
		t.piece(sign(p), p)
	}
	for i, r := range u.Rides {
		t.ride(r)
		switch {
		case r.NewTack:
			t.Line(rideIndent + "TACK CHANGES before it: see changeovers")
		case i > 0:
			t.Line(rideIndent + "same tack, stays on")
		}
	}
	t.Line("      tacked up by ____________   untacked, from " + t.clock(u.OffFrom) + ", by ____________")
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
	if t.CrossTies == nil {
		return
	}
	for i, words := range t.tiesWords() {
		lead := "  ! "
		if i == 0 && t.CrossTies.First != 0 {
			lead = ""
		}
		t.Para(lead, strings.TrimPrefix(words, "! "))
	}
	t.Line("")
}

// tiesWords are how the bays come round, then what they are too few for.
func (t *pullText) tiesWords() (lines []string) {
	c := t.CrossTies
	if c == nil {
		return nil
	}
	if c.First != 0 {
		lines = append(lines, fmt.Sprintf("Tack up at most %s at once: the cross ties have %s. The first goes in at %s.",
			model.Count(c.Bays, "horse"), model.Count(c.Bays, "bay"), t.clock(c.First)))
	}
	for _, f := range c.TooFew {
		from, until := t.clock(f.From), t.clock(f.Until)
		if len(f.Horses) == 1 {
			lines = append(lines, fmt.Sprintf("! %s cannot be tacked up in time: it is free from %s and must be ready at %s.",
				f.Without, from, until))
			continue
		}
		lines = append(lines, fmt.Sprintf("! The bays are too few: %s would all have to be tacked up between %s and %s. %s is left without a bay.",
			and(f.Horses), from, until, f.Without))
	}
	return lines
}

// rideIndent sets what belongs to a ride below its line.
const rideIndent = "        "

func (t *pullText) ride(r Ride) {
	lead := "      " + t.clock(r.Start) + " to " + t.clock(r.End) + "  "
	if r.Rider == "" {
		t.Para(lead, join("; ", join(", ", r.Work, r.Arena), r.By))
		return
	}
	t.Para(lead, r.Rider+"  ("+join(", ", r.Lesson, r.Arena, r.Instructor)+")")
	t.Para(rideIndent, t.mountWords(r))
}

func (t *pullText) mountWords(r Ride) string {
	mount := "mounts: not recorded"
	if len(r.Mounting) > 0 {
		mount = "mounts: " + strings.Join(r.Mounting, " or ")
	}
	return join("; ", mount, hands(r))
}

func hands(r Ride) string {
	var say []string
	if r.Leaders > 0 {
		say = append(say, model.Count(r.Leaders, "leader"))
	}
	if r.Sidewalkers > 0 {
		say = append(say, model.Count(r.Sidewalkers, "sidewalker"))
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
		t.Block(above)
		t.Rule("-")
		t.Para("OFF AT "+paper.Pad(t.clock(c.OffAt), 8)+"  ON BY "+paper.Pad(t.clock(c.OnBy), 8)+"  ", t.what(c))
		if c.NoTime {
			t.Para("  ! ", noTimeWords)
		}
		if len(c.Off) > 0 {
			t.Line("      take off:")
		}
		for _, p := range c.Off {
			t.piece("    ", back(p))
			if p.OnAgain != 0 && !p.Travels {
				t.Line("      (on again by " + t.clock(p.OnAgain) + ")")
			}
		}
		if c.SameHorse() && len(c.On) > 0 {
			t.Line("      put on:")
		}
		for _, p := range c.On {
			t.piece(box(!p.Travels), p)
		}
		if len(c.Stays) > 0 {
			t.Para("      stays on: ", strings.Join(c.Stays, ", "))
		}
		if c.Waits {
			t.Para("      until then back to: ", strings.Join(c.racks(), ", "))
		}
	}
}

const noTimeWords = "NO TIME BETWEEN: done in the ring as the riders change, when the instructor says so"

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
	widths := paper.Fit(4, []int{8, 18, 22, 0}, rows)
	above := t.goesOn("BESIDE THE RING", func(*pullText) {})
	for i, n := range t.BesideTheRing {
		t.Block(above)
		for k, thing := range n.Things {
			row := append([]string(nil), rows[i]...)
			if k > 0 {
				row = []string{"", "", "", ""}
			}
			row[3] = thing
			t.Cells("[ ] ", widths, row...)
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
	widths := paper.Fit(boxed, []int{16, 16, 16, 8, 0}, append(rows, head))
	t.Cells("    ", widths, head...)
	t.Rule("-")
	above := t.goesOn("PUT AWAY", func(p *pullText) {
		p.Cells("    ", widths, head...)
		p.Rule("-")
	})
	for _, row := range rows {
		if row[0] != "" {
			t.Block(above)
		}
		t.Cells(box(row[0] != ""), widths, row...)
	}
}

func (t *pullText) foot() {
	if len(t.NotChecked)+len(t.NotCheckedHere) > 0 {
		t.title("NOT CHECKED")
		for _, n := range t.NotChecked {
			t.Para("", n.What+": "+strings.Join(n.Of, ", "))
		}
		if len(t.NotCheckedHere) > 0 {
			t.Para("", "not checked here, the centre keeps them elsewhere: "+strings.Join(t.NotCheckedHere, ", "))
		}
	}
	t.title("NOTES")
	for range 3 {
		t.Line("")
		t.Rule("_")
	}
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
