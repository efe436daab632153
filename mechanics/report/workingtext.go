package report

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/doc"
	"trivet/mechanics/working"
)

// textWidth is how wide a line of a working gets.
const textWidth = 78

// The indents of a working: a step's body under its title, a formula in it, and
// what goes on in the next line.
const (
	bodyIndent    = 4
	formulaIndent = 6
	onIndent      = 4
)

// TextWorking writes a working for reading in a terminal or a file: numbered
// steps, lines of at most 78 cells.
func TextWorking(w *working.Working) string {
	var b strings.Builder
	b.WriteString("working\n")
	if w.Rounding != "" {
		b.WriteString(wrapped(w.Rounding, 2, 2))
	}
	for i, step := range w.Steps {
		b.WriteString("\n" + wrapped(fmt.Sprintf("%2d  %s", i+1, printed(step.Title)), 0, bodyIndent))
		for _, block := range step.Body {
			b.WriteString(textBlock(old(block)))
		}
	}
	return b.String()
}

func textBlock(block oldBlock) string {
	switch {
	case block.Formula != nil:
		return textFormula(*block.Formula)
	case block.Boxed != nil:
		return textBoxed(*block.Boxed)
	case len(block.Aligned) > 0:
		return textAligned(block.Aligned)
	case block.Table != nil:
		return textTable(block.Table)
	case block.Risk:
		return wrapped("at risk  "+sentenceText(block.Text), bodyIndent, bodyIndent+9)
	case block.OK != nil && *block.OK:
		return wrapped("ok     "+sentenceText(block.Text), bodyIndent, bodyIndent+7)
	case block.OK != nil:
		return wrapped("FAILS  "+sentenceText(block.Text), bodyIndent, bodyIndent+7)
	}
	return wrapped(sentenceText(block.Text), bodyIndent, bodyIndent)
}

// A formula of up to so many cells is not broken in a sentence: its blanks are
// noBreak until the sentence is wrapped.
const (
	keptTogether = 24
	noBreak      = "\u00a0"
)

func sentenceText(text []doc.Inline) string {
	var b strings.Builder
	for _, part := range text {
		if part.Math != nil {
			text := bare(textBox(*part.Math, true).lines[0])
			if ansi.StringWidth(text) <= keptTogether {
				text = strings.ReplaceAll(text, " ", noBreak)
			}
			b.WriteString(text)
		} else {
			b.WriteString(printed(part.Words))
		}
	}
	return b.String()
}

// wrapped sets prose within the width.
func wrapped(text string, first, rest int) string {
	lines := strings.Split(ansi.Wrap(text, textWidth-max(first, rest), " "), "\n")
	for k := range lines {
		indent := first
		if k > 0 {
			indent, lines[k] = rest, strings.TrimLeft(lines[k], " ")
		}
		lines[k] = strings.TrimRight(strings.Repeat(" ", indent)+lines[k], " ")
	}
	return strings.ReplaceAll(strings.Join(lines, "\n"), noBreak, " ") + "\n"
}

func textFormula(m doc.Math) string { return textAligned([]doc.Math{m}) }

// textAligned sets equations under each other, their first relations in one column.
func textAligned(of []doc.Math) string {
	left := 0
	for _, m := range of {
		if m.Op == doc.Relate && len(m.Of) > 1 {
			if w := textBox(m.Of[0], true).width(); w <= textWidth/3 {
				left = max(left, w)
			}
		}
	}
	out := ""
	for _, m := range of {
		b := textBox(m, true)
		if m.Op == doc.Relate && len(m.Of) > 1 {
			if pad := left - textBox(m.Of[0], true).width(); pad > 0 {
				b = beside(inline(strings.Repeat(" ", pad)), b)
			}
		}
		out += laid(m, b, left)
	}
	return out
}

// laid writes a formula within the width: broken at its relations and signs, a
// matrix operand by operand.
func laid(m doc.Math, b box, left int) string {
	room := textWidth - formulaIndent
	indent := strings.Repeat(" ", formulaIndent)
	switch {
	case len(b.lines) == 1:
		out := ""
		for _, line := range broken(b.lines[0], room, left+onIndent) {
			out += strings.TrimRight(indent+line, " ") + "\n"
		}
		return out
	case b.width() > room && m.Op == doc.Relate && len(m.Of) > 1:
		out := ""
		for k, x := range m.Of {
			part := textBox(x, true)
			if k > 0 {
				part = beside(inline(printed(m.Text)+" "), part)
			}
			out += laid(x, part, 0)
		}
		return out
	}
	out := ""
	for _, line := range b.lines {
		for _, piece := range strings.Split(ansi.Hardwrap(bare(line), room, true), "\n") {
			out += strings.TrimRight(indent+piece, " ") + "\n"
		}
	}
	return out
}

