package solver

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"tackwright/model"
)

// Sentences tell a reason in the trade's words: who rides besides, then each
// limit, those of one kind together.
func (r *Reason) Sentences(w *model.Week) []string {
	if r.Work != nil {
		return r.workWords(w)
	}
	if horses := r.counted(); horses != nil && len(r.Rides) > 0 {
		return r.count(w, horses)
	}
	var said []string
	if len(r.Rides) > 0 {
		said = append(said, fmt.Sprintf("Besides %s %s.", r.Asked.Rider.Called(), verb(len(r.Rides), "rides ", "ride ")+r.rides(w)))
	}
	var groups [][]Limit
	for _, l := range r.Limits {
		i := slices.IndexFunc(groups, func(g []Limit) bool { return g[0].with(l) })
		if i < 0 {
			groups = append(groups, []Limit{l})
		} else {
			groups[i] = append(groups[i], l)
		}
	}
	for _, g := range groups {
		said = append(said, groupWords(w, g))
	}
	if len(r.Limits) > 0 && r.Care() {
		said = append(said, "Rules of care alone stand in the way, and those are never bent.")
	}
	return said
}

// counted are the horses, where the reason is that rides at one time have one
// fewer.
func (r *Reason) counted() (horses []*model.Horse) {
	for _, l := range r.Limits {
		if l.rule != "horse in one place" || l.fact != nil {
			return nil
		}
		horses = append(horses, l.horse)
	}
	if len(horses) != len(r.Rides) {
		return nil
	}
	return horses
}

// count tells it: "Five rides, and four horses that carry them".
func (r *Reason) count(w *model.Week, horses []*model.Horse) []string {
	names := namesOf(horses, func(h *model.Horse) string { return h.Name })
	carry := fmt.Sprintf("%s that can carry them then: %s", counting(len(horses), "horse"), names)
	return []string{
		fmt.Sprintf("%s meet, or follow on too soon to change tack: %s, and %s.", capital(counting(len(r.Rides)+1, "ride")), r.Asked.Rider.Called(), r.rides(w)),
		fmt.Sprintf("There %s %s.", verb(len(horses), "is", "are"), carry),
	}
}

func (r *Reason) rides(w *model.Week) string {
	return namesOf(r.Rides, func(x *model.Ride) string {
		at := x.Start.Clock(w.House.TwelveHour)
		if x.Date() != r.Asked.Date() {
			at = x.Date().Words() + " " + at
		}
		return fmt.Sprintf("%s (%s)", x.Rider.Called(), at)
	})
}

// with reports whether two limits are told in one sentence.
func (l Limit) with(m Limit) bool {
	if l.rule != m.rule || l.what != m.what || l.date != m.date || l.rule == "load" {
		return false
	}
	if l.pool != nil && m.pool != nil {
		return l.fact == m.fact && l.at == m.at && l.pool.one().Kind == m.pool.one().Kind
	}
	return l.horse != nil && m.horse != nil && l.fact == m.fact && l.other == nil && m.other == nil
}

// groupWords is a sentence about limits of one kind.
func groupWords(w *model.Week, group []Limit) string {
	l := group[0]
	horses := namesOf(group, func(x Limit) string {
		if x.horse == nil {
			return ""
		}
		return x.horse.Name
	})
	clock := func(m model.Minute) string { return m.Clock(w.House.TwelveHour) }
	switch l.rule {
	case "horse in one place":
		if l.fact != nil {
			return fmt.Sprintf("%s is at work from %s to %s (%s), with time to change tack before and after.", horses, clock(l.fact.Start), clock(l.fact.End), l.fact.Name)
		}
		return fmt.Sprintf("%s %s one rider at a time on %s, with time to change tack in between.", horses, verb(len(group), "carries", "each carry"), l.date.Words())
	case "load":
		return fmt.Sprintf("%s carries %s only in some of its tack: the rest is more than it may bear.", horses, l.ride.Rider.Called())
	case "day's work", "run of work", "week's work":
		return horses + workLimit(w, group)
	case "horses apart":
		return fmt.Sprintf("%s and %s are to be kept apart (%s).", l.horse.Name, l.other.Name, l.meeting.Name)
	case "piece in one place":
		return pieceWords(w, group)
	case "own tack only":
		return fmt.Sprintf("%s would go on after a horse that is to have its own tack only, and no cleaning is recorded.", pieces(w, group))
	case "room in the ring":
		return fmt.Sprintf("%s has room for %s at %s.", l.place, few(l.limit, "rider"), clock(l.at))
	case "hands in the ring":
		return fmt.Sprintf("%s can count on %s at %s.", l.meeting.Name, few(l.limit, strings.TrimSuffix(l.what, "s")), clock(l.at))
	case "instructor in one place":
		return fmt.Sprintf("%s would hold %s and %s at once.", l.meeting.Instructor.Name, l.meeting.Name, l.next.Name)
	}
	return fmt.Sprintf("%s has one ride at a time.", l.ride.Rider.Called())
}

