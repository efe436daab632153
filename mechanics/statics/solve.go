package statics

import (
	"math"
	"slices"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
)

// The bounds by which rank and equilibrium are judged.
const (
	// rankTol is the smallest singular value, relative to the largest of the scaled
	// system, that counts. Unit vectors carry rounding of about 1e-16, so a truly
	// dependent system comes out below some 1e-15; a geometry that a person can
	// measure or type differs from a dependent one by far more than 1e-12.
	rankTol = 1e-12
	// coordinateRounding is what a unit vector loses for each decade by which the
	// coordinates exceed the length between them, times a margin of 8.
	coordinateRounding = 8 * 2.220446049250313e-16
	// loadTol is what may remain of the loads, relative to the largest of them,
	// before they count as unbalanced: rounding leaves 1e-15, and 1e-9 of a load
	// is less than anyone can measure.
	loadTol = 1e-9
	// fixedTol is how much of an unknown (in the scaled system) may take part in
	// the free combinations before it counts as free itself: rounding leaves 1e-15
	// (more where the condition number says so), and a nearly parallel pair of
	// cables that differ by 1e-8 may share that much between them.
	fixedTol = 1e-12
	// zeroTol times the condition number is the rounding of a value relative to the
	// largest, more where coordinates are large: what is smaller is nothing, and is shown as 0.
	zeroTol = 1e-15
	// plainRounding is that of a value in a well-conditioned system, relative to the largest.
	plainRounding = 1e-14
)

// Solve assembles and solves a problem:
//
//	A x = b
//
// It judges rank on rows of moments divided by a length and columns scaled to
// length one. Well-conditioned systems are solved by LU factors, large ones by sparse
// factors of a regular part, all others by orthogonal factors; their null spaces
// say what is free. Bodies that share no unknown are solved apart
// from each other. Solve never fails: what has no single solution has a verdict.
func Solve(p *problem.Problem) *Solution {
	s := (&Solution{}).solve(p)
	s.slacken()
	return s
}

// SolveAlone is Solve without what follows once a cable goes slack, and without the
// ranges of what is free, which may take as long as a hundred solutions.
func SolveAlone(p *problem.Problem) *Solution {
	return (&Solution{alone: true}).solve(p)
}

func (s *Solution) solve(p *problem.Problem) *Solution {
	s.Problem, s.System, s.Cond, s.conditions = p, assemble(p), 1, conditions(p)
	m, n := len(s.System.Rows), len(s.System.Cols)
	s.X = make([]Unknown, n)
	for j := range s.X {
		s.X[j] = Unknown{Name: p.Unknowns[j].Name, Fixed: true}
	}
	if m == 0 {
		s.Verdict = Unreadable
		return s
	}
	s.takeApart()
	if p.ResultantOnly() {
		s.Verdict = Resultant
	} else {
		s.solveParts()
	}
	s.cleanZeros()
	s.judgeConditions()
	s.residuals()
	s.check()
	s.compareAnswers()
	return s
}

// solveParts solves the parts one by one, and puts together what they say of rank,
// motions and what is free.
func (s *Solution) solveParts() {
	m, n := len(s.System.Rows), len(s.System.Cols)
	a, b, scale := s.System.scaled()
	s.rounding()
	var right, left [][]float64
	for k := range s.parts {
		part := &s.parts[k]
		of, loads := a, b
		if len(s.parts) > 1 {
			of, loads = a.Part(part.Rows, part.Cols), make([]float64, len(part.Rows))
			for i, row := range part.Rows {
				loads[i] = b[row]
			}
		}
		part.General = *linear.NewGeneral(of, max(rankTol, part.off))
		// What is free turns towards the weakest of what is not by rounding.
		part.blur = part.off * part.Blur
		for i, y := range part.Solve(loads) {
			s.X[part.Cols[i]].Value = y / scale[part.Cols[i]]
		}
		s.Rank += part.Rank
		s.Cond = max(s.Cond, part.Cond)
		right, left = spread(right, part.Right, part.Cols, n), spread(left, part.Left, part.Rows, m)
	}
	s.motionsOf(left, b)
	if n == 0 { // nothing at all is held, so that only the motions that loads excite say anything
		s.Motions = slices.DeleteFunc(s.Motions, func(m Motion) bool { return !m.Excited })
	}
	switch {
	case s.Verdict == NoEquilibrium: // no unknown has a value
		for j := range s.X {
			s.X[j].Fixed = false
		}
		s.unbind()
	case s.Rank < n:
		s.free(right, scale)
	}
}

