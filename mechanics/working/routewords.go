package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
)

// manyNames is up to how many bodies are named one by one.
const manyNames = 4

// title is the body, or bodies, that a step considers, or what it finds by inspection.
func (w *routeWriter) title(step *handsolve.Step) string {
	switch step.Kind {
	case handsolve.TwoForce:
		return "Two-force member " + w.p.Bodies[w.r.Members[step.Member].Body].Name
	case handsolve.ZeroForce:
		return "Zero-force members"
	case handsolve.Components:
		return "Components of the force in " + w.member(step)
	case handsolve.Together:
		return "Simultaneous equations for " + w.names(found(step))
	}
	e := &step.Equations[0]
	if len(e.Cut) > 0 {
		return "Section through " + english.And(w.cutNames(e)...)
	}
	noun, _ := w.noun(e)
	return english.Capital(noun)
}

func (w *routeWriter) member(step *handsolve.Step) string {
	return w.bodyWords(w.r.Members[step.Member].Body)
}

func (w *routeWriter) cutNames(e *handsolve.Equation) []string {
	names := make([]string, len(e.Cut))
	for k, l := range e.Cut {
		names[k] = w.p.Lines[l].Name
	}
	return names
}

// noun names the bodies of an equation, and whether with an article.
func (w *routeWriter) noun(e *handsolve.Equation) (noun string, article bool) {
	switch {
	case e.Whole && w.truss():
		return "whole truss", true
	case e.Whole && slices.ContainsFunc(w.p.Joints, pinned):
		return "whole frame", true
	case e.Whole:
		return "whole system", true
	case len(e.Bodies) == 1:
		return w.body(e.Bodies[0])
	}
	return w.bodies(e.Bodies) + " together", false
}

// pinned tells that a joint pins two bodies together, as the members of a frame are.
func pinned(j problem.Joint) bool {
	return j.Second >= 0 && j.Normal == (r3.Vec{}) && j.Axis == (r3.Vec{})
}

func (w *routeWriter) bodies(of []int) string {
	names := make([]string, len(of))
	for k, b := range of {
		names[k] = english.The(w.p.Bodies[b].Name)
	}
	if len(names) > manyNames {
		return english.AndMore(names, manyNames-1)
	}
	return english.And(names...)
}

// on is the body that an equation is written for: on the beam, on joint B.
func (w *routeWriter) on(e *handsolve.Equation) string {
	if len(e.Cut) > 0 {
		return " on this part"
	}
	return " on " + the(w.noun(e))
}

// sentences say a step: which equation, why the other unknowns drop out, and what
// is known already.
func (w *routeWriter) sentences(step *handsolve.Step) [][]any {
	switch step.Kind {
	case handsolve.TwoForce:
		return [][]any{w.twoForce(step)}
	case handsolve.ZeroForce:
		return w.zeroForce(step)
	case handsolve.Components:
		return [][]any{{w.symbol(len(w.p.Unknowns) + step.Member), " has these components at the ends of the member:"}}
	case handsolve.Together:
		return [][]any{w.together(step)}
	}
	return [][]any{w.one(step)}
}

func (w *routeWriter) symbols(of []int) []doc.Inline {
	m := make([]doc.Math, len(of))
	for k, symbol := range of {
		m[k] = w.symbol(symbol)
	}
	return list(m)
}

func found(step *handsolve.Step) (symbols []int) {
	for _, x := range step.Finds {
		symbols = append(symbols, x.Symbol)
	}
	return symbols
}

func (w *routeWriter) names(symbols []int) string {
	names := make([]string, len(symbols))
	for k, symbol := range symbols {
		names[k] = w.r.Name(w.p, symbol)
	}
	return english.And(names...)
}

func (w *routeWriter) twoForce(step *handsolve.Step) []any {
	m := &w.r.Members[step.Member]
	from, to := w.end(m.From), w.end(m.To)
	var shares []int
	for _, s := range m.Shares {
		shares = append(shares, s.Unknown)
	}
	out := []any{"Forces act on " + w.member(step) + " at " + from + " and " + to + " only, so it is a two-force member and they lie along " + from + to + ": ",
		w.symbol(len(w.p.Unknowns) + step.Member), ", positive in tension, replaces ", w.symbols(shares), "."}
	if zero := found(step); len(zero) > 0 {
		n := len(zero)
		out = append(out, " ", w.symbols(zero), " "+english.Plural(n, "is")+" perpendicular to it and "+english.Plural(n, "is")+" zero.")
	}
	return out
}

