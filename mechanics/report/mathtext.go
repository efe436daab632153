package report

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/doc"
	"trivet/mechanics/printable"
)

// softBreak marks where a formula may go on in a new line: before a relation or a
// sign. No text that a user types holds it, since printed cleans it away.
const softBreak = "\x1f"

// box is a piece of a formula in cells of a terminal: its lines, all of one
// width, and the index of the line that stands beside its neighbours.
type box struct {
	lines []string
	base  int
}

func inline(text string) box { return box{lines: []string{text}} }

func (b box) width() int { return ansi.StringWidth(bare(b.lines[0])) }

// bare drops the marks of soft breaks.
func bare(text string) string { return strings.ReplaceAll(text, softBreak, "") }

// beside sets boxes side by side with their bases level.
func beside(of ...box) box {
	up, down := 0, 0
	for _, b := range of {
		up, down = max(up, b.base), max(down, len(b.lines)-1-b.base)
	}
	out := box{lines: make([]string, up+1+down), base: up}
	for _, b := range of {
		blank := strings.Repeat(" ", b.width())
		for k := range out.lines {
			if i := k - up + b.base; i >= 0 && i < len(b.lines) {
				out.lines[k] += b.lines[i]
			} else {
				out.lines[k] += blank
			}
		}
	}
	return out
}

// printed is a user's text on one line, without what acts on a terminal; line ends and
// tabs are blanks.
func printed(text string) string { return printable.Line(lineEnds.Replace(text)) }

var lineEnds = strings.NewReplacer("\r\n", " ", "\n", " ", "\t", " ")

// TextMath writes a formula in one line of Unicode; a matrix takes its rows in brackets.
func TextMath(m doc.Math) string { return bare(strings.Join(textBox(m, true).lines, "\n")) }

// textBox lays a formula out; deep lets it break inside parentheses too.
func textBox(m doc.Math, deep bool) box {
	switch m.Op {
	case doc.Symbol:
		if m.Name != "" {
			return inline(printed(m.Name))
		}
		fallthrough
	case doc.Vec, doc.UnitVec:
		text := printed(m.Text)
		if len(m.Of) > 0 {
			text += "_" + plainSub(m)
		}
		return inline(text)
	case doc.Number, doc.Words:
		return inline(printed(m.Text))
	case doc.Row:
		return textRow(m.Of, deep)
	case doc.Sum:
		return textSum(m.Of, deep)
	case doc.Neg:
		return beside(inline("-"), textBox(inParens(m.Of[0], doc.Sum), deep))
	case doc.Product:
		return textProduct(m.Of, deep)
	case doc.Cross:
		return beside(textBox(inParens(m.Of[0], doc.Sum, doc.Neg), deep), inline(" × "), textBox(inParens(m.Of[1], doc.Sum, doc.Neg), deep))
	case doc.Fraction:
		return beside(textBox(inParens(m.Of[0], doc.Sum, doc.Neg), false), inline("/"), textBox(inParens(m.Of[1], doc.Sum, doc.Neg, doc.Product), false))
	case doc.Root:
		return beside(inline("√"), textBox(inParens(m.Of[0], doc.Sum, doc.Power, doc.Product), deep))
	case doc.Power:
		return beside(textBox(inParens(m.Of[0], doc.Sum, doc.Neg, doc.Product, doc.Fraction), deep), inline(superscript(m.Of[1])))
	case doc.Size:
		return beside(inline("|"), textBox(m.Of[0], false), inline("|"))
	case doc.Paren:
		return textParen(m.Of, deep)
	case doc.Relate:
		return textRelate(m, deep)
	case doc.BigSum:
		return beside(inline("Σ"), textBox(inParens(m.Of[0], doc.Sum), deep))
	case doc.Function:
		return beside(inline(m.Text+" "), textBox(inParens(m.Of[0], doc.Sum, doc.Neg, doc.Product, doc.Fraction), deep))
	case doc.Degrees:
		return beside(textBox(inParens(m.Of[0], doc.Sum), deep), inline("°"))
	case doc.Column, doc.Grid, doc.Det:
		return textGrid(m)
	}
	return inline("")
}

