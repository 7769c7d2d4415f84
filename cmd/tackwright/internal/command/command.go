// Package command is what can be typed behind "tackwright": one file a command.
// A command reads its flags, calls, and prints.
//
// What is asked for goes to standard output, and reads the same on any day and
// computer; seconds, progress and what went wrong go to standard error. With
// --json the answer is one JSON value. Its keys are stable: one may be added,
// none goes away or changes its meaning, and help names them all.
package command

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"time"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/answer"
	"tackwright/cmd/tackwright/internal/desk/search"
)

// Exit statuses of the program.
const (
	Done     = 0 // also where the plan is not proved, which is then said
	No       = 1 // a mistake in the folder, a broken rule
	WrongUse = 2
	Failed   = 3 // could not be done: disk, lock
)

// Env is what a command knows of the computer it runs on.
type Env struct {
	Now      func() time.Time
	Terminal bool   // standard error is one: progress is shown on it
	By       string // name of the person who sits at it; "" not set
}

// command is one word behind "tackwright".
type command struct {
	name, args  string // "plan", "FOLDER [WHEN]"
	short       string // one line
	about       string // paragraphs
	example     string
	least, most int // arguments
	answer      any // of --json; nil: takes none
	// flags declares the flags and returns what is run once they are read.
	flags func(*pflag.FlagSet) func(*call) error
}

// call is one use of a command.
type call struct {
	ctx      context.Context
	env      Env
	out, err io.Writer
	args     []string
	asJSON   bool // --json was said

	// again runs another command line, and returns what it says.
	again func(ctx context.Context, args []string) search.Answer
}

// commands in the order in which a newcomer needs them.
func commands() []*command {
	return []*command{
		newCommand, deskCommand, importCommand, checkCommand, keysCommand,
		termCommand, planCommand, whyCommand, whyNotCommand, waysCommand, takeCommand, groundedCommand,
		buyCommand, roomCommand,
		pullCommand, sheetCommand, calendarCommand, auditCommand, postCommand,
		noteCommand, closeCommand, repairCommand,
		undoCommand, historyCommand,
		dueCommand, workloadCommand,
		forgetCommand,
	}
}

// Run runs one command line and returns the exit status. When ctx ends, a
// search ends with the best plan it has.
func Run(ctx context.Context, env Env, in io.Reader, out, errOut io.Writer, args []string) int {
	c := &call{ctx: ctx, env: env, out: out, err: errOut, args: args}
	c.again = func(ctx context.Context, args []string) search.Answer {
		var out, wrong bytes.Buffer
		status := Run(ctx, Env{Now: env.Now}, nil, &out, &wrong, args)
		return search.Answer{Status: status, Out: out.String(), Wrong: wrong.String()}
	}
	var err error
	if len(args) == 1 && args[0] == searching {
		err = search.Serve(ctx, in, out, c.again)
	} else {
		err = run(c)
	}
	var ends exit
	switch {
	case err == nil:
		return Done
	case !errors.As(err, &ends):
		ends = exit{Failed, err.Error()}
	}
	if ends.words != "" {
		fmt.Fprintln(errOut, "tackwright: "+ends.words)
	}
	return ends.status
}

func run(c *call) error {
	if len(c.args) == 0 {
		fmt.Fprint(c.err, overview())
		return exit{WrongUse, ""}
	}
	name := c.args[0]
	switch name {
	case "help", "--help", "-h":
		return help(c)
	}
	i := slices.IndexFunc(commands(), func(x *command) bool { return x.name == name })
	if i < 0 {
		return wrongUse("there is no command %q; tackwright help lists them", name)
	}
	x := commands()[i]
	fs, do := x.flagSet()
	switch err := fs.Parse(c.args[1:]); {
	case errors.Is(err, pflag.ErrHelp):
		fmt.Fprint(c.out, x.help())
		return nil
	case err != nil:
		return wrongUse("%v; see tackwright help %s", err, name)
	}
	c.args = fs.Args()
	if f := fs.Lookup("json"); f != nil {
		c.asJSON = f.Value.String() == "true"
	}
	if n := len(c.args); n < x.least || n > x.most {
		return wrongUse("it is written: %s; see tackwright help %s", x.usage(), name)
	}
	return do(c)
}

// usage is how the command is written.
func (x *command) usage() string { return strings.TrimSpace("tackwright " + x.name + " " + x.args) }

func (x *command) flagSet() (*pflag.FlagSet, func(*call) error) {
	fs := pflag.NewFlagSet(x.name, pflag.ContinueOnError)
	fs.SortFlags = false
	fs.Usage = func() {}
	do := x.flags(fs)
	return fs, do
}

// exit is an error with the status that it ends the program with.
type exit struct {
	status int
	words  string // "" where all has been said
}

func (e exit) Error() string { return e.words }

func no(format string, args ...any) error { return exit{No, fmt.Sprintf(format, args...)} }

func wrongUse(format string, args ...any) error { return exit{WrongUse, fmt.Sprintf(format, args...)} }

// print writes to standard output.
func (c *call) print(text string) error {
	_, err := io.WriteString(c.out, text)
	return err
}

// json writes an answer, which is pointed to, as JSON, with all its lists.
func (c *call) json(a any) error {
	answer.Whole(a)
	enc := json.NewEncoder(c.out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(a)
}
