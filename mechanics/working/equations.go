package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/mechanics/problem"
	english "trivet/mechanics/say"
	"trivet/units"
)

// rowName is ΣFx, or ΣMz; in the plane ΣM about a point has no axis.
func (b *builder) rowName(i int) doc.Math {
	r := &b.s.System.Rows[i]
	if r.Moment && b.p.Planar {
		return bigSum(doc.Math{Op: doc.Symbol, Text: "M", Of: []doc.Math{words(r.About)}})
	}
	return bigSum(doc.Math{Op: doc.Symbol, Text: r.Axis[:1], Of: []doc.Math{words(r.Axis[1:])}, Name: r.Axis})
}

// equations are ΣF = 0 and ΣM = 0 of each body per axis, in symbols: what there is to be filled in.
func (b *builder) equations() {
	sys := &b.s.System
	if b.many() {
		return
	}
	for i := range b.p.CutFree() {
		var symbols []doc.Math
		for k := sys.Start[i]; k < sys.Start[i+1]; k++ {
			if total := b.symbolsOf(i, k); !isZero(total) {
				symbols = append(symbols, b.zeroed(k, total))
			}
		}
		if len(symbols) > 0 {
			b.step(Equations, "Equilibrium of "+b.bodyWords(i), Subject{Bodies: []int{i}}, aligned(symbols...))
		}
	}
}

// numbers are the equations with numbers; of many bodies in one table, unless the solution by hand
// of particles writes each where it is solved.
func (b *builder) numbers(byHand bool) {
	if b.many() {
		if byHand && b.particles() {
			b.step(Equations, "Relations between the forces", Subject{}, b.relations()...)
			return
		}
		t := table("On", "Equation")
		for i := range b.p.CutFree() {
			for k, m := range b.numbersOf(i) {
				on := ""
				if k == 0 {
					on = b.p.Bodies[i].Name
				}
				t.Add(wordCell(on), cell(m))
			}
		}
		b.step(Equations, "Equations of equilibrium", Subject{}, append([]doc.Block{say(english.Capital(b.unitsSaid()) + "."), t}, b.relations()...)...)
		return
	}
	with := []doc.Block{say("With " + b.unitsSaid() + ":")}
	for i := range b.p.CutFree() {
		b.step(Equations, "Equilibrium of "+b.bodyWords(i)+", with numbers", Subject{Bodies: []int{i}}, append(with, aligned(b.numbersOf(i)...))...)
		with = nil
	}
	b.step(Equations, "Relations between the forces", Subject{}, b.relations()...)
}

// particles tells that no body is rigid.
func (b *builder) particles() bool {
	return !slices.ContainsFunc(b.p.Bodies, func(x problem.Body) bool { return !x.Particle })
}

// relations are what ties forces to each other: F = μ N. Those of belts have a step of their own.
func (b *builder) relations() []doc.Block {
	var of []doc.Math
	for k := range b.ties {
		if !b.ofBelt(&b.ties[k]) {
			of = append(of, equal(b.ties[k].name, b.tied(&b.ties[k])))
		}
	}
	if len(of) == 0 {
		return nil
	}
	return []doc.Block{aligned(of...)}
}

// zeroed is ΣF = sum = 0.
func (b *builder) zeroed(i int, total doc.Math) doc.Math {
	zero := traced(origin.Balance, exactly(0))
	if total.Op == doc.Number || total.Op == doc.Neg && total.Of[0].Op == doc.Number {
		return equal(b.rowName(i), doc.Math{Op: doc.Relate, Text: "≠", Of: []doc.Math{total, zero}})
	}
	return equal(b.rowName(i), total, zero)
}

func (b *builder) unitsSaid() string {
	says := "forces in " + b.p.Units.Force.Symbol
	for i := range b.p.CutFree() {
		if !b.p.Bodies[i].Particle {
			return says + ", lengths in " + b.p.Units.Length.Symbol + ", moments in " + b.p.Units.For(units.Moment).Symbol
		}
	}
	return says
}

// symbolsOf is the sum of what has a part in a row, in symbols.
func (b *builder) symbolsOf(body, i int) doc.Math {
	r := &b.s.System.Rows[i]
	axis := int(r.Axis[1] - 'x')
	var of []doc.Math
	for k := range b.acts[body] {
		a := &b.acts[body][k]
		known, shares := b.force(a)
		if !r.Moment {
			if hasComponent(known, shares, axis) {
				of = append(of, b.componentSymbols(a, known, shares, axis)...)
			}
			continue
		}
		if m, turning := momentParts(b.p.Arm(a.Act), known, shares); hasComponent(m, turning, axis) {
			name := b.momentName(a)
			suffix := ""
			if !b.p.Planar {
				name = doc.Math{Op: doc.Symbol, Text: "M", Of: name.Of}
				suffix = r.Axis[1:]
			}
			of = append(of, part(name, suffix))
		}
		if couple, shares := b.coupleParts(a); hasComponent(couple, shares, axis) {
			of = append(of, b.coupleSymbols(a, axis)...)
		}
	}
	return sum(of...)
}

func hasComponent(known r3.Vec, shares []share, axis int) bool {
	if xyz(cleaned(known))[axis] != 0 {
		return true
	}
	return slices.ContainsFunc(shares, func(s share) bool { return xyz(cleaned(s.d))[axis] != 0 })
}