func (w *routeWriter) end(point int) string {
	if point < 0 {
		return "its end"
	}
	return w.p.Points[point].Name
}

// zeroForce says joint by joint which rule gives which members.
func (w *routeWriter) zeroForce(step *handsolve.Step) (out [][]any) {
	for _, z := range step.Zero {
		noun, _ := w.body(z.Body)
		says := []any{"No load acts at " + noun + ". "}
		var zero []doc.Math
		for _, symbol := range z.Zero {
			zero = append(zero, w.symbol(symbol))
		}
		zero = append(zero, traced(origin.Phrase("zero by inspection: no load acts at %[1]s", noun), exactly(0)))
		if len(z.Collinear) > 0 {
			says = append(says, w.symbols(z.Collinear), " are collinear there, so the third member carries no force: ")
		} else {
			says = append(says, "It joins two members that are not collinear, so neither carries a force: ")
		}
		out = append(out, append(says, equal(zero...), "."))
	}
	return out
}

// section says what a cut goes through and which part is considered.
func (w *routeWriter) section(e *handsolve.Equation) string {
	return "Cut " + english.And(w.cutNames(e)...) + " and consider the part with " + w.bodies(e.Bodies) + "."
}

func (w *routeWriter) one(step *handsolve.Step) []any {
	e, alone := &step.Equations[0], w.symbol(step.Finds[0].Symbol)
	var out []any
	if e.Unnamed() && e.Moment {
		out = append(append([]any{"Take moments about "}, w.center(e)...), "; only ", alone, " remains")
	} else if e.Unnamed() {
		out = append(append([]any{"Take components along "}, w.direction(e)...), "; only ", alone, " remains")
	} else {
		out = append(w.sumOn(e), " contains only ", alone)
	}
	begin := ": "
	for _, d := range e.Drops {
		// The direction, the point or the axis was chosen for these.
		of := slices.DeleteFunc(slices.Clone(d.Symbols), func(symbol int) bool { return slices.Contains(e.Named.Perp, symbol) })
		if n := len(of); n > 0 {
			out = append(out, begin, w.symbols(of), " "+w.reason(e, d.Why, n))
			begin = "; "
		}
	}
	out = append(out, ".")
	if n := len(step.Needs); n > 0 {
		out = append(out, " ", w.symbols(step.Needs), " "+english.Plural(n, "is")+" already known.")
	}
	return append(out, w.substituted(e)...)
}

// substituted says which relations stand in an equation: F1 = 0.35 N1 is substituted.
func (w *routeWriter) substituted(e *handsolve.Equation) []any {
	var of []doc.Math
	for _, t := range w.ties {
		d := 0.0
		for _, a := range w.tiedActs(e, t) {
			if e.Moment {
				d += r3.Dot(e.Along, r3.Cross(in(r3.Sub(a.At, e.At), w.p.Units.Length), a.dir))
			} else {
				d += r3.Dot(e.Along, a.dir)
			}
		}
		if math.Abs(d) > sumTol {
			of = append(of, traced(w.tieFrom(t), equal(t.name, w.affine(t.is, w.p.Units.Force))))
		}
	}
	if len(of) == 0 {
		return nil
	}
	return []any{" ", list(of), " " + english.Plural(len(of), "is") + " substituted."}
}

// tiedActs are the acts of a tied force on the bodies of an equation.
func (w *routeWriter) tiedActs(e *handsolve.Equation, tie *tie) (of []*act) {
	for _, i := range e.Bodies {
		for _, a := range w.acts[i] {
			if a.tie == tie {
				of = append(of, a)
			}
		}
	}
	return of
}

