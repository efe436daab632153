package handsolve

import (
	"cmp"
	"math"
	"math/bits"
	"slices"

	"gonum.org/v1/gonum/floats"

	"trivet/mechanics/linear"
	"trivet/mechanics/say"
)

const (
	// bitsLeft is up to how many symbols left a set of equations is searched for:
	// a set of them is a word then.
	bitsLeft = 64
	// manyTogether is up to how many unknowns of one equation are looked at.
	manyTogether = 6
	// manySets is from how many sets of symbols one is grown.
	manySets = 400
	// apartTol is the part of an equation, of length one, that others must leave of
	// it for it to say something new.
	apartTol = 1e-7
)

// writing is an equation with several symbols left.
type writing struct {
	found
	of  uint64 // the symbols, by their place among those left
	row []float64
}

// set is some equations with as many unknowns.
type set struct {
	rows []*writing
	of   uint64
	cost float64
}

func (s *set) before(t *set) bool {
	return s != nil && (t == nil || cmp.Or(cmp.Compare(len(s.rows), len(t.rows)), cmp.Compare(s.cost, t.cost)) < 0)
}

// together puts down the smallest set of equations that fixes its unknowns, or all of them where
// there is none.
func (f *finder) together() bool {
	symbols := say.Places(len(f.known), func(symbol int) bool { _, tied := f.tied[symbol]; return !tied && !f.known[symbol] })
	var all []writing
	if len(symbols) <= bitsLeft {
		all = f.writings(symbols)
	}
	var best *set
	tried := map[uint64]bool{}
	for i := range all {
		of := all[i].of
		if best != nil && bits.OnesCount64(of) > len(best.rows) || len(tried) >= manySets {
			break
		}
		if tried[of] {
			continue
		}
		tried[of] = true
		if s := grown(all, of, best); s.before(best) {
			best = s
		}
	}
	if best == nil {
		return f.solve(Step{Equations: f.allEquations()})
	}
	var step Step
	for _, w := range best.rows {
		step.Equations = append(step.Equations, f.equation(w.g, w.c))
	}
	of := symbolsIn(step.Equations, false)
	step.Screw = slices.ContainsFunc(best.rows, func(w *writing) bool { return f.screw(w.g, of) })
	return f.solve(step)
}

// writings are all equations that contain a few symbols, those of fewest first.
func (f *finder) writings(symbols []int) []writing {
	var all []writing
	for _, g := range f.groups {
		left := f.left(g)
		if len(left) == 0 {
			continue
		}
		f.candidates(g, left, func(c *candidate) {
			w := writing{found: found{g: g, c: *c}, row: make([]float64, len(symbols))}
			for _, n := range left {
				x := f.coef(c, n)
				if x == 0 {
					continue
				}
				// Rows are compared by directions, so a couple counts over the length.
				if !n.pull() {
					x /= f.length
				}
				place, _ := slices.BinarySearch(symbols, n.Symbol)
				w.of |= 1 << place
				w.row[place] = x
			}
			if k := bits.OnesCount64(w.of); k == 0 || k > manyTogether {
				return
			}
			linear.Unit(w.row)
			w.cost = f.cost(g, c)
			all = append(all, w)
		})
	}
	slices.SortStableFunc(all, func(a, b writing) int {
		return cmp.Or(bits.OnesCount64(a.of)-bits.OnesCount64(b.of), cmp.Compare(a.cost, b.cost))
	})
	return all
}

// within collects equations that contain only these symbols, until they fix them.
func within(all []writing, of uint64) *set {
	s := set{of: of}
	var span [][]float64
	k := bits.OnesCount64(of)
	for i := range all {
		w := &all[i]
		if bits.OnesCount64(w.of) > k {
			break
		}
		if w.of&^of != 0 {
			continue
		}
		if rest := linear.Perp(w.row, span); floats.Norm(rest, 2) > apartTol {
			span = append(span, linear.Unit(rest))
			s.rows = append(s.rows, w)
			s.cost += w.cost
			if len(s.rows) == k {
				return &s
			}
		}
	}
	return nil
}

// grown adds to the symbols of an equation those of the one that brings the fewest new symbols, until
// there are as many equations as symbols; nil where that is no better than best.
func grown(all []writing, of uint64, best *set) *set {
	for {
		if s := within(all, of); s != nil {
			return s
		}
		more, add := math.MaxInt, uint64(0)
		for i := range all {
			if n := bits.OnesCount64(all[i].of &^ of); n > 0 && n < more && all[i].of&of != 0 {
				more, add = n, all[i].of
			}
		}
		of |= add
		if add == 0 || best != nil && bits.OnesCount64(of) >= len(best.rows) {
			return nil
		}
	}
}

// allEquations is the last resort: every equation of every body that still contains an unknown,
// for all that has a value.
func (f *finder) allEquations() (of []Equation) {
	for _, g := range f.groups {
		if len(g.bodies) != 1 {
			continue
		}
		write := func(c *candidate) {
			if e := f.equation(g, *c); len(e.Terms) > 0 && !e.Terms[0].Known { // those that are not known come first
				of = append(of, e)
			}
		}
		f.coordinates(write)
		b := &f.p.Bodies[g.bodies[0]]
		if i := f.pointAt(b.About); i >= 0 && !b.Particle {
			f.about(i, 0, write)
		}
	}
	return of
}

// symbolsIn are the symbols of equations, those known already or those to be found.
func symbolsIn(equations []Equation, known bool) (of []int) {
	for i := range equations {
		for _, t := range equations[i].Terms {
			if t.Symbol >= 0 && t.Known == known && !slices.Contains(of, t.Symbol) {
				of = append(of, t.Symbol)
			}
		}
	}
	return of
}

// solve solves the equations of a step by least squares of scaled rows, and puts down what has
// a value.
func (f *finder) solve(step Step) bool {
	step.Kind = Together
	of := slices.Sorted(slices.Values(symbolsIn(step.Equations, false)))
	if len(of) == 0 {
		return false
	}
	a, b := &linear.Matrix{Cols: len(of)}, make([]float64, len(step.Equations))
	for i := range step.Equations {
		var row []linear.Term
		size := 0.0
		for _, t := range step.Equations[i].Terms {
			if t.Known {
				b[i] -= t.Coef * t.Value
				continue
			}
			place, _ := slices.BinarySearch(of, t.Symbol)
			row = append(row, linear.Term{Col: place, Value: t.Coef})
			size = math.Hypot(size, t.Coef)
		}
		for k := range row {
			row[k].Value /= size
		}
		b[i] /= size
		a.Rows = append(a.Rows, row)
	}
	x := linear.NewGeneral(a, rankTol).Solve(b)
	for i, symbol := range of {
		if f.fixed(symbol) && finite(x[i]) {
			step.Finds = append(step.Finds, Found{symbol, x[i]})
		} else {
			step.Loose = append(step.Loose, symbol)
		}
	}
	if len(step.Finds) == 0 {
		return false
	}
	f.put(step)
	return true
}
