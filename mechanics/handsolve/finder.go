package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// The bounds by which an equation is judged.
const (
	// zeroTol is the part of its natural size below which a coefficient is rounding:
	// products and differences of coordinates leave some 1e-15, a point where two
	// lines intersect some decades more where they are far from square to each other.
	zeroTol = 1e-11
	// segmentRounding is what a unit vector may be off by for each decade by which the
	// coordinates exceed the length between them, with a margin for the sums of it.
	segmentRounding = 64 * 2.220446049250313e-16
	// usableTol is the part of its natural size that the coefficient of the unknown
	// must have: an equation that nearly misses its unknown loses as many figures.
	usableTol = 1e-8
	// parallelSine is the sine below which two directions count as parallel: the
	// point where the lines intersect is then so far off that moments about it say nothing.
	parallelSine = 1e-9
	// roundingTol is the part of its largest term below which what an equation leaves
	// for the unknown is rounding: the value is zero.
	roundingTol = 1e-14
)

// part is what a unit of a symbol, or a load, exerts on a body.
type part struct {
	symbol int // -1 for a load
	load   Load
	at     r3.Vec // from the origin
	f, c   r3.Vec // force, and couple with it
}

type finder struct {
	s       *statics.Solution
	p       *problem.Problem
	n, dims int // unknowns, and coordinates
	cutFree int // bodies that a force acts on
	origin  r3.Vec
	tol     float64
	length  float64 // the longest arm from the origin
	parts   [][]part
	bodies  [][]int  // that a symbol acts on
	at      []r3.Vec // points from the origin
	tied    []int    // the member that an unknown is a share of, or -1
	share   []float64
	apart   [][2]int // particles that act on each other off the line between them: their moments together are a couple of no body

	deep     bool   // an equation's cost contains what the known symbols in it were derived by
	wanted   []bool // by symbol
	known    []bool
	value    []float64
	derived  [][]int // the steps by which a symbol was derived
	needs    []int   // of the equation at hand
	cheaper  bool    // more steps are needed anyway than when costs were counted
	groups   []*group
	sections bool // they are among the groups
	route    Route
}

// newFinder prepares a search for some unknowns.
func newFinder(s *statics.Solution, of []int, deep bool) *finder {
	p := s.Problem
	f := &finder{s: s, p: p, n: len(p.Unknowns), dims: 3, tol: zeroTol, deep: deep}
	if p.Planar {
		f.dims = 2
	}
	count := 0
	for act := range p.Acts() {
		f.origin = r3.Add(f.origin, act.At)
		count++
	}
	if count > 0 {
		f.origin = r3.Scale(1/float64(count), f.origin)
	}
	for act := range p.Acts() {
		f.length = max(f.length, r3.Norm(r3.Sub(act.At, f.origin)))
	}
	if f.length == 0 {
		f.length = 1
	}
	f.at = make([]r3.Vec, len(p.Points))
	for i := range p.Points {
		f.at[i] = r3.Sub(p.Points[i].At, f.origin)
	}
	for i := range p.Lines {
		for _, segment := range p.Lines[i].Legs {
			if segment.To >= 0 && segment.Length > 0 {
				a, b := p.Points[segment.From].At, p.Points[segment.To].At
				f.tol = max(f.tol, segmentRounding*max(r3.Norm(a), r3.Norm(b))/segment.Length)
			}
		}
	}
	for range p.CutFree() {
		f.cutFree++
	}
	f.findMembers()
	symbols := f.n + len(f.route.Members)
	f.wanted, f.known = make([]bool, symbols), make([]bool, symbols)
	f.value, f.derived = make([]float64, symbols), make([][]int, symbols)
	for _, j := range of {
		f.wanted[j] = true
		if k := f.tied[j]; k >= 0 && !f.perp(Share{j, f.share[j]}) {
			f.wanted[f.n+k] = true
		}
	}
	f.collect()
	f.bodies = make([][]int, symbols)
	for b := range f.parts {
		for k := range f.parts[b] {
			if s := f.parts[b][k].symbol; s >= 0 && !slices.Contains(f.bodies[s], b) {
				f.bodies[s] = append(f.bodies[s], b)
			}
		}
	}
	f.makeGroups()
	return f
}

// collect lists what acts on each body, unknowns of two-force members as shares.
func (f *finder) collect() {
	f.parts = make([][]part, len(f.p.Bodies))
	put := func(acts []problem.Act, load Load) {
		for k := range acts {
			a := &acts[k]
			at := r3.Sub(a.At, f.origin)
			f.parts[a.Body] = append(f.parts[a.Body], f.partsOf(a, at)...)
			if a.Const != (r3.Vec{}) || a.Couple != (r3.Vec{}) {
				f.parts[a.Body] = append(f.parts[a.Body], part{symbol: -1, load: load, at: at, f: a.Const, c: a.Couple})
			}
		}
	}
	for i := range f.p.Lines {
		put(f.p.Lines[i].Acts, Load{LineLoad, i})
		if l := &f.p.Lines[i]; l.Between() && !l.JoinsEnds() {
			f.noteApart(l.Acts)
		}
	}
	for i := range f.p.Joints {
		put(f.p.Joints[i].Acts, Load{})
		f.noteApart(f.p.Joints[i].Acts)
	}
	for i := range f.p.Couples {
		put(f.p.Couples[i].Acts, Load{CoupleLoad, i})
	}
	for i := range f.p.Loads {
		put(f.p.Loads[i].Acts, Load{SpreadLoad, i})
	}
	for i := range f.p.Bodies {
		put(f.p.Bodies[i].Acts, Load{WeightLoad, i})
	}
}

// noteApart notes two bodies whose forces on each other act at two places.
func (f *finder) noteApart(acts []problem.Act) {
	if len(acts) == 2 && acts[0].At != acts[1].At {
		f.apart = append(f.apart, [2]int{acts[0].Body, acts[1].Body})
	}
}

// partsOf gives the unknown parts of an act, one for each symbol.
func (f *finder) partsOf(a *problem.Act, at r3.Vec) (out []part) {
	add := func(unknown int, force, couple r3.Vec) {
		symbol := unknown
		if k := f.tied[unknown]; k >= 0 {
			symbol = f.n + k
			force, couple = r3.Scale(f.share[unknown], force), r3.Scale(f.share[unknown], couple)
		}
		for i := range out {
			if out[i].symbol == symbol {
				out[i].f, out[i].c = r3.Add(out[i].f, force), r3.Add(out[i].c, couple)
				return
			}
		}
		out = append(out, part{symbol: symbol, at: at, f: force, c: couple})
	}
	for _, t := range a.Terms {
		add(t.Unknown, t.D, r3.Vec{})
	}
	for _, t := range a.CoupleTerms {
		add(t.Unknown, r3.Vec{}, t.D)
	}
	return out
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
