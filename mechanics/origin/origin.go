// Package origin says in one line where a number of a result comes from: the
// points, cells and lines that it was made of, with their numbers put in. An
// origin is made beside the number, from indices alone; its text is worked out
// when somebody asks.
package origin

import (
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
	"trivet/units"
)

// number is a number of a solution, or of what was made of one.
type number struct {
	is   [6]any // what it is, apart from whose: a word, and indices
	says func() string
}

func (n *number) Says() string { return n.says() }

func of(says func() string, is ...any) doc.Origin {
	n := &number{says: says}
	copy(n.is[:], is)
	return n
}

// Same tells whether two numbers mean the same: the first coefficient of a row,
// say, before and after a cell was changed.
func Same(a, b doc.Origin) bool {
	x, ok := a.(*number)
	y, too := b.(*number)
	return ok && too && x.is == y.is
}

// Phrase says of a number what the format does with up to three names of the sheet, %[1]s to %[3]s.
func Phrase(format string, names ...string) doc.Origin {
	is := []any{format}
	for _, name := range names {
		is = append(is, name)
	}
	return of(func() string { return fmt.Sprintf(format, is[1:]...) }, is...)
}

// Balance is the zero of an equation of equilibrium.
var Balance = Phrase("zero: the body is in equilibrium")

// limit is how many terms, names or equations a line lists; those beyond are counted.
const limit = 6

// decimals is how many decimals a cosine shows, as everywhere in the program.
const decimals = 4

// Row names an equation in a sentence: ΣM about A on the beam.
func Row(p *problem.Problem, r *statics.Row) string { return sum(p, r) + " on " + say.The(r.Name) }

// Label names an equation at the head of its row, where room is short: beam ΣM about A.
func Label(p *problem.Problem, r *statics.Row) string { return r.Name + " " + sum(p, r) }

// sum is an equation as it is written by hand, with the point that moments are taken about.
func sum(p *problem.Problem, r *statics.Row) string {
	axis := r.Axis
	if r.Moment && p.Planar {
		axis = "M"
	}
	if r.Moment && r.About != "" {
		axis += " about " + r.About
	}
	return "Σ" + axis
}

// Coefficient prints an entry of A: a cosine, an arm, or a share of one.
func Coefficient(v float64) string {
	if math.Abs(v) >= 100 {
		return units.Figures(v, decimals)
	}
	return units.Decimals(v, decimals)
}

// cosine prints a coefficient among the numbers put in: 0 and 1 stand without decimals.
func cosine(v float64) string {
	if v == 0 || v == 1 || v == -1 {
		return strconv.Itoa(int(v))
	}
	return Coefficient(v)
}

// Tiny prints what should be zero.
func Tiny(v float64) string {
	if v == 0 {
		return "0"
	}
	return strconv.FormatFloat(v, 'e', 1, 64)
}

// print prints a number without its unit.
type print func(float64) string

// in prints values in a unit, to the sheet's figures.
func in(p *problem.Problem, u units.Unit) print {
	return func(v float64) string { return units.Figures(u.In(v), p.Figures) }
}

// behind prints a number for a sign before it: in parentheses where it is negative.
func (number print) behind(v float64) string {
	if v < 0 {
		return "(" + number(v) + ")"
	}
	return number(v)
}

// less is the difference of a component of two vectors.
func (number print) less(a, b r3.Vec, axis int) string {
	return number(problem.Component(a, axis)) + " - " + number.behind(problem.Component(b, axis))
}

// norm is √(x² + y² + z²) with its numbers put in.
func norm(v r3.Vec, planar bool, number print) string {
	s := "√(" + number.behind(v.X) + "² + " + number.behind(v.Y) + "²"
	if !planar {
		s += " + " + number.behind(v.Z) + "²"
	}
	return s + ")"
}

func axisName(axis int) string { return "xyz"[axis : axis+1] }
