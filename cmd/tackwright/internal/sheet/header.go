package sheet

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"

	"tackwright/model"
)

// Stamp tells an old sheet from a new one.
type Stamp struct {
	Version int           // of the posted plan; 0: pencilled
	File    string        // of a pencilled plan, as people find it
	Notes   int           // the latest note for the date that the posted plan does not know yet; 0: none
	Unread  string        // what could not be read of the folder, in words; "" nothing
	By      string        // who posted it
	At      model.Instant // when
	Printed model.Instant
}

// Header is what every sheet for the barn says of its day and of itself.
type Header struct {
	Centre  string `json:"centre"`
	Date    string `json:"date" about:"such as 2026-11-26"`
	Day     string `json:"day" about:"the date in words"`
	Plan    string `json:"plan" about:"\"pencilled in ...\", or \"version 3, posted by ...\""`
	Version int    `json:"version,omitempty" about:"of a posted plan"`
	Notes   int    `json:"with_notes_up_to,omitempty" about:"number of the latest note for the date that was written since the plan was posted"`
	Pencil  bool   `json:"pencilled" about:"so it has no version"`
	Hash    string `json:"hash,omitempty" about:"of a pencilled plan: another one after any change of who rides what"`
	Printed string `json:"printed" about:"\"2026-11-26 07:10\""`

	Rides      int      `json:"rides" about:"seated"`
	Horses     int      `json:"horses" about:"that carry them"`
	Ground     []Ride   `json:"on_the_ground" about:"rides without a horse"`
	Works      []Ride   `json:"other_work" about:"of horses, with no rider of a lesson"`
	NotWorking []string `json:"not_working" about:"horses; no reason is ever given"`

	NotChecked     []NotChecked `json:"not_checked" about:"what nobody recorded, so that no rule could look at it"`
	NotCheckedHere []string     `json:"not_checked_here" about:"records that the centre keeps elsewhere"`
	Cautions       []string     `json:"cautions" about:"that every sheet for the barn carries"`
	Deferral       string       `json:"deferral" about:"who decides what the program does not"`

	printed string // on the house's clock
	dayName string // without the year
	short   string // date and version, for the head of each part
	house   *model.House
}

func (d *day) header(s Stamp) Header {
	h := Header{
		Centre:  d.week.Centre.Name,
		Date:    d.date.String(),
		Day:     d.week.DayName(d.date) + " " + strconv.Itoa(d.date.Year()),
		Version: s.Version,
		Notes:   s.Notes,
		Printed: s.Printed.String(),
		printed: d.instant(s.Printed),
		dayName: d.week.DayName(d.date),
		house:   d.house,

		Cautions: Cautions,
		Deferral: Deferral,
	}
	if s.Version == 0 {
		h.Pencil, h.Hash = true, shortHash(d.week, d.plan)
		h.short = d.date.Words() + ", pencilled " + h.Hash
		h.Plan = "pencilled"
		if s.File != "" {
			h.Plan += " in " + s.File
		}
		h.Plan += ", as of " + h.Hash
	} else {
		version := "version " + strconv.Itoa(s.Version)
		if s.Notes > 0 {
			version += ", with notes up to " + strconv.Itoa(s.Notes)
		}
		h.short = d.date.Words() + ", " + version
		h.Plan = version + ", posted by " + cmp.Or(s.By, "somebody") + " on " + d.instant(s.At)
		if s.Unread != "" {
			h.Plan += "; " + s.Unread
			h.short += ", not all read"
		}
	}
	carriers := map[*model.Horse]bool{}
	for _, x := range d.stints {
		if x.Meeting == nil {
			h.Works = append(h.Works, d.ride(x))
			continue
		}
		h.Rides++
		carriers[x.Turn.Horse] = true
	}
	h.Horses = len(carriers)
	h.Ground = d.ground()
	for _, x := range d.week.Centre.Horses {
		if len(d.horse[x]) == 0 {
			h.NotWorking = append(h.NotWorking, x.Name)
		}
	}
	h.NotChecked, h.NotCheckedHere = d.notChecked()
	return h
}

// shortHash tells two pencilled plans apart: by who rides which horse in what.
func shortHash(w *model.Week, p *model.Plan) string {
	sum := sha256.New()
	for _, s := range w.Stints(p) {
		fmt.Fprintf(sum, "%v %d %d %q", s.Date, s.Start, s.End, s.Turn.Horse.Name)
		if s.Rider != nil {
			fmt.Fprintf(sum, " %q", s.Rider.Name)
		}
		for _, x := range s.Turn.Pieces() {
			fmt.Fprintf(sum, " %q", x.Tag)
		}
		fmt.Fprintln(sum)
	}
	return hex.EncodeToString(sum.Sum(nil)[:3])
}

// ground are the rides of the date that have no horse. Those that are off (a
// rider away, a lesson cancelled) are nobody's concern in the tack room.
func (d *day) ground() []Ride {
	var out []Ride
	for i, r := range d.week.Rides {
		if !d.isOnGround(i) {
			continue
		}
		g := Ride{Start: Clock(r.Start), End: Clock(r.End), Rider: r.Rider.Called(), Lesson: r.Meeting.Name}
		if r.Meeting.Arena != nil {
			g.Arena = r.Meeting.Arena.Name
		}
		if r.Meeting.Instructor != nil {
			g.Instructor = r.Meeting.Instructor.Name
		}
		out = append(out, g)
	}
	return out
}

// instant is a time of another day as people read it: "Wed 25 Nov, 17:05".
func (d *day) instant(i model.Instant) string {
	return i.Date.Words() + ", " + i.Minute.Clock(d.house.TwelveHour)
}
