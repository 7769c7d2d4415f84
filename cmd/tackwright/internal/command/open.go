package command

import (
	"fmt"

	"tackwright/model"
	"tackwright/model/folder"
)

// open reads a folder in which nothing may be wrong. Where there are mistakes
// it names them all.
func (c *call) open(dir string) (*folder.Folder, error) {
	f, err := folder.Open(dir)
	if err != nil {
		return nil, err
	}
	return f, c.whole(f)
}

// whole is that nothing is wrong in a folder.
func (c *call) whole(f *folder.Folder) error {
	wrong := f.Mistakes()
	if len(wrong) == 0 {
		return nil
	}
	if err := c.complain(wrong); err != nil {
		return err
	}
	return no("%s in the folder; mend first, then ask again", model.Count(len(wrong), "mistake"))
}

// openOn is open for a command that goes by the date of today: flag is the --today
// that was typed.
func (c *call) openOn(flag string) (*folder.Folder, clock, error) {
	f, err := c.open(c.args[0])
	if err != nil {
		return nil, clock{}, err
	}
	k, err := c.clock(f.Centre, flag)
	return f, k, err
}

// complain writes mistakes to standard error; with --json they are the answer
// too, as check gives it.
func (c *call) complain(wrong []folder.Trouble) error {
	for _, t := range wrong {
		fmt.Fprintf(c.err, "%s\n\n", t)
	}
	if c.asJSON {
		return c.json(&checkAnswer{Mistakes: troublesOf(wrong)})
	}
	return nil
}
