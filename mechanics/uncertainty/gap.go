package uncertainty

import (
	"math"
	"slices"

	"trivet/mechanics/statics"
)

// How a place without a single solution is found in the box.
const (
	// maxSought is for how many places one is looked for on the way there.
	maxSought = 8
	// halvings is how often the way that has one is halved: to 6e-8 of it.
	halvings = 24
	// away is by how much a value, or the condition number, has grown there against
	// the rest of the box: both grow by some 1e7 where there is such a place, and by
	// nothing where the equations are only written another way.
	away = 1e3
	// maxMoves is how many places with another verdict are told: more are not read.
	maxMoves = 6
	// anyShare is the share of the way to such a place from which on the same verdict
	// is told with it: from anywhere.
	anyShare = 1e-12
)

// alike tells that two solutions are the same kind of answer; nil is a sheet that does not read.
func alike(a, b *statics.Solution) bool {
	return a == b || a != nil && b != nil && a.Verdict == b.Verdict && a.Degree == b.Degree
}

// verdict notes a place at which the verdict is another, where none is known that
// already says so. A sense that breaks is told with the checks.
func (f *follower) verdict(p Place, s *statics.Solution) {
	broken := f.Solution.Verdict == statics.Determinate && s != nil && s.Verdict == statics.Inadmissible && s.Degree == 0
	told := func(known Move) bool { return alike(known.Solution, s) && beyond(p, known.At, anyShare) }
	if broken || alike(s, f.Solution) || slices.ContainsFunc(f.Moves, told) {
		return
	}
	if len(f.Moves) >= maxMoves {
		f.moreMoves = true
		return
	}
	p = f.fewest(p, func(other *statics.Solution) bool { return alike(other, s) })
	s = f.at(p) // before its fault is read
	f.Moves = append(f.Moves, Move{At: p, Solution: s, Fault: f.fault})
}

// known tells a place with one without a single solution on the way there.
func (f *follower) known(p Place) bool {
	return slices.ContainsFunc(f.gaps, func(g gap) bool { return beyond(p, g.At, anyShare) })
}

// flip looks for a place at which the equations have no single solution where their
// determinant has another sign at p than it has as typed: on the way there. Inputs
// that can be left as typed are.
func (f *follower) flip(p Place, s *statics.Solution) {
	flipped := func(s *statics.Solution) bool { return s != nil && s.Side() == -f.side }
	if f.side == 0 || f.sought >= maxSought || !flipped(s) || f.known(p) {
		return
	}
	f.halved(f.fewest(p, flipped), func(s *statics.Solution) bool { return s.Side() == f.side })
}

// grown tells that some number is far larger than any of its kind as typed: a column of
// the system that shrinks to nothing as a whole shows in no condition number.
func (f *follower) grown(s *statics.Solution) bool {
	return slices.ContainsFunc(f.numbers, func(n number) bool {
		return n.spread != nil && math.Abs(f.value(&n, s)) > away*f.scale[n.spread.Dim]
	})
}

// poles looks for a place without a solution where a number has another sign at p than
// as typed: on the way there it passes zero, or grows without bound.
func (f *follower) poles(p Place, values []float64) {
	for k, v := range values {
		n := &f.numbers[k]
		other := func(v float64) bool { return n.typed*v < 0 }
		crosses := other(v) && min(math.Abs(n.typed), math.Abs(v)) > n.noise && !math.IsInf(v, 0)
		if n.spread == nil || !crosses || n.crossed || f.sought >= maxSought {
			continue
		}
		n.crossed = true
		f.halved(p, func(s *statics.Solution) bool { return !other(f.value(n, s)) })
	}
}

// halved finds the share of the way to a place up to which it is as typed, by halves, and
// notes a gap where the solution there has grown without bound.
func (f *follower) halved(to Place, so func(*statics.Solution) bool) {
	f.sought++
	share, far, last := 0.0, 1.0, f.Solution
	for range halvings {
		mid := (share + far) / 2
		way := slices.Clone(to)
		for i := range way {
			way[i] *= mid
		}
		if s := f.at(way); s != nil && so(s) {
			share, last = mid, s
		} else {
			far = mid
		}
	}
	if (last.Cond > away*f.Solution.Cond || f.grown(last)) && !f.known(to) {
		f.gaps = append(f.gaps, gap{to, share, last})
	}
}

// fewest puts inputs back as typed for as long as what is so of a place stays so, and
// the others to the ends of their ± where that leaves it so.
func (f *follower) fewest(p Place, so func(*statics.Solution) bool) Place {
	p = slices.Clone(p)
	for i, was := range p {
		if was == 0 {
			continue
		}
		if f.left < 0 {
			break
		}
		if p[i] = 0; so(f.at(p)) {
			continue
		}
		if p[i] = math.Copysign(1, was); p[i] != was && !so(f.at(p)) {
			p[i] = was
		}
	}
	return p
}

// beyond tells that each input that is moved at to is moved at p as well, by the same
// share of that or more.
func beyond(p, to Place, share float64) bool {
	for i := range to {
		if to[i] != 0 && p[i]/to[i] < share {
			return false
		}
	}
	return true
}

// single is the one input that is moved, or -1 where there are several.
func (p Place) single() int {
	isMoved := func(share float64) bool { return share != 0 }
	i := slices.IndexFunc(p, isMoved)
	if i < 0 || slices.ContainsFunc(p[i+1:], isMoved) {
		return -1
	}
	return i
}

// runaways notes what grows without bound in the box: at a gap, or where the search
// came to a place as badly conditioned as one. There a determinant touches zero and keeps
// its sign, so that values run away to one side alone.
func (f *follower) runaways() {
	cond := &f.numbers[len(f.Checks)]
	at := cond.high.at
	if len(f.gaps) == 0 && cond.high.value >= cond.typed+math.Log(away) {
		if s := f.at(at); s != nil {
			f.gaps = []gap{{at, 1, s}}
		}
	}
	lost := false
	for _, g := range f.gaps {
		for k := range f.numbers {
			n := &f.numbers[k]
			if n.by != nil && n.runsAway(f.value(n, g.last), g.Share == 1) {
				n.lost, lost = true, true
				if i := g.At.single(); i >= 0 {
					n.by[i] = math.Inf(1)
				}
			}
		}
	}
	told := slices.ContainsFunc(f.Moves, func(m Move) bool { return beyond(at, m.At, 1-probe) })
	if len(f.gaps) > 0 && f.gaps[0].Share == 1 && (!lost || told) {
		f.gaps = nil
	}
}

// runsAway tells a value that is far outside of what the number did at the edge of the box;
// a margin may grow where values run away to one side.
func (n *number) runsAway(v float64, oneSide bool) bool {
	size := away * max(n.typed-n.edge[0], n.edge[1]-n.typed, n.noise)
	return n.typed-v > size || v-n.typed > size && !(oneSide && n.reach != nil)
}
