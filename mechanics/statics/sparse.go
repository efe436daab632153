package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"

	"trivet/mechanics/linear"
)

// dense is A as a dense matrix, for systems that are small.
func (s *System) dense() *mat.Dense {
	a := mat.NewDense(len(s.Rows), len(s.Cols), nil)
	for i, row := range s.Terms {
		for _, t := range row {
			a.Set(i, t.Col, t.Value)
		}
	}
	return a
}

// scaledSparse is A with rows of moments divided by their length and columns
// scaled to length one.
func scaledSparse(s *System, scale []float64) *linear.Matrix {
	a := &linear.Matrix{Rows: make([][]linear.Term, len(s.Rows)), Cols: len(s.Cols)}
	entries := 0
	for _, row := range s.Terms {
		entries += len(row)
	}
	store := make([]linear.Term, 0, entries)
	for i, row := range s.Terms {
		first := len(store)
		for _, t := range row {
			store = append(store, linear.Term{Col: t.Col, Value: t.Value / (s.Rows[i].Scale * scale[t.Col])})
		}
		a.Rows[i] = store[first:len(store):len(store)]
	}
	return a
}

// scaledLoads is b with rows of moments divided by their length.
func (s *System) scaledLoads() []float64 {
	b := make([]float64, len(s.B))
	for i := range b {
		b[i] = s.B[i] / s.Rows[i].Scale
	}
	return b
}

// solveSparseSquare is solveSquare for large systems: block by block, with sparse
// factors.
func (s *Solution) solveSparseSquare() bool {
	scale := columnScale(&s.System)
	f, ok := linear.NewSquare(scaledSparse(&s.System, scale))
	if !ok {
		return false
	}
	cond := f.Cond()
	if !(cond < plainCond) {
		return false
	}
	for j, y := range f.Solve(s.System.scaledLoads()) {
		s.X[j].Value = y / scale[j]
	}
	s.Cond, s.Rank = cond, len(s.X)
	return true
}

// solveSparse is solveAny for large systems. Bodies that share no unknown, not
// through others either, are systems of their own.
func (s *Solution) solveSparse() {
	m, n := len(s.System.Rows), len(s.System.Cols)
	scale := columnScale(&s.System)
	a, b := scaledSparse(&s.System, scale), s.System.scaledLoads()
	off := rounding(s.Problem)
	tol := max(rankTol, off)
	largest, least := 0.0, math.Inf(1)
	var right, left [][]float64
	for _, part := range s.parts() {
		g, ok := linear.NewGeneral(a.Part(part.Rows, part.Cols), tol)
		if !ok {
			s.Verdict = Unreadable // as in solveAny
			return
		}
		loads := make([]float64, len(part.Rows))
		for k, i := range part.Rows {
			loads[k] = b[i]
		}
		for k, y := range g.Solve(loads) {
			s.X[part.Cols[k]].Value = y / scale[part.Cols[k]]
		}
		if g.Rank > 0 {
			largest, least = max(largest, g.Largest), min(least, g.Least)
		}
		s.Rank += g.Rank
		right, left = spread(right, g.Right, part.Cols, n), spread(left, g.Left, part.Rows, m)
	}
	if s.Rank > 0 {
		s.Cond = largest / least
	}
	s.blur = off * s.Cond
	s.motionsOf(left)
	if s.Verdict == NoEquilibrium {
		s.fixNone()
		return
	}
	if s.Rank < n {
		s.free(func(j, k int) float64 { return right[k][j] }, scale)
	}
}

// spread adds the vectors of a part to those of the whole, of length n.
func spread(all, part [][]float64, at []int, n int) [][]float64 {
	for _, v := range part {
		w := make([]float64, n)
		for k, x := range v {
			w[at[k]] = x
		}
		all = append(all, w)
	}
	return all
}

// parts gives the rows and columns of the bodies that hang together by unknowns.
// An unknown that acts on nothing is a part without rows.
func (s *Solution) parts() []linear.Block {
	sys := &s.System
	sets := newSets(len(s.Problem.Bodies))
	first := make([]int, len(sys.Cols)) // the first body that an unknown acts on, plus one
	for i, row := range sys.Terms {
		for _, t := range row {
			if first[t.Col] == 0 {
				first[t.Col] = sys.Rows[i].Body + 1
			}
			sets.join(first[t.Col]-1, sys.Rows[i].Body)
		}
	}
	groups := sets.groups()
	out := make([]linear.Block, len(groups))
	of := make([]int, len(s.Problem.Bodies))
	for k, bodies := range groups {
		for _, b := range bodies {
			of[b] = k
			for i := sys.Start[b]; i < sys.Start[b+1]; i++ {
				out[k].Rows = append(out[k].Rows, i)
			}
		}
	}
	for j, b := range first {
		if b == 0 {
			out = append(out, linear.Block{Cols: []int{j}})
		} else {
			out[of[b-1]].Cols = append(out[of[b-1]].Cols, j)
		}
	}
	return out
}

// Blocks gives the order in which the system can be solved by hand: groups of
// rows, each for as many columns, that need only columns of groups before, and
// none that falls into smaller ones. Rows that only repeat others are left out. It
// is nil where some unknown has no single value.
func (s *Solution) Blocks() []linear.Block {
	n := len(s.X)
	if n == 0 || s.Rank < n || s.Verdict == NoEquilibrium {
		return nil
	}
	a := scaledSparse(&s.System, columnScale(&s.System))
	for _, row := range a.Rows {
		for k := range row {
			if math.Abs(row[k].Value) < nothingThere {
				row[k].Value = 0
			}
		}
	}
	all := make([]int, n)
	for j := range all {
		all[j] = j
	}
	rows := make([]int, len(a.Rows))
	for i := range rows {
		rows[i] = i
	}
	if len(rows) > n {
		rows = linear.Factor(a, nil, nil).PivotRows()
		if len(rows) < n {
			return nil // only singular values tell which rows are independent
		}
	}
	blocks, ok := a.Part(rows, all).Blocks()
	if !ok {
		return nil
	}
	for _, b := range blocks {
		for k := range b.Rows {
			b.Rows[k] = rows[b.Rows[k]]
		}
	}
	return blocks
}

// nothingThere is the size of a scaled entry that is rounding only, such as the
// cosine of a right angle: nobody writes it into an equation.
const nothingThere = 1e-14
