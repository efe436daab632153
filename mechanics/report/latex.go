package report

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
)

// Parts is what a page holds beside the working.
type Parts struct {
	Trust  *uncertainty.Effect // nil where no input has a ±
	Figure string              // in the page's own language: LaTeX's picture commands, or Markdown; empty for none
}

// latexHead needs amsmath and nothing else. Numbers of pages and links are left
// to the reader's own class.
const latexHead = `\documentclass[11pt,a4paper]{article}
\usepackage{amsmath}
\setlength{\textwidth}{160mm}
\setlength{\oddsidemargin}{0mm}
\setlength{\textheight}{235mm}
\setlength{\topmargin}{-12mm}
\setlength{\parindent}{0pt}
\setlength{\parskip}{0.5ex plus 0.5ex}
\setlength{\emergencystretch}{3em}
\raggedbottom
\allowdisplaybreaks
\begin{document}
`

const latexEnd = "\\end{document}\n"

// LaTeX writes a whole document for pdflatex with amsmath: title, statement, figure,
// working, results, checks, caution.
func LaTeX(w *working.Working, parts Parts) string {
	p := w.Solution.Problem
	var b strings.Builder
	b.WriteString(latexHead)
	if title := strings.Join(strings.Fields(p.Title), " "); title != "" {
		b.WriteString(`\section*{` + latexText(title) + "}\n")
	}
	if risks := riskBlocks(parts.Trust); len(risks) > 0 {
		b.WriteString("\\subsection*{" + latexText(partRisk) + "}\n")
		var all []oldBlock
		for _, risk := range risks {
			all = append(all, risk.oldBlock)
		}
		b.WriteString(latexBlocks(all))
	}
	for _, par := range paragraphs(p.Statement) {
		b.WriteString(latexText(par) + "\n\n")
	}
	if parts.Figure != "" {
		b.WriteString("\\begin{center}\n" + parts.Figure + "\n\\end{center}\n\n")
	}
	b.WriteString("\\subsection*{Working}\n" + latexText(w.Rounding) + "\n")
	for i, step := range w.Steps {
		fmt.Fprintf(&b, "\n\\subsubsection*{%d\\quad %s}\n", i+1, latexText(step.Title))
		b.WriteString(latexBlocks(olds(step.Body)))
	}
	b.WriteString("\n\\subsection*{Results}\n")
	for _, words := range w.Solution.Words()[:1] {
		b.WriteString(latexText(capital(words)) + ".\n\n")
	}
	b.WriteString(latexTable([]string{"", "", ""}, latexResults(w.Solution, parts.Trust)))
	b.WriteString(latexTrust(parts.Trust))
	b.WriteString("\n\\subsection*{Caution}\n" + latexText(capital(Caution)) + ".\n" + latexSource(sourceLine(p)) + latexEnd)
	return b.String()
}

// latexSource closes a document with its source, in small type.
func latexSource(line string) string {
	if line == "" {
		return ""
	}
	return "\n\\medskip\n{\\footnotesize " + latexText(line) + "\\par}\n"
}

func capital(text string) string {
	if text == "" {
		return ""
	}
	_, n := utf8.DecodeRuneInString(text)
	return strings.ToUpper(text[:n]) + text[n:]
}

func latexResults(s *statics.Solution, t *uncertainty.Effect) [][]string {
	var rows [][]string
	for _, r := range unknownRows(s, t) {
		cells := make([]string, 3)
		for k := range min(len(r), 3) {
			cells[k] = latexText(r[k])
		}
		if len(r) > 3 {
			cells[2] += ", " + latexText(strings.Join(r[3:], ", "))
		}
		rows = append(rows, cells)
	}
	return rows
}

// latexBlocks writes a step's body; checks that follow each other are one list.
func latexBlocks(body []oldBlock) string {
	var b strings.Builder
	list := false
	blocks := together(body)
	for k, block := range blocks {
		if isCheck := block.OK != nil; isCheck != list {
			if list = isCheck; list {
				b.WriteString("\\begin{list}{}{\\setlength{\\leftmargin}{16mm}\\setlength{\\labelwidth}{14mm}\\setlength{\\itemsep}{0pt}\\setlength{\\parsep}{0pt}}\n")
			} else {
				b.WriteString("\\end{list}\n")
			}
		}
		text := latexBlock(block)
		if k+1 < len(blocks) && (len(blocks[k+1].Aligned) > 0 || blocks[k+1].Boxed != nil) {
			text = strings.TrimSuffix(text, "\n") // the display is part of the paragraph
		}
		b.WriteString(text)
	}
	if list {
		b.WriteString("\\end{list}\n")
	}
	return b.String()
}

