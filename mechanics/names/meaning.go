package names

import (
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
	case problem.AskLength:
		return "the length of " + p.lineWords(i), ""
	case problem.AskUnit:
		return "the " + axisName(q.Part) + " component of the unit vector along " + p.forceWords(q.Of), ""
	case problem.AskStretch:
		return "the elongation of " + p.lineWords(i), ""
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
	switch q.Of.Thing {
	case problem.ALine:
		l := &p.Lines[i]
		if l.Kind == problem.Force || l.Kind == problem.Weight {
			return p.partMeaning(q.Part, p.lineWords(i)+p.onFirst(l), "")
		}
		return p.partMeaning(q.Part, "the force that "+p.lineWords(i)+" exerts"+p.onFirst(l), "")
	case problem.AJoint:
		return p.partMeaning(q.Part, p.reactionWords(i), p.pointName(p.Joints[i].Point))
	case problem.ABody:
		return p.partMeaning(q.Part, "the resultant of the known forces on "+p.bodyWords(i), p.Bodies[i].AboutName)
	}
	d := &p.Loads[i]
	resultant := "the resultant of the distributed load " + d.Name
	if q.Part == problem.At {
		return "the distance from " + p.pointName(d.From) + " to the line of action of " + resultant, ""
	}
	return p.partMeaning(q.Part, resultant, "")
}

// forceWords is a line, or the reaction of a joint.
func (p describer) forceWords(of problem.Source) string {
	if of.Thing == problem.ALine {
		return p.lineWords(of.Index)
	}
	return p.reactionWords(of.Index)
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
	if i := slices.IndexFunc(p.Couples, func(c problem.Couple) bool { return c.Magnitude.Is(k) }); i >= 0 {
		return p.coupleMeaning(i)
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if !l.ByComponents() || len(l.Acts) == 0 {
			continue
		}
		terms := l.Acts[0].Force.Terms
		if f := slices.IndexFunc(terms, func(t problem.ActTerm) bool { return t.Unknown == k }); f >= 0 {
			d := terms[f].D
			return "the " + p.way(d) + " component of " + p.lineWords(i) + p.onFirst(l), p.sense(d)
		}
	}
	if i := slices.IndexFunc(p.Lines, func(l problem.Line) bool { return l.Magnitude.Is(k) }); i >= 0 {
		return p.magnitudeMeaning(i)
	}
	if u.Line >= 0 {
		return "the unknown in the magnitude of " + p.lineWords(u.Line), ""
	}
	return "the unknown in the magnitude of a couple", ""
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
	l := &p.Lines[line]
	of := p.lineWords(line)
	switch info := l.Kind.Info(); {
	case l.Kind == problem.Force:
		return "the magnitude of " + of + p.onFirst(l), "in the direction of its arrow in the figure"
	case l.Kind == problem.Weight:
		return "the weight that acts" + p.onFirst(l), ""
	case l.Kind == problem.Contact:
		return "the contact force" + p.onFirst(l), "as a push"
	case info.Sense == problem.Tension:
		return "the force in " + of, "in tension"
	default:
		return "the " + info.Positive + " in " + of, ""
	}
}

func (p describer) coupleMeaning(i int) (what, positive string) {
	c := &p.Couples[i]
	if c.U == (r3.Vec{}) {
		return "the moment of the couple" + p.on(c.Body), ""
	}
	return "the moment" + p.about(c.U) + " of the couple" + p.on(c.Body), p.turn(c.U)
}

// partMeaning is a part of a force: its magnitude, a component, an angle. Moments are
// taken about a point.
func (p describer) partMeaning(part problem.Part, of, about string) (what, positive string) {
	switch part {
	case problem.X, problem.Y, problem.Z:
		return "the " + axisName(part) + " component of " + of, ""
	case problem.Size:
		return "the magnitude of " + of, ""
	case problem.Alpha, problem.Beta, problem.Gamma:
		return "the angle between " + of + " and the +" + axisName(part-problem.Alpha) + " axis", ""
	case problem.PlaneAngle:
		return "the angle of " + of + ", counter-clockwise from the +x axis", ""
	case problem.At:
		return "the distance along +x from " + about + " to the line of action of " + of, ""
	}
	axis := []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[part-problem.MX]
	if p.Planar {
		return "the moment about " + about + " of " + of, p.turn(axis)
	}
	return "the moment about the " + axisName(part-problem.MX) + " axis through " + about + " of " + of, p.turn(axis)
}

func axisName(part problem.Part) string { return "xyz"[part : part+1] }

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
	kind := l.Kind.String()
	switch l.Kind {
	case problem.Link:
		kind = "member"
	case problem.Contact:
		kind = "the contact"
	}
	out := kind + " " + l.Name
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
		return " about the direction " + p.directionWords(u)
	default:
		return " about the " + axis[1:] + " axis"
	}
}

// turn is the sense in which a moment is positive.
func (p describer) turn(u r3.Vec) string {
	switch axis := problem.Axis(u); {
	case p.Planar && u.Z > 0:
		return "counter-clockwise"
	case p.Planar:
		return "clockwise"
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
