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

// follow marks the answers that are right given a wrong one before them. What they may
// follow from are the student's own values of unknowns.
func (k *Key) follow(marks []Mark) {
	var own []*Mark
	for i := range marks {
		m := &marks[i]
		unknown := m.query.Of.Thing == problem.AnUnknown
		if m.Verdict == Wrong && m.value.Value != 0 && len(own) > 0 {
			find := k.fromParts
			if unknown {
				find = k.fromEquations
			}
			if from := find(m, own); len(from) > 0 {
				m.Verdict, m.Says = Follows, "follows from your "+say.And(from...)
			}
		}
		if unknown && m.Verdict.mistaken() && m.value.Dim == m.query.Dim {
			own = append(own, m)
		}
	}
}

// given puts the student's own values among the right ones of all unknowns, but for one.
func (k *Key) given(own []*Mark, but *Mark) []statics.Unknown {
	x := slices.Clone(k.solution.X)
	for _, o := range own {
		if o != but {
			x[o.query.Of.Index].Value = o.value.Value
		}
	}
	return x
}

// followed names the student's own values that an answer follows from, where it is what
// a rule makes of them. That is as uncertain as they are written, and the right value over again
// follows from nothing.
func (k *Key) followed(m *Mark, own []*Mark, rule func(x []statics.Unknown) float64) (from []string) {
	v, limit := rule(k.given(own, nil)), 0.0
	for _, o := range own {
		if d := math.Abs(v - rule(k.given(own, o))); d > slack*math.Abs(v) {
			from = append(from, o.Name)
			limit += d / math.Abs(o.value.Value-o.want) * o.value.Half
		}
	}
	limit += m.value.limit(math.Abs(v))
	if limit <= coarse*math.Abs(v) && math.Abs(v-m.value.Value) <= limit && math.Abs(v-m.want) > limit {
		return from
	}
	return nil
}

// fromParts works a result out of the student's own unknowns.
func (k *Key) fromParts(m *Mark, own []*Mark) []string {
	return k.followed(m, own, func(x []statics.Unknown) float64 {
		s := *k.solution
		s.X = x
		if v, none := s.Evaluate(m.query); none == nil {
			return v
		}
		return math.NaN()
	})
}

// fromEquations looks for one equation that holds with the student's values,
//
//	x_c = (b - Σ a_j x_j) / a_c
//
// or else fixes one earlier unknown j at the student's value, leaves out one equation, and
// solves the others: with the effects e of one unit on the right of that equation,
//
//	x_c = x*_c + (x_j - x*_j) e_c / e_j
func (k *Key) fromEquations(m *Mark, own []*Mark) (from []string) {
	s, c := k.solution, m.query.Of.Index
	for row, terms := range s.System.Terms {
		a := s.System.At(row, c)
		if math.Abs(a) < weak*s.System.Rows[row].Scale {
			continue
		}
		from = k.followed(m, own, func(x []statics.Unknown) float64 {
			sum := s.System.B[row] + a*x[c].Value
			for _, t := range terms {
				sum -= t.Value * x[t.Col].Value
			}
			return sum / a
		})
		if len(from) > 0 {
			return from
		}
	}
	var tried []float64
	for _, o := range own {
		j := o.query.Of.Index
		for _, e := range k.effects() {
			if math.Abs(e[j]) < weak || math.Abs(e[c]) < weak {
				continue
			}
			rule := func(x []statics.Unknown) float64 { return m.want + (x[j].Value-o.want)*e[c]/e[j] }
			v := rule(k.given(own, nil))
			if !slices.ContainsFunc(tried, func(w float64) bool { return math.Abs(v-w) <= alike*math.Abs(v) }) {
				tried = append(tried, v)
			}
			if from == nil {
				from = k.followed(m, own, rule)
			}
		}
	}
	if float64(len(tried))*k.window(m, math.NaN()) > maxChance {
		return nil
	}
	return from
}

// effects are what one unit on the right of each equation does to each unknown; none where
// the equations leave one free.
func effects(s *statics.Solution) (out [][]float64) {
	n := len(s.X)
	if n == 0 || n > maxFollowed || !s.Unique() {
		return nil
	}
	a := &linear.Matrix{Cols: n, Rows: make([][]linear.Term, len(s.System.Rows))}
	for i, terms := range s.System.Terms {
		for _, t := range terms {
			a.Rows[i] = append(a.Rows[i], linear.Term{Col: t.Col, Value: t.Value / s.System.Rows[i].Scale})
		}
	}
	g := linear.NewGeneral(a, weak)
	if g.Rank < n {
		return nil
	}
	for i := range a.Rows {
		one := make([]float64, len(a.Rows))
		one[i] = 1
		out = append(out, g.Solve(one))
	}
	return out
}
