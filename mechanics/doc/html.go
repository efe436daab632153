package doc

import (
	_ "embed" // the style sheet
	"fmt"
	"strings"

	"trivet/mechanics/ink"
)

// HTML writes a document as one file: figures as SVG, formulas as MathML, no script,
// nothing fetched. It follows the reader's light or dark setting and prints in black on
// white.
func HTML(d *Doc) string {
	var b strings.Builder
	class := ""
	if d.OnePage {
		class = ` class="field"`
	}
	fmt.Fprintf(&b, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n<style>\n%s</style>\n</head>\n<body%s>\n<main>\n",
		ink.XML(d.Title), style(), class)
	fmt.Fprintf(&b, "<h1>%s</h1>\n", ink.XML(d.Title))
	for _, under := range d.Under {
		b.WriteString(`<p class="quiet">` + htmlSentence(under) + "</p>\n")
	}
	open := false
	for _, sec := range d.Sections {
		if sec.Level < 2 {
			if open {
				b.WriteString("</section>\n")
			}
			open = true
			b.WriteString(map[bool]string{true: "<section class=\"caution\">\n", false: "<section>\n"}[sec.Role == Caution])
		}
		number := ""
		if sec.Number > 0 {
			number = fmt.Sprintf("%d. ", sec.Number)
		}
		if sec.Title != "" {
			fmt.Fprintf(&b, "<h%[1]d>%[2]s%[3]s</h%[1]d>\n", sec.Level+1, number, ink.XML(sec.Title))
		}
		htmlBlocks(&b, sec.Blocks)
	}
	if open {
		b.WriteString("</section>\n")
	}
	if d.Foot != "" {
		fmt.Fprintf(&b, "<p class=\"quiet source\">%s</p>\n", ink.XML(d.Foot))
	}
	b.WriteString("</main>\n</body>\n</html>\n")
	return b.String()
}

func htmlBlocks(b *strings.Builder, blocks []Block) {
	for i := 0; i < len(blocks); i++ {
		switch x := blocks[i].(type) {
		case *Paragraph:
			class := ""
			if x.Note {
				class = ` class="quiet"`
			}
			b.WriteString("<p" + class + ">" + htmlSentence(x.Text) + "</p>\n")
		case *Formula:
			run := Run[*Formula](blocks[i:])
			b.WriteString(`<div class="formula">` + mathmlAligned(Equations(run)) + "</div>\n")
			i += len(run) - 1
		case *Boxed:
			b.WriteString(`<div class="formula"><span class="boxed">` + MathML(x.Math) + "</span></div>\n")
		case *Table:
			htmlTable(b, x)
		case *Check:
			run := Run[*Check](blocks[i:])
			b.WriteString("<ul class=\"checks\">\n")
			for _, c := range run {
				fmt.Fprintf(b, "<li><b class=\"%s\">%s</b> %s</li>\n", [...]string{"good", "risk", "bad"}[c.State], c.State, htmlSentence(c.Text))
			}
			b.WriteString("</ul>\n")
			i += len(run) - 1
		case *List:
			b.WriteString("<ul>\n")
			for _, item := range x.Items {
				b.WriteString("<li>" + htmlSentence(item) + "</li>\n")
			}
			b.WriteString("</ul>\n")
		case *Code:
			b.WriteString("<pre>" + ink.XML(x.Text) + "</pre>\n")
		case *Figure:
			b.WriteString("<figure>\n" + ink.InlineSVG(x.Drawing) + "</figure>\n")
		default:
			Stray(x)
		}
	}
}

func htmlSentence(of []Inline) string {
	var b strings.Builder
	for _, in := range of {
		switch {
		case in.Math != nil:
			b.WriteString(MathML(*in.Math))
		case in.Blank > 0:
			b.WriteString(strings.Repeat(".", in.Blank))
		case in.Style == Emphasis:
			b.WriteString("<em>" + ink.XML(in.Words) + "</em>")
		case in.Style == Mono:
			b.WriteString("<code>" + ink.XML(in.Words) + "</code>")
		default:
			b.WriteString(ink.XML(in.Words))
		}
	}
	return b.String()
}

func htmlTable(b *strings.Builder, t *Table) {
	b.WriteString("<div class=\"wide\"><table>\n")
	if t.Headed() {
		b.WriteString("<thead><tr>")
		for _, c := range t.Columns {
			b.WriteString("<th>" + ink.XML(c.Head) + "</th>")
		}
		b.WriteString("</tr></thead>\n")
	}
	b.WriteString("<tbody>\n")
	rights := t.Rights()
	for _, r := range t.Rows {
		b.WriteString("<tr>")
		for k := range t.Columns {
			class := ""
			if rights[k] {
				class = ` class="number"`
			}
			b.WriteString("<td" + class + ">" + htmlSentence([]Inline{Cell(r, k)}) + "</td>")
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody>\n</table></div>\n")
}

// style is the page's style sheet. The figures' tones get their dark colours
// here; by themselves they have those for white paper.
func style() string {
	dark := map[string]string{"dark": "#e6e3dc", "load": "#ff9d8a", "found": "#8ec1ff", "faint": "#a3a09a", "fill": "#3d3b36", "paper": "#1c1b19", "good": "#8fd29b", "bad": "#ff9d8a", "risk": "#e8cb5a"}
	var light, night, svg strings.Builder
	for _, t := range ink.Tones() {
		fmt.Fprintf(&light, "--%s:%s;", t[0], t[1])
		fmt.Fprintf(&night, "--%s:%s;", t[0], dark[t[0]])
		fmt.Fprintf(&svg, ".f-%[1]s{fill:var(--%[1]s)}.s-%[1]s{stroke:var(--%[1]s)}\n", t[0])
	}
	return ":root{" + light.String() + "color-scheme:light dark}\n" +
		"@media screen and (prefers-color-scheme:dark){:root{" + night.String() + "}}\n" + svg.String() + styleRules
}

// styleRules follow the colours in a page's style sheet.
//
//go:embed page.css
var styleRules string
