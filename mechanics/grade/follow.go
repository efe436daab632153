package grade

import (
	"math"
	"slices"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

const (
	// maxFollowed is the number of unknowns up to which it is looked for what follows
	// from a wrong one by any equations; beyond, only single equations are looked at.
	maxFollowed = 24
	// weak is the smallest pivot, relative to 1, of an equation that counts.
	weak = 1e-9
	// coarse is the greatest share of a value that it may be uncertain by, through the
	// rounding of those before it, for anything to follow from them.
	coarse = 0.01
)

// follow marks the answers that are right given a wrong one before them.
func (k *Key) follow(marks []Mark) {
	for i := range marks {
		if m := &marks[i]; m.Verdict == Wrong && m.value.si != 0 {
			if from := k.from(marks, i); len(from) > 0 {
				m.Verdict, m.Says = Follows, "follows from your "+say.And(from...)
			}
		}
	}
}

// from gives the earlier answers that one follows from, or none.
func (k *Key) from(marks []Mark, i int) []string {
	own := map[int]*Mark{} // the student's unknowns before this one, and which are wrong
	var wrong []int
	for a := range marks[:i] {
		m := &marks[a]
		if u := m.query.Unknown; m.query.Kind == problem.AskUnknown && u >= 0 && m.Verdict.mistaken() && m.value.dim == m.query.Dim {
			own[u] = m
			wrong = append(wrong, u)
		}
	}
	if len(wrong) == 0 {
		return nil
	}
	q := marks[i].query
	if q.Kind != problem.AskUnknown || q.Unknown < 0 {
		return k.fromParts(&marks[i], own, wrong)
	}
	if from := k.fromRow(&marks[i], own); from != nil {
		return from
	}
	return k.fromAny(&marks[i], own, wrong)
}

// fitsFollowed tells whether an answer is a value that is itself uncertain by plus, and not
// only the right one over again.
func (k *Key) fitsFollowed(m *Mark, v, plus float64) bool {
	tol := plus + halfOf(math.Abs(v), Figures, m.value.factor)
	if m.value.figures >= Figures {
		tol = max(tol, plus+m.value.half)
	}
	return tol <= coarse*math.Abs(v) && math.Abs(v-m.value.si) <= tol && math.Abs(v-m.want) > tol
}

// fromRow looks for one equation that holds with the student's values:
//
//	x_c = (b - Σ a_j x_j) / a_c
func (k *Key) fromRow(m *Mark, own map[int]*Mark) []string {
	s, c := k.solution, m.query.Unknown
	for row, terms := range s.System.Terms {
		v, plus, a := s.System.B[row], 0.0, s.System.At(row, c)
		var from []string
		if math.Abs(a) < weak*s.System.Rows[row].Scale {
			continue
		}
		for _, t := range terms {
			if t.Col == c {
				continue
			}
			x := s.X[t.Col].Value
			if o := own[t.Col]; o != nil {
				x = o.value.si
				plus += math.Abs(t.Value/a) * o.value.half
				from = append(from, o.Name)
			}
			v -= t.Value * x
		}
		if len(from) > 0 && k.fitsFollowed(m, v/a, plus) {
			return from
		}
	}
	return nil
}

// fromAny fixes one earlier unknown at the student's value, leaves out one equation,
// and solves the others: with the inverse of A, and equation i left out,
//
//	x_c - x*_c = (x_j - x*_j) (A⁻¹)_ci / (A⁻¹)_ji
func (k *Key) fromAny(m *Mark, own map[int]*Mark, wrong []int) []string {
	inv := k.inverted()
	if inv == nil {
		return nil
	}
	c, tried := m.query.Unknown, 0
	var seen []float64
	found := ""
	for _, j := range wrong {
		o := own[j]
		for i := range inv[j] {
			if math.Abs(inv[j][i]) < weak || math.Abs(inv[c][i]) < weak {
				continue
			}
			share := inv[c][i] / inv[j][i]
			v := m.want + (o.value.si-o.want)*share
			if !slices.ContainsFunc(seen, func(w float64) bool { return math.Abs(v-w) <= alike*math.Abs(v) }) {
				seen = append(seen, v)
				tried++
			}
			if found == "" && k.fitsFollowed(m, v, math.Abs(share)*o.value.half) {
				found = o.Name
			}
		}
	}
	if found == "" || float64(tried)*k.window(m) > maxChance {
		return nil
	}
	return []string{found}
}

// fromParts works a result out of the student's own unknowns.
func (k *Key) fromParts(m *Mark, own map[int]*Mark, wrong []int) []string {
	base := *k.solution
	with := func(use []int) (float64, bool) {
		s := base
		s.X = slices.Clone(base.X)
		for _, u := range use {
			s.X[u].Value = own[u].value.si
		}
		v, err := s.Evaluate(m.query)
		return v, err == nil
	}
	v, ok := with(wrong)
	if !ok {
		return nil
	}
	var from []string
	plus := 0.0
	for i, u := range wrong {
		rest := slices.Delete(slices.Clone(wrong), i, i+1)
		w, ok := with(rest)
		if d := own[u].value.si - own[u].want; ok && math.Abs(v-w) > slack*math.Abs(v) && d != 0 {
			from = append(from, own[u].Name)
			plus += math.Abs((v-w)/d) * own[u].value.half
		}
	}
	if len(from) == 0 || !k.fitsFollowed(m, v, plus) {
		return nil
	}
	return from
}

// inverted is the inverse of as many independent equations as there are unknowns,
// once; nil where there is none.
func (k *Key) inverted() [][]float64 {
	if k.ordered {
		return k.inverse
	}
	k.ordered = true
	s := k.solution
	n := len(s.X)
	if n == 0 || n > maxFollowed || !s.Unique() {
		return nil
	}
	k.inverse = invert(s)
	return k.inverse
}

// invert solves A X = 1 by elimination with the largest pivot of each column; rows
// that none is taken from depend on the others.
func invert(s *statics.Solution) [][]float64 {
	m, n := len(s.System.Rows), len(s.X)
	a := make([][]float64, m) // [A | which row it was]
	for i := range a {
		a[i] = make([]float64, n+m)
		for _, t := range s.System.Terms[i] {
			a[i][t.Col] = t.Value / s.System.Rows[i].Scale
		}
		a[i][n+i] = 1
	}
	columns := make([]int, n)
	for c := range columns {
		columns[c] = c
	}
	a = linear.Reduced(a, columns, weak)
	if len(a) < n {
		return nil
	}
	for c := range a {
		a[c] = a[c][n:]
	}
	return a
}
