package linear

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// sparse makes an m × n matrix with about per entries a row, columns of length one.
func sparse(rng *rand.Rand, m, n, per int) *Matrix {
	a := &Matrix{Rows: make([][]Term, m), Cols: n}
	for i := range m {
		cols := map[int]bool{}
		if i < n {
			cols[i] = true
		}
		for range per - 1 {
			cols[rng.IntN(n)] = true
		}
		for j := range n { // in the order of columns, so that a seed gives one matrix
			if cols[j] {
				a.Rows[i] = append(a.Rows[i], Term{j, rng.NormFloat64()})
			}
		}
	}
	return a.unitColumns()
}

// unitColumns scales the columns that are not empty to length one.
func (a *Matrix) unitColumns() *Matrix {
	size := make([]float64, a.Cols)
	for _, row := range a.Rows {
		for _, t := range row {
			size[t.Col] = math.Hypot(size[t.Col], t.Value)
		}
	}
	for _, row := range a.Rows {
		for k := range row {
			if s := size[row[k].Col]; s > 0 {
				row[k].Value /= s
			}
		}
	}
	return a
}

func fromDense(d mat.Matrix) *Matrix {
	m, n := d.Dims()
	a := &Matrix{Rows: make([][]Term, m), Cols: n}
	for i := range m {
		for j := range n {
			if v := d.At(i, j); v != 0 {
				a.Rows[i] = append(a.Rows[i], Term{j, v})
			}
		}
	}
	return a
}

func vector(rng *rand.Rand, n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = rng.NormFloat64()
	}
	return v
}

func apart(a, b []float64) float64 {
	d := 0.0
	for i := range a {
		d = math.Hypot(d, a[i]-b[i])
	}
	return d
}