// forces names the forces of symbols in an equation, each with those that are tied to it:
// T1 and the resultant of N and F.
func (w *routeWriter) forces(e *handsolve.Equation, symbols []int) (out []any, combined bool) {
	var each [][]any
	for _, symbol := range symbols {
		with := []doc.Math{w.symbol(symbol)}
		for _, tie := range w.ties {
			if len(w.tiedActs(e, tie)) > 0 && slices.ContainsFunc(tie.is.Terms, func(t problem.Term) bool { return t.Unknown == symbol }) {
				with = append(with, tie.name)
			}
		}
		phrase := []any{list(with)}
		if len(with) > 1 {
			phrase, combined = []any{"the resultant of ", list(with)}, true
		}
		each = append(each, phrase)
	}
	return and(each), combined
}

// sumOn is ΣFx on the beam, ΣM_A on the beam, ΣM about the axis that is described.
func (w *routeWriter) sumOn(e *handsolve.Equation) []any {
	out := []any{w.heading(e), w.on(e)}
	switch {
	case e.Unnamed() && e.Moment:
		return append(append(out, " about "), w.center(e)...)
	case e.Unnamed():
		return append(append(out, " along "), w.direction(e)...)
	case e.Moment && e.Named.To >= 0:
		return append(out, ", about the axis "+w.p.Points[e.Named.Point].Name+w.p.Points[e.Named.To].Name+",")
	case e.Moment && e.Named.Axis != 0:
		return append(out, ", about the "+string(e.Named.Axis)+" axis through "+w.p.Points[e.Named.Point].Name+",")
	}
	return out
}

