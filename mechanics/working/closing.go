package working

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// verdict explains why there is no single solution, or none that is admissible.
func (b *builder) verdict() {
	s := b.s
	title, why := "Why there is no single solution", ""
	switch s.Verdict {
	case statics.Resultant:
		return
	case statics.Determinate:
		if len(s.Motions) == 0 {
			return
		}
		title = "Unrestrained motion"
	case statics.Indeterminate:
		why = "The equations can be satisfied, but they do not determine every unknown: statics alone cannot tell how the bodies share the load. Their stiffness would decide."
	case statics.NoEquilibrium:
		title = "Why there is no equilibrium"
	case statics.Inadmissible:
		title = "Why this is not possible as drawn"
	case statics.Unreadable:
		title = "Nothing to solve"
	}
	var body []doc.Block
	if why != "" {
		body = append(body, say(why))
	}
	says := s.Words()
	switch {
	case s.Verdict == statics.Determinate:
		says = says[1:] // that it is determinate was seen from the solution
	case s.Verdict == statics.Indeterminate && b.allAsked():
		says = slices.Delete(says, 1, 1+len(s.X)) // the ranges are the answers
	}
	for _, w := range says {
		body = append(body, sentence(w))
	}
	b.step(Verdict, title, Subject{}, body...)
}

// allAsked tells that each unknown is among the answers.
func (b *builder) allAsked() bool {
	for j := range b.s.X {
		if len(b.p.Asked) > 0 && !slices.ContainsFunc(b.p.Asked, func(q problem.Query) bool { return q.Kind == problem.AskUnknown && q.Unknown == j }) {
			return false
		}
	}
	return true
}

// sentence is a statement of another room as a sentence of its own.
func sentence(w string) doc.Block { return say(english.Capital(w) + ".") }

// checks show that the solution is right: the components add up, and the
// solution's own checks, but for what they say of the arithmetic.
func (b *builder) checks() {
	var body []doc.Block
	if b.fixed() && len(b.s.X) > 0 && !b.many() {
		for i := range b.p.CutFree() {
			if t := b.sums(i, false); t != nil {
				body = append(body, say("The forces on "+b.bodyWords(i)+" by components:"), t)
			}
		}
	}
	var forces, moments []int
	for k, c := range b.s.Checks {
		switch {
		case c.OK && saidElsewhere(c.Kind):
		case b.s.Verdict == statics.NoEquilibrium && (c.Kind == statics.CheckResidual || c.Kind == statics.CheckMoment): // the verdict says what is unbalanced
		case c.OK && c.Kind == statics.CheckThreeForce:
			body = append(body, b.threeForce(c, origin.Check(b.s, k)))
		case c.OK && c.Kind == statics.CheckResidual:
			forces = append(forces, b.bodyIndex(c.Subject))
		case c.OK && c.Kind == statics.CheckMoment:
			if i := b.bodyIndex(c.Subject); i >= 0 && !b.p.Bodies[i].Particle && b.balanced(c.Subject) {
				moments = append(moments, i)
			}
		default:
			body = append(body, held(c.OK, c.Says(b.p), origin.Check(b.s, k)))
		}
	}
	var balance []doc.Block
	if len(forces) > 0 {
		balance = append(balance, held(true, "Every equation of equilibrium is satisfied on "+b.bodiesWords(forces)+".", origin.Phrase("the residuals A x - b, over the largest force: zero but for rounding")))
	}
	if len(moments) > 0 {
		balance = append(balance, held(true, "Moments about a second point are also zero on "+b.bodiesWords(moments)+".", origin.Phrase("moments of all forces about a point of their own, over the largest: zero but for rounding")))
	}
	body = append(balance, body...)
	for k, a := range b.s.Answers {
		body = append(body, held(a.OK, a.SaysInWords(b.p), origin.Answer(b.s, k)))
	}
	b.step(Checks, "Checks", Subject{}, body...)
}

// balanced tells that no check of a sum on a body fails: beside one that fails, that another
// sum is zero shows nothing.
func (b *builder) balanced(body string) bool {
	return !slices.ContainsFunc(b.s.Checks, func(c statics.Check) bool {
		return !c.OK && c.Subject == body && (c.Kind == statics.CheckResidual || c.Kind == statics.CheckMoment)
	})
}

// saidElsewhere tells checks that hold and that other steps say, or that are of the arithmetic.
func saidElsewhere(k statics.CheckKind) bool {
	switch k {
	case statics.CheckUnit, statics.CheckCondition, statics.CheckTwoForce, statics.CheckSense, statics.CheckFriction, statics.CheckBelt:
		return true
	}
	return false
}

func (b *builder) threeForce(c statics.Check, from doc.Origin) doc.Block {
	of := "Three-force member " + c.Subject + ": the lines of action of its forces at " + c.With
	text := doc.Plain(of + " are parallel.")
	if c.Meets {
		l := b.p.Units.Length
		text = append(doc.Plain(of+" meet in one point, "), cell(measured(b.tuple(in(c.Meet, l), func(int) doc.Origin { return from }), l)), wordCell("."))
	}
	return &doc.Check{State: doc.Held(c.OK, false), Text: text, From: from}
}

func held(ok bool, says string, from doc.Origin) doc.Block {
	return &doc.Check{State: doc.Held(ok, false), Text: doc.Plain(says), From: from}
}
