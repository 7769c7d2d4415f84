package model_test

import (
	"testing"

	"tackwright/model"
)

// The figures are of extension handbooks, as the trade uses them: the sum of °F
// and % relative humidity.
func TestHeatGoesByTheSumOfWarmthAndHumidity(t *testing.T) {
	for _, x := range []struct {
		warmth, humidity int
		want             model.Heat
	}{
		{70, 59, model.HeatGo}, {70, 60, model.HeatCaution}, {90, 61, model.HeatCaution},
		{99, 80, model.HeatCaution}, {100, 80, model.HeatStop},
	} {
		if got := model.HeatOf(x.warmth, x.humidity); got != x.want {
			t.Errorf("%d °F at %d %%: %s, want %s", x.warmth, x.humidity, got, x.want)
		}
	}
}
