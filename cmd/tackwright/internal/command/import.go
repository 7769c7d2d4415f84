package command

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/importing"
	"tackwright/cmd/tackwright/internal/spreadsheet"
	"tackwright/model"
	"tackwright/model/folder"
)

var importCommand = &command{
	name: "import", args: "[FOLDER [FILE ...]]",
	short: "take a centre's spreadsheet into its folder; or write the template of one",
	about: `Reads horses, riders, tack, the fit chart, lessons with their riders, standing
pairings, people, arenas, terms and the rest from an XLSX file, or from CSV files
or a directory of them, and writes them into the folder as tables that you can
read and edit. A folder that is not there is made.

What a sheet lists is told by its name (Horses, Riders, Tack, Fit chart ...), what
a column holds by its head (name, weight, form until ...). The template has all of
them, with lists to choose from, an example and a remark on each head:

  tackwright import --template larkfield.xlsx

With a folder before it the template is filled with what the folder has. A name
that ends in .csv or has no ending makes a directory of CSV files.

A centre's own sheets and heads are explained in a mapping, a file of TOML:

  dates = "day first"           # of 3/4/2027; left out, such a date is a mistake
  [[sheet]]
  name = "Ponies"               # its tab, or the CSV file without .csv
  is = "horses"                 # what it lists, by the template's name
  not_read = ["Owner"]
  columns = { "Pony" = "name", "Wt" = "weight (lb)" }   # your head = ours
  [[sheet]]
  name = "Saddles"
  is = "tack"
  always = { kind = "saddle" }  # what holds in every row
  words = { "GP" = "jumping", "Lg" = "long" }   # your word in a cell = ours

All mistakes are named at once, by sheet and cell, and nothing is written while
there is one. What is written is one change of the folder, and can be undone.

It can be run again as often as you like, and doubles nothing. What is still as
import wrote it becomes as the sheet says. What was written or changed by hand
stays as it is, as does what the sheet no longer has: it is listed, the folder's
and the sheet's, and --take NAME takes the sheet's.
`,
	example: `tackwright import larkfield larkfield.xlsx --by "Kim Alder"`,
	most:    50, answer: importAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o importOptions
		fs.StringVar(&o.template, "template", "", "write the template into this `FILE`")
		fs.StringVar(&o.mapping, "mapping", "", "read the sheets as this `FILE` says")
		fs.StringArrayVar(&o.take, "take", nil, "take the sheet's for the entry of this `NAME`, as it is listed; may be said again")
		fs.BoolVar(&o.dryRun, "dry-run", false, "say what would be done, and write nothing")
		fs.StringVar(&o.name, "name", "", "the centre's `NAME`, of a folder that is made (else that of the folder)")
		o.by, o.now, o.today, o.json = byFlag(fs), nowFlag(fs), todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return importInto(c, &o) }
	},
}

type importOptions struct {
	template, mapping string
	take              []string
	dryRun            bool
	name              string
	by, now, today    *string
	json              *bool
}

func importInto(c *call, o *importOptions) error {
	if o.template != "" {
		return writeTemplate(c, o.template)
	}
	if len(c.args) < 2 {
		return wrongUse("it is written: tackwright import FOLDER FILE ..., or: tackwright import [FOLDER] --template FILE.xlsx; see tackwright help import")
	}
	f, made, err := beginOrOpen(c, o.name)
	if err != nil {
		return err
	}
	read, wrong := readSheets(c.args[1:], o.mapping, f)
	if read == nil || read.Torn {
		return c.refuseSheets(read, wrong)
	}
	plan, mistakes, err := f.Import(read.Entries, o.take)
	if err != nil {
		return written(err)
	}
	if wrong = append(wrong, read.Wrong(mistakes)...); len(wrong) > 0 {
		return c.refuseSheets(read, wrong)
	}
	a := importAnswerOf(plan, read)
	a.dir, a.made = c.args[0], made
	if !o.dryRun && len(plan.Added)+len(plan.Changed) > 0 {
		if len(plan.After.Centre.Persons) == 0 {
			return no("every change names who made it, and there is nobody yet: add a sheet People with the heads name and role, and a row for yourself")
		}
		k, err := c.clock(plan.After.Centre, *o.today)
		if err != nil {
			return err
		}
		by, at, err := c.by(plan.After.Centre, k, *o.by, *o.now)
		if err != nil {
			return err
		}
		change, err := plan.Write(by, at)
		if err != nil {
			return written(err)
		}
		a.Change, a.Files = change.Number, plan.Files()
	}
	if *o.json {
		return c.json(a)
	}
	return c.print(a.text())
}

