package trust

import (
	"math"

	"trivet/mechanics/statics"
)

// lack is what a check may lack at the worst.
type lack struct {
	margin float64 // what is left between value and bound once each input has taken the most
	most   float64 // that one input takes
}

// mayFail tells the checks that inputs can make fail: not those of the solution's own
// rounding, and not a friction that is all there is.
func mayFail(c statics.Check) bool {
	switch c.Kind {
	case statics.CheckSense:
		return true
	case statics.CheckLimit, statics.CheckJointLimit, statics.CheckTipping:
		return finite(c.Value)
	case statics.CheckFriction:
		return !c.Impends
	}
	return false
}

// margin is what is left before a check fails.
func margin(c statics.Check) float64 {
	if c.Kind == statics.CheckSense {
		return c.Value
	}
	return c.Bound - c.Value
}

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// reach adds what input i does to each check: the most that it takes from the margin,
// the most by which it moves value and bound towards each other.
func (f *follower) reach(i int, ends [2]moved, gaps []moved) {
	for n := range f.Checks {
		r, w := &f.Checks[n], &f.worst[n]
		c := f.Solution.Checks[r.Check]
		towards := 1.0
		if c.Kind == statics.CheckSense {
			towards = -1 // the value is to stay above nothing
		}
		takes, value, bound := 0.0, 0.0, 0.0
		for _, m := range ends {
			if at, ok := same(m, c); ok {
				takes = max(takes, margin(c)-margin(at))
				value = max(value, towards*(at.Value-c.Value))
				bound = max(bound, c.Bound-at.Bound)
			}
		}
		for _, m := range gaps {
			if at, ok := same(m, c); ok && math.Abs(at.Value-c.Value) > away*max(takes, value, nothing*math.Abs(c.Value)) {
				takes, value = math.Inf(1), math.Inf(1)
			}
		}
		w.margin -= takes
		r.Value, r.Bound = r.Value+towards*value, r.Bound-bound
		if takes > w.most {
			w.most, r.Mostly = takes, i
		}
	}
}

// same finds a check again where an input is elsewhere.
func same(m moved, c statics.Check) (statics.Check, bool) {
	if m.solution == nil {
		return c, false
	}
	for _, at := range m.solution.Checks {
		if at.Kind == c.Kind && at.Subject == c.Subject && at.Line == c.Line && at.Joint == c.Joint {
			return at, finite(at.Value)
		}
	}
	return c, false
}

// judge says which checks hold all over the ±.
func (f *follower) judge() {
	for n := range f.Checks {
		r := &f.Checks[n]
		c := f.Solution.Checks[r.Check]
		size := max(math.Abs(c.Value), math.Abs(c.Bound))
		r.OK = c.OK && f.worst[n].margin >= -nothing*size
	}
}
