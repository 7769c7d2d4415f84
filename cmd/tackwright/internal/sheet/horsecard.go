package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// HorseCards are a card for each horse, to hang at its stall: its day, its tack,
// and what of its limits it uses. of is the horse that is meant; nil: all that work.
func HorseCards(w *model.Week, p *model.Plan, date model.Date, stamp Stamp, of *model.Horse) (*paper.Sheet, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	s := d.newSheet("Horse cards", stamp)
	for _, h := range w.Centre.Horses {
		if h == of || of == nil && len(d.horse[h]) > 0 {
			s.Parts = append(s.Parts, d.card(h, s.Short))
		}
	}
	if len(s.Parts) == 0 {
		s.Parts = []paper.Part{{Says: []string{"No horse works on this date."}}}
	}
	return s, nil
}

// card is one part that is kept on a page.
func (d *day) card(h *model.Horse, short string) paper.Part {
	part := paper.Part{Title: h.Name, Says: []string{short}, Table: paper.Table{Columns: []paper.Column{
		{Head: "time"}, {Head: "rider", Bold: true, Spread: true}, {Head: "lesson"}, {Head: "tack"}, {Head: "helpers"}, {Head: "pencil", Room: 20}}}}
	if at := join("; ", h.Kept, h.Looks); at != "" {
		part.Says = append(part.Says, at)
	}
	if len(d.horse[h]) == 0 {
		part.Says = append(part.Says, "does not work on this date")
	}
	var last *model.Stint
	for _, s := range d.horse[h] {
		r := d.ride(s)
		rider, lesson := r.Rider, join("\n", r.Lesson, r.Arena)
		if s.Meeting == nil {
			rider, lesson = r.Work, join("\n", r.By, r.Arena)
		}
		tack := tackWords(s.Turn)
		switch {
		case !wears(s):
			tack = ""
		case last != nil && !d.isTackUp(s) && !d.tackChanges(s):
			tack += "\nstays on"
		case last != nil && !d.isTackUp(s):
			tack += "\nTACK CHANGES"
		}
		part.Table.Rows = append(part.Table.Rows, paper.Row{Stays: true, Cells: paper.Texts(
			d.clock(s.Start)+"\nto "+d.clock(s.End), rider, lesson, tack, strings.ReplaceAll(hands(r), ", ", "\n"), "")})
		last = s
	}
	part.Table.Rows = append(part.Table.Rows, paper.Row{Over: "Limits used", Says: d.used(h), Stays: true})
	return part
}

// used are what of its limits a horse uses, in lines.
func (d *day) used(h *model.Horse) []string {
	u := d.week.Used(d.plan, h, d.date)
	l := u.Limits
	of := func(did string, stated int, limit string) string {
		if stated == 0 {
			return did + " (no limit stated)"
		}
		return did + " of " + limit
	}
	return []string{
		"today: " + of(model.InHours(u.Day), l.DayMinutes, hours(l.DayMinutes)) + "; " + of(sessionsOf(u.Sessions), l.DaySessions, strconv.Itoa(l.DaySessions)),
		"longest with no rest: " + of(hours(u.RunMinutes), l.RunMinutes, hours(l.RunMinutes)) + "; " + of(sessionsOf(u.RunSessions), l.RunSessions, strconv.Itoa(l.RunSessions)),
		fmt.Sprintf("week from %s: %s; %s; %s", u.WeekFrom.Words(), of(model.InHours(u.Week), l.WeekMinutes, hours(l.WeekMinutes)),
			of(model.Count(u.WeekDates, "date"), l.WeekDays, strconv.Itoa(l.WeekDays)), of(model.Count(u.Row, "date")+" in a row", l.RowDates, strconv.Itoa(l.RowDates))),
	}
}

func sessionsOf(n int) string { return model.Count(n, "session") }
