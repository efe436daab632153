package working

import (
	"maps"
	"math"
	"slices"
	"strings"

	"trivet/mechanics/doc"
)

// moreFigures is how many figures more than the sheet's a number may be printed with so
// that its formula comes out.
const moreFigures = 3

// equals is a = b = .. = result, each side printed with the sheet's figures, or with as many
// more as the last side needs to come out of what is printed to its last digit; where
// that is not enough the result stands behind ≈.
func (b *builder) equals(of ...doc.Math) doc.Math {
	last := len(of) - 1
	result, approximate := of[last], -1
	for k := range of[:last] {
		if k == 0 && !hasNumber(of[0]) {
			continue
		}
		exact := false
		if of[k], exact = b.carried(of[k], result); !exact {
			approximate = k
		}
	}
	if approximate != last-1 && last > 1 && sameNumber(of[last-1], result) {
		of = append(of[:last-1:last-1], result)
	}
	if approximate < 0 {
		return equal(of...)
	}
	found := result
	if rest := of[approximate+1:]; len(rest) > 1 {
		found = equal(rest...)
	}
	return equal(append(of[:approximate:approximate], relation("≈", of[approximate], found))...)
}

// carried is a side with as many figures as its result needs; exact is false where that is not enough.
func (b *builder) carried(side, result doc.Math) (shown doc.Math, exact bool) {
	for extra := range moreFigures + 1 {
		shown = reprinted(side, b.p.Figures+extra)
		same, numeric := b.comesOut(shown, result)
		switch {
		case !numeric:
			return side, true
		case same:
			return shown, true
		}
	}
	return shown, false
}

// solving is ΣF = sum = 0 with numbers, of one unknown: printed with as many figures as the
// value found needs to come out of it, and with how many; exact is false where that is not enough.
func (b *builder) solving(equation, found doc.Math) (shown doc.Math, figures int, exact bool) {
	for extra := range moreFigures + 1 {
		figures = b.p.Figures + extra
		numeric := false
		if shown, exact, numeric = b.solvedTo(equation, found, figures); !numeric {
			return equation, b.p.Figures + 1, true
		} else if exact {
			break
		}
	}
	return shown, figures, exact
}

// solvedTo is the same printed to n figures; exact tells that the value found comes out of it,
// numeric is false where it cannot be worked out.
func (b *builder) solvedTo(equation, found doc.Math, n int) (shown doc.Math, exact, numeric bool) {
	x, p := keyOf(found.Of[0]), printed{figures: b.p.Figures}
	result, sum := p.eval(found.Of[len(found.Of)-1]), reprinted(equation.Of[1], n)
	known, with := p.eval(sum), printed{known: map[string]float64{x: 1}, figures: b.p.Figures}.eval(sum)
	coefficient := with.x - known.x
	if !with.ok || !result.ok || coefficient == 0 {
		return equation, false, false
	}
	largest := 0.0 // what is small beside the terms is rounding where they cancel
	for _, term := range sum.Of {
		largest = max(largest, math.Abs(p.eval(term).x))
	}
	off := math.Abs(-known.x/coefficient - result.x)
	return equal(equation.Of[0], sum, equation.Of[2]), off <= result.half+nothing*(largest/math.Abs(coefficient)+math.Abs(result.x)), true
}

// sameNumber tells that a side is the number of the result behind it, printed alike but for its unit.
func sameNumber(side, result doc.Math) bool {
	if result.Op == doc.Row && len(result.Of) == 2 && result.Of[1].Op == doc.Words {
		result = result.Of[0]
	}
	switch {
	case side.Op != result.Op:
		return false
	case side.Op == doc.Neg, side.Op == doc.Degrees:
		return sameNumber(side.Of[0], result.Of[0])
	}
	return side.Op == doc.Number && side.Text == result.Text
}

func hasNumber(m doc.Math) bool { return m.Op == doc.Number || slices.ContainsFunc(m.Of, hasNumber) }

// reprinted prints the numbers of a formula to so many figures, those short by themselves
// as they are.
func reprinted(m doc.Math, n int) doc.Math {
	if m.Op == doc.Number && m.Num != 0 {
		return traced(m.From, short(m.Num, n))
	}
	m.Of = slices.Clone(m.Of)
	for k, x := range m.Of {
		m.Of[k] = reprinted(x, n)
	}
	return m
}

