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
// It is solved by the simplex method on dictionaries. Beside the y stands a lift t that is
// added to every bound, g[i]·y + c[i] + t >= 0: with t large enough every point keeps
// all of them, and t is first made as small as it can be.
//
// An answer is proved before it is given, from the bounds as they came and to
// rounding: a least value by a point that keeps them all and by multipliers λ >= 0 with
// Gᵀλ = cost and -c·λ equal to it; an empty region by λ >= 0 with Gᵀλ = 0 and c·λ < 0
// (Farkas); an endless one by a direction along which the cost falls and no bound ends.
type Programme struct {
	work *int // how many entries its steps may yet rewrite
	n, m int
	a    *mat.Dense // the rows g of length one, each with 1 for t; the row of t; those of y
	c    []float64
	size []float64 // lengths of the bounds as they came

	start *state // a point that keeps all bounds, nil before Feasible or where there is none
	none  Extent // Empty or Unknown where start is nil after it, Found before
	proof []float64
}

// Least is a least value: where Found, Y has it, and mult are the multipliers of
// the bounds, of which those above zero end the region there.
type Least struct {
	Extent Extent
	Value  float64
	Y      []float64
	mult   []float64

	end *state
}

// NewProgramme takes the bounds, none of which may be zero throughout. Work is how
// many entries the steps of this and other programmes may yet rewrite.
func NewProgramme(g [][]float64, c []float64, n int, work *int) *Programme {
	m := len(g)
	p := &Programme{work: work, n: n, m: m, a: mat.NewDense(m+1+n, n+1, nil), c: make([]float64, m), size: make([]float64, m)}
	for i, row := range g {
		p.size[i] = floats.Norm(row, 2)
		floats.ScaleTo(p.bound(i), 1/p.size[i], row)
		p.a.Set(i, n, 1)
		p.c[i] = c[i] / p.size[i]
	}
	p.a.Set(m, n, 1)
	for k := range n {
		p.a.Set(m+1+k, k, 1)
	}
	return p
}

// bound is row i of G.
func (p *Programme) bound(i int) []float64 { return p.a.RawRowView(i)[:p.n] }

// slack is how far y is within bound i, and terms the size of the terms that it is the
// sum of, at least 1: what is left of their sum is judged by it.
func (p *Programme) slack(i int, y []float64) (slack, terms float64) {
	slack, terms = p.c[i], 1+math.Abs(p.c[i])
	for k, x := range p.bound(i) {
		slack += x * y[k]
		terms += math.Abs(x * y[k])
	}
	return slack, terms
}

func (p *Programme) keeps(y []float64) bool {
	for i := range p.m {
		if slack, terms := p.slack(i, y); slack < -2*onBound*terms {
			return false
		}
	}
	return true
}

// Feasible says whether any point keeps the bounds: Found, Empty or Unknown.
func (p *Programme) Feasible() Extent {
	if p.start == nil && p.none == Found {
		p.none = p.enter()
	}
	return p.none
}

// Point is a point that keeps the bounds, after Feasible found that there is one.
func (p *Programme) Point() []float64 { return p.start.y() }

// Middle is a point whose least slack is as large as can be, or 1: one inside, where
// the region has an inside. It is nil where it was not found.
func (p *Programme) Middle() []float64 {
	if st, ok := p.lowest(-1); ok && p.keeps(st.y()) {
		return st.y()
	}
	return nil
}

// lowest lets t fall as far as it goes, to the floor at most.
func (p *Programme) lowest(floor float64) (*state, bool) {
	high := 0.0
	for _, c := range p.c {
		high = max(high, -c)
	}
	st := p.newState(floor, high)
	column, done := st.descend(p.lift(), nil, true)
	return st, done && column < 0 // t has an end
}

// lift is the cost of t.
func (p *Programme) lift() []float64 { return p.a.RawRowView(p.m) }

