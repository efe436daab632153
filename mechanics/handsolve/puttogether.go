package handsolve

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// putSolved solves the equations of a step for some symbols by least squares of
// scaled rows, which is the solution where there are as many as symbols.
func (f *finder) putSolved(step Step, of []int) bool {
	place := map[int]int{}
	for i, symbol := range of {
		place[symbol] = i
	}
	m := len(step.Equations)
	a, b := mat.NewDense(m, len(of), nil), mat.NewVecDense(m, nil)
	for i := range step.Equations {
		right, size := 0.0, 0.0
		for _, t := range step.Equations[i].Terms {
			if t.Known {
				right -= t.Coef * t.Value
				continue
			}
			a.Set(i, place[t.Symbol], t.Coef)
			size = math.Hypot(size, t.Coef)
		}
		for j := range of {
			a.Set(i, j, a.At(i, j)/size)
		}
		b.SetVec(i, right/size)
	}
	var x mat.VecDense
	if m == len(of) {
		if err := x.SolveVec(a, b); err != nil {
			return false
		}
	} else {
		var svd mat.SVD
		if !svd.Factorize(a, mat.SVDThin) {
			return false
		}
		rank := svd.Rank(rankTol)
		if rank == 0 {
			return false
		}
		svd.SolveVecTo(&x, b, rank)
	}
	for i, symbol := range of {
		if v := x.AtVec(i); f.fixed(symbol) && finite(v) {
			step.Finds = append(step.Finds, Found{symbol, v})
		}
	}
	seen := map[int]bool{}
	for i := range step.Equations {
		for _, n := range step.Equations[i].needs() {
			if !seen[n] {
				seen[n] = true
				step.Needs = append(step.Needs, n)
			}
		}
	}
	if len(step.Finds) == 0 {
		return false
	}
	f.put(step)
	return true
}

// allTogether is the last resort: every equation of every body that still contains
// an unknown, solved together for all that has a value.
func (f *finder) allTogether() bool {
	step := Step{Kind: Together}
	seen := map[int]bool{}
	var of []int
	for _, g := range f.groups {
		if len(g.bodies) != 1 {
			continue
		}
		left := f.left(g)
		f.rows(g, func(c *candidate) {
			some := false
			for _, n := range left {
				if f.coef(c, n) == 0 {
					continue
				}
				some = true
				if !seen[n.symbol] {
					seen[n.symbol] = true
					of = append(of, n.symbol)
				}
			}
			if some {
				step.Equations = append(step.Equations, f.equation(g, c))
			}
		})
	}
	slices.Sort(of)
	return len(of) > 0 && f.putSolved(step, of)
}

// rows are the equations of a body as the system has them.
func (f *finder) rows(g *group, try func(*candidate)) {
	f.coordinates(try)
	first := 0
	if f.p.Planar {
		first = 2
	}
	b := &f.p.Bodies[g.bodies[0]]
	if b.Particle {
		return
	}
	i := f.pointAt(b.About)
	if i < 0 {
		return
	}
	for k := first; k < 3; k++ {
		c := candidate{moment: true, at: f.at[i], along: axis(k), named: named()}
		c.named.Point = i
		if !f.p.Planar {
			c.named.Axis = "xyz"[k]
		}
		try(&c)
	}
}
