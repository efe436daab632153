package working

import (
	"math"
	"strconv"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/units"
)

// loadResultants are the resultants of the distributed loads, and where they act.
func (b *builder) loadResultants() {
	for i := range b.p.Loads {
		d := &b.p.Loads[i]
		if !d.OK || len(d.Acts) == 0 {
			continue
		}
		f, l := b.p.Units.Force, b.p.Units.Length
		about := Subject{Loads: []int{i}, Bodies: []int{d.Body}, Points: []int{d.From, d.To}}
		from := b.p.Points[d.From].Name
		is := func(what string) axes { return func(int) doc.Origin { return origin.Phrase(what, d.Name) } }
		var body []doc.Block
		if start, end := d.Loaded(); end > start && (start > 0 || end < d.Length) {
			body = append(body, say("The distributed load "+d.Name+" acts from ", measured(b.length(start), l), " to ", measured(b.length(end), l), " along the line from "+from+" to "+b.p.Points[d.To].Name+"."))
		}
		if d.Water != nil {
			body = append(body, b.pressure(d)...)
		}
		switch {
		case d.Nothing():
			body = append(body, say("The distributed load "+d.Name+" is zero from "+from+" to "+b.p.Points[d.To].Name+"."),
				formula(equal(resultant(d), measured(exactly(0), f))))
		case d.Total == 0:
			u := b.p.Units.For(units.Moment)
			body = append(body, say("The distributed load "+d.Name+" has no resultant force; it is equivalent to a couple:"),
				aligned(equal(resultant(d), measured(exactly(0), f)), equal(subscripted("C", d.Name), measured(traced(is("couple of %[1]s: the moment of the load diagram, whose area is zero")(0), b.number(u.In(d.Couple()))), u))))
		default:
			body = append(body, say("Replace the distributed load by its resultant, the area of the load diagram, through its centroid, ", distance(d), " from "+from+":"),
				aligned(b.area(d)...), say("The resultant acts at ", measured(b.tuple(in(d.At, l), is("where the resultant of %[1]s acts: the centroid of the load diagram, along its line")), l), "."))
		}
		b.step(Vector, "Resultant of the distributed load "+d.Name, about, tracedBlocks(origin.Phrase("the distributed load %[1]s, from its cells and the places of its ends", d.Name), body)...)
	}
}

// resultant is the symbol of a distributed load's resultant.
func resultant(d *problem.Distributed) doc.Math { return subscripted("R", d.Name) }

// distance is the symbol of how far a load's resultant acts from its first end.
func distance(d *problem.Distributed) doc.Math { return subscripted("d", d.Name) }

// pressure is p = ρ g h at each end of a gate that is wet, and q = p b.
func (b *builder) pressure(d *problem.Distributed) []doc.Block {
	w, q := d.Water, b.p.Units.For(units.LineLoad)
	p, l := doc.Math{Op: doc.Symbol, Text: "p"}, b.p.Units.Length
	pascal := words("N/m²")
	perArea := words(b.p.Units.Force.Symbol + "/" + l.Symbol + "²")
	var of []doc.Math
	for _, end := range []struct {
		point int
		depth float64
	}{{d.From, w.From}, {d.To, w.To}} {
		if end.depth <= 0 {
			continue
		}
		at := words(b.p.Points[end.point].Name)
		p.Of = []doc.Math{at}
		intensity := doc.Math{Op: doc.Symbol, Text: "q", Of: []doc.Math{at}}
		pressure := w.Density * b.p.G * end.depth
		of = append(of, b.equals(p, product(symbol("ρ"), symbol("g"), symbol("h")), product(b.number(w.Density), b.number(b.p.G), b.number(end.depth)), row(b.number(pressure), pascal)))
		if perArea.Text != pascal.Text {
			of = append(of, equal(p, row(b.number(pressure*l.Factor/q.Factor), perArea)))
		}
		of = append(of, b.equals(intensity, product(p, symbol("b")), product(paren(row(b.number(pressure*l.Factor/q.Factor), perArea)), paren(measured(b.length(w.Width), l))), measured(b.number(q.In(pressure*w.Width)), q)))
	}
	if len(of) == 0 {
		return nil
	}
	return []doc.Block{say("The pressure of the water at the depth ", symbol("h"), ", with ", symbol("ρ"), " in kg/m³, ", symbol("g"), " in m/s² and ", symbol("h"), " in m, and the load per length of the gate, whose width is ", equal(symbol("b"), measured(b.length(w.Width), l)), ":"), aligned(of...)}
}

