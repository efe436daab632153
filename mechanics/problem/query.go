package problem

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
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
	AskMagnitude                  // |Cx|, abs(Cx): the magnitude of another result
)

// Query is a result name, read: which thing, and which part of it.
type Query struct {
	Name    string
	Kind    QueryKind
	Unknown int // AskUnknown: the unknown, or -1 where Line has the magnitude
	Line    int
	Other   int // the second line of AskAngle and AskComponent
	Body    int
	Joint   int // of AskUnit, AskAngle and AskComponent where Line is -1: the direction is that of its reaction
	Second  int // a joint in place of Other
	Couple  int
	Load    int
	Part    Part
	Dim     units.Dim
	Of      *Query // of AskMagnitude
}

// QueryHelp is the table of result names for the help.
func QueryHelp() [][2]string {
	return [][2]string{
		{"T1", "an unknown, or the magnitude of a line"},
		{"T1.x  T1.y  T1.z  T1.size", "the force of a line on the first body of its path; T1.magnitude is T1.size"},
		{"T1.alpha  T1.beta  T1.gamma", "its direction angles from +x, +y, +z"},
		{"T1.angle", "in the plane: its angle counter-clockwise from +x"},
		{"T1.ux  T1.uy  T1.uz  T1.length", "the line's unit vector and length"},
		{"K.stretch", "the elongation of a spring"},
		{"P.loads.x  P.loads.size  P.loads.alpha", "the resultant of the known forces on a body"},
		{"beam.loads.mx", "and its moment about the point about which the body's moments are taken"},
		{"beam.loads.at", "in the plane: the distance along +x from that point to where the line of action of the resultant crosses the level through it"},
		{"C.x  C.size  C.ux  C.angle  C.mx", "the whole reaction of a joint on its first body"},
		{"M0", "the moment of a couple"},
		{"q.size  q.at", "the resultant of a distributed load, and its distance from the first end"},
		{"|Cx|  abs(Cx)", "the magnitude of a result, without its sign"},
		{"angle(T1, T2)", "the angle between two lines; a joint stands for its reaction"},
		{"component(F, T1)", "the component of a line's force along another line"},
	}
}

// ParseQuery reads a result name.
func ParseQuery(p *Problem, name string) (Query, *diag.Error) {
	name = strings.TrimSpace(name)
	q := Query{Name: name, Unknown: -1, Line: -1, Other: -1, Body: -1, Joint: -1, Second: -1, Couple: -1, Load: -1}
	fail := func(msg, hint string) (Query, *diag.Error) {
		return q, diag.At(whole(name), msg, hint)
	}
	if inner, ok := insideBars(name); ok {
		return p.magnitudeOf(q, inner)
	}
	if fn, args, ok := call(name); ok {
		return p.parseCall(q, fn, args)
	}
	name = p.printedName(name)
	q.Name = name
	head, rest, dotted := strings.Cut(name, ".")
	if !dotted {
		if i := p.unknownNamed(name); i >= 0 {
			q.Unknown, q.Dim = i, p.Unknowns[i].Dim
			return q, nil
		}
		if i := p.LineNamed(name); i >= 0 {
			if p.Lines[i].byComponents {
				return fail(name+" is a force given by components", name+".magnitude or "+name+".x")
			}
			q.Line, q.Dim = i, units.Force
			return q, nil
		}
		if q, ok := p.derived(q, name); ok {
			return q, nil
		}
		if p.belt(name) != nil {
			return q, twoTensions(whole(q.Name), name, "")
		}
		return q, unknownName(q, "result", name, append(namesOf(p.Lines), namesOf(p.Unknowns)...), "an unknown, or a part of a line such as T1.x")
	}
	if part, isLoads := strings.CutPrefix(rest, "loads."); isLoads {
		if q.Kind, q.Body = AskLoads, indexOf(p.Bodies, head); q.Body >= 0 {
			return p.parsePart(q, part)
		}
		return q, unknownName(q, "body", head, namesOf(p.Bodies), "the name of a body or a particle")
	}
	if q.Line = p.LineNamed(head); q.Line >= 0 {
		return p.parsePart(q, rest)
	}
	if q.Kind, q.Joint = AskJoint, indexOf(p.Joints, head); q.Joint >= 0 {
		return p.parsePart(q, rest)
	}
	if q.Kind, q.Load = AskSpread, indexOf(p.Loads, head); q.Load >= 0 {
		return p.parsePart(q, rest)
	}
	if p.belt(head) != nil {
		return q, twoTensions(whole(q.Name), head, "."+rest)
	}
	return q, unknownName(q, "line, joint or load", head, p.holders(), "the name of a line, a joint or a distributed load")
}

