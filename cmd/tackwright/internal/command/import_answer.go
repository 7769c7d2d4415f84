package command

import (
	"fmt"
	"strings"

	"tackwright/cmd/tackwright/internal/importing"
	"tackwright/model/folder"
)

// importAnswer is what import says as JSON.
type importAnswer struct {
	Change   int            `json:"change,omitempty" about:"number of the change that was written; 0 none"`
	Files    []string       `json:"files" about:"that were written, as seen from the folder"`
	Added    []importEntry  `json:"added"`
	Changed  []importEntry  `json:"changed" about:"was as an import wrote it, or was taken by name"`
	Listed   []importEntry  `json:"listed" about:"stays as it is, though the sheet says otherwise"`
	Same     int            `json:"same" about:"entries that are as the sheet says"`
	ReadAs   []string       `json:"read_as" about:"what was understood: names that were taken for fuller ones, in words"`
	NotRead  []string       `json:"not_read" about:"sheets and columns, in words"`
	Mistakes []sheetMistake `json:"mistakes" about:"where there are any nothing is written"`
	Template string         `json:"template,omitempty" about:"the file or directory of a template that was written; all else is then empty"`

	dir  string
	made bool
	what string
}

type importEntry struct {
	Table string      `json:"table"`
	Name  string      `json:"name"`
	Why   string      `json:"why,omitempty" about:"it is listed"`
	Keys  []importKey `json:"keys"`
}

type importKey struct {
	Key    string `json:"key"`
	Folder string `json:"folder" about:"as a cell has it; \"\" nothing"`
	Sheet  string `json:"sheet"`
}

type sheetMistake struct {
	At      string   `json:"at" about:"the cell, such as Horses!C7; or row, sheet or file"`
	Head    string   `json:"head,omitempty" about:"of its column"`
	Message string   `json:"message"`
	Mend    string   `json:"mend,omitempty" about:"how to put it right"`
	Also    []string `json:"also,omitempty" about:"other cells with the same mistake"`
}

func importAnswerOf(i *folder.Import, r *importing.Reading) *importAnswer {
	a := &importAnswer{Same: i.Same, ReadAs: r.ReadAs, NotRead: r.NotRead, what: i.What()}
	for _, x := range []struct {
		from []folder.Difference
		to   *[]importEntry
	}{{i.Added, &a.Added}, {i.Changed, &a.Changed}, {i.Listed, &a.Listed}} {
		for _, d := range x.from {
			e := importEntry{Table: d.Table, Name: d.Name, Why: d.Why}
			for _, k := range d.Keys {
				e.Keys = append(e.Keys, importKey{k.Key, k.Folder, k.Sheet})
			}
			*x.to = append(*x.to, e)
		}
	}
	return a
}

func (e importEntry) called() string { return strings.TrimSpace(e.Table + " " + e.Name) }

func (a *importAnswer) text() string {
	var b strings.Builder
	dir := typed(a.dir)
	switch {
	case a.what == "" && a.Same+len(a.Listed) == 0:
		b.WriteString("Nothing to write: the sheets list nothing yet.\n")
	case a.what == "":
		fmt.Fprintf(&b, "Nothing to write: %s as the sheets say.\n", isOrAre(a.Same))
	case a.Change == 0:
		b.WriteString(wrap("", "It would be: "+a.what+". Nothing is written; say it without --dry-run, and it is."))
	default:
		b.WriteString(wrap("", fmt.Sprintf("Change %d of %s: %s.", a.Change, dir, a.what)))
		b.WriteString(wrap("", "Written: "+strings.Join(a.Files, ", ")+"."))
	}
	if a.what != "" && a.Same > 0 {
		fmt.Fprintf(&b, "%s as the sheets say already.\n", isOrAre(a.Same))
	}
	list := func(title string, lines []string) {
		if len(lines) > 0 {
			b.WriteString("\n" + title + "\n")
			for _, l := range lines {
				b.WriteString(wrap("  ", l))
			}
		}
	}
	a.entries(&b, "CHANGED", a.Changed, "was")
	a.entries(&b, "LEFT AS IT IS, though the sheet says otherwise", a.Listed, "folder")
	if len(a.Listed) > 0 {
		fmt.Fprintf(&b, "To take the sheet's for one of them: --take \"%s\"\n", a.Listed[0].called())
	}
	if len(a.ReadAs) > 0 {
		list("UNDERSTOOD", []string{strings.Join(a.ReadAs, ", ") + "."})
	}
	list("NOT READ", a.NotRead)
	if a.Change != 0 {
		fmt.Fprintf(&b, "\nTo see what is missing: tackwright check %s\nTo undo this: tackwright undo %s\n", dir, dir)
	}
	return b.String()
}

func isOrAre(n int) string {
	if n == 1 {
		return "1 entry is"
	}
	return fmt.Sprintf("%d entries are", n)
}

// entries lists entries with both sides of what differs.
func (a *importAnswer) entries(b *strings.Builder, title string, all []importEntry, now string) {
	if len(all) == 0 {
		return
	}
	b.WriteString("\n" + title + "\n")
	for _, e := range all {
		b.WriteString("  " + e.called())
		if e.Why != "" {
			b.WriteString(": " + e.Why)
		}
		b.WriteString("\n")
		if strings.HasPrefix(e.Why, "no longer") || strings.HasPrefix(e.Why, "taken out") {
			continue
		}
		for _, k := range e.Keys {
			lead := fmt.Sprintf("      %s  ", k.Key)
			folderHas, sheetHas := onlyHere(k.Folder, k.Sheet), onlyHere(k.Sheet, k.Folder)
			b.WriteString(wrap(lead, fmt.Sprintf("%s: %s; sheet: %s", now, folderHas, sheetHas)))
		}
	}
}

// onlyHere is a value; of a long list what the other has not.
func onlyHere(value, other string) string {
	if value == "" {
		return "nothing"
	}
	if !strings.HasPrefix(value, "[{") || !strings.HasPrefix(other, "[{") {
		return value
	}
	cut := func(s string) []string { return strings.Split(strings.Trim(s, "[]"), "}, {") }
	has := map[string]bool{}
	for _, x := range cut(other) {
		has[strings.Trim(x, "{} ")] = true
	}
	var only []string
	for _, x := range cut(value) {
		if x = strings.Trim(x, "{} "); !has[x] {
			only = append(only, "{ "+x+" }")
		}
	}
	if len(only) == 0 {
		return "no other than the sheet's"
	}
	return strings.Join(only, ", ")
}
