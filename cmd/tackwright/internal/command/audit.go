package command

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var auditCommand = &command{
	name: "audit", args: "FOLDER [PLAN]",
	short: "name every rule that a plan breaks, also one edited by hand",
	about: `Reads a plan as a file of plans/ and names every rule that it breaks, in words,
with what the rule asks and its class: care (welfare, safety and health: nothing
bends it), stock (what the tack room and the herd hold), timetable (what the
centre set and may change). What facts alone break (rides that started, works,
posted rides) is inherited, and stands apart. It also says whether what was
proved of the plan still covers it: an edit of the plan, or of the folder, ends
that.

PLAN is a file, or a date: then it is what was posted for that date, with all notes
since, else what is pencilled. Left out, it is the plan in plans/ of the week that
today is in. A broken rule ends with status 1.
`,
	example: "tackwright audit examples/sallowdene examples/sallowdene/plans/2026-10-12.toml",
	least:   1, most: 2, answer: auditAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		today, asJSON := todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return audit(c, *today, *asJSON) }
	},
}

func audit(c *call, today string, asJSON bool) error {
	f, err := c.open(c.args[0])
	if err != nil {
		return err
	}
	k, err := c.clock(f.Centre, today)
	if err != nil {
		return err
	}
	var p *kept
	if len(c.args) == 1 {
		p, err = c.planFor(f, k.Today, "behind the folder")
	} else if date, notDate := k.date(c.args[1]); notDate == nil {
		p, err = c.planOn(f, k, date, "")
	} else {
		p, err = c.readPlan(f, c.args[1])
	}
	if err != nil {
		return err
	}
	a := auditOf(p)
	if asJSON {
		err = c.json(a)
	} else {
		err = c.print(a.text(p) + a.posted(c, f, p))
	}
	if err == nil && len(a.Broken) > 0 {
		return exit{No, ""}
	}
	return err
}

// auditAnswer is what audit says as JSON.
type auditAnswer struct {
	File      string      `json:"file,omitempty" about:"none: it was posted"`
	Version   int         `json:"version,omitempty" about:"of a posted plan"`
	From      string      `json:"from" about:"first date"`
	Until     string      `json:"until" about:"last date, which counts"`
	Open      int         `json:"open_rides" about:"rides to be planned"`
	Seated    int         `json:"seated" about:"those of them that have a horse"`
	Broken    []violation `json:"broken" about:"rules that the plan breaks"`
	Inherited []violation `json:"inherited" about:"rules that facts break without the plan"`
	Covered   bool        `json:"covered" about:"what was proved still covers the plan"`
	Goals     []goal      `json:"goals" about:"in order; less is better"`
}

type violation struct {
	Rule     string   `json:"rule" about:"its stable name"`
	Class    string   `json:"class" about:"care, stock or timetable"`
	Words    string   `json:"words" about:"what is wrong"`
	Sentence string   `json:"sentence" about:"what the rule asks"`
	Rides    []string `json:"rides" about:"rides and works that take part"`
}

func auditOf(p *kept) *auditAnswer {
	found := p.week.Audit(p.plan)
	inherited := slices.DeleteFunc(slices.Clone(found), func(v model.Violation) bool { return !v.Inherited })
	a := &auditAnswer{File: filepath.ToSlash(p.file), Version: p.stamp.Version, From: p.week.From.String(), Until: p.week.Until.String(),
		Broken: violationsOf(model.Broken(found)), Inherited: violationsOf(inherited), Covered: p.week.ProofCovers(p.plan)}
	a.Open, a.Seated = seated(p.week, p.plan)
	a.Goals = goalsOf(p.week, p.plan, a.Covered)
	return a
}

func violationsOf(vs []model.Violation) []violation {
	out := []violation{}
	for _, v := range vs {
		x := violation{Rule: v.Rule.Name, Class: string(v.Rule.Class), Words: v.Words, Sentence: v.Rule.Sentence}
		for _, s := range v.Stints {
			x.Rides = append(x.Rides, s.Name)
		}
		out = append(out, x)
	}
	return out
}

func (a *auditAnswer) text(p *kept) string {
	var b strings.Builder
	name, dates := a.File, p.week.From.Words()+" to "+p.week.Until.Words()
	if a.Version > 0 {
		name, dates = fmt.Sprintf("Version %d", a.Version), p.week.From.Words()
	}
	fmt.Fprintf(&b, "%s, %s: %d of %s seated.\n\n", name, dates, a.Seated, model.Count(a.Open, "ride"))
	found := p.week.Audit(p.plan)
	if broken := model.Broken(found); len(broken) > 0 {
		b.WriteString("BROKEN\n\n" + violationsText(broken))
	}
	if inherited := found[len(a.Broken):]; len(inherited) > 0 {
		b.WriteString("INHERITED: facts break these, whatever the plan does\n\n" + violationsText(inherited))
	}
	if len(a.Broken) == 0 {
		b.WriteString("The plan breaks no rule.\n")
	} else {
		fmt.Fprintf(&b, "The plan is broken in %s.\n", model.Count(len(a.Broken), "place"))
	}
	switch {
	case a.Version > 0: // what was proved of it then is of the week as it was
	case p.plan.Proof.Hash == "":
		b.WriteString("Nothing was ever proved of it.\n")
	case !a.Covered:
		b.WriteString("What was proved no longer covers it: the plan or the folder has changed since. Plan again to have it proved.\n")
	default:
		b.WriteString("What was proved still covers it, each among the plans as good in the lines above.\n" + goalsText(a.Goals))
	}
	return b.String()
}

// posted leads from a pencilled plan of a week that has changed since to what
// people go by, where something is posted for it.
func (a *auditAnswer) posted(c *call, f *folder.Folder, p *kept) string {
	if a.Covered || a.Version > 0 {
		return ""
	}
	for d := p.week.From; d <= p.week.Until; d++ {
		if f.Centre.VersionOn(d) > 0 {
			return fmt.Sprintf("What is posted is audited a date at a time: tackwright audit %s %s\n", typed(c.args[0]), d)
		}
	}
	return ""
}

// violationsText names violations, the classes that nothing bends marked.
func violationsText(vs []model.Violation) string {
	var b strings.Builder
	for _, v := range vs {
		fmt.Fprintf(&b, "%s (%s)\n", v.Rule.Name, v.Rule.Class)
		b.WriteString(wrap("  ", v.Words) + wrap("  the rule: ", v.Rule.Sentence) + "\n")
	}
	return b.String()
}
