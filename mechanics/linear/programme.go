package linear

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// The tolerances of a programme, whose bounds have length one and whose
// constants are of the size of one.
const (
	// onBound is how far beyond a bound a point still counts as on it: rounding of
	// the equations leaves 1e-12 of the largest force, and 1e-9 of it is nothing.
	onBound = 1e-9
	// newDirection is how much of a bound's direction must be new beside others for
	// them to meet in a point: rounding leaves 1e-15, and directions that differ by
	// 1e-8 are still told apart.
	newDirection = 1e-9
	// pivotTol is the smallest entry that is divided by, and the smallest reduced
	// cost that counts.
	pivotTol = 1e-10
	// dualityGap is how far the least value and its dual may be apart, relative to
	// their size, before neither is believed.
	dualityGap = 1e-8
	// patience is the number of steps without progress after which Bland's rule
	// chooses, under which none comes back to where it was.
	patience = 20
)

// Extent says what is known of a least value.
type Extent int

// What is known of a least value.
const (
	Found   Extent = iota
	Endless        // it goes below any number
	Empty          // no point keeps the bounds
	Unknown        // the work ran out, or the proof failed: nothing is claimed
)

// Programme is the region of all y, of length n, with
//
//	g[i]·y + c[i] >= 0,   i = 0 … m-1
//
// in which linear functions of y have a least value. What is not found before the
// work is spent is Unknown.
//
// It is solved by the simplex method on the slacks s = G y + c: in each state n of
// them are zero, and the others follow: a dictionary. The y have no bounds of their own, so they leave
// the state first and never come back. Along what no bound sees the region has no
// end; the y are replaced by coordinates w of the directions that bounds see.
// An answer is proved before it is given, from the bounds as they came and to
// rounding: a least value by a point that keeps them all and by multipliers λ >= 0 with
// Gᵀλ = cost and -c·λ equal to it; an empty region by λ >= 0 with Gᵀλ = 0 and c·λ < 0
// (Farkas); an endless one by a direction along which the cost falls and no bound ends.
type Programme struct {
	work *int // how many entries its steps may yet rewrite

	g     [][]float64 // in w, of length one
	c     []float64
	size  []float64 // lengths of the bounds as they came
	basis [][]float64

	start *state // a point that keeps all bounds, nil before Feasible or where there is none
	known bool
	none  Extent    // Empty or Unknown where start is nil
	proof []float64 // the multipliers that prove it empty
}

// Least is a least value: where Found, Y has it, and mult are the multipliers of
// the bounds, of which those above zero end the region there.
type Least struct {
	Extent Extent
	Value  float64
	Y      []float64
	ray    []float64 // where Endless: a direction along which it falls
	mult   []float64

	end *state
}

// NewProgramme takes the bounds, none of which may be zero throughout. Work is how
// many entries the steps of this and other programmes may yet rewrite.
func NewProgramme(g [][]float64, c []float64, n int, work *int) *Programme {
	m := len(g)
	p := &Programme{work: work, c: make([]float64, m), size: make([]float64, m)}
	if m == 0 {
		return p
	}
	a := mat.NewDense(m, n, nil)
	for i, row := range g {
		p.size[i] = floats.Norm(row, 2)
		for k, x := range row {
			a.Set(i, k, x/p.size[i])
		}
		p.c[i] = c[i] / p.size[i]
	}
	*work -= m * n * n
	var svd mat.SVD
	svd.Factorize(a, mat.SVDThinV)
	var v mat.Dense
	svd.VTo(&v)
	for k, s := range svd.Values(nil) {
		if s > newDirection {
			p.basis = append(p.basis, mat.Col(nil, k, &v))
		}
	}
	for i := range m {
		p.g = append(p.g, p.seen(a.RawRowView(i)))
	}
	return p
}

// seen gives the coordinates w of y.
func (p *Programme) seen(y []float64) []float64 {
	w := make([]float64, len(p.basis))
	for k, b := range p.basis {
		w[k] = floats.Dot(b, y)
	}
	return w
}

// full gives the y of coordinates w.
func (p *Programme) full(w []float64, n int) []float64 {
	y := make([]float64, n)
	for k, b := range p.basis {
		floats.AddScaled(y, w[k], b)
	}
	return y
}

