package trust

import "math"

// How a place without a single solution is found within the ± of an input.
const (
	// mostSought is for how many inputs one is looked for.
	mostSought = 8
	// halvings is how often the stretch that has one is halved: to 6e-8 of the ±.
	halvings = 24
	// away is by how much a value, or the condition number, has grown there against
	// the ends of the ±: both grow by some 1e7 where there is such a place, and by
	// nothing where the equations are only written another way.
	away = 1e3
)

// gaps looks for a place within the ± of input i at which the equations have no
// single solution: where their determinant has another sign at an end than it has
// here. It gives the problem right before each.
func (f *follower) gaps(i int, ends [2]moved) []moved {
	side := f.Solution.Side()
	if side == 0 || f.sought >= mostSought {
		return nil
	}
	var out []moved
	for k, m := range ends {
		if m.solution == nil || m.solution.Side() != -side {
			continue
		}
		f.sought++
		near, far := 0.0, float64(2*k-1)
		last := moved{solution: f.Solution}
		for range halvings {
			at := f.at(i, (near+far)/2)
			if at.solution == nil || at.solution.Side() != side {
				far = (near + far) / 2
			} else {
				near, last = (near+far)/2, at
			}
		}
		if last.solution.Cond > away*f.Solution.Cond {
			f.Gaps = append(f.Gaps, Gap{Measured: i, Share: near})
			out = append(out, last)
		}
	}
	return out
}

// Size is how far into its ± the input is there, from 0 to 1.
func (g Gap) Size() float64 { return math.Abs(g.Share) }
