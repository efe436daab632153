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
		unknown := m.query.Kind == problem.AskUnknown && m.query.Unknown >= 0
		if m.Verdict == Wrong && m.value.Value != 0 && len(own) > 0 {
			var from []string
			if !unknown {
				from = k.fromParts(m, own)
			} else if from = k.fromRow(m, own); from == nil {
				from = k.fromAny(m, own)
			}
			if from != nil {
				m.Verdict, m.Says = Follows, "follows from your "+say.And(from...)
			}
		}
		if unknown && m.Verdict.mistaken() && m.value.Dim == m.query.Dim {
			own = append(own, m)
		}
	}
}

// fitsFollowed tells whether an answer is a value that is itself uncertain by plus, and not
// only the right one over again.
func fitsFollowed(m *Mark, v, plus float64) bool {
	limit := plus + m.value.limit(math.Abs(v))
	return limit <= coarse*math.Abs(v) && math.Abs(v-m.value.Value) <= limit && math.Abs(v-m.want) > limit
}

// fromRow looks for one equation that holds with the student's values:
//
//	x_c = (b - Σ a_j x_j) / a_c
func (k *Key) fromRow(m *Mark, own []*Mark) []string {
	s := k.solution
	for row, terms := range s.System.Terms {
		v, plus, a := s.System.B[row], 0.0, s.System.At(row, m.query.Unknown)
		var from []string
		if math.Abs(a) < weak*s.System.Rows[row].Scale {
			continue
		}
		for _, t := range terms {
			if t.Col == m.query.Unknown {
				continue
			}
			x := s.X[t.Col].Value
			for _, o := range own {
				if o.query.Unknown == t.Col {
					x = o.value.Value
					plus += math.Abs(t.Value/a) * o.value.Half
					from = append(from, o.Name)
				}
			}
			v -= t.Value * x
		}
		if len(from) > 0 && fitsFollowed(m, v/a, plus) {
			return from
		}
	}
	return nil
}

// fromAny fixes one earlier unknown j at the student's value, leaves out one equation i,
// and solves the others: with the effects x of one unit on the right of equation i,
//
//	x_c - x*_c = (x_j - x*_j) effect_c / effect_j
func (k *Key) fromAny(m *Mark, own []*Mark) (from []string) {
	var tried []float64
	for _, o := range own {
		for _, x := range k.effects() {
			if math.Abs(x[o.query.Unknown]) < weak || math.Abs(x[m.query.Unknown]) < weak {
				continue
			}
			share := x[m.query.Unknown] / x[o.query.Unknown]
			v := m.want + (o.value.Value-o.want)*share
			if !slices.ContainsFunc(tried, func(w float64) bool { return math.Abs(v-w) <= alike*math.Abs(v) }) {
				tried = append(tried, v)
			}
			if from == nil && fitsFollowed(m, v, math.Abs(share)*o.value.Half) {
				from = []string{o.Name}
			}
		}
	}
	if float64(len(tried))*k.window(m) > maxChance {
		return nil
	}
	return from
}

// fromParts works a result out of the student's own unknowns.
func (k *Key) fromParts(m *Mark, own []*Mark) (from []string) {
	result := func(without *Mark) float64 {
		s := *k.solution
		s.X = slices.Clone(s.X)
		for _, o := range own {
			if o != without {
				s.X[o.query.Unknown].Value = o.value.Value
			}
		}
		if v, none := s.Evaluate(m.query); none == nil {
			return v
		}
		return math.NaN()
	}
	v, plus := result(nil), 0.0
	for _, o := range own {
		if d := math.Abs(v - result(o)); d > slack*math.Abs(v) {
			from = append(from, o.Name)
			plus += d / math.Abs(o.value.Value-o.want) * o.value.Half
		}
	}
	if !fitsFollowed(m, v, plus) {
		return nil
	}
	return from
}

// effects are what one unit on the right of an equation does to each unknown, of as many
// independent equations as there are unknowns; none where there are not so many.
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
	f := linear.Factor(a)
	if f.Rank() < n {
		return nil
	}
	for _, row := range f.PivotRows() {
		b := make([]float64, len(a.Rows))
		b[row] = 1
		out = append(out, f.Solve(b))
	}
	return out
}
