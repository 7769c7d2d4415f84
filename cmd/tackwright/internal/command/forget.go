package command

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
)

var forgetCommand = &command{
	name: "forget", args: "FOLDER RIDER",
	short: "take a rider out of all files and history, for good",
	about: `Takes a rider out of the folder: her entry, her places and bookings, her name in
what was posted, noted, ridden and changed. What the horses did stays whole: it
is then told of a rider without a name. Pencilled plans that name her go. It
cannot be undone, and so the whole name is asked for, and --for-good.

It names the files that still hold the name: copies, letters, and what backups
and sync services keep are for a person to look after, as is a first name alone
in a remark. Rides of hers in weeks to come are to be planned anew.
`,
	example: `tackwright forget examples/sallowdene "Otis Bramley" --for-good --by "Nell Ashworthy"`,
	least:   2, most: 2, answer: forgetAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		forGood := fs.Bool("for-good", false, "it cannot be undone, and is meant")
		by, now, today, asJSON := byFlag(fs), nowFlag(fs), todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return forget(c, *forGood, *by, *now, *today, *asJSON) }
	},
}

// forgetAnswer is what forget says as JSON.
type forgetAnswer struct {
	As     string   `json:"as" about:"what records call the rider now"`
	Left   []string `json:"left" about:"files that still hold the name, for a person to look after"`
	Posted []string `json:"posted" about:"dates to come on which a ride of hers was posted, to be mended"`
}

func forget(c *call, forGood bool, flagBy, now, today string, asJSON bool) error {
	f, k, err := c.openOn(today)
	if err != nil {
		return err
	}
	by, at, err := c.by(f.Centre, k, flagBy, now)
	if err != nil {
		return err
	}
	i := slices.IndexFunc(f.Centre.Riders, func(r *model.Rider) bool { return r.Name == c.args[1] })
	switch {
	case i < 0:
		return no("there is no rider %q; to forget somebody the whole name is asked for, as the folder has it", c.args[1])
	case !forGood:
		return wrongUse("to forget a rider cannot be undone; if it is meant, say --for-good")
	}
	a := &forgetAnswer{}
	for d := at.Date; d < at.Date+noteReach; d++ {
		for _, t := range f.Centre.ToldOn(d) {
			if t.Rider == f.Centre.Riders[i] && t.Turn != nil && !slices.Contains(a.Posted, d.String()) {
				a.Posted = append(a.Posted, d.String())
			}
		}
	}
	gone, err := f.Forget(f.Centre.Riders[i], by, at)
	if gone == nil {
		return written(err)
	}
	a.As, a.Left = gone.As, gone.Left
	if asJSON {
		if wrong := c.json(a); wrong != nil {
			return wrong
		}
		return err
	}
	if wrong := c.print(a.text(c.args[0])); wrong != nil {
		return wrong
	}
	return err
}

func (a *forgetAnswer) text(dir string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "The rider is forgotten; records say %q.\n", a.As)
	if len(a.Left) > 0 {
		b.WriteString("These files still hold the name, and are not the program's to change:\n  " + strings.Join(a.Left, "\n  ") + "\n")
	}
	for i, d := range a.Posted {
		if i == 0 {
			b.WriteString("The rider had a horse on dates to come; mend them:\n")
		}
		fmt.Fprintf(&b, "  tackwright repair %s %s\n", typed(dir), d)
	}
	return b.String()
}
