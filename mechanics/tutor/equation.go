package tutor

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// near is what each term of an equation may be off beyond the digits typed and still be
// called right but imprecise.
const near = 0.02

// rounding is what arithmetic leaves of a coefficient, relative to the largest of its
// equation.
const rounding = 1e-9

// equationOf judges an equation.
func (t *Practice) equationOf(w written) Judgement {
	j := Judgement{Kind: Equation}
	if w.named {
		j.Kind = ValueKind
	}
	if t.identity(w) {
		j.Kind, j.Verdict, j.Says = Equation, Right, "This relation holds, but it is not an equation of equilibrium."
		return j
	}
	t.equation = append(t.equation, w)
	if w.couple != "" {
		return t.wrong(j, w, w.sums)
	}
	if len(w.sums) > 0 {
		return t.claimed(j, w)
	}
	s := t.identify(w)
	follows := t.followsAsRead(w)
	switch {
	case s != nil && (follows || s.named && t.solution.Verdict == statics.NoEquilibrium):
		return t.right(j, s)
	case follows:
		j.Verdict = Right
		j.Says = "It follows from equilibrium, but it is not a single sum on one body."
		if w.named {
			j.Says = "It follows from equilibrium."
			t.answered(w)
		}
		return j
	}
	if joint := t.atLimit(w); joint >= 0 {
		return t.notImpending(j, joint)
	}
	if w.named && t.tied(w.text) {
		j.Verdict, j.Says = Wrong, "This is not how the two are related. Look at the friction, or at what ties them."
		return j
	}
	if w.named {
		if j = t.wrongSum(j, w); j.Mistake == nil {
			j.Is, j.Says = "", "It does not follow from equilibrium."
		}
		return j
	}
	if s = t.elementaryLike(w, (*written).isNear); s != nil {
		j.Verdict, j.Is = Imprecise, s.is(t.Problem)
		j.Says = "This is " + j.Is + ", but a coefficient is not precise enough: give three significant figures."
		j.Mistake = &Mistake{Kind: "figures"}
		return j
	}
	return t.wrongSum(j, w)
}

// wrongSum judges a wrong equation by the sums that it is most like.
func (t *Practice) wrongSum(j Judgement, w written) Judgement {
	sums, least := t.nearest(w)
	if w.other == nil {
		return t.wrong(j, w, sums)
	}
	others, fewest := t.nearest(*w.other)
	if fewest < least {
		return t.wrong(j, *w.other, others)
	}
	if fewest == least {
		if as := t.wrong(j, w, sums); as.Mistake != nil || len(others) == 0 {
			return as
		}
		return t.wrong(j, *w.other, others)
	}
	return t.wrong(j, w, sums)
}

// claimed holds an equation against the very sum it is claimed to be.
func (t *Practice) claimed(j Judgement, w written) Judgement {
	s := &w.sums[0]
	j.Is = s.is(t.Problem)
	row := s.exact(t.forces, len(t.Problem.Unknowns))
	if w.fits(row) {
		return t.right(j, s)
	}
	other := t.identify(w)
	if other != nil && s.rounded && t.follows(w) && other.alike(s) {
		other.words = s.words
		return t.right(j, other)
	}
	if w.isNear(row) {
		j.Verdict, j.Mistake = Imprecise, &Mistake{Kind: "figures"}
		j.Says = "The terms of " + j.Is + " are right, but a coefficient is not precise enough: give three significant figures."
		return j
	}
	if other != nil && other.named && t.solution.Verdict != statics.NoEquilibrium {
		j.Verdict = Wrong
		j.Says = "This equation is true, but it is " + other.is(t.Problem) + ", not " + j.Is + "."
		j.Is, j.on = other.is(t.Problem), other.bodies
		return j
	}
	if j = t.wrong(j, w, []sum{*s}); j.Mistake == nil && t.follows(w) {
		j.Says = "This equation is true, but it is not " + j.Is + "."
	}
	return j
}

// right keeps a right sum.
func (t *Practice) right(j Judgement, s *sum) Judgement {
	j.Verdict, j.Is, j.sum = Right, s.is(t.Problem), s
	if j.Kind == ValueKind {
		w := t.equation[len(t.equation)-1]
		t.answered(w)
		if s = t.onlyOf(w); s == nil {
			j.Is, j.sum, j.Says = "", nil, "It follows from equilibrium."
			return j
		}
		j.Kind, j.Is, j.sum = Equation, s.is(t.Problem), s
	}
	row := s.exact(t.forces, len(t.Problem.Unknowns))
	if !t.adds(row) {
		j.Verdict, j.Says = Dependent, "This is "+j.Is+". It follows from your earlier equations, so it adds nothing new."
		return j
	}
	j.Says = "This is " + j.Is + "."
	return j
}

