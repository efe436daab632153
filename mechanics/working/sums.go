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
	f, u := b.p.Units.Force, b.p.Units.For(units.Moment)
	rigid := !b.p.Bodies[body].Particle
	head := []string{"Force"}
	for _, axis := range "xyz"[:b.axes] {
		head = append(head, "F"+string(axis)+", "+f.Symbol)
	}
	first := 3
	if rigid {
		if b.p.Planar {
			first = 2
		} else {
			first = 0
		}
		for _, axis := range "xyz"[first:] {
			head = append(head, "M"+string(axis)+", "+u.Symbol)
		}
	}
	reach := 0.0 // a moment is rounding beside what its force has about a farther place
	for k := range b.acts[body] {
		reach = max(reach, norm(b.p.Arm(b.acts[body][k].Act)))
	}
	var names []doc.Math
	var rows [][]float64
	for k := range b.acts[body] {
		a := &b.acts[body][k]
		if knowns && !a.known() {
			continue
		}
		force := b.at(a.Const, a.Terms)
		arm := b.p.Arm(a.Act)
		moment := r3.Add(cleanedBy(r3.Cross(arm, force), reach*norm(force)), b.at(a.Couple, a.CoupleTerms))
		var cells []float64
		for _, x := range xyz(force)[:b.axes] {
			cells = append(cells, f.In(x))
		}
		if rigid {
			for _, x := range xyz(moment)[first:] {
				cells = append(cells, u.In(x))
			}
		}
		name := a.name
		if a.joint >= 0 && !b.p.Joints[a.joint].Impending {
			name = named(b.p.Joints[a.joint].Name)
		}
		names, rows = append(names, name), append(rows, cells)
	}
	if len(rows) == 0 {
		return nil
	}
	t := table(head...)
	places := make([]int, len(head)-1)
	total := make([]float64, len(head)-1)
	largest := make([]float64, len(head)-1)
	for k := range places {
		for _, r := range rows {
			largest[k] = max(largest[k], math.Abs(r[k]))
		}
		places[k] = decimals(largest[k], b.p.Figures+1)
	}
	for i, r := range rows {
		cells := []doc.Inline{cell(names[i])}
		for k, x := range r {
			x = clean(x, largest[k])
			total[k] += x
			axis, moment := b.column(k, first)
			from := b.acts[body][i].source.Solved(b.s, axis, moment)
			if b.acts[body][i].split {
				from = origin.Phrase("a component of the "+b.acts[body][i].what+" at %[1]s, in the solution", b.acts[body][i].at)
			}
			cells = append(cells, cell(traced(from, fixed(x, places[k]))))
		}
		t.Rows = append(t.Rows, cells)
	}
	last := []doc.Inline{cell(bigSum(words("")))}
	for k, x := range total {
		from := origin.Phrase("the sum of the column %[1]s: zero where %[2]s is in equilibrium", head[k+1], b.p.Bodies[body].Name)
		if len(b.s.X) == 0 {
			from = origin.Phrase("the sum of the column %[1]s: a component of the resultant on %[2]s", head[k+1], b.p.Bodies[body].Name)
		}
		last = append(last, cell(traced(from, fixed(sumClean(x, largest[k]), places[k]))))
	}
	t.Rows = append(t.Rows, last)
	return t
}

// column is the axis of a column of forces, or of the moments behind them.
func (b *builder) column(k, first int) (axis int, moment bool) {
	if k < b.axes {
		return k, false
	}
	return first + k - b.axes, true
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
