package model_test

import (
	"testing"
	"time"

	"tackwright/fixtures"
	"tackwright/model"
)

func TestTodayIsTheComputersUnlessTheCentreHasItsOwn(t *testing.T) {
	b := fixtures.New()
	b.House.Zone = "Europe/Helsinki"
	late := time.Date(2026, time.November, 23, 22, 30, 0, 0, time.UTC) // the next day there
	next := model.Instant{Date: model.On(2026, 11, 24), Minute: 30}
	k := b.Clock(late)
	if !k.Real || k.Today != next.Date || k.Now != next || k.Begun() != next || k.At() != next {
		t.Errorf("the computer's: %+v", k)
	}
	b.Today = fixtures.Monday - 7
	k = b.Clock(late)
	if k.Real || k.Today != b.Today || k.Now != next || k.Begun() != (model.Instant{Date: b.Today}) || k.At() != (model.Instant{Date: b.Today, Minute: 30}) {
		t.Errorf("its own: %+v", k)
	}
}
