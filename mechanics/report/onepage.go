package report

import (
	"math"

	"trivet/mechanics/ink"
)

// leastSize is the smallest text of a field page: what a person still reads off
// paper.
const leastSize = 5.5

// onePage sets a field page on one sheet of paper: inputs beside results and
// checks, all else across. It says whether that fits.
func onePage(pg page, size float64) (ink.Drawing, bool) {
	const gutter = 18
	column := func(width float64, fill func(*compositor)) (ink.Drawing, float64) {
		c := compositor{size: size, width: width}
		fill(&c)
		var d ink.Drawing
		y := 0.0
		for i, s := range c.slabs {
			if i > 0 {
				y += s.before
			}
			d.Put(s.d, ink.Vec{Y: y}, 1)
			y += s.height
		}
		return d, y
	}
	var above, left, right, below []part
	for _, p := range pg.parts {
		switch p.title {
		case partRisk, partFigure:
			above = append(above, p)
		case partInputs:
			left = append(left, p)
		case partResults, partChecks:
			right = append(right, p)
		default:
			below = append(below, p)
		}
	}
	parts := func(of []part) func(*compositor) {
		return func(c *compositor) {
			for _, p := range of {
				c.part(p, true)
			}
		}
	}
	half := (columnWidth - gutter) / 2.0
	head, high := column(columnWidth, func(c *compositor) {
		c.page(page{title: pg.title, under: pg.under, parts: above, field: true})
	})
	l, lh := column(half, parts(left))
	r, rh := column(half, parts(right))
	foot, fh := column(columnWidth, func(c *compositor) {
		parts(below)(c)
		c.source(pg.source)
	})
	var d ink.Drawing
	d.Width, d.Height, d.Title = pageWidth, pageHeight, pg.title
	gap := size * 0.9
	y := float64(pageMargin)
	d.Put(head, ink.Vec{X: pageMargin, Y: y}, 1)
	y += high + gap
	d.Put(l, ink.Vec{X: pageMargin, Y: y}, 1)
	d.Put(r, ink.Vec{X: pageMargin + half + gutter, Y: y}, 1)
	y += math.Max(lh, rh) + gap
	d.Put(foot, ink.Vec{X: pageMargin, Y: y}, 1)
	return d, y+fh <= pageHeight-pageMargin
}
