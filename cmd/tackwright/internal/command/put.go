package command

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/natefinch/atomic"
	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

// putOptions are how a sheet leaves the program.
type putOptions struct {
	to, paper *string
	csv, json *bool
}

func putFlags(fs *pflag.FlagSet) putOptions {
	to, size := toFlags(fs)
	return putOptions{to, size, fs.Bool("csv", false, "print its tables for a spreadsheet"), jsonFlag(fs)}
}

func toFlags(fs *pflag.FlagSet) (to, size *string) {
	return fs.String("to", "", "write it to this `FILE`; its ending says as what: .pdf, .html, .svg, .csv or .txt"),
		fs.String("paper", "", "lay that out for `SIZE`: A4 or Letter (else the centre's)")
}

// check is of what was typed, before anything is read.
func (o putOptions) check() error {
	said := 0
	for _, is := range []bool{*o.csv, *o.json, *o.to != ""} {
		if is {
			said++
		}
	}
	if said > 1 {
		return wrongUse("of --to, --csv and --json only one can be said")
	}
	switch *o.paper {
	case "", "A4", "Letter":
	default:
		return wrongUse("--paper: %q is neither A4 nor Letter", *o.paper)
	}
	if *o.to != "" && formOf[strings.ToLower(filepath.Ext(*o.to))] == nil {
		return wrongUse("--to: %s ends in none of .pdf, .html, .svg, .csv and .txt", *o.to)
	}
	return nil
}

// formOf a sheet in a file is what its ending says.
var formOf = map[string]func(*paper.Sheet, time.Time) ([]byte, error){
	".pdf":  paper.PDF,
	".html": func(s *paper.Sheet, _ time.Time) ([]byte, error) { return []byte(paper.HTML(s)), nil },
	".svg":  func(s *paper.Sheet, _ time.Time) ([]byte, error) { return []byte(paper.SVG(s)), nil },
	".csv":  func(s *paper.Sheet, _ time.Time) ([]byte, error) { return []byte(paper.CSV(s)), nil },
	".txt":  func(s *paper.Sheet, _ time.Time) ([]byte, error) { return []byte(paper.Written(s)), nil },
}

// layFor makes the paper that was said that of the house: pictures are drawn for it.
func (o putOptions) layFor(house *model.House) {
	if *o.paper != "" {
		house.Paper = *o.paper
	}
}

// put prints a sheet, or writes it to a file.
func (c *call) put(s *paper.Sheet, o putOptions) error {
	if *o.paper != "" {
		s.Paper = *o.paper
	}
	switch {
	case *o.json:
		return c.json(paper.Answered(s))
	case *o.csv:
		return c.print(paper.CSV(s))
	case *o.to == "":
		return c.print(paper.Written(s))
	}
	data, err := formOf[strings.ToLower(filepath.Ext(*o.to))](s, c.env.Now())
	if err != nil {
		return err
	}
	return c.write(*o.to, data)
}

// write puts a file in its place whole, and says so.
func (c *call) write(name string, data []byte) error {
	_, known := os.Stat(name)
	err := atomic.WriteFile(name, bytes.NewReader(data))
	if err == nil && known != nil {
		err = os.Chmod(name, 0o644) // it is made for its maker alone
	}
	if err != nil {
		return fmt.Errorf("%s could not be written: %w", name, err)
	}
	return c.print("Written: " + filepath.ToSlash(name) + "\n")
}
