package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
)

// assemble writes ΣF = 0 for every body and ΣM = 0 for every rigid one:
//
//	Σ A[i][j]·x[j] = b[i]
//
// A particle has two rows in the plane and three in space; a rigid body has one
// more, or three, of moments about the point that is chosen for it; a body on which
// no force acts has none. Forces are
// in newtons, moments in newton metres, positive along the axes. A[i][j] is what
// one unit of unknown j exerts on row i's body along row i's axis: for a cable
// the component of its unit vector u (tension positive), or of (r - q) × u. b[i]
// is minus what the known forces exert.
func assemble(p *problem.Problem) System {
	forces, moments := []string{"Fx", "Fy", "Fz"}, []string{"Mx", "My", "Mz"}
	if p.Planar {
		forces, moments = forces[:2], moments[2:]
	}
	s := System{Start: make([]int, len(p.Bodies)+1), Cols: make([]Col, len(p.Unknowns))}
	for b := range p.Bodies {
		s.Start[b] = len(s.Rows)
		if p.Bodies[b].Bare {
			continue
		}
		for _, axis := range forces {
			s.Rows = append(s.Rows, Row{Body: b, Name: p.Bodies[b].Name, Axis: axis, Scale: 1})
		}
		if p.Bodies[b].Particle {
			continue
		}
		for _, axis := range moments {
			s.Rows = append(s.Rows, Row{Body: b, Name: p.Bodies[b].Name, Axis: axis, Moment: true, About: p.Bodies[b].AboutName})
		}
	}
	s.Start[len(p.Bodies)] = len(s.Rows)
	for j := range p.Unknowns {
		s.Cols[j] = Col{Unknown: j, Name: p.Unknowns[j].Name}
	}
	s.B = make([]float64, len(s.Rows))
	a := newAssembly(p, &s)
	for act := range p.Acts() {
		a.add(act)
	}
	a.snap()
	s.scaleMoments(p)
	return s
}

// assembly is a system while it is written: the sizes are those of the largest
// terms that each entry is the sum of.
type assembly struct {
	*System
	p     *problem.Problem
	sizes [][]float64
	bSize []float64
}

// newAssembly preallocates the entries that the rows can have at most.
func newAssembly(p *problem.Problem, s *System) *assembly {
	terms, all := make([]int, len(p.Bodies)), 0
	for act := range p.Acts() {
		terms[act.Body] += len(act.Terms) + len(act.CoupleTerms)
	}
	for b, n := range terms {
		all += n * (s.Start[b+1] - s.Start[b])
	}
	store, sizes := make([]linear.Term, all), make([]float64, all)
	a := &assembly{System: s, p: p, sizes: make([][]float64, len(s.Rows)), bSize: make([]float64, len(s.Rows))}
	s.Terms = make([][]linear.Term, len(s.Rows))
	for i, row := range s.Rows {
		n := terms[row.Body]
		s.Terms[i], store = store[:0:n], store[n:]
		a.sizes[i], sizes = sizes[:0:n], sizes[n:]
	}
	return a
}

// add writes what an act exerts into its body's rows.
func (a *assembly) add(act *problem.Act) {
	arm, reach := a.p.Arm(act), a.p.Bodies[act.Body].Reach
	known := r3.Cross(arm, act.Const)
	for i := a.Start[act.Body]; i < a.Start[act.Body+1]; i++ {
		axis := a.Rows[i].axis()
		if !a.Rows[i].Moment {
			a.known(i, problem.Component(act.Const, axis), 0)
			for _, t := range act.Terms {
				a.put(i, t.Unknown, problem.Component(t.D, axis), 0)
			}
			continue
		}
		a.known(i, problem.Component(known, axis), reach*r3.Norm(act.Const))
		a.known(i, problem.Component(act.Couple, axis), 0)
		for _, t := range act.CoupleTerms {
			a.put(i, t.Unknown, problem.Component(t.D, axis), 0)
		}
		for _, t := range act.Terms {
			a.put(i, t.Unknown, problem.Component(r3.Cross(arm, t.D), axis), reach*r3.Norm(t.D))
		}
	}
}

// known takes a known force, or moment, to the other side. size is that of the
// terms that it is the difference of, where it is one.
func (a *assembly) known(i int, value, size float64) {
	if value != 0 {
		a.B[i] -= value
		a.bSize[i] = max(a.bSize[i], math.Abs(value), size)
	}
}

// put adds to an entry. Unknowns come nearly in their order, so that the place of
// a new one is nearly always at the end.
func (a *assembly) put(i, j int, value, size float64) {
	if value == 0 {
		return
	}
	size = max(size, math.Abs(value))
	row, sizes := a.Terms[i], a.sizes[i]
	k := len(row)
	for k > 0 && row[k-1].Col > j {
		k--
	}
	if k > 0 && row[k-1].Col == j {
		row[k-1].Value += value
		sizes[k-1] = max(sizes[k-1], size)
		return
	}
	row, sizes = append(row, linear.Term{}), append(sizes, 0)
	copy(row[k+1:], row[k:])
	copy(sizes[k+1:], sizes[k:])
	row[k], sizes[k] = linear.Term{Col: j, Value: value}, size
	a.Terms[i], a.sizes[i] = row, sizes
}

// snap takes out what is rounding beside the largest of the terms that it is the sum
// of: the cosine of a right angle, the moment of a force through the point. What
// the sheet means as a small coefficient is small in its own terms, and stays.
func (a *assembly) snap() {
	for i, row := range a.Terms {
		kept := row[:0]
		for k, t := range row {
			if math.Abs(t.Value) > problem.Rounding*a.sizes[i][k] {
				kept = append(kept, t)
			}
		}
		a.Terms[i] = kept
		if math.Abs(a.B[i]) <= problem.Rounding*a.bSize[i] {
			a.B[i] = 0
		}
	}
}

// scaleMoments gives each body's rows of moments a length to be divided by
// before any rank is judged: the longest arm on that body, so that a moment row
// is as large as a force row whatever the unit of length.
func (s *System) scaleMoments(p *problem.Problem) {
	if !slices.ContainsFunc(s.Rows, func(r Row) bool { return r.Moment }) {
		return // particles only
	}
	longest := make([]float64, len(p.Bodies))
	overall := 0.0
	for act := range p.Acts() {
		arm := r3.Norm(p.Arm(act))
		longest[act.Body] = max(longest[act.Body], arm)
		overall = max(overall, arm)
	}
	if overall == 0 {
		overall = 1 // every force passes through its body's point: the moments are couples only
	}
	for i := range s.Rows {
		if !s.Rows[i].Moment {
			continue
		}
		s.Rows[i].Scale = longest[s.Rows[i].Body]
		if s.Rows[i].Scale == 0 {
			s.Rows[i].Scale = overall
		}
	}
}

// loads is the resultant of the known forces on a body, R = ΣF, and their moment
// about the body's point, M = Σ (r - q) × F + C.
func loads(p *problem.Problem, body int) (force, moment r3.Vec) {
	for act := range p.Acts() {
		if act.Body == body {
			force = r3.Add(force, act.Const)
			moment = r3.Add(moment, p.Moment(act, act.Const, act.Couple))
		}
	}
	return force, moment
}
