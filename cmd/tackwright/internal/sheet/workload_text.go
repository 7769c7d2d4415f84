package sheet

import (
	"fmt"
	"strconv"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Text is the record for a monospaced page, 80 columns wide, in pages as long as
// the house's paper with a form feed between them. A horse's lines begin with its
// name and its limits; a page that goes on says of which horse.
func (w *WorkRecord) Text() string {
	t := &workText{WorkRecord: w}
	t.Block("")
	t.head()
	var idle []string
	for i := range w.Horses {
		if h := &w.Horses[i]; len(h.Dates) > 0 {
			t.horse(h)
		} else {
			idle = append(idle, h.Horse)
		}
	}
	if len(idle) > 0 {
		t.Block("")
		t.Line("")
		t.Para("No work planned or done on these dates: ", strings.Join(idle, ", "))
	}
	t.Block("")
	t.Line("")
	t.Para("", w.Deferral)
	t.Line("")
	t.Line("Seen by ________________________________   on ____________________")
	pages := t.Pages(paper.LinesOn(w.house.Paper), func(n, of int) string {
		var p paper.Mono
		p.Line(paper.Pad("WORK OF HORSES", paper.MonoColumns-paper.Columns(pageOf(n, of))) + pageOf(n, of))
		p.Para("", w.Centre)
		p.Line(paper.Pad(t.dates(), paper.MonoColumns-paper.Columns("printed "+w.printed)) + "printed " + w.printed)
		p.Line("")
		return p.String()
	})
	first := "WORK OF HORSES"
	pages[0] = paper.Pad(first, paper.MonoColumns-paper.Columns(pageOf(1, len(pages)))) + pageOf(1, len(pages)) + strings.TrimPrefix(pages[0], first)
	return strings.Join(pages, "\f")
}

// workText is a record being set.
type workText struct {
	*WorkRecord
	paper.Mono
}

func (t *workText) dates() string {
	words := func(d model.Date) string { return d.Words() + " " + strconv.Itoa(d.Year()) }
	if t.from == t.until {
		return words(t.from)
	}
	return words(t.from) + " to " + words(t.until)
}

func (t *workText) head() {
	t.Line("WORK OF HORSES")
	t.Para("", t.Centre)
	t.Line(t.dates())
	t.Line("printed " + t.printed)
	t.Line("")
	for _, words := range t.explained() {
		t.Para("", words)
	}
}

// explained is what the figures mean.
func (t *workText) explained() []string {
	return []string{
		"Planned is as last posted. Ridden is as posted and noted and, where the date is closed, as recorded. A date that is not closed counts as posted and is marked NOT CONFIRMED.",
		"Hours are minutes by the factors of lesson, work and horse, never rounded; gaps shorter than a rest of " +
			strconv.Itoa(int(t.house.Rest)) + " min count in a date, and in no week. A run is by the clock, with no rest in it. In a row: the dates worked up to that one. ! is over a limit.",
	}
}

// workWidths are those of the columns of a date.
var workWidths = []int{10, 9, 9, 8, 8, 8, 14}

func (t *workText) horse(h *HorseWork) {
	t.Part()
	t.Line("")
	t.Rule("=")
	t.Para("", strings.ToUpper(h.Horse))
	t.Para("limits: ", h.limits())
	t.Rule("=")
	head := func(p *paper.Mono) {
		p.Cells("", workWidths, "", "planned", "ridden", "sessions", "run", "in a row", "")
		p.Rule("-")
	}
	head(&t.Mono)
	var goesOn paper.Mono
	goesOn.Para("", strings.ToUpper(h.Horse)+", continued")
	head(&goesOn)
	weeks := h.work.Weeks
	for i, d := range h.work.Dates {
		t.Block(goesOn.String())
		t.date(h, &h.Dates[i], d)
		week := d.Date.WeekStart(t.house.WeekStarts)
		if i+1 < len(h.work.Dates) && h.work.Dates[i+1].Date < week+7 {
			continue
		}
		for _, k := range weeks {
			if k.From == week {
				t.week(h, k)
			}
		}
	}
	for _, s := range h.Over {
		t.Block(goesOn.String())
		t.Para("  ! ", s)
	}
}

func (t *workText) date(h *HorseWork, d *DateWork, of model.WorkDate) {
	t.Cells("", workWidths, t.dateCells(h, d, of)...)
	if plan, rode := t.spans(d.Plan), t.spans(d.Rode); plan != rode {
		t.Para("  planned  ", plan)
		t.Para("  ridden   ", rode)
	} else {
		t.Para("           ", rode)
	}
}

func (t *workText) week(h *HorseWork, k model.WorkWeek) {
	t.Para("week from "+k.From.Words()+": ", h.weekWords(k))
	t.Rule("-")
}

func (h *HorseWork) weekWords(k model.WorkWeek) string {
	of := func(did, limit string, stated int) string {
		if stated == 0 {
			return did
		}
		return did + " of " + limit
	}
	l := h.Limits
	words := of(model.InHours(k.Work), hours(l.WeekMinutes), l.WeekMinutes) + ", worked on " +
		of(strconv.Itoa(k.Dates), model.Count(l.WeekDates, "date"), l.WeekDates)
	if l.WeekDates == 0 {
		words += " dates"
	}
	if k.Over {
		words += " !"
	}
	return words
}

// spans are rides and works in a line.
func (t *workText) spans(all []WorkSpan) string {
	clock := func(c Clock) string { return model.Minute(c).Clock(t.house.TwelveHour) }
	var parts []string
	for _, s := range all {
		parts = append(parts, clock(s.Start)+" to "+clock(s.End)+" ("+s.What+")")
	}
	if len(parts) == 0 {
		return "nothing"
	}
	return strings.Join(parts, ", ")
}

// limits are those that are stated, in words.
func (h *HorseWork) limits() string {
	l := h.Limits
	stated := func(n int, words string) string {
		if n == 0 {
			return ""
		}
		return words
	}
	of := func(what, time, times string) string {
		if some := join(" and ", time, times); some != "" {
			return what + " " + some
		}
		return ""
	}
	all := join("; ",
		of("a day", stated(l.DayMinutes, hours(l.DayMinutes)), stated(l.DaySessions, model.Count(l.DaySessions, "session"))),
		of("a run", stated(l.RunMinutes, hours(l.RunMinutes)), stated(l.RunSessions, model.Count(l.RunSessions, "session"))),
		of("a week", stated(l.WeekMinutes, hours(l.WeekMinutes)), stated(l.WeekDates, model.Count(l.WeekDates, "date"))),
		stated(l.Row, model.Count(l.Row, "date")+" in a row"))
	if all == "" {
		return "none is stated"
	}
	return all
}

// hours are minutes of the clock as work is written.
func hours(minutes int) string { return fmt.Sprintf("%d h %02d", minutes/60, minutes%60) }

func exceeds(n, limit int) bool { return limit != 0 && n > limit }

func mark(over bool) string {
	if over {
		return "!"
	}
	return ""
}
