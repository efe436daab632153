package drawing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"trivet/mechanics/printable"
)

// tones has the class and the colour of each tone on white paper, as a number of six
// hexadecimal figures; a page's style sheet may set other colours by the classes.
var tones = [...]struct {
	class string
	rgb   uint32
}{
	Dark: {"dark", 0x1a1a1a}, Load: {"load", 0x9c1c12}, Found: {"found", 0x0b4f9e}, Faint: {"faint", 0x6b6b6b}, Fill: {"fill", 0xe9e5dc},
	Paper: {"paper", 0xffffff}, Good: {"good", 0x1d6b2a}, Bad: {"bad", 0x9c1c12}, Risk: {"risk", 0x7a6000},
}

func (t Tone) hex() string { return fmt.Sprintf("#%06x", tones[t].rgb) }

// Tones gives the class and the colour of each tone, in a fixed order.
func Tones() (all [][2]string) {
	for t := Dark; t <= Risk; t++ {
		all = append(all, [2]string{tones[t].class, t.hex()})
	}
	return all
}

const serif = `'Liberation Serif','Times New Roman',Times,serif`

// SVG writes a drawing as a file of its own, on white paper.
func SVG(d Drawing) []byte {
	var b strings.Builder
	b.WriteString(`<?xml version="1.0" encoding="UTF-8"?>` + "\n")
	d.svg(&b, ` xmlns="http://www.w3.org/2000/svg"`, fmt.Sprintf(`<rect width="%s" height="%s" fill="%s"/>`+"\n", num(d.Width), num(d.Height), Paper.hex()))
	return []byte(b.String())
}

// InlineSVG writes a drawing as an element of an HTML page.
func InlineSVG(d Drawing) string {
	var b strings.Builder
	d.svg(&b, "", "")
	return b.String()
}

func (d Drawing) svg(b *strings.Builder, space, under string) {
	fmt.Fprintf(b, `<svg%s width="%spt" height="%spt" viewBox="0 0 %s %s" role="img" font-family="%s" stroke-linecap="round" stroke-linejoin="round">`+"\n",
		space, num(d.Width), num(d.Height), num(d.Width), num(d.Height), serif)
	if d.Title != "" {
		fmt.Fprintf(b, "<title>%s</title>\n", XML(d.Title))
	}
	b.WriteString(under)
	for _, s := range d.drawn() {
		s.svg(b)
	}
	for _, t := range d.Texts {
		t.svg(b)
	}
	b.WriteString("</svg>\n")
}

func (s Shape) svg(b *strings.Builder) {
	var path strings.Builder
	for i, q := range s.Pts {
		path.WriteString(map[bool]string{true: "M", false: "L"}[i == 0] + num(q.X) + " " + num(q.Y))
	}
	if s.Closed {
		path.WriteString("Z")
	}
	fill, class := "none", ""
	if s.Fill != None {
		fill, class = s.Fill.hex(), "f-"+tones[s.Fill].class
	}
	fmt.Fprintf(b, `<path d="%s" fill="%s"`, path.String(), fill)
	if s.Line != None {
		class = strings.TrimSpace(class + " s-" + tones[s.Line].class)
		fmt.Fprintf(b, ` stroke="%s" stroke-width="%s"`, s.Line.hex(), num(s.Width))
	}
	if s.Dashed {
		b.WriteString(` stroke-dasharray="4 3"`)
	}
	fmt.Fprintf(b, ` class="%s"/>`+"\n", class)
}

func (t Text) svg(b *strings.Builder) {
	fmt.Fprintf(b, `<text class="f-%s" fill="%s" xml:space="preserve">`, tones[t.Tone].class, t.Tone.hex())
	for _, r := range t.pieces() {
		// The length is that which labels were placed by, whatever serif there is.
		fmt.Fprintf(b, `<tspan x="%s" y="%s" font-size="%s" textLength="%s" lengthAdjust="spacingAndGlyphs"`, num(r.at.X), num(r.at.Y), num(r.size), num(r.advance))
		if r.Style == Italic || r.Style == BoldItalic {
			b.WriteString(` font-style="italic"`)
		}
		if r.Style == Bold || r.Style == BoldItalic {
			b.WriteString(` font-weight="bold"`)
		}
		b.WriteString(">" + XML(r.Text) + "</tspan>")
	}
	b.WriteString("</text>\n")
}

// places is the number of decimals of a point that a file keeps: a hundredth
// is finer than any printer, and the same on every machine.
const places = 2

// num prints a coordinate; what is no number is 0, so that no file breaks.
func num(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "0"
	}
	s := strconv.FormatFloat(x, 'f', places, 64)
	s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	if s == "-0" {
		return "0"
	}
	return s
}

// XML escapes text for an element or an attribute of XML or HTML. What acts on a
// terminal is replaced; XML forbids most of it.
func XML(s string) string {
	s = strings.Map(func(r rune) rune {
		if r == 0xfffe || r == 0xffff { // no characters, which XML forbids too
			return printable.Stand
		}
		return r
	}, printable.Text(s))
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&quot;", "'", "&#39;").Replace(s)
}