// Feasible says whether any point keeps the bounds: Found, Empty or Unknown.
func (p *Programme) Feasible() Extent {
	if !p.known {
		p.known = true
		p.none = p.enter()
	}
	if p.start != nil {
		return Found
	}
	return p.none
}

// Point is a point that keeps the bounds, after Feasible found that there is one.
func (p *Programme) Point(n int) []float64 { return p.full(p.start.w(), n) }

// Middle is a point whose least slack is as large as can be, or 1: one inside, where
// the region has an inside. It is nil where it was not found.
func (p *Programme) Middle(n int) []float64 {
	k := len(p.basis)
	g := make([][]float64, len(p.g), len(p.g)+1)
	for i := range p.g {
		g[i] = append(append(make([]float64, 0, k+1), p.g[i]...), -1)
	}
	last := make([]float64, k+1)
	last[k] = -1
	cost := append([]float64{}, last...)
	l := NewProgramme(append(g, last), append(append([]float64{}, p.c...), 1), k+1, p.work).Least(cost)
	if l.Extent != Found {
		return nil
	}
	return p.full(l.Y[:k], n)
}

// Conflict lists bounds that no point keeps together and of which none can be left
// out: the multipliers that prove the region empty are a basic solution, so they lie
// on an extreme ray of all such, and fewer bounds than it has would be independent.
func (p *Programme) Conflict() []int {
	var out []int
	for i, l := range p.proof {
		if l > pivotTol {
			out = append(out, i)
		}
	}
	return out
}

// Least finds the least of cost·y.
func (p *Programme) Least(cost []float64) Least {
	if what := p.Feasible(); what != Found {
		return Least{Extent: what}
	}
	n := len(cost)
	seen := p.seen(cost)
	rest := append([]float64{}, cost...)
	floats.Sub(rest, p.full(seen, n))
	if floats.Norm(rest, 2) > onBound*floats.Norm(cost, 2) { // no bound sees all of it
		floats.Scale(-1, rest)
		return Least{Extent: Endless, ray: rest}
	}
	st := p.start.clone()
	switch column, done := st.descend(seen, nil, true, p); {
	case !done:
		return Least{Extent: Unknown}
	case column >= 0:
		ray := st.ray(column)
		for _, g := range p.g {
			if floats.Dot(g, ray) < -onBound*floats.Norm(ray, 2) {
				return Least{Extent: Unknown}
			}
		}
		return Least{Extent: Endless, ray: p.full(ray, n)}
	}
	out := Least{Extent: Found, mult: make([]float64, len(p.g)), Y: p.full(st.w(), n), end: st}
	price := st.price(seen)
	dual, scale := 0.0, floats.Norm(seen, 2)
	for k, i := range st.zero {
		l := max(price[k], 0)
		if l <= pivotTol*scale {
			l = 0
		}
		out.mult[i] = l
		dual -= l * st.c[i]
	}
	out.Value = floats.Dot(seen, st.w())
	left := append([]float64{}, seen...)
	for i, l := range out.mult {
		floats.AddScaled(left, -l, p.g[i])
	}
	if !p.keeps(st.w()) || floats.Norm(left, 2) > dualityGap*max(scale, 1e-300) || math.Abs(dual-out.Value) > dualityGap*(scale+math.Abs(out.Value)) {
		return Least{Extent: Unknown}
	}
	for i := range out.mult {
		out.mult[i] /= p.size[i]
	}
	return out
}

func (p *Programme) keeps(w []float64) bool {
	for i, g := range p.g {
		if p.slack(i, w) < -2*onBound*terms(p.c[i], g, w) {
			return false
		}
	}
	return true
}

// terms is the size of the terms of a bound at a point, at least 1: what is left of
// their sum is judged by it.
func terms(c float64, g, w []float64) float64 {
	size := 1 + math.Abs(c)
	for k, x := range g {
		size += math.Abs(x * w[k])
	}
	return size
}

func reachOf(w []float64) float64 { return max(1, floats.Norm(w, math.Inf(1))) }

