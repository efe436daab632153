package uncertainty

import "trivet/mechanics/statics"

const (
	// maxMoves is how many places with another verdict are told: more are not read.
	maxMoves = 6
	// anyShare is the share of the way to such a place from which on the same verdict
	// is told with it: from anywhere.
	anyShare = 1e-12
)

// sort is of what kind the answer is at a place.
type sort struct {
	reads   bool
	verdict statics.Verdict
	degree  int
}

// sortOf gives it.
func sortOf(m moved) sort {
	if m.solution == nil {
		return sort{}
	}
	return sort{true, m.solution.Verdict, m.solution.Degree}
}

// verdict notes a place at which the verdict is another, where none is known that
// already says so. A sense that breaks is told with the checks.
func (f *follower) verdict(p Place, m moved) {
	was, now := sortOf(moved{solution: f.Solution}), sortOf(m)
	if now == was || was.verdict == statics.Determinate && now.reads && now.verdict == statics.Inadmissible && now.degree == 0 {
		return
	}
	for _, known := range f.Moves {
		if sortOf(moved{solution: known.Solution}) == now && beyond(p, known.At, anyShare) {
			return
		}
	}
	if len(f.Moves) >= maxMoves {
		f.moreMoves = true
		return
	}
	p = f.fewest(p, func(m moved) bool { return sortOf(m) == now })
	m = f.at(p)
	f.Moves = append(f.Moves, Move{At: p, Solution: m.solution, Fault: m.fault})
}
