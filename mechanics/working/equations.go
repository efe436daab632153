package working

import (
	"maps"
	"math"
	"slices"

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
		return sumOf("M", r.About, false)
	}
	return sumOf(r.Axis[:1], r.Axis[1:], true)
}

// equations are ΣF = 0 and ΣM = 0 of each body per axis, in symbols: what there is to be filled in.
func (b *builder) equations() {
	ruled := false
	for i := range b.p.CutFree() {
		body := formulas(b.rowsOf(i, b.symbolsOf))
		if says := b.defined(i, !ruled); says != nil {
			body, ruled = append(body, says), ruled || !b.p.Bodies[i].Particle
		}
		b.step(Equations, "Equilibrium of "+b.bodyWords(i), Subject{Bodies: []int{i}}, body...)
	}
}

// defined says what the symbols of a body's equations are that no name of the sheet is: the
// resultants of distributed loads and, once, moments.
func (b *builder) defined(body int, moments bool) doc.Block {
	var says []any
	for _, what := range []string{"resultant", "couple"} {
		of := slices.DeleteFunc(slices.Clone(b.acts[body]), func(a *act) bool {
			return a.from.Thing != problem.ALoad || a.isForce() != (what == "resultant")
		})
		if n := len(of); n > 0 {
			names := english.And(english.Each(of, func(a *act) string { return b.p.NameOf(a.from) })...)
			if len(says) > 0 {
				says = append(says, " ")
			}
			says = append(says, list(english.Each(of, func(a *act) doc.Math { return a.name })),
				" "+english.Plural(n, "is")+" the "+english.Plural(n, what)+" of the distributed "+english.Plural(n, "load")+" "+names+".")
		}
	}
	if moments && !b.p.Bodies[body].Particle {
		about := " about " + b.p.Bodies[body].AboutName + " of"
		if len(b.aboutPoints()) > 1 {
			about = ", about the point of moments, of"
		}
		if len(says) > 0 {
			says = append(says, " ")
		}
		says = append(says, "Each ", symbol("M"), " is the moment"+about+" the force or couple in its subscript.")
	}
	if len(says) == 0 {
		return nil
	}
	return say(says...)
}

// rowsOf are a body's equations of equilibrium, but for those that hold nothing.
func (b *builder) rowsOf(body int, total func(row int) doc.Math) (of []doc.Math) {
	for i, r := range b.s.System.Rows {
		if r.Body != body {
			continue
		}
		if m := total(i); !isZero(m) {
			of = append(of, b.zeroed(i, m))
		}
	}
	return of
}

// numbers are the equations with numbers; of many bodies in one table, unless the solution by hand
// of particles writes each where it is solved.
func (b *builder) numbers() {
	with := []doc.Block{say("With " + b.unitsSaid() + ":")}
	t := doc.NewTable("On", "Equation")
	for i := range b.p.CutFree() {
		of, on := b.rowsOf(i, b.rowSum), b.p.Bodies[i].Name
		for _, m := range of {
			t.Add(wordCell(on), cell(m))
			on = ""
		}
		if !b.many() {
			b.step(Equations, "Equilibrium of "+b.bodyWords(i)+", with numbers", Subject{Bodies: []int{i}}, append(with, aligned(of...))...)
			with = nil
		}
	}
	relations := b.relations()
	if b.many() && !b.byJoints() {
		b.step(Equations, "Equations of equilibrium", Subject{}, append([]doc.Block{say(english.Capital(b.unitsSaid()) + "."), t}, relations...)...)
		return
	}
	b.step(Equations, "Relations between the forces", Subject{}, relations...)
}

// byJoints tells many particles that are solved by hand, each equation where it is needed.
func (b *builder) byJoints() bool { return b.many() && len(b.Hand.Steps) > 0 && b.particles() }

// particles tells that no body is rigid.
func (b *builder) particles() bool {
	return !slices.ContainsFunc(b.p.Bodies, func(x problem.Body) bool { return !x.Particle })
}

// relations are what ties forces to each other: F = μ N. Those of belts have a step of their own.
func (b *builder) relations() []doc.Block {
	var of []doc.Math
	for _, t := range b.ties {
		if !t.belt {
			of = append(of, equal(t.name, b.tied(t)))
		}
	}
	return formulas(of)
}

