package statics

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// checkKinds are the kinds of checks: the name in the JSON contract, and what is said of one that
// holds and of one that fails, of its subject %[1]s, with an article %[2]s, its places %[3]s and
// the number found, %[4]g and %[5]s; or what says it.
var checkKinds = [...]struct {
	name, holds, fails string
	of                 string // what the number found is relative to, in words
	says               func(Check, *problem.Problem) string
	follows            bool // it fails because the verdict is what it is
}{
	CheckUnit:      {name: "unit vector", holds: "|u| = 1 for %[1]s, %[5]s", fails: "|u| for %[1]s is not 1: it is off by %.2[4]g"},
	CheckResidual:  {name: "sum of forces", says: Check.balanceSays, follows: true},
	CheckMoment:    {name: "sum of moments", says: Check.balanceSays, follows: true},
	CheckCondition: {name: "conditioning", says: Check.conditionSays},
	CheckSense:     {name: "sense", says: Check.senseSays, follows: true},
	CheckLimit:     {name: "limit", says: Check.limitSays},
	CheckFriction:  {name: "friction", says: Check.frictionSays, follows: true},
	CheckTipping:   {name: "tipping", says: Check.tippingWords, follows: true},
	CheckTwoForce: {name: "two-force member", holds: "%[2]s is a two-force member: its forces at %[3]s act along the line that joins them, %[5]s",
		fails: "%[2]s is a two-force member, but its forces at %[3]s do not act along the line that joins them: %.2[4]g of the force is perpendicular to it", of: "the force"},
	CheckThreeForce: {name: "three-force member", says: Check.threeForceSays},
	CheckSenseRange: {name: "senses", says: Check.rangeSays, follows: true},
	CheckBare:       {name: "forces", fails: "no force acts on %[2]s, so it is left out"},
	CheckSupport:    {name: "support", says: Check.supportWords},
	CheckLoad: {name: "distributed load", holds: "the resultant of the distributed load %[1]s is integrated numerically, %[5]s of its value",
		fails: "the resultant of the distributed load %[1]s is unreliable: its numerical integration is accurate to only %.1[4]e. Try: a separate load for each stretch where the intensity changes rapidly"},
	CheckBelt: {name: "belt", says: Check.beltWords, follows: true},
}

// Name is a check's name in the JSON contract: what it is about, and of what.
func (c Check) Name() string { return strings.TrimSpace(checkKinds[c.Kind].name + " " + c.Subject) }

// Again finds in this solution the check that is at a place among those of another one, of
// much the same problem: mostly in the same place.
func (s *Solution) Again(of *Solution, at int) (Check, bool) {
	c := of.Checks[at]
	alike := func(o Check) bool {
		return o.Kind == c.Kind && o.Subject == c.Subject && o.Line == c.Line && o.Joint == c.Joint
	}
	if at >= len(s.Checks) || !alike(s.Checks[at]) {
		at = slices.IndexFunc(s.Checks, alike)
	}
	if at < 0 {
		return Check{}, false
	}
	return s.Checks[at], true
}

// Says puts a check in words, numbers in the sheet's units.
func (c Check) Says(p *problem.Problem) string {
	kind := &checkKinds[c.Kind]
	format := kind.fails
	switch {
	case kind.says != nil:
		return kind.says(c, p)
	case c.OK:
		format = kind.holds
	}
	return fmt.Sprintf(format, c.Subject, say.The(c.Subject), c.With, c.Value, within(c.Value, kind.of))
}

// frictionSays compares the friction force with the greatest that there can be.
func (c Check) frictionSays(p *problem.Problem) string {
	switch {
	case c.Impends:
		return fmt.Sprintf("slip is impending at %s, as specified: F = μN = %s", c.Subject, p.Format(c.Value, units.Force))
	case !c.OK:
		needed, available := p.Units.Force.Apart(c.Value, c.Bound, p.Figures)
		return fmt.Sprintf("%s slips%s: equilibrium requires F = %s, but μN = %s", c.body(p), c.at(p), needed, available)
	}
	return fmt.Sprintf("%s does not slip%s: F = %s ≤ μN = %s", c.body(p), c.at(p), p.Format(c.Value, units.Force), p.Format(c.Bound, units.Force))
}

