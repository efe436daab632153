package origin

import (
	"cmp"
	"math"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Check is a number of check k.
func Check(s *statics.Solution, k int) doc.Origin {
	return of(func() string {
		p, c := s.Problem, &s.Checks[k]
		rounding := ", up to " + Tiny(c.Bound) + " is rounding"
		switch c.Kind {
		case statics.CheckUnit:
			return "√(ux² + uy² + uz²) of " + c.Subject + " less 1 = " + Tiny(c.Value) + rounding
		case statics.CheckResidual:
			for i := range s.System.Rows {
				if r := &s.System.Rows[i]; r.Name == c.Subject && s.Residuals[i].Relative == c.Value && c.Value > 0 {
					return "the largest residual on " + c.Subject + ", " + left(s, i) + " in " + Row(p, r) + ", over the largest force" + rounding
				}
			}
			return "A x - b of each equation of " + c.Subject + " over the largest force: each residual is zero"
		case statics.CheckMoment:
			where := cmp.Or(c.About, "a second point")
			return "moments of all forces on " + c.Subject + " about " + where + ", taken at the far ends of their lines, over the largest = " + Tiny(c.Value) + rounding
		case statics.CheckCondition:
			return "log10 of the condition number of A, " + units.Figures(max(1, s.Cond), p.Figures) + ": the figures that solving the equations can cost"
		case statics.CheckSense:
			in := c.Carrier(p)
			return "the sign of " + c.Subject + " = " + p.Format(c.Value, units.Force) + ": positive is " + in.Positive + ", and a " + in.Name + " has no " + in.Negative
		case statics.CheckLimit:
			return use(s, c)
		case statics.CheckFriction, statics.CheckBelt:
			var needed, impends, greatest string
			if c.Kind == statics.CheckBelt {
				needed, greatest = "the larger tension of the belt "+c.Subject, "the smaller one times "+grip(p, p.Lines[c.Line].Belt)
				impends = needed + ": "
			} else {
				needed, greatest = "the friction needed at "+c.Subject, "μN = "+units.Compact(p.Joints[c.Joint].Friction)+" times the normal force"
				impends = "the friction at " + c.Subject + " where slip impends, "
			}
			if c.Impends {
				return impends + greatest
			}
			return needed + ", " + p.Format(c.Value, units.Force) + ", beside " + greatest + ", " + p.Format(c.Bound, units.Force)
		case statics.CheckBare:
			return "no line, joint, couple, distributed load or weight acts on " + c.Subject + ": it has no equations until one does"
		case statics.CheckSupport:
			_, nudge := p.Nudge(c.Point)
			return "the derivative of " + s.X[c.Unknown].Name + " with respect to the place of " + p.Points[c.Point].Name + ", times " + nudge + ", over its value"
		case statics.CheckLoad:
			return "the difference of two quadratures of " + c.Subject + ", of 15 points on every piece and on its halves, over the area under its intensity without sign, or the same of its moments = " + Tiny(c.Value)
		case statics.CheckTipping:
			return "where the normal force on " + c.Subject + " acts: the moment over the normal force, " + p.Percent(c.Value) + " of the way from the middle of the contact to " + c.About
		case statics.CheckTwoForce:
			return "the component of the force at one end of " + c.Subject + " perpendicular to the line of " + c.With + ", over the force = " + Tiny(c.Value) + rounding
		case statics.CheckThreeForce:
			return "how far the third line of action on " + c.Subject + " misses the other two, over the lengths = " + Tiny(c.Value) + rounding
		}
		return "tension, contact and friction conditions, over all values that satisfy the equations"
	}, "check", k)
}

// grip is e^(μβ) with its numbers put in.
func grip(p *problem.Problem, b *problem.Belt) string {
	return "e^(μβ) = e^(" + units.Compact(b.Friction) + " · " + units.Figures(b.Wrap, p.Figures) + ") = " + units.Figures(b.Ratio(), p.Figures)
}

// Ratio is the largest ratio of the tensions of a belt, by one of its lines.
func Ratio(s *statics.Solution, line int) doc.Origin {
	b := s.Problem.Lines[line].Belt
	return of(func() string {
		return "the largest ratio of the tensions of the belt " + b.Name + ", " + grip(s.Problem, b)
	}, "ratio", line)
}

// impends tells a line that is a part of a belt about to slip, the one that follows from the other.
func impends(p *problem.Problem, line int) bool {
	b := p.Lines[line].Belt
	return b != nil && b.Tight >= 0 && b.Lines[b.Tied] == line
}

// tension says how it follows.
func tension(p *problem.Problem, line int) string {
	b := p.Lines[line].Belt
	sign := " times "
	if b.Tied != b.Tight {
		sign = " over "
	}
	return p.Lines[line].Name + ", where slip of the belt impends: " + p.Lines[b.Lines[1-b.Tied]].Name + sign + grip(p, b)
}

// use is the utilisation of a limit.
func use(s *statics.Solution, c *statics.Check) string {
	p := s.Problem
	limit := p.Format(c.Bound, units.Force) + " (limit of " + c.Subject + ")"
	switch {
	case c.Open:
		return "its range was not computed, so it is not checked against " + limit
	case math.IsInf(c.Value, 0):
		return "unbounded: there is no largest value to check against " + limit
	}
	ratio := p.Format(c.Value, units.Force) + " of " + limit + " = " + p.Percent(c.Value/c.Bound)
	if s.Degree > 0 {
		return "the largest magnitude, " + ratio
	}
	return ratio
}

// Answer is a number of answer k: the computed value beside the reference.
func Answer(s *statics.Solution, k int) doc.Origin {
	return of(func() string {
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
	}, "answer", k)
}
