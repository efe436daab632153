package linear

import (
	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/gonum"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// denseWhole is the order up to which a system is factored whole as a dense matrix, and
// denseBlock that up to which a block is: below them the bookkeeping of blocks, and of
// sparse factors, costs more than the zeros.
const (
	denseWhole = 60
	denseBlock = 16
)

// Square is a square system, factored block by block.
type Square struct {
	a      *Matrix
	blocks []Block
	solved []solver
	of     []int // the block of each column
}

// solver solves a block, in place, or its transpose.
type solver interface {
	solve(b []float64)
	solveTrans(b []float64)
}

// NewSquare factors a square matrix. It is false where the matrix is not square,
// or singular as far as pivots show: then see NewGeneral.
func NewSquare(a *Matrix) (*Square, bool) {
	blocks, ok := []Block(nil), len(a.Rows) == a.Cols
	if ok && a.Cols <= denseWhole {
		all := others(nil, a.Cols)
		blocks = []Block{{all, all}}
	} else {
		blocks, ok = a.Blocks()
	}
	if !ok {
		return nil, false
	}
	s := &Square{a: a, blocks: blocks, solved: make([]solver, len(blocks)), of: make([]int, a.Cols)}
	at := make([]int, a.Cols)
	for k, b := range blocks {
		for c, j := range b.Cols {
			s.of[j], at[j] = k, c
		}
	}
	for k, b := range blocks {
		if n := len(b.Cols); n <= denseBlock || len(blocks) == 1 && n <= denseWhole {
			s.solved[k], ok = s.dense(k, n, at)
		} else {
			f := Factor(a.Part(b.Rows, b.Cols))
			s.solved[k], ok = f, len(f.pivots) == n
		}
		if !ok {
			return nil, false
		}
	}
	return s, true
}

// dense factors block k as a dense matrix, with partial pivoting.
func (s *Square) dense(k, n int, at []int) (solver, bool) {
	d := denseFactors{blas64.General{Rows: n, Cols: n, Stride: n, Data: make([]float64, n*n)}, make([]int, n)}
	for r, i := range s.blocks[k].Rows {
		for _, t := range s.a.Rows[i] {
			if s.of[t.Col] == k {
				d.lu.Data[r*n+at[t.Col]] = t.Value
			}
		}
	}
	if n == 1 {
		return d, d.lu.Data[0] != 0
	}
	return d, lapack64.Getrf(d.lu, d.pivots)
}

type denseFactors struct {
	lu     blas64.General
	pivots []int
}

func (d denseFactors) solve(b []float64)      { d.with(blas.NoTrans, b) }
func (d denseFactors) solveTrans(b []float64) { d.with(blas.Trans, b) }

func (d denseFactors) with(t blas.Transpose, b []float64) {
	if len(b) == 1 {
		b[0] /= d.lu.Data[0]
		return
	}
	lapack64.Getrs(t, d.lu, blas64.General{Rows: len(b), Cols: 1, Stride: 1, Data: b}, d.pivots)
}

// Solve gives x with A x = b.
func (s *Square) Solve(b []float64) []float64 {
	x := make([]float64, len(b))
	part := make([]float64, 0, len(b))
	for k, block := range s.blocks {
		part = part[:0]
		for _, i := range block.Rows {
			sum := b[i]
			for _, t := range s.a.Rows[i] {
				if s.of[t.Col] != k {
					sum -= t.Value * x[t.Col]
				}
			}
			part = append(part, sum)
		}
		s.solved[k].solve(part)
		for c, j := range block.Cols {
			x[j] = part[c]
		}
	}
	return x
}

// SolveTrans gives y with Aᵀ y = c.
func (s *Square) SolveTrans(c []float64) []float64 {
	left := append([]float64(nil), c...)
	y := make([]float64, len(c))
	part := make([]float64, 0, len(c))
	for k := len(s.blocks) - 1; k >= 0; k-- {
		block := s.blocks[k]
		part = part[:0]
		for _, j := range block.Cols {
			part = append(part, left[j])
		}
		s.solved[k].solveTrans(part)
		for r, i := range block.Rows {
			y[i] = part[r]
			for _, t := range s.a.Rows[i] {
				if s.of[t.Col] != k {
					left[t.Col] -= t.Value * y[i]
				}
			}
		}
	}
	return y
}

// Cond estimates the condition number ‖A‖∞·‖A⁻¹‖∞ from below: with ‖A⁻¹‖∞ = ‖A⁻ᵀ‖₁,
// which dlacn2 of LAPACK estimates
// from some products with A⁻ᵀ and with its transpose.
func (s *Square) Cond() float64 {
	n := s.a.Cols
	v, x, sign := make([]float64, n), make([]float64, n), make([]int, n)
	var saved [3]int
	size, next := 0.0, 0
	for {
		switch size, next = (gonum.Implementation{}).Dlacn2(n, v, x, sign, size, next, &saved); next {
		case 0:
			return s.a.normInf() * size
		case 1:
			copy(x, s.SolveTrans(x))
		default:
			copy(x, s.Solve(x))
		}
	}
}
