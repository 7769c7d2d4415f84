package folder

import (
	"bytes"
	"fmt"

	"tackwright/model"
)

// Tick is something on a date's pull list that was done, or is not done after all.
type Tick struct {
	What string // that is ticked; it names no rider
	Off  bool   // the tick was taken back
	At   model.Instant
	By   string // who; "" nobody said
}

var tickKeys = &table[Tick]{
	head:  "ticks/*.toml",
	about: "What was ticked off on the pull list of a date. It goes into no plan, and may be deleted when the day is over.",
	keys: []key[Tick]{
		is("what", text, "what was done", "", func(t *Tick, v string) { t.What = v }).eg(`"Barley 09:50 S10"`),
		is("off", yes, "the tick was taken back", "false", func(t *Tick, v bool) { t.Off = v }),
		is("at", instants, "when", "", func(t *Tick, v model.Instant) { t.At = v }),
		is("by", text, "who", "nobody said", func(t *Tick, v string) { t.By = v }).eg(`"Jo Marsh"`),
	},
}

func ticksName(date model.Date) string { return "ticks/" + date.String() + ".toml" }

// AddTick writes a tick at the end of those of a date. Like a pencilled plan it is
// not a change that history keeps. What another sitting ticked meanwhile stays.
func (f *Folder) AddTick(date model.Date, t Tick) error {
	f.writing.Lock()
	defer f.writing.Unlock()
	release, err := disk(f.Dir).lock("somebody who ticks the pull list")
	if err != nil {
		return err
	}
	defer release()
	old, err := disk(f.Dir).read(ticksName(date))
	if err != nil {
		return fmt.Errorf("what was ticked cannot be read: %w", err)
	}
	b := bytes.NewBuffer(bytes.Clone(old))
	fmt.Fprintf(b, "[[tick]]\nwhat = %s\n", quote(t.What))
	if t.Off {
		b.WriteString("off = true\n")
	}
	fmt.Fprintf(b, "at = %s\n", instantText(t.At))
	if t.By != "" {
		fmt.Fprintf(b, "by = %s\n", quote(t.By))
	}
	b.WriteString("\n")
	if err := disk(f.Dir).makeDirs("ticks"); err != nil {
		return &DiskError{Err: err}
	}
	return replace(disk(f.Dir).path(ticksName(date)), b.Bytes())
}

// Ticked is what is ticked for a date, with the latest tick of each. A tick that
// cannot be read counts as none.
func (f *Folder) Ticked(date model.Date) (map[string]Tick, error) {
	data, err := disk(f.Dir).read(ticksName(date))
	if err != nil {
		return nil, fmt.Errorf("what was ticked cannot be read: %w", err)
	}
	ticked := map[string]Tick{}
	r := newReader()
	root := r.parse(ticksName(date), data)
	for _, p := range root.pairs {
		for _, n := range p.val.items {
			var t Tick
			switch {
			case !tickKeys.read(r, n, &t):
			case t.Off:
				delete(ticked, t.What)
			default:
				ticked[t.What] = t
			}
		}
	}
	return ticked, nil
}
