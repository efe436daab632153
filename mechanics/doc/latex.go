package doc

import (
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
	table: tableForm{
		form: "\\begin{center}\n\\begin{tabular}{%s}\n%s%s\\end{tabular}\n\\end{center}\n", columns: [2]string{"l", "r"}, wide: "p{90mm}",
		heads: "%s \\\\ \\hline\n", row: "\\relax %s \\\\\n", head: "%s", cells: [2]string{"%s", "%s"}, between: " & ", rows: 36,
	},
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

// texWidth is the width of a page's text, in big points, as latexHead sets it.
const texWidth = 160 / 25.4 * 72