// broken fills lines with the pieces between soft breaks.
func broken(text string, room, on int) []string {
	on = min(on, room/2)
	var lines []string
	line := ""
	for k, piece := range strings.Split(text, softBreak) {
		if k > 0 && ansi.StringWidth(strings.TrimRight(line+piece, " ")) > room {
			lines = append(lines, line)
			line = strings.Repeat(" ", on)
		}
		line += piece
	}
	lines = append(lines, line)
	var out []string
	for _, l := range lines {
		out = append(out, strings.Split(ansi.Hardwrap(strings.TrimRight(l, " "), room, true), "\n")...)
	}
	return out
}

func textBoxed(m doc.Math) string {
	text := bare(textBox(m, false).lines[0])
	if ansi.StringWidth(text) > textWidth-formulaIndent-4 {
		return textFormula(m)
	}
	rule := strings.Repeat("─", ansi.StringWidth(text)+2)
	indent := strings.Repeat(" ", formulaIndent)
	return indent + "┌" + rule + "┐\n" + indent + "│ " + text + " │\n" + indent + "└" + rule + "┘\n"
}

// textTable sets a table in columns. Where it is too wide, its rows stand as
// lists, head: cell.
func textTable(t *oldTable) string {
	rows := [][]string{}
	head := make([]string, len(t.Head))
	for k, h := range t.Head {
		head[k] = printed(h)
	}
	rows = append(rows, head)
	numbers := numberColumns(t)
	for _, r := range t.Rows {
		cells := make([]string, len(t.Head))
		for k := range min(len(r), len(cells)) {
			cells[k] = sentenceText(r[k : k+1])
		}
		rows = append(rows, cells)
	}
	widths := make([]int, len(head))
	total := 2 * (len(head) - 1)
	for k := range widths {
		for _, r := range rows {
			widths[k] = max(widths[k], ansi.StringWidth(r[k]))
		}
		total += widths[k]
	}
	indent := strings.Repeat(" ", formulaIndent)
	if over := total - (textWidth - formulaIndent); over > 0 && len(widths) > 0 {
		last := len(widths) - 1 // lists of forces wrap in the last column
		if widths[last]-over < 16 {
			return listed(rows)
		}
		widths[last] -= over
	}
	var b strings.Builder
	for _, r := range rows {
		for n, line := range strings.Split(ansi.Wrap(r[len(r)-1], max(1, widths[len(widths)-1]), " "), "\n") {
			out := indent
			for k := range r {
				text := r[k]
				if k == len(r)-1 {
					text = strings.TrimLeft(line, " ")
				} else if n > 0 {
					text = ""
				}
				pad := strings.Repeat(" ", max(0, widths[k]-ansi.StringWidth(text)))
				if numbers[k] {
					text = pad + text
				} else {
					text += pad
				}
				if k > 0 {
					out += "  "
				}
				out += text
			}
			b.WriteString(strings.TrimRight(strings.ReplaceAll(out, noBreak, " "), " ") + "\n")
		}
	}
	return b.String()
}

// numberColumns tells the columns of a table that hold numbers alone.
func numberColumns(t *oldTable) []bool {
	numbers := make([]bool, len(t.Head))
	for k := range numbers {
		numbers[k] = len(t.Rows) > 0
		for _, r := range t.Rows {
			numbers[k] = numbers[k] && k < len(r) && r[k].Math != nil && isNumber(*r[k].Math)
		}
	}
	return numbers
}

func isNumber(m doc.Math) bool {
	return m.Op == doc.Number || m.Op == doc.Neg && isNumber(m.Of[0])
}

func listed(rows [][]string) string {
	out := ""
	for _, r := range rows[min(1, len(rows)):] {
		line := ""
		for k, text := range r {
			if k > 0 {
				line += "; "
			}
			if h := rows[0][k]; h != "" {
				line += h + ": "
			}
			line += text
		}
		out += wrapped(line, formulaIndent, formulaIndent+2)
	}
	return out
}
