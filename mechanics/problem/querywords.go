package problem

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/say"
	"trivet/units"
)

// Called is how a sentence names a result: by its symbol where it has one, else by what
// it is.
func (p *Problem) Called(q Query) string {
	if name, ok := q.Symbol(); ok {
		return name
	}
	what, _ := p.meaning(q)
	return what
}

// Definition is a result as a task asks for it: what it is and which sense is positive.
func (p *Problem) Definition(q Query) string {
	what, positive := p.meaning(q)
	if positive != "" {
		what += ", positive " + positive
	}
	return what
}

// Symbol is the name of a result that figures and equations have too; the names of others
// are the program's alone.
func (q Query) Symbol() (name string, ok bool) {
	switch q.Kind {
	case AskUnknown, AskCouple, AskFriction:
		return q.Name, true
	}
	return "", false
}

// meaning says in words what a result is, and in which sense it is positive, empty where
// it has none.
func (p *Problem) meaning(q Query) (what, positive string) {
	switch q.Kind {
	case AskUnknown:
		if q.Unknown < 0 {
			return p.magnitudeMeaning(q.Line)
		}
		return p.unknownMeaning(q.Unknown)
	case AskForce:
		l := &p.Lines[q.Line]
		of := "the force that " + p.lineWords(q.Line) + " exerts" + p.on(l.firstBody())
		if l.Kind == Force || l.Kind == Weight {
			of = p.lineWords(q.Line) + p.on(l.firstBody())
		}
		return p.partMeaning(q.Part, of, "")
	case AskLength:
		return "the length of " + p.lineWords(q.Line), ""
	case AskUnit:
		along := "the " + axisName(q.Part) + " component of the unit vector along "
		if q.Line < 0 {
			return along + p.reactionWords(q.Joint), ""
		}
		return along + p.lineWords(q.Line), ""
	case AskStretch:
		return "the elongation of " + p.lineWords(q.Line), ""
	case AskLoads:
		b := &p.Bodies[q.Body]
		return p.partMeaning(q.Part, "the resultant of the known forces on "+p.bodyWords(q.Body), b.AboutName)
	case AskAngle:
		return "the angle between " + p.directedName(q.Line, q.Joint) + " and " + p.directedName(q.Other, q.Second), ""
	case AskComponent:
		return "the component of " + p.directedName(q.Line, q.Joint) + " along " + p.directedName(q.Other, q.Second), ""
	case AskJoint:
		return p.partMeaning(q.Part, p.reactionWords(q.Joint), p.pointName(p.Joints[q.Joint].Point))
	case AskCouple:
		return p.coupleMeaning(q.Couple)
	case AskSpread:
		d := &p.Loads[q.Load]
		resultant := "the resultant of the distributed load " + d.Name
		if q.Part == At {
			return "the distance from " + p.pointName(d.From) + " to the line of action of " + resultant, ""
		}
		return p.partMeaning(q.Part, resultant, "")
	case AskFriction:
		j := &p.Joints[q.Joint]
		return "the friction force" + p.on(j.First) + " at " + p.pointName(j.Point), p.sense(r3.Vec{X: j.Normal.Y, Y: -j.Normal.X})
	case AskMagnitude:
		of, _ := p.meaning(*q.Of)
		return "the magnitude of " + of, ""
	}
	return q.Name, ""
}

// unknownMeaning is what an unknown is: a component of a reaction, a force in a member.
func (p *Problem) unknownMeaning(k int) (what, positive string) {
	u := &p.Unknowns[k]
	switch {
	case u.Joint >= 0:
		return p.reactionMeaning(u.Joint, k)
	case u.Own:
		return p.magnitudeMeaning(u.Line)
	}
	if i := slices.IndexFunc(p.Couples, func(c Couple) bool { return c.Magnitude.is(k) }); i >= 0 {
		return p.coupleMeaning(i)
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		if f := slices.IndexFunc(l.force.Terms, func(t ActTerm) bool { return t.Unknown == k }); f >= 0 {
			d := l.force.Terms[f].D
			return "the " + p.way(d) + " component of " + p.lineWords(i) + p.on(l.firstBody()), p.sense(d)
		}
	}
	if i := slices.IndexFunc(p.Lines, func(l Line) bool { return l.Magnitude.is(k) }); i >= 0 {
		return p.magnitudeMeaning(i)
	}
	if u.Line >= 0 {
		return "the unknown in the magnitude of " + p.lineWords(u.Line), ""
	}
	return "the unknown in the magnitude of a couple", ""
}

