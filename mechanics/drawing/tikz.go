package drawing

import (
	"fmt"
	"strings"
)

// TikZ writes a drawing, no wider than so many big points, as a picture of LaTeX's package
// tikz. Each text is set to the width by which labels were placed, whatever the font of the
// document; escape writes it for LaTeX.
func TikZ(d Drawing, width float64, escape func(string) string) string {
	k := min(1, width/d.Width)
	var scaled Drawing
	scaled.Put(d, Vec{}, k)
	var b strings.Builder
	b.WriteString("\\begin{tikzpicture}[x=1bp,y=-1bp,line cap=round,line join=round]\n")
	for t := Dark; t <= Risk; t++ {
		fmt.Fprintf(&b, "\\definecolor{%s}{HTML}{%s}\n", tones[t].class, strings.ToUpper(t.hex()[1:]))
	}
	fmt.Fprintf(&b, "\\useasboundingbox (0,0) rectangle (%s,%s);\n", num(k*d.Width), num(k*d.Height))
	for _, s := range scaled.drawn() {
		var how []string
		if s.Fill != None {
			how = append(how, "fill="+tones[s.Fill].class)
		}
		if s.Line != None {
			how = append(how, "draw="+tones[s.Line].class, "line width="+num(s.Width)+"bp")
		}
		if s.Dashed {
			how = append(how, "dash pattern=on 4bp off 3bp")
		}
		pts := make([]string, len(s.Pts))
		for i, q := range s.Pts {
			pts[i] = "(" + num(q.X) + "," + num(q.Y) + ")"
		}
		if s.Closed {
			pts = append(pts, "cycle")
		}
		b.WriteString("\\path[" + strings.Join(how, ",") + "] " + strings.Join(pts, "--") + ";\n")
	}
	faces := [4]string{Regular: "", Italic: "\\itshape", Bold: "\\bfseries", BoldItalic: "\\bfseries\\itshape"}
	for _, t := range scaled.Texts {
		for _, r := range t.pieces() {
			text := strings.TrimSpace(r.Text)
			if text == "" {
				continue
			}
			blank := Advance(r.Text[:strings.Index(r.Text, text)], r.Style, r.size)
			fmt.Fprintf(&b, "\\node[anchor=base west,inner sep=0,text=%s] at (%s,%s) {\\fontsize{%s}{%s}\\selectfont%s\\resizebox{%sbp}{\\height}{%s}};\n", tones[t.Tone].class,
				num(r.at.X+blank), num(r.at.Y), num(r.size), num(1.2*r.size), faces[r.Style], num(Advance(text, r.Style, r.size)), escape(text))
		}
	}
	b.WriteString("\\end{tikzpicture}")
	return b.String()
}