// together joins formulas that follow each other to one set of aligned equations.
func together(body []oldBlock) []oldBlock {
	var out []oldBlock
	for _, block := range body {
		of := block.Aligned
		if block.Formula != nil {
			of = []doc.Math{*block.Formula}
		}
		if last := len(out) - 1; len(of) > 0 && last >= 0 && len(out[last].Aligned) > 0 {
			out[last].Aligned = append(out[last].Aligned, of...)
			continue
		}
		if len(of) > 0 {
			block = oldBlock{Aligned: append([]doc.Math{}, of...)}
		}
		out = append(out, block)
	}
	return out
}

func latexBlock(block oldBlock) string {
	t := latexTex()
	switch {
	case block.Boxed != nil:
		return "\\[\n\\boxed{" + bare(t.math(*block.Boxed)) + "}\n\\]\n"
	case len(block.Aligned) > 0:
		return "\\begin{align*}\n" + t.lines(block.Aligned) + "\n\\end{align*}\n"
	case block.Table != nil:
		return latexTable(block.Table.Head, latexRows(block.Table), numberColumns(block.Table)...)
	case block.Risk:
		return `\item[\textbf{at risk}\hfill] ` + latexSentence(block.Text) + "\n"
	case block.OK != nil && *block.OK:
		return `\item[ok\hfill] ` + latexSentence(block.Text) + "\n"
	case block.OK != nil:
		return `\item[\textbf{fails}\hfill] ` + latexSentence(block.Text) + "\n"
	}
	return latexSentence(block.Text) + "\n\n"
}

func latexSentence(text []doc.Inline) string {
	out := ""
	for _, part := range text {
		if part.Math != nil {
			out += "$" + bare(latexTex().within().math(*part.Math)) + "$"
		} else {
			out += latexText(part.Words)
		}
	}
	return out
}

func latexRows(t *oldTable) [][]string {
	var rows [][]string
	for _, r := range t.Rows {
		cells := make([]string, len(t.Head))
		for k := range min(len(r), len(cells)) {
			cells[k] = latexSentence(r[k : k+1])
		}
		rows = append(rows, cells)
	}
	return rows
}

// tableRows is how many rows a table takes on a page before it goes on in another.
const tableRows = 36

// lastColumn is how wide words in a last column get before they wrap, and from how
// many characters on they are taken for wide.
const (
	lastColumn      = "90mm"
	lastColumnCells = 60
)

// latexTable writes rows that are LaTeX already; the head is words. Columns of numbers
// stand to the right.
func latexTable(head []string, rows [][]string, numbers ...bool) string {
	if len(rows) == 0 || len(head) == 0 {
		return ""
	}
	spec := ""
	for k := range head {
		if k < len(numbers) && numbers[k] {
			spec += "r"
		} else {
			spec += "l"
		}
	}
	for _, r := range rows {
		if len(r[len(r)-1]) > lastColumnCells {
			spec = spec[:len(head)-1] + "p{" + lastColumn + "}"
		}
	}
	top, some := make([]string, len(head)), false
	for k, h := range head {
		top[k] = latexText(h)
		some = some || h != ""
	}
	var b strings.Builder
	for at := 0; at < len(rows); at += tableRows {
		b.WriteString("\\begin{center}\n\\begin{tabular}{" + spec + "}\n")
		if some {
			b.WriteString(strings.Join(top, " & ") + " \\\\ \\hline\n")
		}
		for _, r := range rows[at:min(at+tableRows, len(rows))] {
			b.WriteString("\\relax " + strings.Join(r, " & ") + " \\\\\n")
		}
		b.WriteString("\\end{tabular}\n\\end{center}\n")
	}
	return b.String()
}
