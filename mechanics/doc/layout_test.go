package doc

import (
	"strings"
	"testing"

	"trivet/mechanics/drawing"
)

// from is the origin of a number, by its name.
type from string

func (f from) Says() string { return string(f) }

func symbols(names ...string) (of []Math) {
	for _, n := range names {
		of = append(of, symbol(n))
	}
	return of
}

func relate(of ...Math) Math { return Math{Op: Relate, Text: "=", Of: of} }

func lines(l Layout, blocks ...Block) string {
	var out []string
	for _, line := range l.Lines(blocks) {
		out = append(out, joined(line.Spans))
	}
	return strings.Join(out, "\n")
}

// Equations stand with their relations below each other. What is too wide goes on at a
// relation in that column, or at a sign behind it; in parentheses only where it must.
func TestEquationsBreak(t *testing.T) {
	for _, c := range []struct {
		name  string
		width int
		of    []Block
		want  string
	}{
		{"two blocks are aligned", 40, []Block{&Formula{Of: []Math{relate(symbol("r"), num("1"))}}, &Formula{Of: []Math{relate(node(Size, symbol("r")), num("2"))}}},
			"    r = 1\n  |r| = 2"},
		{"at a relation and a sign", 18, []Block{&Formula{Of: []Math{relate(symbol("x"), node(Sum, symbols("alpha", "beta", "gamma")...), num("1000"))}}},
			"  x = alpha + beta\n      + gamma\n    = 1000"},
		{"before parentheses", 20, []Block{&Formula{Of: []Math{relate(symbol("x"), node(Sum, symbol("aaaa"), node(Product, symbol("b"), node(Paren, node(Sum, symbols("cc", "dd")...)))))}}},
			"  x = aaaa\n      + b (cc + dd)"},
		{"in parentheses, where it must", 14, []Block{&Formula{Of: []Math{relate(symbol("x"), node(Paren, node(Sum, symbols("aaaa", "bbbb", "cccc")...)))}}},
			"  x = (aaaa\n      + bbbb\n      + cccc)"},
		{"a left side too long to align at", 20, []Block{&Formula{Of: []Math{relate(node(Sum, symbols("aaaa", "bbbb")...), num("1")), relate(symbol("c"), num("2"))}}},
			"  aaaa + bbbb = 1\n  c = 2"},
	} {
		if got := lines(Layout{Width: c.width, FormulaIn: 2}, c.of...); got != c.want {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, c.want)
		}
	}
}

