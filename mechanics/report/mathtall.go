package report

import (
	"math"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
)

func (t setter) fraction(m doc.Math) mbox {
	if len(m.Of) < 2 {
		return mbox{}
	}
	if t.inline {
		b := t.set(inParens(m.Of[0], doc.Sum, doc.Neg))
		b.add(t.text(ink.Regular, "/"), 0)
		b.add(t.set(inParens(m.Of[1], doc.Sum, doc.Neg, doc.Product)), 0)
		return b
	}
	small := t
	small.size *= 0.92
	over, under := small.set(m.Of[0]), small.set(m.Of[1])
	var b mbox
	pad := 0.12 * t.size
	b.width = math.Max(over.width, under.width) + 2*pad
	axis := -0.26 * t.size // the bar lies at the height of a minus sign
	up, down := axis-0.2*t.size-over.fall, axis+0.2*t.size+under.rise
	b.d.Put(over.d, ink.Vec{X: (b.width - over.width) / 2, Y: up}, 1)
	b.d.Put(under.d, ink.Vec{X: (b.width - under.width) / 2, Y: down}, 1)
	b.d.Line(t.tone, 0.05*t.size, ink.Vec{X: pad / 2, Y: axis}, ink.Vec{X: b.width - pad/2, Y: axis})
	b.rise, b.fall = over.rise-up, under.fall+down
	return b
}

func (t setter) root(m doc.Math) mbox {
	in := t.set(first(m))
	var b mbox
	w := 0.55 * t.size
	top, bottom := in.rise+0.14*t.size, in.fall
	b.d.Line(t.tone, 0.055*t.size, ink.Vec{X: 0, Y: -0.22 * t.size}, ink.Vec{X: 0.14 * t.size, Y: -0.3 * t.size},
		ink.Vec{X: 0.3 * t.size, Y: bottom}, ink.Vec{X: w, Y: -top}, ink.Vec{X: w + in.width + 0.1*t.size, Y: -top})
	b.d.Put(in.d, ink.Vec{X: w + 0.04*t.size}, 1)
	b.width = w + in.width + 0.12*t.size
	b.rise, b.fall = top+0.05*t.size, in.fall
	return b
}

func (t setter) power(m doc.Math) mbox {
	b := t.set(inParens(first(m), doc.Sum, doc.Neg, doc.Product, doc.Fraction))
	if len(m.Of) > 1 {
		up := t.shrunk().set(m.Of[1])
		b.add(up, -math.Max(0.34*t.size, b.rise-0.4*t.size))
	}
	return b
}

// fenced sets a box between signs; where it is higher than a line the signs
// are drawn as high as it is.
func (t setter) fenced(in mbox, open, shut string) mbox {
	if in.rise <= 0.95*t.size && in.fall <= 0.4*t.size && open != "[" {
		b := t.text(ink.Regular, open)
		if open == "|" {
			b.space(0.06 * t.size)
			in.space(0.06 * t.size)
		}
		b.add(in, 0)
		b.add(t.text(ink.Regular, shut), 0)
		return b
	}
	var b mbox
	pad := 0.22 * t.size
	top, bottom := -in.rise-0.08*t.size, in.fall+0.08*t.size
	b.width = pad + 0.1*t.size
	b.add(in, 0)
	b.width += pad + 0.1*t.size
	x0, x1 := 0.08*t.size, b.width-0.08*t.size
	for _, side := range []struct {
		x, in float64
		sign  string
	}{{x0, pad * 0.7, open}, {x1, -pad * 0.7, shut}} {
		a, c := ink.Vec{X: side.x, Y: top}, ink.Vec{X: side.x, Y: bottom}
		switch side.sign {
		case "|":
			b.d.Line(t.tone, 0.055*t.size, a, c)
		case "[", "]":
			b.d.Line(t.tone, 0.055*t.size, a.Add(ink.Vec{X: side.in}), a, c, c.Add(ink.Vec{X: side.in}))
		default: // a round bracket as a shallow arc
			var arc []ink.Vec
			const steps = 12
			for i := range steps + 1 {
				x := float64(i)/steps*2 - 1
				arc = append(arc, ink.Vec{X: side.x + side.in*x*x, Y: (top+bottom)/2 + x*(bottom-top)/2})
			}
			b.d.Line(t.tone, 0.06*t.size, arc...)
		}
	}
	b.rise, b.fall = -top, bottom
	return b
}

// grid sets a matrix, its columns to the right where they hold numbers.
func (t setter) grid(m doc.Math, open, shut string) mbox {
	small := t
	small.inline = true
	var rows [][]mbox
	var widths []float64
	for _, r := range m.Of {
		cells := []doc.Math{r}
		if r.Op == doc.Row && m.Op != doc.Column {
			cells = r.Of
		}
		var line []mbox
		for k, c := range cells {
			box := small.set(c)
			line = append(line, box)
			if k == len(widths) {
				widths = append(widths, 0)
			}
			widths[k] = math.Max(widths[k], box.width)
		}
		rows = append(rows, line)
	}
	const lead = 1.25
	height := lead * t.size * float64(len(rows))
	top := -height/2 - 0.26*t.size
	gap := 0.8 * t.size
	var in mbox
	for k, line := range rows {
		x := 0.0
		y := top + lead*t.size*(float64(k)+0.5) + 0.26*t.size
		for c, box := range line {
			in.d.Put(box.d, ink.Vec{X: x + widths[c] - box.width, Y: y}, 1)
			x += widths[c] + gap
		}
		in.width = math.Max(in.width, x-gap)
	}
	in.rise, in.fall = -top, height+top
	return t.fenced(in, open, shut)
}
