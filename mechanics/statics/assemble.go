package statics

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
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
	axes, forces := []string{"Fx", "Fy", "Fz", "Mx", "My", "Mz"}, 3
	if p.Planar {
		axes, forces = []string{"Fx", "Fy", "Mz"}, 2
	}
	s := System{Start: make([]int, len(p.Bodies)+1), Cols: say.Each(p.Unknowns, func(u problem.Unknown) string { return u.Name })}
	for b := range p.Bodies {
		s.Start[b] = len(s.Rows)
		for k, axis := range axes {
			switch body := &p.Bodies[b]; {
			case body.Bare:
			case k < forces:
				s.Rows = append(s.Rows, Row{Body: b, Name: body.Name, Axis: axis, Scale: 1})
			case !body.Particle:
				s.Rows = append(s.Rows, Row{Body: b, Name: body.Name, Axis: axis, Moment: true, About: body.AboutName})
			}
		}
	}
	s.Start[len(p.Bodies)] = len(s.Rows)
	a := assembly{&s, p, make([][]entry, len(s.Rows))}
	for act := range p.Acts() {
		a.add(act)
	}
	a.sum()
	s.scaleMoments(p)
	return s
}

// assembly is a system while it is written. An entry of its rows is one of the terms of
// which a coefficient is the sum; size is that of the terms that it is the difference
// of, where it is one.
type assembly struct {
	*System
	p       *problem.Problem
	entries [][]entry
}

type entry struct {
	linear.Term
	size float64
}

// known is the column of the known forces, before all others.
const known = -1

// add writes what an act exerts into its body's rows.
func (a *assembly) add(act *problem.Act) {
	arm, reach := a.p.Arm(act), a.p.Bodies[act.Body].Reach
	for i := a.Start[act.Body]; i < a.Start[act.Body+1]; i++ {
		axis := a.Rows[i].Coordinate()
		put := func(col int, v r3.Vec, size float64) {
			if value := problem.Component(v, axis); value != 0 {
				a.entries[i] = append(a.entries[i], entry{linear.Term{Col: col, Value: value}, max(size, math.Abs(value))})
			}
		}
		if !a.Rows[i].Moment {
			put(known, act.Force.Const, 0)
			for _, t := range act.Force.Terms {
				put(t.Unknown, t.D, 0)
			}
			continue
		}
		put(known, r3.Cross(arm, act.Force.Const), reach*r3.Norm(act.Force.Const))
		put(known, act.Couple.Const, 0)
		for _, t := range act.Couple.Terms {
			put(t.Unknown, t.D, 0)
		}
		for _, t := range act.Force.Terms {
			put(t.Unknown, r3.Cross(arm, t.D), reach*r3.Norm(t.D))
		}
	}
}

// sum adds the entries up, and takes known forces to the other side. What is rounding
// beside the largest of the terms that it is the sum of is left out: the cosine of a right
// angle, the moment of a force through the point. What the sheet means as a small
// coefficient is small in its own terms, and stays.
func (a *assembly) sum() {
	a.Terms, a.B = make([][]linear.Term, len(a.Rows)), make([]float64, len(a.Rows))
	for i, row := range a.entries {
		slices.SortStableFunc(row, func(x, y entry) int { return x.Col - y.Col })
		a.Terms[i] = make([]linear.Term, 0, len(row))
		for k := 0; k < len(row); {
			all := row[k]
			for k++; k < len(row) && row[k].Col == all.Col; k++ {
				all.Value += row[k].Value
				all.size = max(all.size, row[k].size)
			}
			switch {
			case math.Abs(all.Value) <= problem.Rounding*all.size:
			case all.Col == known:
				a.B[i] = -all.Value
			default:
				a.Terms[i] = append(a.Terms[i], all.Term)
			}
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
	for i := range s.Rows {
		if r := &s.Rows[i]; r.Moment { // 1 where every force passes through its body's point: the moments are couples only
			r.Scale = cmp.Or(longest[r.Body], overall, 1)
		}
	}
}

// sumTol is the part of the largest term below which a component of a sum is rounding.
const sumTol = 1e-12

// loads is the resultant of the known forces on a body, R = ΣF, and their moment
// about the body's point, M = Σ (r - q) × F + C; what is rounding in them is 0.
func loads(p *problem.Problem, body int) (force, moment r3.Vec) {
	largest, turn := 0.0, 0.0
	for act := range p.Acts() {
		if act.Body == body {
			m := p.Moment(act, act.Force.Const, act.Couple.Const)
			force, moment = r3.Add(force, act.Force.Const), r3.Add(moment, m)
			largest, turn = max(largest, r3.Norm(act.Force.Const)), max(turn, r3.Norm(m))
		}
	}
	return withoutRounding(force, largest), withoutRounding(moment, turn)
}

// withoutRounding is a sum without the components that are rounding beside its largest term.
func withoutRounding(v r3.Vec, largest float64) r3.Vec {
	for _, x := range []*float64{&v.X, &v.Y, &v.Z} {
		if math.Abs(*x) <= sumTol*largest {
			*x = 0
		}
	}
	return v
}