// onlyOf is the elementary sum that an equation of one unknown with a coefficient is just as
// it stands: 2.4 BC = 2040 is ΣM about A, where 2*T1 = 5 kN is twice a value. Nil where it
// is none.
func (t *Practice) onlyOf(w written) *sum {
	if math.Abs(largest(w.c[:len(w.c)-1])-1) < rounding {
		return nil
	}
	return t.elementaryLike(w, func(w *written, row []float64) bool {
		_, ok := w.factor(row, true)
		return ok
	})
}

// answered counts a right equation of one unknown, 2*T1 = 5 kN, as its value.
func (t *Practice) answered(w written) {
	n, one := len(t.Problem.Unknowns), -1
	for k, c := range w.c[:n] {
		if c != 0 && one >= 0 {
			return
		}
		if c != 0 {
			one = k
		}
	}
	if one >= 0 && !w.moment {
		t.values[one] = -w.c[n] / w.c[one]
		t.found[one] = t.values[one]
		t.done[t.Problem.Unknowns[one].Name] = true
	}
}

// adds keeps an equation that does not follow from those before it.
func (t *Practice) adds(row []float64) bool {
	row = slices.Clone(row)
	row[len(row)-1] /= t.load() // of the size of a coefficient
	more, ok := with(t.rows, row)
	t.rows = more
	return ok
}

// with is a basis of orthogonal unit rows with what is new in one more row, and whether
// there is.
func with(basis [][]float64, row []float64) ([][]float64, bool) {
	rest := slices.Clone(row)
	for pass := 0; pass < 2; pass++ { // the second takes away what rounding left of the first
		for _, q := range basis {
			d := 0.0
			for k := range q {
				d += q[k] * rest[k]
			}
			for k := range q {
				rest[k] -= d * q[k]
			}
		}
	}
	was, now := norm(row), norm(rest)
	if was == 0 || now < spanTol*was {
		return basis, false
	}
	for k := range rest {
		rest[k] /= now
	}
	return append(slices.Clip(basis), rest), true
}

// spanTol is what rounding leaves of a row in the span of others.
const spanTol = 1e-7

func norm(v []float64) (n float64) {
	for _, x := range v {
		n = math.Hypot(n, x)
	}
	return n
}

func largest(v []float64) (m float64) {
	for _, x := range v {
		m = math.Max(m, math.Abs(x))
	}
	return m
}

// load is the largest known force, 1 N where there is none: what is small beside it is
// nothing.
func (t *Practice) load() (m float64) {
	for i := range t.forces {
		for _, p := range t.forces[i].pieces {
			if t.forces[i].unknown < 0 {
				m = math.Max(m, math.Abs(p.force.X)+math.Abs(p.force.Y)+math.Abs(p.force.Z))
			}
		}
	}
	return math.Max(m, 1)
}

// fits tells whether an equation is a multiple of an exact one: whether some factor λ has
// each coefficient within what its digits leave, |c - λ a| <= half. What is not written is
// exactly zero.
func (w *written) fits(a []float64) bool {
	_, ok := w.factor(a, false)
	return ok
}

// isNear tells whether each coefficient is within a share of that of an exact equation, or
// of the multiple of it that one of them is.
func (w *written) isNear(a []float64) bool {
	n := len(a) - 1
	scaleA, scaleC := largest(a[:n]), largest(w.c[:n])
	by := []float64{1, -1}
	for k := range a {
		if scaleA > 0 && a[k] != 0 && w.c[k] != 0 {
			by = append(by, w.c[k]/a[k])
		}
	}
	if (scaleA == 0) != (scaleC == 0) {
		return false
	}
	return slices.ContainsFunc(by, func(by float64) bool {
		for k := range a {
			scale := scaleC
			if k == n {
				scale = math.Max(scale, math.Abs(w.c[n]))
			}
			if math.Abs(w.c[k]-by*a[k]) > math.Max(w.half[k], near*math.Abs(by*a[k]))+10*rounding*scale {
				return false
			}
		}
		return true
	})
}

