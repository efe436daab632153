package working

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/units"
)

// loadResultants are the resultants of the distributed loads, and where they act.
func (b *builder) loadResultants() {
	f, l, m := b.p.Units.Force, b.p.Units.Length, b.p.Units.For(units.Moment)
	for i := range b.p.Loads {
		d := &b.p.Loads[i]
		if !d.OK || len(d.Acts) == 0 {
			continue
		}
		from, to := b.p.Points[d.From].Name, b.p.Points[d.To].Name
		none := equal(resultant(d), measured(exactly(0), f))
		var body []doc.Block
		if start, end := d.Loaded(); end > start && (start > 0 || end < d.Length) {
			body = append(body, say("The distributed load "+d.Name+" acts from ", measured(b.length(start), l), " to ", measured(b.length(end), l), " along the line from "+from+" to "+to+"."))
		}
		if d.Water != nil {
			body = append(body, b.pressure(d)...)
		}
		switch {
		case d.Nothing():
			body = append(body, say("The distributed load "+d.Name+" is zero from "+from+" to "+to+"."), aligned(none))
		case d.Total == 0:
			couple := traced(origin.Phrase("couple of %[1]s: the moment of the load diagram, whose area is zero", d.Name), b.number(m.In(d.Couple())))
			body = append(body, say("The distributed load "+d.Name+" has no resultant force; it is equivalent to a couple:"),
				aligned(none, equal(subscripted("C", d.Name), measured(couple, m))))
		default:
			at := traced(origin.Phrase("where the resultant of %[1]s acts: the centroid of the load diagram, along its line", d.Name), b.tuple(in(d.Acts[0].At, l), unsaid))
			body = append(body, say("Replace the distributed load by its resultant, the area of the load diagram, through its centroid, ", distance(d), " from "+from, b.piecesOf(d)),
				aligned(b.area(d)...), say("The resultant acts at ", measured(at, l), "."))
		}
		b.step(Vector, "Resultant of the distributed load "+d.Name, Subject{Loads: []int{i}, Bodies: []int{d.Body}, Points: []int{d.From, d.To}},
			tracedBlocks(origin.Phrase("the distributed load %[1]s, from its cells and the places of its ends", d.Name), body)...)
	}
}

// resultant is the symbol of a distributed load's resultant.
func resultant(d *problem.Distributed) doc.Math { return subscripted("R", d.Name) }

// distance is the symbol of how far a load's resultant acts from its first end.
func distance(d *problem.Distributed) doc.Math { return subscripted("d", d.Name) }

// pressure is p = ρ g h at each end of a gate that is wet, and q = p b.
func (b *builder) pressure(d *problem.Distributed) []doc.Block {
	w, l, load := d.Water, b.p.Units.Length, b.p.Units.For(units.LineLoad)
	rho, g, h, width := symbol("ρ"), symbol("g"), symbol("h"), measured(b.length(w.Width), l)
	pascal, perArea := words("N/m²"), words(b.p.Units.Force.Symbol+"/"+l.Symbol+"²")
	var of []doc.Math
	depths := [2]float64{w.From, w.To}
	for k, point := range []int{d.From, d.To} {
		depth := depths[k]
		if depth <= 0 {
			continue
		}
		p, q := subscripted("p", b.p.Points[point].Name), subscripted("q", b.p.Points[point].Name)
		pressure := w.Density * b.p.G * depth
		shown := row(b.number(pressure*l.Factor/load.Factor), perArea)
		of = append(of, b.equals(p, product(rho, g, h), product(b.number(w.Density), b.number(b.p.G), b.number(depth)), row(b.number(pressure), pascal)))
		if perArea.Text != pascal.Text {
			of = append(of, equal(p, shown))
		}
		of = append(of, b.equals(q, product(p, symbol("b")), product(paren(shown), paren(width)), measured(b.number(load.In(pressure*w.Width)), load)))
	}
	if len(of) == 0 {
		return nil
	}
	body := []doc.Block{say("The pressure of the water at the depth ", h, ", with ", rho, " in kg/m³, ", g, " in m/s² and ", h, " in m, and the load per length of the gate, whose width is ", equal(symbol("b"), width), ":"), aligned(of...)}
	if isAxis(d.Direction) {
		return body
	}
	from, to := &b.p.Points[d.From], &b.p.Points[d.To]
	reach := l.In(r3.Norm(r3.Sub(to.At, from.At)))
	return append(body, say("The pressure acts perpendicular to the gate, ", equal(b.between(from.Name, to.Name), measured(b.tuple(in(r3.Sub(to.At, from.At), l), unsaid), l)), ":"),
		aligned(b.equals(unitVec("n", words(d.Name)), fraction(b.tuple(r3.Scale(reach, d.Direction), unsaid), b.number(reach)), b.along(d.Direction, unsaid))))
}

// ratio is a fraction of small whole numbers.
type ratio [2]int

func (r ratio) value() float64 { return float64(r[0]) / float64(r[1]) }
func (r ratio) math() doc.Math { return fraction(exactly(r[0]), exactly(r[1])) }

// piece is a rectangle or a triangle of a load diagram: what it is, its intensity, that of what is below it,
// its width and start, its part of the rectangle, and the part of the width at which its centroid is.
type piece struct {
	shape                  string
	q, below, width, start float64
	share, centroid        ratio
}

