package trust

import (
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Meaning says what is shown, for every report alike.
const Meaning = "the ± is taken as typed, the limits of a measurement or its standard deviation. Each input is moved to both ends of its ± and all is solved anew. " +
	"Independent: the root of the sum of the squares of what each does; worst case: each at its worse end at once"

// shown is to how many figures a ± is printed: more claims what nobody knows.
const shown = 2

// From names an input with its ±: "h (± 2 cm)".
func (t *Trust) From(i int) string {
	return fmt.Sprintf("%s (± %s)", t.Measured[i].Name, t.Measured[i].Half)
}

// Mostly names the input that does the most to a result, or is empty where none does
// anything.
func (t *Trust) Mostly(s *Spread) string {
	if s.Mostly < 0 {
		return ""
	}
	return t.From(s.Mostly)
}

// ValueText is a result in the sheet's unit and figures.
func (t *Trust) ValueText(s *Spread) string {
	return t.unit(s).Format(s.Value, t.Solution.Problem.Figures)
}

// PlusText is the independent ± of a result, "± 0.031 kN".
func (t *Trust) PlusText(s *Spread) string { return t.plus(s, s.Independent) }

// WorstText is the worst case as a ±.
func (t *Trust) WorstText(s *Spread) string { return t.plus(s, s.Worst) }

func (t *Trust) plus(s *Spread, by float64) string {
	if !s.Known() {
		return "no bound"
	}
	return "± " + t.unit(s).Format(by, shown)
}

// Ends are the least and the greatest value, to the place that the ± is printed to.
func (t *Trust) Ends(s *Spread) (low, high string) {
	if !s.Known() {
		return "no bound", "no bound"
	}
	n := t.Solution.Problem.Figures
	place := func(v float64) int {
		if v == 0 {
			return n
		}
		fine := int(math.Floor(math.Log10(math.Abs(v)))) - int(math.Floor(math.Log10(max(s.Worst, math.SmallestNonzeroFloat64)))) + shown
		return max(n, min(fine, mostFigures))
	}
	u := t.unit(s)
	return u.Format(s.Low, place(s.Low)), u.Format(s.High, place(s.High))
}

// mostFigures is what a float64 holds, less what a solve costs.
const mostFigures = 12

func (t *Trust) unit(s *Spread) units.Unit { return t.Solution.Problem.Units.For(s.Dim) }

// Words says what the ± of the inputs may bring about: what there is no solution for,
// what goes slack or slips, which limit is passed. It is empty where all holds.
func (t *Trust) Words() []string {
	if t.TooMany {
		return []string{fmt.Sprintf("%d inputs have a ±, more than are followed in a problem of %d equations: nothing is said of what they do; "+
			"write a measurement that several cells share as one given", len(t.Measured), len(t.Solution.System.Rows))}
	}
	var out []string
	if len(t.Spreads) == 0 {
		out = append(out, "no result has a single value here, and what is free is not followed through the ± of the inputs")
	}
	for _, m := range t.Moves {
		out = append(out, t.MoveWords(m))
	}
	for _, g := range t.Gaps {
		m := t.Measured[g.Measured]
		way := "greater"
		if g.Share < 0 {
			way = "less"
		}
		out = append(out, fmt.Sprintf("between %[1]s as typed and %[1]s %[2]s %[3]s there is a place without a single solution, at %[4]s %% of the way: near it values grow beyond all bounds",
			m.Name, m.Half, way, units.Figures(100*g.Size(), shown)))
	}
	for i := range t.Checks {
		if r := &t.Checks[i]; !r.OK && t.Solution.Checks[r.Check].OK {
			out = append(out, t.ReachWords(r))
		}
	}
	return out
}

// MoveWords says what the verdict is with an input at an end of its ±.
func (t *Trust) MoveWords(m Move) string {
	way := "less"
	if m.Greater {
		way = "greater"
	}
	with := fmt.Sprintf("with %s %s %s ", t.Measured[m.Measured].Name, t.Measured[m.Measured].Half, way)
	if m.Solution == nil {
		return with + "the sheet does not read: " + m.Fault
	}
	switch m.Solution.Verdict {
	case statics.Determinate:
		return with + "every unknown has one value, and every sense is kept"
	case statics.Inadmissible:
		return with + "every unknown has one value, and " + names(m.Solution.Broken) + " cannot act that way"
	case statics.Indeterminate:
		return with + fmt.Sprintf("it is indeterminate to degree %d", m.Solution.Degree)
	case statics.NoEquilibrium:
		return with + "there is no equilibrium"
	}
	return with + "nothing is cut free"
}

func names(of []statics.Condition) string {
	var out []string
	for _, q := range of {
		out = append(out, q.Name)
	}
	return strings.Join(out, ", ")
}

// ReachWords says how a check could fail at the worst.
func (t *Trust) ReachWords(r *Reach) string {
	p := t.Solution.Problem
	c := t.Solution.Checks[r.Check]
	force := func(v float64) string { return p.Units.Force.Format(v, p.Figures) }
	from := ""
	if r.Mostly >= 0 {
		from = ", mostly from " + t.From(r.Mostly)
	}
	switch c.Kind {
	case statics.CheckSense:
		does, would := "lift off", "pull"
		if c.Line >= 0 {
			switch p.Lines[c.Line].Kind.Info().Sense {
			case problem.PullOnly:
				does, would = "go slack", "push"
			case problem.PushOnly:
				does = "come away"
			}
		}
		if !finite(r.Value) {
			return c.Subject + " could " + does + from
		}
		return fmt.Sprintf("%s could %s: at the worst it would have to %s with %s%s", c.Subject, does, would, force(-r.Value), from)
	case statics.CheckLimit, statics.CheckJointLimit:
		if !finite(r.Value) {
			return fmt.Sprintf("%s has no greatest value to hold against its limit of %s%s", c.Subject, force(c.Bound), from)
		}
		limit := "its limit of " + force(r.Bound)
		if r.Bound < c.Bound {
			limit = "its limit, which may be as little as " + force(r.Bound)
		}
		return fmt.Sprintf("%s could reach %s, beyond %s%s", c.Subject, force(r.Value), limit, from)
	case statics.CheckFriction:
		return fmt.Sprintf("%s could slip: it may need up to %s of friction, with no more than %s available%s", c.Subject, force(r.Value), force(r.Bound), from)
	}
	return fmt.Sprintf("%s could tip about %s%s", c.Subject, c.About, from)
}