// enter finds a first point: one at which t has fallen to zero.
func (p *Programme) enter() Extent {
	st, ok := p.lowest(0)
	if !ok {
		return Unknown
	}
	if t := st.lift(); t > onBound {
		if p.proof = p.contradiction(st); p.proof != nil {
			return Empty
		}
		if t > onBound*reachOf(st.y()) {
			return Unknown
		}
	}
	st.hold()
	p.start = st
	return Found
}

// contradiction gives the multipliers of bounds that no point keeps together, with
// λ >= 0, Σ λ = 1, Gᵀλ = 0 and c·λ < 0, nil where rounding leaves it open.
func (p *Programme) contradiction(st *state) []float64 {
	proof := make([]float64, p.m)
	sum, left := 0.0, make([]float64, p.n)
	for k, price := range st.price(p.lift()) {
		if i := st.zero[k]; i < p.m && price > 0 {
			proof[i] = price
			sum += price * p.c[i]
			floats.AddScaled(left, price, p.bound(i))
		}
	}
	if sum >= 0 || floats.Norm(left, 2)*reachOf(st.y()) > -sum*dualityGap {
		return nil
	}
	return proof
}

func reachOf(y []float64) float64 { return max(1, floats.Norm(y, math.Inf(1))) }

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
	full := append(slices.Clone(cost), 0)
	scale := floats.Norm(cost, 2)
	st := p.start.clone()
	for k, price := range st.price(full) {
		if st.zero[k] > p.m && math.Abs(price) > onBound*scale { // no bound sees all of the cost
			return Least{Extent: Endless}
		}
	}
	switch column, done := st.descend(full, map[int]bool{p.m: true}, true); {
	case !done:
		return Least{Extent: Unknown}
	case column >= 0:
		ray := st.ray(column)
		for i := range p.m {
			if floats.Dot(p.bound(i), ray) < -onBound*floats.Norm(ray, 2) {
				return Least{Extent: Unknown}
			}
		}
		return Least{Extent: Endless}
	}
	y := st.y()
	out := Least{Extent: Found, Value: floats.Dot(cost, y), Y: y, mult: make([]float64, p.m), end: st}
	dual, left := 0.0, slices.Clone(cost)
	for k, l := range st.price(full) {
		if i := st.zero[k]; i < p.m && l > pivotTol*scale {
			out.mult[i] = l
			dual -= l * (p.c[i] + st.lift())
			floats.AddScaled(left, -l, p.bound(i))
		}
	}
	gap := math.Abs(dual - out.Value)
	if !p.keeps(y) || floats.Norm(left, 2) > dualityGap*max(scale, 1e-300) || gap > dualityGap*(scale+math.Abs(out.Value)) {
		return Least{Extent: Unknown}
	}
	for i := range out.mult {
		out.mult[i] /= p.size[i]
	}
	return out
}

// Ends lists the bounds that end the region at a least value: those that are met
// with nothing to spare wherever it is. A multiplier above zero shows one (it is
// so at every least point, by complementary slackness); of the others that are at
// zero here each is made as large as the least value allows.
func (p *Programme) Ends(l Least) []int {
	if l.Extent != Found {
		return nil
	}
	met := func(i int, y []float64) bool {
		slack, terms := p.slack(i, y)
		return slack <= onBound*terms
	}
	var ends, open []int
	held := map[int]bool{p.m: true}
	for i := range p.m {
		if l.mult[i] > 0 {
			ends, held[i] = append(ends, i), true
		} else if met(i, l.Y) {
			open = append(open, i)
		}
	}
	st := l.end.clone() // every step stays where the value is least
	for len(open) > 0 {
		i := open[0]
		column, done := st.descend(append(floats.ScaleTo(make([]float64, p.n), -1, p.bound(i)), 0), held, false)
		loose := func(j int) bool { return !met(j, st.y()) }
		switch {
		case !done:
			return nil // nothing is claimed of any of them
		case column >= 0:
			ray := st.ray(column)
			loose = func(j int) bool { return floats.Dot(p.bound(j), ray) > onBound*floats.Norm(ray, 2) }
		case !loose(i):
			ends = append(ends, i)
		}
		open = slices.DeleteFunc(open[1:], loose)
	}
	slices.Sort(ends)
	return ends
}

