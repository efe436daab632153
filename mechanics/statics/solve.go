package statics

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

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
	// plainCond is the condition number up to which the factors of A alone show full
	// rank; beyond it the singular values are looked at. It lies far from 1/rankTol.
	plainCond = 1e8
	// loadTol is what may remain of the loads, relative to the largest of them,
	// before they count as unbalanced: rounding leaves 1e-15, and 1e-9 of a load
	// is less than anyone can measure.
	loadTol = 1e-9
	// fixedTol is how much of an unknown (in the scaled system) may take part in
	// the free combinations before it counts as free itself: rounding leaves 1e-15
	// (more where the condition number says so), and a nearly parallel pair of
	// cables that differ by 1e-8 may share that much between them.
	fixedTol = 1e-12
	// smallSystem is the number of equations and unknowns up to which a system is
	// solved as a dense matrix: up to some 60 that is as fast as sparse factors, and
	// the singular values of all of it take a few milliseconds.
	smallSystem = 60
	// zeroTol times the condition number is the rounding of a value relative to the
	// largest: what is smaller is nothing, and is shown as 0.
	zeroTol = 1e-15
	// plainRounding is that of a value in a well-conditioned system, relative to the largest.
	plainRounding = 1e-14
)

// Solve assembles and solves a problem:
//
//	A x = b
//
// It judges rank on rows of moments divided by a length and columns scaled to
// length one. Square and well-conditioned systems are solved by LU factors with
// partial pivoting; all others by the singular value decomposition A = U Σ Vᵀ,
// whose null spaces say what is free. Large systems are solved part by part with
// sparse factors to the same ends. Solve never fails: what has no single solution
// has a verdict.
func Solve(p *problem.Problem) *Solution {
	s := solve(p)
	s.slacken()
	return s
}

// SolveAlone is Solve without what follows once a cable goes slack, and without the
// ranges of what is free, which may take as long as a hundred solutions.
func SolveAlone(p *problem.Problem) *Solution {
	return solveInto(&Solution{alone: true}, p, smallSystem)
}

func solve(p *problem.Problem) *Solution { return solveWith(p, smallSystem) }

// solveWith takes systems of up to small rows and columns as dense matrices.
func solveWith(p *problem.Problem, small int) *Solution {
	return solveInto(&Solution{}, p, small)
}

func solveInto(s *Solution, p *problem.Problem, small int) *Solution {
	s.Problem, s.System, s.Cond, s.conditions = p, Assemble(p), 1, conditions(p)
	s.load = s.System.load(p)
	m, n := len(s.System.Rows), len(s.System.Cols)
	s.X = make([]Unknown, n)
	for j := range s.X {
		s.X[j] = Unknown{Name: p.Unknowns[j].Name, Fixed: true}
	}
	switch {
	case m == 0:
		s.Verdict = Unreadable
		return s
	case p.ResultantOnly():
		s.Verdict = Resultant
	case n == 0:
		s.judgeLoadsAlone()
	case max(m, n) > small:
		if !s.solveSparseSquare() {
			s.solveSparse()
		}
	case !s.solveSquare():
		s.solveAny()
	}
	s.cleanZeros()
	s.judgeConditions()
	s.residuals()
	s.check()
	s.compareAnswers()
	return s
}

// columnScale gives the length of each column, 1 for an empty one.
func columnScale(s *System) []float64 {
	scale := make([]float64, len(s.Cols))
	for i, row := range s.Rows {
		for _, t := range s.Terms[i] {
			a := t.Value / row.Scale
			scale[t.Col] += a * a
		}
	}
	for j := range scale {
		scale[j] = math.Sqrt(scale[j])
		if scale[j] == 0 {
			scale[j] = 1
		}
	}
	return scale
}

func scaled(s *System, scale []float64) *mat.Dense {
	m, n := len(s.Rows), len(s.Cols)
	a := make([]float64, m*n)
	for i, row := range s.Rows {
		for _, t := range s.Terms[i] {
			a[i*n+t.Col] = t.Value / (row.Scale * scale[t.Col])
		}
	}
	return mat.NewDense(m, n, a)
}

// solveSquare solves the plain case; false where the system is not square, or
// so conditioned that its rank must be looked at.
func (s *Solution) solveSquare() bool {
	n := len(s.System.Cols)
	if n != len(s.System.Rows) {
		return false
	}
	scale := columnScale(&s.System)
	var lu mat.LU
	lu.Factorize(scaled(&s.System, scale))
	cond := lu.Cond()
	if !(cond < plainCond) {
		return false
	}
	s.fromLU(&lu, scale)
	s.Cond, s.Rank = cond, n
	return true
}

