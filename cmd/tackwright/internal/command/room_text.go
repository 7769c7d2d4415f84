package command

import (
	"fmt"
	"slices"
	"strings"

	"tackwright/model"
)

func (a *roomAnswer) text() string {
	var b strings.Builder
	w := a.week
	fmt.Fprintf(&b, "%s, %s to %s, by the plan %s\n", a.Centre, w.DayName(w.From), w.DayName(w.Until), a.Plan)
	if a.Ground > 0 {
		fmt.Fprintf(&b, "On the ground in it, and staying there: %s.\n", model.Count(a.Ground, "ride"))
	}
	if len(a.Riders) == 1 && a.AtOnce == nil {
		a.oneText(&b, a.Riders[0])
	} else {
		a.listText(&b)
	}
	b.WriteString("\n")
	for _, x := range append(slices.Clone(a.Cautions), a.ToPlace) {
		b.WriteString(wrap("", x))
	}
	return b.String()
}

// waits says since when a rider waits, and for how much.
func (x *roomRider) waits() string {
	said := ""
	if x.rider.WaitingSince != 0 {
		said = fmt.Sprintf(", waiting since %s", x.Since)
	}
	if x.Sessions > 0 {
		said += fmt.Sprintf(", wants %s a week", model.Count(x.Sessions, "lesson"))
	}
	if x.Has > 0 {
		said += fmt.Sprintf(", is in %d", x.Has)
	}
	return said
}

// oneText lists the lessons for one rider.
func (a *roomAnswer) oneText(b *strings.Builder, x *roomRider) {
	b.WriteString("\n" + wrap("", "Room for "+x.Rider+x.waits()))
	head := ""
	for _, l := range x.Lessons {
		if l.Horse == "" {
			continue
		}
		if now := l.disturbs(); now != head {
			head = now
			b.WriteString("\n" + head + "\n")
		}
		a.placeText(b, l)
		changesText(b, "      ", l.Changes, l.Fewest)
	}
	if head == "" {
		b.WriteString("\n" + wrap("", "No lesson was found that has room for "+strings.TrimSuffix(x.Rider, ".")+"."))
	}
	a.withoutText(b, x)
}

// disturbs says in a line who is disturbed.
func (l *roomLesson) disturbs() string {
	switch n := l.others(); {
	case len(l.Changes) == 0:
		return "NOBODY IS DISTURBED"
	case n == 0:
		return "OTHER TACK, THE SAME HORSES"
	case n == 1:
		return "ONE RIDER ON ANOTHER HORSE"
	default:
		return fmt.Sprintf("%d RIDERS ON ANOTHER HORSE", n)
	}
}

// when says of a lesson when and where it is.
func (a *roomAnswer) when(l *roomLesson) string {
	said := fmt.Sprintf("%s %s (%s)", l.meeting.Date.Words(), l.meeting.Start.Clock(a.week.House.TwelveHour), l.Lesson)
	for _, x := range []string{l.Arena, l.Instructor} {
		if x != "" {
			said += ", " + x
		}
	}
	return said
}

func (a *roomAnswer) placeText(b *strings.Builder, l *roomLesson) {
	b.WriteString(wrap("  ", a.when(l)))
	b.WriteString(wrap("      ", l.dressed()))
	if len(l.Unchecked) > 0 {
		b.WriteString(wrap("      ", "not checked: "+strings.Join(l.Unchecked, "; ")))
	}
}

// dressed is her horse with its tack.
func (l *roomLesson) dressed() string {
	return l.Horse + ": " + strings.Join(slices.DeleteFunc(slices.Concat([]string{l.Seat}, l.Pads, []string{l.Girth}, l.Extras),
		func(tag string) bool { return tag == "" }), " ")
}

// changesText names who would have another horse or other tack.
func changesText(b *strings.Builder, indent string, changes []roomChange, fewest bool) {
	for _, c := range changes {
		said := fmt.Sprintf("%s: %s, not %s", c.words, c.Now, c.Horse)
		if c.Now == c.Horse {
			said = fmt.Sprintf("%s: %s in other tack", c.words, c.Now)
		}
		if c.Ask {
			said += " (ask first)"
		}
		b.WriteString(wrap(indent, said))
	}
	if len(changes) > 0 && !fewest {
		b.WriteString(indent + "not proved: fewer changes may do\n")
	}
}

// withoutText says of lessons that have no room for her why, those outside her hours
// counted.
func (a *roomAnswer) withoutText(b *strings.Builder, x *roomRider) {
	outside, lead := 0, "\nNO ROOM\n"
	for _, why := range x.reasons() {
		var names []string
		for _, l := range x.Lessons {
			if l.Horse == "" && l.reason() == why {
				names = append(names, l.Lesson)
			}
		}
		if why == model.OutsideHours {
			outside = len(names)
			continue
		}
		b.WriteString(lead + wrap("  ", fmt.Sprintf("%s: %s", strings.Join(names, ", "), why)))
		lead = ""
	}
	if outside > 0 {
		fmt.Fprintf(b, "\nNot looked at: %s outside the rider's free hours.\n", model.Count(outside, "lesson"))
	}
}

// reasons why lessons have no room, in the order of the lessons.
func (x *roomRider) reasons() (all []string) {
	for _, l := range x.Lessons {
		if why := l.reason(); l.Horse == "" && !slices.Contains(all, why) {
			all = append(all, why)
		}
	}
	return all
}

// reason why a lesson has no room.
func (l *roomLesson) reason() string {
	switch {
	case l.Why != "":
		return l.Why
	case len(l.Alone) > 0:
		return strings.Join(l.Alone, "; ")
	case l.Full:
		return "no horse and tack with all that ride now (proved)"
	}
	return "not found in the time given, and not proved to have none"
}

// listText says who has a place at once with the others, and why others have none.
func (a *roomAnswer) listText(b *strings.Builder) {
	switch x := a.AtOnce; {
	case x == nil:
		b.WriteString("\nHow many can have a place at once was not found in the time given.\n")
	case x.Proved && x.Placed == 0:
		fmt.Fprintf(b, "\nNone of %s can have a place (proved).\n", model.Count(len(a.Riders), "rider"))
	case x.Proved:
		fmt.Fprintf(b, "\n%d of %s can have a place at once, and no more (proved).\n", x.Placed, model.Count(len(a.Riders), "rider"))
	default:
		fmt.Fprintf(b, "\n%d of %s can have a place at once; not proved: at most %d can.\n", x.Placed, model.Count(len(a.Riders), "rider"), x.Most)
	}
	for _, x := range a.Riders {
		b.WriteString("\n" + wrap("", x.Rider+x.waits()))
		if x.Place != nil {
			a.placeText(b, x.Place)
			continue
		}
		alone := slices.DeleteFunc(slices.Clone(x.Lessons), func(l *roomLesson) bool { return l.Horse == "" })
		if len(alone) > 0 {
			b.WriteString(wrap("  ", "no place at once with the others; without them there is room in "+alone[0].Lesson))
			continue
		}
		for _, why := range x.reasons() {
			n := 0
			for _, l := range x.Lessons {
				if l.reason() == why {
					n++
				}
			}
			b.WriteString(wrap("  ", fmt.Sprintf("%s: %s", model.Count(n, "lesson"), why)))
		}
	}
	if a.AtOnce != nil && len(a.AtOnce.Changes) > 0 {
		b.WriteString("\nWHAT WOULD CHANGE FOR OTHERS\n")
		changesText(b, "  ", a.AtOnce.Changes, a.AtOnce.Fewest)
	}
}
