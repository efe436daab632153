package problem

import (
	"cmp"
	"math"
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

// Near is a value of the result as it compares with another. Of the angle of a direction a whole
// turn makes no difference: 359 degrees is one degree from zero.
func (q *Query) Near(v, other float64) float64 {
	if q.Part == PlaneAngle && q.Kind != AskAngle {
		return other + math.Remainder(v-other, 2*math.Pi)
	}
	return v
}

// ParseQuery reads a result name.
func ParseQuery(p *Problem, name string) (Query, *diag.Error) {
	name = strings.TrimSpace(name)
	q := Query{Name: name, Unknown: -1, Line: -1, Other: -1, Body: -1, Joint: -1, Second: -1, Couple: -1, Load: -1}
	if inner, bar := strings.CutPrefix(name, "|"); bar && strings.HasSuffix(inner, "|") {
		return p.magnitudeOf(q, strings.TrimSuffix(inner, "|"))
	}
	if fn, args, ok := call(name); ok {
		return p.parseCall(q, fn, args)
	}
	q.Name = p.printedName(name)
	head, rest, dotted := strings.Cut(q.Name, ".")
	if !dotted {
		return p.parseBare(q)
	}
	if part, isLoads := strings.CutPrefix(rest, "loads."); isLoads {
		if q.Kind, q.Body = AskLoads, indexOf(p.Bodies, head); q.Body >= 0 {
			return p.parsePart(q, part)
		}
		return q, unknownName(q, "body", head, namesOf(p.Bodies), "the name of a body or a particle")
	}
	q.Line, q.Joint, q.Load = p.LineNamed(head), indexOf(p.Joints, head), indexOf(p.Loads, head)
	switch {
	case q.Line >= 0:
		q.Kind = AskForce
	case q.Joint >= 0:
		q.Kind = AskJoint
	case q.Load >= 0:
		q.Kind = AskSpread
	case p.belt(head) != nil:
		return q, twoTensions(whole(q.Name), head, "."+rest)
	default:
		return q, unknownName(q, "line, joint or load", head, p.holders(), "the name of a line, a joint or a distributed load")
	}
	return p.parsePart(q, rest)
}

// parseBare reads the name of a result that is the whole of what it names.
func (p *Problem) parseBare(q Query) (Query, *diag.Error) {
	name := q.Name
	q.Unknown, q.Line, q.Couple = p.unknownNamed(name), p.LineNamed(name), indexOf(p.Couples, name)
	joint, friction := p.impending(name)
	switch {
	case q.Unknown >= 0:
		q.Line, q.Couple, q.Dim = -1, -1, p.Unknowns[q.Unknown].Dim
	case q.Line >= 0 && p.Lines[q.Line].byComponents:
		return q, diag.At(whole(name), name+" is a force given by components", name+".magnitude or "+name+".x")
	case q.Line >= 0:
		q.Dim = units.Force
	case q.Couple >= 0:
		q.Kind, q.Dim = AskCouple, units.Moment
	case friction:
		q.Kind, q.Joint, q.Dim = AskFriction, joint, units.Force
	case p.belt(name) != nil:
		return q, twoTensions(whole(name), name, "")
	default:
		return q, unknownName(q, "result", name, append(namesOf(p.Lines), namesOf(p.Unknowns)...), "an unknown, or a part of a line such as T1.x")
	}
	return q, nil
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
	_, friction := p.impending(name)
	return friction || p.unknownNamed(name) >= 0 || indexOf(p.Couples, name) >= 0 || slices.Contains(p.holders(), name) || indexOf(p.Bodies, name) >= 0
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
