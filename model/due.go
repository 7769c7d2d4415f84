package model

import (
	"cmp"
	"slices"
)

// DueKind is what runs out.
type DueKind string

const (
	DueReview   DueKind = "review" // of a horse that is out
	DueForm     DueKind = "form"
	DueFit      DueKind = "fit"
	DueCheck    DueKind = "tack check"
	DueWeighing DueKind = "weighing"
)

// dueKinds is the order of what runs out on one date.
var dueKinds = []DueKind{DueReview, DueForm, DueFit, DueCheck, DueWeighing}

// Due is one thing that runs out, or has. Which nouns are there depends on its
// kind: a form has its rider, a fit its horse and seat, a check its piece, a
// weighing its horse, a review its horse and why it is out.
type Due struct {
	Kind  DueKind
	On    Date // last date on which it holds, or the date to look again or to weigh by; 0: no date is stated
	Rider *Rider
	Horse *Horse
	Piece *Piece
	Why   OutWhy

	Waits  []*Ride // that it stops: see [Centre.Due]
	Posted int     // rides posted for then, as the folder has them now, that were told to go by it

	row *FitRow
	out *Out
}

// Due is what has run out, and what runs out in so many days from a date on,
// the earliest first.
//
// A ride of those days waits for a thing that is in any of the fewest renewals
// that would let it go by the rules. So a ride that either of two would save
// counts with both, one that needs two counts with both, and one that another
// horse or piece can still carry counts with none. Each ride is looked at alone:
// limits of work, and what other rides take, are left out. What has no date, and
// so stops rides already, is none that runs out.
//
// No rule stops a ride because a weighing is old, so none waits for one.
func (c *Centre) Due(from Date, days int) []*Due {
	f := &dueFinder{Centre: c, last: from + Date(days), forms: map[*Rider]*Due{}, reviews: map[*Out]*Due{},
		fits: map[*FitRow]*Due{}, checks: map[*Piece]*Due{}, rowsOf: map[*Horse][]*FitRow{},
		choices: map[partKey][][]*Piece{}, onDate: map[partKey][]option{}}
	f.riders()
	f.herd()
	f.tack()
	slices.SortStableFunc(f.due, func(a, b *Due) int {
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(slices.Index(dueKinds, a.Kind), slices.Index(dueKinds, b.Kind)))
	})
	f.rides(from)
	return f.due
}

// dueFinder gathers what runs out up to a last date.
type dueFinder struct {
	*Centre
	last Date
	due  []*Due

	forms   map[*Rider]*Due
	reviews map[*Out]*Due
	fits    map[*FitRow]*Due
	checks  map[*Piece]*Due
	rowsOf  map[*Horse][]*FitRow
	choices map[partKey][][]*Piece // for a part of a row's tack sets, on any date
	onDate  map[partKey][]option   // of those, what can be used on a date
}

// add takes the thing down where it runs out by the last date.
func (f *dueFinder) add(d *Due) *Due {
	if d.On <= f.last {
		f.due = append(f.due, d)
	}
	return d
}

func (f *dueFinder) riders() {
	for _, r := range f.Riders {
		if r.FormUntil != 0 && !f.House.Elsewhere.Forms {
			f.forms[r] = f.add(&Due{Kind: DueForm, On: r.FormUntil, Rider: r})
		}
	}
}

func (f *dueFinder) herd() {
	for _, h := range f.Horses {
		for i := range h.Out {
			if o := &h.Out[i]; o.Why != Appointment && o.End.IsZero() {
				f.reviews[o] = f.add(&Due{Kind: DueReview, On: o.Review, Horse: h, Why: o.Why, out: o})
			}
		}
		switch {
		case f.WeighAge == 0 || h.Weight == 0:
		case h.Weighed == 0:
			f.add(&Due{Kind: DueWeighing, Horse: h})
		default:
			f.add(&Due{Kind: DueWeighing, On: h.Weighed + Date(f.WeighAge), Horse: h})
		}
	}
}

func (f *dueFinder) tack() {
	for _, row := range f.Chart {
		f.rowsOf[row.Horse] = append(f.rowsOf[row.Horse], row)
		if row.Until != 0 && !f.House.Elsewhere.FitDates && !f.superseded(row) {
			f.fits[row] = f.add(&Due{Kind: DueFit, On: row.Until, Horse: row.Horse, Piece: row.Seat, row: row})
		}
	}
	for _, p := range f.Pieces {
		if p.CheckDue != 0 && !f.House.Elsewhere.TackChecks {
			f.checks[p] = f.add(&Due{Kind: DueCheck, On: p.CheckDue, Piece: p})
		}
	}
}

// superseded reports whether another row for the same seat on the same horse,
// with the same pads and girths, runs longer.
func (f *dueFinder) superseded(row *FitRow) bool {
	return slices.ContainsFunc(f.Chart, func(r *FitRow) bool {
		return r != row && r.Horse == row.Horse && r.Seat == row.Seat && r.Until > row.Until &&
			slices.Equal(r.Pads, row.Pads) && slices.Equal(r.PadSizes, row.PadSizes) &&
			r.GirthMin == row.GirthMin && r.GirthMax == row.GirthMax && slices.Equal(r.Girths, row.Girths)
	})
}

// rides finds what waits for each.
func (f *dueFinder) rides(from Date) {
	if len(f.due) == 0 {
		return
	}
	for d := from; d <= f.last; d += 7 {
		w := f.Week(d, int(min(7, f.last-d+1)), Instant{})
		for _, r := range w.Rides {
			for _, x := range f.waitsFor(w, r) {
				x.Waits = append(x.Waits, r)
			}
		}
	}
	for d := from; d <= f.last; d++ {
		if _, w, p, _ := f.PostedOn(d); w != nil {
			for i, r := range w.Rides {
				if t := p.Turns[i]; t != nil {
					f.told(w, r, t)
				}
			}
		}
	}
}

// told counts a posted ride with whatever it was told to go by and can then not.
func (f *dueFinder) told(w *Week, r *Ride, t *Turn) {
	for _, x := range f.due {
		stops := false
		switch x.Kind {
		case DueReview:
			stops = t.Horse == x.Horse && x.out.Meets(r.Date(), r.Start, r.End)
		case DueForm:
			stops = r.Rider == x.Rider && x.On < r.Date()
		case DueFit:
			stops = x.On < r.Date() && x.row.approves(w, t) &&
				!slices.ContainsFunc(w.RowsFor(t.Horse, t.Seat, r.Date()), func(row *FitRow) bool { return row.approves(w, t) })
		case DueCheck:
			stops = x.On < r.Date() && slices.Contains(t.Pieces(), x.Piece)
		}
		x.Posted += b2i(stops)
	}
}

// approves reports whether the row, whatever its dates, approves the turn.
func (r *FitRow) approves(w *Week, t *Turn) bool {
	return r.Horse == t.Horse && r.Seat == t.Seat && samePads(w.PadChoices(t.Horse, t.Seat, r), t.Pads) &&
		(t.Girth == nil || r.HasGirth(t.Girth))
}
