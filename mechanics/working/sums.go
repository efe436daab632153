package working

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/units"
)

// sums is a body's forces by components in the solution at hand, and their sum:
// each column to the same decimals, so that what is printed adds up. Of knowns alone where
// their resultant is wanted; nil where there is none.
func (b *builder) sums(body int, knowns bool) *doc.Table {
	type column struct {
		axis   int
		moment bool
		unit   units.Unit
	}
	var columns []column
	for axis := range b.axes {
		columns = append(columns, column{axis, false, b.p.Units.Force})
	}
	if !b.p.Bodies[body].Particle {
		for axis := range 3 {
			if !b.p.Planar || axis == 2 {
				columns = append(columns, column{axis, true, b.p.Units.For(units.Moment)})
			}
		}
	}
	reach := 0.0 // a moment is rounding beside what its force has about a farther place
	for _, a := range b.acts[body] {
		reach = max(reach, norm(b.p.Arm(a.Act)))
	}
	var of []*act
	var rows [][]float64
	total, largest := make([]float64, len(columns)), make([]float64, len(columns))
	for _, a := range b.acts[body] {
		if knowns && !a.known() {
			continue
		}
		force := b.at(a.Const, a.Terms)
		moment := r3.Add(cleanedBy(r3.Cross(b.p.Arm(a.Act), force), reach*norm(force)), b.at(a.Couple, a.CoupleTerms))
		line := make([]float64, len(columns))
		for k, c := range columns {
			v := force
			if c.moment {
				v = moment
			}
			line[k] = c.unit.In(xyz(v)[c.axis])
			largest[k] = max(largest[k], math.Abs(line[k]))
		}
		of, rows = append(of, a), append(rows, line)
	}
	if len(rows) == 0 {
		return nil
	}
	t := table("Force")
	last := []doc.Inline{cell(bigSum(words("")))}
	for _, a := range of {
		name := a.name
		if a.joint != nil && !a.isPart() {
			name = named(a.joint.Name)
		}
		t.Add(cell(name))
	}
	for k, c := range columns {
		letter := "F"
		if c.moment {
			letter = "M"
		}
		head := letter + "xyz"[c.axis:c.axis+1] + ", " + c.unit.Symbol
		t.Columns = append(t.Columns, doc.Col{Head: head})
		places := decimals(largest[k], b.p.Figures+1)
		for i, a := range of {
			x := clean(rows[i][k], largest[k])
			total[k] += x
			from := a.source.Solved(b.s, c.axis, c.moment)
			if a.isPart() {
				from = origin.Phrase("a component of the "+a.what+" at %[1]s, in the solution", a.at)
			}
			t.Rows[i] = append(t.Rows[i], cell(traced(from, fixed(x, places))))
		}
		is := "zero where %[2]s is in equilibrium"
		if len(b.s.X) == 0 {
			is = "a component of the resultant on %[2]s"
		}
		from := origin.Phrase("the sum of the column %[1]s: "+is, head, b.p.Bodies[body].Name)
		last = append(last, cell(traced(from, fixed(sumClean(total[k], largest[k]), places))))
	}
	t.Add(last...)
	return t
}

// sumTol is what a sum of cancelling terms may come to, relative to the largest, and be
// rounding: the solver leaves 1e-15 times the condition number.
const sumTol = 1e-9

func sumClean(x, beside float64) float64 {
	if math.Abs(x) <= sumTol*beside {
		return 0
	}
	return x
}

// decimals is how many decimals show a value to so many figures.
func decimals(x float64, figures int) int {
	if x == 0 {
		return 0
	}
	return max(0, figures-1-int(math.Floor(math.Log10(x))))
}

// fixed shows a value with so many decimals, or none where it is nothing.
func fixed(x float64, places int) doc.Math {
	if x == 0 {
		return exactly(0)
	}
	return shownNumber(x, units.Decimals(x, places), math.Pow(10, -float64(places))/2)
}
