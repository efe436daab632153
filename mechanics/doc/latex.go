package doc

import (
	"slices"
	"strings"

	"trivet/mechanics/drawing"
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

// LaTeX writes a document for pdflatex with amsmath.
func LaTeX(d *Doc) string {
	w := writer{markup: latex}
	w.document(d)
	size := ""
	if d.OnePage {
		size = "\\footnotesize\n"
	}
	return latexHead + size + w.b.String() + "\\end{document}\n"
}

var latex = &markup{
	notation: texNotation(`\,`, latexText, "\\begin{align*}\n%s\n\\end{align*}\n"),
	text:     latexText,
	typed:    latexText,
	styles:   [3]string{"%s", `\emph{%s}`, `\texttt{%s}`},

	title:        "\\section*{%s}\n",
	under:        "\\textit{%s}\n\n",
	foot:         "\n\\medskip\n{\\footnotesize %s\\par}\n",
	headings:     [3]string{"\n\\subsection*{%s}\n", "\n\\subsection*{%s}\n", "\n\\subsubsection*{%s}\n"},
	step:         `%d\quad `,
	paragraph:    "%s\n",
	note:         "%s\n",
	endParagraph: "\n",
	boxed:        "\\[\n\\boxed{%s}\n\\]\n",
	list:         "\\begin{itemize}\n%s\\end{itemize}\n",
	item:         "\\item\\relax %s\n", // a "[" behind \item alone is its option
	checks:       "\\begin{list}{}{\\setlength{\\leftmargin}{16mm}\\setlength{\\labelwidth}{14mm}\\setlength{\\itemsep}{0pt}\\setlength{\\parsep}{0pt}}\n%s\\end{list}\n",
	check:        "\\item[%s\\hfill] %s\n",
	states:       [3]string{"%s", `\textbf{%s}`, `\textbf{%s}`},
	code:         "\\begin{flushleft}\\ttfamily\n%s\\end{flushleft}\n",
	source:       latexSource,
	table:        latexTable,
	figure: func(d drawing.Drawing, _ int) string {
		return "\\begin{center}\n" + drawing.TikZ(d, texWidth, latexText) + "\n\\end{center}\n"
	},
}

// latexSource are lines of code; a "[" behind \\ alone is a length, and an empty line an
// error.
func latexSource(text string) (out string) {
	for _, line := range CodeLines(text) {
		out += "\\leavevmode " + strings.ReplaceAll(latexText(line), " ", "~") + "\\\\\n"
	}
	return out
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
func latexTable(f *markup, t *Table) string {
	heads, rows := f.written(t)
	last := len(heads) - 1
	if len(rows) == 0 || last < 0 {
		return ""
	}
	spec := make([]string, len(heads))
	for k, right := range t.Rights() {
		spec[k] = map[bool]string{true: "r", false: "l"}[right]
	}
	if slices.ContainsFunc(rows, func(cells []string) bool { return len(cells[last]) > lastColumnCells }) {
		spec[last] = "p{" + lastColumn + "}"
	}
	head := ""
	if t.Headed() {
		head = strings.Join(heads, " & ") + " \\\\ \\hline\n"
	}
	var b strings.Builder
	for part := range slices.Chunk(rows, tableRows) {
		b.WriteString("\\begin{center}\n\\begin{tabular}{" + strings.Join(spec, "") + "}\n" + head)
		for _, cells := range part {
			b.WriteString("\\relax " + strings.Join(cells, " & ") + " \\\\\n")
		}
		b.WriteString("\\end{tabular}\n\\end{center}\n")
	}
	return b.String()
}

// texWidth is the width of a page's text, in big points, as latexHead sets it.
const texWidth = 160 / 25.4 * 72
