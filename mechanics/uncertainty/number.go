package uncertainty

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// number is what is followed through the box: the margin of a check, a result, or, where
// it is neither, the logarithm of the condition number.
type number struct {
	reach  *Reach
	spread *Spread

	typed, noise float64 // its value as typed, and what counts as no change of it
	low, high    extreme
	edge         [2]float64 // low and high before the inside was searched
	lost         bool       // it has no value somewhere, or grows without bound
	by           []float64  // the effect of each input on it; of no condition number
	most         float64    // of a check: what the input that takes the most of the margin takes
	crossed      bool       // how it changes its sign has been looked at
}

// extreme is the least or greatest of a number, and where it is.
type extreme struct {
	value float64
	at    Place
}

// begin lists what is followed: the checks that may fail, the condition number, the results
// that have a single value and the ends of ranges.
func (f *follower) begin() {
	s, inputs := f.Solution, len(f.Measured)
	for k, c := range s.Checks {
		if mayFail(c) {
			f.Checks = append(f.Checks, Reach{Check: k, Value: c.Value, Bound: c.Bound, Mostly: -1})
		}
	}
	for k := range f.Checks {
		r := &f.Checks[k]
		f.numbers = append(f.numbers, number{reach: r, by: make([]float64, inputs), noise: nothing * max(math.Abs(r.Value), math.Abs(r.Bound))})
	}
	f.numbers = append(f.numbers, number{noise: condNoise})
	f.results()
	for k := range f.Spreads {
		y := &f.Spreads[k]
		f.numbers = append(f.numbers, number{spread: y, by: y.By, noise: nothing * f.scale[y.Dim]})
	}
	typed := make(Place, inputs)
	for k := range f.numbers {
		n := &f.numbers[k]
		n.typed = f.value(n, s)
		n.low, n.high = extreme{n.typed, typed}, extreme{n.typed, typed}
	}
}

// results lists the results that have a value.
func (f *follower) results() {
	s, inputs := f.Solution, len(f.Measured)
	put := func(end End, q problem.Query) {
		y := Spread{Query: q, End: end, Mostly: -1, By: make([]float64, inputs), Bend: make([]float64, inputs)}
		if y.Value = evaluate(&y, s); finite(y.Value) {
			f.scale[q.Dim] = max(f.scale[q.Dim], math.Abs(y.Value))
			f.Spreads = append(f.Spreads, y)
		}
	}
	for j := range s.Problem.Unknowns {
		q := s.Problem.Ask(j)
		put(Single, q)
		if !s.X[j].Fixed {
			put(Least, q)
			put(Greatest, q)
		}
	}
	for _, q := range s.Problem.Asked {
		if q.Of.Thing != problem.AnUnknown {
			put(Single, q)
		}
	}
}

// value is a number at another place: NaN where there is none, infinite where it has no
// value or no bound.
func (f *follower) value(n *number, s *statics.Solution) float64 {
	switch {
	case n.spread != nil:
		return evaluate(n.spread, s)
	case s == nil:
		return math.NaN()
	case n.reach != nil:
		return margin(f.check(n.reach, s))
	}
	return math.Log(s.Cond)
}

// nowhere tells that no values of the unknowns hold.
func nowhere(s *statics.Solution) bool { return s.Verdict == statics.NoEquilibrium }

// stateless tells that of what is free no values are admissible, so that it has no range.
func stateless(s *statics.Solution) bool { return s.Degree > 0 && s.Verdict == statics.Inadmissible }

// evaluate gives a result of a solution, nil where the sheet does not read: NaN where there is no state for it to be of,
// infinite where it has no value there.
func evaluate(y *Spread, s *statics.Solution) float64 {
	if s == nil || nowhere(s) {
		return math.Inf(1)
	}
	if y.End != Single && !s.X[y.Of.Index].Fixed {
		x := s.X[y.Of.Index]
		switch {
		case stateless(s) || !x.Ranged:
			return math.NaN()
		case y.End == Least:
			return x.Low
		}
		return x.High
	}
	v, err := s.Evaluate(y.Query)
	if err != nil {
		return math.Inf(1)
	}
	return y.Near(v, y.Value)
}

// mayFail tells the checks that inputs can make fail: not those of the solution's own
// rounding, and not a friction that is all there is.
func mayFail(c statics.Check) bool {
	switch c.Kind {
	case statics.CheckSense, statics.CheckSenseRange:
		return true
	case statics.CheckLimit, statics.CheckTipping:
		return finite(c.Value)
	case statics.CheckFriction, statics.CheckBelt:
		return !c.Impends
	}
	return false
}

// margin is what is left before a check fails.
func margin(c statics.Check) float64 {
	switch {
	case math.IsNaN(c.Value) || c.Kind == statics.CheckSense:
		return c.Value
	case c.Kind != statics.CheckSenseRange:
		return c.Bound - c.Value
	case c.OK: // there are admissible values, or there are none: it has no size
		return 1
	}
	return -1
}

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// check finds a check again in a solution; without a value where it is not there.
func (f *follower) check(r *Reach, s *statics.Solution) statics.Check {
	c, there := s.Again(f.Solution, r.Check)
	if !there {
		c.Value = math.NaN()
	}
	return c
}

// finish adds up, and says which checks hold all over the box.
func (f *follower) finish() {
	f.runaways()
	for k := range f.numbers {
		n := &f.numbers[k]
		if r := n.reach; r != nil {
			if n.lost {
				r.Value = math.Inf(1)
			}
			r.OK = f.Solution.Checks[r.Check].OK && !n.lost && n.low.value >= -n.noise
		} else if n.spread != nil {
			n.sum()
		}
	}
}

// sum adds up what the inputs do to a result.
func (n *number) sum() {
	y, most := n.spread, 0.0
	for i := range y.By {
		y.Independent = math.Hypot(y.Independent, math.Hypot(y.By[i], math.Sqrt2*y.Bend[i]))
		if does := math.Abs(y.By[i]) + math.Abs(y.Bend[i]); does > most {
			most, y.Mostly = does, i
		}
	}
	y.Low, y.High = n.low.value, n.high.value
	y.LowAt, y.HighAt = n.low.at, n.high.at
	if n.lost {
		y.Low, y.High = math.Inf(-1), math.Inf(1)
	}
	if y.Worst = max(y.Value-y.Low, y.High-y.Value); y.Worst <= n.noise {
		y.Low, y.High, y.Worst = y.Value, y.Value, 0
	}
	y.Changed = y.Worst > 0 || y.Mostly >= 0
}
