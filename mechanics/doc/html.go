package doc

import (
	_ "embed" // the style sheet
	"fmt"
	"html"
	"strings"

	"trivet/mechanics/drawing"
)

// HTML writes a document as one file: figures as SVG, formulas as MathML, no script,
// nothing fetched. It follows the reader's light or dark setting and prints in black on
// white.
func HTML(d *Doc) string {
	class := ""
	if d.OnePage {
		class = ` class="field"`
	}
	w := writer{markup: page}
	fmt.Fprintf(&w.b, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n<style>\n%s</style>\n</head>\n<body%s>\n<main>\n",
		drawing.XML(d.Title), style(), class)
	w.document(d)
	return w.b.String() + "</main>\n</body>\n</html>\n"
}

// page is HTML with its formulas in MathML.
var page = &markup{
	notation: mathML,
	text:     drawing.XML,

	title:     "<h1>%s</h1>\n",
	under:     "<p class=\"quiet\">%s</p>\n",
	foot:      "<p class=\"quiet source\">%s</p>\n",
	part:      "<section>\n",
	caution:   "<section class=\"caution\">\n",
	endPart:   "</section>\n",
	headings:  [3]string{"<h1>%s</h1>\n", "<h2>%s</h2>\n", "<h3>%s</h3>\n"},
	step:      "%d. ",
	paragraph: "<p>%s</p>\n",
	note:      "<p class=\"quiet\">%s</p>\n",
	boxed:     "<div class=\"formula\"><span class=\"boxed\"><math>%s</math></span></div>\n",
	list:      "<ul>\n%s</ul>\n",
	item:      "<li>%s</li>\n",
	checks:    "<ul class=\"checks\">\n%s</ul>\n",
	check:     "<li>%s %s</li>\n",
	states:    [3]string{`<b class="good">%s</b>`, `<b class="risk">%s</b>`, `<b class="bad">%s</b>`},
	code:      "<pre>%s</pre>\n",
	source:    drawing.XML,
	table: tableForm{
		form:  "<div class=\"wide\"><table>\n%[2]s<tbody>\n%[3]s</tbody>\n</table></div>\n",
		heads: "<thead><tr>%s</tr></thead>\n", row: "<tr>%s</tr>\n", head: "<th>%s</th>", cells: [2]string{"<td>%s</td>", `<td class="number">%s</td>`},
	},
	figure: func(d drawing.Drawing, _ int) string { return "<figure>\n" + drawing.InlineSVG(d) + "</figure>\n" },
}

// mathML writes formulas in MathML Core, whose gaps are those that the reader's program
// does not set around an operator by itself.
var mathML = &notation{
	letter: func(m Math) string {
		if m.Op == Symbol {
			return `<mi>` + mathmlText(m.Text) + `</mi>`
		}
		return `<mi mathvariant="normal" style="font-weight:bold">` + mathmlText(m.Text) + `</mi>`
	},
	number: func(digits string) string {
		return `<mn>` + strings.Join(strings.Fields(mathmlText(digits)), "\u202f") + `</mn>`
	},
	words: func(text string, small bool) string {
		switch {
		case text == "":
			return ""
		case small:
			return `<mi>` + mathmlText(text) + `</mi>`
		}
		return `<mtext>` + mathmlText(text) + `</mtext>`
	},
	signs: map[string]string{"-": `<mo>−</mo>`, "Σ": `<mo largeop="false" movablelimits="false">Σ</mo>`, ",": `<mo separator="true">,</mo>`,
		"(": `<mo stretchy="false">(</mo>`, ")": `<mo stretchy="false">)</mo>`}, // no higher than the line, whatever stands beside
	other: func(sign string) string { return `<mo>` + mathmlText(sign) + `</mo>` },
	gaps:  map[Gap]string{Factor: mathmlGap, Unit: mathmlGap, Beside: mathmlGap},

	sub:         `<msub><mrow>%s</mrow><mrow>%s</mrow></msub>`,
	power:       `<msup><mrow>%s</mrow><mrow>%s</mrow></msup>`,
	fraction:    `<mfrac><mrow>%s</mrow><mrow>%s</mrow></mfrac>`,
	root:        `<msqrt>%s</msqrt>`,
	fences:      map[Op]string{Paren: `<mrow><mo>(</mo>%s<mo>)</mo></mrow>`, Size: `<mrow><mo>|</mo>%s<mo>|</mo></mrow>`},
	matrix:      `<mrow><mo>[</mo><mtable><mtr><mtd>%s</mtd></mtr></mtable><mo>]</mo></mrow>`,
	determinant: `<mrow><mo>|</mo><mtable><mtr><mtd>%s</mtd></mtr></mtable><mo>|</mo></mrow>`,
	nextCell:    `</mtd><mtd>`,
	nextRow:     `</mtd></mtr><mtr><mtd>`,

	alone:   `<math>%s</math>`,
	aligned: `<div class="formula"><math display="block"><mtable style="text-align:left">%s</mtable></math></div>` + "\n",
	room:    unbroken,
	lines:   [3]string{mathmlLine, mathmlLine, mathmlLine},
}

const (
	mathmlGap  = `<mspace width="0.17em"></mspace>`
	mathmlLine = `<mtr><mtd style="text-align:right"><mrow>%s</mrow></mtd><mtd style="text-align:left"><mrow>%s</mrow></mtd></mtr>`
)

// MathML writes a formula for a line of text in an HTML page.
func MathML(m Math) string { return mathML.sentence(m) }

// mathmlText escapes what a user typed for HTML.
func mathmlText(text string) string { return html.EscapeString(Printed(text)) }

// style is the page's style sheet. The figures' tones get their dark colours
// here; by themselves they have those for white paper.
func style() string {
	dark := map[string]string{"dark": "#e6e3dc", "load": "#ff9d8a", "found": "#8ec1ff", "faint": "#a3a09a", "fill": "#3d3b36", "paper": "#1c1b19", "good": "#8fd29b", "bad": "#ff9d8a", "risk": "#e8cb5a"}
	var light, night, svg strings.Builder
	for _, t := range drawing.Tones() {
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
