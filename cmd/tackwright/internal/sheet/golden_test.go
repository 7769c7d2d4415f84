package sheet

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	"tackwright/cmd/tackwright/internal/answer"
	"tackwright/fixtures"
	"tackwright/model"
)

var update = flag.Bool("update", false, "write the golden files anew")

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("%s (go test -update writes it anew):\n%s", file, diff)
	}
}

// ordinary is a Monday with a bit of everything.
func ordinary() (*fixtures.Barn, []*model.Turn) {
	b := fixtures.New()
	b.Name, b.House.CrossTies, b.House.Elsewhere.Forms = "Beckside Riding Centre", 2, true
	b.Ann.Name, b.Ring.Name, b.Ring.Mounting = "Ana Reyes", "big arena", []string{"block", "ramp"}

	juniper, moss, pebble, tansy := b.Star, b.Horse("Moss"), b.Horse("Pebble"), b.Horse("Tansy")
	b.Horse("Old Clover")
	juniper.Name, juniper.Looks, juniper.Kept = "Juniper", "bay, white sock behind left", "stall 3"
	moss.Looks, moss.Kept, moss.MustLead = "grey, long mane", "stall 5", true
	pebble.Looks, pebble.Kept, pebble.Height = "skewbald", "bottom field", 0

	oak, ash, fleece := b.Oak, b.Saddle("ash", pebble, moss), b.Bareback("fleece", moss)
	oak.Rack, oak.Looks, ash.Rack, fleece.Rack = "A10", "brown, blue tape on the cantle", "A2", "A11"
	for tag, rack := range map[string]string{"oak girth": "G1", "ash girth": "G2"} {
		b.Tag(tag).Rack = rack
	}
	b.Tag("oak girth").Looks = "left buckle new"
	stirrups, reins := b.Extra("T3", "safety stirrups", "medium"), b.Extra("L2", "loop reins", "")
	stirrups.Rack, reins.WithHorse = "E1", moss
	riser := b.Piece(&model.Piece{Tag: "R1", Kind: model.Pad, Rack: "P1", Looks: "black foam, thick end behind"})
	for _, p := range b.Pieces {
		p.CheckDue = monday + 100
	}
	b.Tag("R1").CheckDue = 0

	mia, mia2, leo, ada, tom := b.Mia, b.Rider("Mia Hidden"), b.Rider("Leo"), b.Rider("Ada"), b.Rider("Tom")
	mia.Name, mia.Mark, mia2.First, mia2.Mark = "Mia Secret", "K", "Mia", "W"
	mia.Extras, mia.Wears = []model.ExtraNeed{{Kind: "safety stirrups"}}, []string{"helmet M", "gait belt"}
	mia.Leader, mia.Sidewalkers, mia.Mounting = true, 2, []string{"ramp"}
	leo.Extras, leo.Wears = []model.ExtraNeed{{Kind: "loop reins"}}, []string{"helmet S"}
	ada.HorseMax = 15*model.Hand + 2*model.Inch

	b.Lesson(monday, "09:00-09:45", ada, leo, mia).Name = "Bluebell"
	b.Lesson(monday, "10:00-10:45", ada, mia2, tom).Name = "Heron"
	b.Lesson(monday, "11:30-12:15", tom).Name = "Fern"
	work := b.Work(tansy, monday, "14:00-14:20")
	work.Arena, work.Person = b.Ring, b.Ann

	return b, []*model.Turn{
		pads(b, b.Turn(pebble, ash), b.Tag("ash pad"), riser), b.Turn(moss, fleece, reins), b.Turn(juniper, oak, stirrups),
		b.Turn(moss, ash), b.Turn(juniper, oak), nil,
		b.Turn(juniper, oak),
	}
}

func TestAMondayAsItIsPrinted(t *testing.T) {
	b, turns := ordinary()
	golden(t, "monday.txt", pull(t, b, turns...).Text())
}

func TestAMondayOnATwelveHourClockInInches(t *testing.T) {
	b, turns := ordinary()
	b.House.TwelveHour, b.House.Units = true, model.Imperial
	golden(t, "monday-imperial.txt", pull(t, b, turns...).Text())
}

func TestAMondayAsASpreadsheet(t *testing.T) {
	b, turns := ordinary()
	golden(t, "monday.csv", pull(t, b, turns...).CSV())
}

func TestAMondayForMachines(t *testing.T) {
	b, turns := ordinary()
	l := pull(t, b, turns...)
	answer.Whole(l) // as commands do
	out, err := json.MarshalIndent(l, "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	golden(t, "monday.json", string(out)+"\n")
}

func TestADayWithNothingSaysSo(t *testing.T) {
	golden(t, "nothing.txt", pull(t, fixtures.New()).Text())
}
