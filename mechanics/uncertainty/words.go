package uncertainty

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Meaning says what the numbers mean and where the worst case was looked for, in
// sentences without their full stops, for every report alike.
func (t *Effect) Meaning() []string {
	return []string{
		"each ± is used as typed, whether it is a tolerance or a standard deviation. " +
			"Independent: each input is moved to both ends of its ± in turn, and the changes are combined as the root of the sum of their squares",
		t.Searched(),
	}
}

// Searched says what the worst case is and where it was looked for.
func (t *Effect) Searched() string {
	says := "worst case: all inputs at their adverse ends, from "
	switch n := len(t.Measured); {
	case n == 1:
		says += "both ends of the ±"
	case t.Search.All:
		says += fmt.Sprintf("all %d combinations of the ends of the ±", t.Search.Corners)
	case t.Search.Corners == 0:
		says += "each input moved by itself: each solution takes too long for combinations"
	default:
		says += fmt.Sprintf("%d of the 2^%d combinations of the ends of the ±, first those that single inputs point to, then random ones", t.Search.Corners, n)
	}
	if t.Search.Inside {
		says += ", and from between the ends wherever a result has an extreme there"
	} else {
		says += "; between the ends it was searched only in part"
	}
	if !t.Search.All {
		says += ". A worse one is possible"
	}
	return says
}

// shown is to how many figures a ± is printed: more claims what nobody knows.
const shown = 2

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
	return t.Measured[s.Mostly].Words()
}

// ValueText is a result in the sheet's unit and figures.
func (t *Effect) ValueText(s *Spread) string {
	return t.Solution.Problem.Format(s.Value, s.Dim)
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
		return max(n, min(fine, units.ReliableFigures))
	}
	u := t.unit(s)
	return u.Format(s.Low, place(s.Low)), u.Format(s.High, place(s.High))
}

func (t *Effect) unit(s *Spread) units.Unit { return t.Solution.Problem.Units.For(s.Dim) }

// Words says what the ± of the inputs may bring about, and what is not said of it. It
// is empty where all holds.
func (t *Effect) Words() []string { return append(t.Notes(), t.AtRisk()...) }

// Notes says where the answer is better than as typed, and what there is nothing to say of.
func (t *Effect) Notes() (out []string) {
	if !t.TooMany && len(t.Spreads) == 0 {
		out = append(out, "no result has a single value or a bounded range, so the effect of the ± on the results is not shown")
	}
	return append(out, t.moved(true)...)
}

// moved says where the verdict is a better one, or else where it is another.
func (t *Effect) moved(better bool) (out []string) {
	for _, m := range t.Moves {
		if t.better(m) == better {
			out = append(out, t.moveWords(m))
		}
	}
	return out
}

// better tells a place with a single answer, or with admissible ones, where there is
// none as typed.
func (t *Effect) better(m Move) bool {
	worth := map[statics.Verdict]int{statics.Determinate: 2, statics.Resultant: 2, statics.Indeterminate: 1}
	return m.Solution != nil && worth[m.Solution.Verdict] > worth[t.Solution.Verdict]
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
			out = append(out, "expected to be at risk within the ±, but every check holds throughout")
		}
	case problem.FailedCheck, statics.Inadmissible.String(), statics.NoEquilibrium.String(): // it fails as typed
	default:
		out = append(out, say.Each(risks, func(says string) string { return "at risk: " + says })...)
	}
	return out
}

// AtRisk says what holds as typed and may not within the ±: a verdict that is another
// somewhere, values without bound, limits that can be passed, what can go slack, slip
// or tip. What was not looked at is at risk too.
func (t *Effect) AtRisk() []string {
	if t.TooMany {
		return []string{fmt.Sprintf("%d inputs have a ±, too many to follow through %d equations, so their effect was not computed. "+
			"Try: one given for each measurement that several cells share", len(t.Measured), len(t.Solution.System.Rows))}
	}
	out := t.moved(false)
	if t.moreMoves {
		out = append(out, "other combinations of the inputs change the verdict as well")
	}
	out = append(out, say.Each(t.gaps, t.gapWords)...)
	known := slices.ContainsFunc(t.Moves, func(m Move) bool { return m.Solution != nil && stateless(m.Solution) })
	for i := range t.Checks {
		r := &t.Checks[i]
		if !t.Risks(r) || t.Solution.Checks[r.Check].Kind == statics.CheckSenseRange && known {
			continue
		}
		out = append(out, t.reachWords(r))
	}
	return out
}

