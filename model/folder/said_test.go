package folder

import "testing"

// What people write in a cell, and what the folder then holds. The forms are
// those that spreadsheets show and people type: common practice.
func TestACellIsReadAsItsKeyTakesIt(t *testing.T) {
	for _, x := range []struct {
		table, key string
		said       Said
		want       string
	}{
		{"horse", "weight", Said{Text: "472 kg"}, `"472 kg"`},
		{"horse", "weight", Said{Text: "1040", Unit: "lb"}, `"1040 lb"`},
		{"horse", "weight", Said{Text: "472 kg", Unit: "lb"}, `"472 kg"`}, // its own unit goes first
		{"horse", "height", Said{Text: "14.3", Unit: "hh"}, `"14.3 hh"`},
		{"horse", "foaled", Said{Text: "2012"}, `2012`},
		{"horse", "foaled", Said{Text: "20 May 2012"}, `2012-05-20`},
		{"horse", "barrel", Said{Text: "Wide"}, `"wide"`},
		{"horse", "mounting", Said{Text: "ramp, block"}, `["ramp", "block"]`},
		{"horse", "apart", Said{Text: "Pepper"}, `["Pepper"]`},
		{"horse", "days_off", Said{Text: "Sunday; 30/11/2026"}, `["Sunday", 2026-11-30]`},
		{"horse", "limits.day", Said{Text: "2:30"}, `"2h30m"`},
		{"horse", "limits.week_days", Said{Text: "4.0"}, `4`},
		{"horse", "weight.girth", Said{Text: "157", Unit: "cm"}, `"157 cm"`},
		{"horse", "load", Said{Text: "18 %"}, `"18 %"`},
		{"horse", "kept", Said{Text: "3"}, `"3"`},
		{"rider", "weight", Said{Text: "< 80", Unit: "kg"}, `"< 80 kg"`},
		{"rider", "weight", Said{Text: "9 st 4 lb", Unit: "kg"}, `"9 st 4 lb"`},
		{"rider", "support", Said{Text: "Yes"}, `true`},
		{"rider", "leader", Said{Text: "x"}, `true`},
		{"rider", "sidewalkers", Said{Text: "2"}, `2`},
		{"rider", "form_until", Said{Text: "3/4/2027", Order: DayFirst}, `2027-04-03`},
		{"rider", "form_until", Said{Text: "3/4/2027", Order: MonthFirst}, `2027-03-04`},
		{"rider", "form_until", Said{Text: "30.6.2027"}, `2027-06-30`},
		{"rider", "form_until", Said{Text: "Jun 30, 2027"}, `2027-06-30`},
		{"rider", "form_until", Said{Text: "3/4/2027"}, `"3/4/2027"`}, // can be two dates, and so is none
		{"rider", "name", Said{Text: "  Ada   Grey\n"}, `"Ada Grey"`},
		{"rider", "name", Said{Text: "12"}, `"12"`},
		{"rider", "horse_height", Said{Text: "14-15.2", Unit: "hh"}, `"14-15.2 hh"`},
		{"rider", "never_on", Said{Text: "Grey, the; Duke"}, `["Grey, the", "Duke"]`},
		{"rider", "extras", Said{Text: `[{ kind = "hand hold", size = "small" }]`}, `[{ kind = "hand hold", size = "small" }]`},
		{"lesson", "start", Said{Text: "9:30"}, `09:30`},
		{"lesson", "start", Said{Text: "2.30 p.m."}, `14:30`},
		{"lesson", "start", Said{Text: "10:00:00"}, `10:00`},
		{"lesson", "start", Said{Text: "2:30:00 PM"}, `14:30`},
		{"lesson", "length", Said{Text: "0:45:00"}, `"0h45m"`},
		{"rider", "form_until", Said{Text: "2027-06-30 00:00:00"}, `2027-06-30`},
		{"rider", "form_until", Said{Text: "30/06/2027 0:00"}, `2027-06-30`},
		{"horse", "out", Said{Text: `[{ why = "lame", from = 2026-11-24T07:40 }]`}, `[{ why = "lame", from = 2026-11-24T07:40 }]`},
		{"lesson", "length", Said{Text: "45", Unit: "min"}, `"45 min"`},
		{"lesson", "length", Said{Text: "0:45"}, `"0h45m"`},
		{"lesson", "day", Said{Text: "Tuesdays"}, `"Tuesday"`},
		{"tack", "size", Said{Text: "17½", Unit: "in"}, `"17½ in"`},
		{"tack", "kind", Said{Text: "Saddle"}, `"saddle"`},
	} {
		if got := sectionOf(x.table).sheet.line(x.key).value(x.said); got != x.want {
			t.Errorf("%s %s: %q is %s, not %s", x.table, x.key, x.said.Text, got, x.want)
		}
	}
}

func TestACellThatSaysNothing(t *testing.T) {
	for text, want := range map[string]bool{"": true, " ": true, "-": true, "n/a": true, "?": true, "0": false, "no": false, "none": false} {
		if got := (Said{Text: text}).Blank(); got != want {
			t.Errorf("%q: %v", text, got)
		}
	}
}
