package calendar

import (
	"flag"
	"os"
	"regexp"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"github.com/emersion/go-ical"

	"tackwright/model"
)

var day = model.On(2026, time.October, 26) // the Monday after summer time ends in London

// hard is a calendar with all that iCalendar makes hard: what must be escaped,
// long lines of letters of many octets, and hours on both sides of summer time.
func hard() *Calendar {
	at := func(d model.Date, m model.Minute) model.Instant { return model.Instant{Date: d, Minute: m} }
	long := strings.Repeat("Љубичица Ђорђевић; Ἀναστασία, ", 20)
	return &Calendar{Name: `Zoë; "the" \ one, two`, Events: []Event{
		{UID: "a@tackwright", Sequence: 3, Revised: at(day-10, 9*60), Start: at(day-1, 10*60), End: at(day-1, 10*60+45),
			Summary: `a;b,c\d "e": f`, Where: "ring, big; far \\ end", Words: "first\nsecond, with a comma\n\\n is not a line", Busy: true},
		{UID: "b@tackwright", Sequence: 4, Revised: at(day-2, 9*60), Start: at(day-2, 10*60), End: at(day-2, 10*60+45), Summary: long, Words: long + "\n" + long},
		{UID: "c@tackwright", Sequence: 4, Revised: at(day, 9*60), Start: at(day, 10*60), End: at(day, 11*60), Summary: "tab\there\x00\x07", Off: true},
	}}
}

func london(t *testing.T) *time.Location {
	t.Helper()
	loc, err := time.LoadLocation("Europe/London")
	if err != nil {
		t.Fatal(err)
	}
	return loc
}

// RFC 5545, 3.1: lines end in CRLF, are no longer than 75 octets without it, and go
// on behind a space; 3.1 and 3.3.11: no control characters but tab.
func TestEveryLineIsAsTheStandardHasIt(t *testing.T) {
	text := hard().ICS(london(t))
	if !strings.HasSuffix(text, "END:VCALENDAR\r\n") || strings.Count(text, "\n") != strings.Count(text, "\r\n") || strings.Count(text, "\r") != strings.Count(text, "\r\n") {
		t.Errorf("a line does not end in CRLF:\n%q", text)
	}
	name := regexp.MustCompile(`^[A-Z-]+(;[A-Z-]+=[^:;,"]+)*:`)
	for _, line := range strings.Split(strings.TrimSuffix(text, "\r\n"), "\r\n") {
		switch {
		case len(line) > 75:
			t.Errorf("%d octets: %s", len(line), line)
		case !utf8.ValidString(line):
			t.Errorf("a letter is torn: %q", line)
		case line == "" || line == " ":
			t.Errorf("an empty line: %q", line)
		case !strings.HasPrefix(line, " ") && !name.MatchString(line):
			t.Errorf("neither a property nor the rest of one: %s", line)
		case strings.ContainsFunc(line, func(r rune) bool { return r < 0x20 || r == 0x7F }):
			t.Errorf("a control character: %q", line)
		}
	}
}

var update = flag.Bool("update", false, "write the golden file anew")

func TestACalendarAsItIsWritten(t *testing.T) {
	const file = "testdata/hard.ics"
	got := hard().ICS(london(t))
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	if want, err := os.ReadFile(file); err != nil || got != string(want) {
		t.Errorf("%s is not what is written (go test -update writes it anew): %v\n%s", file, err, got)
	}
}

// RFC 5545, 3.6 and 3.6.1: what a calendar and an event must have, once each.
func TestEveryPropertyThatMustBeThereIsThereOnce(t *testing.T) {
	unfolded := strings.ReplaceAll(hard().ICS(london(t)), "\r\n ", "")
	head, events, _ := strings.Cut(unfolded, "BEGIN:VEVENT")
	for _, want := range []string{"BEGIN:VCALENDAR\r\n", "\r\nVERSION:2.0\r\n", "\r\nPRODID:"} {
		if strings.Count(head, want) != 1 {
			t.Errorf("%q is there %d times", want, strings.Count(head, want))
		}
	}
	if strings.Contains(unfolded, "METHOD:") {
		t.Error("a method would make it a message to somebody (RFC 5546)")
	}
	for _, e := range strings.Split(events, "BEGIN:VEVENT") {
		for _, want := range []string{"UID", "DTSTAMP", "DTSTART", "DTEND", "SEQUENCE", "SUMMARY", "STATUS", "CLASS"} {
			if n := len(regexp.MustCompile(`(?m)^`+want+`[;:]`).FindAllString(e, -1)); n != 1 {
				t.Errorf("%s is there %d times in %s", want, n, e)
			}
		}
	}
}

func TestAnotherParserReadsBackWhatWasWritten(t *testing.T) {
	c, loc := hard(), london(t)
	cal, err := ical.NewDecoder(strings.NewReader(c.ICS(loc))).Decode()
	if err != nil {
		t.Fatal(err)
	}
	if got, err := cal.Props.Text("X-WR-CALNAME"); err != nil || got != c.Name {
		t.Errorf("%q, %v", got, err)
	}
	events := cal.Events()
	if len(events) != len(c.Events) {
		t.Fatalf("%d events", len(events))
	}
	for i, e := range events {
		want := c.Events[i]
		for prop, words := range map[string]string{ical.PropUID: want.UID, ical.PropSummary: clean(want.Summary), ical.PropLocation: want.Where, ical.PropDescription: want.Words} {
			if got, err := e.Props.Text(prop); err != nil || got != words {
				t.Errorf("%s: %q, %v; want %q", prop, got, err, words)
			}
		}
		start, err := e.DateTimeStart(loc)
		if err != nil || !start.Equal(at(want.Start, loc)) {
			t.Errorf("starts %s, %v", start, err)
		}
		if got := start.In(loc).Format("2006-01-02 15:04"); got != want.Start.String() {
			t.Errorf("on the centre's clock it starts %s, not %s", got, want.Start)
		}
		if n, err := e.Props.Get(ical.PropSequence).Int(); err != nil || n != want.Sequence {
			t.Errorf("sequence %d, %v", n, err)
		}
		if status, err := e.Status(); err != nil || (status == ical.EventCancelled) != want.Off {
			t.Errorf("status %s, %v", status, err)
		}
	}
}

// Summer time ended in the United Kingdom on 25 October 2026 at 01:00 UTC (SI
// 2002/262: the last Sunday in October).
func TestTenOClockIsAnHourLaterInUniversalTimeOnceSummerTimeEnds(t *testing.T) {
	text := hard().ICS(london(t))
	for _, want := range []string{"DTSTART:20261024T090000Z\r\n", "DTSTART:20261025T100000Z\r\n", "DTSTART:20261026T100000Z\r\n"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q", want)
		}
	}
}
