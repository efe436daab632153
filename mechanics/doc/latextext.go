package doc

import (
	"fmt"
	"strings"
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

// accents are the letters that LaTeX builds from a letter and an accent.
var accents = func() map[rune]string {
	of := map[rune]string{}
	for mark, pairs := range map[string]string{
		"`": "àaèeìiòoùuÀAÈEÌIÒOÙUǹn", "'": "áaéeíióoúuýyćcńnśsźzŕrĺlÁAÉEÍIÓOÚUÝYĆCŃNŚSŹZ", "^": "âaêeîiôoûuÂAÊEÎIÔOÛUŵwŷyĉcĝgĥhŝs",
		"~": "ãañnõoÃAÑNÕOĩiũu", `"`: "äaëeïiöoüuÿyÄAËEÏIÖOÜU", "c ": "çcşsţtÇCŞSŢT", "v ": "čcďděeňnřršsťtžzǎaČCĎDĚEŇNŘRŠSŤTŽZ",
		"=": "āaēeīiōoūuĀAĒEĪIŌOŪU", ".": "żzżzėeġgŻZĖEİI", "r ": "ůuŮU", "H ": "őoűuŐOŰU", "u ": "ăaĕeğgŏoŭuĂAĞG",
	} {
		r := []rune(pairs)
		for k := 0; k+1 < len(r); k += 2 {
			base := string(r[k+1])
			if base == "i" {
				base = `\i`
			}
			of[r[k]] = `\` + mark + "{" + base + "}"
		}
	}
	return of
}()

// latexText writes what a user typed as LaTeX's text: ASCII only, every special
// character escaped. A character that stock LaTeX has no letter for is written
// as its code point.
func latexText(text string) string {
	var b strings.Builder
	runes := []rune(Printed(text))
	for k, r := range runes {
		s, known := latexRunes[r]
		a, accented := accents[r]
		g, isGreek := greek[string(r)]
		switch {
		case r == '-' && k+1 < len(runes) && isDigit(runes[k+1]) && (k == 0 || strings.ContainsRune(" (,=", runes[k-1])):
			b.WriteString(`$-$`)
		case known:
			b.WriteString(s)
		case accented:
			b.WriteString(a)
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