// rounding is what the entries of each part's scaled system may be off by: more
// than usual where coordinates are so large beside the lengths between them that
// their rounding shows in the unit vectors.
func (s *Solution) rounding() {
	p := s.Problem
	for k := range s.parts {
		s.parts[k].off = coordinateRounding
	}
	for i := range p.Lines {
		for _, segment := range p.Lines[i].Legs {
			if segment.To < 0 {
				continue
			}
			a, b := p.Points[segment.From].At, p.Points[segment.To].At
			size := max(math.Abs(a.X), math.Abs(a.Y), math.Abs(a.Z), math.Abs(b.X), math.Abs(b.Y), math.Abs(b.Z))
			for k := range p.Lines[i].Acts {
				part := &s.parts[s.partOfBody[p.Lines[i].Acts[k].Body]]
				part.off = max(part.off, coordinateRounding*size/segment.Length)
			}
		}
	}
}

// cleanZeros sets values that are rounding only to nothing, each beside the forces
// of its own part. Where the condition is bad, that may take small forces which
// balance others: then all of the part are kept.
func (s *Solution) cleanZeros() {
	was := slices.Clone(s.X)
	var doubtful []*subsystem
	for k := range s.parts {
		part := &s.parts[k]
		arm := s.armOf(part)
		for _, j := range part.Cols {
			part.size = max(part.size, s.forceLike(j, arm))
		}
		taken := 0.0
		for _, j := range part.Cols {
			if v := s.forceLike(j, arm); v <= max(zeroTol*part.off/coordinateRounding*part.Cond, plainRounding)*part.size {
				taken = max(taken, v)
				s.X[j].Value = 0
			}
		}
		if taken > plainRounding*part.size {
			doubtful = append(doubtful, part)
		}
	}
	if s.Verdict == NoEquilibrium {
		return
	}
	for _, part := range doubtful {
		if slices.ContainsFunc(part.Rows, s.offBalance) {
			for _, j := range part.Cols {
				s.X[j] = was[j]
			}
		}
	}
	s.slackIsZero()
}

// slackIsZero sets to nothing what could only be slack, and comes out on the other
// side of nothing by less than counts as pushing: a cable with -0.001 N beside 10 MN
// carries no force. Where a body's forces do not balance without it, it stays.
func (s *Solution) slackIsZero() {
	for i := range s.conditions {
		c := &s.conditions[i]
		if c.Kind != Sense {
			continue
		}
		m := c.parts[0].u
		t := m.Terms
		if len(t) != 1 || t[0].Coef <= 0 || m.Const != 0 {
			continue
		}
		x := &s.X[t[0].Unknown]
		if was := x.Value; x.Fixed && was < 0 && t[0].Coef*was >= -senseTol*s.scaleOf(t[0].Unknown) {
			x.Value = 0
			s.residuals()
			part := &s.parts[s.partOf[t[0].Unknown]]
			if slices.ContainsFunc(part.Rows, func(i int) bool { return s.Residuals[i].Relative > ResidualTol }) {
				x.Value = was
			}
		}
	}
}

// offBalance tells that what is left of a row shows beside the row's own terms.
func (s *Solution) offBalance(i int) bool {
	row := &s.System.Rows[i]
	sum, largest := -s.System.B[i], max(math.Abs(s.System.B[i]), s.leastTerm(row.Body)*row.Scale)
	for _, t := range s.System.Terms[i] {
		term := t.Value * s.X[t.Col].Value
		sum, largest = sum+term, max(largest, math.Abs(term))
	}
	return math.Abs(sum) > ResidualTol*largest
}
