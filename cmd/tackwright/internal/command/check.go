package command

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/model"
	"tackwright/model/folder"
)

var checkCommand = &command{
	name: "check", args: "FOLDER",
	short: "name what is wrong or missing, and what to measure first",
	about: `Reads a folder and names, all at once, its mistakes (what cannot be read, names
nothing, is there twice or cannot be) and its findings (what is missing, has
run out or is in conflict). Each has its file, line and column, the line
itself, and how to mend it. Dates that nobody has closed come first: they count
as posted, not confirmed. The other findings come in the order of how many rides
of the coming week wait for them: the first is what to measure first.

A mistake stops every command that plans, and ends this one with status 1.
Findings never do: they are planned around.
`,
	example: "tackwright check examples/sallowdene",
	least:   1, most: 1, answer: checkAnswer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		today, asJSON := todayFlag(fs), jsonFlag(fs)
		return func(c *call) error { return check(c, *today, *asJSON) }
	},
}

func jsonFlag(fs *pflag.FlagSet) *bool { return fs.Bool("json", false, "answer as JSON") }

func check(c *call, flag string, asJSON bool) error {
	f, err := folder.Open(c.args[0])
	if err != nil {
		return err
	}
	k, err := c.clock(f.Centre, flag)
	if err != nil {
		return err
	}
	wrong, found := f.Mistakes(), f.Findings(k.Today)
	if asJSON {
		err = c.json(&checkAnswer{Mistakes: troublesOf(wrong), Findings: troublesOf(found)})
	} else {
		err = c.print(checkText(wrong, found))
	}
	if err == nil && len(wrong) > 0 {
		return exit{No, ""}
	}
	return err
}

func checkText(wrong, found []folder.Trouble) string {
	var b strings.Builder
	list := func(title string, troubles []folder.Trouble) {
		if len(troubles) == 0 {
			return
		}
		fmt.Fprintf(&b, "%s\n\n", title)
		for _, t := range troubles {
			fmt.Fprintf(&b, "%s\n\n", t)
		}
	}
	open := 0
	for open < len(found) && isOpenDate(found[open]) {
		open++
	}
	rest := open
	for rest < len(found) && found[rest].Waits > 0 {
		rest++
	}
	list("MISTAKES, to be mended before anything is planned", wrong)
	list("WHAT WAS RIDDEN IS NOT CONFIRMED", found[:open])
	list("WHAT TO MEASURE OR RENEW FIRST, by the rides of the coming week that wait for it", found[open:rest])
	list("ALSO FOUND, which no ride of the coming week waits for", found[rest:])
	switch {
	case len(wrong) > 0:
		fmt.Fprintf(&b, "%s, %s. Nothing is planned until the mistakes are mended.\n", model.Count(len(wrong), "mistake"), model.Count(len(found), "finding"))
	case len(found) > 0:
		fmt.Fprintf(&b, "No mistakes, %s. None of them stops a plan.\n", model.Count(len(found), "finding"))
	default:
		b.WriteString("No mistakes, and nothing is missing.\n")
	}
	return b.String()
}

// isOpenDate reports whether a finding is of dates that nobody has closed.
func isOpenDate(t folder.Trouble) bool {
	_, is := t.Noun.(*model.OpenDate)
	return is
}

// checkAnswer is what check says as JSON.
type checkAnswer struct {
	Mistakes []trouble `json:"mistakes" about:"what stops every plan"`
	Findings []trouble `json:"findings" about:"what is planned around: open dates, then most rides waiting first"`
}

type trouble struct {
	File    string `json:"file" about:"within the folder; \"\" where it is none"`
	Line    int    `json:"line" about:"from 1; 0 where no line is meant"`
	Column  int    `json:"column" about:"in letters, from 1"`
	Message string `json:"message"`
	Mend    string `json:"mend,omitempty" about:"how to put it right"`
	Text    string `json:"text,omitempty" about:"the line itself"`
	Waits   int    `json:"waits,omitempty" about:"rides of the coming week that wait for it"`
}

func troublesOf(ts []folder.Trouble) []trouble {
	out := []trouble{}
	for _, t := range ts {
		out = append(out, trouble{File: t.Span.File, Line: t.Span.Line, Column: t.Span.Col, Message: t.Message,
			Mend: t.Mend, Text: t.Line, Waits: t.Waits})
	}
	return out
}
