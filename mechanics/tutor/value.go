package tutor

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// valueOf judges the value of a result.
func (t *Practice) valueOf(q problem.Query, text string, at int) Judgement {
	j := Judgement{Kind: ValueKind, on: t.concerned(q.Of)}
	switch q.Kind {
	case problem.AskLength:
		j.Kind = LengthKind
	case problem.AskAngle:
		j.Kind = AngleKind
	}
	text = strings.TrimRight(text, " ")
	in := len(text) - len(strings.TrimLeft(text, " "))
	v, err := t.Problem.ReadWritten(q, text, t.Problem.Units.For(q.Dim), false)
	if err != nil {
		return unread(j.Kind, moved(t.named(err, text[in:]), at+in))
	}
	if v.Dim != q.Dim && v.Dim == units.Number {
		v.Value *= t.Problem.Units.For(q.Dim).Factor
	} else if v.Dim != q.Dim {
		e := units.Scalar(v.Value, v.Dim)
		_, err := units.Want(e, q.Dim, t.Problem.Units.For(q.Dim), diag.Whole(text))
		if err != nil {
			return unread(j.Kind, moved(err, at))
		}
	}
	exact, ferr := t.solution.Evaluate(q)
	if ferr != nil {
		exact = math.NaN() // no value is right, and why is what the student is to find
	}
	given := q.Near(v.Value, exact)
	half := valueHalf(text, v.Printed)
	if q.Of.Thing == problem.AnUnknown && q.Kind == problem.AskValue {
		t.values[q.Of.Index] = v.Value
	}
	switch off := math.Abs(given - exact); {
	case off <= half+rounding*math.Max(math.Abs(exact), t.smallest(q.Dim)):
		j.Verdict, j.Says = Right, q.Name+" is right."
		t.done[q.Name] = true
		if q.Of.Thing == problem.AnUnknown && q.Kind == problem.AskValue {
			t.found[q.Of.Index] = v.Value
		}
		return j
	case off <= near*math.Abs(exact):
		j.Verdict, j.Mistake = Imprecise, &Mistake{"figures", q.Name}
		j.Says = q.Name + " is close, but not right to the digits typed: give three significant figures, and carry more on the way."
		return j
	}
	j.Verdict = Wrong
	return t.wrongValue(j, q, v.Printed, given, exact, half)
}

// smallest is what counts as nothing beside the loads.
func (t *Practice) smallest(d units.Dim) float64 {
	switch d {
	case units.Force:
		return t.load()
	case units.Moment:
		return t.load() * t.extent()
	}
	return 1
}

// valueHalf is how far a value may be off by its digits: half a unit of the last one, or
// of the third significant figure where that is less.
func valueHalf(text string, v units.Printed) float64 {
	lits := literals(text)
	if len(lits) == 1 && lits[0].value != 0 {
		return lits[0].half * math.Abs(v.Value/lits[0].value)
	}
	if v.Value == 0 {
		return 0
	}
	return 0.5 * math.Pow(10, math.Floor(math.Log10(math.Abs(v.Value)))-figures+1)
}

