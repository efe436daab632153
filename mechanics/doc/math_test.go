package doc

import (
	"strconv"
	"strings"
	"testing"
)

func num(text string) Math {
	if digits, minus := strings.CutPrefix(text, "-"); minus {
		return node(Neg, num(digits))
	}
	x, _ := strconv.ParseFloat(text, 64)
	return Math{Op: Number, Text: text, Num: x}
}

func node(op Op, of ...Math) Math { return Math{Op: op, Of: of} }

func symbol(text string, sub ...Math) Math {
	return Math{Op: Symbol, Text: text, Of: sub}
}

// One tree, written alike in each form: signs, parentheses and escapes.
func TestMath(t *testing.T) {
	word := func(text string) Math { return Math{Op: Words, Text: text} }
	equal := func(of ...Math) Math {
		return Math{Op: Relate, Text: "=", Of: of}
	}
	T1 := Math{Op: Symbol, Text: "T", Of: []Math{word("1")}, Name: "T1"}
	for _, c := range []struct {
		m                 Math
		text, latex, mark string
	}{
		{node(Sum, node(Neg, num("3")), T1, num("-2"), node(Product, num("-4"), symbol("x"))),
			"-3 + T1 - 2 - 4 x", `-3 + T_{1} - 2 - 4\,x`, `-3 + T_{1} - 2 - 4\thinspace x`},
		{node(Neg, node(Sum, symbol("a"), symbol("b"))), "-(a + b)", `-(a + b)`, `-(a + b)`},
		{node(Product, num("2"), num("3")), "2 · 3", `2 \cdot 3`, `2 \cdot 3`},
		{node(Product, num("0.5"), node(Product, num("2"), symbol("π"))), "0.5 · 2 π", `0.5 \cdot 2\,\pi `, `0.5 \cdot 2\thinspace \pi `},
		{node(Product, symbol("a"), node(Neg, symbol("b"))), "a (-b)", `a\,(-b)`, `a\thinspace (-b)`},
		{node(Power, node(Neg, num("0.5")), num("2")), "(-0.5)²", `{(-0.5)}^{2}`, `{(-0.5)}^{2}`},
		{node(Power, symbol("x"), num("4")), "x^4", `{x}^{4}`, `{x}^{4}`},
		{node(Root, node(Sum, symbol("a"), symbol("b"))), "√(a + b)", `\sqrt{a + b}`, `\sqrt{a + b}`},
		{node(Fraction, node(Sum, symbol("a"), symbol("b")), num("2")), "(a + b)/2", `\frac{a + b}{2}`, `\frac{a + b}{2}`},
		{node(Row, num("12 300"), word("lbf/ft^2")), "12 300 lbf/ft^2", `12\,300\,{\text{lbf/ft}}^{2}`, `12\thinspace 300\thinspace {\text{lbf/ft}}^{2}`},
		{num("1.89e-3"), "1.89e-3", `1.89 \times {10}^{-3}`, `1.89 \times {10}^{-3}`},
		{symbol("α", word("T1")), "α_T1", `\alpha _{T1}`, `\alpha _{T1}`},
		{symbol("Kraft&1"), "Kraft&1", `\text{Kraft\&1}`, `\text{Kraft\&1}`},
		{Math{Op: Vec, Text: "r", Of: []Math{word("AB")}}, "r_AB", `\mathbf{r}_{AB}`, `\mathbf{r}_{AB}`},
		{node(Paren, num("1"), node(Neg, num("2"))), "(1, -2)", `(1, -2)`, `(1, -2)`},
		{node(Size, symbol("u")), "|u|", `\lvert u \rvert`, `\lvert u \rvert`},
		{equal(node(BigSum, symbol("F", word("x"))), num("0")), "ΣF_x = 0", `\Sigma F_{x} = 0`, `\Sigma F_{x} = 0`},
		{Math{Op: Relate, Text: "≈", Of: []Math{symbol("a"), num("1")}}, "a ≈ 1", `a \approx  1`, `a \approx  1`},
		{node(Grid, node(Row, num("1"), node(Neg, num("20"))), node(Row, num("3"), num("4"))),
			"⎡1  -20⎤\n⎣3    4⎦", `\begin{bmatrix} 1 & -20 \\ 3 & 4 \end{bmatrix}`, `\begin{bmatrix} 1 & -20 \\ 3 & 4 \end{bmatrix}`},
		{node(Det, node(Row, symbol("i")), node(Row, num("3"))), "│i│\n│3│", `\begin{vmatrix} i \\ 3 \end{vmatrix}`, `\begin{vmatrix} i \\ 3 \end{vmatrix}`},
	} {
		if got := TextMath(c.m); got != c.text {
			t.Errorf("text %q, want %q", got, c.text)
		}
		if got := Set[string](code{notation: latex.notation}, c.m); got != c.latex {
			t.Errorf("LaTeX %s, want %s", got, c.latex)
		}
		if got := Set[string](code{notation: markdown.notation}, c.m); got != c.mark {
			t.Errorf("Markdown %s, want %s", got, c.mark)
		}
	}
}

