package problem

import (
	"strconv"
	"strings"

	"trivet/units"
)

// QueryKind says what a result name asks for.
type QueryKind int

// The kinds of results.
const (
	AskUnknown   QueryKind = iota // T1: the unknown, or the magnitude of a line
	AskForce                      // T1.x T1.size T1.alpha: the force on the first body of the path
	AskLength                     // T1.length
	AskUnit                       // T1.ux
	AskStretch                    // K.stretch
	AskLoads                      // P.loads.x: resultant of the known forces on a body
	AskAngle                      // angle(T1, T2)
	AskComponent                  // component(F, T1)
	AskJoint                      // C.x C.size C.angle: the whole reaction of a joint on its first body
	AskCouple                     // M0: the moment of a couple
	AskSpread                     // q.size q.at: a distributed load's resultant and its distance from the first end
	AskFriction                   // AF of a rough surface where slipping impends
)

// Query is a result name, read: which thing, and which part of it.
type Query struct {
	Name    string
	Kind    QueryKind
	Unknown int // AskUnknown: the unknown, or -1 where Line has the magnitude
	Line    int
	Other   int // the second line of AskAngle and AskComponent
	Body    int
	Joint   int
	Couple  int
	Load    int
	Part    Part
	Dim     units.Dim
}

// Part is a part of a vector.
type Part int

// The parts of a vector: components, size, the direction angles from +x, +y,
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
	At // where a distributed load's resultant acts, from its first end
)

