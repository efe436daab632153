package uncertainty

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// begin lists what is followed: the results that have a single value, the ends of
// ranges, the checks that may fail.
func (f *follower) begin() {
	s := f.Solution
	f.scale = map[units.Dim]float64{}
	add := func(unknown int, end End, v float64, q problem.Query) {
		f.scale[q.Dim] = max(f.scale[q.Dim], math.Abs(v))
		f.queries = append(f.queries, q)
		f.Spreads = append(f.Spreads, Spread{Name: q.Name, Unknown: unknown, End: end, Dim: q.Dim, Value: v, Mostly: -1,
			By: make([]float64, len(f.Measured)), Bend: make([]float64, len(f.Measured))})
	}
	single := func(unknown int, q problem.Query) {
		if v, err := s.Evaluate(q); err == nil && !nowhere(s) {
			add(unknown, Single, v, q)
		}
	}
	for j, u := range s.Problem.Unknowns {
		q := problem.Query{Name: u.Name, Kind: problem.AskUnknown, Unknown: j, Dim: u.Dim}
		if single(j, q); s.X[j].Fixed || nowhere(s) {
			continue
		}
		x := s.X[j]
		if x.Ranged && finite(x.Low) {
			add(j, Least, x.Low, q)
		}
		if x.Ranged && finite(x.High) {
			add(j, Greatest, x.High, q)
		}
	}
	for _, q := range s.Problem.Asked {
		if q.Kind != problem.AskUnknown || q.Unknown < 0 {
			single(-1, q)
		}
	}
	for k, c := range s.Checks {
		if mayFail(c) {
			f.Checks = append(f.Checks, Reach{Check: k, Value: c.Value, Bound: c.Bound, Mostly: -1})
		}
	}
	typed := make(Place, len(f.Measured))
	f.base = make([]float64, len(f.Spreads)+len(f.Checks)+1)
	f.base = f.values(moved{solution: s})
	for _, v := range f.base {
		f.low, f.high = append(f.low, extreme{v, typed}), append(f.high, extreme{v, typed})
	}
	f.lost, f.most = make([]bool, len(f.base)), make([]float64, len(f.base))
	f.effects = make([][]float64, len(f.base)-1)
	for k := range f.effects {
		f.effects[k] = make([]float64, len(f.Measured))
	}
}

// nowhere tells that no values of the unknowns hold.
func nowhere(s *statics.Solution) bool {
	return s.Verdict == statics.NoEquilibrium
}

// stateless tells that of what is free no values are admissible, so that it has no range.
func stateless(s *statics.Solution) bool {
	return s.Degree > 0 && s.Verdict == statics.Inadmissible
}

// evaluate gives a number at another place: NaN where there is no state for it to be
// of, infinite where it has no value there. A direction is as far from its value
// here as it is: an angle of 359 degrees is one degree from nothing.
func (f *follower) evaluate(k int, m moved) float64 {
	if m.solution == nil || nowhere(m.solution) {
		return math.Inf(1)
	}
	y, q := &f.Spreads[k], f.queries[k]
	if x := y.Unknown; y.End != Single && !m.solution.X[x].Fixed {
		if stateless(m.solution) || !m.solution.X[x].Ranged {
			return math.NaN()
		}
		if y.End == Least {
			return m.solution.X[x].Low
		}
		return m.solution.X[x].High
	}
	v, err := m.solution.Evaluate(q)
	if err != nil {
		return math.Inf(1)
	}
	if q.Part == problem.PlaneAngle && q.Kind != problem.AskAngle {
		v = y.Value + math.Remainder(v-y.Value, 2*math.Pi)
	}
	return v
}

// single takes what input i does by itself.
func (f *follower) single(i int, less, more []float64) {
	for k := range f.effects {
		y, low, high := f.base[k], less[k], more[k]
		if math.IsNaN(low) { // no state at that end: what the other says
			low = 2*y - high
		}
		if math.IsNaN(high) {
			high = 2*y - low
		}
		by, bend := (high-low)/2, (high+low)/2-y
		if !finite(high) || !finite(low) {
			by, bend = math.Inf(1), 0
		} else if max(math.Abs(high-y), math.Abs(low-y)) <= f.noise(k) {
			by, bend = 0, 0
		}
		f.effects[k][i] = by
		if k < len(f.Spreads) {
			f.Spreads[k].By[i], f.Spreads[k].Bend[i] = by, bend
			continue
		}
		if takes := y - min(low, high); takes > f.noise(k) {
			f.mostly(k, i, takes)
		}
	}
}

// finish adds up.
func (f *follower) finish() {
	f.runaways()
	for k := range f.Spreads {
		y := &f.Spreads[k]
		most := 0.0
		for i := range y.By {
			y.Independent = math.Hypot(y.Independent, math.Hypot(y.By[i], math.Sqrt2*y.Bend[i]))
			if does := math.Abs(y.By[i]) + math.Abs(y.Bend[i]); does > most {
				most, y.Mostly = does, i
			}
		}
		y.Low, y.High = f.low[k].value, f.high[k].value
		y.LowAt, y.HighAt = f.low[k].at, f.high[k].at
		if f.lost[k] {
			y.Low, y.High = math.Inf(-1), math.Inf(1)
		}
		if y.Worst = max(y.Value-y.Low, y.High-y.Value); y.Worst <= f.noise(k) {
			y.Low, y.High, y.Worst = y.Value, y.Value, 0
		}
		y.Changed = y.Worst > 0 || y.Mostly >= 0
	}
	f.judge()
}