// threeForceSays says where three lines of action meet, or by how much they do not.
func (c Check) threeForceSays(p *problem.Problem) string {
	if !c.OK {
		return fmt.Sprintf("%s is a three-force member, but the lines of action of its forces at %s are neither concurrent nor parallel: they are off by %.2g of its length", say.The(c.Subject), c.With, c.Value)
	}
	are := "are parallel"
	if c.Meets {
		are = "are concurrent at " + p.Place(c.Meet)
	}
	return fmt.Sprintf("%s is a three-force member: the lines of action of its forces at %s %s, %s", say.The(c.Subject), c.With, are, within(c.Value, ""))
}

// rangeSays says whether what is undetermined has admissible values.
func (c Check) rangeSays(*problem.Problem) string {
	switch {
	case c.OK:
		return "equilibrium is possible: the undetermined unknowns have admissible values"
	case c.Open:
		return undecidedWords
	}
	return "no values of the undetermined unknowns are admissible"
}

// body names the body that a joint's check is about.
func (c Check) body(p *problem.Problem) string {
	return say.The(p.Bodies[p.Joints[c.Joint].First].Name)
}

// at says where a joint is; a particle is where it is.
func (c Check) at(p *problem.Problem) string {
	if p.Bodies[p.Joints[c.Joint].First].Name == c.Subject {
		return ""
	}
	return " at " + c.Subject
}

// conditionSays says how many figures the conditioning leaves.
func (c Check) conditionSays(p *problem.Problem) string {
	left := int(carried - c.Value)
	switch {
	case !c.OK:
		return fmt.Sprintf("ill conditioned: only about %s reliable, fewer than the %d shown", figuresAre(left), p.Figures)
	case c.Value > math.Log10(nearlyCond):
		return fmt.Sprintf("poorly conditioned, but about %s reliable", figuresAre(left))
	}
	return fmt.Sprintf("well conditioned: about %s reliable", figuresAre(left))
}

func figuresAre(n int) string { return say.Count(n, "figure") + " " + say.Plural(n, "is") }

// senseSays says which sense a line or a support has, and whether it can.
func (c Check) senseSays(p *problem.Problem) string {
	value, of := p.Format(math.Abs(c.Value), units.Force), c.Carrier(p)
	pushes := of.Sense == problem.PressOnly
	switch {
	case c.OK && c.Value <= 0: // less than counts as a sense
		return c.Subject + " = " + p.Format(0, units.Force) + ": no force"
	case c.OK && pushes:
		return c.Subject + " = " + value + ", pushing"
	case c.OK:
		return c.Subject + " = " + value + " in " + of.Positive
	case pushes:
		return c.Subject + " would have to pull (" + value + "), which a " + of.Name + " cannot do"
	}
	return c.Subject + " = " + value + " in " + of.Negative + ", which a " + of.Name + " cannot carry"
}

// Carrier is what the force of a check of a sense is in: a line by its kind, or a support,
// which can only push.
func (c Check) Carrier(p *problem.Problem) problem.KindInfo {
	if c.Line >= 0 {
		return p.Lines[c.Line].Kind.Info()
	}
	return problem.KindInfo{Name: p.Joints[c.Joint].Words(), Sense: problem.PressOnly, Positive: "push", Negative: "pull"}
}