// Ends lists the bounds that end the region at a least value: those that are met
// with nothing to spare wherever it is. A multiplier above zero shows one (it is
// so at every least point, by complementary slackness); of the others that are at
// zero here each is made as large as the least value allows.
func (p *Programme) Ends(l Least) []int {
	at := l.end
	tight := make([]bool, len(p.g))
	var open []int
	barred := map[int]bool{}
	for i := range p.g {
		switch {
		case l.mult[i] > 0:
			tight[i], barred[i] = true, true
		case p.slack(i, at.w()) <= onBound*terms(p.c[i], p.g[i], at.w()):
			open = append(open, i)
		}
	}
	loose := map[int]bool{}
	st := at.clone() // every step stays where the value is least
	for _, i := range open {
		if loose[i] {
			continue
		}
		cost := floats.ScaleTo(make([]float64, len(p.g[i])), -1, p.g[i])
		column, done := st.descend(cost, barred, false, p)
		switch {
		case !done:
			return nil // nothing is claimed of any of them
		case column >= 0:
			ray := st.ray(column)
			for _, j := range open {
				loose[j] = loose[j] || floats.Dot(p.g[j], ray) > onBound*floats.Norm(ray, 2)
			}
			continue
		}
		for _, j := range open {
			loose[j] = loose[j] || p.slack(j, st.w()) > onBound*terms(p.c[j], p.g[j], st.w())
		}
		tight[i] = !loose[i]
	}
	var out []int
	for i, is := range tight {
		if is && !loose[i] {
			out = append(out, i)
		}
	}
	return out
}

func (p *Programme) slack(i int, w []float64) float64 { return p.c[i] + floats.Dot(p.g[i], w) }

// enter finds a first state: with x >= 0 added to every slack it lets x fall as far
// as it goes, from where all of them can be kept.
func (p *Programme) enter() Extent {
	n, m := len(p.basis), len(p.g)
	if m == 0 {
		p.start = &state{}
		return Found
	}
	lowest := floats.MinIdx(p.c)
	// Coordinates w and, as the last, x, with the bound x >= 0 behind the others.
	g := make([][]float64, m+1)
	for i := range p.g {
		g[i] = append(append(make([]float64, 0, n+1), p.g[i]...), 1)
	}
	g[m] = make([]float64, n+1)
	g[m][n] = 1
	st := newState(g, append(append([]float64{}, p.c...), 0))
	st.move(n, max(0, -p.c[lowest]))
	cost := make([]float64, n+1)
	cost[n] = 1
	if !st.settle(cost, p) {
		return Unknown
	}
	if column, done := st.descend(cost, nil, true, p); !done || column >= 0 {
		return Unknown // x has an end, at 0
	}
	x := st.w()[n]
	if x > onBound {
		if p.proof = p.contradiction(st, cost); p.proof != nil {
			return Empty
		}
		if x > onBound*reachOf(st.w()) {
			return Unknown
		}
	}
	// What is left of x is rounding: the bounds give way by that much.
	c := make([]float64, m)
	for i := range c {
		c[i] = p.c[i] + max(x, 0)
	}
	first := newState(p.g, c)
	first.put(st.w()[:n])
	if !first.settle(make([]float64, n), p) {
		return Unknown
	}
	p.start = first
	return Found
}

// contradiction gives the multipliers of bounds that no point keeps together, with
// λ >= 0, Σ λ = 1, Gᵀλ = 0 and c·λ < 0, nil where rounding leaves it open.
func (p *Programme) contradiction(st *state, cost []float64) []float64 {
	proof := make([]float64, len(p.g))
	for k, price := range st.price(cost) {
		if i := st.zero[k]; i < len(p.g) {
			proof[i] = max(0, price)
		}
	}
	sum, left := 0.0, make([]float64, len(p.basis))
	for i, l := range proof {
		sum += l * p.c[i]
		floats.AddScaled(left, l, p.g[i])
	}
	if sum >= 0 || floats.Norm(left, 2)*reachOf(st.w()) > -sum*dualityGap {
		return nil
	}
	return proof
}

