package folder

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"
)

// What people write that is no TOML, and how it is mended. The syntax tree says
// where reading stopped and what it wanted; the line says what was meant.

// hints say how to mend what people get wrong most, by the words of the error.
var hints = []struct{ part, mend string }{
	{"strings cannot have new lines", "end the text with its quote on the same line"},
	{"unterminated", "end the text with its quote"},
	{"after array value", "end the list with ], and put commas between its values"},
	{"array is incomplete", "end the list with ]"},
	{"inline table", "end the table with }, and put commas between its keys"},
	{"expected '=' after key", "write a key, then =, then its value"},
	{"strings must be quoted", "put the value between quotes"},
	{"at start of value", "put the value between quotes"},
	{"expected newline", "write one key a line; remarks stand behind a #"},
	{"close array table name", "write a table's name between two brackets on each side"},
	{"at start of key", "a key has letters, digits, _ and - alone"},
	{"invalid UTF-8", "save the file as UTF-8"},
}

var (
	byteForm    = regexp.MustCompile(`U\+[0-9A-F]{4,6} '.*'`)
	curlyQuotes = "“”„‟‘’‚‛«»"
	keyLine     = regexp.MustCompile(`^\s*([A-Za-z0-9_-]+)\s*=\s*(.*?)\s*$`)
	colonLine   = regexp.MustCompile(`^\s*([A-Za-z0-9_-]+)\s*:\s*(.*?)\s*$`)
	dottedDate  = regexp.MustCompile(`^(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})$`)
	yearFirst   = regexp.MustCompile(`^(\d{4})[/.-](\d{1,2})[/.-](\d{1,2})$`)
	quantity    = regexp.MustCompile(`^[<\d][\w .,%½'/-]*$`)
)

// meant is what is wrong in a line, where rest is the text from the place on at
// which reading stopped, and how to mend it.
func meant(message, line string, rest []byte) (what, mend string) {
	letter := ""
	if r, n := utf8.DecodeRune(rest); n > 0 {
		letter = string(r)
	}
	what = message
	if letter != "" && letter != "\ufffd" {
		what = byteForm.ReplaceAllLiteralString(message, letter)
	}
	if letter != "" && strings.Contains(curlyQuotes, letter) {
		return "this is not TOML: " + letter + " is not a straight quote", `use straight quotes: "..."`
	}
	what = "this is not TOML: " + what
	if m := colonLine.FindStringSubmatch(line); m != nil && letter == ":" {
		return what, "write = in place of the colon: " + m[1] + " = " + m[2]
	}
	if m := keyLine.FindStringSubmatch(line); m != nil {
		if v := valueMeant(m[2]); v != "" {
			return what, v
		}
	}
	for _, h := range hints {
		if strings.Contains(message, h.part) {
			return what, h.mend
		}
	}
	return what, ""
}

// valueMeant is how to write what a value without quotes seems to be; "" is that
// it seems nothing that is known here.
func valueMeant(value string) string {
	value, _, _ = strings.Cut(value, "#")
	value = strings.TrimSpace(value)
	switch strings.ToLower(value) {
	case "true", "yes", "on":
		return "write true or false, in small letters and without quotes: true"
	case "false", "no", "off":
		return "write true or false, in small letters and without quotes: false"
	}
	if d := dateMeant(value); d != "" {
		return d
	}
	hour, half, twelve := value, "", false
	for _, h := range []string{"am", "pm", "AM", "PM", "a.m.", "p.m."} {
		if rest, ok := strings.CutSuffix(value, h); ok {
			hour, half, twelve = strings.TrimSpace(rest), strings.ToLower(strings.ReplaceAll(h, ".", "")), true
		}
	}
	if t, err := timeOfDay(hour + " " + half); err == nil && twelve {
		return fmt.Sprintf("write %q, or %s", hour+" "+half, t)
	}
	if t, err := timeOfDay(hour); err == nil { // "14:00 pm", "9:30"
		return fmt.Sprintf("a time of day has two digits before its colon and two behind: %s", t)
	}
	if quantity.MatchString(value) {
		return fmt.Sprintf("put the value between quotes: %q", value)
	}
	return ""
}

// dateMeant is how to write a date whose parts stand in another order, or have
// no noughts; "" is that it is none.
func dateMeant(s string) string {
	iso := func(y, m, d string) string {
		month, _ := strconv.Atoi(m)
		day, _ := strconv.Atoi(d)
		t, err := time.Parse(time.DateOnly, fmt.Sprintf("%s-%02d-%02d", y, month, day))
		if err != nil {
			return ""
		}
		return t.Format(time.DateOnly)
	}
	var can []string
	add := func(date string) {
		if date != "" && (len(can) == 0 || can[0] != date) {
			can = append(can, date)
		}
	}
	if m := yearFirst.FindStringSubmatch(s); m != nil {
		add(iso(m[1], m[2], m[3]))
	}
	if m := dottedDate.FindStringSubmatch(s); m != nil {
		add(iso(m[3], m[1], m[2]))
		add(iso(m[3], m[2], m[1]))
	}
	switch len(can) {
	case 0:
		return ""
	case 1:
		return "write a date as year-month-day: " + can[0]
	}
	return fmt.Sprintf("write a date as year-month-day: %s or %s, whichever is meant", can[0], can[1])
}

// realMend is how to mend a number, date or time that is of the right form, and
// is none.
func realMend(kind, text string) string {
	switch {
	case kind == "number":
		return "mend the number"
	case kind == "time":
		return "a time of day is between 00:00 and 23:59; the end of a date is \"24:00\""
	case dateMeant(text) != "":
		return dateMeant(text)
	case kind == "date":
		return "mend the day or the month: 2026-11-25 is 25 November"
	}
	return "mend the day, the month or the hour: it is written 2026-11-25T07:40"
}
