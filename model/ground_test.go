package model_test

import (
	"slices"
	"strings"
	"testing"

	"tackwright/fixtures"
	"tackwright/fixtures/rules"
	"tackwright/model"
)

const reins = model.Kind("adapted reins")

// alone is what stands in the way of Mia's ride on Monday at ten, after a change.
func alone(change func(b *fixtures.Barn)) (reasons []string, free []*model.Horse) {
	b := fixtures.New()
	b.Lesson(fixtures.Monday, "10:00-11:00", b.Mia)
	w := b.Also(change).Week()
	i := slices.IndexFunc(w.Rides, func(r *model.Ride) bool { return r.Rider == b.Mia })
	return w.Alone(w.Rides[i])
}

func TestARideOnTheGroundSaysWhatStandsInItsWay(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn)
		want   string
	}{
		{"closed", func(b *fixtures.Barn) { b.Ring.Closures = []model.Period{{Why: "storm"}} }, "storm"},
		{"instructor", func(b *fixtures.Barn) { b.Ann.Away = []model.Period{{}} }, "Ann is away"},
		{"form", func(b *fixtures.Barn) { b.Mia.FormUntil = fixtures.Monday - 1 }, "Mia's form has expired"},
		{"form unknown", func(b *fixtures.Barn) { b.Mia.FormUntil = 0 }, "the date of Mia's form is not known"},
		{"away", func(b *fixtures.Barn) { b.Mia.Away = []model.Period{{Why: "holiday"}} }, "holiday"},
		{"weight", func(b *fixtures.Barn) { b.Mia.Weight = 0 }, "the weight of Mia is not known"},
		{"held", func(b *fixtures.Barn) {
			bay := b.Horse("Bay")
			b.Saddle("elm")
			b.Note(model.Note{Kind: model.NoteKeep, Rider: b.Mia, Horse: bay})
		}, "a note keeps the rider on Bay: Star"},
		{"lame", func(b *fixtures.Barn) { b.Star.Out = []model.Out{{Why: model.Lame}} }, "the horse is out (lame) until a named person ends it: Star"},
		{"young", func(b *fixtures.Barn) { b.Star.Foaled = fixtures.Monday - 365 }, "the horse is 1, and at least 3 is asked: Star"},
		{"mounting", func(b *fixtures.Barn) { b.Star.Mounting, b.Mia.Mounting = []string{"block"}, []string{"lift"} },
			"no mounting place is shared by rider, arena and the horse: Star"},
		{"helpers", func(b *fixtures.Barn) { b.Star.MustLead, b.Lessons[0].Hands = true, model.Hands{} },
			"the lesson counts on too few helpers: Star"},
		{"ban", func(b *fixtures.Barn) { b.Mia.Bans = b.Horses }, "the horse is not for this rider: Star"},
		{"horse's weight", func(b *fixtures.Barn) { b.Star.Weight = 0 }, "the horse's weight is not known: Star"},
		{"load", func(b *fixtures.Barn) { b.Mia.Weight = 101_000 }, "the rider is more than the horse may carry: Star"},
		{"load with the tack", func(b *fixtures.Barn) { b.Mia.Weight = 90_000 }, "the rider is, with the tack, more than the horse may carry: Star"},
		{"history", func(b *fixtures.Barn) {
			b.House.Limits.WeekDays = 2
			b.From, b.Days = fixtures.Monday, 1
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+1, "10:00-11:00")
			b.Rode(b.Turn(b.Star, b.Oak), fixtures.Monday+2, "10:00-11:00")
		}, "the horse has no work left in its week: Star"},
		{"work", func(b *fixtures.Barn) { b.Work(b.Star, fixtures.Monday, "10:30-11:00") }, "the horse is at work elsewhere then, or too shortly before or after: Star"},
		{"chart", func(b *fixtures.Barn) { b.Chart[0].Until = fixtures.Monday - 1 }, "no seat is approved for the horse by the fit chart: Star"},
		{"seat", func(b *fixtures.Barn) { b.Mia.Styles = []string{"western"} }, "no charted seat that fits the rider: Star"},
		{"seat out", func(b *fixtures.Barn) { b.Oak.CheckDue = fixtures.Monday - 1 }, "every charted seat that fits the rider is out of use: Star"},
		{"pad out", func(b *fixtures.Barn) { b.Tag("oak pad").Out = []model.PieceOut{{}} }, "no pad in use for the seat that fits the rider: Star"},
		{"no reins", func(b *fixtures.Barn) { b.Mia.Extras = []model.ExtraNeed{{Kind: reins}} }, "no adapted reins in the tack room: Star"},
		{"reins of another size", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins, Size: "long"}}
			b.Extra("reins 1", reins, "short")
		}, "no adapted reins of the rider's size: Star"},
		{"stirrups and no bars", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: "safety stirrups"}}
			b.Extra("stirrups 1", "safety stirrups", "")
			b.Oak.Bars = false
		}, "no safety stirrups of the rider's size for the seat: Star"},
		{"reins out", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins}}
			b.Extra("reins 1", reins, "").Out = []model.PieceOut{{}}
		}, "no adapted reins of the rider's size for the seat in use: Star"},
		{"reins busy", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins}}
			leo, bay := b.Rider("Leo"), b.Horse("Bay")
			b.Mia.Bans = []*model.Horse{bay}
			l := b.Lesson(fixtures.Monday, "09:45-10:45", leo)
			l.Instructor = b.Person("Bea")
			b.Tell(l, leo, b.Turn(bay, b.Saddle("elm", bay), b.Extra("reins 1", reins, "")))
			b.Now = monday("09:50")
		}, "no adapted reins of the rider's size for the seat free beside what stands: Star"},
		{"one for two", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins}, {Kind: reins}}
			b.Extra("reins 1", reins, "")
		}, "too few pieces of the rider's size, adapted reins: Star"},
		{"girth out", func(b *fixtures.Barn) { b.Tag("oak girth").Out = []model.PieceOut{{}} }, "no girth in use that the fit chart names for the seat: Star"},
		{"girth busy", func(b *fixtures.Barn) {
			b.Work(b.Horse("Bay"), fixtures.Monday, "09:00-09:50").Girth = b.Tag("oak girth")
			b.Mia.Bans = b.Horses[1:]
		}, "a piece that it needs is on another horse then: Star"},
	} {
		t.Run(c.name, func(t *testing.T) {
			reasons, free := alone(c.change)
			if len(free) > 0 {
				t.Fatalf("free: %s", free[0].Name)
			}
			if !slices.Contains(reasons, c.want) {
				t.Errorf("says %q, want %q", reasons, c.want)
			}
		})
	}
}

