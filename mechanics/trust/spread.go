package trust

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// begin lists the results that have a single value, and the checks that may fail.
func (f *follower) begin() {
	s := f.Solution
	f.scale = map[units.Dim]float64{}
	add := func(unknown int, q problem.Query) {
		v, err := s.Evaluate(q)
		if err != nil || s.Verdict == statics.NoEquilibrium {
			return
		}
		f.scale[q.Dim] = max(f.scale[q.Dim], math.Abs(v))
		f.queries = append(f.queries, q)
		f.Spreads = append(f.Spreads, Spread{Name: q.Name, Unknown: unknown, Dim: q.Dim, Value: v, Low: v, High: v, By: make([]float64, len(f.Measured))})
	}
	for j, u := range s.Problem.Unknowns {
		add(j, problem.Query{Name: u.Name, Kind: problem.AskUnknown, Unknown: j, Dim: u.Dim})
	}
	for _, q := range s.Problem.Asked {
		if q.Kind != problem.AskUnknown || q.Unknown < 0 {
			add(-1, q)
		}
	}
	for k, c := range s.Checks {
		if mayFail(c) {
			f.Checks = append(f.Checks, Reach{Check: k, Value: c.Value, Bound: c.Bound, OK: c.OK, Mostly: -1})
			f.worst = append(f.worst, lack{margin: margin(c)})
		}
	}
}

// evaluate gives a result at another place, as far from its value here as it is:
// an angle of 359 degrees is one degree from nothing.
func (f *follower) evaluate(k int, m moved) (float64, bool) {
	if m.solution == nil || m.solution.Verdict == statics.NoEquilibrium {
		return 0, false
	}
	q, was := f.queries[k], f.Spreads[k].Value
	v, err := m.solution.Evaluate(q)
	if q.Part == problem.PlaneAngle && q.Kind != problem.AskAngle {
		v = was + math.Remainder(v-was, 2*math.Pi)
	}
	return v, err == nil
}

// spread adds what input i does to each result.
func (f *follower) spread(i int, ends [2]moved, gaps []moved) {
	for k := range f.Spreads {
		y := &f.Spreads[k]
		low, ok1 := f.evaluate(k, ends[0])
		high, ok2 := f.evaluate(k, ends[1])
		if !ok1 || !ok2 || f.runsAway(k, max(math.Abs(low-y.Value), math.Abs(high-y.Value)), gaps) {
			y.By[i], y.Low, y.High = math.Inf(1), math.Inf(-1), math.Inf(1)
			continue
		}
		if max(math.Abs(low-y.Value), math.Abs(high-y.Value)) <= nothing*f.scale[y.Dim] {
			continue
		}
		y.By[i] = (high - low) / 2
		y.Low -= max(y.Value-low, y.Value-high, 0)
		y.High += max(low-y.Value, high-y.Value, 0)
	}
}

// runsAway tells a result that grows beyond all bounds within the ±.
func (f *follower) runsAway(k int, ends float64, gaps []moved) bool {
	for _, m := range gaps {
		if v, ok := f.evaluate(k, m); !ok || math.Abs(v-f.Spreads[k].Value) > away*max(ends, nothing*f.scale[f.Spreads[k].Dim]) {
			return true
		}
	}
	return false
}

// finish adds up.
func (f *follower) finish() {
	for k := range f.Spreads {
		y := &f.Spreads[k]
		y.Mostly = -1
		most := 0.0
		for i, by := range y.By {
			y.Independent = math.Hypot(y.Independent, by)
			y.Worst += math.Abs(by)
			if math.Abs(by) > most {
				most, y.Mostly = math.Abs(by), i
			}
		}
	}
	f.judge()
}
