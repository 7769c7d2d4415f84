package folder

import (
	"fmt"
	"testing"

	"tackwright/model"
)

func TestQuantitiesAreReadAsPeopleWriteThem(t *testing.T) {
	kg, in, cm := model.Kilogram, model.Inch, model.Centimetre
	for _, c := range []struct {
		text string
		read func(string) (any, error)
		want any
	}{
		{"472 kg", as(weight), 472 * kg},
		{"472kg", as(weight), 472 * kg},
		{" 472  KG ", as(weight), 472 * kg},
		{"7.5 kg", as(weight), model.Grams(7500)},
		{"800 g", as(weight), model.Grams(800)},
		// A pound is 453.59237 g (international yard and pound agreement, 1959); a stone is 14 lb.
		{"1 lb", as(weight), model.Grams(454)},
		{"100000 lb", as(weight), model.Grams(45359237)},
		{"1040 lb", as(weight), model.Grams(471736)},
		{"9 st 4 lb", as(weight), model.Grams(58967)}, // 130 lb
		{"10 st", as(weight), model.Grams(63503)},     // 140 lb
		{"< 80 kg", as(careful), 80 * kg},
		{"<80kg", as(careful), 80 * kg},
		{"under 80 kg", as(careful), 80 * kg},
		{"70-80 kg", as(careful), 80 * kg},
		{"70 kg - 80 kg", as(careful), 80 * kg},
		{"70–80 kg", as(careful), 80 * kg},
		{"62 kg", as(careful), 62 * kg},
		// An inch is 25.4 mm (1959); a hand is four inches, and 14.3 hh is 14 hands and 3 inches (common practice).
		{"14.3 hh", as(height), 59 * in},
		{"14 hh", as(height), 56 * in},
		{"14.2½ hh", as(height), 58*in + in/2},
		{"14.2 1/2 hh", as(height), 58*in + in/2},
		{"15.0hh", as(height), 60 * in},
		{"151 cm", as(height), 151 * cm},
		{"72 in", as(length), 72 * in},
		{"183 cm", as(length), 183 * cm},
		{"1.63 m", as(length), 163 * cm},
		{"5 ft 4 in", as(length), 64 * in},
		{"5'4\"", as(length), 64 * in},
		{"635 mm", as(length), model.Length(6350)},
		// A girth's label in centimetres is its inches x 2.5 (trade size charts).
		{"24 in", as(girthSize), model.Label(240)},
		{"60 cm", as(girthSize), model.Label(240)},
		{"65 cm", as(girthSize), model.Label(260)},
		{"70 cm", as(girthSize), model.Label(280)},
		{"120 cm", as(girthSize), model.Label(480)},
		{"135 cm", as(girthSize), model.Label(540)},
		{"17½ in", as(seatSize), model.Label(175)},
		{"17.5\"", as(seatSize), model.Label(175)},
		// One seat size counts half an inch either way (trade chart).
		{"17 in", as(seatRange), ends2[model.Label]{165, 175}},
		{"16-17 in", as(seatRange), ends2[model.Label]{160, 170}},
		{"16 to 17 in", as(seatRange), ends2[model.Label]{160, 170}},
		{"2h30m", as(minutes), 150},
		{"2h30", as(minutes), 150},
		{"2 h 30 min", as(minutes), 150},
		{"45 min", as(minutes), 45},
		{"3 hours", as(minutes), 180},
		{"0 min", as(minutes), 0},
		{"14:30", as(timeOfDay), model.Minute(870)},
		{"2:30 pm", as(timeOfDay), model.Minute(870)},
		{"2 PM", as(timeOfDay), model.Minute(840)},
		{"12:05 am", as(timeOfDay), model.Minute(5)},
		{"12 pm", as(timeOfDay), model.Minute(720)},
		{"24:00", as(timeOfDay), model.Minute(1440)},
		{"20 %", as(percent), model.Percent(20)},
		{"20%", as(percent), model.Percent(20)},
	} {
		if got, err := c.read(c.text); err != nil || got != c.want {
			t.Errorf("%q is %v (%v), not %v", c.text, got, err, c.want)
		}
	}
}

func as[V any](f func(string) (V, error)) func(string) (any, error) {
	return func(s string) (any, error) { return f(s) }
}

