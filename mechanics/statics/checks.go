package statics

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// The bounds that checks are held against.
const (
	// unitTol is how far |u| may be from 1: three squares, a sum and a root round
	// by 2e-16 each.
	unitTol = 1e-12
	// ResidualTol is what may be left of ΣF or ΣM, relative to the largest force on the
	// body. LU with pivoting leaves about n·1e-16; anything above 1e-9 would show
	// in a value of nine figures.
	ResidualTol = 1e-9
	// momentTol is the same for ΣM about a second point, relative to the largest
	// moment. The arm's coordinates add their rounding.
	momentTol = 1e-8
	// faint is the part of the largest force that hangs together with a body below
	// which its own forces are held against that part instead of the largest of them:
	// rounding leaves 1e-16 of the largest force on every body, also on one whose own
	// forces are all nothing.
	faint = 1e-6
	// carried is the number of decimal figures of a float64: log10(2^53).
	carried = 15.95
)

// residuals works out ΣF and ΣM of every row from the forces themselves, not
// from A.
func (s *Solution) residuals() {
	sys := &s.System
	s.Residuals = make([]Residual, len(sys.Rows))
	largest := make([]float64, len(s.Problem.Bodies))
	for act := range s.Problem.Acts() {
		f, c := s.Sum(act.Force), s.Sum(act.Couple)
		m := s.Problem.Moment(act, f, c)
		largest[act.Body] = max(largest[act.Body], r3.Norm(f))
		for i := sys.Start[act.Body]; i < sys.Start[act.Body+1]; i++ {
			of := f
			if row := &sys.Rows[i]; row.Moment {
				of = m
				largest[act.Body] = max(largest[act.Body], r3.Norm(c)/row.Scale)
			}
			s.Residuals[i].Value += problem.Component(of, sys.Rows[i].Coordinate())
		}
	}
	for i := range s.Residuals {
		row := &sys.Rows[i]
		if size := max(largest[row.Body], s.leastTerm(row.Body)) * row.Scale; size > 0 {
			s.Residuals[i].Relative = math.Abs(s.Residuals[i].Value) / size
		}
	}
}

// leastTerm is the size that the largest force on a body is taken to have at least.
// Where something can move, what the verdict lets pass as balanced is not held
// against the sums: a roller typed 1e-9 askew leaves that much of its push.
func (s *Solution) leastTerm(body int) float64 {
	part := &s.parts[s.partOfBody[body]]
	least := faint * part.size
	if s.Verdict != NoEquilibrium && part.Rank < len(part.Rows) {
		least = max(least, part.least()/ResidualTol)
	}
	return least
}

func (s *Solution) check() {
	p := s.Problem
	s.sortActs()
	s.Checks = make([]Check, 0, len(p.Lines)+3*len(p.Bodies)+len(s.conditions)+2*len(p.Joints)+2)
	for i := range p.Lines {
		s.checkUnit(&p.Lines[i])
	}
	for b := range p.Bodies {
		if p.Bodies[b].Bare {
			s.add(Check{Kind: CheckBare, Subject: p.Bodies[b].Name})
		} else if !p.ResultantOnly() {
			s.checkBody(b)
		}
	}
	for i := range p.Loads {
		if d := &p.Loads[i]; d.OK && d.Error > 0 {
			s.add(Check{Kind: CheckLoad, Subject: d.Name, Value: d.Error, Bound: problem.LoadTol, OK: d.Error <= problem.LoadTol})
		}
	}
	if len(s.X) > 0 && s.Verdict != NoEquilibrium {
		lost := math.Log10(max(1, s.Cond))
		left := carried - lost
		s.add(Check{Kind: CheckCondition, Value: lost, Bound: carried - float64(p.Figures), OK: left >= float64(p.Figures)})
	}
	if s.Verdict == NoEquilibrium {
		return
	}
	s.checkSupport()
	if s.Verdict != Resultant {
		s.checkMembers()
	}
	if s.Degree > 0 && (s.possible && len(s.Broken) == 0 || len(s.conflicts) > 0 || s.undecided) {
		s.add(Check{Kind: CheckSenseRange, OK: s.possible, Open: s.undecided && len(s.conflicts) == 0})
	}
	for i := range s.conditions {
		c := &s.conditions[i]
		if value, fixed := s.spare(c); c.Kind == Sense && fixed {
			s.addAt(Check{Kind: CheckSense, Subject: c.Name, Value: value, OK: !s.violated(c)}, c.Line, c.Joint)
		}
	}
	for i := range p.Lines {
		if l := &p.Lines[i]; l.Limit > 0 && !s.slackSide(i) {
			value, known := s.largest(l.Magnitude)
			if ends, ok := s.spans[i]; ok {
				value, known = max(math.Abs(ends[0]), math.Abs(ends[1])), true
			}
			_, single := s.single(l.Magnitude)
			s.checkLimit(Check{Kind: CheckLimit, Subject: l.Name, Value: value, Bound: l.Limit, Ranged: known && !single}, known, i, -1)
		}
	}
	s.checkJoints()
	s.checkBelts()
}

