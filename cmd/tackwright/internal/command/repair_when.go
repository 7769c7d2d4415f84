package command

import (
	"fmt"
	"strings"

	"tackwright/model"
	"tackwright/model/folder"
)

// repairClock is when a day is mended.
type repairClock struct {
	clock
	at    model.Instant
	known bool // at is a fact: the computer's time, or --now
}

func (o *repairOptions) clock(c *call, centre *model.Centre) (repairClock, error) {
	k, err := c.clock(centre, *o.today)
	if err != nil {
		return repairClock{}, err
	}
	at, err := k.at(*o.now)
	known := k.Real || *o.now != ""
	k.Today = at.Date
	return repairClock{k, at, known}, err
}

// week is the week to mend.
func (o *repairOptions) week(c *call, k repairClock, centre *model.Centre) (*model.Week, error) {
	word := "today"
	if len(c.args) > 1 {
		word = c.args[1]
	}
	from, err := k.date(word)
	if err != nil {
		return nil, err
	}
	until := from
	if o.through != "" {
		if until, err = k.date(o.through); err != nil {
			return nil, err
		}
		if until < from || until >= from+7 {
			return nil, wrongUse("--through: %s is not among the seven dates from %s on", until.Words(), from.Words())
		}
	}
	if until < k.Today {
		return nil, no("%s is over, so nothing of it can change; say what was ridden: tackwright close %s %s", until.Words(), typed(c.args[0]), until)
	}
	now, err := o.begun(k, from)
	if err != nil {
		return nil, err
	}
	w := centre.Repair(from, int(until-from)+1, now)
	return w, allPosted(w)
}

// begun is up to when rides have started; zero is that none has.
func (o *repairOptions) begun(k repairClock, from model.Date) (model.Instant, error) {
	switch {
	case o.from != "":
		k.Today = from
		i, err := k.instant(o.from)
		if err != nil {
			return i, wrongUse("--from: %s", strings.TrimPrefix(err.Error(), "--now: "))
		}
		return i, nil
	case from > k.Today:
		return model.Instant{}, nil
	case k.known:
		return k.at, nil
	case from < k.Today:
		return model.Instant{Date: k.Today}, nil
	}
	return model.Instant{}, nil
}

// allPosted is that each date of the week with a lesson is posted: what nobody
// posted is to be planned.
func allPosted(w *model.Week) error {
	some := false
	for d := w.From; d <= w.Until; d++ {
		some = some || w.Centre.VersionOn(d) > 0
	}
	if !some {
		return no("nothing is posted for %s, so there is nothing to mend: plan it, and post that", datesWords(w.From, w.Until))
	}
	for _, r := range w.Rides {
		if r.State != model.Off && w.Centre.VersionOn(r.Date()) == 0 {
			return no("nothing is posted for %s, so there is nothing to mend on it: mend other dates alone, or plan it, and post that", r.Date().Words())
		}
	}
	return nil
}

// mayPost is that the plan is another than what stands, and leaves as it was told
// what has started by now, whatever --from says.
func (a *repairAnswer) mayPost(f *folder.Folder, w *model.Week, p *model.Plan, k repairClock) error {
	if a.Same {
		return no("not posted: it is what stands already")
	}
	if !k.known {
		return nil
	}
	if other := f.Centre.StartedOtherwise(w, p, k.at); other != "" {
		return no("not posted: %s; without --from, what has started by now is a fact", other)
	}
	return nil
}

// spanName are the dates of a week, for a heading.
func spanName(w *model.Week) string {
	if w.From == w.Until {
		return w.DayName(w.From)
	}
	return fmt.Sprintf("%s to %s", w.DayName(w.From), w.DayName(w.Until))
}
