package report

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/ink"
	"trivet/mechanics/working"
)

// mbox is a piece of a formula set on paper, its corner at the left end of its
// baseline: rise above it, fall below.
type mbox struct {
	d                 ink.Drawing
	width, rise, fall float64
}

// setter sets formulas at a size. Inline ones keep to the height of a line:
// fractions are written a/b.
type setter struct {
	size   float64
	inline bool
	low    bool // in a subscript, where signs stand close
	tone   ink.Tone
}

func (t setter) text(style ink.Style, s string) mbox {
	var b mbox
	b.put(ink.Run{Text: s, Style: style}, t)
	return b
}

func (b *mbox) put(r ink.Run, t setter) {
	if r.Text == "" {
		return
	}
	b.d.Write(ink.Vec{X: b.width}, t.size, t.tone, r)
	b.width += ink.Width(t.size, r)
	b.rise, b.fall = math.Max(b.rise, 0.7*t.size), math.Max(b.fall, 0.22*t.size)
}

// add sets another box behind this one, so far down.
func (b *mbox) add(o mbox, down float64) {
	b.d.Put(o.d, ink.Vec{X: b.width, Y: down}, 1)
	b.width += o.width
	b.rise, b.fall = math.Max(b.rise, o.rise-down), math.Max(b.fall, o.fall+down)
}

func (b *mbox) space(w float64) { b.width += w }

// shrunk is the setter of what stands lower or higher.
func (t setter) shrunk() setter {
	t.size *= 0.72
	t.low, t.inline = true, true
	return t
}

// gap is a space of so many sizes, none in a subscript.
func (t setter) gap(k float64) float64 {
	if t.low {
		k *= 0.3
	}
	return k * t.size
}

// set lays a formula out.
func (t setter) set(m working.Math) mbox {
	switch m.Op {
	case working.Symbol:
		return t.indexed(t.text(letterStyle(m.Text), m.Text), m.Of)
	case working.Vec:
		return t.indexed(t.text(ink.Bold, m.Text), m.Of)
	case working.UnitVec:
		return t.indexed(t.text(ink.BoldItalic, m.Text), m.Of)
	case working.Number, working.Words:
		return t.text(ink.Regular, m.Text)
	case working.Neg:
		b := t.text(ink.Regular, "−")
		b.add(t.set(inParens(first(m), working.Sum)), 0)
		return b
	case working.Fraction:
		return t.fraction(m)
	case working.Root:
		return t.root(m)
	case working.Power:
		return t.power(m)
	case working.Size:
		return t.fenced(t.set(first(m)), "|", "|")
	case working.Paren:
		return t.fenced(t.list(m.Of, ","), "(", ")")
	case working.Column:
		return t.grid(m, "[", "]")
	case working.Grid:
		return t.grid(m, "[", "]")
	case working.Det:
		return t.grid(m, "|", "|")
	case working.BigSum:
		b := t.text(ink.Regular, "Σ")
		b.space(t.gap(0.06))
		b.add(t.set(inParens(first(m), working.Sum)), 0)
		return b
	}
	var b mbox
	for _, piece := range t.pieces(m) {
		b.space(piece.before)
		b.add(piece.box, 0)
	}
	return b
}

func first(m working.Math) working.Math {
	if len(m.Of) == 0 {
		return working.Math{Op: working.Words}
	}
	return m.Of[0]
}

// letterStyle sets capital Greek upright, as is usual, and all else in italics.
func letterStyle(s string) ink.Style {
	r, _ := utf8.DecodeRuneInString(s)
	if unicode.Is(unicode.Greek, r) && unicode.IsUpper(r) {
		return ink.Regular
	}
	return ink.Italic
}

// indexed sets a symbol with its subscript.
func (t setter) indexed(b mbox, sub []working.Math) mbox {
	if len(sub) > 0 {
		b.space(0.02 * t.size)
		b.add(t.shrunk().set(working.Math{Op: working.Row, Of: sub}), 0.18*t.size)
	}
	return b
}

// piece is a part of a long formula; a line may break before it where it is
// free to.
type piece struct {
	box    mbox
	before float64 // space before it within a line
	free   bool
	sign   bool // a relation, at which equations are aligned
}

