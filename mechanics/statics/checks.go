package statics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// The bounds that checks are held against.
const (
	// UnitTol is how far |u| may be from 1: three squares, a sum and a root round
	// by 2e-16 each.
	UnitTol = 1e-12
	// ResidualTol is what may be left of ΣF, relative to the largest term of the
	// row. LU with pivoting leaves about n·1e-16; anything above 1e-9 would show in
	// a value of nine figures.
	ResidualTol = 1e-9
	// MomentTol is the same for ΣM about a second point, relative to the largest
	// moment. The arm's coordinates add their rounding.
	MomentTol = 1e-8
	// faint is the part of the largest force below which the terms of a sum are
	// held against that part instead of the largest of them: rounding leaves 1e-16
	// of the largest force in every row, also in one whose own terms are all nothing.
	faint = 1e-6
	// senseTol is how far below nothing a cable's tension may come out, relative to
	// the largest load, before it pushes: a cable at exactly zero is slack, not broken.
	senseTol = 1e-9
	// carried is the number of decimal figures of a float64: log10(2^53).
	carried = 15.95
)

// Magnitude is the magnitude of a line, with false where it has no single value.
func (s *Solution) Magnitude(line int) (float64, bool) {
	m := s.Problem.Lines[line].Magnitude
	sum := m.Const
	for _, t := range m.Terms {
		if !s.X[t.Unknown].Fixed {
			return 0, false
		}
		sum += t.Coef * s.X[t.Unknown].Value
	}
	return sum, true
}

// at is a line's magnitude in the solution at hand, single or not.
func (s *Solution) at(m problem.Affine) float64 {
	sum := m.Const
	for _, t := range m.Terms {
		sum += t.Coef * s.X[t.Unknown].Value
	}
	return sum
}

// force is what an act exerts in the solution at hand.
func (s *Solution) force(a *problem.Act) r3.Vec {
	f := a.Const
	for _, t := range a.Terms {
		f = r3.Add(f, r3.Scale(s.X[t.Unknown].Value, t.D))
	}
	return f
}

// judgeSenses marks what pushes and can only pull, or the other way round.
func (s *Solution) judgeSenses() {
	if s.Verdict == NoEquilibrium {
		return
	}
	for i := range s.Problem.Lines {
		l := &s.Problem.Lines[i]
		if !oneWay(l.Kind.Info().Sense) {
			continue
		}
		value, fixed := s.Magnitude(i)
		if !fixed || value >= -senseTol*s.scale() {
			continue
		}
		s.Broken = append(s.Broken, i)
		if s.Verdict == Determinate {
			s.Verdict = SenseBroken
		}
		if t := l.Magnitude.Terms; len(t) == 1 && s.Problem.Unknowns[t[0].Unknown].Own && s.Problem.Unknowns[t[0].Unknown].Line == i {
			s.X[t[0].Unknown].Broken = true
		}
	}
}

// scale is the largest force of the problem, by which small is judged.
func (s *Solution) scale() float64 {
	most := largestLoad(s.Problem)
	for _, x := range s.X {
		most = max(most, math.Abs(x.Value))
	}
	return most
}

// residuals works out ΣF of every row from the forces themselves, not from A.
func (s *Solution) residuals() {
	s.Residuals = make([]Residual, len(s.System.Rows))
	n := s.axes()
	most := make([]float64, len(s.System.Rows))
	for i := range s.Problem.Lines {
		acts := s.Problem.Lines[i].Acts
		for a := range acts {
			f := s.force(&acts[a])
			for k := range n {
				row := acts[a].Body*n + k
				c := component(f, k)
				s.Residuals[row].Value += c
				most[row] = max(most[row], math.Abs(c))
			}
		}
	}
	least := faint * s.scale()
	for row := range s.Residuals {
		if size := max(most[row], least); size > 0 {
			s.Residuals[row].Relative = math.Abs(s.Residuals[row].Value) / size
		}
	}
}

func (s *Solution) axes() int { return len(s.System.Rows) / len(s.Problem.Bodies) }

