package command

import (
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model/folder"
)

var keysCommand = &command{
	name: "keys", args: "[TABLE]",
	short: "explain every table and key of a folder",
	about: `Prints the page of every table and key that a folder can have, as Markdown; or
one TABLE of it: horse, tack, lesson ...
`,
	example: "tackwright keys horse",
	most:    1,
	flags: func(*pflag.FlagSet) func(*call) error {
		return func(c *call) error {
			if len(c.args) == 0 {
				return c.print(folder.Keys())
			}
			page, known := folder.KeysOf(c.args[0])
			if page == "" {
				return wrongUse("there is no table %q; tables are: %s", c.args[0], strings.Join(known, ", "))
			}
			return c.print(page)
		}
	},
}