// unknownName says that a result names a thing that the sheet does not have.
func unknownName(q Query, what, name string, known []string, otherwise string) *diag.Error {
	meant := units.Suggest(name, known)
	return &diag.Error{Span: whole(q.Name), Msg: "there is no " + what + " " + strconv.Quote(name), Hint: cmp.Or(meant, otherwise), Meant: meant}
}

// magnitudeOf is |Cx|, the magnitude of the result Cx.
func (p *Problem) magnitudeOf(q Query, name string) (Query, *diag.Error) {
	if i := p.LineNamed(p.printedName(strings.TrimSpace(name))); i >= 0 && p.Lines[i].byComponents {
		of, err := ParseQuery(p, p.Lines[i].Name+".size")
		of.Name = q.Name
		return of, err
	}
	of, err := ParseQuery(p, name)
	if err != nil {
		err.Span = whole(q.Name)
		return q, err
	}
	q.Kind, q.Dim, q.Of = AskMagnitude, of.Dim, &of
	return q, nil
}

// insideBars gives what stands between the bars of |Cx|.
func insideBars(name string) (string, bool) {
	if len(name) < 2 || name[0] != '|' || name[len(name)-1] != '|' {
		return "", false
	}
	return name[1 : len(name)-1], true
}

// printedName gives the name of the sheet that a text prints with a subscript, A_y
// for Ay, unless the sheet has the name as it is printed.
func (p *Problem) printedName(name string) string {
	head, _, _ := strings.Cut(name, ".")
	return unprinted(head, p.names) + name[len(head):]
}

// unprinted is a name without the _ of a subscript where only that one is known.
func unprinted(name string, known func(string) bool) string {
	if plain := strings.ReplaceAll(name, "_", ""); plain != name && !known(name) && known(plain) {
		return plain
	}
	return name
}

// names tells whether a result may begin with a name.
func (p *Problem) names(name string) bool {
	_, derived := p.derived(Query{}, name)
	return derived || p.unknownNamed(name) >= 0 || slices.Contains(p.holders(), name) || indexOf(p.Bodies, name) >= 0
}

func (p *Problem) parseCall(q Query, fn string, args []string) (Query, *diag.Error) {
	fail := func(msg, hint string) (Query, *diag.Error) {
		return q, diag.At(whole(q.Name), msg, hint)
	}
	switch fn {
	case "angle":
		q.Kind, q.Dim = AskAngle, units.Angle
	case "component":
		q.Kind, q.Dim = AskComponent, units.Force
	case "abs":
		if len(args) != 1 {
			return fail("abs takes one result", "abs(T1)")
		}
		return p.magnitudeOf(q, args[0])
	default:
		return fail("there is no result "+strconv.Quote(fn+"(…)"), "angle(T1, T2) or component(F, T1)")
	}
	if len(args) != 2 {
		return fail(fn+" takes two lines or joints", fn+"(T1, T2)")
	}
	for k, slot := range [][2]*int{{&q.Line, &q.Joint}, {&q.Other, &q.Second}} {
		name := p.printedName(args[k])
		if *slot[0] = p.LineNamed(name); *slot[0] >= 0 {
			continue
		}
		if *slot[1] = indexOf(p.Joints, name); *slot[1] < 0 {
			return q, unknownName(q, "line or joint", args[k], p.forceNames(), "the name of a line or a joint")
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
