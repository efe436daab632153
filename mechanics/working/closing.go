package working

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	english "trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// verdictTitles are the titles of what has no single solution, or none that is admissible.
var verdictTitles = map[statics.Verdict]string{
	statics.Determinate:   "Unrestrained motion",
	statics.Indeterminate: "Why there is no single solution",
	statics.NoEquilibrium: "Why there is no equilibrium",
	statics.Inadmissible:  "Why this is not possible as drawn",
	statics.Unreadable:    "Nothing to solve",
}

// verdict explains why there is no single solution, or none that is admissible.
func (b *builder) verdict() {
	var body []doc.Block
	says := b.s.Words()
	switch v := b.s.Verdict; {
	case v == statics.Resultant, v == statics.Determinate && len(b.s.Motions) == 0:
		return
	case v == statics.Determinate:
		says = says[1:] // that it is determinate was seen from the solution
	case v == statics.Indeterminate:
		body = append(body, say("The equations can be satisfied, but they do not determine every unknown: statics alone cannot tell how the bodies share the load. Their stiffness would decide."))
		if !slices.Contains(b.named, false) {
			says = slices.Delete(says, 1, 1+len(b.s.X)) // the ranges are the answers
		}
	}
	for _, w := range says {
		body = append(body, sentence(w))
	}
	b.step(Verdict, verdictTitles[b.s.Verdict], Subject{}, body...)
}

// sentence is a statement of another room as a sentence of its own.
func sentence(w string) doc.Block { return say(english.Capital(w) + ".") }

// saidElsewhere are the checks that other steps say where they hold, or that are of the arithmetic.
var saidElsewhere = []statics.CheckKind{
	statics.CheckUnit, statics.CheckCondition, statics.CheckTwoForce, statics.CheckSense, statics.CheckFriction, statics.CheckBelt,
}

// checks show that the solution is right: the components add up, and the
// solution's own checks, but for what they say of the arithmetic.
func (b *builder) checks() {
	var balance, body []doc.Block
	if b.fixed() && len(b.s.X) > 0 && !b.many() {
		for i := range b.p.CutFree() {
			if t := b.sums(i, false); t != nil {
				body = append(body, say("The forces on "+b.bodyWords(i)+" by components:"), t)
			}
		}
	}
	var forces, moments []int
	for k, c := range b.s.Checks {
		switch sum := c.Kind == statics.CheckResidual || c.Kind == statics.CheckMoment; {
		case c.OK && slices.Contains(saidElsewhere, c.Kind):
		case sum && b.s.Verdict == statics.NoEquilibrium: // the verdict says what is unbalanced
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

func (b *builder) threeForce(c statics.Check, from doc.Origin) doc.Block {
	of := english.Capital(b.bodyWords(b.bodyIndex(c.Subject))) + " is a three-force member: the lines of action of its forces at " + c.With
	text := doc.Plain(of + " are parallel.")
	if c.Meets {
		l := b.p.Units.Length
		text = append(doc.Plain(of+" are concurrent at "), cell(measured(b.tuple(in(c.Meet, l), func(int) doc.Origin { return from }), l)), wordCell("."))
	}
	return &doc.Check{State: doc.Held(c.OK, false), Text: text, From: from}
}

func held(ok bool, says string, from doc.Origin) doc.Block {
	return &doc.Check{State: doc.Held(ok, false), Text: doc.Plain(says), From: from}
}
