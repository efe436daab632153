package report

import (
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/doc"
)

// tex writes formulas for LaTeX with amsmath, or for the mathematics in Markdown,
// where a backslash before a punctuation mark may be taken for Markdown's own.
type tex struct {
	thin string              // a thin space
	text func(string) string // words inside \text
	flat bool                // fractions in one line
}

func latexTex() tex    { return tex{thin: `\,`, text: latexText} }
func markdownTex() tex { return tex{thin: `\thinspace `, text: mathWords} }

// within is for formulas in a line of prose.
func (t tex) within() tex {
	t.flat = true
	return t
}

// LaTeXMath writes a formula for LaTeX's mathematics.
func LaTeXMath(m doc.Math) string { return bare(latexTex().math(m)) }

func (t tex) math(m doc.Math) string {
	of := func(k int, ops ...doc.Op) string { return t.math(inParens(m.Of[k], ops...)) }
	switch m.Op {
	case doc.Symbol:
		return t.symbol(m.Text) + t.sub(m)
	case doc.Vec, doc.UnitVec:
		return `\mathbf{` + t.plain(m.Text) + `}` + t.sub(m)
	case doc.Number:
		return t.number(m.Text)
	case doc.Words:
		return t.upright(m.Text)
	case doc.Row:
		return t.row(m.Of)
	case doc.Sum:
		return t.sum(m.Of)
	case doc.Neg:
		return "-" + of(0, doc.Sum)
	case doc.Product:
		return t.product(m.Of)
	case doc.Cross:
		return of(0, doc.Sum, doc.Neg) + ` \times ` + of(1, doc.Sum, doc.Neg)
	case doc.Fraction:
		if t.flat {
			return of(0, doc.Sum, doc.Neg) + `/` + of(1, doc.Sum, doc.Neg, doc.Product)
		}
		return `\frac{` + bare(of(0)) + `}{` + bare(of(1)) + `}`
	case doc.Root:
		return `\sqrt{` + bare(of(0)) + `}`
	case doc.Power:
		return `{` + of(0, doc.Sum, doc.Neg, doc.Product, doc.Fraction) + `}^{` + bare(of(1)) + `}`
	case doc.Size:
		return `\lvert ` + bare(of(0)) + ` \rvert`
	case doc.Paren:
		return t.paren(m.Of)
	case doc.Relate:
		return t.relate(m)
	case doc.BigSum:
		return `\Sigma ` + of(0, doc.Sum)
	case doc.Function:
		return `\operatorname{` + m.Text + `} ` + of(0, doc.Sum, doc.Neg, doc.Product, doc.Fraction)
	case doc.Degrees:
		return of(0, doc.Sum) + `^{\circ}`
	case doc.Column, doc.Grid:
		return t.grid(m, "bmatrix")
	case doc.Det:
		return t.grid(m, "vmatrix")
	}
	return ""
}

