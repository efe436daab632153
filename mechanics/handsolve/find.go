package handsolve

import (
	"cmp"
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

// act is what is exerted on a body, and by what.
type act struct {
	*problem.Act
	from problem.Source
}

type finder struct {
	s       *statics.Solution
	p       *problem.Problem
	n       int   // unknowns
	axes    []int // coordinates along which forces are summed
	turns   []int // and about which moments are
	cutFree int   // bodies that a force acts on
	origin  r3.Vec
	tol     float64
	length  float64 // the longest arm from the origin
	acts    [][]act // by body
	nets    [][]net // of a symbol or a load, by body and place
	bodies  [][]int // that a symbol acts on
	at      []r3.Vec
	tied    map[int]Share // the member, as a symbol, that an unknown is a share of
	apart   [][2]int      // particles that act on each other off the line between them: their couple is of no body

	deep     bool   // an equation's cost contains what the known symbols in it were derived by
	wanted   []bool // by symbol
	known    []bool
	value    []float64
	derived  [][]int // the steps by which a symbol was derived
	needs    []int   // of the equation at hand
	cheaper  bool    // more steps are needed anyway than when costs were counted
	groups   []*group
	sections bool // they are among the groups
	order    Order
}

// newFinder prepares a search for some unknowns.
func newFinder(s *statics.Solution, of []int, deep bool) *finder {
	p := s.Problem
	f := &finder{s: s, p: p, n: len(p.Unknowns), axes: []int{0, 1, 2}, turns: []int{0, 1, 2}, tol: zeroTol, deep: deep,
		cutFree: len(slices.Collect(p.CutFree()))}
	if p.Planar {
		f.axes, f.turns = []int{0, 1}, []int{2}
	}
	f.scale()
	f.collect()
	f.findMembers()
	symbols := f.n + len(f.order.Members)
	f.wanted, f.known = make([]bool, symbols), make([]bool, symbols)
	f.value, f.derived = make([]float64, symbols), make([][]int, symbols)
	for _, j := range of {
		f.wanted[j] = true
		if s, ok := f.tied[j]; ok && !f.perp(s) {
			f.wanted[s.Unknown] = true
		}
	}
	f.nets, f.bodies = make([][]net, len(p.Bodies)), make([][]int, symbols)
	for b := range f.acts {
		for _, a := range f.acts[b] {
			f.nets[b] = append(f.nets[b], f.netsOf(a)...)
		}
		for _, n := range f.nets[b] {
			if s := n.Symbol; s >= 0 && !slices.Contains(f.bodies[s], b) {
				f.bodies[s] = append(f.bodies[s], b)
			}
		}
	}
	f.makeGroups()
	return f
}

// scale puts the origin amid what acts, so that arms are no longer than they need be, and
// measures what is small beside them.
func (f *finder) scale() {
	count := 0.0
	for act := range f.p.Acts() {
		f.origin = r3.Add(f.origin, act.At)
		count++
	}
	f.origin = r3.Scale(1/max(1, count), f.origin)
	for act := range f.p.Acts() {
		f.length = max(f.length, r3.Norm(r3.Sub(act.At, f.origin)))
	}
	f.length = cmp.Or(f.length, 1)
	for _, point := range f.p.Points {
		f.at = append(f.at, r3.Sub(point.At, f.origin))
	}
	for i := range f.p.Lines {
		for _, segment := range f.p.Lines[i].Legs {
			if segment.To >= 0 && segment.Length > 0 {
				a, b := f.p.Points[segment.From].At, f.p.Points[segment.To].At
				f.tol = max(f.tol, segmentRounding*max(r3.Norm(a), r3.Norm(b))/segment.Length)
			}
		}
	}
}

// collect lists what acts on each body, and the pairs of bodies whose forces on each other act at two
// places, but for those along the line through both.
func (f *finder) collect() {
	f.acts = make([][]act, len(f.p.Bodies))
	var last act
	for from, a := range f.p.Exerted() {
		f.acts[a.Body] = append(f.acts[a.Body], act{a, from})
		between := from.Thing == problem.AJoint || from.Thing == problem.ALine && f.p.Lines[from.Index].Between() && !f.p.Lines[from.Index].JoinsEnds()
		if between && last.from == from && last.At != a.At {
			f.apart = append(f.apart, [2]int{last.Body, a.Body})
		}
		last = act{a, from}
	}
}

// magnitude is that of a load, as far as the sheet has one.
func (f *finder) magnitude(from problem.Source) float64 {
	switch k := from.Index; from.Thing {
	case problem.ALine, problem.ACouple:
		return f.p.Magnitude(from).Const
	case problem.ALoad:
		return f.p.Loads[k].Total
	case problem.ABody:
		return f.p.Bodies[k].Weight
	}
	return 0
}

// share gives the symbol that an unknown is a share of, mostly itself.
func (f *finder) share(unknown int) Share {
	if s, ok := f.tied[unknown]; ok {
		return s
	}
	return Share{unknown, 1}
}

// netsOf gives what a unit of each symbol, and the load, exert by an act.
func (f *finder) netsOf(a act) (out []net) {
	at := r3.Sub(a.At, f.origin)
	add := func(term Term, by float64, force, couple r3.Vec) {
		i := slices.IndexFunc(out, func(n net) bool { return n.Term == term })
		if i < 0 {
			i = len(out)
			out = append(out, net{Term: term, one: at, parts: 1})
		}
		out[i].f, out[i].m = r3.Add(out[i].f, r3.Scale(by, force)), r3.Add(out[i].m, r3.Scale(by, couple))
	}
	for _, t := range a.Force.Terms {
		s := f.share(t.Unknown)
		add(Term{Symbol: s.Unknown}, s.Coef, t.D, r3.Vec{})
	}
	for _, t := range a.Couple.Terms {
		s := f.share(t.Unknown)
		add(Term{Symbol: s.Unknown}, s.Coef, r3.Vec{}, t.D)
	}
	if a.Force.Const != (r3.Vec{}) || a.Couple.Const != (r3.Vec{}) {
		add(Term{Symbol: -1, Load: a.from, Value: f.magnitude(a.from)}, 1, a.Force.Const, a.Couple.Const)
	}
	for i := range out {
		n := &out[i]
		n.fScale = r3.Norm(n.f)
		n.mScale = r3.Norm(at)*n.fScale + r3.Norm(n.m)
		n.m = r3.Add(r3.Cross(at, n.f), n.m)
	}
	return out
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }
