package solver

import (
	"fmt"

	"tackwright/model"
	"tackwright/solver/sat"
)

// Problem is a week as other solvers can read it: the rules as clauses over the
// variables 1 to Vars (a literal is v or -v), and the goals of the score, the
// first counting before all others. Its optima are those that [Plan] proves.
type Problem struct {
	Vars    int
	Clauses [][]int
	Sums    []Sum
	Goals   []ProblemGoal
	Words   map[int]string // of each variable that says which ride is on which horse
}

// Sum is a limit that holds while a literal is false: the weights of the true
// literals add up to at most Most. Nothing but Sums speaks of Unless being
// false; where it is true, no limit holds.
type Sum struct {
	Unless int
	Terms  []Wish
	Most   int
}

// Wish is a literal and its weight, 1 or more.
type Wish struct{ Lit, Weight int }

// ProblemGoal costs the weight of each of its wishes that is false.
type ProblemGoal struct {
	Name   string
	Wishes []Wish
}

// Export is the week as a problem. What [Plan] writes down only when its turn
// comes is written down whole.
func Export(w *model.Week) *Problem {
	e := encode(w)
	goals := e.goals()
	p := &Problem{Words: map[int]string{}}
	for _, g := range goals {
		pg := ProblemGoal{Name: g.Name}
		softs := g.Softs
		if g.Name == "carry" {
			softs = e.carrySofts()
		}
		for _, s := range softs {
			pg.Wishes = append(pg.Wishes, Wish{int(s.Lit), s.Weight})
		}
		p.Goals = append(p.Goals, pg)
	}
	e.exportFair(p)
	for _, on := range e.on_ {
		for _, x := range on {
			p.Words[x.lit.Var()] = fmt.Sprintf("%s on %s", x.ride, x.at.horse.Name)
		}
	}
	p.Vars = e.s.Vars()
	p.Clauses = append(p.Clauses, []int{int(e.s.Root())})
	for _, clause := range e.s.Unasked() {
		lits := make([]int, len(clause))
		for i, l := range clause {
			lits[i] = int(l)
		}
		p.Clauses = append(p.Clauses, lits)
	}
	return p
}

// exportFair writes down the shares of all horses: as no plan is known, each
// twentieth of every allowance is told apart. Of "highest" only that it is
// reached needs saying, since goals before it are at their best where "fair b"
// counts.
func (e *encoder) exportFair(p *Problem) {
	var a, b *ProblemGoal
	for i := range p.Goals {
		switch p.Goals[i].Name {
		case "fair a":
			a = &p.Goals[i]
		case "fair b":
			b = &p.Goals[i]
		}
	}
	if a == nil || b == nil {
		return
	}
	spells := e.spells()
	most := 0
	for _, s := range spells {
		work := s.facts
		for _, t := range s.terms {
			work += int64(t.Weight)
		}
		most = max(most, min(model.Share(work, s.allowance), max(parts, model.Share(s.facts, s.allowance))))
	}
	below := map[*model.Horse]sat.Lit{} // the highest share
	root := e.s.Root()
	higher := root.Not() // some horse has a share of v+1
	for v := most; v > 0; v-- {
		reached := e.s.NewVar()
		a.Wishes = append(a.Wishes, Wish{int(reached.Not()), 1})
		e.s.Add(root, higher.Not(), reached)
		for _, s := range spells {
			if below[s.horse] == 0 {
				below[s.horse] = e.s.NewVar()
				b.Wishes = append(b.Wishes, Wish{int(below[s.horse]), 1})
			}
			has := e.s.NewVar()
			sum := Sum{Unless: int(has), Most: int(s.most(v) - s.facts)}
			for _, t := range s.terms {
				sum.Terms = append(sum.Terms, Wish{int(t.Lit), t.Weight})
			}
			p.Sums = append(p.Sums, sum)
			e.s.Add(root, has.Not(), reached)
			e.s.Add(root, has.Not(), higher, reached.Not(), below[s.horse].Not())
		}
		higher = reached
	}
}
