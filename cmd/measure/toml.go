package main

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"

	"tackwright/model"
)

// raw is a value as TOML has it.
type raw string

// toml is text in the making.
type toml struct{ bytes.Buffer }

func (t *toml) head(name string) { fmt.Fprintf(t, "\n%s\n", name) }

// line writes a key, unless its value is nothing.
func (t *toml) line(key string, value any) {
	switch v := value.(type) {
	case string:
		if v != "" {
			fmt.Fprintf(t, "%s = %s\n", key, strconv.Quote(v))
		}
	case []string:
		if len(v) > 0 {
			var all []string
			for _, s := range v {
				all = append(all, strconv.Quote(s))
			}
			fmt.Fprintf(t, "%s = [%s]\n", key, strings.Join(all, ", "))
		}
	case int:
		if v != 0 {
			fmt.Fprintf(t, "%s = %d\n", key, v)
		}
	case bool:
		if v {
			fmt.Fprintf(t, "%s = true\n", key)
		}
	case model.Date:
		if v != 0 {
			fmt.Fprintf(t, "%s = %s\n", key, v)
		}
	case model.Grams:
		if v != 0 {
			fmt.Fprintf(t, "%s = \"%d g\"\n", key, v)
		}
	case model.Minute:
		fmt.Fprintf(t, "%s = %s\n", key, v)
	case raw:
		fmt.Fprintf(t, "%s = %s\n", key, string(v))
	}
}

func names[T any](all []T, name func(T) string) []string {
	var out []string
	for _, x := range all {
		out = append(out, name(x))
	}
	return out
}

func ofHorse(h *model.Horse) string { return h.Name }

// inches of a label, as "17.5 in".
func inches(l model.Label) string { return fmt.Sprintf("%g in", float64(l)/10) }

// hands of a height, as "14.3 hh".
func hands(l model.Length) string {
	in := int(l / model.Inch)
	return fmt.Sprintf("%d.%d hh", in/4, in%4)
}

func centreText(c *model.Centre, today model.Date) []byte {
	var t toml
	t.head("[centre]")
	t.line("name", c.Name)
	t.line("zone", c.House.Zone)
	t.line("today", today)
	t.head("[house]")
	t.line("records", []string{"mounting", "skills"})
	t.line("levels", c.House.Levels)
	for _, p := range c.Persons {
		t.head("[[person]]")
		t.line("name", p.Name)
		t.line("role", string(p.Role))
	}
	for _, a := range c.Arenas {
		t.head("[[arena]]")
		t.line("name", a.Name)
		t.line("riders_at_once", a.RidersAtOnce)
		t.line("indoor", a.Indoor)
		t.line("mounting", a.Mounting)
	}
	for _, x := range c.Terms {
		t.head("[[term]]")
		t.line("name", x.Name)
		t.line("first", x.First)
		t.line("last", x.Last)
		for _, p := range x.Pairings {
			t.head("[[term.pairings]]")
			t.line("rider", p.Rider.Name)
			t.line("horse", p.Horse.Name)
			if p.Seat != nil {
				t.line("seat", p.Seat.Tag)
			}
		}
	}
	return t.Bytes()
}

// horsesText has a horse that was weighed by tape at the careful end, as if by scale.
func horsesText(c *model.Centre) []byte {
	var t toml
	for _, h := range c.Horses {
		weight := h.Weight
		if h.ByTape {
			weight = weight * 9 / 10
		}
		t.head("[[horse]]")
		t.line("name", h.Name)
		t.line("height", hands(h.Height))
		t.line("weight", weight)
		t.line("barrel", string(h.Barrel))
		t.line("foaled", h.Foaled)
		t.line("mounting", h.Mounting)
		t.line("skills", h.Skills)
		t.line("levels", h.Levels)
		t.line("must_be_led", h.MustLead)
		t.line("load", h.LoadPercent)
		t.line("max_load_support", h.MaxSupport)
		t.line("apart", names(h.Apart, ofHorse))
		l := h.Limits
		if l != (model.Limits{}) {
			t.head("[horse.limits]")
			t.line("day_sessions", l.DaySessions)
			t.line("run_sessions", l.RunSessions)
			t.line("week_days", l.WeekDays)
			if l.WeekMinutes > 0 {
				t.line("week", fmt.Sprintf("%d min", l.WeekMinutes))
			}
		}
	}
	return t.Bytes()
}

