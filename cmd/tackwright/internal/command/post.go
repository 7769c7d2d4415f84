package command

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var postCommand = &command{
	name: "post", args: "FOLDER [WHEN]",
	short: "make a pencilled plan stand, as the next version",
	about: `Takes the pencilled plan of a week from plans/ and posts it: from then on it is
what people go by, what limits and later plans count, and what the pull list
prints, with its version and who posted it. WHEN, --day and --from mean the same
dates as in tackwright plan.

The plan is audited first: one that breaks a rule is not posted. Nor is one whose
week has changed since it was pencilled, by a note, an edit or what was ridden:
plan again, and post that. A plan that was edited by hand is posted if it keeps
every rule, and nothing is then said to be proved of it. What has started stays
as it was told. Every version is kept; what it stood in for can be had back:
tackwright undo.
`,
	example: `tackwright post examples/sallowdene 2026-10-14 --by "Nell Ashworthy"`,
	least:   1, most: 2, answer: postAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o postOptions
		fs.StringVar(&o.day, "day", "", "post the plan of this `DATE` alone")
		fs.StringVar(&o.from, "from", "", "post the plan from this `DATE` to the end of its week")
		o.by = byFlag(fs)
		o.now = nowFlag(fs)
		o.today = todayFlag(fs)
		o.json = jsonFlag(fs)
		return func(c *call) error { return post(c, &o) }
	},
}

type postOptions struct {
	day, from      string
	by, now, today *string
	json           *bool
}

// postAnswer is what post says as JSON.
type postAnswer struct {
	Version  int    `json:"version" about:"under which it stands"`
	From     string `json:"from" about:"first date"`
	Until    string `json:"until" about:"last date, which counts"`
	By       string `json:"by"`
	At       string `json:"at"`
	Open     int    `json:"open_rides" about:"rides of the plan"`
	Seated   int    `json:"seated" about:"those of them that have a horse"`
	Replaces []int  `json:"replaces" about:"versions that stood on those dates"`
	Edited   bool   `json:"edited" about:"the plan was edited by hand, so nothing is proved of it"`
	Proved   bool   `json:"proved" about:"every goal is"`
}

func post(c *call, o *postOptions) error {
	f, k, err := c.openOn(*o.today)
	if err != nil {
		return err
	}
	by, at, err := c.by(f.Centre, k, *o.by, *o.now)
	if err != nil {
		return err
	}
	from, until, err := (&planOptions{day: o.day, from: o.from}).dates(c, k, f.Centre.House.WeekStarts)
	if err != nil {
		return err
	}
	file := folder.PlanFile(f.Dir, from, until)
	if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) {
		return no("there is no plan of %s yet; make it with: tackwright plan %s", datesWords(from, until), typed(f.Dir)+whenTyped(from, until))
	}
	p, err := c.readPlan(f, file)
	if err != nil {
		return err
	}
	edited, err := folder.IsEdited(file)
	if err != nil {
		return err
	}
	if err := c.mayStand(p, edited); err != nil {
		return err
	}
	if *o.now != "" || k.Real {
		if other := f.Centre.StartedOtherwise(p.week, p.plan, at); other != "" {
			return no("not posted: %s; plan again from now on, and post that", other)
		}
	}
	a := &postAnswer{From: from.String(), Until: until.String(), By: by.Name, At: at.String(), Edited: edited,
		Proved: !edited && p.plan.Proof.Proved(), Replaces: standing(f.Centre, from, until)}
	a.Open, a.Seated = seated(p.week, p.plan)
	if edited {
		p.plan.Proof = model.Proof{}
	}
	if a.Version, err = f.Post(p.week, p.plan, by, at); err != nil {
		return written(err)
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text(f.Dir, from, until))
}

// mayStand is that the plan keeps every rule, in the week as it is now.
func (c *call) mayStand(p *kept, edited bool) error {
	if broken := model.Broken(p.week.Audit(p.plan)); len(broken) > 0 {
		fmt.Fprint(c.err, violationsText(broken))
		return no("this plan breaks a rule, so it is not posted; mend it, or plan again")
	}
	if !edited && !p.week.ProofCovers(p.plan) {
		file := filepath.ToSlash(p.file)
		return no("%s is not posted: the week has changed since it was pencilled; plan again, and post that", file)
	}
	return nil
}

// standing are the versions that stand on some of the dates.
func standing(c *model.Centre, from, until model.Date) (versions []int) {
	for d := from; d <= until; d++ {
		if v := c.VersionOn(d); v > 0 && (len(versions) == 0 || versions[len(versions)-1] != v) {
			versions = append(versions, v)
		}
	}
	return versions
}

// whenTyped are the dates of a plan as they are typed behind a folder.
func whenTyped(from, until model.Date) string {
	switch until {
	case from:
		return " --day " + from.String()
	case from + 6:
		return " " + from.String()
	}
	return " --from " + from.String()
}

func datesWords(from, until model.Date) string {
	if from == until {
		return from.Words()
	}
	return from.Words() + " to " + until.Words()
}

func (a *postAnswer) text(dir string, from, until model.Date) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Version %d stands for %s, posted by %s: %d of %s have a horse.\n", a.Version, datesWords(from, until), a.By, a.Seated, model.Count(a.Open, "ride"))
	var versions []string
	for _, v := range a.Replaces {
		versions = append(versions, fmt.Sprint(v))
	}
	if len(versions) > 0 {
		fmt.Fprintf(&b, "It stands in for version %s; sheets of that are old.\n", strings.Join(versions, ", "))
	}
	if a.Edited {
		b.WriteString("It was edited by hand: it keeps every rule, and nothing is proved of it.\n")
	}
	date := "DATE"
	if from == until {
		date = from.String()
	}
	fmt.Fprintf(&b, "What to pull: tackwright pull %s %s\n", typed(dir), date)
	return b.String()
}
