package model

// FitRow of the fit chart: a seat approved for a horse. No row, no fit.
type FitRow struct {
	Horse    *Horse
	Seat     *Piece
	Pads     []*Piece // in order from the horse's back; none named: see [Week.PadChoices]
	PadSizes []string // of loose pads; none: any
	GirthMin Label    // sizes of girths; 0 where only tags are named
	GirthMax Label
	Girths   []*Piece // by tag
	By       string   // who approved it
	Approved Date
	Until    Date // the fit is due again; 0 unknown: not seated unless kept elsewhere
}

// ValidOn reports whether the row approves a fit on the date.
func (r *FitRow) ValidOn(d Date, house *House) bool {
	if house.Elsewhere.FitDates {
		return true
	}
	return r.Until != 0 && d <= r.Until && r.Approved <= d
}

// HasGirth reports whether the row approves the girth by size or by tag. The
// family is not looked at.
func (r *FitRow) HasGirth(g *Piece) bool {
	for _, x := range r.Girths {
		if x == g {
			return true
		}
	}
	return r.GirthMin != 0 && g.Label != 0 && r.GirthMin <= g.Label && g.Label <= r.GirthMax
}
