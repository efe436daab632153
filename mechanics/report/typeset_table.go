package report

import (
	"math"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
)

// table sets a table between rules; columns of numbers to the right. The
// widest columns of words are wrapped until it fits.
func (c *compositor) table(t oldTable, gap float64) {
	const least = 36
	size := c.size * 0.94
	pad := 0.7 * size
	columns := len(t.Head)
	for _, r := range t.Rows {
		columns = max(columns, len(r))
	}
	if columns == 0 {
		return
	}
	widths := make([]float64, columns)
	wraps := make([]bool, columns)
	right := make([]bool, columns)
	for k := range columns {
		right[k] = k > 0
	}
	for k, h := range t.Head {
		widths[k] = ink.Advance(h, ink.Italic, size)
	}
	for _, r := range t.Rows {
		for k, cell := range r {
			w := 0.0
			for _, line := range breakLines([]doc.Inline{cell}, size, ink.Regular, ink.Dark, math.Inf(1)) {
				w = math.Max(w, line.width)
			}
			widths[k] = math.Max(widths[k], w)
			wraps[k] = wraps[k] || cell.Math == nil && w > least
			right[k] = right[k] && numeric(cell)
		}
	}
	room := c.width - pad*float64(columns-1)
	for {
		total, widest := 0.0, -1
		for k, w := range widths {
			total += w
			if wraps[k] && w > least && (widest < 0 || w > widths[widest]) {
				widest = k
			}
		}
		if total <= room+0.01 {
			break
		}
		if widest < 0 { // nothing to wrap: smaller
			for k := range widths {
				widths[k] *= room / total
			}
			size *= room / total
			break
		}
		second := least * 1.0
		for k, w := range widths {
			if k != widest && wraps[k] && w < widths[widest] {
				second = math.Max(second, w)
			}
		}
		widths[widest] = math.Max(second*0.9, widths[widest]-(total-room))
	}
	full := pad * float64(columns-1)
	for _, w := range widths {
		full += w
	}
	rule := func(before, width float64) {
		var d ink.Drawing
		d.Line(ink.Dark, width, ink.Vec{}, ink.Vec{X: full})
		c.put(slab{d: d, height: 1, before: before, keep: true})
	}
	row := func(cells []doc.Inline, style ink.Style, tone ink.Tone, keep bool) {
		var d ink.Drawing
		height, x := 0.0, 0.0
		for k := range columns {
			if k < len(cells) {
				y := 0.0
				for _, line := range breakLines(cells[k:k+1], size, style, tone, widths[k]+0.01) {
					rise := math.Max(line.rise, 0.74*size)
					at := x
					if right[k] && style == ink.Regular {
						at += widths[k] - line.width
					} else if right[k] {
						at += math.Max(0, widths[k]-line.width)
					}
					d.Put(line.d, ink.Vec{X: at, Y: y + rise}, 1)
					y += math.Max(rise+line.fall, size*1.05)
				}
				height = math.Max(height, y)
			}
			x += widths[k] + pad
		}
		c.put(slab{d: d, height: height, before: size * 0.22, keep: keep})
	}
	rule(gap, 0.8)
	if len(t.Head) > 0 {
		var head []doc.Inline
		for _, h := range t.Head {
			head = append(head, doc.Inline{Words: h})
		}
		row(head, ink.Italic, ink.Faint, true)
		rule(size*0.2, 0.4)
	}
	const whole = 16 // rows up to which a table stays on one page
	for i, r := range t.Rows {
		row(r, ink.Regular, ink.Dark, i == len(t.Rows)-1 || len(t.Rows) <= whole)
	}
	rule(size*0.25, 0.8)
	c.slabs[len(c.slabs)-1].keep = false
}

// numeric tells a cell that stands to the right: a number, or nothing.
func numeric(c doc.Inline) bool {
	if c.Math != nil {
		m := *c.Math
		for m.Op == doc.Neg || m.Op == doc.Row && len(m.Of) > 0 {
			m = m.Of[0]
		}
		return m.Op == doc.Number
	}
	return c.Words == "" || c.Words[0] >= '0' && c.Words[0] <= '9' || strings.HasPrefix(c.Words, "−") || c.Words[0] == '-' && len(c.Words) > 1
}
