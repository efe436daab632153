package paper

import (
	"math"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/doc"
	"trivet/mechanics/drawing"
)

// box is a piece of a formula or a sentence on paper, its corner at the left end of its
// baseline: rise above it, fall below.
type box struct {
	d                 drawing.Drawing
	width, rise, fall float64
}

// add sets another box behind this one, so far down.
func (b *box) add(o box, down float64) {
	b.d.Put(o.d, drawing.Vec{X: b.width, Y: down}, 1)
	b.width += o.width
	b.rise, b.fall = math.Max(b.rise, o.rise-down), math.Max(b.fall, o.fall+down)
}

// scaled is a box at another size.
func (b box) scaled(k float64) box {
	out := box{width: k * b.width, rise: k * b.rise, fall: k * b.fall}
	out.d.Put(b.d, drawing.Vec{}, k)
	return out
}

// within is a box that is made smaller where it is wider than a room.
func (b box) within(room float64) box { return b.scaled(math.Min(1, room/math.Max(b.width, 1))) }

// least is a box at least so high above and below its baseline.
func (b box) least(rise, fall float64) box {
	b.rise, b.fall = math.Max(b.rise, rise), math.Max(b.fall, fall)
	return b
}

// strut is a box at least so high above its baseline, and in all.
func (b box) strut(rise, height float64) box {
	b = b.least(rise, 0)
	return b.least(0, height-b.rise)
}

// setter sets formulas and words at a size. Inline ones keep to the height of a line.
type setter struct {
	size          float64
	style         drawing.Style // of words
	tone          drawing.Tone
	inline, small bool
}

var _ doc.Setter[box] = setter{}

// rise and fall are how high a line of text reaches, in sizes.
const rise, fall = 0.7, 0.22

func (t setter) text(style drawing.Style, s string) (b box) {
	if s != "" {
		run := drawing.Run{Text: s, Style: style}
		b.d.Write(drawing.Vec{}, t.size, t.tone, run)
		b.width, b.rise, b.fall = drawing.Width(t.size, run), rise*t.size, fall*t.size
	}
	return b
}

func (t setter) Traits() doc.Traits              { return doc.Traits{Flat: t.inline, Small: t.small} }
func (t setter) Inline() doc.Setter[box]         { t.inline = true; return t }
func (t setter) Width(b box) float64             { return b.width }
func (t setter) Words(text string) box           { return t.text(drawing.Regular, text) }
func (t setter) Number(s string, _ doc.Math) box { return t.text(drawing.Regular, s) }
func (t setter) Prose(text string) box           { return t.text(t.style, text) }

func (t setter) Small() doc.Setter[box] {
	t.size *= 0.72
	t.small, t.inline = true, true
	return t
}

func (t setter) Letter(m doc.Math) box {
	style := drawing.Italic
	switch r, _ := utf8.DecodeRuneInString(m.Text); {
	case m.Op == doc.Vec:
		style = drawing.Bold
	case m.Op == doc.UnitVec:
		style = drawing.BoldItalic
	case unicode.Is(unicode.Greek, r) && unicode.IsUpper(r): // upright, as is usual
		style = drawing.Regular
	}
	return t.text(style, m.Text)
}

func (t setter) Sign(text string) box {
	if text == "-" {
		text = "−"
	}
	return t.text(drawing.Regular, text)
}

// gaps are the spaces of formulas, in sizes.
var gaps = map[doc.Gap]float64{doc.Relation: 0.28, doc.Plus: 0.22, doc.Dot: 0.18, doc.Times: 0.22, doc.Factor: 0.16, doc.Comma: 0.25, doc.Unit: 0.2, doc.Beside: 0.12, doc.SumOf: 0.06, doc.Indent: 2}

func (t setter) Space(g doc.Gap) box {
	if g == doc.Word {
		return box{width: drawing.Advance(" ", t.style, t.size)}
	}
	k := gaps[g]
	if t.small {
		k *= 0.3
	}
	return box{width: k * t.size}
}

func (t setter) Join(of ...box) (b box) {
	for _, o := range of {
		b.add(o, 0)
	}
	return b
}

func (t setter) Sub(_ doc.Math, base, sub box) box {
	base.width += 0.02 * t.size
	base.add(sub, 0.18*t.size)
	return base
}

func (t setter) Power(base, up box, _ doc.Math) box {
	base.add(up, -math.Max(0.34*t.size, base.rise-0.4*t.size))
	return base
}