func (p piece) force() float64 { return p.share.value() * p.q * p.width }
func (p piece) at() float64    { return p.start + p.centroid.value()*p.width }

// pieces takes a diagram of straight stretches apart.
func pieces(knots []problem.Ordinate) (out []piece) {
	put := func(shape string, q, below, width, start float64, share, centroid ratio) {
		if q != 0 && width > 0 {
			out = append(out, piece{shape, q, below, width, start, share, centroid})
		}
	}
	half := ratio{1, 2}
	for k := 1; k < len(knots); k++ {
		from, to := knots[k-1], knots[k]
		w := to.S - from.S
		left, right, low := w, w, from.Q // of the triangles that fall and rise, beside what is below both
		if math.Abs(to.Q) < math.Abs(low) {
			low = to.Q
		}
		if from.Q*to.Q < 0 {
			left, low = from.Q/(from.Q-to.Q)*w, 0
			right = w - left
		}
		put("rectangle", low, 0, w, from.S, ratio{1, 1}, half)
		put("triangle", from.Q-low, low, left, from.S, half, ratio{1, 3})
		put("triangle", to.Q-low, low, right, from.S+w-right, half, ratio{2, 3})
	}
	return out
}

// piecesOf ends the sentence before a diagram's area: of several rectangles and triangles it names each with its symbols.
func (b *builder) piecesOf(d *problem.Distributed) []any {
	all := pieces(d.Knots)
	if len(all) < 2 {
		return []any{":"}
	}
	number := 0
	parts := english.Each(all, func(p piece) any {
		number++
		return []any{"a " + p.shape + " (", subscripted("R", strconv.Itoa(number)), ")"}
	})
	force, reach := subscripted("R", "i"), subscripted("d", "i")
	return []any{". The diagram consists of ", and(parts), ", so ", equal(resultant(d), bigSum(force)), " and ", equal(distance(d), fraction(bigSum(product(force, reach)), resultant(d))), ":"}
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
		return []doc.Math{equal(r, words("∫ q ds"), total), equal(at, fraction(words("∫ q s ds"), r), place)}
	}
	var out, forces, moments []doc.Math
	for k, p := range all {
		force, where := b.number(f.In(p.force())), measured(b.length(p.at()), l)
		name, from, value := subscripted("R", strconv.Itoa(k+1)), subscripted("d", strconv.Itoa(k+1)), measured(force, f)
		if len(all) == 1 {
			name, from, value, where = r, at, total, place
		}
		form, reach := []doc.Math{b.perLength(math.Abs(p.q)), b.length(p.width)}, product(p.centroid.math(), b.length(p.width))
		if p.below != 0 {
			height := sum(b.perLength(math.Abs(p.q+p.below)), neg(b.perLength(math.Abs(p.below))))
			form = []doc.Math{b.length(p.width), paren(height)}
		}
		if p.share != (ratio{1, 1}) {
			form = append([]doc.Math{p.share.math()}, form...)
		}
		if p.start != 0 {
			reach = sum(b.length(p.start), reach)
		}
		out = append(out, b.equals(name, signed(p.q, product(form...)), value), b.equals(from, reach, where))
		forces, moments = append(forces, force), append(moments, product(force, b.length(p.at())))
	}
	if len(all) == 1 {
		return out
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
	f, m, g := b.p.Units.Force, symbol("m"), symbol("g")
	var of []doc.Math
	var about Subject
	put := func(name doc.Math, what string, mass float64) {
		from := origin.Phrase("the mass of %[1]s, from its cell, times g", what)
		kg := traced(origin.Phrase("the mass of %[1]s, from its cell", what), b.number(mass))
		gravity := traced(origin.Phrase("g, the acceleration of gravity of the sheet"), b.number(b.p.G))
		of = append(of, b.equals(name, product(m, g), product(paren(kg), paren(gravity)), row(traced(from, b.number(mass*b.p.G)), words("N"))))
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
	b.derivation(Vector, english.Plural(len(of), "Weight"), about, say("Weight ", equal(symbol("W"), product(m, g)), ", with ", m, " in kg and ", g, " in m/s²:"), of)
}

// springs are the forces of springs whose stretch is known: k (length - natural).
func (b *builder) springs() {
	var of []doc.Math
	var about Subject
	for i := range b.p.Lines {
		l := &b.p.Lines[i]
		if l.Spring == nil || l.Spring.Free || l.Length() == 0 || len(l.Magnitude.Terms) > 0 {
			continue
		}
		about.Lines = append(about.Lines, i)
		is := func(what string, m doc.Math) doc.Math { return traced(origin.Phrase(what, l.Name), m) }
		force := is("force of %[1]s: its stiffness times its stretch", b.number(b.p.Units.Force.In(l.Magnitude.Const)))
		stiffness := is("stiffness of %[1]s, from its cell", b.perLength(l.Spring.Stiffness))
		length, natural := is("length of %[1]s, from the places of its points", b.length(l.Length())), is("natural length of %[1]s, from its cell", b.length(l.Spring.Natural))
		of = append(of, b.equals(named(l.Name), product(stiffness, paren(sum(length, neg(natural)))), measured(force, b.p.Units.Force)))
	}
	stretch := paren(sum(symbol("l"), neg(subscripted("l", "0"))))
	b.derivation(Vector, "Spring "+english.Plural(len(of), "force"), about, say("Spring force ", equal(symbol("F"), product(symbol("k"), stretch)), ", positive in tension:"), of)
}
