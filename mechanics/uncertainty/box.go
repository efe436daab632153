package uncertainty

import (
	"math"
	"math/rand/v2"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/units"
)

// follower goes through the box.
type follower struct {
	*Effect
	sheet   *sheet.Sheet
	reader  *problem.Reader
	solve   func(*problem.Problem) *statics.Solution
	on      func() bool
	stopped bool
	fault   string  // why the sheet did not read where it was moved to last
	cost    float64 // of one solution
	left    float64 // work that may still be done

	numbers []number
	scale   map[units.Dim]float64 // the largest result of each dimension
	side    int                   // the sign of the determinant, as typed
	sought  int                   // gaps looked for
}

func newFollower(t *Effect, s *sheet.Sheet, on func() bool) *follower {
	f := &follower{Effect: t, sheet: s, reader: problem.NewReader(), solve: statics.SolveAlone, on: on, left: maxWork,
		scale: map[units.Dim]float64{}, side: t.Solution.Side()}
	ranges := slices.ContainsFunc(t.Solution.X, func(x statics.Unknown) bool { return !x.Fixed }) && !nowhere(t.Solution)
	if ranges {
		f.solve = statics.Solve
	}
	f.cost = work(s, t.Solution, ranges)
	return f
}

// at solves the sheet with its inputs at a place of the box; nil where it does not read.
func (f *follower) at(p Place) *statics.Solution {
	f.left -= f.cost
	shares := make(map[problem.Place]float64, len(p))
	for i, share := range p {
		if share != 0 {
			shares[f.Measured[i].Place] = share
		}
	}
	got, errs := f.reader.Moved(f.sheet, shares)
	for _, e := range errs {
		if e.Blocks() {
			f.fault = e.Msg
			return nil
		}
	}
	base := f.Solution.Problem
	if len(got.Unknowns) != len(base.Unknowns) || len(got.Bodies) != len(base.Bodies) {
		f.fault = "it reads as another problem"
		return nil
	}
	f.fault = ""
	return f.solve(got)
}

// visit solves at a place and takes what is found there.
func (f *follower) visit(p Place) []float64 {
	if f.stopped = f.stopped || !f.on(); f.stopped {
		return slices.Repeat([]float64{math.NaN()}, len(f.numbers))
	}
	p = slices.Clone(p)
	s := f.at(p)
	f.verdict(p, s)
	f.flip(p, s)
	out := make([]float64, len(f.numbers))
	for k := range out {
		out[k] = f.value(&f.numbers[k], s)
	}
	f.poles(p, out)
	for k, v := range out {
		n := &f.numbers[k]
		if math.IsInf(v, 0) && n.spread != nil {
			n.lost = true
			continue
		}
		if v < n.low.value {
			n.low = extreme{v, p}
			if n.reach != nil {
				c := f.check(n.reach, s)
				n.reach.Value, n.reach.Bound, n.reach.About = c.Value, c.Bound, c.About
			}
		}
		if v > n.high.value {
			n.high = extreme{v, p}
		}
	}
	return out
}

// singles moves each input by itself.
func (f *follower) singles() {
	for i := range f.Measured {
		p := make(Place, len(f.Measured))
		p[i] = -1
		less := f.visit(p)
		p[i] = 1
		more := f.visit(p)
		for k := range f.numbers {
			f.numbers[k].single(i, less[k], more[k])
		}
	}
}

// single takes what input i does by itself, from a number at either end of its ±.
func (n *number) single(i int, low, high float64) {
	if n.by == nil {
		return
	}
	if math.IsNaN(low) { // no state at that end: what the other says
		low = 2*n.typed - high
	}
	if math.IsNaN(high) {
		high = 2*n.typed - low
	}
	by, bend := (high-low)/2, (high+low)/2-n.typed
	if !finite(high) || !finite(low) {
		by, bend = math.Inf(1), 0
	} else if max(math.Abs(high-n.typed), math.Abs(low-n.typed)) <= n.noise {
		by, bend = 0, 0
	}
	n.by[i] = by
	if n.spread != nil {
		n.spread.Bend[i] = bend
	} else if takes := n.typed - min(low, high); takes > max(n.noise, n.most) {
		n.most, n.reach.Mostly = takes, i
	}
}

// corners solves at the corners of the box: at all where they are few enough, else
// at those that the effects of single inputs point to, and at others by chance. The
// chance has a seed: the same sheet gives the same result.
func (f *follower) corners() {
	n := len(f.Measured)
	if all := math.Ldexp(1, n); n <= allCorners && all*f.cost <= cornerWork {
		for mask := range 1 << n {
			f.visit(corner(n, func(i int) bool { return mask>>i&1 == 1 }))
		}
		f.Search.Corners, f.Search.All = 1<<n, true
		return
	}
	been := map[string]bool{}
	const until = maxWork - cornerWork // what is left for the inside
	visit := func(least float64, greater func(i int) bool) {
		p := corner(n, greater)
		key := p.key()
		if been[key] || f.left < least {
			return
		}
		been[key] = true
		f.visit(p)
		f.Search.Corners++
	}
	random := rand.New(rand.NewPCG(1, uint64(n)))
	chance := func(int) bool { return random.IntN(2) == 0 }
	for k := range f.numbers {
		y := &f.numbers[k]
		if y.by == nil {
			continue
		}
		least := float64(until)
		if y.reach != nil {
			least = -maxWork // what decides a check is looked at in any case
		}
		for _, greatest := range []bool{true, false} {
			visit(least, func(i int) bool {
				if math.Abs(y.by[i]) > y.noise {
					return y.by[i] > 0 == greatest
				}
				return chance(i)
			})
		}
	}
	for len(been) < 1<<allCorners && f.left >= until && !f.stopped {
		visit(until, chance)
	}
}

func corner(n int, greater func(i int) bool) Place {
	p := make(Place, n)
	for i := range p {
		p[i] = -1
		if greater(i) {
			p[i] = 1
		}
	}
	return p
}