// state is a dictionary: the slacks that are zero, and all slacks and coordinates
// in terms of them,
//
//	s = s₀ + T z,   w = w₀ + W z
//
// with z the slacks in zero; before a coordinate has left it stands in z itself.
type state struct {
	g    [][]float64
	c    []float64
	n    int
	zero []int       // of each column of z the slack, or -1-k for coordinate k
	at   []int       // the column of each slack, or -1
	rows [][]float64 // m rows of slacks, then n of coordinates: T and W, and the constant as the last entry
}

func newState(g [][]float64, c []float64) *state {
	m, n := len(g), len(g[0])
	st := &state{g: g, c: c, n: n, zero: make([]int, n), at: none(m), rows: make([][]float64, m+n)}
	for i := range m {
		st.rows[i] = append(append(make([]float64, 0, n+1), g[i]...), c[i])
	}
	for k := range n {
		st.rows[m+k] = make([]float64, n+1)
		st.rows[m+k][k] = 1
		st.zero[k] = -1 - k
	}
	return st
}

func (st *state) clone() *state {
	out := *st
	out.zero = append([]int{}, st.zero...)
	out.at = append([]int{}, st.at...)
	out.rows = make([][]float64, len(st.rows))
	for i, r := range st.rows {
		out.rows[i] = append([]float64{}, r...)
	}
	return &out
}

// w is the point of the state.
func (st *state) w() []float64 {
	w := make([]float64, st.n)
	for k := range w {
		w[k] = st.rows[len(st.g)+k][st.n]
	}
	return w
}

// move adds to coordinate k, which has not left yet.
func (st *state) move(k int, by float64) {
	for _, row := range st.rows {
		row[st.n] += by * row[k]
	}
}

// put moves all coordinates, none of which has left yet, to a point.
func (st *state) put(w []float64) {
	for k, x := range w {
		st.move(k, x)
	}
}

// settle lets every coordinate leave, along what makes the cost no greater, until
// n slacks are zero.
func (st *state) settle(cost []float64, p *Programme) bool {
	for {
		best, row, step := -1, -1, 0.0
		price := st.price(cost)
		for k, i := range st.zero {
			if i >= 0 {
				continue
			}
			direction := 1.0
			if price[k] > 0 {
				direction = -1
			}
			r, s := st.blocks(k, direction)
			if r < 0 { // the other way: the cost does not see it, or it would have no end
				direction = -direction
				r, s = st.blocks(k, direction)
			}
			if r >= 0 && (best < 0 || math.Abs(st.rows[r][k]) > math.Abs(st.rows[row][best])) {
				best, row, step = k, r, direction*s
			}
		}
		if best < 0 {
			// It cannot be false: every coordinate is seen by some bound.
			return !slices.ContainsFunc(st.zero, func(i int) bool { return i < 0 })
		}
		st.pivot(row, best, step, p)
		if *p.work < 0 {
			return false
		}
	}
}

// blocks finds the slack that is first to reach zero as column k of z grows in a
// direction, the one with the largest entry of those that are equally near.
func (st *state) blocks(k int, direction float64) (row int, step float64) {
	row, step = -1, math.Inf(1)
	for i := range st.g {
		if st.at[i] >= 0 {
			continue
		}
		by := direction * st.rows[i][k]
		if by >= -pivotTol {
			continue
		}
		s := max(st.rows[i][st.n], 0) / -by
		near := pivotTol * (1 + math.Abs(step))
		if row < 0 || s < step-near || s <= step+near && by < direction*st.rows[row][k] {
			row = i
			step = min(s, step)
		}
	}
	return row, step
}

// firstBlock is blocks by Bland's rule: of those equally near the one with the
// smallest index.
func (st *state) firstBlock(k int) (row int, step float64) {
	row, step = st.blocks(k, 1)
	for i := 0; i < row; i++ {
		if st.at[i] < 0 && st.rows[i][k] < -pivotTol && max(st.rows[i][st.n], 0)/-st.rows[i][k] <= step+pivotTol*(1+step) {
			return i, step
		}
	}
	return row, step
}

