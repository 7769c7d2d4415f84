package sheet

import (
	"encoding/csv"
	"encoding/json"
	"strconv"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// WorkRecord is the written daily record of horses' work over some dates,
// planned and ridden, against each horse's limits. It names no rider.
type WorkRecord struct {
	Centre   string      `json:"centre"`
	From     string      `json:"from" about:"first date"`
	Until    string      `json:"until" about:"last date, which counts"`
	Printed  string      `json:"printed" about:"\"2026-11-26 07:10\""`
	Horses   []HorseWork `json:"horses" about:"in the centre's order"`
	Deferral string      `json:"deferral" about:"who decides what the program does not"`

	house       *model.House
	from, until model.Date
	printed     string
}

// HorseWork is the record of one horse.
type HorseWork struct {
	Horse  string      `json:"horse"`
	Limits WorkLimits  `json:"limits" about:"0: none is stated"`
	Dates  []DateWork  `json:"dates" about:"on which work was planned or done"`
	Weeks  []WeeksWork `json:"weeks" about:"calendar weeks, each whole, in which it works"`
	Over   []string    `json:"over" about:"limits that are exceeded, in words"`

	work *model.Workload
}

// WorkLimits are a horse's limits of work.
type WorkLimits struct {
	DayMinutes  int `json:"day_minutes"`
	DaySessions int `json:"day_sessions"`
	RunMinutes  int `json:"run_minutes" about:"with no rest between"`
	RunSessions int `json:"run_sessions"`
	WeekMinutes int `json:"week_minutes"`
	WeekDates   int `json:"week_dates"`
	Row         int `json:"dates_in_a_row"`
}

// DateWork is one date of a horse.
type DateWork struct {
	Date      string      `json:"date"`
	Confirmed bool        `json:"confirmed" about:"the date is closed; else it counts as posted"`
	ToCome    bool        `json:"to_come,omitempty" about:"the date is still to come, so ridden is as posted"`
	By        string      `json:"closed_by,omitempty"`
	Planned   json.Number `json:"planned_minutes" about:"by the factors of lesson, work and horse; gaps shorter than a rest count"`
	Ridden    json.Number `json:"ridden_minutes" about:"likewise"`
	Sessions  int         `json:"sessions" about:"ridden or worked"`
	Runs      []WorkRun   `json:"runs" about:"of what was ridden, with no rest between"`
	Row       int         `json:"row" about:"dates worked in a row, with this one; 0: it did not work"`
	Over      []string    `json:"over" about:"rules of a date whose limits are exceeded"`
	Plan      []WorkSpan  `json:"planned" about:"as last posted, and the works of the folder"`
	Rode      []WorkSpan  `json:"ridden"`
}

// WorkRun is a run of work.
type WorkRun struct {
	Start    Clock `json:"start" about:"24-hour clock"`
	End      Clock `json:"end"`
	Minutes  int   `json:"minutes"`
	Sessions int   `json:"sessions"`
}

// WorkSpan is one ride or other work.
type WorkSpan struct {
	Start Clock  `json:"start" about:"24-hour clock"`
	End   Clock  `json:"end"`
	What  string `json:"what" about:"name of the lesson, or kind of the work"`
}

// WeeksWork is one calendar week of a horse.
type WeeksWork struct {
	From    string      `json:"from"`
	Minutes json.Number `json:"minutes" about:"gaps not counted"`
	Dates   int         `json:"dates" about:"on which it works"`
	Over    bool        `json:"over"`
}

// Work lays out records of the dates from and until, both counted.
func Work(c *model.Centre, records []*model.Workload, from, until model.Date, s Stamp) *WorkRecord {
	w := &WorkRecord{Centre: c.Name, From: from.String(), Until: until.String(), Printed: s.Printed.String(), Deferral: Deferral,
		house: &c.House, from: from, until: until, printed: s.Printed.Date.Words() + ", " + s.Printed.Minute.Clock(c.House.TwelveHour)}
	for _, r := range records {
		l := r.Limits
		h := HorseWork{Horse: r.Horse.Name, Over: r.Over, work: r,
			Limits: WorkLimits{l.DayMinutes, l.DaySessions, l.RunMinutes, l.RunSessions, l.WeekMinutes, l.WeekDays, l.RowDates}}
		for _, d := range r.Dates {
			x := DateWork{Date: d.Date.String(), Confirmed: d.Closed != nil, ToCome: d.ToCome, Planned: inMinutes(d.PlannedWork), Ridden: inMinutes(d.Work),
				Sessions: d.Sessions, Row: d.Row, Over: d.Over, Plan: spans(d.Planned), Rode: spans(d.Done)}
			if d.Closed != nil && d.Closed.By != nil {
				x.By = d.Closed.By.Name
			}
			for _, run := range d.Runs {
				x.Runs = append(x.Runs, WorkRun{Clock(run.Start), Clock(run.End), int(run.End - run.Start), run.Sessions})
			}
			h.Dates = append(h.Dates, x)
		}
		for _, k := range r.Weeks {
			h.Weeks = append(h.Weeks, WeeksWork{k.From.String(), inMinutes(k.Work), k.Dates, k.Over})
		}
		w.Horses = append(w.Horses, h)
	}
	return w
}

func inMinutes(work int64) json.Number { return json.Number(model.InMinutes(work)) }

func spans(pieces []model.WorkPiece) (all []WorkSpan) {
	for _, p := range pieces {
		all = append(all, WorkSpan{Clock(p.Start), Clock(p.End), p.What})
	}
	return all
}

// workHead names the columns of the CSV layout.
var workHead = []string{"horse", "date", "confirmed", "closed by", "planned minutes", "ridden minutes", "day limit", "sessions", "sessions limit",
	"longest run", "run limit", "run sessions", "run sessions limit", "row", "row limit", "week from", "week minutes", "week limit",
	"week dates", "week dates limit", "over", "planned", "ridden"}

// CSV is the record as RFC 4180 has it: a row of heads, then a row for each date
// of each horse. Times are in minutes; a limit that is not stated is empty. The
// columns of the week are those of the whole calendar week of the date.
func (w *WorkRecord) CSV() string {
	var b strings.Builder
	out := csv.NewWriter(&b)
	out.UseCRLF = true
	out.Write(workHead) // a strings.Builder takes everything
	limit := func(n int) string {
		if n == 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	for _, h := range w.Horses {
		for i, d := range h.Dates {
			confirmed := "no"
			if d.Confirmed {
				confirmed = "yes"
			}
			minutes, n := d.longest()
			row := []string{h.Horse, d.Date, confirmed, d.By, d.Planned.String(), d.Ridden.String(), limit(h.Limits.DayMinutes),
				strconv.Itoa(d.Sessions), limit(h.Limits.DaySessions), strconv.Itoa(minutes), limit(h.Limits.RunMinutes),
				strconv.Itoa(n), limit(h.Limits.RunSessions), strconv.Itoa(d.Row), limit(h.Limits.Row)}
			row = append(row, h.weekCells(h.work.Dates[i].Date.WeekStart(w.house.WeekStarts).String(), limit)...)
			row = append(row, strings.Join(d.Over, "; "), inOne(d.Plan), inOne(d.Rode))
			for k := range row {
				row[k] = paper.Harmless(row[k])
			}
			out.Write(row)
		}
	}
	out.Flush()
	return b.String()
}

func (h *HorseWork) weekCells(from string, limit func(int) string) []string {
	for _, k := range h.Weeks {
		if k.From == from {
			return []string{from, k.Minutes.String(), limit(h.Limits.WeekMinutes), strconv.Itoa(k.Dates), limit(h.Limits.WeekDates)}
		}
	}
	return []string{from, "0", limit(h.Limits.WeekMinutes), "0", limit(h.Limits.WeekDates)}
}

// longest are the minutes of the longest run and the sessions of the run that
// has most.
func (d *DateWork) longest() (minutes, sessions int) {
	for _, r := range d.Runs {
		minutes, sessions = max(minutes, r.Minutes), max(sessions, r.Sessions)
	}
	return minutes, sessions
}

func inOne(all []WorkSpan) string {
	var parts []string
	for _, s := range all {
		parts = append(parts, s.Start.String()+"-"+s.End.String()+" "+s.What)
	}
	return strings.Join(parts, "; ")
}