// symbol is a name in mathematics: one letter in italics, a word in one piece.
func (t tex) symbol(name string) string {
	if c, ok := greek[name]; ok {
		return `\` + c + ` `
	}
	return t.plain(name)
}

var plainName = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9]*$`)

func (t tex) plain(name string) string {
	switch {
	case utf8.RuneCountInString(name) == 1 && plainName.MatchString(name):
		return name
	case plainName.MatchString(name):
		return `\mathit{` + name + `}`
	}
	return `\text{` + t.text(name) + `}`
}

var plainSubscript = regexp.MustCompile(`^[A-Za-z0-9,]+$`)

func (t tex) sub(m doc.Math) string {
	if len(m.Of) == 0 {
		return ""
	}
	return `_{` + t.subscript(m.Of[0]) + `}`
}

func (t tex) subscript(m doc.Math) string {
	switch {
	case m.Op == doc.Row:
		out := ""
		for _, x := range m.Of {
			out += t.subscript(x)
		}
		return out
	case m.Op == doc.Words:
		return t.subWords(m.Text)
	}
	return t.math(m)
}

func (t tex) subWords(text string) string {
	c, isGreek := greek[text]
	switch {
	case isGreek:
		return `\` + c + ` `
	case !plainSubscript.MatchString(text):
		return `\text{` + t.text(text) + `}`
	case utf8.RuneCountInString(text) > 3 && strings.ContainsFunc(text, unicode.IsLower):
		return `\mathit{` + text + `}`
	}
	return text
}

var scientific = regexp.MustCompile(`^(.*)e(-?[0-9]+)$`)

// number writes 12 300 with a thin space and 1.89e-3 as a power of ten.
func (t tex) number(text string) string {
	if p := scientific.FindStringSubmatch(text); p != nil {
		return t.number(p[1]) + ` \times 10^{` + p[2] + `}`
	}
	if strings.Trim(text, "-0123456789. ") != "" {
		return `\text{` + t.text(text) + `}`
	}
	return strings.TrimSpace(strings.ReplaceAll(text, " ", t.thin))
}

var raised = regexp.MustCompile(`\^(-?[0-9]+)`)

// upright is a unit, or words; ^2 of a unit is raised.
func (t tex) upright(text string) string {
	if text == "" {
		return "{}"
	}
	out := ""
	for text != "" {
		at := raised.FindStringSubmatchIndex(text)
		if at == nil {
			return out + `\text{` + t.text(text) + `}`
		}
		if at[0] > 0 {
			out += `\text{` + t.text(text[:at[0]]) + `}`
		} else if out == "" {
			out = "{}"
		}
		out += `^{` + text[at[2]:at[3]] + `}`
		text = text[at[1]:]
	}
	return out
}

func (t tex) row(of []doc.Math) string {
	out := ""
	for k, m := range of {
		if k > 0 && m.Op == doc.Words && m.Text != "" && !strings.ContainsAny(m.Text[:1], " ,") {
			out += t.thin
		} else if k > 0 && !(m.Op == doc.Words) && of[k-1].Op != doc.Words {
			out += " "
		}
		out += t.math(m)
	}
	return out
}

func (t tex) sum(of []doc.Math) string {
	out := ""
	for k, m := range of {
		minus, rest := signed(m)
		switch {
		case k == 0 && minus:
			out += "-"
		case k == 0:
		case minus:
			out += " " + softBreak + "- "
		default:
			out += " " + softBreak + "+ "
		}
		out += t.math(rest)
	}
	return out
}

func (t tex) product(of []doc.Math) string {
	out := ""
	for k, m := range of {
		if k > 0 {
			out += productGap(of[k-1], m, ` \cdot `, t.thin)
			m = inParens(m, doc.Neg)
		}
		out += t.math(inParens(m, doc.Sum))
	}
	return out
}

func (t tex) paren(of []doc.Math) string {
	open, shut := "(", ")"
	for _, m := range of {
		if tall(m) {
			open, shut = `\left(`, `\right)`
		}
	}
	parts := make([]string, len(of))
	for k, m := range of {
		parts[k] = bare(t.math(m))
	}
	return open + strings.Join(parts, `, `) + shut
}

func tall(m doc.Math) bool {
	switch m.Op {
	case doc.Fraction, doc.Grid, doc.Column, doc.Det:
		return true
	}
	for _, x := range m.Of {
		if tall(x) {
			return true
		}
	}
	return false
}

var relations = map[string]string{"=": "=", "<": "<", ">": ">", "≈": `\approx `, "≤": `\le `, "≥": `\ge `, "≠": `\ne `, "∝": `\propto `}

func (t tex) relation(text string) string {
	if r, ok := relations[text]; ok {
		return r
	}
	return `\mathrel{\text{` + t.text(text) + `}}`
}

func (t tex) relate(m doc.Math) string {
	out := ""
	for k, x := range m.Of {
		if k > 0 {
			out += " " + softBreak + t.relation(m.Text) + " "
		}
		out += t.math(x)
	}
	return out
}

func (t tex) grid(m doc.Math, env string) string {
	var rows []string
	for _, r := range m.Of {
		entries := r.Of
		if m.Op == doc.Column {
			entries = []doc.Math{r}
		}
		cells := make([]string, len(entries))
		for k, e := range entries {
			cells[k] = bare(t.math(e))
		}
		rows = append(rows, strings.Join(cells, " & "))
	}
	return `\begin{` + env + `} ` + strings.Join(rows, ` \\ `) + ` \end{` + env + `}`
}
