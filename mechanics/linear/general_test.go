package linear

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"

	"trivet/fixtures/long"
)

const tolerance = 1e-12

// deficient makes a sparse matrix in which some rows and columns follow from
// others.
func deficient(rng *rand.Rand, m, n, per, rows, cols int) *Matrix {
	d := sparse(rng, m, n, per).Dense()
	for range cols {
		j, k, l := rng.IntN(n), rng.IntN(n), rng.IntN(n)
		if j == k || j == l {
			continue
		}
		f := rng.NormFloat64()
		for i := range m {
			d.Set(i, j, d.At(i, k)+f*d.At(i, l))
		}
	}
	for range rows {
		i, k, l := rng.IntN(m), rng.IntN(m), rng.IntN(m)
		if i == k || i == l {
			continue
		}
		f := rng.NormFloat64()
		for j := range n {
			d.Set(i, j, d.At(k, j)+f*d.At(l, j))
		}
	}
	return fromDense(d).unitColumns()
}

// pinv is rank, condition and A⁺b by singular values of the dense matrix.
func pinv(t *testing.T, a *Matrix, b []float64) (rank int, cond float64, x []float64, right, left *mat.Dense) {
	t.Helper()
	var svd mat.SVD
	if !svd.Factorize(a.Dense(), mat.SVDFull) {
		t.Fatal("no singular values")
	}
	s := svd.Values(nil)
	for rank < len(s) && s[rank] > tolerance*s[0] {
		rank++
	}
	left, right = &mat.Dense{}, &mat.Dense{}
	svd.UTo(left)
	svd.VTo(right)
	x = make([]float64, a.Cols)
	for k := range rank {
		c := 0.0
		for i := range b {
			c += left.At(i, k) * b[i]
		}
		for j := range x {
			x[j] += right.At(j, k) * c / s[k]
		}
	}
	if rank == 0 {
		return 0, 1, x, right, left
	}
	return rank, s[0] / s[rank-1], x, right, left
}

// Regular matrices against gonum's dense LU, on matrices that are well and badly scaled.
func TestRegularAgainstDenseLU(t *testing.T) {
	for seed := range uint64(long.Of(100, 300)) {
		rng := rand.New(rand.NewPCG(seed, 1))
		n := 1 + rng.IntN(120)
		a := sparse(rng, n, n, 1+rng.IntN(5))
		if seed%3 == 0 { // rows of many sizes
			for _, row := range a.Rows {
				f := math.Pow(10, float64(rng.IntN(7)-3))
				for k := range row {
					row[k].Value *= f
				}
			}
		}
		var lu mat.LU
		lu.Factorize(a.Dense())
		cond := lu.Cond()
		if cond > 1e12 {
			continue
		}
		s := NewGeneral(a, tolerance)
		if s.Rank < n {
			t.Errorf("seed %d: rank %d of %d at a condition of %g", seed, s.Rank, n, cond)
			continue
		}
		b := vector(rng, n)
		var want mat.VecDense
		for _, trans := range []bool{false, true} {
			if err := lu.SolveVecTo(&want, trans, mat.NewVecDense(n, b)); err != nil {
				t.Fatal(err)
			}
			got := s.Solve(b)
			if trans {
				got = s.SolveTrans(b)
			}
			if off := apart(got, want.RawVector().Data); off > 1e-13*cond*mat.Norm(&want, 2) {
				t.Errorf("seed %d, n %d, transposed %v: off by %g at a condition of %g", seed, n, trans, off/mat.Norm(&want, 2), cond)
			}
		}
		if got := s.Cond; got > exactCond(t, a)*float64(n) || got < cond/float64(n) {
			t.Errorf("seed %d: condition %g, and gonum's estimate is %g, the exact one %g", seed, got, cond, exactCond(t, a))
		}
	}
}

func exactCond(t *testing.T, a *Matrix) float64 {
	t.Helper()
	var inv mat.Dense
	if err := inv.Inverse(a.Dense()); err != nil {
		return math.Inf(1)
	}
	return mat.Norm(a.Dense(), math.Inf(1)) * mat.Norm(&inv, math.Inf(1))
}