// pieces takes apart what stands side by side: relations, sums, products, rows.
func (t setter) pieces(m working.Math) []piece {
	var out []piece
	join := func(box mbox, before float64) {
		if n := len(out); n > 0 {
			out[n-1].box.space(before)
			out[n-1].box.add(box, 0)
			return
		}
		out = append(out, piece{box: box})
	}
	switch m.Op {
	case working.Relate:
		for k, of := range m.Of {
			parts := t.pieces(of)
			if k > 0 {
				sign := t.text(ink.Regular, m.Text)
				sign.space(t.gap(0.28))
				sign.add(parts[0].box, 0)
				parts[0] = piece{box: sign, before: t.gap(0.28), free: true, sign: true}
			}
			out = append(out, parts...)
		}
	case working.Sum:
		for k, of := range m.Of {
			sign := ""
			if minus, rest := signed(of); minus {
				sign, of = "−", rest
			} else if k > 0 {
				sign = "+"
			}
			box := t.set(of)
			if sign == "" || k == 0 {
				if sign != "" {
					s := t.text(ink.Regular, sign)
					s.add(box, 0)
					box = s
				}
				out = append(out, piece{box: box})
				continue
			}
			s := t.text(ink.Regular, sign)
			s.space(t.gap(0.22))
			s.add(box, 0)
			out = append(out, piece{box: s, before: t.gap(0.22), free: true})
		}
	case working.Product:
		for k, of := range m.Of {
			space := 0.0
			if k > 0 {
				space = t.gap(0.16)
				switch productGap(m.Of[k-1], of, "·", " ") {
				case "·":
					join(t.text(ink.Regular, "·"), t.gap(0.18))
				case "":
					space = 0
				}
				of = inParens(of, working.Neg)
			}
			join(t.set(inParens(of, working.Sum)), space)
		}
	case working.Cross:
		for k, of := range m.Of {
			if k > 0 {
				join(t.text(ink.Regular, "×"), t.gap(0.22))
			}
			join(t.set(inParens(of, working.Sum, working.Neg)), t.gap(0.22))
		}
	case working.Row:
		for k, of := range m.Of {
			inner := t.pieces(of)
			if k == 0 {
				out = append(out, inner...)
				continue
			}
			space := t.gap(0.12)
			switch before := m.Of[k-1]; {
			case of.Op == working.Words && (of.Text == "" || strings.ContainsAny(of.Text[:1], " ,;.:)")), before.Op == working.Words && strings.HasSuffix(before.Text, " "):
				space = 0
			case t.low:
				space = 0
			case of.Op == working.Words || before.Op == working.Words:
				space = t.gap(0.2)
			}
			join(inner[0].box, space)
			out = append(out, inner[1:]...)
		}
	default:
		out = append(out, piece{box: t.set(m)})
	}
	if len(out) == 0 {
		out = append(out, piece{})
	}
	return out
}

func (t setter) list(of []working.Math, between string) mbox {
	var b mbox
	for k, m := range of {
		if k > 0 {
			b.add(t.text(ink.Regular, between), 0)
			b.space(t.gap(0.25))
		}
		b.add(t.set(m), 0)
	}
	return b
}

func (t setter) fraction(m working.Math) mbox {
	if len(m.Of) < 2 {
		return mbox{}
	}
	if t.inline {
		b := t.set(inParens(m.Of[0], working.Sum, working.Neg))
		b.add(t.text(ink.Regular, "/"), 0)
		b.add(t.set(inParens(m.Of[1], working.Sum, working.Neg, working.Product)), 0)
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

func (t setter) root(m working.Math) mbox {
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

func (t setter) power(m working.Math) mbox {
	b := t.set(inParens(first(m), working.Sum, working.Neg, working.Product, working.Fraction))
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
func (t setter) grid(m working.Math, open, shut string) mbox {
	small := t
	small.inline = true
	var rows [][]mbox
	var widths []float64
	for _, r := range m.Of {
		cells := []working.Math{r}
		if r.Op == working.Row && m.Op != working.Column {
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