// beginOrOpen opens the folder, or begins one where there is none.
func beginOrOpen(c *call, name string) (f *folder.Folder, made bool, err error) {
	dir := c.args[0]
	entries, err := os.ReadDir(dir)
	empty := errors.Is(err, fs.ErrNotExist)
	if err == nil {
		empty = true
		for _, e := range entries {
			empty = empty && (strings.HasPrefix(e.Name(), ".") || e.Name() == "history") // what was undone leaves its history
		}
	}
	if !empty {
		f, err := c.open(dir)
		return f, false, err
	}
	whole, err := filepath.Abs(dir)
	if err != nil {
		return nil, false, err
	}
	f, err = folder.Begin(dir, cmp.Or(name, filepath.Base(whole)))
	return f, true, err
}

// readSheets reads files as a mapping says, "" none; nil is that the mapping is
// wrong.
func readSheets(files []string, mapping string, f *folder.Folder) (*importing.Reading, []importing.Problem) {
	var m *importing.Mapping
	var wrong []importing.Problem
	if mapping != "" {
		if m, wrong = importing.ReadMapping(mapping); len(wrong) > 0 {
			return nil, wrong
		}
	}
	sheets, problems := spreadsheet.Read(files...)
	read, wrong := importing.Read(sheets, m, f)
	read.Torn = read.Torn || len(sheets) == 0
	return read, append(importing.ProblemsOf(problems), wrong...)
}

// refuseSheets names what is wrong in the sheets.
func (c *call) refuseSheets(read *importing.Reading, wrong []importing.Problem) error {
	cells := 0
	a := &importAnswer{}
	if read != nil {
		a.ReadAs, a.NotRead = read.ReadAs, read.NotRead
	}
	for _, p := range wrong {
		fmt.Fprintf(c.err, "%s\n\n", p)
		cells += 1 + len(p.Also)
		a.Mistakes = append(a.Mistakes, sheetMistake{p.At, p.Head, p.Message, p.Mend, p.Also})
	}
	for _, what := range a.NotRead {
		fmt.Fprint(c.err, wrap("not read: ", what))
	}
	if c.asJSON {
		if err := c.json(a); err != nil {
			return err
		}
	}
	if read == nil {
		return no("%s in the mapping; nothing is written until they are mended", model.Count(cells, "mistake"))
	}
	return no("%s in the spreadsheet; nothing is written until they are mended", model.Count(cells, "mistake"))
}

// writeTemplate writes the template, filled where a folder is named. It puts
// nothing in the place of a file that is there.
func writeTemplate(c *call, name string) error {
	var f *folder.Folder
	if len(c.args) > 1 {
		return wrongUse("to write a template no file is read: tackwright import [FOLDER] --template FILE.xlsx")
	}
	if len(c.args) == 1 {
		var err error
		if f, err = c.open(c.args[0]); err != nil {
			return err
		}
	}
	tables := importing.Template(f)
	if !strings.EqualFold(filepath.Ext(name), ".xlsx") {
		dir := strings.TrimSuffix(name, filepath.Ext(name))
		for _, t := range tables {
			if err := writeNew(filepath.Join(dir, importing.FileName(t)), t.CSV()); err != nil {
				return err
			}
		}
		if c.asJSON {
			return c.json(&importAnswer{Template: dir})
		}
		return c.print(fmt.Sprintf("The template is written, a file each sheet, into the directory %s.\n", typed(dir)))
	}
	var b strings.Builder
	first, lines := importing.ReadFirst()
	if err := spreadsheet.WriteXLSX(&b, first, lines, tables); err != nil {
		return err
	}
	if err := writeNew(name, []byte(b.String())); err != nil {
		return err
	}
	if c.asJSON {
		return c.json(&importAnswer{Template: name})
	}
	return c.print(fmt.Sprintf("The template is written: %s. Its first sheet says how it is filled in.\n", typed(name)))
}

func writeNew(name string, data []byte) error {
	if err := os.MkdirAll(filepath.Dir(name), 0o777); err != nil {
		return err
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if errors.Is(err, fs.ErrExist) {
		return no("%s is there already, and is not written over; name another file", name)
	}
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}