func TestGeneralAgainstSingularValues(t *testing.T) {
	regular := 0
	for seed := range uint64(long.Of(100, 400)) {
		rng := rand.New(rand.NewPCG(seed, 4))
		m, n := 1+rng.IntN(90), 1+rng.IntN(90)
		if seed%3 == 0 {
			n = m
		}
		a := deficient(rng, m, n, 1+rng.IntN(5), rng.IntN(4), rng.IntN(4))
		b := vector(rng, m)
		if _, cond, _, _, _ := pinv(t, a, b); cond > 1e9 {
			continue // what the factors lose of it is not what is tested here
		}
		generalIs(t, seed, a, NewGeneral(a, tolerance), b)
		if g, ok := newRegular(a, tolerance); ok { // as of a large system
			generalIs(t, seed, a, g, b)
			regular++
		}
	}
	if regular < long.Of(50, 200) {
		t.Errorf("only %d have a regular part", regular)
	}
}

func generalIs(t *testing.T, seed uint64, a *Matrix, g *General, b []float64) {
	t.Helper()
	m, n := len(a.Rows), a.Cols
	rank, cond, x, right, left := pinv(t, a, b)
	if g.Rank != rank || len(g.Right) != n-rank || len(g.Left) != m-rank {
		t.Errorf("seed %d, %d × %d: rank %d with %d and %d null vectors, want %d", seed, m, n, g.Rank, len(g.Right), len(g.Left), rank)
		return
	}
	if off := apart(g.Solve(b), x); off > 1e-13*cond*(1+floats.Norm(x, 2)) {
		t.Errorf("seed %d: the solution is off by %g of %g, condition %g", seed, off, floats.Norm(x, 2), cond)
	}
	if rank > 0 && (g.Cond > cond*float64(n) || g.Cond < cond/float64(n)) {
		t.Errorf("seed %d: condition %g, want %g", seed, g.Cond, cond)
	}
	y := g.SolveTrans(x) // (A⁺)ᵀx·b = x·A⁺b
	if want := floats.Dot(x, x); math.Abs(floats.Dot(y, b)-want) > 1e-13*cond*(1+want) {
		t.Errorf("seed %d: the transpose gives %g, want %g, condition %g", seed, floats.Dot(y, b), want, cond)
	}
	spanned(t, seed, g.Right, right, rank, g.Blur)
	spanned(t, seed, g.Left, left, rank, g.Blur)
}

// spanned holds a basis against the columns of v from rank on: it is orthonormal,
// and is perpendicular to the columns before.
func spanned(t *testing.T, seed uint64, basis [][]float64, v *mat.Dense, rank int, cond float64) {
	t.Helper()
	for i, x := range basis {
		for k, y := range basis[:i+1] {
			want := 0.0
			if i == k {
				want = 1
			}
			if math.Abs(floats.Dot(x, y)-want) > 1e-13 {
				t.Errorf("seed %d: null vectors %d and %d are not orthonormal: %g", seed, i, k, floats.Dot(x, y))
			}
		}
		for k := range rank {
			if along := floats.Dot(x, mat.Col(nil, k, v)); math.Abs(along) > 1e-14*cond+1e-13 {
				t.Errorf("seed %d: null vector %d has %g along what A sees, condition %g", seed, i, along, cond)
			}
		}
	}
}

// A chain of levers multiplies a force tenfold each: no pivot is small, and the
// matrix is as good as singular all the same.
func TestGeneralSeesHiddenSingularity(t *testing.T) {
	for n := 10; n <= 90; n += 16 {
		a := &Matrix{Rows: make([][]Term, n), Cols: n}
		for i := range n {
			a.Rows[i] = append(a.Rows[i], Term{i, 1})
			if i > 0 {
				a.Rows[i] = append(a.Rows[i], Term{i - 1, -8})
			}
		}
		a.unitColumns()
		rank, _, _, _, _ := pinv(t, a, make([]float64, n))
		g := NewGeneral(a, tolerance)
		if g.Rank != rank {
			t.Errorf("order %d: rank %d, want %d", n, g.Rank, rank)
		}
	}
}

func TestGeneralOfNothing(t *testing.T) {
	g := NewGeneral(&Matrix{Rows: make([][]Term, 3), Cols: 2}, tolerance)
	if g.Rank != 0 || len(g.Right) != 2 || len(g.Left) != 3 {
		t.Errorf("%+v", g)
	}
}
