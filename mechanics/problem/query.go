package problem

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/units"
)

// QueryKind says what a result name asks for.
type QueryKind int

// The kinds of results.
const (
	AskValue     QueryKind = iota // T1, M0: an unknown, the magnitude of a line, the moment of a couple
	AskPart                       // T1.x C.size q.at P.loads.x: of the force of a line or joint on its first body, the resultant of a load, or of the known forces on a body
	AskLength                     // T1.length
	AskUnit                       // T1.ux
	AskStretch                    // K.stretch
	AskAngle                      // angle(T1, T2)
	AskComponent                  // component(F, T1)
	AskFriction                   // AF of a rough surface where slipping impends
	AskMagnitude                  // |Cx|, abs(Cx): the magnitude of another result
)

// Query is a result name, read: which thing, and which part of it.
type Query struct {
	Name  string
	Kind  QueryKind
	Of    Source // an unknown, line, joint, couple, load or body
	With  Source // the second line or joint of AskAngle and AskComponent
	Part  Part
	Dim   units.Dim
	Inner *Query // of AskMagnitude
}

// Ask is the query for an unknown.
func (p *Problem) Ask(unknown int) Query {
	u := &p.Unknowns[unknown]
	return Query{Name: u.Name, Of: Source{AnUnknown, unknown}, Dim: u.Dim}
}

// Symbol is the name of a result that figures and equations have too; the names of others
// are the program's alone.
func (q Query) Symbol() (name string, ok bool) {
	switch q.Kind {
	case AskValue, AskFriction:
		return q.Name, true
	}
	return "", false
}

// Near is a value of the result as it compares with another. Of the angle of a direction a whole
// turn makes no difference: 359 degrees is one degree from zero.
func (q *Query) Near(v, other float64) float64 {
	if q.Part == PlaneAngle && q.Kind != AskAngle {
		return other + math.Remainder(v-other, 2*math.Pi)
	}
	return v
}

// owners are what has parts.
var owners = []Thing{ALine, AJoint, ALoad}

// ParseQuery reads a result name.
func ParseQuery(p *Problem, name string) (Query, *diag.Error) {
	name = strings.TrimSpace(name)
	q := Query{Name: name}
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
	kinds, what, hint := owners, "line, joint or load", "the name of a line, a joint or a distributed load"
	part, loads := strings.CutPrefix(rest, "loads.")
	if loads {
		kinds, what, hint = []Thing{ABody}, "body", "the name of a body or a particle"
	}
	var ok bool
	switch q.Of, ok = p.Find(head, kinds...); {
	case ok:
		q.Kind = AskPart
		return p.parsePart(q, part)
	case !loads && p.belt(head) != nil:
		return q, twoTensions(diag.Whole(q.Name), head, "."+rest)
	}
	return q, unknownName(q, what, head, p.Names(kinds...), hint)
}

// parseBare reads the name of a result that is the whole of what it names.
func (p *Problem) parseBare(q Query) (Query, *diag.Error) {
	name, ok := q.Name, false
	q.Of, q.Kind, ok = p.bare(name)
	switch q.Dim = units.Force; {
	case !ok && p.belt(name) != nil:
		return q, twoTensions(diag.Whole(name), name, "")
	case !ok:
		return q, unknownName(q, "result", name, p.Names(ALine, AnUnknown), "an unknown, or a part of a line such as T1.x")
	case q.Of.Thing == AnUnknown:
		q.Dim = p.Unknowns[q.Of.Index].Dim
	case q.Of.Thing == ACouple:
		q.Dim = units.Moment
	case q.Of.Thing == ALine && p.Lines[q.Of.Index].Components != nil:
		return q, diag.At(diag.Whole(name), name+" is a force given by components", name+".magnitude or "+name+".x")
	}
	return q, nil
}

// unknownName says that a result names a thing that the sheet does not have.
func unknownName(q Query, what, name string, known []string, otherwise string) *diag.Error {
	meant := units.Suggest(name, known)
	return &diag.Error{Span: diag.Whole(q.Name), Msg: "there is no " + what + " " + strconv.Quote(name), Hint: cmp.Or(meant, otherwise), Meant: meant}
}

// magnitudeOf is |Cx|, the magnitude of the result Cx.
func (p *Problem) magnitudeOf(q Query, name string) (Query, *diag.Error) {
	if line, ok := p.Find(p.printedName(strings.TrimSpace(name)), ALine); ok && p.Lines[line.Index].Components != nil {
		of, err := ParseQuery(p, p.NameOf(line)+".size")
		of.Name = q.Name
		return of, err
	}
	of, err := ParseQuery(p, name)
	if err != nil {
		err.Span = diag.Whole(q.Name)
		return q, err
	}
	q.Kind, q.Dim, q.Inner = AskMagnitude, of.Dim, &of
	return q, nil
}

// printedName gives the name of the sheet that a text prints with a subscript, A_y
// for Ay, unless the sheet has the name as it is printed.
func (p *Problem) printedName(name string) string {
	head, _, _ := strings.Cut(name, ".")
	return Unprinted(head, p.names) + name[len(head):]
}

// Unprinted is a name without the _ of a subscript where only that one is known.
func Unprinted(name string, known func(string) bool) string {
	if plain := strings.ReplaceAll(name, "_", ""); plain != name && !known(name) && known(plain) {
		return plain
	}
	return name
}

// names tells whether a result may begin with a name.
func (p *Problem) names(name string) bool {
	_, _, bare := p.bare(name)
	_, owner := p.Find(name, AJoint, ALoad, ABody)
	return bare || owner
}

func (p *Problem) parseCall(q Query, fn string, args []string) (Query, *diag.Error) {
	fail := func(msg, hint string) (Query, *diag.Error) {
		return q, diag.At(diag.Whole(q.Name), msg, hint)
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
	for k, of := range []*Source{&q.Of, &q.With} {
		var ok bool
		if *of, ok = p.Find(p.printedName(args[k]), ALine, AJoint); !ok {
			return q, unknownName(q, "line or joint", args[k], p.Names(ALine, AJoint), "the name of a line or a joint")
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
	return strings.TrimSpace(fn), say.Each(strings.Split(strings.TrimSuffix(rest, ")"), ","), strings.TrimSpace), true
}
