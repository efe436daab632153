package working

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	english "trivet/mechanics/say"
	"trivet/units"
)

// sums is a body's forces by components in the solution at hand, and their sum:
// each column to the same decimals, so that what is printed adds up. Of knowns alone where
// their resultant is wanted; nil where there is none.
func (b *builder) sums(body int, knowns bool) *doc.Table {
	var of []*act
	reach := 0.0 // a moment is rounding beside what its force has about a farther place
	for _, a := range b.acts[body] {
		reach = max(reach, r3.Norm(b.p.Arm(a.Act)))
		if !knowns || a.known() {
			of = append(of, a)
		}
	}
	if len(of) == 0 {
		return nil
	}
	t := doc.NewTable("Force")
	for _, a := range of {
		name := a.name
		if a.joint != nil && !a.isPart() {
			name = named(a.joint.Name)
		}
		t.Add(cell(name))
	}
	t.Add(cell(bigSum(words(""))))
	column := func(axis int, moment bool) {
		letter, unit := "F", b.p.Units.Force
		if moment {
			letter, unit = "M", b.p.Units.For(units.Moment)
		}
		head := letter + "xyz"[axis:axis+1] + ", " + unit.Symbol
		values := english.Each(of, func(a *act) float64 {
			v := b.s.Sum(a.Force)
			if moment {
				v = r3.Add(cleanedBy(r3.Cross(b.p.Arm(a.Act), v), reach*r3.Norm(v)), b.s.Sum(a.Couple))
			}
			return unit.In(xyz(v)[axis])
		})
		largest, total := max(slices.Max(values), -slices.Min(values)), 0.0
		places := decimals(largest, b.p.Figures+1)
		t.Columns = append(t.Columns, doc.Col{Head: head})
		put := func(row int, x float64, from doc.Origin) {
			t.Rows[row] = append(t.Rows[row], cell(traced(from, fixed(x, places))))
		}
		for i, a := range of {
			from := a.source.Solved(b.s, axis, moment)
			if a.isPart() {
				from = origin.Phrase("a component of the "+a.what+" at %[1]s, in the solution", a.at)
			}
			x := clean(values[i], largest)
			put(i, x, from)
			total += x
		}
		is := "zero where %[2]s is in equilibrium"
		if len(b.s.X) == 0 {
			is = "a component of the resultant on %[2]s"
		}
		if math.Abs(total) <= sumTol*largest {
			total = 0
		}
		put(len(of), total, origin.Phrase("the sum of the column %[1]s: "+is, head, b.p.Bodies[body].Name))
	}
	for axis := range b.axes {
		column(axis, false)
	}
	for axis := range 3 {
		if !b.p.Bodies[body].Particle && (!b.p.Planar || axis == 2) {
			column(axis, true)
		}
	}
	return t
}

// sumTol is what a sum of cancelling terms may come to, relative to the largest, and be
// rounding: the solver leaves 1e-15 times the condition number.
const sumTol = 1e-9

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
