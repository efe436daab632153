package working

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
)

// elimination is sums along the coordinates that are solved one after another: each in symbols, with
// numbers and the relations before it, and the relation that it gives; then the values.
func (b *builder) elimination(step *handsolve.Step) (body []doc.Block) {
	last, force := len(step.Relations)-1, b.p.Units.Force
	value := b.foundByHand(step, 0)
	number := func(int) doc.Math {
		return grouped(traced(b.origins().Found(step, 0), b.number(force.In(step.Finds[0].Value))))
	}
	lead := []any{"No sum of forces along an axis contains only one of ", b.symbols(slices.Sorted(slices.Values(foundIn(step)))), ", so they are found by substitution.",
		b.are(" ", step.Needs, "is", " already known."), " "}
	with := map[int]doc.Math{} // what the relations say of their symbols
	var forms [][]doc.Math     // of the values of these
	for k, r := range step.Relations {
		e := &step.Equations[k]
		shown := []doc.Math{b.written(e, false, nil)}
		var put []int
		for _, t := range e.Terms {
			if _, substituted := with[t.Symbol]; substituted {
				put = append(put, t.Symbol)
			}
		}
		if len(put) > 0 {
			lead = []any{"With ", b.symbols(put), " substituted, "}
		}
		if len(put) > 0 || slices.ContainsFunc(e.Terms, func(t handsolve.Term) bool { return t.Known }) {
			shown = append(shown, b.written(e, true, with))
		}
		if lead = append(lead, b.sumOn(e)); k < last {
			by := origin.Phrase("%[1]s solved for %[2]s", b.Hand.Short(b.p, e), b.Hand.Name(b.p, r.Symbol))
			found := b.foundByHand(step, k+1)
			is := traced(by, b.affine(r.Is, force))
			form := []doc.Math{found.Of[0], is}
			if hasNumber(is) {
				form = append(form, traced(by, b.linear(r.Is, force, number)))
			}
			with[r.Symbol], forms = is, append(forms, append(form, found.Of[1]))
			shown, lead = append(shown, equal(found.Of[0], is)), append(lead, " relates ", found.Of[0], " to ", value.Of[0], ".")
		} else {
			lead = append(lead, " contains only ", value.Of[0], ".")
		}
		body, lead = append(body, say(append(lead, b.substituted(e))...), aligned(shown...)), nil
	}
	closing := &body[len(body)-1].(*doc.Formula).Of[1]
	n, exact := b.eliminatedTo(*closing, value, forms)
	for _, block := range body {
		if f, is := block.(*doc.Formula); is {
			f.Of = each(f.Of, func(m doc.Math) doc.Math { return reprinted(m, n) })
		}
	}
	if _, alone, _ := b.solvedTo(*closing, value, n); !alone {
		value.Text = "≈"
	}
	return append(append(body, aligned(value)), formulas(each(forms, func(form []doc.Math) doc.Math {
		if !exact {
			return b.equals(form...)
		}
		result := form[len(form)-1]
		return equal(append(each(form[:len(form)-1], func(m doc.Math) doc.Math { return reprinted(m, n) }), result)...)
	}))...)
}

// eliminatedTo is how many figures the numbers of an elimination need so that all its values come out;
// exact is false where that is not enough for one.
func (b *builder) eliminatedTo(closing, value doc.Math, forms [][]doc.Math) (n int, exact bool) {
	for extra := range moreFigures + 1 {
		n = b.p.Figures + extra
		_, exact, _ = b.solvedTo(closing, value, n)
		for _, form := range forms {
			for _, side := range form[1 : len(form)-1] {
				same, numeric := b.comesOut(reprinted(side, n), form[len(form)-1])
				exact = exact && (same || !numeric)
			}
		}
		if exact {
			return n, true
		}
	}
	return b.p.Figures + 1, false
}
