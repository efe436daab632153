package report

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
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
func (t setter) set(m doc.Math) mbox {
	switch m.Op {
	case doc.Symbol:
		return t.indexed(t.text(letterStyle(m.Text), m.Text), m.Of)
	case doc.Vec:
		return t.indexed(t.text(ink.Bold, m.Text), m.Of)
	case doc.UnitVec:
		return t.indexed(t.text(ink.BoldItalic, m.Text), m.Of)
	case doc.Number, doc.Words:
		return t.text(ink.Regular, m.Text)
	case doc.Neg:
		b := t.text(ink.Regular, "−")
		b.add(t.set(inParens(first(m), doc.Sum)), 0)
		return b
	case doc.Fraction:
		return t.fraction(m)
	case doc.Root:
		return t.root(m)
	case doc.Power:
		return t.power(m)
	case doc.Size:
		return t.fenced(t.set(first(m)), "|", "|")
	case doc.Paren:
		return t.fenced(t.list(m.Of, ","), "(", ")")
	case doc.Function:
		b := t.text(ink.Regular, m.Text)
		b.space(t.gap(0.16))
		b.add(t.set(inParens(first(m), doc.Sum, doc.Neg, doc.Product, doc.Fraction)), 0)
		return b
	case doc.Degrees:
		b := t.set(inParens(first(m), doc.Sum))
		b.add(t.text(ink.Regular, "°"), 0)
		return b
	case doc.Column:
		return t.grid(m, "[", "]")
	case doc.Grid:
		return t.grid(m, "[", "]")
	case doc.Det:
		return t.grid(m, "|", "|")
	case doc.BigSum:
		b := t.text(ink.Regular, "Σ")
		b.space(t.gap(0.06))
		b.add(t.set(inParens(first(m), doc.Sum)), 0)
		return b
	}
	var b mbox
	for _, piece := range t.pieces(m) {
		b.space(piece.before)
		b.add(piece.box, 0)
	}
	return b
}

func first(m doc.Math) doc.Math {
	if len(m.Of) == 0 {
		return doc.Math{Op: doc.Words}
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
func (t setter) indexed(b mbox, sub []doc.Math) mbox {
	if len(sub) > 0 {
		b.space(0.02 * t.size)
		b.add(t.shrunk().set(doc.Math{Op: doc.Row, Of: sub}), 0.18*t.size)
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
func (t setter) pieces(m doc.Math) []piece {
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
	case doc.Relate:
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
	case doc.Sum:
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
	case doc.Product:
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
				of = inParens(of, doc.Neg)
			}
			join(t.set(inParens(of, doc.Sum)), space)
		}
	case doc.Cross:
		for k, of := range m.Of {
			if k > 0 {
				join(t.text(ink.Regular, "×"), t.gap(0.22))
			}
			join(t.set(inParens(of, doc.Sum, doc.Neg)), t.gap(0.22))
		}
	case doc.Row:
		for k, of := range m.Of {
			inner := t.pieces(of)
			if k == 0 {
				out = append(out, inner...)
				continue
			}
			space := t.gap(0.12)
			switch before := m.Of[k-1]; {
			case of.Op == doc.Words && (of.Text == "" || strings.ContainsAny(of.Text[:1], " ,;.:)")), before.Op == doc.Words && strings.HasSuffix(before.Text, " "):
				space = 0
			case t.low:
				space = 0
			case of.Op == doc.Words || before.Op == doc.Words:
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

func (t setter) list(of []doc.Math, between string) mbox {
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
