package uncertainty

import (
	"math"
	"slices"
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
)

// flip looks for a place at which the equations have no single solution where their
// determinant has another sign at p than it has as typed: on the way there. Inputs
// that can be left as typed are.
func (f *follower) flip(p Place, m moved) {
	flipped := func(m moved) bool { return m.solution != nil && m.solution.Side() == -f.side }
	if f.side == 0 || f.sought >= maxSought || !flipped(m) {
		return
	}
	if slices.ContainsFunc(f.gaps, func(g gap) bool { return beyond(p, g.At, anyShare) }) {
		return
	}
	to := f.fewest(p, flipped)
	if slices.ContainsFunc(f.gaps, func(g gap) bool { return slices.Equal(to, g.At) }) {
		return
	}
	f.sought++
	near, last := f.halved(to, func(m moved) bool { return m.solution.Side() == f.side })
	if last.solution.Cond > away*f.Solution.Cond || f.grown(f.values(last)) {
		f.gaps = append(f.gaps, gap{At: to, Share: near, last: last.solution})
	}
}

// grown tells that some number is far larger than any of its kind as typed: a column of
// the system that shrinks to nothing as a whole shows in no condition number.
func (f *follower) grown(values []float64) bool {
	for k := range f.Spreads {
		if v := math.Abs(values[k]); v > away*f.scale[f.Spreads[k].Dim] && !math.IsNaN(v) {
			return true
		}
	}
	return false
}

// poles looks for a place without a solution where a number has another sign at p than
// as typed: on the way there it passes zero, or grows without bound.
func (f *follower) poles(p Place, values []float64) {
	for k := range f.Spreads {
		if f.crossed[k] || f.sought >= maxSought || math.Abs(f.base[k]) <= f.noise(k) ||
			math.Abs(values[k]) <= f.noise(k) || !(f.base[k]*values[k] < 0) || math.IsInf(values[k], 0) {
			continue
		}
		if f.crossed == nil {
			f.crossed = map[int]bool{}
		}
		f.crossed[k] = true
		f.sought++
		near, last := f.halved(p, func(m moved) bool { return !(f.base[k]*f.values(m)[k] < 0) })
		if f.grown(f.values(last)) && !slices.ContainsFunc(f.gaps, func(g gap) bool { return beyond(p, g.At, anyShare) }) {
			f.gaps = append(f.gaps, gap{At: slices.Clone(p), Share: near, last: last.solution})
		}
	}
}

// halved finds the share of the way to a place up to which it is as typed, by halves,
// and the solution there.
func (f *follower) halved(to Place, so func(moved) bool) (share float64, last moved) {
	far, last := 1.0, moved{solution: f.Solution}
	for range halvings {
		mid := (share + far) / 2
		if at := f.at(to.part(mid)); at.solution != nil && so(at) {
			share, last = mid, at
		} else {
			far = mid
		}
	}
	return share, last
}

// fewest puts inputs back as typed for as long as what is so of a place stays so, and
// the others to the ends of their ± where that leaves it so.
func (f *follower) fewest(p Place, so func(moved) bool) Place {
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

// part is a place on the way to p.
func (p Place) part(share float64) Place {
	out := slices.Clone(p)
	for i := range out {
		out[i] *= share
	}
	return out
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
	one := -1
	for i, share := range p {
		if share == 0 {
			continue
		}
		if one >= 0 {
			return -1
		}
		one = i
	}
	return one
}

// runaways notes what grows without bound in the box: at a gap, or where the search
// inside came to a place as badly conditioned as one.
func (f *follower) runaways() {
	n := len(f.base) - 1
	for k := range n {
		size := max(f.base[k]-f.edge[k][0], f.edge[k][1]-f.base[k], f.noise(k))
		for _, g := range f.gaps {
			v := f.values(moved{solution: g.last})[k]
			if math.IsInf(v, 0) || math.Abs(v-f.base[k]) > away*size {
				f.lost[k] = true
				if i := g.At.single(); i >= 0 && k < len(f.Spreads) {
					f.Spreads[k].By[i] = math.Inf(1)
				}
			}
		}
	}
	f.touched()
}

// touched is for a determinant that touches zero and keeps its sign, in the box or on
// its edge: there values run away to one side alone.
func (f *follower) touched() {
	n := len(f.base) - 1
	worst := f.high[n]
	if len(f.gaps) > 0 || worst.value < f.base[n]+math.Log(away) {
		return
	}
	at := f.at(worst.at)
	if at.solution == nil {
		return
	}
	any := false
	for k, v := range f.values(at)[:n] {
		less, more := f.base[k]-v, v-f.base[k]
		grown := max(less, more)
		if k >= len(f.Spreads) {
			grown = less // of its margin
		}
		if grown > away*max(f.base[k]-f.edge[k][0], f.edge[k][1]-f.base[k], f.noise(k)) {
			f.lost[k], any = true, true
		}
	}
	told := slices.ContainsFunc(f.Moves, func(m Move) bool { return beyond(worst.at, m.At, 1-probe) })
	if any && !told {
		f.gaps = append(f.gaps, gap{At: worst.at, Share: 1, last: at.solution})
	}
}
