package command

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var historyCommand = &command{
	name: "history", args: "FOLDER",
	short: "list what was changed through the program, by whom and when",
	about: `Lists the changes that the program made to a folder, the latest first: what was
posted, noted, closed, taken as standing and undone, by whom and when. Each has
a number: tackwright undo FOLDER NUMBER undoes that one. What is pencilled, and
what people write into their files by hand, is not among them.
`,
	example: "tackwright history examples/sallowdene",
	least:   1, most: 1, answer: historyAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		last := fs.Int("last", 20, "list no more than this `NUMBER`")
		asJSON := jsonFlag(fs)
		return func(c *call) error {
			if *last < 1 {
				return wrongUse("--last: a number from 1 on")
			}
			f, err := folder.Open(c.args[0])
			if err != nil {
				return err
			}
			changes, err := f.History(*last)
			if err != nil {
				return err
			}
			if *asJSON {
				return c.json(historyOf(changes))
			}
			return c.print(historyText(f.Centre, changes))
		}
	},
}

// historyAnswer is what history says as JSON.
type historyAnswer struct {
	Changes []changed `json:"changes" about:"the latest first"`
}

// changed is a change as JSON has it.
type changed struct {
	Number int    `json:"number"`
	At     string `json:"at"`
	By     string `json:"by"`
	What   string `json:"what" about:"in words"`
	Undoes int    `json:"undoes,omitempty" about:"number of the change that it undid"`
}

func historyOf(changes []*folder.Change) *historyAnswer {
	a := &historyAnswer{}
	for _, x := range changes {
		a.Changes = append(a.Changes, changedOf(x))
	}
	return a
}

func changedOf(x *folder.Change) changed {
	return changed{x.Number, x.At.String(), x.By, x.What, x.Undoes}
}

func historyText(c *model.Centre, changes []*folder.Change) string {
	if len(changes) == 0 {
		return "Nothing was changed through the program yet.\n"
	}
	var b strings.Builder
	for _, x := range changes {
		b.WriteString(wrap(fmt.Sprintf("%5d  %s  ", x.Number, instantWords(c, x.At)), x.What+", by "+x.By))
	}
	return b.String()
}
