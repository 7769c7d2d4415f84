package folder

import (
	"bytes"
	"path"
	"slices"
	"strings"
)

// NoteUnread is a note that counts nowhere, since it has a mistake or its file is
// torn there.
type NoteUnread struct {
	Trouble
	Text string // all that the file says of it, as it is written
}

// NotesUnread are the notes with a mistake, in order. What they say is not known to
// the program: a horse may be out. A day can be mended without them, so that a torn
// file keeps nobody from her horse, but the plan is posted only once a person has
// read them, see [Folder.HaveSeen].
func (f *Folder) NotesUnread() []NoteUnread {
	var all []NoteUnread
	for _, t := range f.Mistakes() {
		if !isNote(t) {
			continue
		}
		text := entryAround(f.known[t.Span.File], t.Span.Start)
		if !slices.ContainsFunc(all, func(n NoteUnread) bool { return n.Span.File == t.Span.File && n.Text == text }) {
			all = append(all, NoteUnread{t, text})
		}
	}
	return all
}

// HaveSeen says that a person has read the notes that could not be, and that nothing
// in them is against what is posted next.
func (f *Folder) HaveSeen() { f.seen = true }

func isNote(t Trouble) bool { return path.Dir(t.Span.File) == "notes" }

// entryAround is the [[note]] that a place of a file is in; before the first, what is
// there.
func entryAround(data []byte, at int) string {
	head := []byte("[[")
	at = min(at, len(data))
	from, until := 0, len(data)
	for line := 0; line < len(data); {
		end := len(data)
		if i := bytes.IndexByte(data[line:], '\n'); i >= 0 {
			end = line + i + 1
		}
		if bytes.HasPrefix(bytes.TrimLeft(data[line:end], " \t\ufeff"), head) {
			if line > at {
				until = line
				break
			}
			from = line
		}
		line = end
	}
	return strings.ToValidUTF8(strings.TrimSpace(string(data[from:until])), "\ufffd")
}
