package uncertainty

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Meaning says what the numbers mean and where the worst case was looked for, in
// sentences without their full stops, for every report alike.
func (t *Effect) Meaning() []string {
	return []string{
		"the ± is taken as typed, the limits of a measurement or its standard deviation. " +
			"Independent: each input is moved to both ends of its ± by itself, and what they do is added as the root of the sum of squares",
		t.Searched(),
	}
}

// Searched says where the worst case was looked for.
func (t *Effect) Searched() string {
	n, says := len(t.Measured), ""
	switch {
	case n == 1:
		says = "both ends of the ±"
	case t.Search.All:
		says = fmt.Sprintf("all %d combinations of the ends of the ±", t.Search.Corners)
	case t.Search.Corners == 0:
		says = "no combination of the ends of the ±: each solution takes too long. Each input was moved by itself"
	default:
		says = fmt.Sprintf("%d of the 2^%d combinations of the ends of the ±, chosen by the effects of single inputs, those on checks first, and then at random", t.Search.Corners, n)
	}
	if t.Search.Inside {
		says += ", and between them where a search found that a result turns back before its end"
	} else {
		says += "; the values between them only in part"
	}
	if !t.Search.All {
		says += ". A worse one is possible"
	}
	return "worst case: " + says
}

// shown is to how many figures a ± is printed: more claims what nobody knows.
const shown = 2

// From names an input with its ±: "h (± 2 cm)".
func (t *Effect) From(i int) string {
	return fmt.Sprintf("%s (± %s)", t.Measured[i].Name, t.Measured[i].Half)
}

// Label names a number that is followed: "T1", or "T1 least" for an end of its range.
func (s *Spread) Label() string { return strings.TrimSpace(s.Name + " " + s.End.String()) }

// Mostly names the input that does the most to a result by itself. It is empty where
// nothing changes it.
func (t *Effect) Mostly(s *Spread) string {
	switch {
	case !s.Changed:
		return ""
	case s.Mostly < 0:
		return "several together"
	}
	return t.From(s.Mostly)
}

// ValueText is a result in the sheet's unit and figures.
func (t *Effect) ValueText(s *Spread) string {
	return t.unit(s).Format(s.Value, t.Solution.Problem.Figures)
}

// PlusText is the independent ± of a result, "± 0.031 kN".
func (t *Effect) PlusText(s *Spread) string {
	if !s.Known() {
		return "no bound"
	}
	return "± " + t.unit(s).Format(s.Independent, shown)
}