func TestWhatIsNoQuantityIsRefused(t *testing.T) {
	for _, c := range []struct {
		read  func(string) (any, error)
		texts []string
	}{
		{as(weight), []string{"", "472", "kg", "-5 kg", "1,040 lb", "7,5 kg", "472 kg 3 lb", "1.2.3 kg", "472 k", "99999999 kg", "1.23456 kg", "< 80 kg"}},
		{as(careful), []string{"> 80 kg", "80-70 kg", "<", "70-80"}},
		{as(height), []string{"14.4 hh", "14.10 hh", "14.2.2 hh", "hh", "14.3", "14.3 hands high"}},
		{as(length), []string{"72", "5 m 3 in", "5 ft in", "seventy in"}},
		{as(girthSize), []string{"26", "66 cm", "64 cm", "26.3 in", "26 mm", "0x1a in"}},
		{as(seatSize), []string{"43 cm", "17", "17.2 in"}},
		{as(minutes), []string{"", "45", "1.5 h", "half an hour", "-5 min", "99999 min"}},
		{as(timeOfDay), []string{"25:00", "12:60", "13 pm", "0 am", "9", "24:01", "noon"}},
		{as(percent), []string{"20", "%", "1000 %", "-5 %", "12.5 %"}},
	} {
		for _, s := range c.texts {
			if got, err := c.read(s); err == nil {
				t.Errorf("%q was taken for %v", s, got)
			}
		}
	}
}

// Published worked examples of the tape (Carroll & Huntington 1988, as quoted
// in trade.md), in the form in which a folder has them.
func TestAHorseIsWeighedByTape(t *testing.T) {
	for _, c := range []struct {
		girth, length int
		pounds        float64
	}{{71, 64, 977}, {75, 70, 1193}, {75, 65, 1107.95}} {
		f := openText(t, fmt.Sprintf("[centre]\nname = \"x\"\n[[horse]]\nname = \"Duke\"\nweight = { girth = \"%d in\", length = \"%d in\" }\n", c.girth, c.length))
		h := f.Centre.Horses[0]
		if got := h.Weight.InPounds(); got < c.pounds*0.995 || got > c.pounds*1.005 || !h.ByTape {
			t.Errorf("%d x %d in is %.1f lb by tape, %v lb were published", c.girth, c.length, got, c.pounds)
		}
	}
}

// The trade chart, and half an inch either way.
func TestASeatIsChosenByThigh(t *testing.T) {
	for thigh, want := range map[string][2]model.Label{
		"16.5 in": {145, 155}, "18.5 in": {155, 165}, "20 in": {160, 170}, "21.5 in": {165, 175},
		"23 in": {170, 180}, "24 in": {175, 185},
	} {
		f := openText(t, "[centre]\nname = \"x\"\n[[rider]]\nname = \"Ada\"\nthigh = \""+thigh+"\"\n")
		if r := f.Centre.Riders[0]; [2]model.Label{r.SeatMin, r.SeatMax} != want {
			t.Errorf("a thigh of %s asks for seats of %v to %v, not of %v", thigh, r.SeatMin, r.SeatMax, want)
		}
	}
}

func FuzzQuantitiesNeverPanicAndReadTheirOwnWriting(f *testing.F) {
	for _, s := range []string{"472 kg", "14.2 1/2 hh", "5 ft 4 in", "24-26 in", "< 80 kg", "2h30m", "12:05 am", "20 %", "½", "1/2 in - 2 in"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		_, _ = careful(s)
		_, _ = rangeOf(height, 1, 1e6, "")(s)
		_, _ = seatRange(s)
		_, _ = weekday(s)
		_, _ = percent(s)
		if l, err := girthSize(s); err == nil {
			if again, err := girthSize(l.String()); err != nil || again != l {
				t.Errorf("%q reads %v, which reads %v", s, l, again)
			}
		}
		if m, err := timeOfDay(s); err == nil {
			if again, err := timeOfDay(m.String()); err != nil || again != m {
				t.Errorf("%q reads %v, which reads %v", s, m, again)
			}
		}
		if m, err := minutes(s); err == nil && m < 0 {
			t.Errorf("%q reads %d minutes", s, m)
		}
	})
}