// wrongValue looks for what a wrong value comes from: the student's own equations, then the
// sums that are entered, then the mistakes that are usual.
func (t *Practice) wrongValue(j Judgement, q problem.Query, typed units.Printed, given, exact, half float64) Judgement {
	same := func(v float64) bool { return math.Abs(given-v) <= math.Max(half, 0.005*math.Abs(v)) && v != 0 }
	if q.Of.Thing == problem.AnUnknown && q.Kind == problem.AskValue {
		if says := t.carriedFrom(q.Of.Index, given, half); says != "" {
			j.Mistake, j.Says = &Mistake{"carried", q.Name}, q.Name+" follows from your equations; "+says+"."
			return j
		}
	}
	for i := range t.Problem.Joints {
		normal, friction, ok := t.frictionAt(i)
		if ok && q.Kind == problem.AskValue && q.Of.Thing == problem.AnUnknown && q.Of.Index == friction && t.solution.Unique() && same(math.Copysign(t.Problem.Joints[i].Friction*t.solution.X[normal].Value, given)) {
			return t.notImpending(j, i)
		}
	}
	type cause struct {
		kind MistakeKind
		v    float64
		says string
	}
	scale := q.Name + " is off by a factor of 1000: look at its unit."
	other := q.Name + " is right in another unit than the one typed: look at the unit."
	mass := q.Name + " is off by a factor of g: weight is mass times g."
	var causes []cause
	if q.Part == problem.Size || q.Kind == problem.AskMagnitude || q.Kind == problem.AskLength {
		causes = append(causes, cause{"magnitude", -exact, q.Name + " is a magnitude: give it without a sign."})
		for _, v := range t.componentsOf(q) {
			causes = append(causes, cause{"magnitude", v, q.Name + " is the magnitude of the force, not one of its components."})
		}
	}
	if q.Kind == problem.AskLength && len(t.Problem.Lines[q.Of.Index].Legs) > 0 {
		r := t.Problem.Lines[q.Of.Index].Legs[0].R
		for k, e := range axes {
			causes = append(causes, cause{"missing-coordinate", r3.Norm(r3.Sub(r, r3.Scale(problem.Component(r, k), e))), "A coordinate is missing from the length of r."})
		}
	}
	if typed.Symbol != "" && typed.Factor != 0 {
		causes = append(causes, cause{"units", exact * typed.Factor / t.Problem.Units.For(q.Dim).Factor, other})
	}
	causes = append(causes, cause{"sign", -exact, "Look at the sign of " + q.Name + ": in which sense is it positive?"},
		cause{"factor-1000", 1000 * exact, scale}, cause{"factor-1000", exact / 1000, scale},
		cause{"gravity", exact * t.Problem.G, mass}, cause{"gravity", exact / t.Problem.G, mass})
	for _, by := range exchanged(q.Dim) {
		causes = append(causes, cause{"units", exact * by, other}, cause{"units", exact / by, other})
	}
	for _, c := range causes {
		if exact != 0 && same(c.v) {
			j.Mistake, j.Says = &Mistake{c.kind, q.Name}, c.says
			return j
		}
	}
	if slip, ok := slips[SlipOf(given, exact, figuresOf(typed, given), func(a, b float64) bool { return math.Abs(a-b) <= half })]; ok && q.Kind != problem.AskAngle {
		j.Mistake, j.Says = &Mistake{slip.kind, q.Name}, q.Name+slip.says
		return j
	}
	if q.Kind == problem.AskLength || q.Kind == problem.AskAngle || q.Kind == problem.AskUnit {
		j.Says = q.Name + " is not right. Look at the coordinates of the points."
		return j
	}
	if says := t.residuals(); says != "" {
		j.Says = says
		return j
	}
	j.Says = q.Name + " is not right. Put it into one of your equations."
	if len(t.rows) == 0 {
		j.Says = q.Name + " is not right. Try: an equation first, then its value"
	}
	return j
}

// exchanged are the factors between units that people take for one another: a pound and a
// newton, a foot, an inch and a metre, a degree and a radian.
func exchanged(d units.Dim) []float64 {
	of := func(symbol string) float64 {
		u, _ := units.Find(symbol)
		return u.Factor
	}
	switch d {
	case units.Force:
		return []float64{of("lbf")}
	case units.Length:
		return []float64{of("ft"), of("in"), of("ft") / of("in")}
	case units.Angle:
		return []float64{of("deg")}
	case units.Moment:
		return []float64{of("lbf") * of("ft"), of("lbf") * of("in"), of("ft") / of("in")}
	}
	return nil
}

// componentsOf are those of the force that a magnitude is asked of.
func (t *Practice) componentsOf(q problem.Query) (all []float64) {
	if q.Kind != problem.AskPart {
		return nil
	}
	f, _, err := t.solution.ForceOf(q.Of)
	if err != nil {
		return nil
	}
	for k := range axes {
		v := problem.Component(f, k)
		all = append(all, v, -v)
	}
	return all
}