// comesOut tells whether a side, worked out from its printed numbers, is the printed
// result to half a unit of its last place; numeric is false where the side has symbols
// that stand for no number. What is linear in its symbols is the same where it is so for each
// alone, and a vector where it is so along each axis.
func (b *builder) comesOut(side, result doc.Math) (same, numeric bool) {
	names, own := map[string]bool{"": true}, map[string]bool{}
	symbolsIn(side, own)
	symbolsIn(result, names)
	known := map[string]float64{}
	for name := range own {
		x, has := b.found[name]
		switch {
		case names[name]:
		case !has:
			return false, false
		default:
			known[name] = x
		}
	}
	for name := range names {
		for axis := range 3 {
			p := printed{known: maps.Clone(known), axis: axis, figures: b.p.Figures}
			p.known[name] = 1
			x, r := p.eval(side), p.eval(result)
			if !x.ok || !r.ok || x.vector != r.vector {
				return false, false
			}
			if math.Abs(x.x-r.x) > r.half*(1+nothing)+nothing*math.Abs(r.x) {
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

// printed works formulas out from their printed numbers, along one axis where they are
// vectors. Symbols that are not known are 0.
type printed struct {
	known   map[string]float64
	axis    int
	figures int
}

// reading is a printed value with half a unit of its last place.
type reading struct {
	x, half    float64
	vector, ok bool
}

func (p printed) eval(m doc.Math) reading {
	switch m.Op {
	case doc.Number:
		return p.number(m)
	case doc.Symbol:
		if isEuler(m) {
			return reading{x: math.E, ok: true}
		}
		return reading{x: p.known[keyOf(m)], ok: true}
	case doc.UnitVec:
		r := reading{vector: true, ok: strings.Contains("ijk", m.Text) && len(m.Of) == 0}
		if m.Text == "ijk"[p.axis:p.axis+1] {
			r.x = 1
		}
		return r
	case doc.Sum:
		sum := p.eval(m.Of[0])
		for _, x := range m.Of[1:] {
			y := p.eval(x)
			sum = reading{sum.x + y.x, sum.half + y.half, sum.vector || y.vector, sum.ok && y.ok}
		}
		return sum
	case doc.Neg:
		return p.eval(m.Of[0]).times(-1)
	case doc.Row, doc.Product:
		product := reading{x: 1, ok: true}
		for _, x := range m.Of {
			if x.Op != doc.Words {
				product = product.by(p.eval(x))
			}
		}
		return product
	}
	of := make([]reading, len(m.Of))
	for k, x := range m.Of {
		of[k] = p.eval(x)
		if !of[k].ok || of[k].vector && m.Op != doc.Paren && m.Op != doc.Fraction {
			return reading{}
		}
	}
	if len(of) == 0 {
		return reading{}
	}
	x := of[0]
	switch m.Op {
	case doc.Paren:
		if len(of) == 1 {
			return x
		}
		x = append(of, reading{})[p.axis] // in the plane there is no third
		return reading{x.x, x.half, true, true}
	case doc.Size:
		return reading{x: math.Abs(x.x), half: x.half, ok: true}
	case doc.Fraction:
		return x.by(reading{x: 1 / of[1].x, ok: !of[1].vector && of[1].x != 0})
	case doc.Root:
		return reading{x: math.Sqrt(x.x), ok: true}
	case doc.Power:
		return reading{x: math.Pow(x.x, of[1].x), ok: true}
	case doc.Degrees:
		return x.times(math.Pi / 180)
	case doc.Function:
		if f := functions[m.Text]; f != nil {
			return reading{x: f(x.x), ok: true}
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
	return reading{x: x, half: half, ok: true}
}

func (r reading) times(x float64) reading { return r.by(reading{x: x, ok: true}) }

func (r reading) by(y reading) reading {
	return reading{r.x * y.x, r.half*math.Abs(y.x) + math.Abs(r.x)*y.half, r.vector || y.vector, r.ok && y.ok && !(r.vector && y.vector)}
}