// What a user types stands in LaTeX as it was typed.
func TestLaTeXText(t *testing.T) {
	for text, want := range map[string]string{
		`50 % of $5 & #1_a {b} \c`: `50 \% of \$5 \& \#1\_a \{b\} \textbackslash{}c`,
		"a < b > c | d ^ e ~ f":    `a \textless{} b \textgreater{} c \textbar{} d \textasciicircum{} e \textasciitilde{} f`,
		`"quoted" 'so' ` + "`it`":  `''quoted'' 'so' \textasciigrave{}it\textasciigrave{}`,
		"café, Straße, Łódź, ñ":    `caf\'{e}, Stra\ss{}e, \L{}\'{o}d\'{z}, \~{n}`,
		"µ = 0.3, ΣF, 30°, x²":     `$\mu$ = 0.3, $\Sigma$F, 30$^\circ$, x$^2$`,
		"-400 N, along -x, 2-3":    `$-$400 N, along -x, 2-3`,
		"力":                        `[U+529B]`,
		"a\x1b[31m\tb\u200bc":      `a$\cdot$[31m b$\cdot$c`,
	} {
		if got := latexText(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

// And in Markdown.
func TestMarkdownText(t *testing.T) {
	for text, want := range map[string]string{
		"a_b *c* `d` [e](f) #g": "a\\_b \\*c\\* \\`d\\` \\[e\\](f) \\#g",
		"$5 < 6 & 7 > 2 | \\":   `\$5 &lt; 6 &amp; 7 &gt; 2 \| \\`,
		"T1 = 5 kN, µ, 力":       "T1 = 5 kN, µ, 力",
	} {
		if got := markdownText(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"1. a": `1\. a`, "12) b": `12\) b`, "- c": `\- c`, "+ d": `\+ d`, "12 e": "12 e", "f": "f"} {
		if got := lineStart(text); got != want {
			t.Errorf("%q begins a line as %q, want %q", text, got, want)
		}
	}
}

func TestLineMath(t *testing.T) {
	n := func(text string) Math { return Math{Op: Number, Text: text} }
	row := func(of ...Math) Math { return Math{Op: Row, Of: of} }
	rows := []Math{row(n("1"), n("2")), row(n("3"), n("4"))}
	for _, c := range []struct {
		m    Math
		want string
	}{
		{Math{Op: Column, Of: []Math{n("1"), n("-2")}}, "(1, -2)"},
		{Math{Op: Grid, Of: rows}, "matrix ((1, 2), (3, 4))"},
		{Math{Op: Det, Of: rows}, "determinant of ((1, 2), (3, 4))"},
		{Math{Op: Relate, Text: "=", Of: []Math{{Op: Symbol, Text: "r"}, {Op: Column, Of: []Math{n("1")}}}}, "r = (1)"},
	} {
		if got := LineMath(c.m); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