// state is a dictionary: as many of the rows r = A (y, t) + c as there are columns are
// zero, z, and all rows follow from them,
//
//	r = r₀ + T z
//
// A coordinate that no bound has taken the place of yet stands in z itself, and stays
// where it is.
type state struct {
	p    *Programme
	c    []float64
	zero []int      // the row of each column of z
	at   []int      // the column of each row, or -1
	t    *mat.Dense // T, and r₀ as the last column
}

// newState begins at y = 0 and a t that lifts every bound, and takes bounds in for
// coordinates until no bound sees what is left.
func (p *Programme) newState(floor, high float64) *state {
	rows, _ := p.a.Dims()
	st := &state{p: p, c: make([]float64, rows), zero: make([]int, p.n+1), at: none(rows), t: mat.NewDense(rows, p.n+2, nil)}
	copy(st.c, p.c)
	st.c[p.m] = -floor
	for i := range rows {
		row := st.t.RawRowView(i)
		copy(row, p.a.RawRowView(i))
		row[p.n+1] = st.c[i] + high*row[p.n]
	}
	for k := range st.zero {
		st.zero[k] = p.m + 1 + k // that of t has no row of its own
		if k < p.n {
			st.at[p.m+1+k] = k
		}
	}
	st.settle()
	return st
}

func (st *state) clone() *state {
	out := *st
	out.c, out.zero, out.at, out.t = slices.Clone(st.c), slices.Clone(st.zero), slices.Clone(st.at), mat.DenseCopyOf(st.t)
	return &out
}

// value is what a row is, and entry what column k of z adds to it.
func (st *state) value(row int) float64    { return st.t.At(row, st.p.n+1) }
func (st *state) entry(row, k int) float64 { return st.t.At(row, k) }

// y is the point of the state, and lift its t.
func (st *state) y() []float64  { return mat.Col(nil, st.p.n+1, st.t)[st.p.m+1:] }
func (st *state) lift() float64 { return st.value(st.p.m) - st.c[st.p.m] }

// ray is the direction in which y goes as column k grows.
func (st *state) ray(k int) []float64 { return mat.Col(nil, k, st.t)[st.p.m+1:] }

// price is what a unit of each column of z adds to a cost of (y, t).
func (st *state) price(cost []float64) []float64 {
	price := make([]float64, len(st.zero))
	for k, c := range cost {
		row := st.p.m + 1 + k
		if k == st.p.n {
			row = st.p.m
		}
		if c != 0 {
			floats.AddScaled(price, c, st.t.RawRowView(row)[:len(price)])
		}
	}
	return price
}

// settle lets every coordinate that a bound sees leave, along what makes t no greater.
func (st *state) settle() {
	for {
		best, row, step := -1, -1, 0.0
		price := st.price(st.p.lift())
		for k, i := range st.zero {
			if i <= st.p.m {
				continue
			}
			direction := 1.0
			if price[k] > 0 {
				direction = -1
			}
			r, s := st.blocks(k, direction, false)
			if r < 0 { // the other way: t does not see it, or it would have no end
				direction = -direction
				r, s = st.blocks(k, direction, false)
			}
			if r >= 0 && (best < 0 || math.Abs(st.entry(r, k)) > math.Abs(st.entry(row, best))) {
				best, row, step = k, r, direction*s
			}
		}
		if best < 0 || *st.p.work < 0 {
			return
		}
		st.pivot(row, best, step)
	}
}

// blocks finds the bound that is first to reach zero as column k of z grows in a
// direction: of those equally near the one with the largest entry, or by Bland's rule
// the first.
func (st *state) blocks(k int, direction float64, first bool) (row int, step float64) {
	row, step = -1, math.Inf(1)
	for i := range st.p.m + 1 {
		by := direction * st.entry(i, k)
		if st.at[i] >= 0 || by >= -pivotTol {
			continue
		}
		s := max(st.value(i), 0) / -by
		near := pivotTol * (1 + math.Abs(step))
		if row < 0 || s < step-near || s <= step+near && !first && by < direction*st.entry(row, k) {
			row, step = i, min(s, step)
		}
	}
	return row, step
}

