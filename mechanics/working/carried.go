package working

import (
	"math"
	"slices"

	"trivet/mechanics/doc"
)

// moreFigures is how many figures more than the sheet's a number may be printed with so
// that its formula comes out.
const moreFigures = 3

// equals is a = b = .. = result, each side printed with the sheet's figures, or with as many
// more as the last side needs to come out of what is printed to its last digit; where
// that is not enough the result stands behind ≈.
func (b *builder) equals(of ...doc.Math) doc.Math {
	result := len(of) - 1
	approximate := -1
	for k := range of[:result] {
		if k == 0 && len(of) > 1 && !hasNumber(of[0]) {
			continue
		}
		extra := 0
		for ; extra <= moreFigures; extra++ {
			side := reprinted(of[k], b.p.Figures+extra)
			same, numeric := b.comesOut(side, of[result])
			if !numeric {
				break
			}
			if same || extra == moreFigures {
				of[k] = side
			}
			if same {
				break
			}
		}
		if extra > moreFigures {
			approximate = k
		}
	}
	if approximate != result-1 && result > 1 && sameNumber(of[result-1], of[result]) {
		of, result = slices.Delete(of, result-1, result), result-1
	}
	if approximate < 0 {
		return equal(of...)
	}
	tail := doc.Math{Op: doc.Relate, Text: "≈", Of: []doc.Math{of[approximate], equal(of[approximate+1:]...)}}
	if approximate+1 == result {
		tail.Of[1] = of[result]
	}
	return equal(append(append([]doc.Math{}, of[:approximate]...), tail)...)
}

// solving is ΣF = sum = 0 with numbers, of one unknown: printed with as many figures as the
// value found needs to come out of it, and with how many; exact is false where that is not enough.
func (b *builder) solving(equation, found doc.Math) (shown doc.Math, figures int, exact bool) {
	x, result := keyOf(found.Of[0]), printed{figures: b.p.Figures}.eval(found.Of[len(found.Of)-1])
	for extra := range moreFigures + 1 {
		sum := reprinted(equation.Of[1], b.p.Figures+extra)
		known, with := printed{figures: b.p.Figures}.eval(sum), printed{one: x, figures: b.p.Figures}.eval(sum)
		coefficient := with.v[0] - known.v[0]
		if !with.ok || !result.ok || coefficient == 0 {
			return equation, b.p.Figures + 1, true
		}
		largest := 0.0 // what is small beside the terms is rounding where they cancel
		for _, term := range sum.Of {
			largest = max(largest, math.Abs(printed{figures: b.p.Figures}.eval(term).v[0]))
		}
		if math.Abs(-known.v[0]/coefficient-result.v[0]) <= result.half[0]+nothing*(largest/math.Abs(coefficient)+math.Abs(result.v[0])) {
			return equal(equation.Of[0], sum, equation.Of[2]), b.p.Figures + extra, true
		}
	}
	return equal(equation.Of[0], reprinted(equation.Of[1], b.p.Figures+moreFigures), equation.Of[2]), b.p.Figures + moreFigures, false
}

// sameNumber tells that a side is the number of the result behind it, printed alike but for its unit.
func sameNumber(side, result doc.Math) bool {
	if result.Op == doc.Row && len(result.Of) == 2 && result.Of[1].Op == doc.Words {
		result = result.Of[0]
	}
	switch {
	case side.Op != result.Op:
		return false
	case side.Op == doc.Number:
		return side.Text == result.Text
	case side.Op == doc.Neg, side.Op == doc.Degrees:
		return sameNumber(side.Of[0], result.Of[0])
	}
	return false
}

func hasNumber(m doc.Math) bool {
	if m.Op == doc.Number {
		return true
	}
	for _, x := range m.Of {
		if hasNumber(x) {
			return true
		}
	}
	return false
}

// reprinted prints the numbers of a formula to so many figures, those short by themselves
// as they are.
func reprinted(m doc.Math, n int) doc.Math {
	if m.Op == doc.Number && m.Num != 0 {
		return traced(m.From, short(m.Num, n))
	}
	of := make([]doc.Math, len(m.Of))
	for k, x := range m.Of {
		of[k] = reprinted(x, n)
	}
	if len(of) > 0 {
		m.Of = of
	}
	return m
}

// comesOut tells whether a side, worked out from its printed numbers, is the printed
// result to half a unit of its last place; numeric is false where the side has symbols
// that stand for no number.
func (b *builder) comesOut(side, result doc.Math) (same, numeric bool) {
	names, own := map[string]bool{}, map[string]bool{}
	symbolsIn(side, own)
	symbolsIn(result, names)
	known := map[string]float64{}
	for name := range own {
		if x, has := b.found[name]; has && !names[name] {
			known[name] = x
		} else if !names[name] {
			return false, false
		}
	}
	probes := []string{""}
	for name := range names {
		probes = append(probes, name)
	}
	for _, one := range probes {
		p := printed{one: one, known: known, figures: b.p.Figures}
		x, r := p.eval(side), p.eval(result)
		if !x.ok || !r.ok || x.vector != r.vector {
			return false, false
		}
		for k := range x.v {
			if math.Abs(x.v[k]-r.v[k]) > r.half[k]*(1+nothing)+nothing*math.Abs(r.v[k]) {
				return false, true
			}
		}
	}
	return true, true
}

func symbolsIn(m doc.Math, names map[string]bool) {
	if m.Op == doc.Symbol {
		if !isEuler(m) {
			names[keyOf(m)] = true
		}
		return
	}
	for _, x := range m.Of {
		symbolsIn(x, names)
	}
}

