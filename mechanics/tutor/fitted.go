package tutor

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/linear"
)

// fitted finds the sum of some bodies that an equation is, along any direction, about any
// point or axis: the combination of the bodies' three or six equations that comes nearest
// to it, each coefficient weighed by what its digits leave. A combination of forces and
// moments in space is a single sum only where it is about an axis, without a pitch.
func (t *Practice) fitted(w written, set []bool) *sum {
	n := len(t.Problem.Unknowns)
	var basis []sum
	for k := range t.dims() {
		basis = append(basis, sum{bodies: set, along: axes[k]})
	}
	if w.moment {
		if !rigid(t.Problem, set) {
			return nil
		}
		for k := range 3 {
			if !t.Problem.Planar || k == 2 {
				basis = append(basis, sum{bodies: set, moment: true, along: axes[k]})
			}
		}
	}
	scale := largest(w.c[:n])
	if scale == 0 {
		return nil // no unknown to fit to; the weights below would be infinite
	}
	a := mat.NewDense(n+1, len(basis), nil)
	b := mat.NewVecDense(n+1, nil)
	weight := make([]float64, n+1)
	rounded := 0
	for k := range weight {
		half := w.half[k]
		if half > 0 {
			rounded++
		}
		floor := rounding * scale
		if k == n {
			floor = rounding * math.Max(scale, math.Abs(w.c[n]))
		}
		weight[k] = 1 / math.Max(half, floor)
		b.SetVec(k, w.c[k]*weight[k])
	}
	rows := make([][]float64, len(basis))
	for i := range basis {
		rows[i] = basis[i].exact(t.forces, n)
		for k, v := range rows[i] {
			a.Set(k, i, v*weight[k])
		}
	}
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDThin) {
		return nil
	}
	rank := 0
	values := svd.Values(nil)
	for _, v := range values {
		if v > values[0]*1e-10 {
			rank++
		}
	}
	if rank == 0 {
		return nil
	}
	var x mat.VecDense
	svd.SolveVecTo(&x, b, rank)
	var left mat.VecDense
	left.MulVec(a, &x)
	left.SubVec(b, &left)
	if mat.Norm(&left, 2) > math.Sqrt(float64(max(rounded, 1)))*1.01 {
		return nil
	}
	f := r3.Vec{X: x.AtVec(0), Y: x.AtVec(1)}
	if !t.Problem.Planar {
		f.Z = x.AtVec(2)
	}
	if !w.moment {
		if r3.Norm(f) == 0 {
			return nil
		}
		return &sum{bodies: set, along: f, words: "ΣF along " + t.Problem.Direction(r3.Unit(f))}
	}
	// Σ M·e + F·f is the moment about the axis e through q where f = q × e taken as
	// -(q × F)·e = -F·(e × q), so f = q × e, perpendicular to e.
	var e r3.Vec
	if t.Problem.Planar {
		e = r3.Vec{Z: x.AtVec(2)}
	} else {
		e = r3.Vec{X: x.AtVec(3), Y: x.AtVec(4), Z: x.AtVec(5)}
	}
	size := r3.Norm(e)
	reach := t.extent()
	if size*reach < 1e-6*r3.Norm(f) {
		return nil
	}
	if math.Abs(r3.Dot(f, e)) > 0.01*size*math.Max(r3.Norm(f), size*reach) {
		return nil // a screw
	}
	q := r3.Scale(1/(size*size), r3.Cross(e, f))
	words := "ΣM about " + t.Problem.Place(q)
	if !t.Problem.Planar {
		words = "ΣM about an axis along " + t.Problem.Direction(r3.Unit(e)) + " through " + t.Problem.Place(q)
	}
	return &sum{bodies: set, moment: true, along: e, at: q, words: words}
}

// extent is the largest length of the problem.
func (t *Practice) extent() float64 {
	low, high := t.Problem.Extent()
	if d := r3.Norm(r3.Sub(high, low)); d > 0 {
		return d
	}
	return 1
}

// free are the changes of the unknowns that equilibrium leaves free: a basis of the null
// space of A.
func (t *Practice) free() [][]float64 {
	s := &t.solution.System
	a := &linear.Matrix{Rows: s.Terms, Cols: len(s.Cols)}
	return linear.NewGeneral(a, freeTol).Right
}

// freeTol is how small a singular value passes for zero in a system of arms in metres.
const freeTol = 1e-9
