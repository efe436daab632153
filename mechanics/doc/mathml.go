package doc

import (
	"html"
	"strings"
)

// mathmlSetter writes formulas in MathML Core.
type mathmlSetter struct{ small bool }

// MathML writes a formula for a line of text in an HTML page.
func MathML(m Math) string { return `<math>` + Set[string](mathmlSetter{}, m) + `</math>` }

// mathmlAligned writes equations under each other, aligned at their first relation.
func mathmlAligned(of []Math) string {
	s := mathmlSetter{}
	var all [][]Piece[string]
	for _, m := range of {
		all = append(all, Pieces[string](s, m))
	}
	var b strings.Builder
	b.WriteString(`<math display="block"><mtable style="text-align:left">`)
	for _, l := range Arrange[string](s, all, unbroken) {
		pieces := all[l.Of]
		left, rest := "", mrow(Line[string](s, pieces))
		if l.At > 0 {
			left, rest = Line[string](s, pieces[:l.At]), mrow(Line[string](s, pieces[l.At:]))
		}
		b.WriteString(`<mtr><mtd style="text-align:right">` + mrow(left) + `</mtd><mtd style="text-align:left">` + rest + `</mtd></mtr>`)
	}
	return b.String() + `</mtable></math>`
}

func mrow(inner string) string { return `<mrow>` + inner + `</mrow>` }

// mathmlText escapes what a user typed for HTML.
func mathmlText(text string) string { return html.EscapeString(Printed(text)) }

func (s mathmlSetter) Traits() Traits                          { return Traits{Small: s.small} }
func (s mathmlSetter) Small() Setter[string]                   { s.small = true; return s }
func (s mathmlSetter) Inline() Setter[string]                  { return s }
func (s mathmlSetter) Width(string) float64                    { return 0 }
func (s mathmlSetter) Join(of ...string) string                { return strings.Join(of, "") }
func (s mathmlSetter) Prose(text string, _ Style) string       { return mathmlText(text) }
func (s mathmlSetter) Fit(word string, _ Style, _ float64) int { return len(word) }

func (s mathmlSetter) Letter(m Math) string {
	if m.Op == Symbol {
		return `<mi>` + mathmlText(m.Text) + `</mi>`
	}
	return `<mi mathvariant="normal" style="font-weight:bold">` + mathmlText(m.Text) + `</mi>`
}

func (s mathmlSetter) Number(digits string, _ Math) string {
	return `<mn>` + strings.Join(strings.Fields(mathmlText(digits)), "\u202f") + `</mn>`
}

func (s mathmlSetter) Words(text string) string {
	switch {
	case text == "":
		return ""
	case s.small:
		return `<mi>` + mathmlText(text) + `</mi>`
	}
	return `<mtext>` + mathmlText(text) + `</mtext>`
}

func (s mathmlSetter) Sign(text string) string {
	switch text {
	case "-":
		text = "−"
	case "Σ":
		return `<mo largeop="false" movablelimits="false">Σ</mo>`
	case "(", ")": // no higher than the line, whatever stands beside
		return `<mo stretchy="false">` + text + `</mo>`
	case ",":
		return `<mo separator="true">,</mo>`
	}
	return `<mo>` + mathmlText(text) + `</mo>`
}

// Space is what the reader's program does not set around an operator by itself.
func (s mathmlSetter) Space(g Gap) string {
	switch g {
	case Factor, Unit, Beside:
		return `<mspace width="0.17em"></mspace>`
	}
	return ""
}

func (s mathmlSetter) Sub(_ Math, base, sub string) string {
	return `<msub>` + mrow(base) + mrow(sub) + `</msub>`
}

func (s mathmlSetter) Power(base, up string, _ Math) string {
	return `<msup>` + mrow(base) + mrow(up) + `</msup>`
}

func (s mathmlSetter) Fraction(over, under string) string {
	return `<mfrac>` + mrow(over) + mrow(under) + `</mfrac>`
}

func (s mathmlSetter) Root(in string) string { return `<msqrt>` + in + `</msqrt>` }

func (s mathmlSetter) Fence(op Op, in string) string {
	if op == Size {
		return mrow(s.Sign("|") + in + s.Sign("|"))
	}
	return mrow(`<mo>(</mo>` + in + `<mo>)</mo>`)
}

func (s mathmlSetter) Grid(op Op, rows [][]string) string {
	open, shut := "[", "]"
	if op == Det {
		open, shut = "|", "|"
	}
	var b strings.Builder
	for _, r := range rows {
		b.WriteString(`<mtr>`)
		for _, c := range r {
			b.WriteString(`<mtd>` + c + `</mtd>`)
		}
		b.WriteString(`</mtr>`)
	}
	return mrow(s.Sign(open) + `<mtable>` + b.String() + `</mtable>` + s.Sign(shut))
}
