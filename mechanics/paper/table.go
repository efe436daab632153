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
	plain, head := setter{size: size, tone: ink.Dark}, setter{size: size, style: ink.Italic, tone: ink.Faint}
	set := doc.SetTable[box](plain, head, t, pad, least, c.width)
	full := pad * float64(n-1)
	for _, w := range set.Widths {
		full += w
	}
	k := math.Min(1, c.width/full) // smaller, where it cannot be narrower
	rule := func(before, width float64) {
		var d ink.Drawing
		d.Line(ink.Dark, width, ink.Vec{}, ink.Vec{X: k * full})
		c.put(slab{d: d, height: 1, before: before, keep: true})
	}
	rights := t.Rights()
	row := func(i int, keep bool) {
		var d ink.Drawing
		height, x := 0.0, 0.0
		for col, lines := range set.Rows[i] {
			y := 0.0
			for _, line := range lines {
				rise, at := math.Max(line.rise, 0.74*size), x
				if rights[col] {
					at += math.Max(0, set.Widths[col]-line.width)
				}
				d.Put(line.d, ink.Vec{X: at, Y: y + rise}, 1)
				y += math.Max(rise+line.fall, size*1.05)
			}
			height = math.Max(height, y)
			x += set.Widths[col] + pad
		}
		var scaled ink.Drawing
		scaled.Put(d, ink.Vec{}, k)
		c.put(slab{d: scaled, height: k * height, before: k * size * 0.22, keep: keep})
	}
	rule(gap, 0.8)
	rows := len(set.Rows)
	if t.Headed() {
		row(0, true)
		rule(size*0.2, 0.4)
	}
	const whole = 16 // rows up to which a table stays on one page
	for i := rows - len(t.Rows); i < rows; i++ {
		row(i, i == rows-1 || len(t.Rows) <= whole)
	}
	rule(size*0.25, 0.8)
	c.slabs[len(c.slabs)-1].keep = false
}