// slips are what is said of a number that is the right one but for a slip.
var slips = map[NumberSlip]struct {
	kind MistakeKind
	says string
}{
	Twice: {"factor-2", " is off by a factor of 2."}, Half: {"factor-2", " is off by a factor of 2."},
	Point: {"decimal-point", " is right but for the place of the decimal point."}, Exchanged: {"digits-exchanged", " is right but for two digits that are exchanged."},
}

// figuresOf is with how many figures a value is typed.
func figuresOf(typed units.Printed, value float64) int {
	if !typed.Number || value == 0 || typed.Half == 0 {
		return figures
	}
	return int(math.Floor(math.Log10(math.Abs(value)))-math.Round(math.Log10(2*typed.Half))) + 1
}

// carriedFrom says what a value comes from that satisfies an equation of the student's with
// the other values as typed: the equation is wrong, or one of those values; "" where it
// satisfies none.
func (t *Practice) carriedFrom(unknown int, given, half float64) string {
	n := len(t.Problem.Unknowns)
	says := ""
	for _, w := range t.equation {
		if w.c[unknown] == 0 {
			continue
		}
		left, all := w.c[n], true
		var wrong []string
		for u := range n {
			if w.c[u] == 0 || u == unknown {
				continue
			}
			v, ok := t.values[u]
			all = all && ok
			left += w.c[u] * v
			if name := t.Problem.Unknowns[u].Name; !t.done[name] {
				wrong = append(wrong, name)
			}
		}
		v := -left / w.c[unknown]
		switch {
		case !all || v == 0 || math.Abs(given-v) > math.Max(half, 0.005*math.Abs(v)):
		case !t.holds(w):
			return "the equation " + strings.TrimSpace(w.text) + " is wrong"
		case len(wrong) > 0:
			says = say.And(wrong...) + " " + say.Plural(len(wrong), "is") + " wrong"
		}
	}
	return says
}

// residuals puts the values typed so far into the sums that were entered rightly.
func (t *Practice) residuals() string {
	p := t.Problem
	n := len(p.Unknowns)
	var holds, off []string
	seen := map[string]bool{}
	for _, e := range t.Entries {
		if e.sum == nil || seen[e.Is] {
			continue
		}
		seen[e.Is] = true
		row := e.sum.exact(t.forces, n)
		left, biggest, all := row[n], math.Abs(row[n]), true
		for u := range n {
			v, ok := t.values[u]
			if row[u] == 0 {
				continue
			}
			all = all && ok
			left += row[u] * v
			biggest = math.Max(biggest, math.Abs(row[u]*v))
		}
		if !all {
			continue
		}
		d := units.Force
		if e.sum.moment {
			d = units.Moment
		}
		if math.Abs(left) <= 0.01*biggest {
			holds = append(holds, e.Is)
		} else {
			off = append(off, e.Is+" is off by "+p.Format(math.Abs(left), d))
		}
	}
	kept := ""
	switch {
	case len(off) == 0:
		return ""
	case len(holds) == 1:
		kept = holds[0] + " holds, "
	case len(holds) > 1:
		kept = say.And(holds...) + " hold, "
	}
	return "With your values " + kept + say.And(off...) + "."
}

// verdictAnswer is the name under which a right verdict counts.
const verdictAnswer = "verdict"

