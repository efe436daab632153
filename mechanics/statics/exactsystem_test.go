package statics

import (
	"math"
	"math/big"

	"gonum.org/v1/gonum/floats"
)

// exactSystem is ΣF = 0 in exact numbers, written from a rig without any of
// the code it is held against: a column an unknown, and minus the loads.
type exactSystem struct {
	names []string
	cols  [][]*big.Rat // cols[j][i]
	right []*big.Rat
	rows  int
}

func newExactSystem(rows int) *exactSystem {
	return &exactSystem{rows: rows, right: zeros(rows)}
}

func zeros(n int) []*big.Rat {
	v := make([]*big.Rat, n)
	for i := range v {
		v[i] = new(big.Rat)
	}
	return v
}

func (s *exactSystem) column(name string) []*big.Rat {
	for j, n := range s.names {
		if n == name {
			return s.cols[j]
		}
	}
	s.names = append(s.names, name)
	s.cols = append(s.cols, zeros(s.rows))
	return s.cols[len(s.cols)-1]
}

// integers gives the rows of [A b], each column and each row multiplied by what
// makes it whole. What a column was multiplied by is in scale.
func (s *exactSystem) integers() (rows [][]*big.Int, scale []*big.Int, right *big.Int) {
	whole := func(col []*big.Rat) ([]*big.Int, *big.Int) {
		lcm := big.NewInt(1)
		for _, x := range col {
			g := new(big.Int).GCD(nil, nil, lcm, x.Denom())
			lcm.Mul(lcm, new(big.Int).Div(x.Denom(), g))
		}
		out := make([]*big.Int, len(col))
		for i, x := range col {
			out[i] = new(big.Int).Div(new(big.Int).Mul(x.Num(), lcm), x.Denom())
		}
		return out, lcm
	}
	rows = make([][]*big.Int, s.rows)
	for _, col := range append(append([][]*big.Rat{}, s.cols...), s.right) {
		c, lcm := whole(col)
		scale = append(scale, lcm)
		for i := range rows {
			rows[i] = append(rows[i], c[i])
		}
	}
	last := len(scale) - 1
	return rows, scale[:last], scale[last]
}

// eliminate brings whole rows to reduced echelon form without fractions: after each
// step every entry is a minor of the matrix it began with, so that the division by the
// previous pivot leaves no remainder, and all pivots come out as one number. It works on the first n columns and gives the pivots' columns.
func eliminate(rows [][]*big.Int, n int) (pivots []int, pivot *big.Int) {
	previous := big.NewInt(1)
	var p, q big.Int
	for col := 0; col < n && len(pivots) < len(rows); col++ {
		k, found := len(pivots), -1
		for i := k; i < len(rows); i++ {
			if rows[i][col].Sign() != 0 {
				found = i
				break
			}
		}
		if found < 0 {
			continue
		}
		rows[k], rows[found] = rows[found], rows[k]
		here := new(big.Int).Set(rows[k][col])
		for i := range rows {
			if i == k {
				continue
			}
			f := new(big.Int).Set(rows[i][col])
			for j := range rows[i] {
				p.Mul(here, rows[i][j])
				if f.Sign() != 0 {
					q.Mul(f, rows[k][j])
					p.Sub(&p, &q)
				}
				rows[i][j].Quo(&p, previous)
			}
		}
		previous = here
		pivots = append(pivots, col)
	}
	return pivots, previous
}

// exactAnswer is what exact arithmetic says of a system.
type exactAnswer struct {
	rank       int
	consistent bool
	fixed      map[string]bool
	value      map[string]float64 // of the fixed ones
	left       [][]float64        // an orthonormal basis of the motions that nothing resists
	unbalanced float64            // the part of the loads along them, relative to the loads
}

func (s *exactSystem) solve() exactAnswer {
	n := len(s.cols)
	rows, scale, right := s.integers()
	pivots, d := eliminate(rows, n)
	a := exactAnswer{rank: len(pivots), consistent: true, fixed: map[string]bool{}, value: map[string]float64{}}
	for _, row := range rows[a.rank:] {
		a.consistent = a.consistent && row[n].Sign() == 0
	}
	isPivot := make([]bool, n)
	for _, j := range pivots {
		isPivot[j] = true
	}
	for k, j := range pivots {
		fixed := true
		for f := range n {
			fixed = fixed && (isPivot[f] || rows[k][f].Sign() == 0)
		}
		a.fixed[s.names[j]] = fixed
		if fixed {
			x := new(big.Rat).SetFrac(rows[k][n], d)
			x.Mul(x, new(big.Rat).SetFrac(scale[j], right))
			a.value[s.names[j]], _ = x.Float64()
		}
	}
	if a.rank < s.rows {
		a.motions(s)
	}
	return a
}

// motions finds the v with vᵀA = 0 from the echelon form of Aᵀ.
func (a *exactAnswer) motions(s *exactSystem) {
	t := &exactSystem{rows: len(s.cols), right: zeros(len(s.cols))}
	for i := range s.rows {
		col := make([]*big.Rat, len(s.cols))
		for j := range s.cols {
			col[j] = s.cols[j][i]
		}
		t.cols = append(t.cols, col)
	}
	rows, scale, _ := t.integers()
	pivots, d := eliminate(rows, s.rows)
	isPivot := make([]bool, s.rows)
	for _, c := range pivots {
		isPivot[c] = true
	}
	f, size := make([]float64, s.rows), 0.0
	for i := range f {
		f[i], _ = s.right[i].Float64()
		size = max(size, math.Abs(f[i]))
	}
	for c := range s.rows {
		if isPivot[c] {
			continue
		}
		v := make([]float64, s.rows)
		v[c], _ = new(big.Rat).SetInt(scale[c]).Float64()
		for k, p := range pivots {
			x := new(big.Rat).SetFrac(rows[k][c], d)
			x.Mul(x, new(big.Rat).SetInt(scale[p])).Neg(x)
			v[p], _ = x.Float64()
		}
		for range 2 { // twice is enough
			for _, b := range a.left {
				along := dot(b, v)
				for i := range v {
					v[i] -= along * b[i]
				}
			}
		}
		l := floats.Norm(v, 2)
		for i := range v {
			v[i] /= l
		}
		a.left = append(a.left, v)
		a.unbalanced = math.Hypot(a.unbalanced, dot(v, f))
	}
	if size > 0 {
		a.unbalanced /= size
	}
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