// pivot lets row i be zero in place of column k, which has moved by step: from
// r[i] = Σ row[j]·z[j] follows z[k] = (r[i] - Σ row[j]·z[j], j ≠ k) / row[k].
func (st *state) pivot(i, k int, step float64) {
	n := len(st.zero)
	row := st.t.RawRowView(i)
	swap := floats.ScaleTo(make([]float64, n), -1/row[k], row[:n])
	swap[k] = 1 / row[k]
	rows, _ := st.t.Dims()
	for r := range rows {
		other := st.t.RawRowView(r)
		if f := other[k]; f != 0 {
			other[n] += step * f
			other[k] = 0
			floats.AddScaled(other[:n], f, swap)
		}
	}
	clear(row)
	row[k] = 1
	if was := st.zero[k]; was < len(st.at) {
		st.at[was] = -1
	}
	st.zero[k], st.at[i] = i, k
	*st.p.work -= rows * (n + 1)
}

// hold keeps t where it is: its own row becomes zero, in place of the bound that
// shares most in it.
func (st *state) hold() {
	m := st.p.m
	if st.at[m] >= 0 {
		return
	}
	st.c[m] -= st.value(m)
	st.t.Set(m, st.p.n+1, 0)
	st.pivot(m, floats.MaxIdx(st.price(st.p.lift())), 0)
}

// descend goes from state to state as the cost falls, to where it is least. Rows
// that are held stay zero. Where it has no end the column is given along
// which it falls, else -1; done is false where the work ran out. Where it is to be
// exact the last state is worked out without the rounding of the steps.
func (st *state) descend(cost []float64, held map[int]bool, exact bool) (column int, done bool) {
	scale := max(floats.Norm(cost, 2), 1e-300)
	idle, renewed := 0, false
	for *st.p.work >= 0 {
		price := st.price(cost)
		enter := -1
		for k, i := range st.zero {
			if held[i] || i > st.p.m || price[k] >= -pivotTol*scale {
				continue
			}
			if enter < 0 || idle <= patience && price[k] < price[enter] || idle > patience && i < st.zero[enter] {
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
		row, step := st.blocks(enter, 1, idle > patience)
		if row < 0 {
			return enter, true
		}
		idle++
		if step > pivotTol {
			idle = 0
		}
		st.pivot(row, enter, step)
		renewed = false
	}
	return -1, false
}

// renew works the dictionary out anew from the rows that are zero; false where
// they lie so near to parallel that they do not fix a point well.
func (st *state) renew() bool {
	n := len(st.zero)
	rows, _ := st.t.Dims()
	a, b := mat.NewDense(n, n, nil), mat.NewDense(n, n+1, nil) // T of the coordinates, and their values
	for k, i := range st.zero {
		a.SetRow(k, st.p.a.RawRowView(i))
		b.Set(k, k, 1)
		b.Set(k, n, -st.c[i])
	}
	var lu mat.LU
	lu.Factorize(a)
	fresh := mat.NewDense(rows, n+1, nil)
	if !(lu.Cond() < 1/newDirection) || lu.SolveTo(b, false, b) != nil {
		return false
	}
	fresh.Mul(st.p.a, b)
	y := mat.Col(nil, n, b)
	for i := range rows {
		row := fresh.RawRowView(i)
		if st.at[i] >= 0 {
			clear(row)
			row[st.at[i]] = 1
			continue
		}
		row[n] += st.c[i]
		terms := 1.0
		if i < st.p.m {
			_, terms = st.p.slack(i, y)
		}
		if i <= st.p.m && row[n] < -onBound*terms {
			return false
		}
	}
	st.t = fresh
	return true
}
