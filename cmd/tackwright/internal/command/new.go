package command

import (
	"cmp"
	"fmt"
	"path/filepath"
	"strings"
	"unicode"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var newCommand = &command{
	name: "new", args: "FOLDER",
	short: "make a folder for a centre, to be filled in",
	about: `Makes a folder of files with a worked example of each table, which you replace
by your own horses, tack, riders and lessons. Nothing is written into a folder
that holds files already. Who comes from a spreadsheet has no need of it:
tackwright import makes the folder of what that holds.
`,
	example: `tackwright new larkfield --name "Larkfield Riding Centre"`,
	least:   1, most: 1,
	flags: func(fs *pflag.FlagSet) func(*call) error {
		name := fs.String("name", "", "the centre's `NAME` (else that of the folder)")
		today := todayFlag(fs)
		return func(c *call) error { return makeFolder(c, *name, *today) }
	},
}

func makeFolder(c *call, name, today string) error {
	dir := c.args[0]
	whole, err := filepath.Abs(dir)
	if err != nil {
		return err
	}
	k, err := c.clock(&model.Centre{}, today)
	if err != nil {
		return err
	}
	name = cmp.Or(name, filepath.Base(whole))
	if err := folder.New(dir, name, k.Today); err != nil {
		return err
	}
	made := "The folder " + dir + " is made"
	if name != filepath.Base(whole) {
		made += " for " + name
	}
	return c.print(fmt.Sprintf(`%s. Its files hold one example of each table:
put your own in their place, and look often with

  tackwright check %s

Every table and key is explained by: tackwright keys
`, made, typed(dir)))
}

// typed is a path as it is typed behind a command: between quotes where it has
// more than letters, digits and the signs of paths.
func typed(path string) string {
	if strings.ContainsFunc(path, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("._-/\\:~", r)
	}) {
		return `"` + path + `"`
	}
	return path
}
