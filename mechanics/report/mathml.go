package report

import (
	"html"
	"strings"

	"trivet/mechanics/doc"
)

// MathML writes a formula in MathML Core for a line of text in an HTML page.
func MathML(m doc.Math) string {
	return `<math>` + ml(m) + `</math>`
}

// MathMLBlock writes a formula in MathML Core for a line of its own.
func MathMLBlock(m doc.Math) string {
	return `<math display="block">` + ml(m) + `</math>`
}

// MathMLAligned writes equations under each other, aligned at their first relation.
func MathMLAligned(of []doc.Math) string {
	var b strings.Builder
	b.WriteString(`<math display="block"><mtable style="text-align:left">`)
	for _, m := range of {
		left, rest := "", ml(m)
		if m.Op == doc.Relate && len(m.Of) > 1 {
			left = ml(m.Of[0])
			rest = ""
			for _, x := range m.Of[1:] {
				rest += mo(m.Text) + ml(x)
			}
		}
		b.WriteString(`<mtr><mtd style="text-align:right"><mrow>` + left + `</mrow></mtd><mtd style="text-align:left"><mrow>` + rest + `</mrow></mtd></mtr>`)
	}
	return b.String() + `</mtable></math>`
}

func ml(m doc.Math) string {
	of := func(k int, ops ...doc.Op) string { return ml(inParens(m.Of[k], ops...)) }
	switch m.Op {
	case doc.Symbol:
		return mlSub(`<mi>`+mlText(m.Text)+`</mi>`, m)
	case doc.Vec, doc.UnitVec:
		return mlSub(`<mi mathvariant="normal" style="font-weight:bold">`+mlText(m.Text)+`</mi>`, m)
	case doc.Number:
		return mlNumber(m.Text)
	case doc.Words:
		return mlWords(m.Text)
	case doc.Row:
		return mlRow(m.Of)
	case doc.Sum:
		return mlSum(m.Of)
	case doc.Neg:
		return `<mrow>` + mo("−") + of(0, doc.Sum) + `</mrow>`
	case doc.Product:
		return mlProduct(m.Of)
	case doc.Cross:
		return `<mrow>` + of(0, doc.Sum, doc.Neg) + mo("×") + of(1, doc.Sum, doc.Neg) + `</mrow>`
	case doc.Fraction:
		return `<mfrac>` + mrow(of(0)) + mrow(of(1)) + `</mfrac>`
	case doc.Root:
		return `<msqrt>` + of(0) + `</msqrt>`
	case doc.Power:
		return `<msup>` + mrow(of(0, doc.Sum, doc.Neg, doc.Product, doc.Fraction)) + mrow(of(1)) + `</msup>`
	case doc.Size:
		return `<mrow>` + mo("|") + of(0) + mo("|") + `</mrow>`
	case doc.Paren:
		return mlParen(m.Of)
	case doc.Relate:
		out := ""
		for k, x := range m.Of {
			if k > 0 {
				out += mo(m.Text)
			}
			out += ml(x)
		}
		return mrow(out)
	case doc.BigSum:
		return mrow(`<mo largeop="false" movablelimits="false">Σ</mo>` + of(0, doc.Sum))
	case doc.Function:
		return mrow(`<mi>` + mlText(m.Text) + `</mi>` + mo("\u2061") + thinSpace + of(0, doc.Sum, doc.Neg, doc.Product, doc.Fraction))
	case doc.Degrees:
		return mrow(of(0, doc.Sum) + mo("°"))
	case doc.Column, doc.Grid:
		return mlGrid(m, "[", "]")
	case doc.Det:
		return mlGrid(m, "|", "|")
	}
	return ""
}

func mrow(inner string) string { return `<mrow>` + inner + `</mrow>` }
func mo(text string) string    { return `<mo>` + mlText(text) + `</mo>` }

// mlText escapes what a user typed for HTML.
func mlText(text string) string { return html.EscapeString(printed(text)) }

func mlSub(base string, m doc.Math) string {
	if len(m.Of) == 0 {
		return base
	}
	return `<msub>` + base + mrow(mlSubscript(m.Of[0])) + `</msub>`
}

func mlSubscript(m doc.Math) string {
	switch m.Op {
	case doc.Row:
		out := ""
		for _, x := range m.Of {
			out += mlSubscript(x)
		}
		return out
	case doc.Words:
		return `<mi>` + mlText(m.Text) + `</mi>`
	}
	return ml(m)
}

const thinSpace = `<mspace width="0.17em"></mspace>`

func mlNumber(text string) string {
	if p := scientific.FindStringSubmatch(text); p != nil {
		return mrow(mlNumber(p[1]) + mo("×") + `<msup><mn>10</mn><mn>` + strings.ReplaceAll(p[2], "-", "−") + `</mn></msup>`)
	}
	digits := mlText(strings.ReplaceAll(strings.TrimPrefix(text, "-"), " ", "\u202f"))
	if strings.HasPrefix(text, "-") {
		return mrow(mo("−") + `<mn>` + digits + `</mn>`)
	}
	return `<mn>` + digits + `</mn>`
}

func mlWords(text string) string {
	out := ""
	for text != "" {
		at := raised.FindStringSubmatchIndex(text)
		if at == nil {
			return out + `<mtext>` + mlText(text) + `</mtext>`
		}
		out += `<msup><mtext>` + mlText(text[:at[0]]) + `</mtext><mn>` + strings.ReplaceAll(text[at[2]:at[3]], "-", "−") + `</mn></msup>`
		text = text[at[1]:]
	}
	return out
}

func mlRow(of []doc.Math) string {
	out := ""
	for k, m := range of {
		if k > 0 && (m.Op != doc.Words || m.Text != "" && !strings.ContainsAny(m.Text[:1], " ,")) && !strings.HasSuffix(of[k-1].Text, " ") {
			out += thinSpace
		}
		out += ml(m)
	}
	return mrow(out)
}

func mlSum(of []doc.Math) string {
	out := ""
	for k, m := range of {
		minus, rest := signed(m)
		switch {
		case minus:
			out += mo("−")
		case k > 0:
			out += mo("+")
		}
		out += ml(rest)
	}
	return mrow(out)
}

func mlProduct(of []doc.Math) string {
	out := ""
	for k, m := range of {
		if k > 0 {
			out += productGap(of[k-1], m, mo("·"), thinSpace)
			m = inParens(m, doc.Neg)
		}
		out += ml(inParens(m, doc.Sum))
	}
	return mrow(out)
}

func mlParen(of []doc.Math) string {
	out := mo("(")
	for k, m := range of {
		if k > 0 {
			out += `<mo separator="true">,</mo>`
		}
		out += ml(m)
	}
	return mrow(out + mo(")"))
}

func mlGrid(m doc.Math, open, shut string) string {
	out := ""
	for _, r := range m.Of {
		entries := r.Of
		if m.Op == doc.Column {
			entries = []doc.Math{r}
		}
		out += `<mtr>`
		for _, e := range entries {
			out += `<mtd>` + ml(e) + `</mtd>`
		}
		out += `</mtr>`
	}
	return mrow(mo(open) + `<mtable>` + out + `</mtable>` + mo(shut))
}
