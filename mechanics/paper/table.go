package paper

import (
	"math"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
)

// table sets a table between rules; columns of numbers to the right. The widest columns
// of words are wrapped until it fits, and where that is not enough it is set smaller.
func (c *compositor) table(t *doc.Table, gap float64) {
	const least = 36
	size := c.size * 0.94
	pad := 0.7 * size
	n := len(t.Columns)
	if n == 0 {
		return
	}
	widths, wraps, heads := make([]float64, n), make([]bool, n), make([]doc.Inline, n)
	for k, col := range t.Columns {
		heads[k] = doc.Inline{Words: col.Head}
		widths[k] = ink.Advance(col.Head, ink.Italic, size)
		for _, r := range t.Rows {
			w := 0.0
			for _, line := range doc.Wrap[box](setter{size: size}, []doc.Inline{doc.Cell(r, k)}, math.Inf(1), math.Inf(1)) {
				w = line.width
			}
			widths[k] = math.Max(widths[k], w)
			wraps[k] = wraps[k] || doc.Wraps(doc.Cell(r, k)) && w > least
		}
	}
	fitted, fits := doc.FitColumns(widths, wraps, pad, least, c.width)
	full := pad * float64(n-1)
	for _, w := range fitted {
		full += w
	}
	if !fits {
		k := (c.width - pad*float64(n-1)) / (full - pad*float64(n-1))
		for i := range fitted {
			fitted[i] *= k
		}
		size, full = size*k, c.width
	}
	rule := func(before, width float64) {
		var d ink.Drawing
		d.Line(ink.Dark, width, ink.Vec{}, ink.Vec{X: full})
		c.put(slab{d: d, height: 1, before: before, keep: true})
	}
	rights := t.Rights()
	row := func(s setter, cells []doc.Inline, keep bool) {
		var d ink.Drawing
		height, x := 0.0, 0.0
		for k := range n {
			y := 0.0
			for _, line := range doc.Wrap[box](s, []doc.Inline{doc.Cell(cells, k)}, fitted[k], fitted[k]) {
				rise, at := math.Max(line.rise, 0.74*size), x
				if rights[k] {
					at += math.Max(0, fitted[k]-line.width)
				}
				d.Put(line.d, ink.Vec{X: at, Y: y + rise}, 1)
				y += math.Max(rise+line.fall, size*1.05)
			}
			height = math.Max(height, y)
			x += fitted[k] + pad
		}
		c.put(slab{d: d, height: height, before: size * 0.22, keep: keep})
	}
	rule(gap, 0.8)
	if t.Headed() {
		row(setter{size: size, style: ink.Italic, tone: ink.Faint}, heads, true)
		rule(size*0.2, 0.4)
	}
	const whole = 16 // rows up to which a table stays on one page
	for i, r := range t.Rows {
		row(setter{size: size, tone: ink.Dark}, r, i == len(t.Rows)-1 || len(t.Rows) <= whole)
	}
	rule(size*0.25, 0.8)
	c.slabs[len(c.slabs)-1].keep = false
}