func (s *Solution) check() {
	p := s.Problem
	s.Checks = make([]Check, 0, 3*len(p.Lines)+2*len(p.Bodies)+2)
	for i := range p.Lines {
		s.checkUnit(&p.Lines[i])
	}
	if !p.ResultantOnly() {
		for b := range p.Bodies {
			s.checkBody(b)
		}
	}
	if len(s.X) > 0 {
		lost := math.Log10(max(1, s.Cond))
		left := carried - lost
		s.Checks = append(s.Checks, Check{Kind: CheckCondition, Value: lost, Bound: carried - float64(p.Figures), OK: left >= float64(p.Figures)})
	}
	if s.Verdict == NoEquilibrium {
		return
	}
	if s.Verdict == Indeterminate && s.rangesKnown {
		s.Checks = append(s.Checks, Check{Kind: CheckSenseRange, OK: s.sensesMet})
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		value, fixed := s.Magnitude(i)
		if oneWay(l.Kind.Info().Sense) && fixed {
			s.Checks = append(s.Checks, Check{Kind: CheckSense, Subject: l.Name, Line: i, Value: value, OK: value >= -senseTol*s.scale()})
		}
		if l.Limit > 0 {
			most := s.most(i)
			s.Checks = append(s.Checks, Check{Kind: CheckLimit, Subject: l.Name, Line: i, Value: most, Bound: l.Limit, OK: most <= l.Limit})
		}
	}
}

// most is the largest size that a line's magnitude can have: its value, or the
// greater end of its range. It is +Inf where the range has no end.
func (s *Solution) most(line int) float64 {
	if v, fixed := s.Magnitude(line); fixed {
		return math.Abs(v)
	}
	m := s.Problem.Lines[line].Magnitude
	low, high := m.Const, m.Const
	for _, t := range m.Terms {
		a, b := t.Coef*s.X[t.Unknown].Low, t.Coef*s.X[t.Unknown].High
		low, high = low+min(a, b), high+max(a, b)
	}
	return max(math.Abs(low), math.Abs(high))
}

func (s *Solution) checkUnit(l *problem.Line) {
	if len(l.Legs) == 0 {
		return
	}
	off := 0.0
	for _, leg := range l.Legs {
		off = max(off, math.Abs(r3.Norm(leg.U)-1))
	}
	s.Checks = append(s.Checks, Check{Kind: CheckUnit, Subject: l.Name, Value: off, Bound: UnitTol, OK: off <= UnitTol})
}

// checkBody holds ΣF and ΣM of a body against nothing.
func (s *Solution) checkBody(body int) {
	n := s.axes()
	worst := Residual{}
	for k := range n {
		if r := s.Residuals[body*n+k]; r.Relative > worst.Relative {
			worst = r
		}
	}
	name := s.Problem.Bodies[body].Name
	s.Checks = append(s.Checks, Check{Kind: CheckResidual, Subject: name, Value: worst.Relative, Bound: ResidualTol, OK: worst.Relative <= ResidualTol})
	about, where := s.secondPoint(body)
	sum, most := s.moments(body, where)
	c := Check{Kind: CheckMoment, Subject: name, About: about, Bound: MomentTol}
	if most > 0 {
		c.Value = r3.Norm(sum) / most
	}
	c.OK = c.Value <= MomentTol
	s.Checks = append(s.Checks, c)
}

// secondPoint is a point other than the body's own, to take moments about: the
// first of the sheet that lies elsewhere, else one a step away along (1, 1, 1).
func (s *Solution) secondPoint(body int) (string, r3.Vec) {
	home := s.Problem.Points[s.Problem.Bodies[body].Points[0]].At
	for _, p := range s.Problem.Points {
		if p.OK && p.At != home {
			return p.Name, p.At
		}
	}
	return "", r3.Add(home, r3.Vec{X: 1, Y: 1, Z: 1})
}

// moments adds up the moments of a body's forces about a point,
//
//	M = Σ (r - q) × F
//
// each force taken at the far end of its line (transmissibility: a force may be
// moved along its line of action). That makes it a check of the unit vectors by
// other numbers than those of ΣF: a direction that misses the far end shows.
func (s *Solution) moments(body int, q r3.Vec) (sum r3.Vec, most float64) {
	p := s.Problem
	least := faint * s.scale()
	add := func(at, f r3.Vec) {
		arm := r3.Sub(at, q)
		sum = r3.Add(sum, r3.Cross(arm, f))
		most = max(most, r3.Norm(arm)*max(r3.Norm(f), least))
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		ropeLike := l.Kind.Info().Path && len(l.Path) > 1
		for a := range l.Acts {
			act := &l.Acts[a]
			if act.Body != body {
				continue
			}
			if !ropeLike {
				add(p.Points[act.Point].At, s.force(act))
				continue
			}
			size := s.at(l.Magnitude)
			if l.Kind == problem.Strut {
				size = -size
			}
			for _, leg := range l.Legs {
				if leg.From == act.Point {
					add(p.Points[leg.To].At, r3.Scale(size, leg.U))
				}
				if leg.To == act.Point {
					add(p.Points[leg.From].At, r3.Scale(-size, leg.U))
				}
			}
		}
	}
	return sum, most
}