// verdict judges what is said of the problem as a whole.
func (t *Practice) verdict(text string) Judgement {
	j := Judgement{Kind: VerdictOf}
	s := t.solution
	all := strings.Fields(strings.ToLower(text))
	words := strings.Fields(text)
	at := func(noun string, word int, what problem.Thing) (problem.Source, *diag.Error) {
		of, err := t.find(noun, words[word], what)
		if err != nil {
			from := strings.LastIndex(text, words[word])
			if word == 0 {
				from = strings.Index(text, words[word])
			}
			err.Span = diag.Between(from, from+len(words[word]))
		}
		return of, err
	}
	look := "Count the unknowns and the equations"
	answer := func(right bool) Judgement {
		if right {
			j.Verdict, j.Says = Right, "That is right."
			t.done[verdictAnswer] = true
			return j
		}
		j.Verdict, j.Says = Wrong, "That is not so. "+look+"."
		return j
	}
	switch {
	case len(all) == 1 && all[0] == "determinate" || len(all) == 2 && all[0] == "statically" && all[1] == "determinate":
		return answer(s.Verdict == statics.Determinate)
	case len(all) >= 1 && all[0] == "indeterminate" && len(all) <= 2:
		if len(all) == 2 && all[1] != fmt.Sprint(s.Degree) {
			return answer(false)
		}
		return answer(s.Verdict == statics.Indeterminate)
	case len(all) == 1 && all[0] == "inadmissible":
		look = "Look at the senses that each cable and each contact can have"
		return answer(s.Verdict == statics.Inadmissible)
	case len(all) == 2 && all[0] == "no" && all[1] == "equilibrium":
		look = "Look at the motions that the supports prevent"
		return answer(s.Verdict == statics.NoEquilibrium)
	case len(words) == 2 && all[1] == "slack":
		of, err := at("line", 0, problem.ALine)
		if err != nil {
			return unread(VerdictOf, err)
		}
		look = "Look at the sense that " + words[0] + " can have"
		return answer(t.broken(statics.Sense, of))
	case len(words) == 2 && all[1] == "slips":
		of, err := at("joint", 0, problem.AJoint)
		if err != nil {
			return unread(VerdictOf, err)
		}
		look = "Compare the friction that equilibrium requires at " + words[0] + " with the friction available"
		return answer(t.broken(statics.Friction, of))
	case len(words) == 3 && all[0] == "tips" && all[1] == "about":
		if _, err := at("point", 2, problem.APoint); err != nil {
			return unread(VerdictOf, err)
		}
		look = "Look at where the normal force acts"
		return answer(slices.ContainsFunc(s.Checks, func(c statics.Check) bool { return c.Kind == statics.CheckTipping && !c.OK && c.About == words[2] }))
	}
	return unread(NoKind, t.noForm(text))
}

// broken tells whether a condition of a kind is violated at a line or a joint.
func (t *Practice) broken(kind statics.ConditionKind, of problem.Source) bool {
	return slices.ContainsFunc(t.solution.Broken, func(c statics.Condition) bool {
		return c.Kind == kind && (of.Thing == problem.ALine && c.Line == of.Index || of.Thing == problem.AJoint && c.Joint == of.Index)
	})
}

// find finds what a name of an entry stands for.
func (t *Practice) find(noun, name string, what problem.Thing) (problem.Source, *diag.Error) {
	if of, ok := t.Problem.Find(name, what); ok {
		return of, nil
	}
	return problem.Source{}, t.noSuch(noun, name, what)
}

// noSuch says that a name stands for nothing of a kind.
func (t *Practice) noSuch(noun, name string, what problem.Thing) *diag.Error {
	known := t.Problem.Names(what)
	if len(known) == 0 {
		return diag.New("the sheet has no "+say.Plural(2, noun), "an entry about what it has, such as "+t.valueExample())
	}
	return diag.New("there is no "+noun+" "+strconv.Quote(name), suggested(name, known))
}

// noForm says that a line is none of the entries.
func (t *Practice) noForm(text string) *diag.Error {
	return diag.At(diag.Whole(text), strconv.Quote(strings.TrimSpace(text))+" is not an entry", "an equation such as "+t.claimExample()+", or a value such as "+t.valueExample())
}

func (t *Practice) valueExample() string {
	for _, q := range t.asked() {
		return q.Name + " = ... " + t.Problem.Units.For(q.Dim).Symbol
	}
	return "T1 = ... kN"
}
