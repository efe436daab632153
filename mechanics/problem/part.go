package problem

import (
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/units"
)

// Part is a part of a vector.
type Part int

// The parts of a vector: components, magnitude, the direction angles from +x, +y,
// +z, and in the plane the angle counter-clockwise from +x.
const (
	X Part = iota
	Y
	Z
	Size
	Alpha
	Beta
	Gamma
	PlaneAngle
	MX
	MY
	MZ
	At // where a distributed load's resultant acts, from its first end; of loads, where their resultant crosses the x axis through the point of moments
)

// partInfo is a part of a result behind a dot, with what has it: a body and a particle
// have those of the known forces on them.
type partInfo struct {
	name         string
	part         Part
	kind         QueryKind // of a line's or a joint's result that is no part of a force
	dim          units.Dim
	plane, space bool // has a meaning in the plane; in space
	things       []Thing
	says         string
}

var (
	haveForces  = []Thing{ALine, AJoint, ALoad, ABody, aParticle}
	haveMoments = []Thing{AJoint, ABody}
	haveUnits   = []Thing{ALine, AJoint}
)

var parts = []partInfo{
	{"x", X, 0, units.Force, true, true, haveForces, "component along +x"},
	{"y", Y, 0, units.Force, true, true, haveForces, "component along +y"},
	{"z", Z, 0, units.Force, false, true, haveForces, "component along +z"},
	{"size", Size, 0, units.Force, true, true, haveForces, "its magnitude"},
	{"alpha", Alpha, 0, units.Angle, true, true, haveForces, "direction angle from +x"},
	{"beta", Beta, 0, units.Angle, true, true, haveForces, "direction angle from +y"},
	{"gamma", Gamma, 0, units.Angle, false, true, haveForces, "direction angle from +z"},
	{"angle", PlaneAngle, 0, units.Angle, true, false, haveForces, "angle counter-clockwise from +x"},
	{"mx", MX, 0, units.Moment, false, true, haveMoments, "moment about x"},
	{"my", MY, 0, units.Moment, false, true, haveMoments, "moment about y"},
	{"mz", MZ, 0, units.Moment, true, true, haveMoments, "moment about z"},
	{"length", 0, AskLength, units.Length, true, true, []Thing{ALine}, "the line's length"},
	{"ux", X, AskUnit, units.Number, true, true, haveUnits, "x component of its unit vector"},
	{"uy", Y, AskUnit, units.Number, true, true, haveUnits, "y component of its unit vector"},
	{"uz", Z, AskUnit, units.Number, false, true, haveUnits, "z component of its unit vector"},
	{"stretch", 0, AskStretch, units.Length, true, true, []Thing{ALine}, "the elongation of the spring"},
	{"at", At, 0, units.Length, true, true, []Thing{ALoad}, "the distance of the resultant from its first end"},
	{"at", At, 0, units.Length, true, false, []Thing{ABody}, "the distance along +x to the line of action of the resultant"},
}

// of tells that a thing has the part, in the plane or in space.
func (k partInfo) of(what Thing, planar bool) bool {
	return (planar && k.plane || !planar && k.space) && slices.Contains(k.things, what)
}

// holder is what a part of a result is a part of.
func (p *Problem) holder(q Query) Thing {
	switch {
	case q.Line >= 0:
		return ALine
	case q.Kind == AskJoint:
		return AJoint
	case q.Kind == AskSpread:
		return ALoad
	case p.Bodies[q.Body].Particle:
		return aParticle
	}
	return ABody
}

func (p *Problem) parsePart(q Query, part string) (Query, *diag.Error) {
	fail := func(msg, hint string) (Query, *diag.Error) {
		return q, diag.At(whole(q.Name), msg, hint)
	}
	if part == "magnitude" { // T1.magnitude is T1.size
		part, q.Name = "size", strings.TrimSuffix(q.Name, part)+"size"
	}
	what := p.holder(q)
	var names []string
	for _, k := range parts {
		switch {
		case !k.of(what, p.Planar):
			continue
		case k.name != part:
			if k.kind == 0 && k.part != At {
				names = append(names, k.name)
			}
			continue
		case k.kind == AskLength && p.Lines[q.Line].Length() == 0:
			return fail("the line "+p.Lines[q.Line].Name+" has a direction but no length", "give it a path")
		case k.kind == AskStretch && p.Lines[q.Line].Spring == nil:
			return fail("the line "+p.Lines[q.Line].Name+" is not a spring of known stiffness", "the stretch of a spring")
		case k.kind != 0:
			q.Kind = k.kind
		}
		q.Part, q.Dim = k.part, k.dim
		return q, nil
	}
	if name, _, _ := strings.Cut(q.Name, "."); part == "uz" && slices.Contains(haveUnits, what) {
		return fail("there is no z in the plane", name+".ux or "+name+".uy")
	}
	return fail("unknown part "+strconv.Quote(part)+" of a result", say.Or(names...))
}