// factor is that λ; of unit ones only, where just is set.
func (w *written) factor(a []float64, just bool) (float64, bool) {
	low, high := math.Inf(-1), math.Inf(1)
	n := len(a) - 1
	scaleA, scaleC := largest(a[:n]), largest(w.c[:n])
	if scaleA == 0 && scaleC == 0 && a[n] != 0 { // loads that nothing opposes: 300 N = 0
		by := math.Copysign(1, a[n]*w.c[n])
		return by, math.Abs(w.c[n]-by*a[n]) <= w.half[n]+rounding*math.Abs(a[n])
	}
	if scaleA == 0 || scaleC == 0 {
		return 0, false
	}
	loadA, loadC := math.Max(scaleA, math.Abs(a[n])), math.Max(scaleC, math.Abs(w.c[n]))
	for k := range a {
		sa, sc := scaleA, scaleC
		if k == n {
			sa, sc = loadA, loadC
		}
		half := w.half[k] + rounding*sc
		if math.Abs(a[k]) <= rounding*sa {
			if math.Abs(w.c[k]) > half+rounding*sc*10 {
				return 0, false
			}
			continue
		}
		one, two := (w.c[k]-half)/a[k], (w.c[k]+half)/a[k]
		low, high = math.Max(low, math.Min(one, two)), math.Min(high, math.Max(one, two))
	}
	if low > high || low <= 0 && high >= 0 {
		return 0, false
	}
	if just {
		if low <= 1 && high >= 1 {
			return 1, true
		}
		if low <= -1 && high >= -1 {
			return -1, true
		}
		return 0, false
	}
	return (low + high) / 2, true
}

// identify finds the single sum that an equation is, the simplest first.
func (t *Practice) identify(w written) *sum {
	if s := t.identifyAs(w); s != nil || w.other == nil {
		return s
	}
	return t.identifyAs(*w.other)
}

// elementaryLike finds the elementary sum that an equation agrees with.
func (t *Practice) elementaryLike(w written, agrees func(w *written, row []float64) bool) *sum {
	for _, set := range t.groups(w.uses()) {
		for _, c := range t.candidates(set) {
			if c.moment == w.moment && agrees(&w, c.row) {
				return &c.sum
			}
		}
	}
	if w.other == nil {
		return nil
	}
	return t.elementaryLike(*w.other, agrees)
}

func (t *Practice) identifyAs(w written) *sum {
	n := len(t.Problem.Unknowns)
	w.other = nil
	if s := t.elementaryLike(w, (*written).fits); s != nil {
		return s
	}
	groups := t.groups(w.uses())
	for i := range t.order.Steps { // exactly what a hint has said, rounded
		for k := range t.order.Steps[i].Equations {
			e := &t.order.Steps[i].Equations[k]
			if s := t.sumOf(e); s.moment == w.moment && w.fits(s.exact(t.forces, n)) {
				s.words = t.sumWords(e)
				return &s
			}
		}
	}
	for _, set := range groups {
		if s := t.fitted(w, set); s != nil {
			return s
		}
	}
	return nil
}

// uses tells which unknowns are in an equation.
func (w *written) uses() func(unknown int) bool {
	least := rounding * largest(w.c[:len(w.c)-1])
	return func(k int) bool { return math.Abs(w.c[k]) > least }
}

// followsAsRead tells the same of an equation that may be read as one of moments too.
func (t *Practice) followsAsRead(w written) bool {
	return t.follows(w) || w.other != nil && t.follows(*w.other)
}

// follows tells whether an equation is a combination of all equations of equilibrium, as
// far as its digits go. Where every unknown has one value that is so exactly where it
// holds at them; otherwise it must hold for every change of the unknowns that equilibrium
// leaves free as well.
func (t *Practice) follows(w written) bool {
	s := t.solution
	n := len(t.Problem.Unknowns)
	if largest(w.c[:n]) == 0 {
		return false
	}
	if s.Verdict == statics.NoEquilibrium || s.Verdict == statics.Resultant {
		return false
	}
	left, allowed := w.c[n], w.half[n]+rounding*math.Abs(w.c[n])
	for k := range n {
		left += w.c[k] * s.X[k].Value
		allowed += (w.half[k] + rounding*math.Abs(w.c[k])) * math.Abs(s.X[k].Value)
	}
	if math.Abs(left) > allowed {
		return false
	}
	if s.Unique() {
		return true
	}
	for _, free := range t.free() {
		left, allowed := 0.0, 0.0
		for k := range n {
			left += w.c[k] * free[k]
			allowed += (w.half[k] + rounding*math.Abs(w.c[k])) * math.Abs(free[k])
		}
		if math.Abs(left) > allowed {
			return false
		}
	}
	return true
}

// unknownName is the name of an unknown, or of a known force by its source.
func (t *Practice) nameOf(f *force) string {
	if f.unknown >= 0 {
		return t.Problem.Unknowns[f.unknown].Name
	}
	if f.of.Thing == problem.ABody {
		return "the weight of " + t.Problem.Bodies[f.of.Index].Name
	}
	return t.Problem.NameOf(f.of)
}