func (s *Solution) add(c Check) { s.addAt(c, -1, -1) }

// addAt adds a check of a line, or of a joint.
func (s *Solution) addAt(c Check, line, joint int) {
	c.Line, c.Joint = line, joint
	s.Checks = append(s.Checks, c)
}

// checkLimit holds the greatest magnitude that a line or joint can have, where that is known,
// against its limit. Where no state is admissible there is none to hold.
func (s *Solution) checkLimit(c Check, known bool, line, joint int) {
	switch {
	case known:
		c.OK = c.Value <= c.Bound
	case s.Verdict == Inadmissible:
		return
	default:
		c.Open, c.Value = true, 0
	}
	s.addAt(c, line, joint)
}

// largest is a bound of what a magnitude can have: its value, or the greater end
// of its range, +Inf where that has no end; of a sum the sum of the ends, which is
// more than it can have where its terms hang together. It is false where a range was
// not computed.
func (s *Solution) largest(m problem.Affine) (float64, bool) {
	if v, fixed := s.single(m); fixed {
		return math.Abs(v), true
	}
	low, high := m.Const, m.Const
	for _, t := range m.Terms {
		x := &s.X[t.Unknown]
		if x.Fixed {
			low, high = low+t.Coef*x.Value, high+t.Coef*x.Value
			continue
		}
		if !x.Ranged {
			return 0, false
		}
		a, b := t.Coef*x.Low, t.Coef*x.High
		low, high = low+min(a, b), high+max(a, b)
	}
	return max(math.Abs(low), math.Abs(high)), true
}

func (s *Solution) checkUnit(l *problem.Line) {
	if len(l.Legs) == 0 {
		return
	}
	off := 0.0
	for _, segment := range l.Legs {
		off = max(off, math.Abs(r3.Norm(segment.U)-1))
	}
	s.add(Check{Kind: CheckUnit, Subject: l.Name, Value: off, Bound: unitTol, OK: off <= unitTol})
}

// checkBody holds ΣF and ΣM of a body against zero.
func (s *Solution) checkBody(body int) {
	worst := Residual{}
	for i := s.System.Start[body]; i < s.System.Start[body+1]; i++ {
		if r := s.Residuals[i]; r.Relative > worst.Relative {
			worst = r
		}
	}
	b := &s.Problem.Bodies[body]
	c := Check{Kind: CheckResidual, Subject: b.Name, Value: worst.Relative, Bound: ResidualTol, OK: worst.Relative <= ResidualTol}
	if !b.Particle {
		c.About = b.AboutName
	}
	s.add(c)
	about, where := s.secondPoint(body)
	sum, scale := s.moments(body, where)
	c = Check{Kind: CheckMoment, Subject: b.Name, About: about, Bound: momentTol}
	if scale > 0 {
		c.Value = r3.Norm(sum) / scale
	}
	c.OK = c.Value <= momentTol
	s.add(c)
}

// secondPoint is a point other than the one that the body's moments are taken
// about: the first of the sheet that lies elsewhere, else one a step away along
// (1, 1, 1).
func (s *Solution) secondPoint(body int) (string, r3.Vec) {
	home := s.Problem.Bodies[body].About
	for _, p := range s.Problem.Points {
		if p.OK && p.At != home {
			return p.Name, p.At
		}
	}
	return "", r3.Add(home, r3.Vec{X: 1, Y: 1, Z: 1})
}

// moments adds up the moments of a body's forces about a point,
//
//	M = Σ (r - q) × F + C
//
// each line's force taken at the far end of the line (transmissibility: a force
// may be moved along its line of action). That makes it a check of the unit
// vectors by other numbers than those of ΣF: a direction that misses the far end
// shows.
func (s *Solution) moments(body int, q r3.Vec) (sum r3.Vec, scale float64) {
	p := s.Problem
	least := s.leastTerm(body)
	add := func(at, f r3.Vec) {
		arm := r3.Sub(at, q)
		sum = r3.Add(sum, r3.Cross(arm, f))
		scale = max(scale, r3.Norm(arm)*max(r3.Norm(f), least))
	}
	for _, on := range s.acts[body] {
		l := on.path
		if l == nil {
			add(on.At, s.Sum(on.Force))
			c := s.Sum(on.Couple)
			sum = r3.Add(sum, c)
			scale = max(scale, r3.Norm(c))
			continue
		}
		size := s.at(l.Magnitude)
		if l.Pushes() {
			size = -size
		}
		for _, segment := range l.Legs {
			if segment.From == on.Point {
				add(p.Points[segment.To].At, r3.Scale(size, segment.U))
			}
			if segment.To == on.Point {
				add(p.Points[segment.From].At, r3.Scale(-size, segment.U))
			}
		}
	}
	return sum, scale
}

// Governing is the check of the limit that is used most, with false where there
// is no limit.
func (s *Solution) Governing() (governing Check, found bool) {
	for _, c := range s.Checks {
		if c.Kind == CheckLimit && !c.Open && (!found || c.Value/c.Bound > governing.Value/governing.Bound) {
			governing, found = c, true
		}
	}
	return governing, found
}