// workLimit is what horses may work, behind their names.
func workLimit(w *model.Week, group []Limit) string {
	l := group[0]
	limits := w.LimitsOf(l.horse)
	work := " " + verb(len(group), "works", "each work")
	switch {
	case len(group) > 1:
		of := map[string]string{"day's work": "day (" + l.date.Words() + ")", "run of work": "time without a rest on " + l.date.Words(), "week's work": "week"}
		return " are each at the limit of their " + of[l.rule] + "."
	case l.rule == "day's work" && l.what == minutes:
		return fmt.Sprintf("%s at most %d minutes on %s, short gaps counted in.", work, limits.DayMinutes, l.date.Words())
	case l.rule == "day's work":
		return fmt.Sprintf("%s in at most %s on %s.", work, counting(limits.DaySessions, "session"), l.date.Words())
	case l.rule == "run of work":
		var most []string
		if limits.RunMinutes != 0 {
			most = append(most, fmt.Sprintf("%d minutes", limits.RunMinutes))
		}
		if limits.RunSessions != 0 {
			most = append(most, counting(limits.RunSessions, "session"))
		}
		return fmt.Sprintf("%s at most %s before it rests, on %s.", work, strings.Join(most, " and "), l.date.Words())
	case l.what == minutes:
		return fmt.Sprintf("%s at most %d minutes in the week of %s.", work, limits.WeekMinutes, l.date.Words())
	case l.what == dates:
		return fmt.Sprintf("%s on at most %s in the week of %s.", work, counting(limits.WeekDays, "date"), l.date.Words())
	}
	return fmt.Sprintf("%s on at most %s in a row.", work, counting(limits.RowDates, "date"))
}

// pieceWords tell of pieces that are too few, or on another horse.
func pieceWords(w *model.Week, group []Limit) string {
	l, n := group[0], 0
	for _, x := range group {
		n += len(x.Pieces)
	}
	if l.fact != nil {
		return fmt.Sprintf("%s %s on %s from %s to %s (%s).", pieces(w, group), verb(n, "is", "are"), l.fact.Turn.Horse.Name,
			l.fact.Start.Clock(w.House.TwelveHour), l.fact.End.Clock(w.House.TwelveHour), l.fact.Name)
	}
	return fmt.Sprintf("At %s there %s %s to go round, with %s to carry one from horse to horse: %s.", l.at.Clock(w.House.TwelveHour),
		verb(n, "is", "are"), counting(n, string(l.Pieces[0].Kind)), counting(int(w.House.Move), "minute"), pieces(w, group))
}

// pieces are named by tag; where they are all that there are of a size, that is said.
func pieces(w *model.Week, group []Limit) string {
	var all []*model.Piece
	for _, l := range group {
		all = append(all, l.Pieces...)
	}
	if size := sizeOf(all[0]); len(all) > 1 && size != "" {
		like := slices.DeleteFunc(slices.Clone(w.Centre.Pieces), func(p *model.Piece) bool {
			return p.Kind != all[0].Kind || p.Family != all[0].Family || sizeOf(p) != size
		})
		if len(like) == len(all) && !slices.ContainsFunc(all, func(p *model.Piece) bool { return !slices.Contains(like, p) }) {
			return "all of " + size + ", " + namesOf(all, func(p *model.Piece) string { return p.Tag })
		}
	}
	return namesOf(all, func(p *model.Piece) string {
		if p.Kind == model.Girth && p.Label != 0 {
			return fmt.Sprintf("%s (%s)", p.Tag, p.Label)
		}
		return p.Tag
	})
}

// sizeOf is a piece's size as people say it; "" is that none is known.
func sizeOf(p *model.Piece) string {
	if p.Label != 0 {
		return p.Label.String()
	}
	return p.Size
}

// namesOf joins names as people say them: "A, B and C".
func namesOf[T any](all []T, name func(T) string) string {
	var names []string
	for _, x := range all {
		names = append(names, name(x))
	}
	if n := len(names) - 1; n > 0 {
		return strings.Join(names[:n], ", ") + " and " + names[n]
	}
	return strings.Join(names, "")
}

func verb(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}

var numbers = []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"}

// counting is a number in words with what it counts: "four horses".
func counting(n int, noun string) string {
	s := fmt.Sprint(n)
	if 0 <= n && n < len(numbers) {
		s = numbers[n]
	}
	return s + " " + noun + verb(n, "", plural(noun))
}

// plural is what a noun takes for more than one: "stirrups" has it.
func plural(noun string) string {
	if strings.HasSuffix(noun, "s") && !strings.HasSuffix(noun, "ss") {
		return ""
	}
	return "s"
}

// few is what facts leave of a limit; below 0 they leave none.
func few(n int, noun string) string { return counting(max(n, 0), noun) }

func capital(s string) string {
	_, n := utf8.DecodeRuneInString(s)
	return strings.ToUpper(s[:n]) + s[n:]
}