// limitSays says how much of a limit is used.
func (c Check) limitSays(p *problem.Problem) string {
	limit := p.Format(c.Bound, units.Force)
	switch {
	case c.Open:
		return "the limit of " + c.Subject + ", " + limit + ", is not checked: its admissible range was not computed"
	case math.IsInf(c.Value, 1):
		return c.Subject + " is unbounded and can exceed its limit of " + limit
	}
	share, figures := 100*c.Value/c.Bound, p.Figures
	if !c.OK {
		figures = max(units.Unit{}.FiguresApart(share, 100, figures), p.Units.Force.FiguresApart(c.Value, c.Bound, figures))
	}
	used := units.Figures(share, figures) + " %"
	of := used + " of its limit of " + limit
	switch {
	case c.Ranged && !c.OK:
		return c.Subject + " could reach " + p.Units.Force.Format(c.Value, figures) + ", " + of
	case !c.OK:
		return c.Subject + " exceeds its limit of " + limit + ": utilisation " + used
	case c.Value == 0:
		return c.Subject + " is at " + of
	}
	verb := " is at "
	if c.Ranged {
		verb = " reaches at most "
	}
	return c.Subject + verb + of + "; reserve factor " + units.Figures(c.Bound/c.Value, p.Figures)
}

// balanceSays puts the check of a sum of forces or moments in words.
func (c Check) balanceSays(*problem.Problem) string {
	sum, of, on := "ΣF", "the largest force", " on "+say.The(c.Subject)
	switch {
	case c.Kind == CheckMoment:
		sum, of, on = "ΣM", "the largest moment", on+" about "+cmp.Or(c.About, "a second point")
	case c.About != "" && c.OK: // a rigid body's equations
		return fmt.Sprintf("ΣF = 0 and ΣM = 0 about %s%s, %s", c.About, on, within(c.Value, of))
	case c.About != "":
		return fmt.Sprintf("ΣF and ΣM about %s%s are not both zero: the residual is %s", c.About, on, share(c.Value, of))
	}
	if !c.OK {
		return fmt.Sprintf("%s%s is not zero: the residual is %s", sum, on, share(c.Value, of))
	}
	return fmt.Sprintf("%s = 0%s, %s", sum, on, within(c.Value, of))
}

// share compares a residual with what it is relative to.
func share(part float64, of string) string {
	if math.Abs(part-1) < 0.005 { // "1" to the two figures shown
		return "as large as " + of
	}
	return fmt.Sprintf("%.2g times %s", part, of)
}

// within says how near to zero a number is.
func within(off float64, of string) string {
	switch {
	case off == 0:
		return "exactly"
	case of == "":
		return fmt.Sprintf("to within %.1e", off)
	}
	return fmt.Sprintf("to within %.1e of %s", off, of)
}

// computedFigures is how many figures a computed value shows beside a printed
// one at least, so that it can be seen how near they are.
const computedFigures = 5

// minAnswer is how many a value that agrees shows at least beside a reference of fewer,
// or of a wide tolerance.
const minAnswer = 3

// ComputedText is the computed value beside a printed answer.
func (a AnswerCheck) ComputedText(p *problem.Problem) string {
	if a.Err != "" {
		return a.Err
	}
	return p.Units.For(a.Query.Dim).Format(a.Computed, max(computedFigures, p.Figures+2))
}

// Says puts a reference answer and what became of it in words: one that agrees is
// shown to as many figures as the reference has, and to minAnswer at least.
func (a AnswerCheck) Says(p *problem.Problem) string { return a.says(a.Query.Name, " = ", " ", p) }

// SaysInWords is Says with the result in words, as a page for students has it.
func (a AnswerCheck) SaysInWords(p *problem.Problem) string {
	if _, symbol := a.Query.Symbol(); symbol {
		return a.Says(p)
	}
	return a.says(say.Capital(names.Called(p, a.Query)), " is ", ", which ", p)
}

func (a AnswerCheck) says(name, is, which string, p *problem.Problem) string {
	switch {
	case a.Err != "" && a.errOf != a.Query.Name:
		return name + ": " + a.Err + ", but the reference is " + a.Printed
	case a.Err != "":
		return a.Err + ", but the reference is " + a.Printed
	case !a.OK:
		return name + is + a.ComputedText(p) + which + "differs from the reference " + a.Printed
	}
	figures := minAnswer
	if a.Computed != 0 && a.Half > 0 {
		figures = max(figures, 1+int(math.Log10(math.Abs(a.Computed)/(2*a.Half)*(1+answerSlack))))
	}
	return name + is + p.Units.For(a.Query.Dim).Format(a.Computed, figures) + which + "agrees with the reference " + a.Printed
}
