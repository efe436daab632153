package problem

import (
	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// given reads a given when first asked for, and tells whether it has a value.
func (r *reading) given(i int) bool {
	g := &r.p.Givens[i]
	return r.once(g.Ref, g.Name, func() bool { return r.readGiven(i) }, "givens", "give one of them a number")
}

func (r *reading) readGiven(i int) bool {
	g, row := &r.p.Givens[i], r.givenRows[i]
	text, ref, ok := r.plain("given", row)
	if !ok {
		return r.fail(g.Ref, diag.Span{}, "the given "+g.Name+" has no value", "a value such as 6 m")
	}
	v, ok := r.one(ref, text, env{r: r, scope: inGiven})
	if !ok {
		return false
	}
	if v.N != 1 {
		return r.fail(ref, whole(text), "a given is a single value, but this is several", "a decimal point, not a comma")
	}
	g.Value = v
	r.readRange(g, row)
	return true
}

// readRange reads where a given may go, for variants: range = "300 lbf .. 500 lbf", step = "50 lbf".
func (r *reading) readRange(g *Given, row sheet.Row) {
	bare := r.p.Units.For(g.Value.Dim)
	bound := func(ref sheet.Ref, text string, e *units.Expr) (float64, bool) {
		v, err := e.Eval(env{r: r, scope: inGiven})
		if err == nil {
			v, err = units.Want(v, g.Value.Dim, bare, whole(text))
		}
		if err != nil {
			return 0, r.failCell(ref, err)
		}
		return v.V[0], true
	}
	if text, ref, ok := r.text("given", row, "range"); ok {
		low, high, ok := r.ends(ref, text)
		var a, b float64
		if ok {
			a, ok = bound(ref, text, low)
		}
		if ok {
			b, ok = bound(ref, text, high)
		}
		if !ok {
			return
		}
		if a >= b {
			r.fail(ref, whole(text), "the low end of the range is not below its high end", "the smaller value first")
			return
		}
		g.HasRange, g.Low, g.High = true, a, b
	}
	if text, ref, ok := r.text("given", row, "step"); ok {
		e, err := r.parseOne(text)
		if err != nil {
			r.failCell(ref, err)
			return
		}
		r.grouped(ref, text, e)
		switch v, ok := bound(ref, text, e); {
		case !ok:
		case v <= 0:
			r.fail(ref, whole(text), "a step must be greater than zero", "a value such as 0.5")
		default:
			g.Step = v
		}
		if g.Step > 0 && !g.HasRange {
			r.doubt(ref, UnusedCell, diag.Span{}, "the given "+g.Name+" has a step but no range, so the step is used by a sweep only", "add a range")
		}
	}
}
