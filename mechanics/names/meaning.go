package names

import (
	"fmt"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// Called is how a sentence names a result: by its symbol where it has one, else by what
// it is.
func Called(p *problem.Problem, q problem.Query) string {
	if name, ok := q.Symbol(); ok {
		return name
	}
	what, _ := describer{p}.meaning(q)
	return what
}

// Meaning is a result as a task asks for it: what it is and which sense is positive.
func Meaning(p *problem.Problem, q problem.Query) string {
	what, positive := describer{p}.meaning(q)
	if positive != "" {
		what += ", positive " + positive
	}
	return what
}

// describer says what the things of a problem are.
type describer struct{ *problem.Problem }

// meaning says in words what a result is, and in which sense it is positive, empty where
// it has none.
func (p describer) meaning(q problem.Query) (what, positive string) {
	i := q.Of.Index
	switch q.Kind {
	case problem.AskValue:
		switch q.Of.Thing {
		case problem.ALine:
			return p.magnitudeMeaning(i)
		case problem.ACouple:
			return p.coupleMeaning(i)
		}
		return p.unknownMeaning(i)
	case problem.AskAngle:
		return "the angle between " + p.directedName(q.Of) + " and " + p.directedName(q.With), ""
	case problem.AskComponent:
		return "the component of " + p.directedName(q.Of) + " along " + p.directedName(q.With), ""
	case problem.AskFriction:
		j := &p.Joints[i]
		return "the friction force" + p.on(j.First) + " at " + p.pointName(j.Point), p.sense(r3.Vec{X: j.Normal.Y, Y: -j.Normal.X})
	case problem.AskMagnitude:
		of, _ := p.meaning(*q.Inner)
		return "the magnitude of " + of, ""
	}
	of, from := p.owner(q)
	switch q.Part {
	case problem.MX, problem.MY, problem.MZ:
		positive = p.turn(problem.Axes()[q.Part-problem.MX])
	}
	return p.PartWords(q, of, from), positive
}

// owner is what a result is a part of, and from where its parts are measured.
func (p describer) owner(q problem.Query) (words, from string) {
	switch i := q.Of.Index; q.Of.Thing {
	case problem.ALine:
		l, words := &p.Lines[i], p.lineWords(i)
		switch {
		case q.Kind != problem.AskPart:
			return words, ""
		case l.Kind == problem.Force || l.Kind == problem.Weight:
			return words + p.onFirst(l), ""
		}
		return "the force that " + words + " exerts" + p.onFirst(l), ""
	case problem.AJoint:
		return p.reactionWords(i), p.pointName(p.Joints[i].Point)
	case problem.ABody:
		return "the resultant of the known forces on " + p.bodyWords(i), p.Bodies[i].AboutName
	default:
		return "the resultant of the distributed load " + p.Loads[i].Name, p.pointName(p.Loads[i].From)
	}
}

// unknownMeaning is what an unknown is: a component of a reaction, a force in a member.
func (p describer) unknownMeaning(k int) (what, positive string) {
	u := &p.Unknowns[k]
	switch {
	case u.Joint >= 0:
		return p.reactionMeaning(u.Joint, k)
	case u.Own:
		return p.magnitudeMeaning(u.Line)
	}
	if i := slices.IndexFunc(p.Couples, func(c problem.Couple) bool { return c.Magnitude.Alone() == k }); i >= 0 {
		return p.coupleMeaning(i)
	}
	if u.Line >= 0 && p.Lines[u.Line].Components != nil {
		l := &p.Lines[u.Line]
		for _, t := range l.Components.Terms {
			if t.Unknown == k {
				return "the " + p.way(t.D) + " component of " + p.lineWords(u.Line) + p.onFirst(l), p.sense(t.D)
			}
		}
	}
	if i := slices.IndexFunc(p.Lines, func(l problem.Line) bool { return l.Magnitude.Alone() == k }); i >= 0 {
		return p.magnitudeMeaning(i)
	}
	if i := slices.IndexFunc(p.Lines, func(l problem.Line) bool { return proportional(l.Magnitude, k) }); i >= 0 {
		whole, positive := p.magnitudeMeaning(i)
		if times := p.Lines[i].Magnitude.Terms[0].Coef; times != 2 {
			return whole + " divided by " + units.Compact(times), positive
		}
		return "half " + whole, positive
	}
	if u.Line >= 0 {
		return "the unknown in the magnitude of " + p.lineWords(u.Line), ""
	}
	return "the unknown in the magnitude of a couple", ""
}

// proportional tells a magnitude that is a positive multiple of an unknown, and of nothing else.
func proportional(m problem.Affine, unknown int) bool {
	return m.Const == 0 && len(m.Terms) == 1 && m.Terms[0].Unknown == unknown && m.Terms[0].Coef > 0
}

// reactionMeaning is an unknown of a joint: the vertical reaction of the pin at A on the beam.
func (p describer) reactionMeaning(joint, k int) (what, positive string) {
	j := &p.Joints[joint]
	kind := "the " + j.Words()
	by := " of " + kind + " at " + p.pointName(j.Point) + p.on(j.First)
	noun := " reaction"
	if j.Second != problem.Ground {
		by = " that " + p.bodyWords(j.Second) + " exerts" + p.on(j.First) + " through " + kind + " at " + p.pointName(j.Point)
		noun = " force"
	}
	for i, t := range j.Forces.Terms {
		switch way := p.way(t.D); {
		case t.Unknown != k:
		case j.Kind.Info().PushOnly && i == 0:
			return "the normal force" + by, "as a push"
		case j.Kind.Info().PushOnly:
			return "the friction force" + by, p.sense(t.D)
		case p.Planar:
			return "the " + way + noun + by, p.sense(t.D)
		default:
			return "the " + way + " component of the" + noun + by, p.sense(t.D)
		}
	}
	for _, t := range j.Moments.Terms {
		if t.Unknown == k {
			return "the moment" + p.about(t.D) + by, p.turn(t.D)
		}
	}
	return "the reaction" + by, ""
}

// magnitudeMeaning is the magnitude of a line: the tension in cable T1 (from A to B).
func (p describer) magnitudeMeaning(line int) (what, positive string) {
	info := p.Lines[line].Kind.Info()
	if p.Lines[line].Kind == problem.Contact && len(p.Lines[line].Acts) > 0 {
		return p.contactMeaning(line), info.Sign
	}
	return fmt.Sprintf(info.Means, p.lineWords(line), p.onFirst(&p.Lines[line])), info.Sign
}

// contactMeaning is a contact force: between two bodies, where the other has its reaction, and
// else with its direction, where the body has several.
func (p describer) contactMeaning(line int) string {
	l := &p.Lines[line]
	several := false
	for i := range p.Lines {
		o := &p.Lines[i]
		switch {
		case i == line || len(o.Acts) == 0 || len(o.Legs) == 0:
		case o.Acts[0].Body != l.Acts[0].Body:
			if k := l.Magnitude.Alone(); k >= 0 && o.Magnitude.Alone() == k && r3.Norm(r3.Add(o.Legs[0].U, l.Legs[0].U)) < opposite {
				return "the contact force between " + p.bodyWords(l.Acts[0].Body) + " and " + p.bodyWords(o.Acts[0].Body)
			}
		case o.Kind == problem.Contact:
			several = true
		default: // the reaction to a contact
			k := o.Magnitude.Alone()
			several = several || k >= 0 && p.Unknowns[k].Own && p.Lines[p.Unknowns[k].Line].Kind == problem.Contact
		}
	}
	if several {
		return "the contact force that acts " + p.sense(l.Legs[0].U) + p.onFirst(l)
	}
	return "the contact force" + p.onFirst(l)
}

// opposite is how far the sum of two opposite unit vectors may be from zero: rounding.
const opposite = 1e-9

func (p describer) coupleMeaning(i int) (what, positive string) {
	c := &p.Couples[i]
	if c.U == (r3.Vec{}) {
		return "the moment of the couple" + p.on(c.Body), ""
	}
	return "the moment" + p.about(c.U) + " of the couple" + p.on(c.Body), p.turn(c.U)
}

// on says which body a force acts on.
func (p describer) on(body int) string { return " on " + p.bodyWords(body) }

// onFirst says which body a line's force is on, of two the first of its path.
func (p describer) onFirst(l *problem.Line) string {
	if len(l.Acts) == 0 {
		return p.on(problem.Ground)
	}
	return p.on(l.Acts[0].Body)
}

// lineWords is a line in a sentence: cable T1 (from A to B), where its name does not say
// the points already.
func (p describer) lineWords(i int) string {
	l := &p.Lines[i]
	out := l.Kind.Info().Noun + " " + l.Name
	if len(l.Path) < 2 {
		return out
	}
	first, last := p.pointName(l.Path[0]), p.pointName(l.Path[len(l.Path)-1])
	if l.Name == first+last {
		return out
	}
	return out + " (from " + first + " to " + last + ")"
}

// directedName is what an angle is measured from: a line by its name, a joint by its reaction.
func (p describer) directedName(of problem.Source) string {
	if of.Thing == problem.ALine {
		return p.NameOf(of)
	}
	return "the reaction at " + p.pointName(p.Joints[of.Index].Point)
}

// reactionWords is the whole force of a joint.
func (p describer) reactionWords(joint int) string {
	j := &p.Joints[joint]
	if j.Second != problem.Ground {
		return "the force that " + p.bodyWords(j.Second) + " exerts" + p.on(j.First) + " at " + p.pointName(j.Point)
	}
	return "the reaction of the " + j.Words() + " at " + p.pointName(j.Point) + p.on(j.First)
}

func (p describer) bodyWords(i int) string {
	if i < 0 || i >= len(p.Bodies) {
		return "the ground"
	}
	if b := &p.Bodies[i]; b.Particle {
		return "particle " + b.Name
	}
	return say.The(p.Bodies[i].Name)
}

func (p describer) pointName(i int) string {
	if i < 0 || i >= len(p.Points) {
		return "its point"
	}
	return p.Points[i].Name
}

// way is the direction of a component as an adjective: vertical, horizontal, x.
func (p describer) way(d r3.Vec) string {
	axis, up := strings.TrimLeft(problem.Axis(d), "+-"), strings.TrimLeft(problem.Axis(p.Up), "+-")
	switch {
	case axis == "":
		return "inclined"
	case p.Planar && axis == "y", !p.Planar && axis == up:
		return "vertical"
	case p.Planar:
		return "horizontal"
	}
	return axis
}

// sense is the direction in which a component is positive, as an adverb.
func (p describer) sense(d r3.Vec) string {
	switch axis := problem.Axis(d); {
	case axis == "":
		return "in the direction " + p.directionWords(d)
	case p.Planar:
		return map[string]string{"+x": "to the right", "-x": "to the left", "+y": "upward", "-y": "downward"}[axis]
	case axis == problem.Axis(p.Up):
		return "upward"
	case axis == problem.Axis(r3.Scale(-1, p.Up)):
		return "downward"
	default:
		return "along " + axis
	}
}

// about is the axis of a moment; in the plane there is one alone.
func (p describer) about(u r3.Vec) string {
	switch axis := problem.Axis(u); {
	case p.Planar:
		return ""
	case axis == "":
		if line, ok := p.lineAlong(u); ok {
			return " about the direction of " + line
		}
		return " about the direction " + p.directionWords(u)
	default:
		return " about the " + axis[1:] + " axis"
	}
}

// lineAlong is a line in a direction that its sheet has to name in numbers; ok is false where there is none.
func (p describer) lineAlong(u r3.Vec) (words string, ok bool) {
	for i := range p.Lines {
		if l := &p.Lines[i]; len(l.Legs) == 1 && r3.Norm(r3.Sub(l.Legs[0].U, u)) < opposite {
			return p.lineWords(i), true
		}
	}
	return "", false
}

// turn is the sense in which a moment is positive.
func (p describer) turn(u r3.Vec) string {
	switch axis := problem.Axis(u); {
	case p.Planar:
		return say.Turn(u.Z)
	case axis == "":
		return "by the right-hand rule about that direction"
	default:
		return "by the right-hand rule about " + axis
	}
}

// directionWords are the components of a direction.
func (p describer) directionWords(d r3.Vec) string {
	const places = 3
	return p.Tuple(d, func(x float64) string { return units.Decimals(x, places) })
}

// SignWords are what a positive and a negative value of an unknown mean: tension and compression of a
// link, push and pull of what can only push; ok is false where the sign says no more than the sense assumed.
func SignWords(p *problem.Problem, unknown int) (positive, negative string, ok bool) {
	u := &p.Unknowns[unknown]
	if u.Own {
		info := p.Lines[u.Line].Kind.Info()
		return info.Positive, info.Negative, true
	}
	if u.Joint >= 0 && p.Joints[u.Joint].Kind.Info().PushOnly && p.Joints[u.Joint].Forces.Terms[0].Unknown == unknown {
		return "push", "pull", true
	}
	return "", "", false
}
