package report

import (
	"html"
	"strings"

	"trivet/mechanics/working"
)

// MathML writes a formula in MathML Core for a line of text in an HTML page.
func MathML(m working.Math) string {
	return `<math>` + ml(m) + `</math>`
}

// MathMLBlock writes a formula in MathML Core for a line of its own.
func MathMLBlock(m working.Math) string {
	return `<math display="block">` + ml(m) + `</math>`
}

// MathMLAligned writes equations under each other, aligned at their first relation.
func MathMLAligned(of []working.Math) string {
	var b strings.Builder
	b.WriteString(`<math display="block"><mtable style="text-align:left">`)
	for _, m := range of {
		left, rest := "", ml(m)
		if m.Op == working.Relate && len(m.Of) > 1 {
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

func ml(m working.Math) string {
	of := func(k int, ops ...working.Op) string { return ml(inParens(m.Of[k], ops...)) }
	switch m.Op {
	case working.Symbol:
		return mlSub(`<mi>`+mlText(m.Text)+`</mi>`, m)
	case working.Vec, working.UnitVec:
		return mlSub(`<mi mathvariant="normal" style="font-weight:bold">`+mlText(m.Text)+`</mi>`, m)
	case working.Number:
		return mlNumber(m.Text)
	case working.Words:
		return mlWords(m.Text)
	case working.Row:
		return mlRow(m.Of)
	case working.Sum:
		return mlSum(m.Of)
	case working.Neg:
		return `<mrow>` + mo("−") + of(0, working.Sum) + `</mrow>`
	case working.Product:
		return mlProduct(m.Of)
	case working.Cross:
		return `<mrow>` + of(0, working.Sum, working.Neg) + mo("×") + of(1, working.Sum, working.Neg) + `</mrow>`
	case working.Fraction:
		return `<mfrac>` + mrow(of(0)) + mrow(of(1)) + `</mfrac>`
	case working.Root:
		return `<msqrt>` + of(0) + `</msqrt>`
	case working.Power:
		return `<msup>` + mrow(of(0, working.Sum, working.Neg, working.Product, working.Fraction)) + mrow(of(1)) + `</msup>`
	case working.Size:
		return `<mrow>` + mo("|") + of(0) + mo("|") + `</mrow>`
	case working.Paren:
		return mlParen(m.Of)
	case working.Relate:
		out := ""
		for k, x := range m.Of {
			if k > 0 {
				out += mo(m.Text)
			}
			out += ml(x)
		}
		return mrow(out)
	case working.BigSum:
		return mrow(`<mo largeop="false" movablelimits="false">Σ</mo>` + of(0, working.Sum))
	case working.Column, working.Grid:
		return mlGrid(m, "[", "]")
	case working.Det:
		return mlGrid(m, "|", "|")
	}
	return ""
}

func mrow(inner string) string { return `<mrow>` + inner + `</mrow>` }
func mo(text string) string    { return `<mo>` + mlText(text) + `</mo>` }

// mlText escapes what a user typed for HTML.
func mlText(text string) string { return html.EscapeString(printed(text)) }

func mlSub(base string, m working.Math) string {
	if len(m.Of) == 0 {
		return base
	}
	return `<msub>` + base + mrow(mlSubscript(m.Of[0])) + `</msub>`
}

func mlSubscript(m working.Math) string {
	switch m.Op {
	case working.Row:
		out := ""
		for _, x := range m.Of {
			out += mlSubscript(x)
		}
		return out
	case working.Words:
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

func mlRow(of []working.Math) string {
	out := ""
	for k, m := range of {
		if k > 0 && (m.Op != working.Words || m.Text != "" && !strings.ContainsAny(m.Text[:1], " ,")) && !strings.HasSuffix(of[k-1].Text, " ") {
			out += thinSpace
		}
		out += ml(m)
	}
	return mrow(out)
}

func mlSum(of []working.Math) string {
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

func mlProduct(of []working.Math) string {
	out := ""
	for k, m := range of {
		if k > 0 {
			out += productGap(of[k-1], m, mo("·"), thinSpace)
			m = inParens(m, working.Neg)
		}
		out += ml(inParens(m, working.Sum))
	}
	return mrow(out)
}

func mlParen(of []working.Math) string {
	out := mo("(")
	for k, m := range of {
		if k > 0 {
			out += `<mo separator="true">,</mo>`
		}
		out += ml(m)
	}
	return mrow(out + mo(")"))
}

func mlGrid(m working.Math, open, shut string) string {
	out := ""
	for _, r := range m.Of {
		entries := r.Of
		if m.Op == working.Column {
			entries = []working.Math{r}
		}
		out += `<mtr>`
		for _, e := range entries {
			out += `<mtd>` + ml(e) + `</mtd>`
		}
		out += `</mtr>`
	}
	return mrow(mo(open) + `<mtable>` + out + `</mtable>` + mo(shut))
}
