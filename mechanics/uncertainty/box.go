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

// follower goes through the box. What it follows are the numbers of the spreads, then
// the margins of the checks, then the logarithm of the condition number.
type follower struct {
	*Effect
	sheet   *sheet.Sheet
	reader  *problem.Reader
	solve   func(*problem.Problem) *statics.Solution
	on      func() bool
	stopped bool
	cost    float64 // of one solution
	left    float64 // work that may still be done

	queries []problem.Query // of the spreads
	scale   map[units.Dim]float64
	base    []float64 // what is followed, as typed
	low     []extreme
	high    []extreme
	edge    [][2]float64 // low and high before the inside was searched
	lost    []bool       // it has no value somewhere, or grows without bound
	effects [][]float64  // of each input on it, as Spread.By
	most    []float64    // of the checks among them: what the input that takes the most of the margin takes
	side    int          // the sign of the determinant, as typed
	sought  int          // gaps looked for
	crossed map[int]bool // of the spreads: how it changes its sign has been looked at
}

// extreme is the least or greatest of a number, and where it is.
type extreme struct {
	value float64
	at    Place
}

func newFollower(t *Effect, s *sheet.Sheet, on func() bool) *follower {
	f := &follower{Effect: t, sheet: s, reader: problem.NewReader(), solve: statics.SolveAlone, on: on, left: maxWork, side: t.Solution.Side()}
	ranges := slices.ContainsFunc(t.Solution.X, func(x statics.Unknown) bool { return !x.Fixed }) && t.Solution.Verdict != statics.NoEquilibrium
	if ranges {
		f.solve = statics.Solve
	}
	f.cost = work(s, t.Solution, ranges)
	return f
}

// moved is the sheet with inputs elsewhere; solution is nil where it does not read.
type moved struct {
	solution *statics.Solution
	fault    string
}

// at solves the sheet with its inputs at a place of the box.
func (f *follower) at(p Place) moved {
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
			return moved{fault: e.Msg}
		}
	}
	base := f.Solution.Problem
	if len(got.Unknowns) != len(base.Unknowns) || len(got.Bodies) != len(base.Bodies) {
		return moved{fault: "it reads as another problem"}
	}
	return moved{solution: f.solve(got)}
}

// visit solves at a place and takes what is found there.
func (f *follower) visit(p Place) []float64 {
	if f.stopped = f.stopped || !f.on(); f.stopped {
		return slices.Repeat([]float64{math.NaN()}, len(f.base))
	}
	m := f.at(p)
	f.verdict(p, m)
	f.flip(p, m)
	out := f.values(m)
	f.poles(p, out)
	for k, v := range out {
		switch {
		case math.IsNaN(v):
		case math.IsInf(v, 0) && k < len(f.Spreads):
			f.lost[k] = true
		default:
			if v < f.low[k].value {
				f.low[k] = extreme{v, slices.Clone(p)}
				f.reached(k, m)
			}
			if v > f.high[k].value {
				f.high[k] = extreme{v, slices.Clone(p)}
			}
		}
	}
	return out
}

// values are the numbers that are followed: NaN where one is not there, infinite where
// one has no value or no bound.
func (f *follower) values(m moved) []float64 {
	out := make([]float64, 0, len(f.base))
	for k := range f.Spreads {
		out = append(out, f.evaluate(k, m))
	}
	for n := range f.Checks {
		at, ok := same(m, f.Checks[n].Check, f.Solution.Checks[f.Checks[n].Check])
		v := math.NaN()
		if ok {
			v = margin(at)
		}
		out = append(out, v)
	}
	cond := math.NaN()
	if m.solution != nil {
		cond = math.Log(m.solution.Cond)
	}
	return append(out, cond)
}

// noise is what counts as no change of what is followed.
func (f *follower) noise(k int) float64 {
	switch {
	case k < len(f.Spreads):
		return nothing * f.scale[f.Spreads[k].Dim]
	case k < len(f.base)-1:
		c := f.Solution.Checks[f.Checks[k-len(f.Spreads)].Check]
		return nothing * max(math.Abs(c.Value), math.Abs(c.Bound))
	}
	return 0.1 // of a condition number, a tenth: only where it grows a lot is of interest
}

// singles moves each input by itself.
func (f *follower) singles() {
	for i := range f.Measured {
		p := make(Place, len(f.Measured))
		p[i] = -1
		less := f.visit(p)
		p[i] = 1
		f.single(i, less, f.visit(p))
	}
}

// corners solves at the corners of the box: at all where they are few enough, else
// at those that the effects of single inputs point to, and at others by chance. The
// chance has a seed: the same sheet gives the same result.
func (f *follower) corners() {
	n := len(f.Measured)
	if all := math.Ldexp(1, n); n <= allCorners && all*f.cost <= cornerWork {
		for mask := range 1 << n {
			if n > 1 { // those of one input are its ends, where it has been
				f.visit(corner(n, func(i int) bool { return mask>>i&1 == 1 }))
			}
		}
		f.Search.Corners, f.Search.All = 1<<n, true
		return
	}
	been := map[string]bool{}
	until := maxWork - cornerWork // what is left for the inside
	visit := func(p Place, least float64) {
		key := p.key()
		if been[key] || f.left < least {
			return
		}
		been[key] = true
		f.visit(p)
		f.Search.Corners++
	}
	random := rand.New(rand.NewPCG(1, uint64(n)))
	for _, k := range slices.Concat(span(len(f.Spreads), len(f.effects)), span(0, min(len(f.Spreads), len(f.effects)))) {
		least := float64(until)
		if k >= len(f.Spreads) {
			least = -maxWork // what decides a check is looked at in any case
		}
		for _, greatest := range []bool{true, false} {
			visit(corner(n, func(i int) bool {
				if e := f.effects[k][i]; math.Abs(e) > f.noise(k) {
					return e > 0 == greatest
				}
				return random.IntN(2) == 0
			}), least)
		}
	}
	for len(been) < 1<<allCorners && f.left >= float64(until) && !f.stopped {
		visit(corner(n, func(int) bool { return random.IntN(2) == 0 }), float64(until))
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