// Risks tells a check that holds as typed and not all over the box.
func (t *Effect) Risks(r *Reach) bool { return !r.OK && t.Solution.Checks[r.Check].OK }

// CheckAtRisk is Risks of a check of the solution; t may be nil.
func (t *Effect) CheckAtRisk(check int) bool {
	return t != nil && slices.ContainsFunc(t.Checks, func(r Reach) bool { return r.Check == check && t.Risks(&r) })
}

// PlaceWords says where a place is: "y 2 cm smaller and W 0.1 kN larger".
func (t *Effect) PlaceWords(p Place) string {
	var out []string
	for i, share := range p {
		if share == 0 {
			continue
		}
		way, much := "larger", t.Measured[i].Half
		if share < 0 {
			way = "smaller"
		}
		if size := math.Abs(share); size != 1 {
			much = units.Figures(100*size, shown) + " % of " + much
		}
		out = append(out, t.Measured[i].Name+" "+much+" "+way)
	}
	if more := len(out) - maxNamed; more > 1 {
		out = append(out[:maxNamed], fmt.Sprintf("%d others at an end of their ±", more))
	}
	return say.And(out...)
}

// maxNamed is how many inputs a place is described by.
const maxNamed = 6

func (t *Effect) gapWords(g gap) string {
	where := t.PlaceWords(g.At)
	if g.Share == 1 {
		return "with " + where + " the equations are nearly singular and the values are unbounded"
	}
	from := "the values as typed and those with"
	if i := g.At.single(); i >= 0 {
		from = t.Measured[i].Name + " as typed and"
	}
	return fmt.Sprintf("between %s %s, %s %% of the way, the equations are singular; near there the values are unbounded",
		from, where, units.Figures(100*g.Share, shown))
}

// moveWords says what the verdict is where it is another.
func (t *Effect) moveWords(m Move) string {
	with := "with " + t.PlaceWords(m.At) + " "
	if m.Solution == nil {
		return with + "the sheet cannot be read: " + m.Fault
	}
	switch m.Solution.Verdict {
	case statics.Inadmissible:
		if stateless(m.Solution) {
			return with + "no solution is admissible"
		}
		return with + "the system is not possible as drawn: " + say.And(m.Solution.Instead()...)
	case statics.NoEquilibrium:
		return with + "there is no equilibrium"
	}
	return with + "the system is " + m.Solution.Headline()
}

// reachWords says how a check could fail at the worst.
func (t *Effect) reachWords(r *Reach) string {
	p, c := t.Solution.Problem, t.Solution.Checks[r.Check]
	var value, bound, worst string
	known := finite(r.Value)
	if known {
		value, bound = p.Units.Force.Apart(r.Value, r.Bound, p.Figures)
	}
	says := c.Subject + " could "
	switch c.Kind {
	case statics.CheckSenseRange:
		says = "equilibrium may not be possible within the ±: for some values no solution is admissible"
	case statics.CheckLimit:
		limit := "its limit of "
		if r.Bound < c.Bound {
			limit = "its limit, which may be as low as "
		}
		if says += "reach " + value + " within the ±, above " + limit + bound; !known {
			says = c.Subject + " is unbounded within the ± and could exceed its limit of " + p.Format(c.Bound, units.Force)
		}
	case statics.CheckTipping:
		says += "tip about " + cmp.Or(r.About, c.About)
	case statics.CheckSense:
		does, would := "lift off", "pull"
		if c.Line >= 0 {
			switch p.Lines[c.Line].Kind.Info().Sense {
			case problem.PullOnly:
				does, would = "go slack", "push"
			case problem.PushOnly:
				does = "lose contact"
			}
		}
		says += does
		worst = ": in the worst case it would have to " + would + " (" + p.Format(-r.Value, units.Force) + ")"
	case statics.CheckBelt:
		says = "belt " + says + "slip"
		worst = ": its larger tension may be " + value + ", more than e^(μβ) times the smaller one, " + bound
	default:
		says += "slip"
		worst = ": equilibrium may require F = " + value + ", with μN = " + bound
	}
	if known {
		says += worst
	}
	if r.Mostly >= 0 {
		says += ", mostly from " + t.Measured[r.Mostly].Words()
	}
	return says
}