func TestTheReasonOfMostHorsesComesFirst(t *testing.T) {
	reasons, _ := alone(func(b *fixtures.Barn) {
		b.Star.Weight = 0
		b.Horse("Bay").Out = []model.Out{{Why: model.Ill}}
		b.Horse("Roan").Out = []model.Out{{Why: model.Ill}}
	})
	want := []string{"the horse is out (ill) until a named person ends it: Bay, Roan", "the horse's weight is not known: Star"}
	if !slices.Equal(reasons, want) {
		t.Errorf("%q, want %q", reasons, want)
	}
}

func TestAReasonThatIsSoForTheWholeHerdIsNotAList(t *testing.T) {
	reasons, _ := alone(func(b *fixtures.Barn) {
		b.Horse("Bay")
		b.Mia.Bans = b.Horses
	})
	if want := []string{"the horse is not for this rider: every horse"}; !slices.Equal(reasons, want) {
		t.Errorf("%q, want %q", reasons, want)
	}
}

func TestAFactThatOccupiesOnePieceLeavesAnother(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(b *fixtures.Barn)
	}{
		{"the lighter reins are on another horse", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins}}
			b.Extra("light reins", reins, "").Weight = 100
			b.Extra("heavy reins", reins, "").Weight = 900
			l := b.Lesson(fixtures.Monday, "09:00-09:50", b.Rider("Noor"))
			bay := b.Horse("Bay")
			b.Tell(l, b.Riders[1], b.Turn(bay, b.Saddle("elm", bay), b.Tag("light reins")))
			b.Now = monday("09:30")
			b.Mia.Bans = []*model.Horse{bay}
		}},
		{"two needs for two pieces, of which the first need takes either", func(b *fixtures.Barn) {
			b.Mia.Extras = []model.ExtraNeed{{Kind: reins}, {Kind: reins, Size: "long"}}
			b.Extra("long reins", reins, "long").Weight = 100
			b.Extra("short reins", reins, "short").Weight = 900
		}},
		{"one girth is on another horse", func(b *fixtures.Barn) {
			b.Saddle("elm")
			b.Work(b.Horse("Bay"), fixtures.Monday, "09:00-09:50").Girth = b.Tag("oak girth")
		}},
		{"the horse stays in the ring in its tack", func(b *fixtures.Barn) {
			work := b.Work(b.Star, fixtures.Monday, "09:00-10:00")
			turn := b.Turn(b.Star, b.Oak)
			work.Seat, work.Pads, work.Girth, work.Arena = turn.Seat, turn.Pads, turn.Girth, b.Ring
		}},
	} {
		if reasons, free := alone(c.change); len(free) != 1 || free[0].Name != "Star" {
			t.Errorf("%s: %q", c.name, reasons)
		}
	}
}

// A plan that keeps every rule shows that its ride can be seated beside what
// stands, so no reason may be given.
func TestNoRideThatAPlanSeatsIsSaidToHaveNoHorse(t *testing.T) {
	for _, p := range rules.Pairs() {
		w := p.Keeps.Week
		for i, turn := range p.Keeps.Plan.Turns {
			if turn == nil {
				continue
			}
			if reasons, free := w.Alone(w.Rides[i]); !slices.Contains(free, turn.Horse) {
				t.Errorf("%s, %s: ride %d on %s: %q", p.Rule, p.Name, i, turn.Horse.Name, reasons)
			}
		}
	}
}

func TestReasonsNameNoWeight(t *testing.T) {
	reasons, _ := alone(func(b *fixtures.Barn) { b.Mia.Weight = 101_000 })
	if all := strings.Join(reasons, " "); strings.ContainsAny(all, "0123456789") {
		t.Errorf("%q", all)
	}
}