// componentSymbols is T1x, or Ax of a joint that has it for an unknown.
func (b *builder) componentSymbols(a *act, known r3.Vec, shares []share, axis int) []doc.Math {
	var one []doc.Math
	plain := known == (r3.Vec{})
	for _, t := range shares {
		d := cleaned(t.d)
		switch x := xyz(d)[axis]; {
		case x == 0:
		case math.Abs(x) == 1 && norm(d) == 1 && (a.joint >= 0 || a.tie >= 0 || b.p.Lines[max(a.line, 0)].Legs == nil):
			m := t.name
			if x < 0 {
				m = neg(m)
			}
			one = append(one, m)
		default:
			plain = false
		}
	}
	if plain && len(one) > 0 {
		return one
	}
	m := part(a.name, "xyz"[axis:axis+1])
	if a.sign {
		m = neg(m)
	}
	return []doc.Math{m}
}

func (b *builder) coupleSymbols(a *act, axis int) []doc.Math {
	if a.couple {
		if b.p.Planar {
			return []doc.Math{b.momentName(a)}
		}
		return []doc.Math{part(doc.Math{Op: doc.Symbol, Text: "M", Of: b.momentName(a).Of}, "xyz"[axis:axis+1])}
	}
	var of []doc.Math
	for _, t := range a.CoupleTerms {
		d := cleaned(t.D)
		switch x := xyz(d)[axis]; {
		case x == 0:
		case norm(d) != 1 || math.Abs(x) != 1:
			return []doc.Math{part(doc.Math{Op: doc.Symbol, Text: "C", Of: b.heldName(a).Of}, "xyz"[axis:axis+1])}
		case x < 0:
			of = append(of, neg(b.unknown(t.Unknown)))
		default:
			of = append(of, b.unknown(t.Unknown))
		}
	}
	return of
}

// numbersOf are a body's rows of the system, Σ coefficient·unknown + known = 0, but for those that
// hold nothing.
func (b *builder) numbersOf(body int) []doc.Math {
	sys := &b.s.System
	var out []doc.Math
	for i := sys.Start[body]; i < sys.Start[body+1]; i++ {
		if total := b.rowSum(body, i); !isZero(total) {
			out = append(out, b.zeroed(i, total))
		}
	}
	return out
}

// rowSum is Σ coefficient·unknown + Σ coefficient·tied force + known of a row.
func (b *builder) rowSum(body, i int) doc.Math {
	row := &b.s.System.Rows[i]
	unit := b.p.Units.For(row.Dim())
	coefs, tied := map[int]float64{}, map[int]bool{}
	var order []int
	for _, t := range b.s.System.Terms[i] {
		coefs[t.Col], order = b.s.Coefficient(i, t.Col), append(order, t.Col)
	}
	known := -b.right(i)
	var ties []doc.Math
	for k := range b.acts[body] {
		a := &b.acts[body][k]
		if a.tie < 0 {
			continue
		}
		d, arm := a.dir, 1.0
		if row.Moment {
			r := b.p.Arm(a.Act)
			d, arm = r3.Cross(r, d), norm(r)
		}
		c := clean(xyz(d)[int(row.Axis[1]-'x')], arm)
		if c == 0 {
			continue
		}
		shares := share{unknown: -1}
		ties = append(ties, times(traced(b.parts(a, row.Moment)(&shares, int(row.Axis[1]-'x')), b.number(c*b.p.Units.Force.Factor/unit.Factor)), a.name))
		is := b.ties[a.tie].is
		for _, t := range is.Terms {
			if _, some := coefs[t.Unknown]; !some {
				order = append(order, t.Unknown)
			}
			part := c * t.Coef * b.unitOf(t.Unknown).Factor / unit.Factor
			coefs[t.Unknown] = clean(coefs[t.Unknown]-part, math.Abs(part))
			tied[t.Unknown] = true
		}
		part := c * is.Const / unit.Factor
		known = clean(known-part, math.Abs(part))
	}
	var of []doc.Math
	for _, j := range order {
		if c := coefs[j]; c != 0 {
			from := origin.Entry(b.s, i, j)
			if tied[j] {
				from = origin.Phrase("%[1]s: what one unit of it adds by itself, without the forces that follow from it", b.s.X[j].Name)
			}
			of = append(of, times(traced(from, b.number(c)), b.unknown(j)))
		}
	}
	of = append(of, ties...)
	if known != 0 || len(of) == 0 {
		of = append(of, traced(origin.Known(b.s, i), b.number(known+0)))
	}
	return sum(of...)
}

// right is b[i] in the unit of its row.
func (b *builder) right(i int) float64 {
	return b.s.System.B[i] / b.p.Units.For(b.s.System.Rows[i].Dim()).Factor
}

// matrixColumns is up to how many unknowns A x = b is written out: a page is not wider.
const matrixColumns = 6

// matrix is A x = b.
func (b *builder) matrix() {
	sys := &b.s.System
	x, right := doc.Math{Op: doc.Vec, Text: "x"}, doc.Math{Op: doc.Vec, Text: "b"}
	form := equal(row(doc.Math{Op: doc.Vec, Text: "A"}, x), right)
	n, m := len(sys.Cols), len(sys.Rows)
	if n > matrixColumns || m > 2*matrixColumns {
		return // wider than a page
	}
	grid, xs, bs := doc.Math{Op: doc.Grid}, doc.Math{Op: doc.Column}, doc.Math{Op: doc.Column}
	for i := range sys.Rows {
		line := row()
		for j := range sys.Cols {
			line.Of = append(line.Of, traced(origin.Entry(b.s, i, j), b.number(b.s.Coefficient(i, j))))
		}
		grid.Of = append(grid.Of, line)
		bs.Of = append(bs.Of, traced(origin.Known(b.s, i), b.number(b.right(i)+0)))
	}
	for j := range sys.Cols {
		xs.Of = append(xs.Of, b.unknown(j))
	}
	says := "In matrix form, "
	if len(b.ties) > 0 {
		says = "With the relations put in, in matrix form, "
	}
	b.step(Matrix, "Matrix form", Subject{}, say(says, form, ":"), formula(equal(row(grid, xs), bs)))
}
