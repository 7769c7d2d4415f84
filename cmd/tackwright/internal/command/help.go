package command

import (
	"fmt"
	"reflect"
	"strings"

	"github.com/spf13/pflag"
)

const (
	intro = `Tackwright plans who rides which horse in which tack at an adaptive riding
centre, and prints what to pull in the morning.
`
	statuses = `Exit status: 0 done (also where a plan is not proved, which is then said),
1 the answer is no (a mistake in the folder, a broken rule; a ride on the ground
only where --all-ride asks), 2 wrong use, 3 could not be done (disk, lock).
`
	deferral = `A fit is for a saddle fitter, lameness for a vet, a rider's health for a
physician, the go-ahead for the instructor; local codes come first.
`
)

func help(c *call) error {
	if len(c.args) == 1 {
		return c.print(overview())
	}
	for _, x := range commands() {
		if x.name == c.args[1] {
			return c.print(x.help())
		}
	}
	return wrongUse("there is no command %q; tackwright help lists them", c.args[1])
}

func overview() string {
	var b strings.Builder
	b.WriteString(intro + "\nCommands:\n\n")
	for _, x := range commands() {
		fmt.Fprintf(&b, "  %-8s %s\n", x.name, x.short)
	}
	b.WriteString("\nMore of one: tackwright help COMMAND\n\n" + statuses + "\n" + deferral)
	return b.String()
}

func (x *command) help() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\n%s\nExample:\n\n  %s\n", x.usage(), x.about, x.example)
	if fs, _ := x.flagSet(); fs.HasFlags() {
		b.WriteString("\nFlags:\n\n")
		fs.VisitAll(func(f *pflag.Flag) {
			kind, usage := pflag.UnquoteUsage(f)
			if f.Value.Type() == "bool" {
				kind = ""
			}
			lead := fmt.Sprintf("  %-15s ", "--"+f.Name+" "+kind)
			b.WriteString(wrap(lead, usage))
		})
	}
	if x.answer != nil {
		b.WriteString("\nWith --json:\n\n")
		(&keyList{&b, map[reflect.Type]string{}}).add(reflect.TypeOf(x.answer), "")
	}
	return b.String()
}

// keyList lists the keys of an answer, with what each means. A list's keys are
// behind its name and [].
type keyList struct {
	*strings.Builder
	listed map[reflect.Type]string // where the keys of a table stand already
}

func (l *keyList) add(t reflect.Type, under string) {
	for i := range t.NumField() {
		f := t.Field(i)
		key, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case !f.IsExported():
			continue
		case f.Anonymous && key == "":
			l.add(f.Type, under)
			continue
		}
		name, of, about := under+key, f.Type, f.Tag.Get("about")
		for of.Kind() == reflect.Slice || of.Kind() == reflect.Pointer {
			if of.Kind() == reflect.Slice {
				name += "[]"
			}
			of = of.Elem()
		}
		as, again := l.listed[of]
		if again {
			about = strings.TrimPrefix(about+"; with the keys of "+as, "; ")
		}
		l.WriteString(strings.TrimRight(wrap(fmt.Sprintf("  %-26s ", name), about), " \n") + "\n")
		if of.Kind() == reflect.Struct && !again {
			l.listed[of] = name
			l.add(of, name+".")
		}
	}
}

// Manual is all that help says, by the file of the program's own documentation
// that holds it: one for the overview, and one a command.
func Manual() map[string]string {
	files := map[string]string{"doc.go": overview()}
	for _, x := range commands() {
		files["doc_"+x.name+".go"] = fmt.Sprintf("# tackwright %s\n\n", x.name) + x.help()
	}
	return files
}
