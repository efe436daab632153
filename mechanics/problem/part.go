package problem

import (
	"fmt"
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

// PartInfo is a part of a result behind a dot, with what has it: a body and a particle
// have those of the known forces on them.
type PartInfo struct {
	Name         string
	Part         Part
	Kind         QueryKind
	Dim          units.Dim
	plane, space bool // has a meaning in the plane; in space
	things       []Thing
	Says         string
	means        string // in a sentence, of %[1]s; %[2]s is the point that it is measured from
}

var (
	haveForces  = []Thing{ALine, AJoint, ALoad, ABody, AParticle}
	haveMoments = []Thing{AJoint, ABody}
	haveUnits   = []Thing{ALine, AJoint}
)

// Parts is the table of the parts of results.
func Parts() []PartInfo { return parts }

var parts = []PartInfo{
	{"x", X, AskPart, units.Force, true, true, haveForces, "component along +x", "the x component of %[1]s"},
	{"y", Y, AskPart, units.Force, true, true, haveForces, "component along +y", "the y component of %[1]s"},
	{"z", Z, AskPart, units.Force, false, true, haveForces, "component along +z", "the z component of %[1]s"},
	{"size", Size, AskPart, units.Force, true, true, haveForces, "its magnitude", "the magnitude of %[1]s"},
	{"alpha", Alpha, AskPart, units.Angle, true, true, haveForces, "direction angle from +x", "the angle between %[1]s and the +x axis"},
	{"beta", Beta, AskPart, units.Angle, true, true, haveForces, "direction angle from +y", "the angle between %[1]s and the +y axis"},
	{"gamma", Gamma, AskPart, units.Angle, false, true, haveForces, "direction angle from +z", "the angle between %[1]s and the +z axis"},
	{"angle", PlaneAngle, AskPart, units.Angle, true, false, haveForces, "angle counter-clockwise from +x", "the angle of %[1]s, counter-clockwise from the +x axis"},
	{"mx", MX, AskPart, units.Moment, false, true, haveMoments, "moment about x", "the moment about the x axis through %[2]s of %[1]s"},
	{"my", MY, AskPart, units.Moment, false, true, haveMoments, "moment about y", "the moment about the y axis through %[2]s of %[1]s"},
	{"mz", MZ, AskPart, units.Moment, true, false, haveMoments, "moment about z", "the moment about %[2]s of %[1]s"},
	{"mz", MZ, AskPart, units.Moment, false, true, haveMoments, "moment about z", "the moment about the z axis through %[2]s of %[1]s"},
	{"length", 0, AskLength, units.Length, true, true, []Thing{ALine}, "the line's length", "the length of %[1]s"},
	{"ux", X, AskUnit, units.Number, true, true, haveUnits, "x component of its unit vector", "the x component of the unit vector along %[1]s"},
	{"uy", Y, AskUnit, units.Number, true, true, haveUnits, "y component of its unit vector", "the y component of the unit vector along %[1]s"},
	{"uz", Z, AskUnit, units.Number, false, true, haveUnits, "z component of its unit vector", "the z component of the unit vector along %[1]s"},
	{"stretch", 0, AskStretch, units.Length, true, true, []Thing{ALine}, "the elongation of the spring", "the elongation of %[1]s"},
	{"at", At, AskPart, units.Length, true, true, []Thing{ALoad}, "the distance of the resultant from its first end", "the distance from %[2]s to the line of action of %[1]s"},
	{"at", At, AskPart, units.Length, true, false, []Thing{ABody}, "the distance along +x to the line of action of the resultant", "the distance along +x from %[2]s to the line of action of %[1]s"},
}

// Of tells that a thing has the part, in the plane or in space.
func (k PartInfo) Of(what Thing, planar bool) bool {
	return (planar && k.plane || !planar && k.space) && slices.Contains(k.things, what)
}

// PartWords says what a part of a result is, of what, measured from a point.
func (p *Problem) PartWords(q Query, of, from string) string {
	k := slices.IndexFunc(parts, func(k PartInfo) bool { return k.Kind == q.Kind && k.Part == q.Part && k.Of(q.Of.Thing, p.Planar) })
	return fmt.Sprintf(parts[k].means, of, from)
}

func (p *Problem) parsePart(q Query, part string) (Query, *diag.Error) {
	fail := func(msg, hint string) (Query, *diag.Error) {
		return q, diag.At(diag.Whole(q.Name), msg, hint)
	}
	if part == "magnitude" { // T1.magnitude is T1.size
		part, q.Name = "size", strings.TrimSuffix(q.Name, part)+"size"
	}
	what := q.Of.Thing
	if what == ABody && p.Bodies[q.Of.Index].Particle {
		what = AParticle
	}
	var names []string
	for _, k := range parts {
		switch {
		case !k.Of(what, p.Planar):
			continue
		case k.Name != part:
			if k.Kind == AskPart && k.Part != At {
				names = append(names, k.Name)
			}
			continue
		case k.Kind == AskLength && p.Lines[q.Of.Index].Length() == 0:
			return fail("the line "+p.NameOf(q.Of)+" has a direction but no length", "two points under "+quotedKey("path"))
		case k.Kind == AskStretch && p.Lines[q.Of.Index].Spring == nil:
			return fail("the line "+p.NameOf(q.Of)+" is not a spring of known stiffness", "the stretch of a spring")
		}
		q.Kind, q.Part, q.Dim = k.Kind, k.Part, k.Dim
		return q, nil
	}
	if name, _, _ := strings.Cut(q.Name, "."); part == "uz" && slices.Contains(haveUnits, what) {
		return fail("there is no z in the plane", name+".ux or "+name+".uy")
	}
	return fail("unknown part "+strconv.Quote(part)+" of a result", say.Or(names...))
}
