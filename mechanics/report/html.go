package report

import (
	"fmt"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
)

// htmlPage writes a page as one file of HTML: figures as SVG, formulas as
// MathML, no script, nothing fetched. It follows the reader's light or dark
// setting and prints in black on white.
func htmlPage(pg page) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n<style>\n%s</style>\n</head>\n<body%s>\n<main>\n",
		ink.XML(pg.title), style(), map[bool]string{true: ` class="field"`}[pg.field])
	fmt.Fprintf(&b, "<h1>%s</h1>\n", ink.XML(pg.title))
	for _, u := range pg.under {
		fmt.Fprintf(&b, "<p class=\"quiet\">%s</p>\n", ink.XML(u))
	}
	open := false
	for _, p := range pg.parts {
		level := "h2"
		if p.minor {
			level = "h3"
		} else {
			if open {
				b.WriteString("</section>\n")
			}
			class := ""
			if p.title == "Caution" {
				class = ` class="caution"`
			}
			b.WriteString("<section" + class + ">\n")
			open = true
		}
		fmt.Fprintf(&b, "<%s>%s</%s>\n", level, ink.XML(p.title), level)
		list := false
		for _, bl := range p.blocks {
			if check := bl.OK != nil; check != list {
				b.WriteString(map[bool]string{true: "<ul class=\"checks\">\n", false: "</ul>\n"}[check])
				list = check
			}
			b.WriteString(htmlBlock(bl))
		}
		if list {
			b.WriteString("</ul>\n")
		}
	}
	if open {
		b.WriteString("</section>\n")
	}
	if pg.source != "" {
		fmt.Fprintf(&b, "<p class=\"quiet source\">%s</p>\n", ink.XML(pg.source))
	}
	b.WriteString("</main>\n</body>\n</html>\n")
	return []byte(b.String())
}

func htmlBlock(b block) string {
	switch {
	case b.figure != nil:
		return "<figure>\n" + ink.InlineSVG(*b.figure) + "</figure>\n"
	case b.Risk:
		return `<li><b class="risk">at risk</b> ` + htmlSentence(b.Text) + "</li>\n"
	case b.OK != nil && *b.OK:
		return `<li><b class="good">ok</b> ` + htmlSentence(b.Text) + "</li>\n"
	case b.OK != nil:
		return `<li><b class="bad">FAILS</b> ` + htmlSentence(b.Text) + "</li>\n"
	case b.quiet:
		return `<p class="quiet">` + htmlSentence(b.Text) + "</p>\n"
	case b.Formula != nil:
		return `<div class="formula">` + MathMLAligned([]doc.Math{*b.Formula}) + "</div>\n"
	case b.Aligned != nil:
		return `<div class="formula">` + MathMLAligned(b.Aligned) + "</div>\n"
	case b.Boxed != nil:
		return `<div class="formula"><span class="boxed">` + MathML(*b.Boxed) + "</span></div>\n"
	case b.Table != nil:
		return htmlTable(b.Table)
	}
	return "<p>" + htmlSentence(b.Text) + "</p>\n"
}

func htmlSentence(of []doc.Inline) string {
	out := ""
	for _, in := range of {
		if in.Math != nil {
			out += MathML(*in.Math)
		} else {
			out += ink.XML(in.Words)
		}
	}
	return out
}

func htmlTable(t *oldTable) string {
	var b strings.Builder
	b.WriteString("<div class=\"wide\"><table>\n<thead><tr>")
	for _, h := range t.Head {
		fmt.Fprintf(&b, "<th>%s</th>", ink.XML(h))
	}
	b.WriteString("</tr></thead>\n<tbody>\n")
	for _, r := range t.Rows {
		b.WriteString("<tr>")
		for k, c := range r {
			class := ""
			if k > 0 && numeric(c) && (c.Math != nil || c.Words != "") {
				class = ` class="number"`
			}
			fmt.Fprintf(&b, "<td%s>%s</td>", class, htmlSentence([]doc.Inline{c}))
		}
		b.WriteString("</tr>\n")
	}
	b.WriteString("</tbody>\n</table></div>\n")
	return b.String()
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

const styleRules = `body{margin:0;background:var(--paper);color:var(--dark);font:17px/1.5 'Liberation Serif','Times New Roman',Times,serif}
main{max-width:46rem;margin:2rem auto;padding:0 1rem}
h1{font-size:1.7rem;line-height:1.2;margin:0 0 .4rem}
h2{font-size:1.25rem;margin:2rem 0 .5rem;border-bottom:1px solid var(--faint)}
h3{font-size:1.03rem;margin:1.3rem 0 .3rem}
p{margin:.4rem 0}
figure{margin:1rem 0;text-align:center;break-inside:avoid}
svg{max-width:100%;height:auto}
.quiet{color:var(--faint);font-style:italic;font-size:.92em}
.source{font-size:.8em;margin:1.2rem 0}
.formula{margin:.5rem 0 .5rem 1.5rem;overflow-x:auto;overflow-y:hidden}
.formula math{margin:0}
math{font-size:1.03em}
math[display=block]{width:fit-content;margin:0}
mtd{padding:.22em .15em}
.boxed{display:inline-block;border:1.5px solid var(--dark);padding:.25rem .6rem}
.wide{overflow-x:auto}
table{border-collapse:collapse;border-top:2px solid var(--dark);border-bottom:2px solid var(--dark);margin:.6rem 0}
th{font-weight:normal;font-style:italic;color:var(--faint);text-align:left;border-bottom:1px solid var(--faint)}
th,td{padding:.15rem .8rem .15rem 0;vertical-align:top}
td.number{text-align:right;white-space:nowrap}
.checks{list-style:none;padding:0}
.checks li{padding-left:3.6rem;text-indent:-3.6rem;margin:.15rem 0}
.checks b{display:inline-block;width:3.6rem;text-indent:0}
.good{color:var(--good)}.bad{color:var(--bad)}.risk{color:var(--risk)}
.caution{border:1.5px solid var(--dark);padding:.2rem .8rem .5rem;margin-top:2rem;break-inside:avoid}
.caution h2{border:0;margin:.2rem 0}
.field{font-size:14px}.field main{max-width:52rem;margin:1rem auto}
.field h2{margin:.8rem 0 .2rem}.field p,.field table{margin:.2rem 0}.field figure{margin:.3rem 0}
.field figure svg{max-height:16rem}
@media print{
@page{size:A4;margin:18mm}
body{font-size:10.5pt;background:#fff;color:#000}
main{max-width:none;margin:0;padding:0}
.formula,.wide{overflow:visible}
h2,h3{break-after:avoid}
tr,li,.formula{break-inside:avoid}
.field{font-size:8pt}.field figure svg{max-height:9rem}
}
`
