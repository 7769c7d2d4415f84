package command

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/solver"
)

// buyAnswer is what buy says as JSON.
type buyAnswer struct {
	Centre   string   `json:"centre"`
	From     string   `json:"from" about:"first date"`
	Until    string   `json:"until" about:"last date, which counts"`
	Weeks    int      `json:"weeks"`
	Open     int      `json:"open_rides" about:"rides of these weeks to be planned"`
	Seated   int      `json:"seated" about:"the most of them that were found to ride with what there is"`
	AtMost   int      `json:"at_most" about:"no plan seats more with what there is; equal to seated where that is proved"`
	Wishes   *int     `json:"wishes,omitempty" about:"weight of wishes not met as it is; none: not looked at"`
	Moves    *int     `json:"changeovers,omitempty" about:"pieces that go from one horse to another within a date, as it is"`
	Spares   []spare  `json:"spares" about:"each counts if it fits; the best first"`
	Cautions []string `json:"cautions" about:"who decides"`
}

// spare is one thing more.
type spare struct {
	Kind   string     `json:"kind" about:"piece, girth size or horse"`
	What   string     `json:"what" about:"in words"`
	Like   []string   `json:"like" about:"tags of the pieces, or the name of the horse, of which it is a copy"`
	More   int        `json:"more_rides" about:"rides that plans found with it seat more"`
	Most   int        `json:"at_most" about:"no plan with it seats more than this many more"`
	Proved bool       `json:"proved" about:"more_rides is what it brings"`
	Best   *spareBest `json:"best,omitempty" about:"the best plans with it, of the few that were planned whole"`
}

type spareBest struct {
	Wishes *int        `json:"wishes,omitempty" about:"weight of wishes not met, to set against wishes above"`
	Moves  int         `json:"changeovers" about:"to set against changeovers above"`
	Proved bool        `json:"proved" about:"wishes are proved the least, here and as it is"`
	Rides  []askedRide `json:"rides" about:"rides of these plans that are on the ground as it is"`
	Ground []askedRide `json:"ground" about:"rides on the ground in them that ride as it is"`
}

var buyCautions = []string{
	"Each counts if it fits, and that is for a saddle fitter: no copy goes on a horse before a fitter has approved it for that horse.",
	"A horse is for a vet to pass and for a fitter to dress, and keeps its tack to itself while in quarantine.",
}

func buyOf(b *solver.Buying) *buyAnswer {
	first, last := b.Now[0].Week, b.Now[len(b.Now)-1].Week
	a := &buyAnswer{Centre: first.Centre.Name, From: first.From.String(), Until: last.Until.String(), Weeks: len(b.Now), Cautions: buyCautions}
	for i, x := range b.Now {
		open, _ := seated(x.Week, x.Plan)
		facts := groundedFacts(x.Week)
		a.Open += open
		a.Seated += open - (b.Ground[i].Value - facts)
		a.AtMost += open - max(0, b.Ground[i].Bound-facts)
	}
	wishes, moves, proved := wholeOf(b.Now)
	if b.Whole {
		a.Wishes, a.Moves = wishes, &moves
	}
	for _, x := range b.Bought {
		s := spareOf(x, first.House.Units)
		if x.Plans != nil {
			w, m, too := wholeOf(x.Plans)
			s.Best = &spareBest{Wishes: w, Moves: m, Proved: proved && too}
			for i := range x.Plans {
				s.Best.Rides = append(s.Best.Rides, ridesOnlyIn(x.Plans[i], b.Now[i])...)
				s.Best.Ground = append(s.Best.Ground, ridesOnlyIn(b.Now[i], x.Plans[i])...)
			}
		}
		a.Spares = append(a.Spares, s)
	}
	return a
}

// ridesOnlyIn are those with a horse in one plan and on the ground in another of the
// same rides.
func ridesOnlyIn(one, other solver.Planned) (only []askedRide) {
	for i, r := range one.Week.Rides {
		if one.Plan.Turns[i] != nil && other.Plan.Turns[i] == nil {
			only = append(only, askedOf(r, one.Plan))
		}
	}
	return only
}

// groundedFacts are the rides on the ground that had started.
func groundedFacts(w *model.Week) int {
	n := 0
	for _, r := range w.Rides {
		if r.State == model.Started && r.Told == nil {
			n++
		}
	}
	return n
}

// wholeOf is the weight of wishes that plans leave unmet, nil where they are no goal
// of the house, whether it is proved the least, and the changeovers.
func wholeOf(all []solver.Planned) (wishes *int, moves int, proved bool) {
	proved = true
	for _, x := range all {
		moves += len(x.Week.Moves(x.Plan))
		for _, g := range x.Plan.Proof.Goals {
			if g.Name == "wishes" {
				if wishes == nil {
					wishes = new(int)
				}
				*wishes += g.Value
				proved = proved && g.Proved
			}
		}
	}
	return wishes, moves, proved
}

func spareOf(x *solver.Bought, units model.Units) spare {
	s := spare{More: x.More, Most: x.Most, Proved: x.Proved}
	switch {
	case x.Spare.Horse != nil:
		s.Kind, s.Like = "horse", []string{x.Spare.Horse.Name}
		s.What = "a horse like " + x.Spare.Horse.Name
	case x.Spare.Girth != nil:
		g := x.Spare.Girth
		s.Kind = "girth size"
		s.What = fmt.Sprintf("a %s of %s", familyWords(g), sheet.SizeOf(g, units))
	default:
		s.Kind = "piece"
		for _, p := range slices.Concat([]*model.Piece{x.Spare.Piece}, x.Like) {
			s.Like = append(s.Like, p.Tag)
		}
		s.What = fmt.Sprintf("one more like %s (%s)", strings.Join(s.Like, ", "), pieceWords(x.Spare.Piece, units))
	}
	return s
}

