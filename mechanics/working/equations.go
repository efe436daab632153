package working

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/units"
)

// rowName is ΣFx, or ΣMz; in the plane ΣM about a point has no axis.
func (b *builder) rowName(i int) doc.Math {
	r := &b.s.System.Rows[i]
	axis := r.Axis[1:]
	if r.Moment {
		if b.p.Planar {
			axis = r.About
		}
		return bigSum(doc.Math{Op: doc.Symbol, Text: "M", Of: []doc.Math{words(axis)}, Name: "M" + axis})
	}
	return bigSum(doc.Math{Op: doc.Symbol, Text: "F", Of: []doc.Math{words(axis)}, Name: "F" + axis})
}

// equations are ΣF = 0 and ΣM = 0 of each body per axis, in symbols, then with numbers.
func (b *builder) equations() {
	sys := &b.s.System
	if len(b.p.Bodies) > many {
		first := true
		for i := range b.p.CutFree() {
			body := []doc.Block{aligned(b.numbersOf(i)...)}
			if first || !b.p.Bodies[i].Particle {
				body = append([]doc.Block{say("With " + b.unitsSaid(i) + ":")}, body...)
			}
			first = false
			b.step(Equations, "Equilibrium of "+b.p.Bodies[i].Name, Subject{Bodies: []int{i}}, body...)
		}
		return
	}
	for i := range b.p.CutFree() {
		var symbols []doc.Math
		for k := sys.Start[i]; k < sys.Start[i+1]; k++ {
			symbols = append(symbols, b.zeroed(k, b.symbolsOf(i, k)))
		}
		body := []doc.Block{aligned(symbols...), say("With numbers, " + b.unitsSaid(i) + ":"), aligned(b.numbersOf(i)...)}
		b.step(Equations, "Equilibrium of "+b.p.Bodies[i].Name, Subject{Bodies: []int{i}}, body...)
	}
}

// zeroed is ΣF = sum = 0; a sum of nothing is not written.
func (b *builder) zeroed(i int, total doc.Math) doc.Math {
	if isZero(total) {
		return equal(b.rowName(i), exactly(0))
	}
	if total.Op == doc.Number || total.Op == doc.Neg && total.Of[0].Op == doc.Number {
		return equal(b.rowName(i), doc.Math{Op: doc.Relate, Text: "≠", Of: []doc.Math{total, exactly(0)}})
	}
	return equal(b.rowName(i), total, exactly(0))
}

func (b *builder) unitsSaid(body int) string {
	says := "forces in " + b.p.Units.Force.Symbol
	if !b.p.Bodies[body].Particle {
		says += ", lengths in " + b.p.Units.Length.Symbol + ", moments in " + b.p.Units.For(units.Moment).Symbol
		if !b.p.Planar {
			says += " about " + b.p.Bodies[body].AboutName
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
		if !r.Moment {
			if b.hasComponent(a.Const, a.Terms, axis) {
				of = append(of, b.componentSymbols(a, a.Terms, axis)...)
			}
			continue
		}
		arm := b.p.Arm(a.Act)
		if b.turns(a, arm, axis) {
			name := b.momentName(a)
			suffix := ""
			if !b.p.Planar {
				name = doc.Math{Op: doc.Symbol, Text: "M", Of: name.Of}
				suffix = r.Axis[1:]
			}
			of = append(of, part(name, suffix))
		}
		if b.hasComponent(a.Couple, a.CoupleTerms, axis) {
			of = append(of, b.coupleSymbols(a, axis)...)
		}
	}
	return sum(of...)
}

func (b *builder) hasComponent(known r3.Vec, terms []problem.ActTerm, axis int) bool {
	if xyz(cleaned(known))[axis] != 0 {
		return true
	}
	for _, t := range terms {
		if xyz(cleaned(t.D))[axis] != 0 {
			return true
		}
	}
	return false
}

func (b *builder) turns(a *act, arm r3.Vec, axis int) bool {
	turns := func(f r3.Vec) bool {
		return xyz(cleanedBy(r3.Cross(arm, f), norm(arm)*norm(f)))[axis] != 0
	}
	if turns(a.Const) {
		return true
	}
	for _, t := range a.Terms {
		if turns(t.D) {
			return true
		}
	}
	return false
}

// componentSymbols is T1x, or Ax of a joint that has it for an unknown.
func (b *builder) componentSymbols(a *act, terms []problem.ActTerm, axis int) []doc.Math {
	var one []doc.Math
	plain := a.Const == (r3.Vec{})
	for _, t := range terms {
		d := cleaned(t.D)
		switch x := xyz(d)[axis]; {
		case x == 0:
		case math.Abs(x) == 1 && norm(d) == 1 && (a.joint >= 0 || b.p.Lines[max(a.line, 0)].Legs == nil):
			m := b.unknown(t.Unknown)
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

// numbersOf are a body's rows of the system: Σ coefficient·unknown + known = 0.
func (b *builder) numbersOf(body int) []doc.Math {
	sys := &b.s.System
	var out []doc.Math
	for i := sys.Start[body]; i < sys.Start[body+1]; i++ {
		out = append(out, b.zeroed(i, b.rowSum(i)))
	}
	return out
}

func (b *builder) rowSum(i int) doc.Math {
	var of []doc.Math
	for _, t := range b.s.System.Terms[i] {
		of = append(of, times(b.coefficient(b.s.Coefficient(i, t.Col)), b.unknown(t.Col)))
	}
	if k := b.right(i); k != 0 || len(of) == 0 {
		of = append(of, short(-k+0, b.p.Figures+1))
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
		b.step(Matrix, "Matrix form", Subject{}, say("In matrix form ", form, ", with "+count(m, "row")+" and "+count(n, "column")+
			": the coefficients of the equations above, the unknowns, and minus the known terms."))
		return
	}
	grid, xs, bs := doc.Math{Op: doc.Grid}, doc.Math{Op: doc.Column}, doc.Math{Op: doc.Column}
	for i := range sys.Rows {
		line := row()
		for j := range sys.Cols {
			line.Of = append(line.Of, b.coefficient(b.s.Coefficient(i, j)))
		}
		grid.Of = append(grid.Of, line)
		bs.Of = append(bs.Of, short(b.right(i)+0, b.p.Figures+1))
	}
	for j := range sys.Cols {
		xs.Of = append(xs.Of, b.unknown(j))
	}
	b.step(Matrix, "Matrix form", Subject{}, say("The same as ", form, ":"), formula(equal(row(grid, xs), bs)))
}