// pivot lets slack i be zero in place of column k, which has moved by step: from
// s[i] = Σ row[j]·z[j] follows z[k] = (s[i] - Σ row[j]·z[j], j ≠ k) / row[k].
func (st *state) pivot(i, k int, step float64, p *Programme) {
	st.move(k, step)
	row := st.rows[i]
	swap := make([]float64, st.n)
	for j := range swap {
		swap[j] = -row[j] / row[k]
	}
	swap[k] = 1 / row[k]
	for _, other := range st.rows {
		f := other[k]
		if f == 0 {
			continue
		}
		other[k] = 0
		floats.AddScaled(other[:st.n], f, swap)
	}
	clear(row)
	row[k] = 1
	if was := st.zero[k]; was >= 0 {
		st.at[was] = -1
	}
	st.zero[k], st.at[i] = i, k
	*p.work -= len(st.rows) * (st.n + 1)
}

// price is what a unit of each column of z adds to the cost.
func (st *state) price(cost []float64) []float64 {
	price := make([]float64, st.n)
	for k, c := range cost {
		if c == 0 {
			continue
		}
		floats.AddScaled(price, c, st.rows[len(st.g)+k][:st.n])
	}
	return price
}

// ray is the direction in which w goes as column k grows.
func (st *state) ray(k int) []float64 {
	ray := make([]float64, st.n)
	for i := range ray {
		ray[i] = st.rows[len(st.g)+i][k]
	}
	return ray
}

// descend goes from state to state as the cost falls, to where it is least. Slacks
// that are barred stay zero. Where it has no end the column is given along
// which it falls, else -1; done is false where the work ran out. Where it is to be
// exact the last state is worked out without the rounding of the steps.
func (st *state) descend(cost []float64, barred map[int]bool, exact bool, p *Programme) (column int, done bool) {
	scale := max(floats.Norm(cost, 2), 1e-300)
	idle, renewed := 0, false
	for {
		price := st.price(cost)
		enter := -1
		for k, i := range st.zero {
			if barred[i] || price[k] >= -pivotTol*scale {
				continue
			}
			switch {
			case enter < 0:
				enter = k
			case idle > patience:
				if i < st.zero[enter] {
					enter = k
				}
			case price[k] < price[enter]:
				enter = k
			}
		}
		if enter < 0 {
			if renewed || !exact || !st.renew() {
				return -1, true
			}
			renewed = true
			continue
		}
		row, step := st.blocks(enter, 1)
		if idle > patience {
			row, step = st.firstBlock(enter)
		}
		if row < 0 {
			return enter, true
		}
		if step > pivotTol {
			idle = 0
		} else {
			idle++
		}
		st.pivot(row, enter, step, p)
		renewed = false
		if *p.work < 0 {
			return -1, false
		}
	}
}

// renew works the dictionary out anew from the slacks that are zero; false where
// they lie so near to parallel that they do not fix a point well.
func (st *state) renew() bool {
	a, b := mat.NewDense(st.n, st.n, nil), mat.NewVecDense(st.n, nil)
	for k, i := range st.zero {
		a.SetRow(k, st.g[i])
		b.SetVec(k, -st.c[i])
	}
	var lu mat.LU
	lu.Factorize(a)
	if !(lu.Cond() < 1/newDirection) {
		return false
	}
	var inverse mat.Dense
	w := mat.NewVecDense(st.n, nil)
	if lu.SolveTo(&inverse, false, identity(st.n)) != nil || lu.SolveVecTo(w, false, b) != nil {
		return false
	}
	m, worst := len(st.g), 0.0
	fresh := make([][]float64, len(st.rows))
	for k := range st.n {
		fresh[m+k] = append(append(make([]float64, 0, st.n+1), inverse.RawRowView(k)...), w.AtVec(k))
	}
	for i, g := range st.g {
		fresh[i] = make([]float64, st.n+1)
		if st.at[i] >= 0 {
			fresh[i][st.at[i]] = 1
			continue
		}
		for k, x := range g {
			floats.AddScaled(fresh[i], x, fresh[m+k])
		}
		fresh[i][st.n] += st.c[i]
		worst = min(worst, fresh[i][st.n]/terms(st.c[i], g, w.RawVector().Data))
	}
	if worst < -onBound {
		return false
	}
	st.rows = fresh
	return true
}
