package problem

import (
	"trivet/mechanics/diag"
	"trivet/units"
)

// given reads a given when first asked for, and tells whether it has a value.
func (r *reading) given(i int) bool {
	g := &r.p.Givens[i]
	return r.once(g.Ref, g.Name, func() bool { return r.readGiven(i) }, "givens", "give one of them a number")
}

func (r *reading) readGiven(i int) bool {
	g := &r.p.Givens[i]
	w := r.rows[g.Ref]
	c := w.plain()
	if !c.has {
		return w.fail("the given "+g.Name+" has no value", "a value such as 6 m")
	}
	v, ok := c.one(env{r: r, scope: inGiven})
	if !ok {
		return false
	}
	if v.N != 1 {
		return c.fail("a given is a single value, but this is several", "a decimal point, not a comma")
	}
	g.Value = v
	g.readRange(w.cell("range"))
	g.readStep(w.cell("step"))
	return true
}

// readRange reads where a given may go, for variants: range = "300 lbf .. 500 lbf".
func (g *Given) readRange(c cell) {
	if !c.has {
		return
	}
	low, high, ok := c.ends()
	if !ok || !g.bound(&g.Low, c, low) || !g.bound(&g.High, c, high) {
		return
	}
	g.HasRange = g.Low < g.High || c.fail("the low end of the range is not below its high end", "the smaller value first")
}

// readStep reads how far apart its values are in variants: step = "50 lbf".
func (g *Given) readStep(c cell) {
	if !c.has {
		return
	}
	expr, ok := c.expr(c.r.parseOne)
	if !ok {
		return
	}
	c.grouped(expr)
	switch ok = g.bound(&g.Step, c, expr); {
	case !ok:
	case g.Step <= 0:
		g.Step = 0
		c.fail("a step must be greater than zero", "a value such as 0.5")
	case !g.HasRange:
		c.r.doubt(c.ref, UnusedCell, diag.Span{}, "the given "+g.Name+" has a step but no range, so the step is used by a sweep only", "add a range")
	}
}

// bound reads a value that a given may have.
func (g *Given) bound(to *float64, c cell, expr *units.Expr) bool {
	v, ok := c.part(expr, env{r: c.r, scope: inGiven}, g.Value.Dim)
	if ok {
		*to = v.V[0]
	}
	return ok
}