// zeroed is ΣF = sum = 0.
func (b *builder) zeroed(i int, total doc.Math) doc.Math {
	zero := traced(origin.Balance, exactly(0))
	if total.Op == doc.Number || total.Op == doc.Neg && total.Of[0].Op == doc.Number {
		return equal(b.rowName(i), relation("≠", total, zero))
	}
	return equal(b.rowName(i), total, zero)
}

func (b *builder) unitsSaid() string {
	says := "forces in " + b.p.Units.Force.Symbol
	if len(b.aboutPoints()) > 0 {
		says += ", lengths in " + b.p.Units.Length.Symbol + ", moments in " + b.p.Units.For(units.Moment).Symbol
	}
	return says
}

// symbolsOf is the sum of what has a part in a row, in symbols.
func (b *builder) symbolsOf(i int) doc.Math {
	r := &b.s.System.Rows[i]
	axis := r.Coordinate()
	var of []doc.Math
	for _, a := range b.acts[b.s.System.Rows[i].Body] {
		for k, q := range b.inRow(a, r) {
			switch {
			case !q.has(axis):
			case !r.Moment:
				of = append(of, q.symbols(axis, signed(a.side(), part(a.name, r.Axis[1:])))...)
			case k == 0 || a.joint == nil:
				m := b.momentName(a)
				if !b.p.Planar {
					m = part(symbol("M", m.Of...), r.Axis[1:])
				}
				of = append(of, m)
			default:
				of = append(of, q.symbols(axis, part(symbol("C", b.heldName(a).Of...), r.Axis[1:]))...)
			}
		}
	}
	return sum(of...)
}

// rowSum is Σ coefficient·unknown + Σ coefficient·tied force + known of a row.
func (b *builder) rowSum(i int) doc.Math {
	row := &b.s.System.Rows[i]
	axis := row.Coordinate()
	coef, beside, tied := map[int]float64{}, map[int]float64{}, map[int]bool{}
	var of, ties []doc.Math
	for _, a := range b.acts[b.s.System.Rows[i].Body] {
		for _, q := range b.inRow(a, row) {
			for _, t := range q.terms {
				x := q.size(t, axis)
				if t.unknown != isTied {
					coef[t.unknown], beside[t.unknown] = coef[t.unknown]+x, max(beside[t.unknown], math.Abs(x))
				} else if x != 0 {
					ties = append(ties, times(traced(q.from(t, axis), b.number(x)), t.symbol))
					for _, of := range a.tie.is.Terms {
						tied[of.Unknown] = true
					}
				}
			}
		}
	}
	for _, j := range slices.Sorted(maps.Keys(coef)) {
		c := clean(coef[j], beside[j])
		if j == isKnown || c == 0 {
			continue
		}
		from := origin.Entry(b.s, i, j)
		if tied[j] {
			from = origin.Phrase("%[1]s: what one unit of it adds by itself, without the forces that follow from it", b.s.X[j].Name)
		}
		of = append(of, times(traced(from, b.number(c)), b.unknown(j)))
	}
	of = append(of, ties...)
	if known := clean(coef[isKnown], beside[isKnown]); known != 0 || len(of) == 0 {
		of = append(of, traced(origin.Known(b.s, i), b.number(known+0)))
	}
	return sum(of...)
}

// matrixColumns is up to how many unknowns A x = b is written out: a page is not wider.
const matrixColumns = 6

// matrix is A x = b.
func (b *builder) matrix() {
	sys := &b.s.System
	x, right := vector("x"), vector("b")
	form := equal(row(vector("A"), x), right)
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
		bs.Of = append(bs.Of, traced(origin.Known(b.s, i), b.number(sys.B[i]/b.p.Units.For(sys.Rows[i].Dim()).Factor+0)))
	}
	xs.Of = b.unknowns()
	says := "In matrix form, "
	if len(b.ties) > 0 {
		says = "With the relations put in, in matrix form, "
	}
	b.step(Matrix, "Matrix form", Subject{}, say(says, form, ":"), aligned(equal(row(grid, xs), bs)))
}
