package command

import (
	"cmp"
	"fmt"
	"strings"
	"unicode/utf8"

	"tackwright/model"
)

// text is a plan as a coordinator reads it.
func (a *planAnswer) text(w *model.Week) string {
	var b strings.Builder
	when := w.DayName(w.From)
	if w.Until != w.From {
		when += " to " + w.DayName(w.Until)
	}
	fmt.Fprintf(&b, "%s, %s\n\n", a.Centre, when)
	a.body(&b, w)
	fmt.Fprintf(&b, "\nThe plan is pencilled in %s.\n", a.File)
	if a.Kept != "" {
		fmt.Fprintf(&b, "The one that was there had been edited by hand; it is kept as %s.\n", a.Kept)
	}
	return b.String()
}

// body is what is said of any plan.
func (a *planAnswer) body(b *strings.Builder, w *model.Week) {
	a.summary(b, w)
	differsText(b, w, a.Differs)
	a.table(b, w)
	if a.Open > 0 {
		b.WriteString("\nWHAT WAS PROVED, each among the plans as good in the lines above\n" + goalsText(a.Goals))
	}
}

// summary is what is asked first: who rides, and what stands in the way of those
// who do not.
func (a *planAnswer) summary(b *strings.Builder, w *model.Week) {
	switch {
	case a.Open == 0:
		b.WriteString(wrap("", "There is no ride to plan."+whyNone(w)))
	case a.Proved:
		b.WriteString(wrap("", a.Summary+".") + "Proved: no plan does better.\n")
	default:
		b.WriteString(wrap("", a.Summary+".") + "Not proved to be best")
		if a.CouldBe != "" {
			b.WriteString(": " + a.CouldBe)
		}
		b.WriteString(".\n")
	}
	for _, x := range a.Off {
		fmt.Fprintf(b, "Not counted: %s (%s).\n", model.Count(x.Rides, "ride"), x.Why)
	}
	if a.Started > 0 {
		fmt.Fprintf(b, "Started by %s %s, and as they were posted: %s.\n", w.Now.Date.Words(), w.Now.Minute.Clock(w.House.TwelveHour), model.Count(a.Started, "ride"))
	}
	if a.Seated < a.Open {
		b.WriteString("\nON THE GROUND\n")
	}
	for _, x := range a.Rides {
		if x.Horse != "" || x.Started {
			continue
		}
		fmt.Fprintf(b, "  %s %s  %s (%s)\n", x.ride.Date().Words(), x.ride.Start.Clock(w.House.TwelveHour), x.Rider, x.Lesson)
		for _, why := range x.Ground {
			b.WriteString(wrap("      ", why))
		}
	}
	if len(a.Suspended) > 0 {
		b.WriteString("\nSUSPENDED\n")
	}
	for _, s := range a.Suspended {
		b.WriteString(wrap("  ", s))
	}
}

// table is the rides of each day, a line each; a lesson is named where it begins.
func (a *planAnswer) table(b *strings.Builder, w *model.Week) {
	rows := [][]string{}
	for i, x := range a.Rides {
		row := []string{"", x.Rider, x.Horse, x.Seat, x.Girth, ""}
		if x.Horse == "" {
			row[2] = "-"
		}
		if i == 0 || x.ride.Meeting != a.Rides[i-1].ride.Meeting {
			row[5] = x.Lesson
		}
		if row[5] != "" || x.Start != a.Rides[i-1].Start {
			row[0] = x.ride.Start.Clock(w.House.TwelveHour)
		}
		rows = append(rows, row)
	}
	head := []string{"", "rider", "horse", "seat", "girth", "lesson"}
	widths := make([]int, len(head))
	for _, row := range append(rows, head) {
		for i, cell := range row {
			widths[i] = max(widths[i], utf8.RuneCountInString(cell))
		}
	}
	line := func(row []string) {
		var l strings.Builder
		for i, cell := range row {
			l.WriteString("  " + cell + strings.Repeat(" ", widths[i]-utf8.RuneCountInString(cell)))
		}
		b.WriteString(strings.TrimRight(l.String(), " ") + "\n")
	}
	var day model.Date
	for i, x := range a.Rides {
		if d := x.ride.Date(); d != day {
			day = d
			fmt.Fprintf(b, "\n%s\n", strings.ToUpper(w.DayName(d)))
			line(head)
		}
		line(rows[i])
	}
}

// goalsText says of each goal what it reached and what was proved of it.
func goalsText(goals []goal) string {
	wide := 0
	for _, g := range goals {
		wide = max(wide, utf8.RuneCountInString(g.Words))
	}
	var b strings.Builder
	open := false // a goal before this one is not proved, so its gap says nothing
	for i, g := range goals {
		said := "proved: none has less"
		switch {
		case g.Proved && i == 0:
			said = "proved: no plan seats more"
		case g.Proved:
		case open:
			said = "not proved"
		default:
			said = "not proved: " + cmp.Or(g.result().Gap(), "no better one was found")
		}
		open = open || !g.Proved
		fmt.Fprintf(&b, "  %-*s  %3d  %s\n", wide, g.Words, g.Value, said)
	}
	return b.String()
}

// wide is the letters of a line.
const wide = 80

// wrap sets a text behind a lead in lines of at most 80 letters; further lines
// hang below the text's beginning.
func wrap(lead, text string) string {
	var b strings.Builder
	line := lead
	hang := strings.Repeat(" ", utf8.RuneCountInString(lead))
	for i, word := range strings.Fields(text) {
		switch {
		case i == 0:
		case utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > wide:
			b.WriteString(line + "\n")
			line = hang
		default:
			line += " "
		}
		line += word
	}
	return b.String() + line + "\n"
}