// piece is a rectangle or a triangle of a load diagram: its intensity, width, start and
// the part of the width at which its centroid is.
type piece struct{ q, width, start, share, centroid float64 }

func (p piece) force() float64 { return p.share * p.q * p.width }
func (p piece) at() float64    { return p.start + p.centroid*p.width }

// pieces takes a diagram of straight stretches apart.
func pieces(knots []problem.Ordinate) []piece {
	var out []piece
	put := func(q, width, start, share, centroid float64) {
		if q != 0 && width > 0 {
			out = append(out, piece{q, width, start, share, centroid})
		}
	}
	for k := 1; k < len(knots); k++ {
		from, to := knots[k-1], knots[k]
		w := to.S - from.S
		if from.Q*to.Q < 0 {
			zero := from.Q / (from.Q - to.Q) * w
			put(from.Q, zero, from.S, 0.5, 1./3)
			put(to.Q, w-zero, from.S+zero, 0.5, 2./3)
			continue
		}
		low := from.Q
		if math.Abs(to.Q) < math.Abs(low) {
			low = to.Q
		}
		put(low, w, from.S, 1, 0.5)
		put(from.Q-low, w, from.S, 0.5, 1./3)
		put(to.Q-low, w, from.S, 0.5, 2./3)
	}
	return out
}

// area is R and where it acts: ½ · 10 · 6 and ⅔ · 6; of several pieces R1 + R2 and the
// mean of their places.
func (b *builder) area(d *problem.Distributed) []doc.Math {
	f, l := b.p.Units.Force, b.p.Units.Length
	r, at := resultant(d), distance(d)
	total := traced(origin.Phrase("resultant of %[1]s: the area of the load diagram", d.Name), measured(b.number(f.In(d.Total)), f))
	place := traced(origin.Phrase("from %[2]s to where the resultant of %[1]s acts: the centroid of the load diagram", d.Name, b.p.Points[d.From].Name), measured(b.length(d.Distance), l))
	all := pieces(d.Knots)
	if len(all) == 0 { // a function of the distance
		integral := func(of string) doc.Math { return words("∫ " + of + " ds") }
		return []doc.Math{equal(r, integral("q"), total), equal(at, fraction(integral("q s"), r), place)}
	}
	third := func(x float64) doc.Math {
		switch {
		case x < 0.4:
			return fraction(exactly(1), exactly(3))
		case x > 0.6:
			return fraction(exactly(2), exactly(3))
		}
		return fraction(exactly(1), exactly(2))
	}
	forceOf := func(p piece) doc.Math {
		of := []doc.Math{b.perLength(p.q), b.length(p.width)}
		if p.share != 1 {
			of = append([]doc.Math{third(p.share)}, of...)
		}
		if of[0].Op == doc.Neg {
			return neg(product(append([]doc.Math{of[0].Of[0]}, of[1:]...)...))
		}
		return product(of...)
	}
	placeOf := func(p piece) doc.Math {
		m := product(third(p.centroid), b.length(p.width))
		if p.start == 0 {
			return m
		}
		return sum(b.length(p.start), m)
	}
	if len(all) == 1 {
		return []doc.Math{b.equals(r, forceOf(all[0]), total), b.equals(at, placeOf(all[0]), place)}
	}
	var out, forces, moments []doc.Math
	for k, p := range all {
		name := doc.Math{Op: doc.Symbol, Text: "R", Of: []doc.Math{words(strconv.Itoa(k + 1))}}
		where := doc.Math{Op: doc.Symbol, Text: "d", Of: name.Of}
		out = append(out, b.equals(name, forceOf(p), measured(b.number(f.In(p.force())), f)), b.equals(where, placeOf(p), measured(b.length(p.at()), l)))
		forces, moments = append(forces, b.number(f.In(p.force()))), append(moments, product(b.number(f.In(p.force())), b.length(p.at())))
	}
	return append(out, b.equals(r, sum(forces...), total), b.equals(at, fraction(sum(moments...), b.number(f.In(d.Total))), place))
}