// A short formula in a sentence stays in one line.
func TestSentencesWrap(t *testing.T) {
	m := relate(symbol("a"), num("12"))
	p := &Paragraph{Text: []Inline{{Words: "A sentence whose end is a formula, "}, {Math: &m}, {Words: ", and more"}}}
	want := "A sentence whose end is a formula,\na = 12, and more"
	if got := lines(Layout{Width: 40}, p); got != want {
		t.Errorf("%s\nwant\n%s", got, want)
	}
	three := num("3")
	for _, c := range []struct {
		width      int
		text, tail string
		want       string
	}{
		{14, "it weighs", "kN, say", "it weighs\n3 kN, say"},
		{14, "weight W =", "kN", "weight\nW = 3 kN"},
		{14, "acts along (0, -2,", "m", "acts along\n(0, -2, 3 m"},
		{6, "W =", "kN", "W =\n3 kN"}, // no room for all of it
		{3, "W =", "kN", "W =\n3\nkN"},
	} {
		text := []Inline{{Words: c.text + " "}, {Math: &three}, {Words: " " + c.tail}}
		if got := lines(Layout{Width: c.width}, &Paragraph{Text: text}); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	if got := lines(Layout{Width: 4}, Say("abcdefgh")); got != "abcd\nefgh" {
		t.Errorf("a word wider than a line is %q", got)
	}
}

// A table too wide wraps its words; where that is not enough its rows are lists.
func TestTablesFit(t *testing.T) {
	table := NewTable("Force", "Of")
	table.Add(Inline{Words: "T1"}, Inline{Words: "a cable through two points"})
	for width, want := range map[int]string{
		40: "Force  Of\nT1     a cable through two points",
		24: "Force  Of\nT1     a cable through\n       two points",
		12: "Force T1; Of\na cable\nthrough two\npoints",
	} {
		if got := lines(Layout{Width: width}, table); got != want {
			t.Errorf("in %d cells:\n%s\nwant\n%s", width, got, want)
		}
	}
	points := &Table{Columns: []Col{{Head: "x", Align: Point}}}
	for _, n := range []string{"1.25", "-10", "1e-7"} {
		m := num(n)
		points.Add(Inline{Math: &m})
	}
	if got, want := lines(Layout{Width: 40}, points), "     x\n  1.25\n-10\n  1e-7"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// A number has its origin on a screen, wherever it stands.
func TestNumbersKeepTheirOrigins(t *testing.T) {
	number := func(text string) Math { return Math{Op: Number, Text: text, From: from(text)} }
	sum := node(Sum, number("1"), node(Neg, number("2")))
	three := node(Neg, number("3"))
	table := NewTable("a")
	table.Add(Inline{Math: &three})
	seen := map[string]string{}
	for _, l := range (Layout{Width: 30}).Lines([]Block{&Formula{Of: []Math{sum}}, &Boxed{Math: number("4")}, table}) {
		for _, x := range l.Spans {
			if x.From != nil {
				seen[x.From.Says()] = x.Text
			}
		}
	}
	for name, text := range map[string]string{"1": "1", "2": "2", "3": "-3", "4": "4"} {
		if seen[name] != text {
			t.Errorf("the number of %s shows as %q", name, seen[name])
		}
	}
}

// every is a document with each kind of block.
func every() *Doc {
	m := relate(symbol("a"), num("1"))
	table := NewTable("Name", "Value")
	table.Add(Inline{Words: "T"}, Inline{Blank: 8})
	return &Doc{Title: "Title", Foot: "Source: own.", Under: [][]Inline{Plain("by A.")}, Sections: []Section{
		{Level: 1, Title: "Part", Blocks: []Block{
			&Paragraph{Text: []Inline{{Words: "plain "}, {Words: "stressed"}, {Words: " "}, {Words: "typed", Typed: true}}}, Note("a note"),
			&Formula{Of: []Math{m}}, &Boxed{Math: m}, table, &List{Items: [][]Inline{Plain("an item")}}, &Code{Text: "a = \"1\"\n"},
			&Check{State: OK, Text: Plain("holds")}, &Check{State: AtRisk, Text: Plain("nearly")}, &Check{State: Fails, Text: Plain("breaks")},
		}},
		{Level: 2, Number: 3, Title: "Step", Blocks: []Block{&Figure{Drawing: drawing.Drawing{Width: 10, Height: 10}}}},
		{Level: 1, Role: Caution, Title: "Caution", Blocks: []Block{Say("Beware.")}},
	}}
}

// A bracket at the beginning of a line is text: behind \\ or \item LaTeX would take it for an option.
func TestBracketsAtTheBeginningInLaTeX(t *testing.T) {
	page := LaTeX(&Doc{Sections: []Section{{Blocks: []Block{&List{Items: [][]Inline{Plain("[one]")}}, &Code{Text: "a = 1\n[points]\n*\n"}}}}})
	for _, want := range []string{"\\item\\relax [one]\n", "a~=~1\\\\\n\\leavevmode [points]\\\\\n\\leavevmode *\\\\\n"} {
		if !strings.Contains(page, want) {
			t.Errorf("no %q in\n%s", want, page)
		}
	}
}

// Every printer writes each kind of block.
func TestEveryBlockInEveryFormat(t *testing.T) {
	for _, c := range []struct {
		format, page string
		want         []string
	}{
		{"text", Text(every()), []string{"Title\nby A.\n\nPart\n  plain stressed typed\n", "│ a = 1 │", "  T     ........\n", "  - an item\n", "  a = \"1\"\n", "  ok       holds\n", "  at risk  nearly\n", "  FAILS    breaks\n", "\n 3  Step\n", "\nSource: own.\n"}},
		{"Markdown", Markdown(every()), []string{"# Title\n\nby A.\n\n## Part\n", "plain stressed typed\n", "a &= 1", "\\boxed{a = 1}", "| T | ........ |", "- an item\n", "```\na = \"1\"\n```\n", "- ok: holds\n- **at risk**: nearly\n- **FAILS**: breaks\n", "### 3. Step\n\n![Figure 1][figure-1]\n", "<small>Source: own.</small>", "[figure-1]: data:image/svg+xml;base64,"}},
		{"LaTeX", LaTeX(every()), []string{`\section*{Title}`, "plain stressed typed\n", "a &= 1", `\boxed{a = 1}`, `\item\relax an item`, "a~=~''1''", `\item[ok\hfill] holds`, `\item[\textbf{FAILS}\hfill] breaks`, `\subsubsection*{3\quad Step}`, `\begin{tikzpicture}`}},
		{"HTML", HTML(every()), []string{"<h1>Title</h1>", "<p>plain stressed typed</p>", `<span class="boxed">`, "<li>an item</li>", "<pre>a = &quot;1&quot;\n</pre>", `<li><b class="risk">at risk</b> nearly</li>`, "<h3>3. Step</h3>\n<figure>", `<section class="caution">`}},
		{"lines", strings.Join(Lines(every().Sections[0].Blocks), "\n"), []string{"plain stressed typed\na note\na = 1\nanswer: a = 1\nName T; Value blank\nan item\na = \"1\"\nok: holds\nat risk: nearly\nFAILS: breaks"}},
	} {
		for _, want := range c.want {
			if !strings.Contains(c.page, want) {
				t.Errorf("%s: no %q in\n%s", c.format, want, c.page)
			}
		}
	}
}
