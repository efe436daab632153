package origin

import (
	"fmt"
	"math"

	"trivet/mechanics/statics"
	"trivet/units"
)

// Check says where the numbers of check k come from.
func Check(s *statics.Solution, k int) string {
	p, c := s.Problem, &s.Checks[k]
	rounding := ", up to " + Tiny(c.Bound) + " is rounding"
	switch c.Kind {
	case statics.CheckUnit:
		return "√(ux² + uy² + uz²) of " + c.Subject + " less 1 = " + Tiny(c.Value) + rounding
	case statics.CheckResidual:
		for i := range s.System.Rows {
			if s.System.Rows[i].Name == c.Subject && s.Residuals[i].Relative == c.Value && c.Value > 0 {
				return "the worst row of " + c.Subject + ", " + Row(p, s.System.Rows[i]) + ": " + left(s, i) + " left, over the largest force" + rounding
			}
		}
		return "A x - b of each row of " + c.Subject + " over the largest force: nothing is left"
	case statics.CheckMoment:
		where := c.About
		if where == "" {
			where = "a second point"
		}
		return "moments of all forces on " + c.Subject + " about " + where + ", taken at the far ends of their lines, over the largest = " + Tiny(c.Value) + rounding
	case statics.CheckCondition:
		return fmt.Sprintf("log10 of the condition number of A, %s: so many figures the solving can cost", units.Figures(max(1, s.Cond), p.Figures))
	case statics.CheckSense:
		return "the sign of " + c.Subject + " = " + shown(p, c.Value, units.Force) + ": positive is " + positive(s, c)
	case statics.CheckLimit, statics.CheckJointLimit:
		return Use(s, k)
	case statics.CheckFriction:
		j := &p.Joints[c.Joint]
		if c.Impends {
			return "the greatest friction of " + c.Subject + ": its coefficient " + units.Compact(j.Friction) + " times the normal force"
		}
		return "friction needed at " + c.Subject + ", " + shown(p, c.Value, units.Force) + ", beside its coefficient " + units.Compact(j.Friction) + " times the normal force, " + shown(p, c.Bound, units.Force)
	case statics.CheckBelt:
		b := p.Lines[c.Line].Belt
		grip := "e^(μβ) = e^(" + units.Compact(b.Friction) + " · " + units.Compact(b.Wrap) + ") = " + units.Figures(b.Ratio(), p.Figures)
		if c.Impends {
			return "the larger tension of the belt " + c.Subject + ": the smaller one times " + grip
		}
		return "the larger tension of the belt " + c.Subject + ", " + shown(p, c.Value, units.Force) + ", beside the smaller one times " + grip + ", " + shown(p, c.Bound, units.Force)
	case statics.CheckBare:
		return "no line, joint, couple, distributed load or weight acts on " + c.Subject + ": it has no equations until one does"
	case statics.CheckSupport:
		return "the derivative of " + s.X[c.Unknown].Name + " by the place of " + p.Points[c.Point].Name + ", times " + p.NudgeText(c.Point) + ", over its value"
	case statics.CheckLoad:
		return "the difference of two quadratures of " + c.Subject + ", of 15 and of 8 points on every piece or of a piece and its halves, over the area under its intensity without sign, or the same of its moments = " + Tiny(c.Value)
	case statics.CheckTipping:
		return "where the push on " + c.Subject + " acts: the moment held over the normal force, " + units.Figures(100*c.Value, p.Figures) + " % of the way from the middle of the face to " + c.About
	case statics.CheckTwoForce:
		return "the part of the force at one end of " + c.Subject + " across the line of " + c.With + ", over the force = " + Tiny(c.Value) + rounding
	case statics.CheckThreeForce:
		return "how far the third line of action of " + c.Subject + " misses the other two, over the lengths = " + Tiny(c.Value) + rounding
	}
	return "tension, contact and friction conditions, over all values that the equations leave"
}

func positive(s *statics.Solution, c *statics.Check) string {
	if c.Line >= 0 {
		info := s.Problem.Lines[c.Line].Kind.Info()
		return info.Positive + ", and a " + info.Name + " has no " + info.Negative
	}
	return "push, and a " + s.Problem.Joints[c.Joint].Kind.String() + " has no pull"
}

// Use says what a use in per cent is of: check k is one of a limit.
func Use(s *statics.Solution, k int) string {
	p, c := s.Problem, &s.Checks[k]
	limit := shown(p, c.Bound, units.Force) + " (limit of " + c.Subject + ")"
	switch {
	case c.Open:
		return "its range was not computed, so it is not held against " + limit
	case math.IsInf(c.Value, 0):
		return "no greatest value to hold against " + limit
	}
	of := shown(p, c.Value, units.Force) + " of " + limit + " = " + units.Figures(100*c.Value/c.Bound, p.Figures) + " %"
	if s.Degree > 0 {
		return "the greatest size, " + of
	}
	return of
}

// Answer says how the computed value of answer k stands beside the printed one.
func Answer(s *statics.Solution, k int) string {
	p, a := s.Problem, &s.Answers[k]
	if a.Err != "" {
		return a.Query.Name + ": " + a.Err
	}
	u := p.Units.For(a.Query.Dim)
	off := a.Computed - a.Value
	if math.Abs(off) <= statics.ResidualTol*math.Abs(a.Value) {
		off = 0 // rounding
	}
	why := "half a unit of the last place printed"
	if a.Why != "" {
		why = "the tolerance of the sheet, " + a.Why
	}
	return a.Query.Name + ": computed " + a.ComputedText(p) + " less reference " + a.Printed + " = " + u.Format(off, p.Figures) + "; " +
		u.Format(a.Half, p.Figures) + " is " + why
}

// Limit says where a limit stands: check k is one of it.
func Limit(s *statics.Solution, k int) string {
	c := &s.Checks[k]
	what := "line"
	if c.Kind == statics.CheckJointLimit {
		what = "joint"
	}
	return shown(s.Problem, c.Bound, units.Force) + ": the limit of the " + what + " " + c.Subject + ", from its cell"
}

// Given says what a number of given i is: its value, the low and the high end of its
// range, the step.
func Given(s *statics.Solution, i, of int) string {
	g := &s.Problem.Givens[i]
	what := [...]string{"its value", "the least of its range", "the greatest of its range", "the step through its range"}[of]
	return g.Name + ": " + what + ", from the sheet; variants stay within the range"
}