// perLength shows a force per length in the sheet's units of both, so that it times a length
// is a force.
func (b *builder) perLength(x float64) doc.Math {
	return b.number(x * b.p.Units.Length.Factor / b.p.Units.Force.Factor)
}

// weights are the weights typed as masses: W = m g, in newtons, and in the sheet's unit of force.
func (b *builder) weights() {
	f := b.p.Units.Force
	var of []doc.Math
	var about Subject
	put := func(name doc.Math, what string, mass float64) {
		from := origin.Phrase("the mass of %[1]s, from its cell, times g", what)
		newtons := row(traced(from, b.number(mass*b.p.G)), words("N"))
		form := product(paren(traced(origin.Phrase("the mass of %[1]s, from its cell", what), b.number(mass))), paren(traced(origin.Phrase("g, the acceleration of gravity of the sheet"), b.number(b.p.G))))
		of = append(of, b.equals(name, product(symbol("m"), symbol("g")), form, newtons))
		if f.Symbol != "N" {
			of = append(of, equal(name, measured(traced(from, b.number(f.In(mass*b.p.G))), f)))
		}
	}
	for i := range b.p.Lines {
		if l := &b.p.Lines[i]; l.Mass != 0 && len(l.Acts) > 0 {
			put(named(l.Name), l.Name, l.Mass)
			about.Lines = append(about.Lines, i)
		}
	}
	for i := range b.p.Bodies {
		if body := &b.p.Bodies[i]; body.Mass != 0 {
			put(subscripted("W", body.Name), body.Name, body.Mass)
			about.Bodies = append(about.Bodies, i)
		}
	}
	if len(of) > 0 {
		b.step(Vector, english.Plural(len(of), "Weight"), about, say("Weight ", equal(symbol("W"), product(symbol("m"), symbol("g"))), ", with ", symbol("m"), " in kg and ", symbol("g"), " in m/s²:"), aligned(of...))
	}
}

// springs are the forces of springs whose stretch is known: k (length - natural).
func (b *builder) springs() {
	f := b.p.Units.Force
	var of []doc.Math
	var about Subject
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.Spring == nil || l.Spring.Free || l.Length() == 0 || len(l.Magnitude.Terms) > 0 {
			continue
		}
		about.Lines = append(about.Lines, i)
		is := func(what string, m doc.Math) doc.Math { return traced(origin.Phrase(what, l.Name), m) }
		force := measured(is("force of %[1]s: its stiffness times its stretch", b.number(f.In(l.Magnitude.Const))), f)
		stiffness := is("stiffness of %[1]s, from its cell", b.perLength(l.Spring.Stiffness))
		stretched := paren(sum(is("length of %[1]s, from the places of its points", b.length(l.Length())), neg(is("natural length of %[1]s, from its cell", b.length(l.Spring.Natural)))))
		of = append(of, b.equals(named(l.Name), product(stiffness, stretched), force))
	}
	if len(of) > 0 {
		b.step(Vector, "Spring "+english.Plural(len(of), "force"), about,
			say("Spring force ", equal(symbol("F"), product(symbol("k"), paren(sum(symbol("l"), neg(subscripted("l", "0")))))), ", positive in tension:"), aligned(of...))
	}
}
