package uncertainty

import (
	"math"
	"slices"

	"trivet/mechanics/statics"
)

// mayFail tells the checks that inputs can make fail: not those of the solution's own
// rounding, and not a friction that is all there is.
func mayFail(c statics.Check) bool {
	switch c.Kind {
	case statics.CheckSense, statics.CheckSenseRange:
		return true
	case statics.CheckLimit, statics.CheckJointLimit, statics.CheckTipping:
		return finite(c.Value)
	case statics.CheckFriction, statics.CheckBelt:
		return !c.Impends
	}
	return false
}

// margin is what is left before a check fails.
func margin(c statics.Check) float64 {
	switch {
	case c.Kind == statics.CheckSense:
		return c.Value
	case c.Kind != statics.CheckSenseRange:
		return c.Bound - c.Value
	case c.OK: // there are admissible values, or there are none: it has no size
		return 1
	}
	return -1
}

func finite(x float64) bool { return !math.IsInf(x, 0) && !math.IsNaN(x) }

// check is what is followed as number k of a check, nil where that is none.
func (f *follower) check(k int) *Reach {
	n := k - len(f.Spreads)
	if n < 0 || n >= len(f.Checks) {
		return nil
	}
	return &f.Checks[n]
}

// reached notes the value and the bound of a check where it lacks the most so far.
func (f *follower) reached(k int, m moved) {
	r := f.check(k)
	if r == nil {
		return
	}
	if at, ok := same(m, r.Check, f.Solution.Checks[r.Check]); ok {
		r.Value, r.Bound, r.About = at.Value, at.Bound, at.About
	}
}

// mostly notes that input i takes so much of a check's margin.
func (f *follower) mostly(k, i int, takes float64) {
	if r := f.check(k); r != nil && takes > f.most[k] {
		f.most[k], r.Mostly = takes, i
	}
}

// same finds a check again where inputs are elsewhere; mostly it stands in the same place.
func same(m moved, k int, c statics.Check) (statics.Check, bool) {
	if m.solution == nil {
		return c, false
	}
	alike := func(at statics.Check) bool {
		return at.Kind == c.Kind && at.Subject == c.Subject && at.Line == c.Line && at.Joint == c.Joint
	}
	all := m.solution.Checks
	if k >= len(all) || !alike(all[k]) {
		k = slices.IndexFunc(all, alike)
	}
	if k < 0 {
		return c, false
	}
	return all[k], !math.IsNaN(all[k].Value)
}

// judge says which checks hold all over the box.
func (f *follower) judge() {
	for n := range f.Checks {
		r, k := &f.Checks[n], len(f.Spreads)+n
		if f.lost[k] {
			r.Value = math.Inf(1)
		}
		r.OK = f.Solution.Checks[r.Check].OK && !f.lost[k] && f.low[k].value >= -f.noise(k)
	}
}