func (t setter) Fraction(over, under box) (b box) {
	over, under = over.scaled(0.92), under.scaled(0.92)
	pad := 0.12 * t.size
	b.width = math.Max(over.width, under.width) + 2*pad
	axis := -0.26 * t.size // the bar lies at the height of a minus sign
	up, down := axis-0.2*t.size-over.fall, axis+0.2*t.size+under.rise
	b.d.Put(over.d, drawing.Vec{X: (b.width - over.width) / 2, Y: up}, 1)
	b.d.Put(under.d, drawing.Vec{X: (b.width - under.width) / 2, Y: down}, 1)
	b.d.Line(t.tone, 0.05*t.size, drawing.Vec{X: pad / 2, Y: axis}, drawing.Vec{X: b.width - pad/2, Y: axis})
	b.rise, b.fall = over.rise-up, under.fall+down
	return b
}

func (t setter) Root(in box) (b box) {
	w := 0.55 * t.size
	top, bottom := in.rise+0.14*t.size, in.fall
	b.d.Line(t.tone, 0.055*t.size, drawing.Vec{X: 0, Y: -0.22 * t.size}, drawing.Vec{X: 0.14 * t.size, Y: -0.3 * t.size},
		drawing.Vec{X: 0.3 * t.size, Y: bottom}, drawing.Vec{X: w, Y: -top}, drawing.Vec{X: w + in.width + 0.1*t.size, Y: -top})
	b.d.Put(in.d, drawing.Vec{X: w + 0.04*t.size}, 1)
	b.width = w + in.width + 0.12*t.size
	b.rise, b.fall = top+0.05*t.size, in.fall
	return b
}

func (t setter) Fence(op doc.Op, in box) box {
	sign := map[doc.Op][2]string{doc.Size: {"|", "|"}, doc.Paren: {"(", ")"}}[op]
	if in.rise > 0.95*t.size || in.fall > 0.4*t.size {
		return t.fenced(in, op)
	}
	pad := box{}
	if op == doc.Size {
		pad.width = 0.06 * t.size
	}
	return t.Join(t.text(drawing.Regular, sign[0]), pad, in, pad, t.text(drawing.Regular, sign[1]))
}

// fenced draws signs as high as what stands between them.
func (t setter) fenced(in box, op doc.Op) (b box) {
	pad := 0.22 * t.size
	top, bottom := -in.rise-0.08*t.size, in.fall+0.08*t.size
	b.width = pad + 0.1*t.size
	b.add(in, 0)
	b.width += pad + 0.1*t.size
	for _, side := range [][2]float64{{0.08 * t.size, pad * 0.7}, {b.width - 0.08*t.size, -pad * 0.7}} {
		x, inwards := side[0], side[1]
		a, c := drawing.Vec{X: x, Y: top}, drawing.Vec{X: x, Y: bottom}
		switch op {
		case doc.Size, doc.Det:
			b.d.Line(t.tone, 0.055*t.size, a, c)
		case doc.Grid, doc.Column:
			b.d.Line(t.tone, 0.055*t.size, a.Add(drawing.Vec{X: inwards}), a, c, c.Add(drawing.Vec{X: inwards}))
		default: // a round bracket as a shallow arc
			var arc []drawing.Vec
			const steps = 12
			for i := range steps + 1 {
				k := float64(i)/steps*2 - 1
				arc = append(arc, drawing.Vec{X: x + inwards*k*k, Y: (top+bottom)/2 + k*(bottom-top)/2})
			}
			b.d.Line(t.tone, 0.06*t.size, arc...)
		}
	}
	b.rise, b.fall = -top, bottom
	return b
}

// Grid sets a matrix, its columns to the right.
func (t setter) Grid(op doc.Op, rows [][]box, columns []float64) box {
	const lead = 1.25
	height := lead * t.size * float64(len(rows))
	top, gap := -height/2-0.26*t.size, 0.8*t.size
	in := box{rise: -top, fall: height + top}
	for i, r := range rows {
		x, y := 0.0, top+lead*t.size*(float64(i)+0.5)+0.26*t.size
		for k, c := range r {
			in.d.Put(c.d, drawing.Vec{X: x + columns[k] - c.width, Y: y}, 1)
			x += columns[k] + gap
		}
		in.width = math.Max(in.width, x-gap)
	}
	return t.fenced(in, op)
}
