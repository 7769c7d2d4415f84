package sat

import (
	"context"
	"slices"
)

// Shrink returns a subset of core, in its order, that still cannot hold together with always. Each
// member is tried for deletion once, with a tick of work; a member whose trial is not decided
// stays, and after a few such the rest stays too.
func (s *Solver) Shrink(ctx context.Context, core []Lit, always ...Lit) []Lit {
	const patience = 8
	core = slices.Clone(core)
	undecided := 0
	for i := 0; i < len(core) && len(core) > 1 && undecided < patience; {
		rest := slices.Delete(slices.Clone(core), i, i+1)
		switch s.SolveWithin(ctx, 1, append(slices.Clone(always), rest...)...) {
		case Unsat:
			// Members before i were needed with a larger set, so they are needed still.
			blamed := s.Core()
			kept := rest[:0]
			for j, l := range rest {
				if j < i || slices.Contains(blamed, l) {
					kept = append(kept, l)
				}
			}
			core = kept
		case Sat:
			i++
		default:
			undecided++
			i++
		}
		if ctx.Err() != nil {
			break
		}
	}
	return core
}
