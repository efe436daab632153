package working

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// verdict explains why there is no single solution, or none that holds.
func (b *builder) verdict() {
	s := b.s
	if s.Verdict == statics.Determinate && len(s.Motions) == 0 || s.Verdict == statics.Resultant {
		return
	}
	why := ""
	switch s.Verdict {
	case statics.Indeterminate:
		why = "The equations hold, and they do not settle every unknown: statics alone cannot tell how the bodies share the load. How stiff they are would decide."
	case statics.NoEquilibrium:
		why = "No values of the unknowns make every sum zero: the body would move."
	case statics.Inadmissible:
		why = "The equations have a solution, but a cable, a strut, a contact or friction cannot exert the forces that it needs, so it is not what happens."
		if s.Degree > 0 {
			why = "The equations have many solutions, but of each a cable, a strut, a contact or friction cannot exert the forces that it needs."
		}
	case statics.Determinate:
		why = "The unknowns have one value each, although a motion is held by nothing."
	}
	var body []doc.Block
	if why != "" {
		body = append(body, say(why))
	}
	for k, w := range s.Words() {
		if k == 0 {
			w = strings.ToUpper(w[:1]) + w[1:]
		}
		body = append(body, say(sentence(w)))
	}
	title := "Why there is no single solution"
	switch s.Verdict {
	case statics.Determinate:
		title = "What is not held"
	case statics.Inadmissible:
		title = "Why this is not possible as drawn"
	case statics.NoEquilibrium:
		title = "Why there is no equilibrium"
	case statics.Unreadable:
		title = "Nothing to solve"
	}
	b.step(Verdict, title, Subject{}, body...)
}

// sentence ends words with a full stop.
func sentence(w string) string {
	for _, begin := range []string{"nothing ", "without ", "then ", "the ", "some ", "no ", "equilibrium ", "every "} {
		if strings.HasPrefix(w, begin) {
			w = strings.ToUpper(w[:1]) + w[1:]
		}
	}
	return strings.TrimSuffix(w, ".") + "."
}

// checks show that the solution is right: the components add up, and the
// solution's own checks.
func (b *builder) checks() {
	var body []doc.Block
	if b.fixed() && len(b.s.X) > 0 && len(b.p.Bodies) <= many {
		for i := range b.p.CutFree() {
			if t := b.sums(i); t != nil {
				body = append(body, say("The forces on "+b.p.Bodies[i].Name+" by components:"), t)
			}
		}
	}
	for _, c := range b.s.Checks {
		if c.Kind == statics.CheckUnit && c.OK {
			continue // shown with each unit vector
		}
		body = append(body, held(c.OK, c.Says(b.p)))
	}
	for _, a := range b.s.Answers {
		body = append(body, held(a.OK, a.Says(b.p)))
	}
	b.step(Checks, "Checks", Subject{}, body...)
}

func held(ok bool, says string) doc.Block {
	return &doc.Check{State: doc.Held(ok, false), Text: doc.Plain(says)}
}

// answers are what was asked, or all unknowns where nothing was.
func (b *builder) answers() {
	var body []doc.Block
	asked := b.p.Asked
	if len(asked) == 0 {
		for j := range b.s.X {
			asked = append(asked, problem.Query{Name: b.s.X[j].Name, Unknown: j, Line: -1, Dim: b.p.Unknowns[j].Dim})
		}
	}
	for _, q := range asked {
		if b.s.Verdict == statics.NoEquilibrium && b.dependsOnSolution(q) && len(b.s.X) > 0 {
			body = append(body, say(q.Name+" has no value: there is no equilibrium."))
			continue
		}
		v, err := b.s.Evaluate(q)
		if err != nil && q.Kind == problem.AskUnknown && q.Unknown >= 0 && b.s.X[q.Unknown].Ranged {
			body = append(body, say(sentence(b.s.RangeWords(q.Unknown))))
			continue
		}
		if err != nil {
			body = append(body, say(sentence(err.Error())))
			continue
		}
		of := append([]doc.Math{b.asked(q)}, b.formed(q)...)
		m := []doc.Math{equal(append(of, b.result(v, b.p.Units.For(q.Dim)))...)}
		if q.Kind == problem.AskUnknown && q.Unknown >= 0 {
			if word := b.senseWord(q.Unknown); word != "" {
				m = append(m, words(" ("+word+")"))
			}
		}
		body = append(body, boxed(row(m...)))
	}
	b.step(Answers, "Answers", Subject{}, body...)
}

// dependsOnSolution tells results that are of the geometry or the loads alone.
func (b *builder) dependsOnSolution(q problem.Query) bool {
	switch q.Kind {
	case problem.AskLength, problem.AskLoads, problem.AskSpread:
		return false
	case problem.AskUnit, problem.AskAngle:
		geometric := func(line int) bool {
			if line < 0 {
				return false // the direction of a reaction is found
			}
			_, ok := b.p.Lines[line].Direction()
			return ok // that of a force by components is found
		}
		return !geometric(q.Line) || q.Kind == problem.AskAngle && !geometric(q.Other)
	case problem.AskMagnitude:
		return b.dependsOnSolution(*q.Of)
	}
	return true
}

// formed is how a result follows from the unknowns, where that is not seen at
// once: the size of a reaction, the stretch of a spring.
func (b *builder) formed(q problem.Query) []doc.Math {
	f := b.p.Units.Force
	switch {
	case q.Kind == problem.AskJoint && q.Part == problem.Size && len(b.p.Joints[q.Joint].Forces) > 1:
		v := r3.Scale(1/f.Factor, b.at(r3.Vec{}, b.p.Joints[q.Joint].Forces))
		if cleaned(v) == (r3.Vec{}) {
			return nil
		}
		return []doc.Math{b.norm(v, func(x float64) doc.Math { return short(x, b.p.Figures+1) })}
	case q.Kind == problem.AskStretch && b.p.Lines[q.Line].Spring.Free:
		k := b.p.Units.For(units.LineLoad)
		return []doc.Math{fraction(grouped(b.affine(b.p.Lines[q.Line].Magnitude, f)), short(k.In(b.p.Lines[q.Line].Spring.Stiffness), b.p.Figures+1))}
	}
	return nil
}

// asked is the symbol of a result: T1, T1x, |F_T1|; where none is usual, the name as typed.
func (b *builder) asked(q problem.Query) doc.Math {
	var name doc.Math
	var force doc.Math
	switch q.Kind {
	case problem.AskUnknown:
		if q.Unknown >= 0 {
			return b.unknown(q.Unknown)
		}
		return named(q.Name)
	case problem.AskMagnitude:
		return size(b.asked(*q.Of))
	case problem.AskForce:
		name = named(b.p.Lines[q.Line].Name)
		force = vector("F", name)
	case problem.AskJoint:
		name = named(b.p.Joints[q.Joint].Name)
		force = vector("R", name)
	default:
		return words(q.Name)
	}
	switch q.Part {
	case problem.X, problem.Y, problem.Z:
		return part(name, "xyz"[q.Part:q.Part+1])
	case problem.Size:
		return size(force)
	}
	return words(q.Name)
}

// senseWord is tension or compression, or empty.
func (b *builder) senseWord(j int) string {
	u := &b.p.Unknowns[j]
	if !u.Own || !b.s.X[j].Fixed || b.s.X[j].Value == 0 {
		return ""
	}
	info := b.p.Lines[u.Line].Kind.Info()
	if info.Positive != "tension" && info.Positive != "compression" {
		return ""
	}
	if b.s.X[j].Value < 0 {
		return info.Negative
	}
	return info.Positive
}
