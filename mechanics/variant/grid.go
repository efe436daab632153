// Package variant makes sheets of a sheet: variants, in which givens take other
// values of their ranges while the verdict stays the same kind, and sweeps, in
// which one given runs through its range. Sheets in, sheets and tables out.
package variant

import (
	"math"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Grid holds the values that a given may take: Low + k·Step for k from 0 to
// Count-1, in the unit that its cell is written in.
type Grid struct {
	*problem.Given
	Ref       sheet.Ref // the cell of its value
	Unit      string    // as it is typed; "" for a bare number
	Symbol    string    // the unit as results have it, for a heading
	Count     int
	low, step float64 // in Unit
	factor    float64 // SI of one Unit
	typed     string  // its text, without
	behind    string  // the uncertainty behind it: " ± 2 cm"
}

const (
	// nearly is how far two values may differ, relative to the step, and count as the
	// same: conversions of units leave some 1e-15 of the value.
	nearly = 1e-6
	// digits is what a value is written to: a range in other units than its step
	// leaves rounding in the 16th.
	digits = 12
	// few is under how many values a range without a step is divided once more.
	few = 10
	// most is where counting ends: beyond it nobody draws every value.
	most = 1 << 40
)

// SI gives the k-th value in SI.
func (g *Grid) SI(k int) float64 { return g.value(k) * g.factor }

// Number gives the k-th value as it is written, without its unit.
func (g *Grid) Number(k int) string { return units.Compact(g.value(k)) }

// Text gives the k-th value as a cell holds it.
func (g *Grid) Text(k int) string { return withUnit(g.Number(k), g.Unit) + g.behind }

// Said gives the k-th value as it is said, with its unit.
func (g *Grid) Said(k int) string { return withUnit(g.Number(k), g.Symbol) }

func (g *Grid) value(k int) float64 { return to(digits, g.low+float64(k)*g.step) }

// own gives which value is the sheet's own, or -1.
func (g *Grid) own() int {
	k := int((g.Value.V[0]/g.factor-g.low)/g.step + 0.5)
	if k >= 0 && k < g.Count && math.Abs(g.SI(k)-g.Value.V[0]) <= nearly*g.step*g.factor {
		return k
	}
	return -1
}

func withUnit(number, unit string) string {
	if unit == "" || strings.HasPrefix(unit, "°") || unit == "'" || unit == `"` {
		return number + unit
	}
	return number + " " + unit
}

// to is a number to so many digits.
func to(digits int, x float64) float64 {
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', digits-1, 64), 64)
	if err != nil {
		return x
	}
	return y
}

// Grids gives the grids of a sheet's givens that have a range, in their order.
func Grids(s *sheet.Sheet, p *problem.Problem) []Grid {
	var out []Grid
	for i := range p.Givens {
		if g := &p.Givens[i]; g.HasRange {
			out = append(out, gridOf(s, p, g))
		}
	}
	return out
}

// gridOf is the grid of a given's range and step. Without a step it is the last
// place in which the range's ends are typed, a tenth of that where fewer than ten
// values would come of it; of ends that are computed, about a twentieth of the way.
func gridOf(s *sheet.Sheet, p *problem.Problem, g *problem.Given) Grid {
	out := cellOf(s, p, g)
	row, _ := s.Table("given").Row(g.Name)
	from, to, _ := strings.Cut(row.Text("range"), "..")
	low, high := written(p, g, from), written(p, g, to)
	if low.Symbol == "" { // 2 .. 4 kN/m
		low = written(p, g, from+" "+high.Symbol)
	}
	step := g.Step
	if step == 0 {
		if step = min(lastPlace(low), lastPlace(high)); math.IsInf(step, 1) {
			step = math.Pow(10, math.Floor(math.Log10((g.High-g.Low)/2/out.factor))-1) * out.factor
		} else if (g.High-g.Low)/step < few-1-nearly {
			step /= 10
		}
	}
	out.in(p, g.Low, step, written(p, g, out.typed).Symbol, written(p, g, row.Text("step")).Symbol, low.Symbol, high.Symbol)
	out.Count = int(min((g.High-g.Low)/step+nearly, most)) + 1
	return out
}

// cellOf finds the cell of a given's value and its uncertainty.
func cellOf(s *sheet.Sheet, p *problem.Problem, g *problem.Given) Grid {
	out := Grid{Given: g, Ref: sheet.Ref{Table: "given", Row: g.Name, Key: "value"}}
	out.factor = p.Units.For(g.Value.Dim).Factor
	c, ok := s.Cell(out.Ref)
	if !ok {
		out.Ref.Key = ""
		c, _ = s.Cell(out.Ref)
	}
	out.typed, out.behind = certain(c.Text)
	return out
}

// certain parts a text from the ± behind its value.
func certain(text string) (value, behind string) {
	for _, sign := range []string{"±", "+-", "+/-"} {
		if before, _, ok := strings.Cut(text, sign); ok {
			value = strings.TrimRight(before, " ")
			return strings.TrimSpace(value), text[len(value):]
		}
	}
	return strings.TrimSpace(text), ""
}

// in gives the grid the first unit in which its numbers are short ones, of those
// that are typed in the row, or the sheet's.
func (g *Grid) in(p *problem.Problem, low, step float64, typed ...string) {
	const short = 6 // digits: what a person types
	take := func(typed string, u units.Unit) bool {
		g.Unit, g.Symbol, g.factor = typed, u.Symbol, u.Factor
		g.low, g.step = to(digits, low/u.Factor), to(digits, step/u.Factor)
		return g.low == to(short, g.low) && g.step == to(short, g.step)
	}
	for _, unit := range typed {
		u := units.Unit{Factor: 1, Dim: units.Number}
		var err *diag.Error
		if unit != "" {
			u, err = units.ParseUnit(unit)
		}
		if err == nil && u.Dim == g.Value.Dim && take(unit, u) {
			return
		}
	}
	own := p.Units.For(g.Value.Dim)
	take(own.Symbol, own)
}

// written is how a text reads that is typed for a given, nothing where it names something.
func written(p *problem.Problem, g *problem.Given, text string) units.Printed {
	text, _ = certain(text)
	out, _ := units.ReadPrintedIn(text, p.Units, p.Units.For(g.Value.Dim), 0)
	return out
}

// lastPlace gives a unit of the last place of a typed number, in SI; infinite
// where it is computed.
func lastPlace(of units.Printed) float64 {
	if of.Number {
		return 2 * of.Half
	}
	return math.Inf(1)
}
