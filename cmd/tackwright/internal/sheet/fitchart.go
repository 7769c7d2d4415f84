package sheet

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// plainSheet is a sheet that goes by no plan: it says of what date the folder is.
func plainSheet(c *model.Centre, title string, today model.Date, stamp Stamp) *paper.Sheet {
	printed := stamp.Printed.Date.Words() + ", " + stamp.Printed.Minute.Clock(c.House.TwelveHour)
	return &paper.Sheet{Title: title, Short: c.Name + ", as of " + today.Words(), Printed: printed, PrintedAt: stamp.Printed.String(), Date: today.String(),
		Facts:    []paper.Fact{{Words: c.Name}, {Name: "as of", Words: today.Words() + " " + strconv.Itoa(today.Year())}},
		Cautions: Cautions, Deferral: Deferral, Paper: c.House.Paper}
}

// dueSoon is how many days before an approval runs out the chart says so: the
// first of the trade's 60, 30 and 7.
const dueSoon = 60

// FitChart is which seats are approved for each horse, with which pads and
// girths, by whom and until when. of is the horse that is meant; nil: all.
func FitChart(c *model.Centre, today model.Date, stamp Stamp, of *model.Horse) *paper.Sheet {
	s := plainSheet(c, "Fit chart", today, stamp)
	part := paper.Part{Says: []string{"No row, no fit: a horse wears only what is approved for it here."},
		Table: paper.Table{Columns: []paper.Column{{Head: "seat", Bold: true}, {Head: "what"}, {Head: "pads, from its back"}, {Head: "girths", Spread: true},
			{Head: "approved"}, {Head: "due"}, {Head: "pencil", Room: 16}}}}
	w := &model.Week{Centre: c, House: &c.House}
	for _, h := range c.Horses {
		if of != nil && h != of {
			continue
		}
		over := paper.Row{Over: h.Name}
		var rows []paper.Row
		for _, r := range c.Chart {
			if r.Horse == h {
				// the first two stay with the horse's name, the others may go on on the next page
				rows = append(rows, paper.Row{Stays: len(rows) < 2, Cells: paper.Texts(r.Seat.Tag, join("\n", string(r.Seat.Kind), SizeOf(r.Seat, c.House.Units)), padWords(w, r),
					girthWords(c, r), join("\n", r.By, on(r.Approved)), dueWords(r, today, &c.House), "")})
			}
		}
		if len(rows) == 0 {
			over.Says = []string{"no seat is approved for it"}
		}
		part.Table.Rows = append(append(part.Table.Rows, over), rows...)
	}
	s.Parts = []paper.Part{part}
	return s
}

// on is a date with its year, which a weekday would only make longer.
func on(d model.Date) string {
	if d == 0 {
		return ""
	}
	_, day, _ := strings.Cut(d.Words(), " ")
	return day + " " + strconv.Itoa(d.Year())
}

// padWords are the pads that a row takes, in order from the horse's back.
func padWords(w *model.Week, r *model.FitRow) string {
	choices := w.PadChoices(r.Horse, r.Seat, r)
	var words []string
	for _, pads := range choices {
		var tags []string
		for _, p := range pads {
			tags = append(tags, p.Tag)
		}
		words = append(words, strings.Join(tags, ", "))
	}
	switch said := strings.Join(words, " or "); {
	case len(choices) == 0:
		return "none is there"
	case said == "":
		return "needs none"
	default:
		return said
	}
}

// mostTags are as many as the chart names where sizes say what is meant.
const mostTags = 8

// girthWords are the sizes of a row, and the tags that meet it.
func girthWords(c *model.Centre, r *model.FitRow) string {
	if !r.Seat.TakesGirth() {
		return "its own"
	}
	var tags []string
	for _, g := range c.Pieces {
		if g.Kind == model.Girth && g.Buckles(r.Seat) && r.HasGirth(g) {
			tags = append(tags, g.Tag)
		}
	}
	slices.SortFunc(tags, natural)
	sizes := ""
	if r.GirthMin != 0 {
		label := func(l model.Label) string { return SizeOf(&model.Piece{Kind: model.Girth, Label: l}, c.House.Units) }
		sizes = label(r.GirthMin)
		if r.GirthMax != r.GirthMin {
			sizes += " to " + label(r.GirthMax)
		}
	}
	if sizes != "" && len(tags) > mostTags {
		return sizes + "\n" + model.Count(len(tags), "girth")
	}
	return join("\n", sizes, cmp.Or(strings.Join(tags, ", "), "none is there"))
}

func dueWords(r *model.FitRow, today model.Date, house *model.House) string {
	switch {
	case house.Elsewhere.FitDates:
		return "not checked here"
	case r.Until == 0:
		return "! NOT KNOWN"
	case r.Until < today:
		return on(r.Until) + "\n! OUT OF DATE"
	case r.Approved > today:
		return on(r.Until) + "\n! NOT YET APPROVED"
	case r.Until <= today+dueSoon:
		return on(r.Until) + "\n! SOON"
	}
	return on(r.Until)
}
