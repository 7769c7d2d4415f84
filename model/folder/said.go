package folder

import (
	"fmt"
	"regexp"
	"strings"
	"time"
	"unicode"
)

// Said is what a cell of a spreadsheet says for a key.
type Said struct {
	Text  string
	Unit  string // of a figure that has none: "kg"; "" none
	Order Order  // of the numbers in a date such as 3/4/2026
}

// Order is which of the numbers in a date such as 3/4/2026 is the day.
type Order int

// A date of no known order counts where it can be only one.
const (
	NoOrder Order = iota
	DayFirst
	MonthFirst
)

var (
	bareFigure  = regexp.MustCompile(`^[<≤]? ?(?:(?:under|up to) )?\d[\d.,]*(?: ?[½]| 1/2)?(?: ?[-–] ?\d[\d.,]*(?: ?[½]| 1/2)?)?$`)
	wholeNumber = regexp.MustCompile(`^[+-]?\d{1,9}(?:\.0+)?$`)
	someDate    = regexp.MustCompile(`^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4}|\d{2})$`)
	dateAndTime = regexp.MustCompile(`^(\S+)[ T](\d{1,2}:\d\d(?: ?[ap]m)?)$`)
	noSeconds   = regexp.MustCompile(`(\d:\d\d):00(?:\.0+)?( ?[ap]m)?$`)
	splitAt     = regexp.MustCompile(`[;\n]`)
	yesWords    = map[string]string{"yes": "true", "y": "true", "true": "true", "x": "true", "✓": "true", "✔": "true", "1": "true",
		"no": "false", "n": "false", "false": "false", "0": "false"}
	namedMonths = []string{"2 Jan 2006", "2 January 2006", "2-Jan-2006", "2-Jan-06", "2 Jan 06", "Jan 2 2006", "January 2 2006", "02 Jan 2006"}
)

// Blank reports whether a cell says nothing: it is empty, or has what people
// write for "not known".
func (s Said) Blank() bool {
	switch strings.ToLower(strings.TrimSpace(s.Text)) {
	case "", "-", "–", "—", "?", "n/a", "na", "tbc", "unknown":
		return true
	}
	return false
}

// value is what is said for a key as TOML has it. Of the ways in which it can be
// meant it is the first that the key takes; where there is none it is a text, which
// the reader of the folder then says what is wrong with.
func (l *line) value(s Said) string {
	text := strings.TrimSpace(s.Text)
	if text != "" && (text[0] == '{' || text[0] == '[') {
		if root, wrong := parse("", []byte("x = "+text)); len(wrong) == 0 && len(root.pairs) == 1 {
			return root.pairs[0].val.inline()
		}
	}
	if !l.many {
		return l.plain(s)
	}
	var items []string
	for _, item := range Items(text) {
		items = append(items, l.plain(Said{item, s.Unit, s.Order}))
	}
	return "[" + strings.Join(items, ", ") + "]"
}

// Items are those of a cell that is a list: between semicolons or line ends where it
// has any, else between commas.
func Items(text string) []string {
	parts := splitAt.Split(text, -1)
	if len(parts) == 1 {
		parts = strings.Split(text, ",")
	}
	var items []string
	for _, p := range parts {
		if p = strings.Join(strings.Fields(p), " "); p != "" {
			items = append(items, p)
		}
	}
	return items
}

func (l *line) plain(s Said) string {
	ways := s.ways()
	if l.names != "" { // whether there is one of that name is not known yet
		return ways[0]
	}
	for _, c := range l.choices {
		if text := strings.TrimSpace(s.Text); (strings.EqualFold(text, c) || strings.EqualFold(text, c+"s")) && l.takes(quote(c)) {
			return quote(c) // "Tuesdays" too
		}
	}
	for _, w := range ways[1:] {
		if l.takes(w) {
			return w
		}
	}
	return ways[0]
}

// takes reports whether a key takes a value.
func (l *line) takes(value string) bool {
	root, wrong := parse("", []byte("x = "+value))
	if len(wrong) > 0 {
		return false
	}
	r := newReader()
	r.history = true // every name is one
	l.try(r, root.pairs[0].val)
	return len(r.troubles) == 0
}

// ways are the values that can be meant, after the one that stands for it where
// none will do: the text as it is, with its unit.
func (s Said) ways() []string {
	text := strings.Join(strings.FieldsFunc(s.Text, func(r rune) bool { return unicode.IsSpace(r) || unicode.IsControl(r) }), " ")
	lower := strings.ToLower(text)
	plain := quote(text)
	if s.Unit != "" && bareFigure.MatchString(lower) {
		plain = quote(text + " " + s.Unit)
	}
	ways := []string{plain}
	if d := dateSaid(text, s.Order); d != "" {
		ways = append(ways, d)
	}
	typed := noSeconds.ReplaceAllString(strings.NewReplacer("a.m.", "am", "p.m.", "pm").Replace(lower), "$1$2")
	if m := dateAndTime.FindStringSubmatch(typed); m != nil {
		if t, err := timeOfDay(m[2]); err == nil && dateSaid(m[1], s.Order) != "" {
			ways = append(ways, dateSaid(m[1], s.Order)+"T"+t.String())
			if t == 0 { // a date, as some programs save it
				ways = append(ways, dateSaid(m[1], s.Order))
			}
		}
	}
	t, err := timeOfDay(typed)
	if err == nil {
		ways = append(ways, clockText(t))
	}
	if wholeNumber.MatchString(text) {
		whole, _, _ := strings.Cut(strings.TrimPrefix(text, "+"), ".")
		ways = append(ways, strings.TrimLeft(whole[:len(whole)-1], "0")+whole[len(whole)-1:])
	}
	if b := yesWords[lower]; b != "" {
		ways = append(ways, b)
	}
	ways = append(ways, plain, quote(text), quote(lower))
	if err == nil && strings.Contains(lower, ":") { // a length of time, as a clock shows it
		ways = append(ways, quote(fmt.Sprintf("%dh%dm", t/60, t%60)))
	}
	return ways
}

// dateSaid is a date as TOML has it; "" is that it is none, or can be two.
func dateSaid(s string, order Order) string {
	if m := yearFirst.FindStringSubmatch(s); m != nil {
		return realDate(m[1], m[2], m[3])
	}
	if m := someDate.FindStringSubmatch(s); m != nil {
		dayFirst, monthFirst := realDate(m[3], m[2], m[1]), realDate(m[3], m[1], m[2])
		switch {
		case order == DayFirst:
			return dayFirst
		case order == MonthFirst:
			return monthFirst
		case len(m[3]) == 2: // could be the day, too
			return ""
		case monthFirst == "" || monthFirst == dayFirst:
			return dayFirst
		case dayFirst == "":
			return monthFirst
		}
		return ""
	}
	s = strings.Join(strings.Fields(strings.NewReplacer(",", " ", "Sept", "Sep").Replace(s)), " ")
	for _, form := range namedMonths {
		if t, err := time.Parse(form, s); err == nil {
			return t.Format(time.DateOnly)
		}
	}
	return ""
}

// realDate is a date of those numbers, if there is one. A year of two digits is
// one from 1969 to 2068.
func realDate(year, month, day string) string {
	form := "2006-1-2"
	if len(year) == 2 {
		form = "06-1-2"
	}
	t, err := time.Parse(form, year+"-"+strings.TrimLeft(month, "0")+"-"+strings.TrimLeft(day, "0"))
	if err != nil {
		return ""
	}
	return t.Format(time.DateOnly)
}
