// Package origin says in one line where a number of a result comes from: the
// points, cells and lines that it was made of, with their numbers put in. The
// numbers are those of the problem and the solution; nothing is solved here.
package origin

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// most is how many terms, names or equations a line lists; those beyond are counted.
const most = 6

// decimals is how many decimals a cosine shows, as everywhere in the program.
const decimals = 4

// Row names an equation as it is written by hand: the body, the sum, and the
// point that moments are taken about.
func Row(p *problem.Problem, r statics.Row) string {
	axis := r.Axis
	if r.Moment && p.Planar {
		axis = "M"
	}
	name := r.Name + " Σ" + axis
	if r.Moment && r.About != "" {
		name += " about " + r.About
	}
	return name
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

// Tiny prints what should be nothing.
func Tiny(v float64) string {
	if v == 0 {
		return "0"
	}
	return strconv.FormatFloat(v, 'e', 1, 64)
}

// along says what a row adds up: x, or about A, or about x through A.
func along(p *problem.Problem, r *statics.Row) string {
	switch {
	case !r.Moment:
		return "along " + r.Axis[1:]
	case p.Planar:
		return "about " + r.About
	}
	return "about " + r.Axis[1:] + " through " + r.About
}

// sum says what a row adds up, of forces or of moments.
func sum(r *statics.Row) string {
	if r.Moment {
		return "moments"
	}
	return "forces"
}

// in prints a value without its unit, less with a minus in parentheses.
func in(u units.Unit, v float64, figures int) string { return units.Figures(u.In(v), figures) }

// shown is a value to the sheet's figures with its unit.
func shown(p *problem.Problem, v float64, d units.Dim) string {
	return p.Units.For(d).Format(v, p.Figures)
}

// behind puts a number that has a minus in parentheses, for a sign before it.
func behind(number string) string {
	if strings.HasPrefix(number, "-") {
		return "(" + number + ")"
	}
	return number
}

// list joins names, the last with "and"; more than most are counted.
func list(names []string) string {
	if more := len(names) - most; more > 0 {
		names = append(names[:most:most], strconv.Itoa(more)+" more")
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// terms joins numbers with their names behind a colon; more than most are counted.
func terms(of []string, unit string) string {
	more := len(of) - most
	if more > 0 {
		of = of[:most]
	}
	s := strings.Join(of, ", ")
	if unit != "" {
		s += " " + unit
	}
	if more > 0 {
		s += " and " + strconv.Itoa(more) + " more"
	}
	return s
}

// axisOf is the index of the axis of a row.
func axisOf(r *statics.Row) int { return int(r.Axis[1] - 'x') }

func component(v r3.Vec, axis int) float64 { return [3]float64{v.X, v.Y, v.Z}[axis] }

const axes = "xyz"
