package statics

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
)

// Assemble writes ΣF = 0 for every body and ΣM = 0 for every rigid one:
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
func Assemble(p *problem.Problem) System {
	forces, moments := []string{"Fx", "Fy", "Fz"}, []string{"Mx", "My", "Mz"}
	first := 0 // the first axis of moments
	if p.Planar {
		forces, moments, first = forces[:2], moments[2:], 2
	}
	s := System{Start: make([]int, len(p.Bodies)+1), Cols: make([]Col, len(p.Unknowns)), Forces: len(forces), Turn: first}
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
	s.room(p)
	for act := range p.Acts() {
		s.add(p, act)
	}
	s.scaleMoments(p)
	return s
}

// room makes place for the entries that the rows can have at most.
func (s *System) room(p *problem.Problem) {
	most, all := make([]int, len(p.Bodies)), 0
	for act := range p.Acts() {
		most[act.Body] += len(act.Terms) + len(act.CoupleTerms)
	}
	for b, n := range most {
		all += n * (s.Start[b+1] - s.Start[b])
	}
	store := make([]linear.Term, all)
	s.Terms = make([][]linear.Term, len(s.Rows))
	for i, row := range s.Rows {
		n := most[row.Body]
		s.Terms[i], store = store[:0:n], store[n:]
	}
}

// add writes what an act exerts into its body's rows.
func (s *System) add(p *problem.Problem, act *problem.Act) {
	row := s.Start[act.Body]
	for k := range s.Forces {
		s.B[row+k] -= component(act.Const, k)
		for _, t := range act.Terms {
			s.put(row+k, t.Unknown, component(t.D, k))
		}
	}
	body := &p.Bodies[act.Body]
	if body.Particle {
		return
	}
	arm := r3.Sub(act.At, body.About)
	known := r3.Add(r3.Cross(arm, act.Const), act.Couple)
	for i := row + s.Forces; i < s.Start[act.Body+1]; i++ {
		axis := s.Turn + i - row - s.Forces
		s.B[i] -= component(known, axis)
		for _, t := range act.CoupleTerms {
			s.put(i, t.Unknown, component(t.D, axis))
		}
	}
	for _, t := range act.Terms {
		m := r3.Cross(arm, t.D)
		for i := row + s.Forces; i < s.Start[act.Body+1]; i++ {
			s.put(i, t.Unknown, component(m, s.Turn+i-row-s.Forces))
		}
	}
}

// put adds to an entry. Unknowns come nearly in their order, so that the place of
// a new one is nearly always at the end.
func (s *System) put(i, j int, value float64) {
	if value == 0 {
		return
	}
	row := s.Terms[i]
	k := len(row)
	for k > 0 && row[k-1].Col > j {
		k--
	}
	if k > 0 && row[k-1].Col == j {
		row[k-1].Value += value
		return
	}
	row = append(row, linear.Term{})
	copy(row[k+1:], row[k:])
	row[k] = linear.Term{Col: j, Value: value}
	s.Terms[i] = row
}

// scaleMoments gives each body's rows of moments a length to be divided by
// before any rank is judged: the longest arm on that body, so that a moment row
// is as large as a force row whatever the unit of length.
func (s *System) scaleMoments(p *problem.Problem) {
	if !slices.ContainsFunc(s.Rows, func(r Row) bool { return r.Moment }) {
		return // particles only
	}
	longest := make([]float64, len(p.Bodies))
	most := 0.0
	for act := range p.Acts() {
		arm := r3.Norm(r3.Sub(act.At, p.Bodies[act.Body].About))
		longest[act.Body] = max(longest[act.Body], arm)
		most = max(most, arm)
	}
	if most == 0 {
		most = 1 // every force passes through its body's point: the moments are couples only
	}
	for i := range s.Rows {
		if !s.Rows[i].Moment {
			continue
		}
		s.Rows[i].Scale = longest[s.Rows[i].Body]
		if s.Rows[i].Scale == 0 {
			s.Rows[i].Scale = most
		}
	}
}

func component(v r3.Vec, axis int) float64 {
	switch axis {
	case 0:
		return v.X
	case 1:
		return v.Y
	}
	return v.Z
}

// loads is the resultant of the known forces on a body, R = ΣF, and their moment
// about the body's point, M = Σ (r - q) × F + C.
func loads(p *problem.Problem, body int) (force, moment r3.Vec) {
	for act := range p.Acts() {
		if act.Body == body {
			force = r3.Add(force, act.Const)
			arm := r3.Sub(act.At, p.Bodies[body].About)
			moment = r3.Add(moment, r3.Add(r3.Cross(arm, act.Const), act.Couple))
		}
	}
	return force, moment
}
