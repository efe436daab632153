package doc

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// pageCells is how wide a line of a formula on a page may be, counted in cells of its
// print as text.
const pageCells = 74

// texNotation writes formulas for LaTeX with amsmath, or for the mathematics in Markdown,
// where a backslash before a punctuation mark may be taken for Markdown's own: each has its
// thin space and its words inside \text.
func texNotation(thin string, text func(string) string, aligned string) *notation {
	upright := func(words string) string { return `\text{` + text(words) + `}` }
	return &notation{
		letter: func(m Math) string {
			name, isGreek := greek[m.Text]
			switch {
			case m.Op == Symbol && isGreek:
				return `\` + name + ` `
			case !alphanumeric(m.Text, ""):
				name = upright(m.Text)
			case len(m.Text) == 1:
				name = m.Text
			default:
				name = `\mathit{` + m.Text + `}`
			}
			if m.Op != Symbol {
				return `\mathbf{` + name + `}`
			}
			return name
		},
		number: func(digits string) string { // 12 300 has a thin space
			if strings.Trim(digits, "0123456789. ") != "" {
				return upright(digits)
			}
			return strings.Join(strings.Fields(digits), thin)
		},
		words: func(words string, small bool) string {
			name, isGreek := greek[words]
			switch {
			case words == "" && !small:
				return "{}"
			case small && isGreek:
				return `\` + name + ` `
			case !small || !alphanumeric(words, "0123456789,"):
				return upright(words)
			case utf8.RuneCountInString(words) > 3 && strings.ContainsFunc(words, unicode.IsLower):
				return `\mathit{` + words + `}`
			}
			return words
		},
		signs: map[string]string{"=": "=", "<": "<", ">": ">", "+": "+", "-": "-", "/": "/", "(": "(", ")": ")", ",": ",", "Σ": `\Sigma `, "°": `^{\circ}`,
			"·": `\cdot`, "×": `\times`, "≈": `\approx `, "≤": `\le `, "≥": `\ge `, "≠": `\ne `, "∝": `\propto `},
		other: func(sign string) string { return `\mathrel{` + upright(sign) + `}` },
		gaps:  map[Gap]string{Relation: " ", Plus: " ", Dot: " ", Times: " ", Comma: " ", Beside: " ", Factor: thin, Unit: thin},

		sub:         `%s_{%s}`,
		power:       `{%s}^{%s}`,
		fraction:    `\frac{%s}{%s}`,
		root:        `\sqrt{%s}`,
		fences:      map[Op]string{Paren: `\left(%s\right)`, Size: `\lvert %s \rvert`},
		flat:        `(%s)`,
		matrix:      `\begin{bmatrix} %s \end{bmatrix}`,
		determinant: `\begin{vmatrix} %s \end{vmatrix}`,
		nextCell:    " & ",
		nextRow:     ` \\ `,

		alone:    "$%s$",
		aligned:  aligned,
		room:     pageCells,
		lines:    [3]string{"%s &%s", "%s& %s", `%s& \quad %s`},
		nextLine: " \\\\\n",
	}
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
