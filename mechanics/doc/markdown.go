package doc

import (
	"encoding/base64"
	"fmt"
	"strings"

	"trivet/mechanics/ink"
)

// Markdown writes a document in GitHub's Markdown, formulas as LaTeX between dollars. Its
// figures are in the text too: as images by reference, whose data stand at its end, out
// of the way of whoever reads the source.
func Markdown(d *Doc) string {
	var w markdownWriter
	if d.Title != "" {
		w.block("# " + markdownText(d.Title) + "\n")
	}
	for _, under := range d.Under {
		w.block(lineStart(markdownSetter().sentence(under)) + "\n")
	}
	for _, sec := range d.Sections {
		heading := strings.Repeat("#", sec.Level+1) + " "
		if sec.Number > 0 {
			heading += fmt.Sprintf("%d. ", sec.Number)
		}
		if sec.Title != "" {
			w.block(heading + markdownText(sec.Title) + "\n")
		}
		w.blocks(sec.Blocks)
	}
	if d.Foot != "" { // small type, which GitHub's Markdown has from HTML
		w.block("<small>" + markdownText(d.Foot) + "</small>\n")
	}
	for i, f := range w.figures {
		w.block(fmt.Sprintf("[figure-%d]: data:image/svg+xml;base64,%s\n", i+1, base64.StdEncoding.EncodeToString(ink.SVG(f))))
	}
	return w.b.String()
}

type markdownWriter struct {
	b       strings.Builder
	figures []ink.Drawing
}

// block writes a block, behind an empty line.
func (w *markdownWriter) block(text string) {
	if w.b.Len() > 0 {
		w.b.WriteString("\n")
	}
	w.b.WriteString(text)
}

func (w *markdownWriter) blocks(blocks []Block) {
	t := markdownSetter()
	for i := 0; i < len(blocks); i++ {
		switch x := blocks[i].(type) {
		case *Paragraph:
			w.block(lineStart(t.sentence(x.Text)) + "\n")
		case *Formula:
			run := Run[*Formula](blocks[i:])
			w.block("$$\n\\begin{aligned}\n" + t.aligned(Equations(run)) + "\n\\end{aligned}\n$$\n")
			i += len(run) - 1
		case *Boxed:
			w.block("$$\n\\boxed{" + Set[string](t, x.Math) + "}\n$$\n")
		case *Table:
			w.block(markdownTable(x))
		case *Check:
			run := Run[*Check](blocks[i:])
			list := ""
			for _, c := range run {
				list += markdownCheck(c)
			}
			w.block(list)
			i += len(run) - 1
		case *List:
			list := ""
			for _, item := range x.Items {
				list += "- " + t.sentence(item) + "\n"
			}
			w.block(list)
		case *Code:
			w.block("```\n" + strings.TrimRight(x.Text, "\n") + "\n```\n")
		case *Figure:
			w.figures = append(w.figures, x.Drawing)
			n := len(w.figures)
			w.block(fmt.Sprintf("![Figure %d][figure-%d]\n", n, n))
		default:
			Stray(x)
		}
	}
}

func markdownCheck(c *Check) string {
	mark := c.State.String()
	if c.State != OK {
		mark = "**" + mark + "**"
	}
	return "- " + mark + ": " + markdownSetter().sentence(c.Text) + "\n"
}

func markdownTable(t *Table) string {
	var b strings.Builder
	heads, rules := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for k, right := range t.Rights() {
		heads[k], rules[k] = markdownText(t.Columns[k].Head), map[bool]string{true: "---:", false: "---"}[right]
	}
	row := func(cells []string) { b.WriteString("| " + strings.Join(cells, " | ") + " |\n") }
	row(heads)
	row(rules)
	for _, r := range t.Rows {
		cells := make([]string, len(t.Columns))
		for k := range cells {
			cell := Cell(r, k)
			if cell.Math != nil && isNumber(*cell.Math) { // it needs no mathematics
				cell = Inline{Words: TextMath(*cell.Math)}
			}
			cells[k] = markdownSetter().sentence([]Inline{cell})
		}
		row(cells)
	}
	return b.String()
}

// markdownProse is words of a sentence.
func markdownProse(text string, style Style) string {
	switch style {
	case Emphasis:
		return "*" + markdownText(text) + "*"
	case Mono:
		return "`" + Printed(text) + "`"
	}
	return markdownText(text)
}

// markdownText writes what a user typed as text: no character of it is taken for
// Markdown, HTML or mathematics.
func markdownText(text string) string {
	var b strings.Builder
	for _, r := range Printed(text) {
		switch {
		case r == '&':
			b.WriteString("&amp;")
		case r == '<':
			b.WriteString("&lt;")
		case r == '>':
			b.WriteString("&gt;")
		case strings.ContainsRune("\\`*_{}[]#|$~!^", r):
			b.WriteString(`\` + string(r))
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// lineStart escapes what would begin a list at a line's start: "1." "-" "+".
func lineStart(text string) string {
	n := 0
	for n < len(text) && text[n] >= '0' && text[n] <= '9' {
		n++
	}
	switch {
	case n > 0 && n < len(text) && (text[n] == '.' || text[n] == ')'):
		return text[:n] + `\` + text[n:]
	case n == 0 && text != "" && strings.ContainsRune("-+=", rune(text[0])):
		return `\` + text
	}
	return text
}

// mathWords are words inside \text in Markdown's mathematics, which take Unicode
// as it is.
func mathWords(text string) string {
	var b strings.Builder
	for _, r := range Printed(text) {
		switch r {
		case '\\':
			b.WriteString(`\backslash `)
		case '{', '}', '$', '&', '#', '_', '%':
			b.WriteString(`\` + string(r))
		case '^':
			b.WriteString(`\hat{}`)
		case '~':
			b.WriteString(`\sim `)
		case '<':
			b.WriteString(`&lt;`)
		case '>':
			b.WriteString(`&gt;`)
		case '|':
			b.WriteString(`\vert `)
		case '`', '*':
			b.WriteRune(' ')
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