var parts = []struct {
	name          string
	part          Part
	dim           units.Dim
	plane, inside bool // stands in the plane; stands in space
}{
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

// QueryHelp is the table of result names for the help.
func QueryHelp() [][2]string {
	return [][2]string{
		{"T1", "an unknown, or the magnitude of a line"},
		{"T1.x  T1.y  T1.z  T1.size", "the force of a line on the first body of its path"},
		{"T1.alpha  T1.beta  T1.gamma", "its direction angles from +x, +y, +z"},
		{"T1.angle", "in the plane: its angle counter-clockwise from +x"},
		{"T1.ux  T1.uy  T1.uz  T1.length", "the line's unit vector and length"},
		{"K.stretch", "how far a spring is stretched"},
		{"P.loads.x  P.loads.size  P.loads.alpha", "the resultant of the known forces on a body"},
		{"beam.loads.mx", "and its moment about the point that the body's moments are taken about"},
		{"C.x  C.size  C.angle  C.mx", "the whole reaction of a joint on its first body"},
		{"M0", "the moment of a couple"},
		{"q.size  q.at", "the resultant of a distributed load, and how far from its first end it acts"},
		{"angle(T1, T2)", "the angle between two lines"},
		{"component(F, T1)", "the component of a line's force along another line"},
	}
}

// ParseQuery reads a result name.
func ParseQuery(p *Problem, name string) (Query, *units.Error) {
	name = strings.TrimSpace(name)
	q := Query{Name: name, Unknown: -1, Line: -1, Other: -1, Body: -1, Joint: -1, Couple: -1, Load: -1}
	fail := func(msg, hint string) (Query, *units.Error) {
		return q, &units.Error{Span: whole(name), Msg: msg, Hint: hint}
	}
	if fn, args, ok := call(name); ok {
		return p.parseCall(q, fn, args)
	}
	head, rest, dotted := strings.Cut(name, ".")
	if !dotted {
		if i := p.unknownNamed(name); i >= 0 {
			q.Unknown, q.Dim = i, p.Unknowns[i].Dim
			return q, nil
		}
		if i := p.LineNamed(name); i >= 0 {
			if p.Lines[i].byComponents {
				return fail(name+" is a force by components", "ask for "+name+".size or "+name+".x")
			}
			q.Line, q.Dim = i, units.Force
			return q, nil
		}
		if q, ok := p.derived(q, name); ok {
			return q, nil
		}
		return fail("there is no result "+strconv.Quote(name), suggestion(name, p.resultNames(), "name an unknown, or a part of a line such as T1.x"))
	}
	if part, isLoads := strings.CutPrefix(rest, "loads."); isLoads {
		for i, b := range p.Bodies {
			if b.Name == head {
				q.Kind, q.Body = AskLoads, i
				return p.parsePart(q, part)
			}
		}
		return fail("there is no body "+strconv.Quote(head), suggestion(head, p.bodyNames(), "name a point that is a particle"))
	}
	if q.Line = p.LineNamed(head); q.Line >= 0 {
		return p.parsePart(q, rest)
	}
	for i := range p.Joints {
		if p.Joints[i].Name == head {
			q.Kind, q.Joint = AskJoint, i
			return p.parsePart(q, rest)
		}
	}
	for i := range p.Loads {
		if p.Loads[i].Name == head {
			q.Kind, q.Load = AskSpread, i
			return p.parsePart(q, rest)
		}
	}
	return fail("there is no line, joint or load "+strconv.Quote(head), suggestion(head, p.holders(), "name a row of [lines], [joints] or [distributed]"))
}

func (p *Problem) parsePart(q Query, part string) (Query, *units.Error) {
	fail := func(msg, hint string) (Query, *units.Error) {
		return q, &units.Error{Span: whole(q.Name), Msg: msg, Hint: hint}
	}
	if q.Kind == AskSpread && part == "at" {
		q.Part, q.Dim = At, units.Length
		return q, nil
	}
	if q.Line >= 0 {
		switch part {
		case "length":
			q.Kind, q.Dim = AskLength, units.Length
			if p.Lines[q.Line].Length() == 0 {
				return fail("the line "+p.Lines[q.Line].Name+" has a direction and no length", "give it a path to ask for its length")
			}
			return q, nil
		case "stretch":
			q.Kind, q.Dim = AskStretch, units.Length
			if p.Lines[q.Line].Spring == nil {
				return fail("the line "+p.Lines[q.Line].Name+" is no spring of known stiffness", "ask for the stretch of a spring")
			}
			return q, nil
		case "ux", "uy", "uz":
			q.Kind, q.Dim, q.Part = AskUnit, units.Number, Part(part[1]-'x')
			if p.Planar && part == "uz" {
				return fail("there is no z in the plane", "ask for "+p.Lines[q.Line].Name+".ux or .uy")
			}
			return q, nil
		}
		q.Kind = AskForce
	}
	var names []string
	for _, k := range parts {
		stands := k.inside
		if p.Planar {
			stands = k.plane
		}
		if k.dim == units.Moment && (q.Kind == AskForce || q.Kind == AskSpread || q.Kind == AskLoads && p.Bodies[q.Body].Particle) {
			continue
		}
		if stands && k.name == part {
			q.Part, q.Dim = k.part, k.dim
			return q, nil
		}
		if stands {
			names = append(names, k.name)
		}
	}
	return fail("there is no part "+strconv.Quote(part)+" of a force here", "write one of "+strings.Join(names, " "))
}

func (p *Problem) parseCall(q Query, fn string, args []string) (Query, *units.Error) {
	fail := func(msg, hint string) (Query, *units.Error) {
		return q, &units.Error{Span: whole(q.Name), Msg: msg, Hint: hint}
	}
	switch fn {
	case "angle":
		q.Kind, q.Dim = AskAngle, units.Angle
	case "component":
		q.Kind, q.Dim = AskComponent, units.Force
	default:
		return fail("there is no result "+strconv.Quote(fn+"(…)"), "write angle(T1, T2) or component(F, T1)")
	}
	if len(args) != 2 {
		return fail(fn+" takes two lines", "write "+fn+"(T1, T2)")
	}
	for k, slot := range []*int{&q.Line, &q.Other} {
		*slot = p.LineNamed(args[k])
		if *slot < 0 {
			return fail("there is no line "+strconv.Quote(args[k]), suggestion(args[k], p.lineNames(), "name a row of [lines]"))
		}
	}
	return q, nil
}

// call splits angle(T1, T2) into its name and arguments.
func call(name string) (fn string, args []string, ok bool) {
	fn, rest, found := strings.Cut(name, "(")
	if !found || !strings.HasSuffix(rest, ")") {
		return "", nil, false
	}
	for _, a := range strings.Split(strings.TrimSuffix(rest, ")"), ",") {
		args = append(args, strings.TrimSpace(a))
	}
	return strings.TrimSpace(fn), args, true
}

// LineNamed gives a line's index by name, -1 where there is none.
func (p *Problem) LineNamed(name string) int {
	for i := range p.Lines {
		if p.Lines[i].Name == name {
			return i
		}
	}
	return -1
}

func (p *Problem) lineNames() (names []string) {
	for _, l := range p.Lines {
		names = append(names, l.Name)
	}
	return names
}

func (p *Problem) bodyNames() (names []string) {
	for _, b := range p.Bodies {
		names = append(names, b.Name)
	}
	return names
}

// unknownNamed gives an unknown's index by name. In the plane the moment of a
// joint C answers to MC as well as to MCz.
func (p *Problem) unknownNamed(name string) int {
	for i := range p.Unknowns {
		if p.Unknowns[i].Name == name {
			return i
		}
	}
	if p.Planar && strings.HasPrefix(name, "M") {
		for i := range p.Unknowns {
			if p.Unknowns[i].Joint >= 0 && p.Unknowns[i].Name == name+"z" {
				return i
			}
		}
	}
	return -1
}

// derived finds results that bear a name of their own and are no unknowns: a
// known couple, and the friction of a surface where slipping impends.
func (p *Problem) derived(q Query, name string) (Query, bool) {
	for i := range p.Couples {
		if p.Couples[i].Name == name {
			q.Kind, q.Couple, q.Dim = AskCouple, i, units.Moment
			return q, true
		}
	}
	for i := range p.Joints {
		if j := &p.Joints[i]; j.Impending && j.Name+"F" == name {
			q.Kind, q.Joint, q.Dim = AskFriction, i, units.Force
			return q, true
		}
	}
	return q, false
}

// holders are the names that have parts.
func (p *Problem) holders() []string {
	names := p.lineNames()
	for i := range p.Joints {
		names = append(names, p.Joints[i].Name)
	}
	for i := range p.Loads {
		names = append(names, p.Loads[i].Name)
	}
	return names
}

func (p *Problem) resultNames() []string {
	names := p.lineNames()
	for _, u := range p.Unknowns {
		names = append(names, u.Name)
	}
	return names
}