// direction is n = u1 × u2 / |u1 × u2| = (x, y, z), perpendicular to T1 and T2; in the
// plane n = u of the unknown that it is along.
func (w *routeWriter) direction(e *handsolve.Equation) []any {
	of := []doc.Math{symbol("n")}
	n := &e.Named
	var perp []any
	forces, combined := w.forces(e, n.Perp)
	if len(n.Perp) > 0 {
		perp = append([]any{", perpendicular to "}, forces...)
	}
	switch {
	case combined: // the direction of a resultant has no symbol
	case len(n.Perp) > 0 && w.p.Planar:
		if u, v, ok := w.unitAlong(n.Along); ok {
			if r3.Dot(v, e.Along) < 0 {
				u = neg(u)
			}
			of = append(of, u)
		}
	case len(n.Perp) > 0:
		a, u, first := w.unitAlong(n.Perp[0])
		b, v, second := doc.Math{}, r3.Vec{}, true
		if n.Axis != 0 {
			k := n.Axis - 'x'
			b, v = unitVec("ijk"[k:k+1]), [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[k]
			perp = append(perp, " and the "+string(n.Axis)+" axis")
		} else {
			b, v, second = w.unitAlong(n.Perp[1])
		}
		if r3.Dot(r3.Cross(u, v), e.Along) < 0 {
			a, b = b, a
		}
		if first && second {
			of = append(of, fraction(cross(a, b), size(cross(a, b))))
		}
	}
	says := "the %[1]s component of the unit vector n"
	if len(n.Perp) > 0 {
		says += ", perpendicular to %[2]s"
	}
	along := func(axis int) doc.Origin {
		return origin.Phrase(says, "xyz"[axis:axis+1], w.names(n.Perp))
	}
	return append([]any{equal(append(of, w.tuple(e.Along, along))...)}, perp...)
}

// unitAlong is the unit vector of a symbol's force, where it has one with a name.
func (w *routeWriter) unitAlong(symbol int) (doc.Math, r3.Vec, bool) {
	if symbol < 0 || symbol >= len(w.p.Unknowns) {
		return doc.Math{}, r3.Vec{}, false
	}
	u := &w.p.Unknowns[symbol]
	if u.Own && len(w.p.Lines[u.Line].Legs) == 1 {
		l := &w.p.Lines[u.Line]
		if isAxis(l.Legs[0].U) { // it has no step of its own
			return w.along(l.Legs[0].U, unsaid), l.Legs[0].U, true
		}
		return unitVec("u", named(l.Name)), l.Legs[0].U, true
	}
	if u.Joint >= 0 {
		for _, t := range w.p.Joints[u.Joint].Forces {
			for k, x := range xyz(t.D) {
				if t.Unknown == symbol && x == 1 {
					return unitVec("ijk"[k : k+1]), t.D, true
				}
			}
		}
	}
	return doc.Math{}, r3.Vec{}, false
}

// center describes the point or the axis of a sum of moments that has no name.
func (w *routeWriter) center(e *handsolve.Equation) []any {
	n := &e.Named
	at := func(axis int) doc.Origin {
		return origin.Phrase("the %[1]s coordinate of the point that moments are taken about", "xyz"[axis:axis+1])
	}
	place := measured(w.tuple(in(e.At, w.p.Units.Length), at), w.p.Units.Length)
	if w.p.Planar {
		forces, _ := w.forces(e, n.Perp)
		return append(append([]any{"the point ", place, ", where the lines of action of "}, forces...), " intersect")
	}
	out := []any{"the axis through ", place}
	if n.Point >= 0 {
		out[1] = w.p.Points[n.Point].Name
	}
	switch {
	case n.Along >= 0 && n.Point < 0:
		return []any{"the line of action of ", w.symbol(n.Along)}
	case n.Along >= 0:
		return append(out, " parallel to ", w.symbol(n.Along))
	case len(n.Perp) > 0:
		return append(out, " that intersects the lines of action of ", w.symbols(n.Perp))
	}
	along := func(axis int) doc.Origin {
		return origin.Phrase("the %[1]s component of a unit vector along the axis of moments", "xyz"[axis:axis+1])
	}
	return append(out, " along ", w.tuple(e.Along, along))
}

func (w *routeWriter) together(step *handsolve.Step) []any {
	of := w.symbols(found(step))
	out := []any{"No sum of forces or moments contains only one of ", of}
	if step.Screw {
		out = []any{"No direction and no axis leaves only one of ", of, w.on(&step.Equations[0])}
	}
	if len(step.Equations) > len(step.Finds) {
		return append(out, w.all(step)...)
	}
	out = append(out, ", so "+english.Number(len(step.Equations))+" equations are solved simultaneously: ")
	var sums [][]any
	for k := range step.Equations {
		sums = append(sums, w.sumOn(&step.Equations[k]))
	}
	return append(append(out, and(sums)...), ".")
}

// all says that every equation of some bodies is solved, with the unknowns in
// them that have no value.
func (w *routeWriter) all(step *handsolve.Step) []any {
	var bodies, loose []int
	for i := range step.Equations {
		e := &step.Equations[i]
		for _, b := range e.Bodies {
			if !slices.Contains(bodies, b) {
				bodies = append(bodies, b)
			}
		}
		for _, t := range e.Terms {
			if !t.Known && !slices.Contains(found(step), t.Symbol) && !slices.Contains(loose, t.Symbol) {
				loose = append(loose, t.Symbol)
			}
		}
	}
	out := []any{", so the equations of " + w.bodies(bodies) + " are solved simultaneously"}
	if n := len(loose); n > 0 {
		out = append(out, "; ", w.symbols(loose), " "+english.Plural(n, "appears")+" in them too and "+english.Plural(n, "has")+" no single value")
	}
	return append(out, ".")
}

// reason says why so many symbols are not in an equation.
func (w *routeWriter) reason(e *handsolve.Equation, why handsolve.Why, n int) string {
	switch why {
	case handsolve.Through:
		at := "it"
		if e.Named.Point >= 0 {
			at = w.p.Points[e.Named.Point].Name
		}
		return english.Plural(n, "passes") + " through " + at
	case handsolve.Intersects:
		return english.Plural(n, "intersects") + " the axis"
	case handsolve.Parallel:
		return english.Plural(n, "is") + " parallel to the axis"
	case handsolve.Perpendicular:
		return english.Plural(n, "has") + " no component in that direction"
	case handsolve.IsCouple:
		if n > 1 {
			return "are couples"
		}
		return "is a couple"
	case handsolve.CouplePerp:
		return english.Plural(n, "has") + " no component about the axis"
	}
	return english.Plural(n, "cancels")
}
