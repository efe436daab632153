package doc

import (
	"strconv"
	"strings"

	"trivet/mechanics/ink"
)

// latexHead needs amsmath and tikz. Numbers of pages and links are left
// to the reader's own class.
const latexHead = `\documentclass[11pt,a4paper]{article}
\usepackage{amsmath}
\usepackage{tikz}
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

// LaTeX writes a document for pdflatex with amsmath.
func LaTeX(d *Doc) string { return latexHead + latexBody(d) + latexEnd }

// latexBody is what stands between the head and the end.
func latexBody(d *Doc) string {
	t := latexSetter()
	var b strings.Builder
	if d.OnePage {
		b.WriteString("\\footnotesize\n")
	}
	if d.Title != "" {
		b.WriteString(`\section*{` + latexText(d.Title) + "}\n")
	}
	for _, under := range d.Under {
		b.WriteString("\\textit{" + t.sentence(under) + "}\n\n")
	}
	for _, sec := range d.Sections {
		heading := `\subsection*{`
		if sec.Level > 1 {
			heading = `\subsubsection*{`
		}
		if sec.Number > 0 {
			heading += strconv.Itoa(sec.Number) + `\quad `
		}
		if sec.Title != "" {
			b.WriteString("\n" + heading + latexText(sec.Title) + "}\n")
		}
		b.WriteString(latexBlocks(sec.Blocks))
	}
	if d.Foot != "" {
		b.WriteString("\n\\medskip\n{\\footnotesize " + latexText(d.Foot) + "\\par}\n")
	}
	return b.String()
}

// latexBlocks writes the blocks of a section; formulas, and checks, that follow each
// other are one.
func latexBlocks(blocks []Block) string {
	t := latexSetter()
	var b strings.Builder
	for i := 0; i < len(blocks); i++ {
		switch x := blocks[i].(type) {
		case *Paragraph:
			b.WriteString(t.sentence(x.Text) + "\n")
			if !displayed(blocks, i+1) { // a display is part of the paragraph
				b.WriteString("\n")
			}
		case *Formula:
			run := Run[*Formula](blocks[i:])
			b.WriteString("\\begin{align*}\n" + t.aligned(Equations(run)) + "\n\\end{align*}\n")
			i += len(run) - 1
		case *Boxed:
			b.WriteString("\\[\n\\boxed{" + Set[string](t, x.Math) + "}\n\\]\n")
		case *Table:
			b.WriteString(latexTable(x))
		case *Check:
			run := Run[*Check](blocks[i:])
			b.WriteString(latexChecks(run))
			i += len(run) - 1
		case *List:
			b.WriteString("\\begin{itemize}\n")
			for _, item := range x.Items {
				b.WriteString(`\item\relax ` + t.sentence(item) + "\n") // a "[" behind \item alone is its option
			}
			b.WriteString("\\end{itemize}\n")
		case *Code:
			b.WriteString("\\begin{flushleft}\\ttfamily\n")
			for _, line := range CodeLines(x) {
				b.WriteString("\\leavevmode " + strings.Join(strings.Split(latexText(line), " "), "~") + "\\\\\n") // a "[" behind \\ alone is a length, and an empty line an error
			}
			b.WriteString("\\end{flushleft}\n")
		case *Figure:
			b.WriteString("\\begin{center}\n" + ink.TikZ(x.Drawing, texWidth, latexText) + "\n\\end{center}\n")
		default:
			Stray(x)
		}
	}
	return b.String()
}

// displayed tells that a formula stands at a place.
func displayed(blocks []Block, i int) bool {
	if i >= len(blocks) {
		return false
	}
	switch blocks[i].(type) {
	case *Formula, *Boxed:
		return true
	}
	return false
}

func latexChecks(of []*Check) string {
	var b strings.Builder
	b.WriteString("\\begin{list}{}{\\setlength{\\leftmargin}{16mm}\\setlength{\\labelwidth}{14mm}\\setlength{\\itemsep}{0pt}\\setlength{\\parsep}{0pt}}\n")
	for _, c := range of {
		mark := c.State.String()
		if c.State != OK {
			mark = `\textbf{` + mark + `}`
		}
		b.WriteString(`\item[` + mark + `\hfill] ` + latexSetter().sentence(c.Text) + "\n")
	}
	b.WriteString("\\end{list}\n")
	return b.String()
}

// tableRows is how many rows a table takes on a page before it goes on in another.
const tableRows = 36

// lastColumn is how wide words in a last column get before they wrap, and from how
// many characters on they are taken for wide.
const (
	lastColumn      = "90mm"
	lastColumnCells = 60
)

// latexTable sets columns of numbers to the right.
func latexTable(t *Table) string {
	last := len(t.Columns) - 1
	if len(t.Rows) == 0 || last < 0 {
		return ""
	}
	spec := make([]string, len(t.Columns))
	for k, right := range t.Rights() {
		spec[k] = map[bool]string{true: "r", false: "l"}[right]
	}
	heads := make([]string, len(t.Columns))
	for k, c := range t.Columns {
		heads[k] = latexText(c.Head)
	}
	var rows []string
	for _, r := range t.Rows {
		cells := make([]string, len(t.Columns))
		for k := range cells {
			cells[k] = latexSetter().sentence([]Inline{Cell(r, k)})
		}
		if len(cells[last]) > lastColumnCells {
			spec[last] = "p{" + lastColumn + "}"
		}
		rows = append(rows, "\\relax "+strings.Join(cells, " & ")+" \\\\\n")
	}
	var b strings.Builder
	for at := 0; at < len(rows); at += tableRows {
		b.WriteString("\\begin{center}\n\\begin{tabular}{" + strings.Join(spec, "") + "}\n")
		if t.Headed() {
			b.WriteString(strings.Join(heads, " & ") + " \\\\ \\hline\n")
		}
		b.WriteString(strings.Join(rows[at:min(at+tableRows, len(rows))], ""))
		b.WriteString("\\end{tabular}\n\\end{center}\n")
	}
	return b.String()
}

// texWidth is the width of a page's text, in big points, as latexHead sets it.
const texWidth = 160 / 25.4 * 72
