package command

import (
	"github.com/spf13/pflag"

	"tackwright/model/folder"
)

var keysCommand = &command{
	name:  "keys",
	short: "explain every table and key of a folder",
	about: `Prints the page of every table and key that a folder can have, as Markdown.
`,
	example: "tackwright keys > keys.md",
	flags: func(*pflag.FlagSet) func(*call) error {
		return func(c *call) error { return c.print(folder.Keys()) }
	},
}