// pieceWords say what a piece is: "saddle, all-purpose, 16 in".
func pieceWords(p *model.Piece, units model.Units) string {
	words := []string{string(p.Kind)}
	switch {
	case p.Kind == model.Girth && p.Family != model.NoFamily:
		words[0] = familyWords(p)
	case p.Style != "" && p.Style != string(p.Kind):
		words = append(words, p.Style)
	}
	if size := sheet.SizeOf(p, units); size != "" {
		words = append(words, size)
	}
	return strings.Join(words, ", ")
}

func familyWords(girth *model.Piece) string {
	if girth.Family == model.Cinch {
		return "cinch"
	}
	return string(girth.Family) + " girth"
}

func (a *buyAnswer) text(b *solver.Buying) string {
	var t strings.Builder
	first, last := b.Now[0].Week, b.Now[len(b.Now)-1].Week
	fmt.Fprintf(&t, "%s, %s to %s\n\n", a.Centre, first.DayName(first.From), last.DayName(last.Until))
	if a.Open == 0 {
		t.WriteString(wrap("", "There is no ride to plan, so nothing to buy for."+whyNone(first)))
		return t.String()
	}
	now := fmt.Sprintf("With what there is %d of %d can ride", a.Seated, a.Open)
	if a.Seated == a.AtMost {
		now += "; no plan seats more (proved)."
	} else {
		now += fmt.Sprintf(", as far as was found; not proved: at most %d more could.", a.AtMost-a.Seated)
	}
	t.WriteString(wrap("", now))
	some := slices.IndexFunc(a.Spares, func(s spare) bool { return s.Best == nil && s.More == 0 })
	if some < 0 {
		some = len(a.Spares)
	}
	if some > 0 {
		t.WriteString("\nWHAT ONE MORE WOULD BRING, each by itself, if it fits\n")
		a.table(&t, a.Spares[:some])
	}
	a.rest(&t, a.Spares[some:])
	t.WriteString("\n")
	for _, x := range a.Cautions {
		t.WriteString(wrap("", x))
	}
	return t.String()
}

// table is a line for each spare, below what is now.
func (a *buyAnswer) table(t *strings.Builder, spares []spare) {
	rows := [][]string{{"", "rides", "wishes not met", "changeovers"}, {"as it is", fmt.Sprint(a.Seated), cell(a.Wishes), cell(a.Moves)}}
	for _, s := range spares {
		row := []string{s.What, fmt.Sprintf("%+d", s.More), "", ""}
		if s.More == 0 {
			row[1] = "0"
		}
		if !s.Proved {
			row[1] += " or more" // and up to how many is said below
		}
		if s.Best != nil {
			row[2], row[3] = cell(s.Best.Wishes), fmt.Sprint(s.Best.Moves)
			if !s.Best.Proved && row[2] != "" {
				row[2] += " ?"
			}
		}
		rows = append(rows, row)
	}
	wide := make([]int, 4)
	for _, row := range rows {
		for i, x := range row {
			wide[i] = max(wide[i], utf8.RuneCountInString(x))
		}
	}
	for n, row := range rows {
		line := "  " + row[0] + strings.Repeat(" ", wide[0]-utf8.RuneCountInString(row[0]))
		for i, x := range row[1:] {
			line += "  " + strings.Repeat(" ", wide[i+1]-utf8.RuneCountInString(x)) + x
		}
		t.WriteString(strings.TrimRight(line, " ") + "\n")
		if n > 1 && spares[n-2].Best != nil {
			t.WriteString(spares[n-2].Best.who())
		}
	}
	if slices.ContainsFunc(spares, func(s spare) bool { return s.Best != nil && !s.Best.Proved }) {
		t.WriteString(wrap("  ", "? is not proved the least, here or as it is: how far wishes differ is not known."))
	}
	for _, s := range spares {
		if !s.Proved {
			t.WriteString(wrap("  ", fmt.Sprintf("Not proved: %s brings at most %d.", s.What, s.Most)))
		}
	}
}

// who rides then, and who does not.
func (b *spareBest) who() string {
	who := ""
	if len(b.Rides) > 0 {
		who = "then rides: " + namesOfRides(b.Rides)
	}
	if len(b.Ground) > 0 {
		who += "; then on the ground: " + namesOfRides(b.Ground)
	}
	if who == "" {
		return ""
	}
	return wrap("      ", who)
}

func cell(n *int) string {
	if n == nil {
		return ""
	}
	return fmt.Sprint(*n)
}

// rest counts what was not found to bring anything, and tells what is open.
func (a *buyAnswer) rest(t *strings.Builder, spares []spare) {
	nothing := 0
	open := map[int][]string{}
	var mosts []int
	for _, s := range spares {
		switch {
		case s.Proved:
			nothing++
		case open[s.Most] == nil:
			mosts = append(mosts, s.Most)
			fallthrough
		default:
			open[s.Most] = append(open[s.Most], s.What)
		}
	}
	if nothing > 0 {
		t.WriteString("\n" + wrap("", fmt.Sprintf("Nothing else that was looked at lets more ride: %s, each proved.", model.Count(nothing, "thing"))))
	}
	for _, most := range mosts {
		t.WriteString("\n" + wrap("", fmt.Sprintf("Not found to bring anything, and not proved: at most %s more each: %s.",
			model.Count(most, "ride"), strings.Join(open[most], "; "))))
	}
}