// Ends are the least and the greatest value, to the place that the ± is printed to.
func (t *Effect) Ends(s *Spread) (low, high string) {
	if !s.Bounded() {
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

func (t *Effect) unit(s *Spread) units.Unit { return t.Solution.Problem.Units.For(s.Dim) }

// Words says what the ± of the inputs may bring about, and what is not said of it. It
// is empty where all holds.
func (t *Effect) Words() []string { return append(t.Notes(), t.AtRisk()...) }

// Notes says where the answer is better than as typed, and what there is nothing to say of.
func (t *Effect) Notes() (out []string) {
	if !t.TooMany && len(t.Spreads) == 0 {
		out = append(out, "no result has a single value or a bounded range here, so there is none to follow through the ± of the inputs")
	}
	for _, m := range t.Moves {
		if t.better(m) {
			out = append(out, t.MoveWords(m))
		}
	}
	return out
}

// better tells a place with a single answer, or with admissible ones, where there is
// none as typed.
func (t *Effect) better(m Move) bool {
	if m.Solution == nil {
		return false
	}
	switch t.Solution.Verdict {
	case statics.Indeterminate:
		return m.Solution.Verdict == statics.Determinate
	case statics.Inadmissible, statics.NoEquilibrium:
		return m.Solution.Verdict == statics.Determinate || m.Solution.Verdict == statics.Indeterminate
	}
	return false
}

// Failures says in words what is not as it should be with a solution and with what
// the ± of the inputs does to it; t is nil where no input has one. What is at risk
// counts like a check that fails: a limit that can be passed within the ± is not kept.
func Failures(s *statics.Solution, t *Effect) []string {
	out := s.Failures()
	var risks []string
	if t != nil {
		risks = t.AtRisk()
	}
	switch expected := s.Problem.Expect; expected {
	case problem.AtRisk:
		if len(risks) == 0 {
			out = append(out, "expected to be at risk within the ±, and it is not")
		}
	case problem.FailedCheck, statics.Inadmissible.String(), statics.NoEquilibrium.String(): // it fails as typed
	default:
		for _, says := range risks {
			out = append(out, "at risk: "+says)
		}
	}
	return out
}

// AtRisk says what holds as typed and may not within the ±: a verdict that is another
// somewhere, values without bound, limits that can be passed, what can go slack, slip
// or tip. What was not looked at is at risk too.
func (t *Effect) AtRisk() []string {
	if t.TooMany {
		return []string{fmt.Sprintf("%d inputs have a ±, more than are followed in a problem of %d equations: nothing is said of what they do; "+
			"write a measurement that several cells share as one given", len(t.Measured), len(t.Solution.System.Rows))}
	}
	var out []string
	for _, m := range t.Moves {
		if !t.better(m) {
			out = append(out, t.MoveWords(m))
		}
	}
	if t.MoreMoves {
		out = append(out, "other combinations of the inputs change the verdict too")
	}
	for _, g := range t.Gaps {
		out = append(out, t.gapWords(g))
	}
	told := slices.ContainsFunc(t.Moves, func(m Move) bool { return m.Solution != nil && stateless(m.Solution) })
	for i := range t.Checks {
		r := &t.Checks[i]
		if !t.Risks(r) || t.Solution.Checks[r.Check].Kind == statics.CheckSenseRange && told {
			continue
		}
		out = append(out, t.ReachWords(r))
	}
	return out
}

// Risks tells a check that holds as typed and not all over the box.
func (t *Effect) Risks(r *Reach) bool { return !r.OK && t.Solution.Checks[r.Check].OK }

// CheckAtRisk is Risks of a check of the solution; t may be nil.
func (t *Effect) CheckAtRisk(check int) bool {
	return t != nil && slices.ContainsFunc(t.Checks, func(r Reach) bool { return r.Check == check && t.Risks(&r) })
}

// PlaceWords says where a place is: "y 2 cm less and W 0.1 kN greater".
func (t *Effect) PlaceWords(p Place) string {
	var out []string
	for i, share := range p {
		if share == 0 {
			continue
		}
		way, much := "greater", t.Measured[i].Half
		if share < 0 {
			way = "less"
		}
		if size := math.Abs(share); size != 1 {
			much = units.Figures(100*size, shown) + " % of " + much
		}
		out = append(out, t.Measured[i].Name+" "+much+" "+way)
	}
	if more := len(out) - mostNamed; more > 1 {
		out = append(out[:mostNamed], fmt.Sprintf("%d others at an end of their ±", more))
	}
	return list(out)
}

// mostNamed is how many inputs a place is told by.
const mostNamed = 6

func list(of []string) string {
	if n := len(of) - 1; n > 0 {
		return strings.Join(of[:n], ", ") + " and " + of[n]
	}
	return strings.Join(of, "")
}

func (t *Effect) gapWords(g Gap) string {
	where := t.PlaceWords(g.At)
	if g.Share == 1 {
		return "with " + where + " there is next to no single solution: values grow beyond all bounds"
	}
	from := "the values as typed and those with"
	if i := g.At.single(); i >= 0 {
		from = t.Measured[i].Name + " as typed and"
	}
	return fmt.Sprintf("between %s %s there is a place without a single solution, at %s %% of the way: near it values grow beyond all bounds",
		from, where, units.Figures(100*g.Share, shown))
}

// MoveWords says what the verdict is where it is another.
func (t *Effect) MoveWords(m Move) string {
	with := "with " + t.PlaceWords(m.At) + " "
	if m.Solution == nil {
		return with + "the sheet does not read: " + m.Fault
	}
	switch m.Solution.Verdict {
	case statics.Determinate:
		return with + "it is determinate"
	case statics.Inadmissible:
		if stateless(m.Solution) {
			return with + "no state is admissible"
		}
		return with + "it is inadmissible: " + names(m.Solution.Broken) + " cannot act that way"
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
func (t *Effect) ReachWords(r *Reach) string {
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
			return fmt.Sprintf("%s has no greatest value within the ± to hold against its limit of %s%s", c.Subject, force(c.Bound), from)
		}
		value, bound := apart(p.Units.Force, r.Value, r.Bound, p.Figures)
		limit := "its limit of " + bound
		if r.Bound < c.Bound {
			limit = "its limit, which may be as little as " + bound
		}
		return fmt.Sprintf("%s could reach %s within the ±, beyond %s%s", c.Subject, value, limit, from)
	case statics.CheckSenseRange:
		return "equilibrium may not be possible within the ±: somewhere no state is admissible" + from
	case statics.CheckBelt:
		if !finite(r.Value) {
			return "belt " + c.Subject + " could slip" + from
		}
		value, bound := apart(p.Units.Force, r.Value, r.Bound, p.Figures)
		return fmt.Sprintf("belt %s could slip: its larger tension may be %s, beyond the smaller one times e^(μβ), %s%s", c.Subject, value, bound, from)
	case statics.CheckFriction:
		if !finite(r.Value) {
			return c.Subject + " could slip" + from
		}
		value, bound := apart(p.Units.Force, r.Value, r.Bound, p.Figures)
		return fmt.Sprintf("%s could slip: it may need up to %s of friction, with no more than %s available%s", c.Subject, value, bound, from)
	}
	return fmt.Sprintf("%s could tip about %s%s", c.Subject, cmp.Or(r.About, c.About), from)
}

// apart prints two numbers to as many figures as tell them apart.
func apart(u units.Unit, a, b float64, figures int) (string, string) {
	for n := figures; ; n++ {
		x, y := u.Format(a, n), u.Format(b, n)
		if x != y || n >= mostFigures {
			return x, y
		}
	}
}