func (s *Solution) fromLU(lu *mat.LU, scale []float64) {
	y := mat.NewVecDense(len(scale), nil)
	b := make([]float64, len(s.System.B))
	for i := range b {
		b[i] = s.System.B[i] / s.System.Rows[i].Scale
	}
	// The error only repeats a condition number above gonum's own gate of 1e16.
	_ = lu.SolveVecTo(y, false, mat.NewVecDense(len(b), b))
	for j := range s.X {
		s.X[j].Value = y.AtVec(j) / scale[j]
	}
}

// rounding is what the entries of the scaled system may be off by: more than
// usual where coordinates are so large beside the lengths between them that
// their rounding shows in the unit vectors.
func rounding(p *problem.Problem) float64 {
	tol := coordinateRounding
	for i := range p.Lines {
		for _, leg := range p.Lines[i].Legs {
			if leg.To < 0 {
				continue
			}
			a, b := p.Points[leg.From].At, p.Points[leg.To].At
			size := max(math.Abs(a.X), math.Abs(a.Y), math.Abs(a.Z), math.Abs(b.X), math.Abs(b.Y), math.Abs(b.Z))
			tol = max(tol, coordinateRounding*size/leg.Length)
		}
	}
	return tol
}

// solveAny solves by singular values, whatever the shape and rank.
func (s *Solution) solveAny() {
	m, n := len(s.System.Rows), len(s.System.Cols)
	scale := columnScale(&s.System)
	a := scaled(&s.System, scale)
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDFull) {
		s.Verdict = Unreadable // the iteration did not converge: never seen for finite entries
		return
	}
	sv := svd.Values(nil)
	off := rounding(s.Problem)
	tol := max(rankTol, off)
	for _, v := range sv {
		if v > tol*sv[0] && v > 0 {
			s.Rank++
		}
	}
	if s.Rank > 0 {
		s.Cond = sv[0] / sv[s.Rank-1]
	}
	// What is free turns towards the weakest of what is not, by rounding over the
	// smallest singular value kept.
	s.blur = off * s.Cond
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)

	// x = D⁻¹ V_r Σ_r⁻¹ U_rᵀ b, the solution with the least scaled magnitudes.
	for k := range s.Rank {
		c := 0.0
		for i := range m {
			c += u.At(i, k) * s.System.B[i] / s.System.Rows[i].Scale
		}
		c /= sv[k]
		for j := range n {
			s.X[j].Value += v.At(j, k) * c / scale[j]
		}
	}
	if m == n && s.Rank == n { // full rank after all: the factors are the better road
		var lu mat.LU
		lu.Factorize(a)
		s.fromLU(&lu, scale)
	}
	if s.Rank < m {
		s.motions(leftNull(&u, s.Rank))
	}
	if s.Verdict == NoEquilibrium {
		s.fixNone()
		return
	}
	if s.Rank < n {
		rank := s.Rank
		s.free(func(j, k int) float64 { return v.At(j, rank+k) }, scale)
	}
}

// fixNone says that no unknown has a value.
func (s *Solution) fixNone() {
	for j := range s.X {
		s.X[j].Fixed = false
		s.X[j].Low, s.X[j].High = math.Inf(-1), math.Inf(1)
	}
}

// judgeLoadsAlone treats a problem without unknowns: the loads balance or not.
func (s *Solution) judgeLoadsAlone() {
	for b := range s.Problem.CutFree() {
		var null [][]float64
		for i := s.System.Start[b]; i < s.System.Start[b+1]; i++ {
			v := make([]float64, len(s.System.Rows))
			v[i] = 1
			null = append(null, v)
		}
		s.tellMotions([][][]float64{s.reduce(null)})
	}
	// Nothing at all is held, so that only the motions that loads excite say anything.
	s.Motions = slices.DeleteFunc(s.Motions, func(m Motion) bool { return !m.Excited })
}

// leftNull gives the columns of U that span what no unknown can balance.
func leftNull(u *mat.Dense, rank int) *mat.Dense {
	m, _ := u.Dims()
	return mat.DenseCopyOf(u.Slice(0, m, rank, m))
}

// cleanZeros sets values that are rounding only to nothing. Where the condition
// is bad, that may take small forces which balance others: then all are kept.
func (s *Solution) cleanZeros() {
	arm := s.System.arm()
	s.size = s.load
	for j := range s.X {
		s.size = max(s.size, s.forceLike(j, arm))
	}
	var was []Unknown
	for j := range s.X {
		v := s.forceLike(j, arm)
		if v > zeroTol*s.Cond*s.size {
			continue
		}
		if v > plainRounding*s.size && was == nil {
			was = slices.Clone(s.X)
		}
		s.X[j].Value = 0
	}
	if was == nil || s.Verdict == NoEquilibrium {
		return
	}
	s.residuals()
	if slices.ContainsFunc(s.Residuals, func(r Residual) bool { return r.Relative > ResidualTol }) {
		s.X = was
	}
}
