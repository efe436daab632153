package problem

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/units"
)

// magnitude reads a line's magnitude when first asked for: unknown where left
// out or "?", else a known value or a multiple of unknowns.
func (r *reading) magnitude(i int) bool {
	return r.magnitudeOnce(r.p.Lines[i].Ref, r.p.Lines[i].Name, func() bool { return r.readMagnitude(i) })
}

func (r *reading) readMagnitude(i int) bool {
	l, w := &r.p.Lines[i], r.rows[r.p.Lines[i].Ref]
	switch {
	case len(l.Path) == 0:
		return false // its kind or place does not read
	case l.Belt != nil:
		return r.tension(i)
	}
	components, c := w.cell("components"), w.cell("magnitude")
	switch {
	case components.has && l.Kind.Info().Path:
		return components.fail("a "+l.Kind.String()+" has a direction and a magnitude, not components", "the kind force")
	case components.has && c.has:
		return c.fail("the line "+l.Name+" is given by components and by a magnitude", "remove one of them")
	case components.has:
		return r.components(i, components)
	}
	if l.Kind == SpringKind {
		if sprung, ok := r.spring(l, w, c.has); sprung || !ok {
			return ok
		}
	}
	if c.open(l.Name) {
		return r.ownUnknown(i)
	}
	e := env{r: r, scope: inMagnitude, line: i}
	v, ok := units.Value{}, false
	if l.Kind == Weight {
		v, l.Mass, ok = r.weight(c, e)
	} else {
		v, ok = c.value(e, units.Force)
	}
	l.Magnitude, l.Plus = r.affine(v), v.Plus[0]
	return ok
}

// open tells that a magnitude is an unknown of its row's name: blank, ?, or that name.
func (c cell) open(row string) bool {
	if !c.has {
		return true
	}
	expr, err := c.r.Parse(c.text)
	if err != nil {
		return false
	}
	name, _ := expr.Name()
	return expr.IsQuestion() || name == row && !c.r.isGiven(name)
}

// ownUnknown makes a line's magnitude an unknown of the line's name.
func (r *reading) ownUnknown(i int) bool {
	u, ok := r.newUnknown(i, r.p.Lines[i].Name)
	if ok {
		r.p.Unknowns[u].Own = true
		r.p.Lines[i].Magnitude = Affine{Terms: []Term{{Unknown: u, Coef: 1}}}
	}
	return ok
}

// newUnknown adds an unknown that belongs to a line; its name must be new.
func (r *reading) newUnknown(i int, name string) (int, bool) {
	ref := r.p.Lines[i].Ref
	if r.isGiven(name) {
		return 0, r.fail(ref, diag.Span{}, "the name "+name+" is used for a given and for an unknown of the line "+r.p.Lines[i].Name, "rename the line, or give it the magnitude "+name)
	}
	if k, taken := r.find(AnUnknown, name); taken {
		other := "elsewhere"
		switch u := r.p.Unknowns[k]; {
		case u.Line >= 0:
			other = "by the line " + r.p.Lines[u.Line].Name
		case u.Joint >= 0:
			other = "by the joint " + r.p.Joints[u.Joint].Name
		}
		return 0, r.fail(ref, diag.Span{}, "the unknown "+name+" is used "+other+" and by the line "+r.p.Lines[i].Name, "rename one of them")
	}
	return r.addUnknown(Unknown{Entry: Entry{Name: name}, Dim: units.Force, Line: i, Joint: -1}), true
}

func (r *reading) addUnknown(u Unknown) int {
	r.p.Unknowns = append(r.p.Unknowns, u)
	return r.note(AnUnknown, u.Name, len(r.p.Unknowns)-1)
}

