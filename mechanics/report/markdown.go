package report

import (
	"fmt"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/working"
)

// Markdown writes a page in GitHub's Markdown, formulas as LaTeX between dollars:
// title, statement, figure, working, results, caution.
func Markdown(w *working.Working, parts Parts) string {
	s := w.Solution
	var b strings.Builder
	if title := strings.Join(strings.Fields(s.Problem.Title), " "); title != "" {
		b.WriteString("# " + markdownText(title) + "\n\n")
	}
	if risks := riskBlocks(parts.Trust); len(risks) > 0 {
		b.WriteString("## " + partRisk + "\n\n")
		for _, risk := range risks {
			b.WriteString(markdownBlock(risk.oldBlock))
		}
		b.WriteString("\n")
	}
	for _, par := range paragraphs(s.Problem.Statement) {
		b.WriteString(lineStart(markdownText(par)) + "\n\n")
	}
	if parts.Figure != "" {
		b.WriteString(parts.Figure + "\n\n")
	}
	b.WriteString("## Working\n\n" + w.Rounding + "\n")
	for i, step := range w.Steps {
		fmt.Fprintf(&b, "\n### %d. %s\n\n", i+1, markdownText(step.Title))
		checks := false
		for k, block := range together(olds(step.Body)) {
			if k > 0 && !(checks && block.OK != nil) {
				b.WriteString("\n")
			}
			checks = block.OK != nil
			b.WriteString(markdownBlock(block))
		}
	}
	b.WriteString("\n## Results\n\n" + markdownText(capital(s.Words()[0])) + ".\n")
	var rows [][]string
	for _, r := range unknownRows(s, parts.Trust) {
		cells := make([]string, 3)
		for k := range min(len(r), 3) {
			cells[k] = markdownText(strings.TrimPrefix(r[k], "= "))
		}
		if len(r) > 3 {
			cells[2] += ", " + markdownText(strings.Join(r[3:], ", "))
		}
		rows = append(rows, cells)
	}
	if len(rows) > 0 {
		b.WriteString("\n" + markdownTable([]string{"Unknown", "Value", "Sense"}, rows))
	}
	b.WriteString(markdownTrust(parts.Trust))
	b.WriteString("\n## Caution\n\n" + markdownText(capital(Caution)) + ".\n")
	b.WriteString(markdownSource(sourceLine(s.Problem)))
	return b.String()
}

// markdownSource closes a page with its source, in the small type that GitHub's
// Markdown has from HTML.
func markdownSource(line string) string {
	if line == "" {
		return ""
	}
	return "\n<small>" + markdownText(line) + "</small>\n"
}

func markdownBlock(block oldBlock) string {
	t := markdownTex()
	switch {
	case block.Boxed != nil:
		return "$$\n\\boxed{" + bare(t.math(*block.Boxed)) + "}\n$$\n"
	case len(block.Aligned) > 0:
		return displayed(t, block.Aligned)
	case block.Table != nil:
		var rows [][]string
		for _, r := range block.Table.Rows {
			cells := make([]string, len(block.Table.Head))
			for k := range min(len(r), len(cells)) {
				cells[k] = markdownSentence(r[k : k+1])
			}
			rows = append(rows, cells)
		}
		head := make([]string, len(block.Table.Head))
		for k, h := range block.Table.Head {
			head[k] = markdownText(h)
		}
		return markdownTable(head, rows, numberColumns(block.Table)...)
	case block.Risk:
		return "- **at risk**: " + markdownSentence(block.Text) + "\n"
	case block.OK != nil && *block.OK:
		return "- ok: " + markdownSentence(block.Text) + "\n"
	case block.OK != nil:
		return "- **FAILS**: " + markdownSentence(block.Text) + "\n"
	}
	return lineStart(markdownSentence(block.Text)) + "\n"
}

func displayed(t tex, of []doc.Math) string {
	return "$$\n\\begin{aligned}\n" + t.lines(of) + "\n\\end{aligned}\n$$\n"
}

func markdownSentence(text []doc.Inline) string {
	out := ""
	for _, part := range text {
		if part.Math != nil {
			out += "$" + strings.TrimSpace(bare(markdownTex().within().math(*part.Math))) + "$"
		} else {
			out += markdownText(part.Words)
		}
	}
	return out
}

func markdownTable(head []string, rows [][]string, numbers ...bool) string {
	var b strings.Builder
	b.WriteString("| " + strings.Join(head, " | ") + " |\n|")
	for k := range head {
		if k < len(numbers) && numbers[k] {
			b.WriteString(" ---: |")
		} else {
			b.WriteString(" --- |")
		}
	}
	b.WriteString("\n")
	for _, r := range rows {
		b.WriteString("| " + strings.Join(r, " | ") + " |\n")
	}
	return b.String()
}

// markdownText writes what a user typed as text: no character of it is taken for
// Markdown, HTML or mathematics.
func markdownText(text string) string {
	var b strings.Builder
	for _, r := range printed(text) {
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
	for _, r := range printed(text) {
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
