package command

import (
	"testing"

	"tackwright/model"
)

func TestATimeIsReadAsPeopleTypeIt(t *testing.T) {
	for said, want := range map[string]model.Minute{
		"7:40": 460, "07:40": 460, "07.40": 460, "2:30pm": 870, "2.30 PM": 870, "2pm": 840, "24:00": 1440,
	} {
		if got, err := timeOfDay(said); err != nil || got != want {
			t.Errorf("%q is %s (%v), want %s", said, got, err, want)
		}
	}
	for _, said := range []string{"", "25:00", "10:60", "half past ten", "13:00pm"} {
		if got, err := timeOfDay(said); err == nil {
			t.Errorf("%q is %s", said, got)
		}
	}
}

func TestALengthIsReadAsPeopleTypeIt(t *testing.T) {
	for said, want := range map[string]model.Minute{"30m": 30, "30 min": 30, "45": 45, "1h": 60, "1h15m": 75, "1 h 15": 75, "2 hours": 120} {
		if got, err := minutes(said); err != nil || got != want {
			t.Errorf("%q is %d (%v), want %d", said, got, err, want)
		}
	}
	for _, said := range []string{"", "h", "a while", "-5", "99999"} {
		if got, err := minutes(said); err == nil {
			t.Errorf("%q is %d", said, got)
		}
	}
}

// 0 °C are 32 °F, and 5 °C more are 9 °F; what is between counts as the warmer.
func TestWarmthIsInFahrenheitAndRoundedToTheCarefulEnd(t *testing.T) {
	for _, x := range []struct {
		said  string
		units model.Units
		want  int
	}{
		{"84F", model.Metric, 84}, {"29C", model.Imperial, 85}, {"29 °C", model.Metric, 85}, {"30", model.Metric, 86},
		{"84", model.Imperial, 84}, {"0C", model.Metric, 32}, {"-1C", model.Metric, 31},
	} {
		if got, err := warmth(x.said, x.units); err != nil || got != x.want {
			t.Errorf("%q is %d °F (%v), want %d", x.said, got, err, x.want)
		}
	}
	if got, err := warmth("hot", model.Metric); err == nil {
		t.Errorf("hot is %d °F", got)
	}
}

func TestANameMayBeCutShortWhereItIsStillOneAlone(t *testing.T) {
	c := &model.Centre{Riders: []*model.Rider{
		{Name: "Ruby Asherton", First: "Ruby", Mark: "A."}, {Name: "Ruby Kingdon", First: "Ruby", Mark: "K.", Was: []string{"Ruby Stone"}},
		{Name: "Ann", First: "Ann"}, {Name: "Anna Ash", First: "Anna"},
	}}
	for said, want := range map[string]string{
		"Ruby Kingdon": "Ruby Kingdon", "ruby kingdon": "Ruby Kingdon", "Ruby K": "Ruby Kingdon", "Ruby Stone": "Ruby Kingdon",
		"Ruby A.": "Ruby Asherton", "kingd": "Ruby Kingdon", "Ann": "Ann", "ann": "Ann", "Anna": "Anna Ash",
	} {
		if r, err := riderNamed(c, said); err != nil || r.Name != want {
			t.Errorf("%q: %v (%v), want %s", said, r, err, want)
		}
	}
	for _, said := range []string{"Ruby", "An", "Ash", "Zoe", ""} {
		if r, err := riderNamed(c, said); err == nil {
			t.Errorf("%q is %s", said, r.Name)
		}
	}
}

// The same as for a note, so that nobody learns two.
func TestNowIsTypedAsAnyTimeOfDay(t *testing.T) {
	k := clock{model.Clock{Today: 100}}
	for said, want := range map[string]model.Minute{"10:30": 630, "1:30 pm": 810, "2pm": 840} {
		if got, err := k.instant(said); err != nil || got != (model.Instant{Date: 100, Minute: want}) {
			t.Errorf("%q is %v (%v)", said, got, err)
		}
	}
	if got, err := k.instant("24:00"); err == nil {
		t.Errorf("24:00 is %v", got)
	}
}
