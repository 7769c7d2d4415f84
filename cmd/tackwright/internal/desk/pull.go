package desk

import (
	"cmp"
	"fmt"
	"strings"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/model"
	"tackwright/model/folder"
)

// pullView is the pull list to be ticked off.
type pullView struct {
	Date          model.Date
	Name          string
	Before, After model.Date
	None          bool
	Broken        string // why nothing is pulled by it
	Plan          string
	Ups           []upView
	Moves         []moveView
	Away          []itemView
	Done, All     int
	Cautions      []string
}

// upView is a horse that is made ready.
type upView struct {
	OnBy, Horse, About string
	Again              bool
	Items              []itemView
	Rides              []string
	Done               bool
}

// moveView is a changeover.
type moveView struct {
	OffAt, OnBy, Words string
	NoTime             bool
	Items              []itemView
	Off                []string
}

// itemView is something to carry, that can be ticked.
type itemView struct {
	Key, Tag, What, Where, Looks string
	With                         []string // what comes along
	Ticked                       bool
	By                           string
	Waits                        bool // it comes off another horse: see the changeovers
}

func showPull(v *visit) error {
	r := v.reading
	r.Lock()
	defer r.Unlock()
	x, err := r.pullView(v.date())
	if err != nil {
		return err
	}
	return v.show("pull", "Pull list, "+x.Name, x)
}

func (r *reading) pullView(d model.Date) (*pullView, error) {
	x := &pullView{Date: d, Name: r.dayName(d), Before: d - 1, After: d + 1, Cautions: sheet.Cautions}
	s, err := r.on(d)
	if err != nil {
		return nil, err
	}
	if s == nil {
		x.None = true
		return x, nil
	}
	x.Plan = planWords(r, s)
	if len(s.broken()) > 0 {
		x.Broken = d.Words() + " is to be mended first"
		if !s.posted() {
			x.Broken = "What is pencilled breaks a rule, and is to be planned again"
		}
		return x, nil
	}
	l, err := once(r, "pull "+d.String(), func() (*sheet.PullList, error) { return sheet.Pull(s.week, s.plan, d, s.stamp) })
	if err != nil {
		return nil, err
	}
	ticked, err := r.Ticked(d)
	if err != nil {
		return nil, err
	}
	twelve := s.week.House.TwelveHour
	clock := func(c sheet.Clock) string { return model.Minute(c).Clock(twelve) }
	item := func(key string, p sheet.Piece) itemView {
		y := itemView{Key: key, Tag: p.Tag, What: strings.TrimSpace(p.Kind + " " + p.Size), Looks: p.Looks, Where: p.Rack}
		if p.KeptAt != "" {
			y.Where = "with " + p.KeptAt
		}
		t, ok := ticked[key]
		y.Ticked, y.By = ok, t.By
		x.All++
		if ok {
			x.Done++
		}
		return y
	}
	for _, u := range l.TackUps {
		up := upView{OnBy: clock(u.OnBy), Horse: u.Horse, About: join(", ", u.Kept, u.Looks), Again: u.Again, Done: true}
		for _, p := range u.Pieces {
			switch {
			case p.Travels:
				if n := len(up.Items) - 1; n >= 0 {
					up.Items[n].With = append(up.Items[n].With, p.Kind+" "+p.Tag)
				}
				continue
			case p.From != "" && !p.Waits:
				up.Items = append(up.Items, itemView{Tag: p.Tag, What: p.Kind, Where: "comes off " + p.From, Waits: true})
				continue
			}
			y := item(strings.Join([]string{"up", u.Horse, u.OnBy.String(), p.Tag}, " "), p)
			up.Done = up.Done && y.Ticked
			up.Items = append(up.Items, y)
		}
		for _, ride := range u.Rides {
			up.Rides = append(up.Rides, fmt.Sprintf("%s to %s %s (%s)", clock(ride.Start), clock(ride.End), cmp.Or(ride.Rider, ride.Work), join(", ", ride.Lesson, ride.Arena)))
		}
		x.Ups = append(x.Ups, up)
	}
	for _, c := range l.Changeovers {
		m := moveView{OffAt: clock(c.OffAt), OnBy: clock(c.OnBy), NoTime: c.NoTime, Words: "from " + c.From.Horse + " to " + c.To.Horse}
		if c.SameHorse() {
			m.Words = c.To.Horse + " changes tack"
		}
		for _, p := range c.On {
			if p.Travels {
				if n := len(m.Items) - 1; n >= 0 {
					m.Items[n].With = append(m.Items[n].With, p.Kind+" "+p.Tag)
				}
				continue
			}
			m.Items = append(m.Items, item(strings.Join([]string{"move", c.To.Horse, c.OnBy.String(), p.Tag}, " "), p))
		}
		for _, p := range c.Off {
			if !p.Travels {
				m.Off = append(m.Off, p.Kind+" "+p.Tag)
			}
		}
		x.Moves = append(x.Moves, m)
	}
	for _, a := range l.PutAway {
		y := item("away "+a.Piece.Tag, a.Piece)
		y.Where = fmt.Sprintf("%s, from %s off %s", cmp.Or(y.Where, "its place"), clock(a.From), a.Horse)
		for _, w := range a.With {
			y.With = append(y.With, w.Kind+" "+w.Tag)
		}
		x.Away = append(x.Away, y)
	}
	return x, nil
}

func join(sep string, parts ...string) string {
	var said []string
	for _, p := range parts {
		if p != "" {
			said = append(said, p)
		}
	}
	return strings.Join(said, sep)
}

// tick ticks something of the pull list, or takes the tick back: it says which, so
// that two who tick the same thing at once do not undo each other.
func tick(v *visit) error {
	d := v.date()
	t := folder.Tick{What: v.r.PostFormValue("tick"), At: v.reading.At(), By: v.session.who()}
	if t.What == "" {
		t.What, t.Off = v.r.PostFormValue("untick"), true
	}
	v.reading.Lock()
	x, err := v.reading.pullView(d)
	v.reading.Unlock()
	if err != nil {
		return err
	}
	if !x.has(t.What) {
		return no("that is no longer on the pull list of %s; look at it again", d.Words())
	}
	if err := v.reading.AddTick(d, t); err != nil {
		return err
	}
	return v.see("/pull/" + d.String())
}

func (x *pullView) has(key string) bool {
	items := x.Away
	for _, u := range x.Ups {
		items = append(items, u.Items...)
	}
	for _, m := range x.Moves {
		items = append(items, m.Items...)
	}
	for _, y := range items {
		if y.Key == key && key != "" {
			return true
		}
	}
	return false
}
