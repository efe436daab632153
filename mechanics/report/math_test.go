package report

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"trivet/mechanics/doc"
)

func num(text string) doc.Math { return doc.Math{Op: doc.Number, Text: text} }

func node(op doc.Op, of ...doc.Math) doc.Math { return doc.Math{Op: op, Of: of} }

func symbol(text string, sub ...doc.Math) doc.Math {
	return doc.Math{Op: doc.Symbol, Text: text, Of: sub}
}

// One tree, written alike in each form: signs, parentheses and escapes.
func TestMath(t *testing.T) {
	word := func(text string) doc.Math { return doc.Math{Op: doc.Words, Text: text} }
	equal := func(of ...doc.Math) doc.Math {
		return doc.Math{Op: doc.Relate, Text: "=", Of: of}
	}
	T1 := doc.Math{Op: doc.Symbol, Text: "T", Of: []doc.Math{word("1")}, Name: "T1"}
	for _, c := range []struct {
		m                 doc.Math
		text, latex, mark string
	}{
		{node(doc.Sum, node(doc.Neg, num("3")), T1, num("-2"), node(doc.Product, num("-4"), symbol("x"))),
			"-3 + T1 - 2 - 4 x", `-3 + T_{1} - 2 - 4\,x`, `-3 + T_{1} - 2 - 4\thinspace x`},
		{node(doc.Neg, node(doc.Sum, symbol("a"), symbol("b"))), "-(a + b)", `-(a + b)`, `-(a + b)`},
		{node(doc.Product, num("2"), num("3")), "2 · 3", `2 \cdot 3`, `2 \cdot 3`},
		{node(doc.Product, symbol("a"), node(doc.Neg, symbol("b"))), "a (-b)", `a\,(-b)`, `a\thinspace (-b)`},
		{node(doc.Power, node(doc.Neg, num("0.5")), num("2")), "(-0.5)²", `{(-0.5)}^{2}`, `{(-0.5)}^{2}`},
		{node(doc.Power, symbol("x"), num("4")), "x^4", `{x}^{4}`, `{x}^{4}`},
		{doc.Math{Op: doc.Function, Text: "cos", Of: []doc.Math{node(doc.Degrees, num("120"))}}, "cos 120°", `\operatorname{cos} 120^{\circ}`, `\operatorname{cos} 120^{\circ}`},
		{node(doc.Product, node(doc.Fraction, num("1"), num("2")), num("10"), num("6")), "1/2 · 10 · 6", `\frac{1}{2} \cdot 10 \cdot 6`, `\frac{1}{2} \cdot 10 \cdot 6`},
		{node(doc.Root, node(doc.Sum, symbol("a"), symbol("b"))), "√(a + b)", `\sqrt{a + b}`, `\sqrt{a + b}`},
		{node(doc.Fraction, node(doc.Sum, symbol("a"), symbol("b")), num("2")), "(a + b)/2", `\frac{a + b}{2}`, `\frac{a + b}{2}`},
		{node(doc.Row, num("12 300"), word("lbf/ft^2")), "12 300 lbf/ft^2", `12\,300\,\text{lbf/ft}^{2}`, `12\thinspace 300\thinspace \text{lbf/ft}^{2}`},
		{num("1.89e-3"), "1.89e-3", `1.89 \times 10^{-3}`, `1.89 \times 10^{-3}`},
		{symbol("α", word("T1")), "α_T1", `\alpha _{T1}`, `\alpha _{T1}`},
		{symbol("Kraft&1"), "Kraft&1", `\text{Kraft\&1}`, `\text{Kraft\&1}`},
		{doc.Math{Op: doc.Vec, Text: "r", Of: []doc.Math{word("AB")}}, "r_AB", `\mathbf{r}_{AB}`, `\mathbf{r}_{AB}`},
		{node(doc.Paren, num("1"), node(doc.Neg, num("2"))), "(1, -2)", `(1, -2)`, `(1, -2)`},
		{node(doc.Size, symbol("u")), "|u|", `\lvert u \rvert`, `\lvert u \rvert`},
		{equal(node(doc.BigSum, symbol("F", word("x"))), num("0")), "ΣF_x = 0", `\Sigma F_{x} = 0`, `\Sigma F_{x} = 0`},
		{doc.Math{Op: doc.Relate, Text: "≈", Of: []doc.Math{symbol("a"), num("1")}}, "a ≈ 1", `a \approx  1`, `a \approx  1`},
		{node(doc.Grid, node(doc.Row, num("1"), node(doc.Neg, num("20"))), node(doc.Row, num("3"), num("4"))),
			"⎡1  -20⎤\n⎣3    4⎦", `\begin{bmatrix} 1 & -20 \\ 3 & 4 \end{bmatrix}`, `\begin{bmatrix} 1 & -20 \\ 3 & 4 \end{bmatrix}`},
		{node(doc.Det, node(doc.Row, symbol("i")), node(doc.Row, num("3"))), "│i│\n│3│", `\begin{vmatrix} i \\ 3 \end{vmatrix}`, `\begin{vmatrix} i \\ 3 \end{vmatrix}`},
	} {
		if got := TextMath(c.m); got != c.text {
			t.Errorf("text %q, want %q", got, c.text)
		}
		if got := LaTeXMath(c.m); got != c.latex {
			t.Errorf("LaTeX %s, want %s", got, c.latex)
		}
		if got := bare(markdownTex().math(c.m)); got != c.mark {
			t.Errorf("Markdown %s, want %s", got, c.mark)
		}
	}
}

