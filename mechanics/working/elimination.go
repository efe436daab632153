package working

import (
	"slices"

	"trivet/mechanics/doc"
	"trivet/mechanics/handsolve"
	"trivet/mechanics/origin"
	english "trivet/mechanics/say"
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
	n := b.figuresOf(*closing, value, forms)
	for _, block := range body {
		if f, is := block.(*doc.Formula); is {
			f.Of = english.Each(f.Of, func(m doc.Math) doc.Math { return reprinted(m, n) })
		}
	}
	if _, alone, _ := b.solvedTo(*closing, value, n); !alone {
		value.Text = "≈"
	}
	return append(append(body, aligned(value)), formulas(english.Each(forms, func(form []doc.Math) doc.Math {
		shown, _ := b.formTo(form, n)
		return shown
	}))...)
}

// formTo is x = relation = numbers = result with numbers of n figures; behind ≈ where the result does not
// come out of what is printed.
func (b *builder) formTo(form []doc.Math, n int) (shown doc.Math, exact bool) {
	last := len(form) - 1
	shown, exact = equal(slices.Clone(form)...), true
	for k := 1; k < last; k++ {
		shown.Of[k] = reprinted(form[k], n)
		same, numeric := b.comesOut(shown.Of[k], form[last])
		exact = exact && (same || !numeric)
	}
	if !exact {
		shown.Text = "≈"
	}
	return shown, exact
}

// figuresOf is how many figures the numbers of an elimination need so that all its values come out;
// one more than a result's where that is not enough for one.
func (b *builder) figuresOf(closing, value doc.Math, forms [][]doc.Math) int {
	for extra := range moreFigures + 1 {
		n := b.p.Figures + extra
		inexact := func(form []doc.Math) bool { _, exact := b.formTo(form, n); return !exact }
		if _, exact, _ := b.solvedTo(closing, value, n); exact && !slices.ContainsFunc(forms, inexact) {
			return n
		}
	}
	return b.p.Figures + 1
}
