package folder

import (
	"fmt"
	"slices"
	"strings"
)

// Keys is the page of every table and key, in Markdown. It is made from what
// the reader itself goes by.
func Keys() string {
	p := &page{done: map[string]bool{}}
	p.b.WriteString(pageTop)
	p.forms()
	p.b.WriteString("\n# What people write\n")
	for _, s := range sections {
		p.sheet(s.sheet, 2)
	}
	p.b.WriteString("\n# What the program writes\n\nThese are read with a folder. They can be read and mended by hand, and seldom need to be.\n")
	for _, s := range []*sheet{noteKeys.sheet(), postedKeys.sheet(), riddenKeys.sheet(), standingKeys.sheet()} {
		p.sheet(s, 2)
	}
	p.b.WriteString("\nA plan in plans/ is pencilled: it is read when it is asked for, and never goes into another plan.\n")
	p.sheet(planKeys.sheet(), 2)
	p.b.WriteString("\nThe desk keeps what is ticked on pull lists.\n")
	p.sheet(tickKeys.sheet(), 2)
	p.b.WriteString("\nWhat the program changed is kept in history/, a file a change, so that it can be undone.\n")
	p.sheet(changeKeys.sheet(), 2)
	return p.b.String()
}

// KeysOf is what the page says of one table that people write, and of those in
// it; "" where there is no such table, and the names of all that there are.
func KeysOf(table string) (words string, known []string) {
	for _, s := range sections {
		known = append(known, s.name)
	}
	s := sectionOf(strings.Trim(table, "[]"))
	if s == nil {
		return "", known
	}
	p := &page{done: map[string]bool{}}
	p.sheet(s.sheet, 1)
	return strings.TrimLeft(p.b.String(), "\n"), known
}

const pageTop = `# Every table and key

A centre's folder holds files that end in .toml; the tables may be split over them in any way. A value stands behind its key and an equals sign. Texts stand between quotes, dates and times of day do not. Behind a # a line is a remark.

Names are the keys: unique in their kind, and the same wherever they are written. One that changes goes on under ` + "`was`" + `, so that records still find it.

A list with one value may be written without its brackets. A key that is **needed** is one without which its table is nothing; what holds where another is left out is said beside it. A key in *italics* is a table of its own, explained below the one it belongs to.

# How things are written

| what | like | |
|---|---|---|
`

type page struct {
	b    strings.Builder
	done map[string]bool // heads of sheets written
}

// forms lists the forms that the page says more of than how they are written.
func (p *page) forms() {
	var rows []string
	var walk func(s *sheet)
	seen := map[*sheet]bool{}
	walk = func(s *sheet) {
		if seen[s] {
			return
		}
		seen[s] = true
		for _, l := range s.lines {
			if row := fmt.Sprintf("| %s | %s | %s |\n", l.words, likes(l.like), l.about); l.about != "" && !slices.Contains(rows, row) &&
				!strings.HasPrefix(l.words, "a list") {
				rows = append(rows, row)
			}
			if l.sub != nil {
				walk(l.sub)
			}
		}
	}
	for _, s := range sections {
		walk(s.sheet)
	}
	for _, r := range rows {
		p.b.WriteString(r)
	}
}

// sheet writes a table and, beneath it, those within it.
func (p *page) sheet(s *sheet, level int) {
	if p.done[s.head] {
		return
	}
	p.done[s.head] = true
	head := s.head
	if !strings.Contains(head, " ") {
		head = "`" + head + "`"
	}
	fmt.Fprintf(&p.b, "\n%s %s\n\n%s\n\n| key | such as | what it is | where it is left out |\n|---|---|---|---|\n",
		strings.Repeat("#", level), head, s.about)
	for _, l := range s.lines {
		key, lacking := "`"+l.name+"`", l.lacking
		if l.sub != nil {
			key = "*" + key + "*"
		}
		if l.must {
			lacking = "**needed**"
		}
		if strings.HasPrefix(lacking, `"`) {
			lacking = "`" + lacking + "`"
		}
		like := likes(l.like)
		if l.example != "" {
			like = "`" + l.example + "`"
		}
		fmt.Fprintf(&p.b, "| %s | %s | %s | %s |\n", key, like, l.means, lacking)
	}
	for _, l := range s.lines {
		if l.sub != nil {
			p.sheet(l.sub, level+1)
		}
	}
}

// likes sets each way of writing a value as code.
func likes(like string) string {
	var out []string
	for _, l := range strings.Split(like, " or ") {
		out = append(out, "`"+l+"`")
	}
	return strings.Join(out, " or ")
}
