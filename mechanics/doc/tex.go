package doc

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// texSetter writes formulas for LaTeX with amsmath, or for the mathematics in Markdown,
// where a backslash before a punctuation mark may be taken for Markdown's own.
type texSetter struct {
	thin  string                     // a thin space
	text  func(string) string        // words inside \text
	prose func(string, Style) string // words outside of mathematics
	flat  bool                       // fractions in one line
	small bool
}

func latexSetter() texSetter { return texSetter{thin: `\,`, text: latexText, prose: latexProse} }

func markdownSetter() texSetter {
	return texSetter{thin: `\thinspace `, text: mathWords, prose: markdownProse}
}

func (t texSetter) Traits() Traits         { return Traits{Flat: t.flat, Small: t.small} }
func (t texSetter) Small() Setter[string]  { t.small, t.flat = true, true; return t }
func (t texSetter) Inline() Setter[string] { t.flat = true; return t }
func (t texSetter) Width(text string) float64 {
	return float64(utf8.RuneCountInString(text))
}
func (t texSetter) Join(of ...string) string                { return strings.Join(of, "") }
func (t texSetter) Prose(text string, s Style) string       { return t.prose(text, s) }
func (t texSetter) Fit(word string, _ Style, _ float64) int { return len(word) }

func (t texSetter) Letter(m Math) string {
	if m.Op == Symbol {
		return t.name(m.Text)
	}
	return `\mathbf{` + t.plain(m.Text) + `}`
}

// name is a symbol: one letter in italics, a word in one piece.
func (t texSetter) name(name string) string {
	if c, ok := greek[name]; ok {
		return `\` + c + ` `
	}
	return t.plain(name)
}

func (t texSetter) plain(name string) string {
	switch {
	case alphanumeric(name, "") && len(name) == 1:
		return name
	case alphanumeric(name, ""):
		return `\mathit{` + name + `}`
	}
	return `\text{` + t.text(name) + `}`
}

// alphanumeric tells a word of ASCII letters and digits that begins with a letter; where
// more characters are allowed, it may begin with any of them.
func alphanumeric(text, more string) bool {
	for i, r := range text {
		letter := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z'
		if !letter && !strings.ContainsRune(more, r) && (i == 0 || r < '0' || r > '9') {
			return false
		}
	}
	return text != ""
}

func (t texSetter) Words(text string) string {
	if !t.small {
		if text == "" {
			return "{}"
		}
		return `\text{` + t.text(text) + `}`
	}
	c, isGreek := greek[text]
	switch {
	case isGreek:
		return `\` + c + ` `
	case !alphanumeric(text, "0123456789,"):
		return `\text{` + t.text(text) + `}`
	case utf8.RuneCountInString(text) > 3 && strings.ContainsFunc(text, unicode.IsLower):
		return `\mathit{` + text + `}`
	}
	return text
}

// Number writes 12 300 with a thin space.
func (t texSetter) Number(digits string, _ Math) string {
	if strings.Trim(digits, "0123456789. ") != "" {
		return `\text{` + t.text(digits) + `}`
	}
	return strings.Join(strings.Fields(digits), t.thin)
}

// texSigns are the signs that have a command.
var texSigns = map[string]string{"=": "=", "<": "<", ">": ">", "+": "+", "-": "-", "/": "/", "(": "(", ")": ")", ",": ",", "Σ": `\Sigma `, "°": `^{\circ}`, "·": `\cdot`, "×": `\times`,
	"≈": `\approx `, "≤": `\le `, "≥": `\ge `, "≠": `\ne `, "∝": `\propto `}

func (t texSetter) Sign(text string) string {
	if s, ok := texSigns[text]; ok {
		return s
	}
	return `\mathrel{\text{` + t.text(text) + `}}`
}

func (t texSetter) Space(g Gap) string {
	switch g {
	case None, SumOf:
		return ""
	case Factor, Unit:
		return t.thin
	}
	return " "
}

func (t texSetter) Sub(_ Math, base, sub string) string  { return base + `_{` + sub + `}` }
func (t texSetter) Power(base, up string, _ Math) string { return `{` + base + `}^{` + up + `}` }
func (t texSetter) Fraction(over, under string) string   { return `\frac{` + over + `}{` + under + `}` }
func (t texSetter) Root(in string) string                { return `\sqrt{` + in + `}` }

func (t texSetter) Fence(op Op, in string) string {
	if op == Size {
		return `\lvert ` + in + ` \rvert`
	}
	if t.flat {
		return "(" + in + ")"
	}
	return `\left(` + in + `\right)`
}

func (t texSetter) Grid(op Op, rows [][]string) string {
	env := "bmatrix"
	if op == Det {
		env = "vmatrix"
	}
	lines := make([]string, len(rows))
	for i, r := range rows {
		lines[i] = strings.Join(r, " & ")
	}
	return `\begin{` + env + `} ` + strings.Join(lines, ` \\ `) + ` \end{` + env + `}`
}

// pageCells is how wide a line of a formula on a page may be, counted in cells of its
// print as text.
const pageCells = 74

// aligned writes equations for an environment that aligns them: the first relation of
// each is the column, and what is too wide for a page goes on below it.
func (t texSetter) aligned(of []Math) string {
	cell := cellSetter{}
	var widths [][]Piece[cells]
	var code [][]Piece[string]
	for _, m := range of {
		widths, code = append(widths, Pieces[cells](cell, m)), append(code, Pieces[string](t, m))
	}
	var lines []string
	for _, l := range Arrange[cells](cell, widths, pageCells) {
		pieces := code[l.Of]
		switch {
		case l.At > l.From:
			lines = append(lines, Line[string](t, pieces[l.From:l.At])+" &"+Line[string](t, pieces[l.At:l.To]))
		case l.At == l.From || l.From == 0:
			lines = append(lines, "& "+Line[string](t, pieces[l.From:l.To]))
		default:
			lines = append(lines, `& \quad `+Line[string](t, pieces[l.From:l.To]))
		}
	}
	return strings.Join(lines, " \\\\\n")
}

// sentence writes prose with formulas in it.
func (t texSetter) sentence(text []Inline) string {
	var b strings.Builder
	for _, in := range text {
		switch {
		case in.Math != nil:
			b.WriteString("$" + strings.TrimSpace(Set(t.Inline(), *in.Math)) + "$")
		case in.Blank > 0:
			b.WriteString(strings.Repeat(".", in.Blank))
		default:
			b.WriteString(t.prose(in.Words, in.Style))
		}
	}
	return b.String()
}
