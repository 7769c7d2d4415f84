package command

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model/folder"
)

var undoCommand = &command{
	name: "undo", args: "FOLDER [NUMBER]",
	short: "undo a change: the latest, or one that history lists",
	about: `Undoes a change by its number in tackwright history; left out, the latest that
is not undone. Nothing that was posted or noted is ever taken away: a note no
longer stands, by a new note that says so, and in place of a posted version the
one before it stands again, under a new number. To undo is a change too, and can
be undone. A change is not undone where its file has changed since, and nobody
who was forgotten comes back.
`,
	example: `tackwright undo examples/sallowdene --by "Nell Ashworthy"`,
	least:   1, most: 2, answer: changed{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		by, now, today, asJSON := byFlag(fs), nowFlag(fs), todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return undo(c, *by, *now, *today, *asJSON) }
	},
}

func undo(c *call, flagBy, now, today string, asJSON bool) error {
	number := 0
	if len(c.args) > 1 {
		n, err := strconv.Atoi(c.args[1])
		if err != nil || n < 1 {
			return wrongUse("%q is not the number of a change; tackwright history lists them", c.args[1])
		}
		number = n
	}
	f, err := folder.Open(c.args[0]) // to undo may be what mends a mistake
	if err != nil {
		return err
	}
	c.goingOver(f)
	k, err := c.clock(f.Centre, today)
	if err != nil {
		return err
	}
	by, at, err := c.by(f.Centre, k, flagBy, now)
	if err != nil {
		return err
	}
	change, err := f.Undo(number, by, at)
	if err != nil {
		var refused *folder.RefusedError
		if number == 0 && errors.As(err, &refused) {
			return no("%v; an earlier one is undone by its number: tackwright history %s", err, typed(c.args[0]))
		}
		return written(err)
	}
	if asJSON {
		a := changedOf(change)
		return c.json(&a)
	}
	said := fmt.Sprintf("Change %d: %s.\n", change.Number, change.What)
	switch {
	case strings.HasPrefix(change.What, "undid: posted"):
		said += "What stood before stands again; sheets printed since are old. Notes stand as they\nwere: tackwright history " + typed(c.args[0]) + "\n"
	case strings.HasPrefix(change.What, "undid note"):
		said += "What is posted stays as it is, also where it was mended for that note:\n  tackwright repair " + typed(c.args[0]) + " DATE\n"
	}
	return c.print(fmt.Sprintf("%sTo have it back: tackwright undo %s %d\n", said, typed(c.args[0]), change.Number))
}
