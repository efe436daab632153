package problem

import (
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

type partInfo struct {
	name          string
	part          Part
	dim           units.Dim
	plane, inside bool // stands in the plane; stands in space
}

var parts = []partInfo{
	{"x", X, units.Force, true, true},
	{"y", Y, units.Force, true, true},
	{"z", Z, units.Force, false, true},
	{"size", Size, units.Force, true, true},
	{"alpha", Alpha, units.Angle, true, true},
	{"beta", Beta, units.Angle, true, true},
	{"gamma", Gamma, units.Angle, false, true},
	{"angle", PlaneAngle, units.Angle, true, false},
	{"mx", MX, units.Moment, false, true},
	{"my", MY, units.Moment, false, true},
	{"mz", MZ, units.Moment, true, true},
}

// stands tells that a part has a meaning in the plane, or in space.
func (k partInfo) stands(planar bool) bool { return planar && k.plane || !planar && k.inside }

func (p *Problem) parsePart(q Query, part string) (Query, *diag.Error) {
	fail := func(msg, hint string) (Query, *diag.Error) {
		return q, diag.At(whole(q.Name), msg, hint)
	}
	if part == "magnitude" { // T1.magnitude is T1.size
		part, q.Name = "size", strings.TrimSuffix(q.Name, part)+"size"
	}
	if part == "at" && (q.Kind == AskSpread || q.Kind == AskLoads && p.Planar && !p.Bodies[q.Body].Particle) {
		q.Part, q.Dim = At, units.Length
		return q, nil
	}
	if q.Line >= 0 {
		switch part {
		case "length":
			q.Kind, q.Dim = AskLength, units.Length
			if p.Lines[q.Line].Length() == 0 {
				return fail("the line "+p.Lines[q.Line].Name+" has a direction but no length", "give it a path")
			}
			return q, nil
		case "stretch":
			q.Kind, q.Dim = AskStretch, units.Length
			if p.Lines[q.Line].Spring == nil {
				return fail("the line "+p.Lines[q.Line].Name+" is not a spring of known stiffness", "the stretch of a spring")
			}
			return q, nil
		}
	}
	if q.Line >= 0 || q.Kind == AskJoint {
		switch part {
		case "ux", "uy", "uz":
			q.Kind, q.Dim, q.Part = AskUnit, units.Number, Part(part[1]-'x')
			if p.Planar && part == "uz" {
				name, _, _ := strings.Cut(q.Name, ".")
				return fail("there is no z in the plane", name+".ux or "+name+".uy")
			}
			return q, nil
		}
	}
	if q.Line >= 0 {
		q.Kind = AskForce
	}
	var names []string
	for _, k := range parts {
		if !k.stands(p.Planar) || k.dim == units.Moment && (q.Kind == AskForce || q.Kind == AskSpread || q.Kind == AskLoads && p.Bodies[q.Body].Particle) {
			continue
		}
		if k.name == part {
			q.Part, q.Dim = k.part, k.dim
			return q, nil
		}
		names = append(names, k.name)
	}
	return fail("unknown part "+strconv.Quote(part)+" of a result", say.Or(names...))
}