// inParens puts a formula in parentheses where it is one of the given.
func inParens(m doc.Math, ops ...doc.Op) doc.Math {
	for _, op := range ops {
		if m.Op == op {
			return doc.Math{Op: doc.Paren, Of: []doc.Math{m}}
		}
	}
	return m
}

// plainSub is a subscript in one piece.
func plainSub(m doc.Math) string {
	text := ""
	for _, sub := range m.Of {
		if sub.Name != "" {
			text += printed(sub.Name)
			continue
		}
		text += printed(sub.Text) + plainSub(sub)
	}
	return text
}

func superscript(m doc.Math) string {
	switch text := textBox(inParens(m, doc.Sum, doc.Neg, doc.Product, doc.Fraction), false).lines[0]; text {
	case "2":
		return "²"
	case "3":
		return "³"
	default:
		return "^" + text
	}
}

func textRow(of []doc.Math, deep bool) box {
	var boxes []box
	for k, m := range of {
		b := textBox(m, deep)
		if k > 0 && len(b.lines) == 1 && !strings.HasPrefix(b.lines[0], ",") && !strings.HasPrefix(b.lines[0], " ") && !strings.HasSuffix(of[k-1].Text, " ") {
			boxes = append(boxes, inline(" "))
		} else if k > 0 && len(b.lines) > 1 {
			boxes = append(boxes, inline(" "))
		}
		boxes = append(boxes, b)
	}
	return beside(boxes...)
}

// signed takes the sign off a term.
func signed(m doc.Math) (minus bool, rest doc.Math) {
	switch {
	case m.Op == doc.Neg:
		return true, inParens(m.Of[0], doc.Sum)
	case m.Op == doc.Number && strings.HasPrefix(m.Text, "-"):
		m.Text, m.Num = m.Text[1:], -m.Num
		return true, m
	case m.Op == doc.Product && len(m.Of) > 0:
		if minus, first := signed(m.Of[0]); minus {
			return true, doc.Math{Op: doc.Product, Of: append([]doc.Math{first}, m.Of[1:]...)}
		}
	}
	return false, m
}

func textSum(of []doc.Math, deep bool) box {
	var boxes []box
	for k, m := range of {
		minus, rest := signed(m)
		switch {
		case k == 0 && minus:
			boxes = append(boxes, inline("-"))
		case k == 0:
		case minus:
			boxes = append(boxes, inline(" "+softBreak+"- "))
		default:
			boxes = append(boxes, inline(" "+softBreak+"+ "))
		}
		boxes = append(boxes, textBox(rest, deep))
	}
	return beside(boxes...)
}

func textProduct(of []doc.Math, deep bool) box {
	var boxes []box
	for k, m := range of {
		if k > 0 {
			boxes = append(boxes, inline(productGap(of[k-1], m, " · ", " ")))
			m = inParens(m, doc.Neg)
		}
		boxes = append(boxes, textBox(inParens(m, doc.Sum), deep))
	}
	return beside(boxes...)
}

// productGap is what stands between two factors: a point between numbers,
// nothing between parentheses, else a space.
func productGap(a, b doc.Math, point, space string) string {
	switch {
	case a.Op == doc.Paren && b.Op == doc.Paren:
		return ""
	case a.Op != doc.Paren && b.Op == doc.Number, a.Op == doc.Number && b.Op == doc.Fraction:
		return point
	}
	return space
}

func textParen(of []doc.Math, deep bool) box {
	boxes := []box{inline("(")}
	for k, m := range of {
		if k > 0 {
			boxes = append(boxes, inline(", "))
		}
		b := textBox(m, deep)
		if !deep {
			for i := range b.lines {
				b.lines[i] = bare(b.lines[i])
			}
		}
		boxes = append(boxes, b)
	}
	return beside(append(boxes, inline(")"))...)
}

func textRelate(m doc.Math, deep bool) box {
	var boxes []box
	for k, x := range m.Of {
		if k > 0 {
			boxes = append(boxes, inline(" "+softBreak+printed(m.Text)+" "))
		}
		boxes = append(boxes, textBox(x, deep))
	}
	return beside(boxes...)
}