// magnitudeOf looks a name up as a magnitude: that of a line, or an unknown that
// several lines share. Unit symbols and the reader's own words stay what they are.
func (r *reading) magnitudeOf(name string, e env) (units.Value, bool, error) {
	if i, ok := r.find(ALine, name); ok {
		if !r.magnitude(i) {
			return units.Value{}, true, errElsewhere
		}
		l := &r.p.Lines[i]
		if l.Components != nil {
			return units.Value{}, true, diag.New(name+" is given by components, so it has no magnitude of its own", "give "+name+" a direction and a magnitude")
		}
		return r.asValue(l.Magnitude, units.Force), true, nil
	}
	if r.p.belt(name) != nil {
		return units.Value{}, true, twoTensions(diag.Span{}, name, "")
	}
	if i, ok := r.find(ACouple, name); ok {
		if !r.coupleOf(i) {
			return units.Value{}, true, errElsewhere
		}
		return r.asValue(r.p.Couples[i].Magnitude, units.Moment), true, nil
	}
	if i, ok := r.find(ofAJoint, name); ok {
		r.jointUnknowns(i)
	}
	u, ok := r.find(AnUnknown, name)
	if !ok {
		if NameFor(AnUnknown, name) != nil {
			return units.Value{}, false, nil
		}
		if plain := strings.ReplaceAll(name, "_", ""); plain != name && r.namesMagnitude(plain) { // T_1 of a text is T1, as in results
			return e.Lookup(plain)
		}
		u = r.addUnknown(Unknown{Entry: Entry{Name: name, Ref: e.cell}, Dim: units.Force, Line: e.line, Joint: -1})
	}
	return units.Value{Dim: r.p.Unknowns[u].Dim, N: 1, Terms: []units.Term{{Name: name, Coef: 1}}}, true, nil
}

// namesMagnitude tells whether a name in a magnitude brings in no unknown.
func (r *reading) namesMagnitude(name string) bool {
	named := func(what Thing) bool { return r.has(what, name) }
	return slices.ContainsFunc([]Thing{ACouple, ofAJoint, AGiven, ALine, AnUnknown}, named)
}

func (r *reading) asValue(a Affine, d units.Dim) units.Value {
	v := units.Scalar(a.Const, d)
	v.Terms = say.Each(a.Terms, func(t Term) units.Term { return units.Term{Name: r.p.Unknowns[t.Unknown].Name, Coef: t.Coef} })
	return v
}

// spring makes the tension of a spring of known stiffness:
//
//	T = k (|r| - natural)
//
// A spring without stiffness is a link whose tension is unknown or given; one
// without a natural length has an unknown tension, and T/k is its stretch.
func (r *reading) spring(l *Line, w row, hasMagnitude bool) (sprung, ok bool) {
	k, n := w.quantity("stiffness"), w.quantity("natural")
	switch {
	case !k.has && !n.has:
		return false, true
	case k.has && hasMagnitude:
		return true, k.fail("the tension of the spring "+l.Name+" is given by its stiffness and by its magnitude", "remove one of them")
	case hasMagnitude:
		return false, true // the natural length is kept and nothing follows from it
	case !k.has:
		return true, w.fail("the spring "+l.Name+" has a natural length but no stiffness", "a stiffness such as 500 N/m")
	case !k.positive("a stiffness", "the form 500 N/m"):
		return true, false
	case !n.has:
		l.Spring = &Spring{Stiffness: k.value, Free: true}
		return false, true
	case !n.ok:
		return true, false
	case n.value < 0:
		return true, n.fail("a natural length cannot be negative", "the form 0.4 m")
	}
	length := l.Length()
	if length == 0 {
		return true, w.fail("the length of the spring "+l.Name+" follows from its two ends", lineKey("path")+" C D instead of "+lineKey("along"))
	}
	l.Spring = &Spring{Stiffness: k.value, Natural: n.value, Stretch: length - n.value}
	l.Magnitude = Affine{Const: k.value * l.Spring.Stretch}
	return true, true
}

// Length is the length of a line's whole path, 0 where it has only a direction.
func (l *Line) Length() float64 {
	sum := 0.0
	for _, leg := range l.Legs {
		sum += leg.Length
	}
	return sum
}

// Pushes tells that a positive magnitude pushes the two ends of a line apart: that of a
// strut, and of a contact along its path between two bodies.
func (l *Line) Pushes() bool {
	return l.Kind == Strut || l.Kind == Contact && l.JoinsEnds()
}

// Between tells that a line acts on two bodies.
func (l *Line) Between() bool { return len(l.Acts) == 2 }

// JoinsEnds tells that a line acts on two bodies along its path, from point to point.
func (l *Line) JoinsEnds() bool {
	return l.Between() && l.Components == nil && len(l.Legs) > 0 && l.Legs[0].To >= 0
}

// Direction is the unit vector of a line's first leg seen from the body it acts
// on first; false where the line is given by unknown components.
func (l *Line) Direction() (r3.Vec, bool) {
	if len(l.Legs) == 0 || len(l.Acts) == 0 {
		return r3.Vec{}, false
	}
	if l.Legs[0].To < 0 || !l.Kind.Info().Path {
		return l.Legs[0].U, true
	}
	at := l.Acts[0].Point
	for _, leg := range l.Legs {
		if leg.From == at {
			return leg.U, true
		}
	}
	return r3.Scale(-1, l.Legs[len(l.Legs)-1].U), true
}
