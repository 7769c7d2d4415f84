package command

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"tackwright/model"
)

// riddenSaying reads what people say of a day that is over.
type riddenSaying struct {
	centre *model.Centre
	date   model.Date
	told   []model.Told
	said   []model.Differs // this time
}

func (s *riddenSaying) clock(m model.Minute) string { return m.Clock(s.centre.House.TwelveHour) }

// say adds to a record what was typed.
func (s *riddenSaying) say(x *model.Ridden, o *closeOptions) error {
	for _, g := range []struct {
		how   model.DiffersHow
		texts []string
	}{{model.NoShow, o.noShow}, {model.OtherHorse, o.other}, {model.ExtraRide, o.extra}, {model.CutShort, o.short}} {
		for _, text := range g.texts {
			d, err := s.differs(g.how, text)
			if err != nil {
				return err
			}
			x.Differs = append(slices.DeleteFunc(x.Differs, d.replaces), d.Differs)
			s.said = append(s.said, d.Differs)
		}
	}
	for _, text := range o.work {
		w, err := s.work(text)
		if err != nil {
			return err
		}
		x.Works = append(slices.DeleteFunc(x.Works, func(v *model.Work) bool { return v.Horse == w.Horse && v.Start == w.Start }), w)
	}
	return nil
}

// onceAtATime is that no horse that was named carried two riders at once, as the
// record then says.
func (s *riddenSaying) onceAtATime(x *model.Ridden) error {
	then := *s.centre
	then.Ridden = append(slices.DeleteFunc(slices.Clone(then.Ridden), func(r *model.Ridden) bool { return r.Date == x.Date }), x)
	ridden := then.RiddenOn(s.date)
	for _, d := range s.said {
		if d.Turn == nil {
			continue
		}
		for _, a := range ridden {
			if a.Lesson != d.Lesson || a.Rider != d.Rider || d.Start != 0 && a.Start != d.Start || a.Turn == nil || a.Turn.Horse != d.Turn.Horse {
				continue
			}
			for _, b := range ridden {
				if (b.Lesson != a.Lesson || b.Rider != a.Rider) && b.Turn != nil && b.Turn.Horse == a.Turn.Horse && a.Start < b.End && b.Start < a.End {
					return no("%s cannot have had two riders at once: %s rode it from %s to %s, in %s; say of that ride too what was not as posted",
						b.Turn.Horse.Name, b.Rider.Name, s.clock(b.Start), s.clock(b.End), b.LessonName)
				}
			}
		}
	}
	return nil
}

type differsSaid struct{ model.Differs }

// replaces reports whether an earlier word on a ride no longer stands: one of
// the same kind, or one that cannot be beside it.
func (d differsSaid) replaces(old model.Differs) bool {
	same := old.Lesson == d.Lesson && old.Rider == d.Rider && (old.Start == 0 || d.Start == 0 || old.Start == d.Start)
	return same && (old.How == d.How || old.How == model.NoShow || d.How == model.NoShow)
}

// differs is how a ride differed.
func (s *riddenSaying) differs(how model.DiffersHow, text string) (d differsSaid, err error) {
	d.How = how
	rest := text
	fail := func(err error) (differsSaid, error) { return d, err }
	if how == model.CutShort {
		said, until, ok := cutLast(rest, " until ")
		if !ok {
			return fail(wrongUse("--short %q does not say until when: \"RIDER until 10:20\"", text))
		}
		if d.End, err = timeOfDay(until); err != nil {
			return fail(err)
		}
		rest = said
	}
	rest, at, _ := cutLast(rest, " at ")
	if how == model.ExtraRide && at != "" {
		if d.Start, d.End, err = hours(at); err != nil {
			return fail(err)
		}
	}
	if how == model.OtherHorse || how == model.ExtraRide {
		if rest, d.Turn, err = s.turn(rest, text); err != nil {
			return fail(err)
		}
	}
	rest, in, _ := cutLast(rest, " in ")
	if d.Rider, err = riderNamed(s.centre, strings.TrimSpace(rest)); err != nil {
		return fail(err)
	}
	if in != "" {
		if d.Lesson, err = lessonNamed(s.centre, in); err != nil {
			return fail(err)
		}
	}
	if how == model.ExtraRide {
		return d, s.joined(&d)
	}
	var part model.Minute
	if at != "" {
		if part, err = timeOfDay(at); err != nil {
			return fail(err)
		}
	}
	return d, s.which(&d, part)
}

// joined is that the lesson of an extra ride is said and held.
func (s *riddenSaying) joined(d *differsSaid) error {
	switch {
	case d.Lesson == nil:
		return wrongUse("--extra: say in which lesson %s rode: \"RIDER in LESSON on HORSE\"", d.Rider.Name)
	case !s.centre.Holds(d.Lesson, s.date):
		return no("%s is not held on %s", d.Lesson.Name, s.date.Words())
	}
	for _, t := range s.told {
		if t.Lesson == d.Lesson && t.Rider == d.Rider && t.Turn != nil && (d.Start == 0 || d.Start == t.Start) {
			return no("%s was told of a ride in %s, so it is no extra ride; say --other", d.Rider.Name, t.LessonName)
		}
	}
	return nil
}