// euler is the base of natural logarithms, which is no name of a sheet.
func euler() doc.Math { return symbol("e") }

func isEuler(m doc.Math) bool {
	return m.Op == doc.Symbol && m.Name == "" && m.Text == "e" && len(m.Of) == 0
}

// keyOf tells symbols apart: a name of the sheet from a letter.
func keyOf(m doc.Math) string {
	if m.Name != "" {
		return "name " + m.Name
	}
	text := m.Text
	for _, x := range m.Of {
		text += "_" + keyOf(x)
	}
	return text
}

// find notes the numbers that the symbols of unknowns and tied forces stand for, in the units shown.
func (b *builder) find() {
	b.found = map[string]float64{}
	for j := range b.s.X {
		if b.s.X[j].Fixed {
			b.found[keyOf(b.unknown(j))] = b.unitOf(j).In(b.s.X[j].Value)
		}
	}
	for _, t := range b.ties {
		if x, fixed := b.tieValue(t); fixed {
			b.found[keyOf(t.name)] = b.p.Units.Force.In(x)
		}
	}
}

// printed works formulas out from their printed numbers, with one symbol set to 1 and the
// others to 0: what is linear in its symbols is the same where it is so for each.
type printed struct {
	one     string
	known   map[string]float64 // the symbols that stand for a number found before
	figures int
}

// reading is a printed value with half a unit of its last place, by components.
type reading struct {
	v, half    [3]float64
	vector, ok bool
}

func scalarReading(x float64) reading { return reading{v: [3]float64{x}, ok: true} }

func (p printed) eval(m doc.Math) reading {
	switch m.Op {
	case doc.Number:
		return p.number(m)
	case doc.Symbol:
		if isEuler(m) {
			return scalarReading(math.E)
		}
		if keyOf(m) == p.one {
			return scalarReading(1)
		}
		return scalarReading(p.known[keyOf(m)])
	case doc.UnitVec:
		for k, name := range []string{"i", "j", "k"} {
			if m.Text == name && len(m.Of) == 0 {
				r := reading{vector: true, ok: true}
				r.v[k] = 1
				return r
			}
		}
		return reading{}
	case doc.Paren:
		if len(m.Of) == 1 {
			return p.eval(m.Of[0])
		}
		r := reading{vector: true, ok: true}
		for k, x := range m.Of {
			c := p.eval(x)
			r.v[k], r.half[k], r.ok = c.v[0], c.half[0], r.ok && c.ok && !c.vector
		}
		return r
	case doc.Sum:
		r := p.eval(m.Of[0])
		for _, x := range m.Of[1:] {
			y := p.eval(x)
			r.ok = r.ok && y.ok
			r.vector = r.vector || y.vector
			for k := range r.v {
				r.v[k], r.half[k] = r.v[k]+y.v[k], r.half[k]+y.half[k]
			}
		}
		return r
	case doc.Neg:
		return p.eval(m.Of[0]).times(scalarReading(-1))
	case doc.Row, doc.Product:
		r := scalarReading(1)
		for _, x := range m.Of {
			if x.Op != doc.Words {
				r = r.times(p.eval(x))
			}
		}
		return r
	case doc.Size:
		x := p.eval(m.Of[0])
		return reading{v: [3]float64{math.Hypot(math.Hypot(x.v[0], x.v[1]), x.v[2])}, half: x.half, ok: x.ok && !x.vector}
	}
	if len(m.Of) == 0 {
		return reading{}
	}
	x := p.eval(m.Of[0])
	scalar := x.ok && !x.vector
	switch m.Op {
	case doc.Fraction:
		y := p.eval(m.Of[1])
		return x.times(reading{v: [3]float64{1 / y.v[0]}, ok: y.ok && !y.vector && y.v[0] != 0})
	case doc.Root:
		return reading{v: [3]float64{math.Sqrt(x.v[0])}, ok: scalar}
	case doc.Power:
		y := p.eval(m.Of[1])
		return reading{v: [3]float64{math.Pow(x.v[0], y.v[0])}, ok: scalar && y.ok}
	case doc.Degrees:
		return x.times(scalarReading(math.Pi / 180))
	case doc.Function:
		if f := functions[m.Text]; f != nil {
			return reading{v: [3]float64{f(x.v[0])}, ok: scalar}
		}
	}
	return reading{}
}

// functions are those that formulas of a working hold.
var functions = map[string]func(float64) float64{"sin": math.Sin, "cos": math.Cos, "atan": math.Atan, "acos": math.Acos}

// number is a number as it is printed. Half a unit is that of the last figure of a
// result at most: what is short by itself stands for more figures than it shows.
func (p printed) number(m doc.Math) reading {
	x, half := m.Num, lastPlace(m.Num, p.figures)/2
	if m.Half > 0 {
		x, half = math.Round(x/(2*m.Half))*2*m.Half, min(half, m.Half)
	}
	return reading{v: [3]float64{x}, half: [3]float64{half}, ok: true}
}

func (r reading) times(y reading) reading {
	if y.vector {
		r, y = y, r
	}
	out := reading{vector: r.vector, ok: r.ok && y.ok && !(r.vector && y.vector)}
	for k := range r.v {
		out.v[k] = r.v[k] * y.v[0]
		out.half[k] = r.half[k]*math.Abs(y.v[0]) + math.Abs(r.v[k])*y.half[0]
	}
	return out
}
