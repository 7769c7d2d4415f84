package sheet

import (
	"fmt"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// Measures of the picture of a horse's week, in mm.
const (
	weekName  = 30.0 // room for the name of a date
	weekWords = 50.0 // room for what the bar is of
	weekRow   = 7.5
	weekBar   = 5.0
)

// HorseWeeks draw each horse's calendar week around a date against its limits: a
// bar for each date and one for the week, with a thick line at each limit. of is
// the horse that is meant; nil: all that work in it.
func HorseWeeks(w *model.Week, p *model.Plan, date model.Date, stamp Stamp, of *model.Horse) (*paper.Sheet, error) {
	d, err := onDate(w, p, date)
	if err != nil {
		return nil, err
	}
	s := d.newSheet("Horses' week", stamp)
	s.Facts = append(s.Facts, paper.Fact{Name: "work", Words: "of the whole calendar week, by the factors of lesson, work and horse; short gaps count in a date, and not in the week"})
	width, _ := paper.Area(s.Paper, false)
	for _, h := range w.Centre.Horses {
		u := w.Used(p, h, date)
		if of != nil && h != of || of == nil && u.WeekDates == 0 {
			continue
		}
		part := paper.Part{Title: h.Name, Table: paper.Table{Columns: []paper.Column{{Head: "date"}, {Head: "work"}, {Head: "of its limit"}, {Head: ""}}}}
		pic := paper.Picture{About: "work of " + h.Name + " on each date of the week, and its limits", W: width, H: 8*weekRow + 4}
		for i, work := range u.Days {
			if x := u.WeekFrom + model.Date(i); work > 0 || x == date {
				part.Table.Rows = append(part.Table.Rows, weekLine(x.Words(), work, u.Limits.DayMinutes))
			}
			drawWork(&pic, float64(i)*weekRow, (u.WeekFrom + model.Date(i)).Words(), work, u.Limits.DayMinutes)
		}
		pic.Line(0.2, 0, 7*weekRow+1, width, 7*weekRow+1)
		drawWork(&pic, 7*weekRow+3, "week", u.Week, u.Limits.WeekMinutes)
		part.Table.Rows = append(part.Table.Rows, weekLine("week", u.Week, u.Limits.WeekMinutes))
		part.Says = []string{fmt.Sprintf("works on %s; in a row %s", upTo(model.Count(u.WeekDates, "date"), u.Limits.WeekDays), upTo(model.Count(u.Row, "date"), u.Limits.RowDates))}
		part.Pictures = []paper.Picture{pic}
		s.Parts = append(s.Parts, part)
	}
	if len(s.Parts) == 0 {
		s.Parts = []paper.Part{{Says: []string{"No horse works in this week."}}}
	}
	return s, nil
}

func upTo(did string, limit int) string {
	if limit == 0 {
		return did
	}
	return fmt.Sprintf("%s of %d", did, limit)
}

func weekLine(name string, work int64, limit int) paper.Row {
	return paper.Row{Stays: true, Cells: paper.Texts(name, model.InHours(work), limitWords(limit), overWords(work, limit))}
}

func limitWords(minutes int) string {
	if minutes == 0 {
		return "no limit stated"
	}
	return hours(minutes)
}

func overWords(work int64, limit int) string {
	if limit != 0 && model.Minutes(work) > float64(limit) {
		return "! OVER"
	}
	return ""
}

// drawWork is one bar. It is hatched, and what lies beyond the limit is blank, so
// that both are told apart without colour.
func drawWork(p *paper.Picture, y float64, name string, work int64, limit int) {
	minutes := model.Minutes(work)
	full := p.W - weekName - weekWords
	most := max(minutes, float64(limit), 1)
	at := func(m float64) float64 { return weekName + full*m/most }
	base := y + weekBar - 1
	p.Write(0, base, 12, name == "week", name)
	within := minutes
	if limit != 0 {
		within = min(minutes, float64(limit))
	}
	if minutes > 0 {
		p.Rect(weekName, y, at(minutes)-weekName, weekBar, 0.35)
		p.Hatch(weekName, y, at(within)-weekName, weekBar, 2)
	}
	if limit != 0 {
		p.Line(1, at(float64(limit)), y-0.8, at(float64(limit)), y+weekBar+0.8)
	}
	words := model.InHours(work)
	if limit != 0 {
		words += " of " + hours(limit)
	}
	p.Write(p.W-weekWords+3, base, 12, false, join(" ", words, overWords(work, limit)))
}
