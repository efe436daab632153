package doc

import (
	"fmt"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// greek are the letters that LaTeX has a command for; capitals that look like
// Latin ones have none.
var greek = map[string]string{
	"α": "alpha", "β": "beta", "γ": "gamma", "δ": "delta", "ε": "varepsilon", "ζ": "zeta", "η": "eta", "θ": "theta",
	"ϑ": "vartheta", "ι": "iota", "κ": "kappa", "λ": "lambda", "μ": "mu", "µ": "mu", "ν": "nu", "ξ": "xi", "π": "pi",
	"ρ": "rho", "σ": "sigma", "ς": "varsigma", "τ": "tau", "υ": "upsilon", "φ": "varphi", "ϕ": "phi", "χ": "chi", "ψ": "psi", "ω": "omega",
	"Γ": "Gamma", "Δ": "Delta", "Θ": "Theta", "Λ": "Lambda", "Ξ": "Xi", "Π": "Pi", "Σ": "Sigma", "∑": "Sigma", "Υ": "Upsilon",
	"Φ": "Phi", "Ψ": "Psi", "Ω": "Omega", "∆": "Delta",
}

// latexRunes is what stands for a character in LaTeX's text.
var latexRunes = map[rune]string{
	'\\': `\textbackslash{}`, '{': `\{`, '}': `\}`, '$': `\$`, '&': `\&`, '#': `\#`, '_': `\_`, '%': `\%`,
	'^': `\textasciicircum{}`, '~': `\textasciitilde{}`, '<': `\textless{}`, '>': `\textgreater{}`, '|': `\textbar{}`,
	'"': `''`, '`': `\textasciigrave{}`, '\'': `'`,
	'–': `--`, '—': `---`, '−': `$-$`, '‐': `-`, '‑': `-`, '“': "``", '”': `''`, '„': `,,`, '‘': "`", '’': `'`, '′': `$'$`, '″': `$''$`,
	'…': `\dots{}`, '·': `$\cdot$`, '⋅': `$\cdot$`, '×': `$\times$`, '÷': `$\div$`, '±': `$\pm$`, '°': `$^\circ$`, '²': `$^2$`, '³': `$^3$`, '¹': `$^1$`,
	'½': `$\frac12$`, '¼': `$\frac14$`, '¾': `$\frac34$`, '√': `$\surd$`, '≈': `$\approx$`, '≤': `$\le$`, '≥': `$\ge$`, '≠': `$\ne$`,
	'→': `$\to$`, '←': `$\leftarrow$`, '↑': `$\uparrow$`, '↓': `$\downarrow$`, '∞': `$\infty$`, '∥': `$\parallel$`, '⊥': `$\perp$`, '∠': `$\angle$`,
	'∫': `$\int$`, '∂': `$\partial$`, '∈': `$\in$`, '•': `$\bullet$`, '§': `\S{}`, '¶': `\P{}`, '©': `\copyright{}`, '£': `\pounds{}`,
	'\u00a0': `~`, '\u2009': `\,`, '\u202f': `\,`, '\u00ad': `\-`, '¿': "?`", '¡': "!`",
	'æ': `\ae{}`, 'Æ': `\AE{}`, 'œ': `\oe{}`, 'Œ': `\OE{}`, 'ø': `\o{}`, 'Ø': `\O{}`, 'å': `\aa{}`, 'Å': `\AA{}`, 'ß': `\ss{}`, 'ł': `\l{}`, 'Ł': `\L{}`, 'ı': `\i{}`,
}

// accents are LaTeX's commands for the accents that Unicode combines with a letter.
var accents = map[rune]string{'\u0300': "`", '\u0301': "'", '\u0302': "^", '\u0303': "~", '\u0304': "=", '\u0306': "u ", '\u0307': ".",
	'\u0308': `"`, '\u030a': "r ", '\u030b': "H ", '\u030c': "v ", '\u0327': "c "}

// accented is a letter that LaTeX builds from one of ASCII and an accent; empty where it has none.
func accented(r rune) string {
	parts := []rune(norm.NFD.String(string(r)))
	if len(parts) != 2 || parts[0] > unicode.MaxASCII || accents[parts[1]] == "" {
		return ""
	}
	base := string(parts[0])
	if base == "i" {
		base = `\i`
	}
	return `\` + accents[parts[1]] + "{" + base + "}"
}

// latexText writes what a user typed as LaTeX's text: ASCII only, every special
// character escaped. A character that stock LaTeX has no letter for is written
// as its code point.
func latexText(text string) string {
	var b strings.Builder
	runes := []rune(Printed(text))
	for k, r := range runes {
		s, known := latexRunes[r]
		g, isGreek := greek[string(r)]
		switch {
		case r == '-' && k+1 < len(runes) && isDigit(runes[k+1]) && (k == 0 || strings.ContainsRune(" (,=", runes[k-1])):
			b.WriteString(`$-$`)
		case known:
			b.WriteString(s)
		case accented(r) != "":
			b.WriteString(accented(r))
		case isGreek:
			b.WriteString(`$\` + g + `$`)
		case r >= ' ' && r < 0x7f:
			b.WriteRune(r)
		default:
			b.WriteString(fmt.Sprintf(`[U+%04X]`, r))
		}
	}
	return b.String()
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }
