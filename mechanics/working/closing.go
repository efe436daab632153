package working

import (
	"slices"

	"trivet/mechanics/doc"
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
		title, why = "Unrestrained motion", "Each unknown has one value, although a motion is not prevented."
	case statics.Indeterminate:
		why = "The equations can be satisfied, but they do not determine every unknown: statics alone cannot tell how the bodies share the load. Their stiffness would decide."
	case statics.NoEquilibrium:
		title, why = "Why there is no equilibrium", "No values of the unknowns satisfy every equation, so the body would move."
	case statics.Inadmissible:
		title, why = "Why this is not possible as drawn", "The equations have a solution, but it requires a force that a cable, a strut, a contact or friction cannot exert."
		if s.Degree > 0 {
			why = "The equations have many solutions, but each requires a force that a cable, a strut, a contact or friction cannot exert."
		}
	case statics.Unreadable:
		title = "Nothing to solve"
	}
	var body []doc.Block
	if why != "" {
		body = append(body, say(why))
	}
	for _, w := range s.Words() {
		body = append(body, sentence(w))
	}
	b.step(Verdict, title, Subject{}, body...)
}

// sentence is a statement of another room as a sentence of its own.
func sentence(w string) doc.Block { return say(english.Capital(w) + ".") }

// checks show that the solution is right: the components add up, and the
// solution's own checks, but for what they say of the arithmetic.
func (b *builder) checks() {
	var body []doc.Block
	if b.fixed() && len(b.s.X) > 0 && !b.many() {
		for i := range b.p.CutFree() {
			if t := b.sums(i); t != nil {
				body = append(body, say("The forces on "+b.bodyWords(i)+" by components:"), t)
			}
		}
	}
	var forces, moments []string
	for _, c := range b.s.Checks {
		switch {
		case c.OK && saidElsewhere(c.Kind):
		case c.OK && c.Kind == statics.CheckThreeForce:
			body = append(body, b.threeForce(c))
		case c.OK && c.Kind == statics.CheckResidual:
			forces = append(forces, c.Subject)
		case c.OK && c.Kind == statics.CheckMoment:
			if i := slices.IndexFunc(b.p.Bodies, func(x problem.Body) bool { return x.Name == c.Subject }); i >= 0 && !b.p.Bodies[i].Particle {
				moments = append(moments, c.Subject)
			}
		default:
			body = append(body, held(c.OK, c.Says(b.p)))
		}
	}
	var balance []doc.Block
	if len(forces) > 0 {
		balance = append(balance, held(true, "Every equation of equilibrium is satisfied on "+english.AndMore(forces, tabledJoints)+"."))
	}
	if len(moments) > 0 {
		balance = append(balance, held(true, "Moments about a second point are also zero on "+english.AndMore(moments, tabledJoints)+"."))
	}
	body = append(balance, body...)
	for _, a := range b.s.Answers {
		body = append(body, held(a.OK, a.SaysInWords(b.p)))
	}
	b.step(Checks, "Checks", Subject{}, body...)
}

// saidElsewhere tells checks that hold and that other steps say, or that are of the arithmetic.
func saidElsewhere(k statics.CheckKind) bool {
	switch k {
	case statics.CheckUnit, statics.CheckCondition, statics.CheckTwoForce, statics.CheckSense, statics.CheckFriction:
		return true
	}
	return false
}

func (b *builder) threeForce(c statics.Check) doc.Block {
	of := "Three-force member " + c.Subject + ": the lines of action of its forces at " + c.With
	text := doc.Plain(of + " are parallel.")
	if c.Meets {
		l := b.p.Units.Length
		text = append(doc.Plain(of+" meet in one point, "), cell(measured(b.tuple(in(c.Meet, l)), l)), wordCell("."))
	}
	return &doc.Check{State: doc.Held(c.OK, false), Text: text}
}

func held(ok bool, says string) doc.Block {
	return &doc.Check{State: doc.Held(ok, false), Text: doc.Plain(says)}
}