// MathML of every formula is well-formed, of elements that MathML Core has.
func TestMathMLIsWellFormed(t *testing.T) {
	core := map[string]bool{"math": true, "mrow": true, "mi": true, "mn": true, "mo": true, "mtext": true, "mspace": true,
		"msub": true, "msup": true, "mfrac": true, "msqrt": true, "mtable": true, "mtr": true, "mtd": true}
	n := 0
	check := func(name, text string) {
		n++
		for d := xml.NewDecoder(strings.NewReader(text)); ; {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				return
			}
			if err != nil {
				t.Errorf("%s: %v in %s", name, err, text)
				return
			}
			if e, ok := token.(xml.StartElement); ok && !core[e.Name.Local] {
				t.Errorf("%s: an element %s", name, e.Name.Local)
			}
		}
	}
	for name, text := range everySheet(t) {
		for _, step := range worked(t, text).Steps {
			for _, b := range step.Body {
				for _, m := range doc.Formulas(b) {
					check(name, MathML(*m))
					check(name, MathMLBlock(*m))
					check(name, MathMLAligned([]doc.Math{*m}))
				}
			}
		}
	}
	if n < 1000 {
		t.Errorf("%d formulas", n)
	}
	if got := MathML(symbol(`<b>&"`)); got != `<math><mi>&lt;b&gt;&amp;&#34;</mi></math>` {
		t.Errorf("a name in MathML is %s", got)
	}
}

// Names of any length and sheets of many lines keep to the width.
func TestLongNamesKeepToTheWidth(t *testing.T) {
	long := strings.Repeat("Verankerung", 9)
	sheet := "[points]\n" + long + " = { at = \"0, 0, 0\", on = \"particle\" }\nA = \"1, 2, 3\"\n[lines]\n" + long + "1 = { kind = \"link\", path = \"" + long + " A\" }\n" +
		"W = { kind = \"force\", at = \"" + long + "\", along = \"(1, 2, 3)\", magnitude = \"5 N\" }\n"
	for _, line := range strings.Split(TextWorking(worked(t, sheet)), "\n") {
		if n := len([]rune(line)); n > textWidth {
			t.Errorf("%d cells: %s", n, line)
		}
	}
}
