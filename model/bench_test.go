package model_test

import (
	"fmt"
	"testing"

	"tackwright/fixtures"
	"tackwright/model"
)

// medianWeek is a week of a median centre (trade.md: 10 horses, 14 saddles, 20
// girths, 75 rides on 5 days, 6 lessons a day) with eight posted weeks before
// it, and a plan that keeps every rule.
func medianWeek() (*fixtures.Barn, *model.Week, *model.Plan) {
	b := &fixtures.Barn{Centre: &model.Centre{House: model.DefaultHouse()}, From: fixtures.Monday, Days: 7}
	b.House.Mounting, b.House.Skills = true, true
	b.Ring, b.Ann = b.Arena("ring"), b.Person("Ann")
	for i := range 10 {
		h := b.Horse(fmt.Sprint("horse ", i))
		h.Skills = []string{"stands still"}
		b.Saddle(fmt.Sprint("saddle ", i), h)
	}
	for i := range 4 {
		b.Saddle(fmt.Sprint("spare ", i), b.Horses[i], b.Horses[i+4])
	}
	for i := range 6 {
		b.Piece(&model.Piece{Tag: fmt.Sprint("girth ", i), Kind: model.Girth, Family: model.ShortGirth, Label: model.Inches(24), Skin: true})
	}
	for i := range 75 {
		r := b.Rider(fmt.Sprint("rider ", i))
		r.Leader, r.Sidewalkers, r.Skills = i%3 == 0, i%2, []string{"stands still"}
	}
	var turns []*model.Turn
	for week := model.Date(-8); week <= 0; week++ {
		rider, turn := 0, 0
		for d := range model.Date(5) {
			for i := range 6 {
				l := b.Lesson(fixtures.Monday+7*week+d, fmt.Sprintf("%02d:00-%02d:45", 9+i, 9+i))
				l.Size = 4
				for range 2 + i%2 {
					r, h := b.Riders[rider], b.Horses[turn%10]
					l.Places = append(l.Places, model.Place{Rider: r})
					seated := b.Turn(h, b.Tag(fmt.Sprint("saddle ", turn%10)))
					rider, turn = rider+1, turn+1
					if week < 0 {
						b.Tell(l, r, seated)
					} else {
						turns = append(turns, seated)
					}
				}
			}
		}
	}
	w := b.Week()
	p := fixtures.Plan(w)
	seats := map[*model.Rider]*model.Turn{}
	for i, turn := range turns {
		seats[b.Riders[i]] = turn
	}
	for i, r := range w.Rides {
		p.Turns[i] = seats[r.Rider]
	}
	return b, w, p
}

func TestTheMedianWeekOfTheBenchmarkKeepsEveryRule(t *testing.T) {
	_, w, p := medianWeek()
	if len(w.Rides) != 75 {
		t.Errorf("%d rides", len(w.Rides))
	}
	wantTold(t, w.Audit(p))
}

func BenchmarkAuditOfAMedianWeek(b *testing.B) {
	_, w, p := medianWeek()
	for b.Loop() {
		w.Audit(p)
	}
}

func BenchmarkMakingAMedianWeek(b *testing.B) {
	barn, _, _ := medianWeek()
	for b.Loop() {
		barn.Week()
	}
}

func BenchmarkFingerprintOfAMedianWeek(b *testing.B) {
	_, w, p := medianWeek()
	for b.Loop() {
		w.Fingerprint(p)
	}
}

func BenchmarkWhatStandsAloneInTheWayOfARideWithNoSeat(b *testing.B) {
	_, w, _ := medianWeek()
	r := w.Rides[0]
	r.Rider.Styles = []string{"western"}
	r.Rider.Extras = []model.ExtraNeed{{Kind: reins}}
	for b.Loop() {
		w.Alone(r)
	}
}
