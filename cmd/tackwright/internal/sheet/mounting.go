package sheet

import (
	"cmp"
	"fmt"
	"slices"

	"tackwright/model"
)

// mountMinutes is what mounting takes a rider of whom nobody recorded it: 3 to 5
// minutes are a fair guess (our estimate).
const mountMinutes = 4

// mount is where a rider mounts, and her turn there.
type mount struct {
	place   string // "" not recorded
	turn    int    // in the lesson at that place; 0 where riders do not wait for one another
	at      model.Minute
	minutes int
	assumed bool // nobody recorded how long it takes her
}

// mounts are the turns of the day's riders. A place of an arena serves one rider
// at a time, but for the ground; she has the first of those that she, the horse
// and the arena share. Of riders who could mount at once the quickest is first,
// so that all together wait least.
func (d *day) mounts() map[*model.Stint]mount {
	all := map[*model.Stint]mount{}
	type spot struct {
		arena *model.Arena
		place string
	}
	var spots []spot
	queues := map[spot][]*model.Stint{}
	for _, s := range d.stints {
		if s.Rider == nil || s.Meeting == nil {
			continue
		}
		m := mount{at: s.Start, minutes: cmp.Or(s.Rider.MountMinutes, mountMinutes), assumed: s.Rider.MountMinutes == 0}
		if places := d.mounting(s); len(places) > 0 {
			m.place = places[0]
		}
		all[s] = m
		if m.place == "" || m.place == "ground" {
			continue
		}
		at := spot{s.Arena, m.place}
		if queues[at] == nil {
			spots = append(spots, at)
		}
		queues[at] = append(queues[at], s)
	}
	for _, at := range spots {
		queue := queues[at]
		slices.SortStableFunc(queue, func(a, b *model.Stint) int {
			return cmp.Or(cmp.Compare(a.Start, b.Start), cmp.Compare(all[a].minutes, all[b].minutes), cmp.Compare(called(a), called(b)))
		})
		free := model.Minute(0)
		turns := map[*model.Meeting]int{}
		for _, s := range queue {
			m := all[s]
			turns[s.Meeting]++
			m.turn, m.at = turns[s.Meeting], max(s.Start, free)
			free = m.at + model.Minute(m.minutes)
			all[s] = m
		}
	}
	return all
}

// asTheyMount are the seated rides of a lesson in the order in which they mount.
func (d *day) asTheyMount(m *model.Meeting, mounts map[*model.Stint]mount) []*model.Stint {
	rides := d.inLesson(m)
	slices.SortStableFunc(rides, func(a, b *model.Stint) int { return int(mounts[a].at - mounts[b].at) })
	return rides
}

// words of a mount: place and turn, then the time and how long.
func (m mount) words(d *day) string {
	if m.place == "" {
		return "not recorded"
	}
	about := ""
	if m.assumed {
		about = "about "
	}
	place := m.place
	if m.turn > 0 {
		place = fmt.Sprintf("%s, %s", m.place, ordinal(m.turn))
	}
	return fmt.Sprintf("%s\n%s\n%s%d min", place, d.clock(m.at), about, m.minutes)
}

func ordinal(n int) string {
	switch {
	case n%100 >= 11 && n%100 <= 13:
	case n%10 == 1:
		return fmt.Sprintf("%dst", n)
	case n%10 == 2:
		return fmt.Sprintf("%dnd", n)
	case n%10 == 3:
		return fmt.Sprintf("%drd", n)
	}
	return fmt.Sprintf("%dth", n)
}
