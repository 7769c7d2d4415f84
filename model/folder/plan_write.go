package folder

import (
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tackwright/model"
)

// WritePlan writes a plan of the week into plans/, over an older one of the same
// dates, and returns its path. The same plan gives the same bytes. An older one
// that was edited by hand since it was written is kept under another name, the
// path kept; "" is none.
//
// A pencilled plan is not a change that history keeps: it is made again at any
// time.
func (f *Folder) WritePlan(w *model.Week, p *model.Plan) (path, kept string, err error) {
	f.writing.Lock()
	defer f.writing.Unlock()
	release, err := disk(f.Dir).lock("somebody who plans")
	if err != nil {
		return "", "", err
	}
	defer release()
	dir := filepath.Join(f.Dir, "plans")
	path = filepath.Join(dir, planName(w)+".toml")
	old, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return "", "", fmt.Errorf("the plan that is there cannot be read: %w", err)
	}
	if data := planText(w, p); !bytes.Equal(old, data) {
		if len(old) > 0 && !isAsWritten(old) {
			if kept, err = setAside(path, old); err != nil {
				return "", "", err
			}
		}
		if err := replace(path, data); err != nil {
			return "", "", err
		}
	}
	return path, kept, nil
}

// planName names a plan by its dates: a week by its first.
func planName(w *model.Week) string {
	switch w.Until {
	case w.From + 6:
		return w.From.String()
	case w.From:
		return w.From.String() + "-day"
	}
	return w.From.String() + "-to-" + w.Until.String()
}

// setAside keeps an edited plan under a name that is free.
func setAside(path string, old []byte) (string, error) {
	for i := 1; ; i++ {
		kept := fmt.Sprintf("%s-edited-%d.toml", strings.TrimSuffix(path, ".toml"), i)
		if _, err := os.Lstat(kept); errors.Is(err, fs.ErrNotExist) {
			return kept, replace(kept, old)
		} else if err != nil {
			return "", fmt.Errorf("an edited plan cannot be kept: %w", err)
		}
	}
}

const writtenMark = "# as written: "

// isAsWritten reports whether nobody has changed a plan since it was written.
func isAsWritten(data []byte) bool {
	at := bytes.LastIndex(data, []byte(writtenMark))
	return at >= 0 && bytes.Equal(data, stamp(data[:at:at]))
}

// stamp ends a plan's text with a line that tells whether it was edited since.
func stamp(text []byte) []byte {
	sum := sha256.Sum256(text)
	return fmt.Appendf(text, "%s%x\n", writtenMark, sum[:8])
}

func planText(w *model.Week, p *model.Plan) []byte {
	var b bytes.Buffer
	line := func(key, value string) { fmt.Fprintf(&b, "%s = %s\n", key, value) }
	fmt.Fprintf(&b, "# Pencilled: %s to %s. Each [[ride]] may be edited; audit it then.\n\n", w.From.Words(), w.Until.Words())
	line("centre", quote(w.Centre.Name))
	line("from", w.From.String())
	line("until", w.Until.String())
	if !w.Now.IsZero() {
		line("now", instantText(w.Now))
	}
	if p.Proof.Hash != "" {
		line("hash", quote(p.Proof.Hash))
	}
	for _, g := range p.Proof.Goals {
		fmt.Fprintf(&b, "\n[[goal]]\nname = %s\nvalue = %d\nbound = %d\nproved = %t\n", quote(g.Name), g.Value, g.Bound, g.Proved)
	}
	var day model.Date
	for i, r := range w.Rides {
		if d := r.Date(); d != day {
			day = d
			fmt.Fprintf(&b, "\n# %s\n", w.DayName(d))
		}
		b.WriteString("\n[[ride]]\n")
		line("date", r.Date().String())
		line("start", clockText(r.Start))
		line("end", clockText(r.End))
		line("lesson", quote(r.Meeting.Name))
		line("rider", quote(r.Rider.Name))
		if t := p.Turns[i]; t != nil {
			turnText(line, t)
			continue
		}
		var why []string
		if p.Ground != nil {
			why = p.Ground[i]
		}
		line("ground", quotes(why))
	}
	b.WriteString("\n")
	return stamp(b.Bytes())
}

// turnText writes the keys of a turn.
func turnText(line func(key, value string), t *model.Turn) {
	line("horse", quote(t.Horse.Name))
	if t.Seat != nil {
		line("seat", quote(t.Seat.Tag))
	}
	if len(t.Pads) > 0 {
		line("pads", quotes(tags(t.Pads)))
	}
	if t.Girth != nil {
		line("girth", quote(t.Girth.Tag))
	}
	if len(t.Extras) > 0 {
		line("extras", quotes(tags(t.Extras)))
	}
}

func tags(ps []*model.Piece) []string {
	var tags []string
	for _, p := range ps {
		tags = append(tags, p.Tag)
	}
	return tags
}

// clockText is a time of day as TOML has it; the end of a date is a text.
func clockText(m model.Minute) string {
	if m >= 24*60 {
		return quote(m.String())
	}
	return m.String()
}

// quote is a text as TOML has it, on one line.
func quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case r < ' ' || r == 0x7f:
			fmt.Fprintf(&b, `\u%04x`, r)
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

func quotes(ss []string) string {
	var out []string
	for _, s := range ss {
		out = append(out, quote(s))
	}
	return "[" + strings.Join(out, ", ") + "]"
}