// which finds the ride that is meant among those that were told.
func (s *riddenSaying) which(d *differsSaid, part model.Minute) error {
	var hers []model.Told
	for _, t := range s.told {
		if t.Rider == d.Rider && (d.Lesson == nil || t.Lesson == d.Lesson) && (part == 0 || t.Start == part) {
			hers = append(hers, t)
		}
	}
	switch {
	case len(hers) == 0:
		return no("%s was not told of such a ride on %s; if it was ridden, say --extra", d.Rider.Name, s.date.Words())
	case len(hers) > 1:
		var words []string
		for _, t := range hers {
			words = append(words, fmt.Sprintf("in %s at %s", t.LessonName, s.clock(t.Start)))
		}
		return no("%s has more than one ride on %s: %s; say which", d.Rider.Name, s.date.Words(), strings.Join(words, ", "))
	}
	t := hers[0]
	d.Lesson = t.Lesson
	if part != 0 {
		d.Start = part
	}
	switch {
	case d.Lesson == nil:
		return no("%s is no longer in the folder, so nothing can be said of its rides", t.LessonName)
	case t.Turn == nil && d.How != model.OtherHorse:
		return no("%s was on the ground on %s; if there was a ride after all, say --extra \"RIDER in LESSON on HORSE\"", d.Rider.Name, s.date.Words())
	case d.How == model.CutShort && (d.End <= t.Start || d.End >= t.End):
		return no("%s rode from %s to %s, which does not end early at %s", d.Rider.Name, s.clock(t.Start), s.clock(t.End), s.clock(d.End))
	}
	return nil
}

// turn cuts the horse and its tack off: "... on HORSE with TAGS".
func (s *riddenSaying) turn(said, text string) (rest string, t *model.Turn, err error) {
	said, with, _ := cutLast(said, " with ")
	rest, on, ok := cutLast(said, " on ")
	if !ok {
		return "", nil, wrongUse("%q does not say on which horse: \"RIDER on HORSE\"", text)
	}
	t = &model.Turn{}
	if t.Horse, err = horseNamed(s.centre, on); err != nil {
		return "", nil, err
	}
	for _, tag := range strings.Fields(strings.ReplaceAll(with, ",", " ")) {
		p, err := pieceTagged(s.centre, tag)
		switch {
		case err != nil:
			return "", nil, err
		case p.IsSeat() && t.Seat != nil, p.Kind == model.Girth && t.Girth != nil:
			return "", nil, wrongUse("%q has two of a kind: %s is one more", with, p.Tag)
		case p.IsSeat():
			t.Seat = p
		case p.Kind == model.Girth:
			t.Girth = p
		case p.Kind == model.Pad:
			t.Pads = append(t.Pads, p)
		default:
			t.Extras = append(t.Extras, p)
		}
	}
	return rest, t, nil
}

var workForm = regexp.MustCompile(`^(.+) (\d{1,2}[:.]\d\d ?- ?\d{1,2}[:.]\d\d)$`)

// work is other work: "HORSE lunging 12:30-12:50 in ARENA by PERSON".
func (s *riddenSaying) work(text string) (*model.Work, error) {
	w := &model.Work{On: s.date}
	rest, by, _ := cutLast(text, " by ")
	rest, in, _ := cutLast(rest, " in ")
	m := workForm.FindStringSubmatch(strings.TrimSpace(rest))
	if m == nil {
		return nil, wrongUse("--work %q is not like \"HORSE lunging 12:30-12:50\"", text)
	}
	var err error
	if w.Start, w.End, err = hours(m[2]); err != nil {
		return nil, err
	}
	words := strings.Fields(m[1])
	for i := len(words) - 1; i > 0 && w.Horse == nil; i-- {
		w.Horse, err = horseNamed(s.centre, strings.Join(words[:i], " "))
		w.Kind = strings.Join(words[i:], " ")
	}
	if w.Horse == nil {
		return nil, cmp.Or(err, wrongUse("--work %q does not say what was done: \"HORSE lunging 12:30-12:50\"", text))
	}
	if in != "" {
		if w.Arena, err = arenaNamed(s.centre, in); err != nil {
			return nil, err
		}
	}
	if by != "" {
		if w.Person, err = colleague(s.centre, by); err != nil {
			return nil, err
		}
	}
	return w, nil
}

// cutLast cuts a text around the last of a word.
func cutLast(s, word string) (before, after string, found bool) {
	i := strings.LastIndex(s, word)
	if i < 0 {
		return s, "", false
	}
	return s[:i], strings.TrimSpace(s[i+len(word):]), true
}