// reactionMeaning is an unknown of a joint: the vertical reaction of the pin at A on the beam.
func (p *Problem) reactionMeaning(joint, k int) (what, positive string) {
	j := &p.Joints[joint]
	kind := "the " + j.Words()
	by := " of " + kind + " at " + p.pointName(j.Point) + p.on(j.First)
	noun := " reaction"
	if j.Second != Ground {
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
func (p *Problem) magnitudeMeaning(line int) (what, positive string) {
	l := &p.Lines[line]
	of := p.lineWords(line)
	switch info := l.Kind.Info(); {
	case l.Kind == Force:
		return "the magnitude of " + of + p.on(l.firstBody()), "in the direction of its arrow in the figure"
	case l.Kind == Weight:
		return "the weight that acts" + p.on(l.firstBody()), ""
	case l.Kind == Contact:
		return "the contact force" + p.on(l.firstBody()), "as a push"
	case info.Sense == Tension:
		return "the force in " + of, "in tension"
	default:
		return "the " + info.Positive + " in " + of, ""
	}
}

func (p *Problem) coupleMeaning(i int) (what, positive string) {
	c := &p.Couples[i]
	if c.U == (r3.Vec{}) {
		return "the moment of the couple" + p.on(c.Body), ""
	}
	return "the moment" + p.about(c.U) + " of the couple" + p.on(c.Body), p.turn(c.U)
}

// partMeaning is a part of a force: its magnitude, a component, an angle. Moments are
// taken about a point.
func (p *Problem) partMeaning(part Part, of, about string) (what, positive string) {
	switch part {
	case X, Y, Z:
		return "the " + axisName(part) + " component of " + of, ""
	case Size:
		return "the magnitude of " + of, ""
	case Alpha, Beta, Gamma:
		return "the angle between " + of + " and the +" + axisName(part-Alpha) + " axis", ""
	case PlaneAngle:
		return "the angle of " + of + ", counter-clockwise from the +x axis", ""
	case At:
		return "the distance along +x from " + about + " to the line of action of " + of, ""
	}
	axis := axes[axisName(part-MX)]
	if p.Planar {
		return "the moment about " + about + " of " + of, p.turn(axis)
	}
	return "the moment about the " + axisName(part-MX) + " axis through " + about + " of " + of, p.turn(axis)
}

func axisName(part Part) string { return "xyz"[part : part+1] }

// on says which body a force acts on.
func (p *Problem) on(body int) string { return " on " + p.bodyWords(body) }

// lineWords is a line in a sentence: cable T1 (from A to B), where its name does not say
// the points already.
func (p *Problem) lineWords(i int) string {
	l := &p.Lines[i]
	kind := l.Kind.String()
	switch l.Kind {
	case Link:
		kind = "member"
	case Contact:
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
func (p *Problem) directedName(line, joint int) string {
	if line >= 0 {
		return p.Lines[line].Name
	}
	return "the reaction at " + p.pointName(p.Joints[joint].Point)
}

// reactionWords is the whole force of a joint.
func (p *Problem) reactionWords(joint int) string {
	j := &p.Joints[joint]
	if j.Second != Ground {
		return "the force that " + p.bodyWords(j.Second) + " exerts" + p.on(j.First) + " at " + p.pointName(j.Point)
	}
	return "the reaction of the " + j.Words() + " at " + p.pointName(j.Point) + p.on(j.First)
}

func (p *Problem) bodyWords(i int) string {
	if i < 0 || i >= len(p.Bodies) {
		return "the ground"
	}
	if b := &p.Bodies[i]; b.Particle {
		return "particle " + b.Name
	}
	return say.The(p.Bodies[i].Name)
}

func (p *Problem) pointName(i int) string {
	if i < 0 || i >= len(p.Points) {
		return "its point"
	}
	return p.Points[i].Name
}

// firstBody is the body that a line's force is on, of two the first of its path.
func (l *Line) firstBody() int {
	if len(l.Acts) == 0 {
		return Ground
	}
	return l.Acts[0].Body
}

// way is the direction of a component as an adjective: vertical, horizontal, x.
func (p *Problem) way(d r3.Vec) string {
	axis, up := strings.TrimLeft(Axis(d), "+-"), strings.TrimLeft(Axis(p.Up), "+-")
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
func (p *Problem) sense(d r3.Vec) string {
	switch axis := Axis(d); {
	case axis == "":
		return "in the direction " + p.directionWords(d)
	case p.Planar:
		return map[string]string{"+x": "to the right", "-x": "to the left", "+y": "upward", "-y": "downward"}[axis]
	case axis == Axis(p.Up):
		return "upward"
	case axis == Axis(r3.Scale(-1, p.Up)):
		return "downward"
	default:
		return "along " + axis
	}
}

// about is the axis of a moment; in the plane there is one alone.
func (p *Problem) about(u r3.Vec) string {
	switch axis := Axis(u); {
	case p.Planar:
		return ""
	case axis == "":
		return " about the direction " + p.directionWords(u)
	default:
		return " about the " + axis[1:] + " axis"
	}
}

// turn is the sense in which a moment is positive.
func (p *Problem) turn(u r3.Vec) string {
	switch axis := Axis(u); {
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
func (p *Problem) directionWords(d r3.Vec) string {
	const places = 3
	return p.Tuple(d, func(x float64) string { return units.Decimals(x, places) })
}

// SignWords are what a positive and a negative value of an unknown mean: tension and compression of a
// link, push and pull of what can only push; ok is false where the sign says no more than the sense assumed.
func (p *Problem) SignWords(unknown int) (positive, negative string, ok bool) {
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