func tackText(c *model.Centre) []byte {
	var t toml
	for _, p := range c.Pieces {
		t.head("[[tack]]")
		t.line("tag", p.Tag)
		t.line("kind", string(p.Kind))
		t.line("style", p.Style)
		switch {
		case p.Kind == model.Girth:
			t.line("family", map[model.Family]string{model.ShortGirth: "short", model.LongGirth: "long", model.Cinch: "cinch"}[p.Family])
		case p.Family == model.ShortGirth:
			t.line("billets", "long") // long billets take a short girth
		case p.Family == model.LongGirth:
			t.line("billets", "short")
		}
		if p.Label != 0 {
			t.line("size", inches(p.Label))
		} else {
			t.line("size", p.Size)
		}
		t.line("weight", p.Weight)
		if p.WithSeat != nil {
			t.line("with_seat", p.WithSeat.Tag)
		}
		if p.NoPad {
			t.line("needs_pad", raw("false"))
		}
	}
	return t.Bytes()
}

func fitText(c *model.Centre) []byte {
	var t toml
	for _, r := range c.Chart {
		t.head("[[fit]]")
		t.line("horse", r.Horse.Name)
		t.line("seat", r.Seat.Tag)
		t.line("pad_sizes", r.PadSizes)
		switch {
		case r.GirthMin == 0:
		case r.GirthMin == r.GirthMax:
			t.line("girth", inches(r.GirthMin))
		default:
			t.line("girth", fmt.Sprintf("%g-%s", float64(r.GirthMin)/10, inches(r.GirthMax)))
		}
		t.line("by", r.By)
		t.line("approved", r.Approved)
		t.line("until", r.Until)
	}
	return t.Bytes()
}

func ridersText(c *model.Centre) []byte {
	var t toml
	for _, r := range c.Riders {
		t.head("[[rider]]")
		t.line("name", r.Name)
		t.line("weight", r.Weight)
		if r.SeatMin > 0 {
			t.line("seat", inches((r.SeatMin+r.SeatMax)/2)) // half an inch either way
		}
		t.line("support", r.Support)
		t.line("level", r.Level)
		t.line("mounting", r.Mounting)
		t.line("barrels", names(r.Barrels, func(b model.Barrel) string { return string(b) }))
		if r.HorseMax > 0 {
			t.line("horse_height", "8-"+hands(r.HorseMax))
		}
		t.line("skills", r.Skills)
		t.line("styles", r.Styles)
		var extras []string
		for _, x := range r.Extras {
			size := ""
			if x.Size != "" {
				size = ", size = " + strconv.Quote(x.Size)
			}
			extras = append(extras, fmt.Sprintf("{ kind = %q%s }", string(x.Kind), size))
		}
		if len(extras) > 0 {
			t.line("extras", raw("["+strings.Join(extras, ", ")+"]"))
		}
		t.line("leader", r.Leader)
		t.line("sidewalkers", r.Sidewalkers)
		t.line("form_until", r.FormUntil)
		t.line("never_on", names(r.Bans, ofHorse))
		t.line("ride_first", r.RideFirst)
		var likes, dislikes []string
		for _, x := range r.Likings {
			what := ""
			if x.Horse != nil {
				what = fmt.Sprintf("{ horse = %q, weight = %d }", x.Horse.Name, x.Weight)
			} else {
				what = fmt.Sprintf("{ seat = %q, weight = %d }", x.Seat.Tag, x.Weight)
			}
			if x.Dislike {
				dislikes = append(dislikes, what)
			} else {
				likes = append(likes, what)
			}
		}
		if len(likes) > 0 {
			t.line("likes", raw("["+strings.Join(likes, ", ")+"]"))
		}
		if len(dislikes) > 0 {
			t.line("dislikes", raw("["+strings.Join(dislikes, ", ")+"]"))
		}
	}
	return t.Bytes()
}

func lessonsText(c *model.Centre) []byte {
	var t toml
	for _, l := range c.Lessons {
		t.head("[[lesson]]")
		t.line("name", l.Name)
		t.line("on", l.On)
		t.line("start", raw(l.Start.String()))
		t.line("end", raw(l.End.String()))
		t.line("arena", l.Arena.Name)
		t.line("instructor", l.Instructor.Name)
		t.line("level", l.Level)
		t.line("size", l.Size)
		if l.Hands != model.NoHands {
			t.line("leaders", raw(strconv.Itoa(l.Hands.Leaders)))
			t.line("sidewalkers", raw(strconv.Itoa(l.Hands.Sidewalkers)))
		}
		var places []string
		for _, p := range l.Places {
			place := fmt.Sprintf("{ rider = %q", p.Rider.Name)
			if p.End != 0 {
				place += fmt.Sprintf(", start = %s, end = %s", p.Start, p.End)
			}
			places = append(places, place+" }")
		}
		t.line("riders", raw("["+strings.Join(places, ", ")+"]"))
	}
	for _, w := range c.Works {
		t.head("[[work]]")
		t.line("horse", w.Horse.Name)
		t.line("kind", w.Kind)
		t.line("on", w.On)
		t.line("start", raw(w.Start.String()))
		t.line("end", raw(w.End.String()))
	}
	return t.Bytes()
}
