package report

import (
	"encoding/base64"
	"fmt"
	"math"
	"strconv"
	"strings"

	"trivet/mechanics/ink"
	"trivet/mechanics/statics"
)

// figures are the drawings of a page.
func (pg page) figures() (all []ink.Drawing) {
	for _, p := range pg.parts {
		for _, b := range p.blocks {
			if b.figure != nil {
				all = append(all, *b.figure)
			}
		}
	}
	return all
}

// markdownPage writes a page as Markdown. Its figures are in the file too: as
// images by reference, whose data stand at its end, out of the way of whoever
// reads the source.
func markdownPage(s *statics.Solution, opt PageOptions) []byte {
	pg := pageOf(s, opt)
	var names, data []string
	for i, f := range pg.figures() {
		ref := "figure-" + strconv.Itoa(i+1)
		names = append(names, "![Figure "+strconv.Itoa(i+1)+"]["+ref+"]")
		data = append(data, "["+ref+"]: data:image/svg+xml;base64,"+base64.StdEncoding.EncodeToString(ink.SVG(f)))
	}
	text := ""
	if opt.Field || opt.Task {
		text = markdownField(pg, names)
	} else {
		text = Markdown(opt.working(s), Parts{Trust: opt.Trust, Figure: strings.Join(names, "\n\n")})
	}
	return []byte(text + "\n" + strings.Join(append(data, ""), "\n"))
}

func markdownField(pg page, figures []string) string {
	var b strings.Builder
	b.WriteString("# " + markdownText(pg.title) + "\n")
	for _, u := range pg.under {
		b.WriteString("\n" + lineStart(markdownText(u)) + "\n")
	}
	for _, p := range pg.parts {
		b.WriteString("\n## " + markdownText(p.title) + "\n\n")
		checks := false
		for k, bl := range p.blocks {
			if k > 0 && !(checks && bl.OK != nil) {
				b.WriteString("\n")
			}
			checks = bl.OK != nil
			if bl.figure != nil {
				b.WriteString(figures[0] + "\n")
				figures = figures[1:]
				continue
			}
			b.WriteString(markdownBlock(bl.oldBlock))
		}
	}
	b.WriteString(markdownSource(pg.source))
	return b.String()
}

// texPage writes a page for pdflatex.
func texPage(s *statics.Solution, opt PageOptions) []byte {
	pg := pageOf(s, opt)
	var figures []string
	for _, f := range pg.figures() {
		figures = append(figures, texFigure(f))
	}
	if !opt.Field && !opt.Task {
		return []byte(LaTeX(opt.working(s), Parts{Trust: opt.Trust, Figure: strings.Join(figures, "\n\n\\medskip\n")}))
	}
	var b strings.Builder
	size := ""
	if opt.Field {
		size = "\\footnotesize\n"
	}
	b.WriteString(latexHead + size + "\\section*{" + latexText(pg.title) + "}\n")
	for _, u := range pg.under {
		b.WriteString("\\textit{" + latexText(u) + "}\n\n")
	}
	for _, p := range pg.parts {
		b.WriteString("\\subsection*{" + latexText(p.title) + "}\n")
		var run []oldBlock
		for _, bl := range p.blocks {
			if bl.figure != nil {
				b.WriteString("\\begin{center}\n" + figures[0] + "\n\\end{center}\n")
				figures = figures[1:]
				continue
			}
			run = append(run, bl.oldBlock)
		}
		b.WriteString(latexBlocks(run))
	}
	b.WriteString(latexSource(pg.source) + latexEnd)
	return []byte(b.String())
}

// texWidth is the width of a page's text, in big points, as latexHead sets it.
const texWidth = 160 / 25.4 * 72

// texFigure writes a drawing with nothing but LaTeX's picture environment for
// the texts and pdfTeX's own literals for the lines, so that no package is
// needed. Y runs upwards there.
func texFigure(d ink.Drawing) string {
	k := math.Min(1, texWidth/d.Width)
	n := func(x float64) string {
		s := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(x, 'f', 2, 64), "0"), ".")
		return map[bool]string{true: "0", false: s}[s == "-0"]
	}
	at := func(q ink.Vec) string { return n(k*q.X) + " " + n(k*(d.Height-q.Y)) }
	var b strings.Builder
	fmt.Fprintf(&b, "\\begingroup\\setlength{\\unitlength}{1bp}%%\n\\begin{picture}(%s,%s)%%\n", n(k*d.Width), n(k*d.Height))
	for _, s := range d.Shapes {
		ops := ""
		if s.Fill != ink.None {
			ops += "f"
		}
		if s.Line != ink.None && s.Width > 0 {
			ops += "S"
		}
		if len(s.Pts) == 0 || ops == "" {
			continue
		}
		b.WriteString("\\put(0,0){\\pdfliteral{q 1 J 1 j ")
		if s.Fill != ink.None {
			b.WriteString(ink.PDFColour(s.Fill) + " rg ")
		}
		if s.Line != ink.None && s.Width > 0 {
			b.WriteString(ink.PDFColour(s.Line) + " RG " + n(k*s.Width) + " w ")
		}
		if s.Dashed {
			b.WriteString("[4 3] 0 d ")
		}
		for i, q := range s.Pts {
			b.WriteString(at(q) + map[bool]string{true: " m ", false: " l "}[i == 0])
		}
		if s.Closed {
			b.WriteString("h ")
		}
		b.WriteString(map[string]string{"f": "f", "S": "S", "fS": "B"}[ops] + " Q}}%\n")
	}
	for _, t := range d.Texts {
		fmt.Fprintf(&b, "\\put(%s,%s){\\fontsize{%s}{%s}\\selectfont %s}%%\n",
			n(k*t.At.X), n(k*(d.Height-t.At.Y)), n(k*t.Size), n(k*t.Size*1.2), texRuns(t.Runs))
	}
	b.WriteString("\\end{picture}\\endgroup")
	return b.String()
}

func texRuns(runs []ink.Run) string {
	out := ""
	for _, r := range runs {
		text := latexText(r.Text)
		switch r.Style {
		case ink.Italic:
			text = `\textit{` + text + `}`
		case ink.Bold:
			text = `\textbf{` + text + `}`
		case ink.BoldItalic:
			text = `\textbf{\textit{` + text + `}}`
		}
		switch {
		case r.Level < 0:
			text = `$_{\mbox{\tiny ` + text + `}}$`
		case r.Level > 0:
			text = `$^{\mbox{\tiny ` + text + `}}$`
		}
		out += text
	}
	return out
}
