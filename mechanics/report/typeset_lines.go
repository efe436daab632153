package report

import (
	"math"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
)

// paragraph breaks a sentence with formulas in it into lines.
func (c *compositor) paragraph(of []doc.Inline, size float64, style ink.Style, tone ink.Tone, indent, before float64) {
	for k, line := range breakLines(of, size, style, tone, c.width-indent) {
		var d ink.Drawing
		rise := math.Max(line.rise, 0.78*size)
		d.Put(line.d, ink.Vec{X: indent, Y: rise}, 1)
		s := slab{d: d, height: math.Max(rise+line.fall, lead*size*0.86), before: before}
		if k > 0 {
			s.before = size * (lead - 1.13)
		}
		c.put(s)
	}
}

// breakLines sets words and formulas in lines no wider than width; a word wider
// than that is broken.
func breakLines(of []doc.Inline, size float64, style ink.Style, tone ink.Tone, width float64) []mbox {
	t := setter{size: size, inline: true, tone: tone}
	var lines []mbox
	var line mbox
	space, pending := ink.Advance(" ", style, size), false
	put := func(b mbox) {
		gap := 0.0
		if pending && line.width > 0 {
			gap = space
		}
		if line.width > 0 && line.width+gap+b.width > width && pending {
			lines = append(lines, line)
			line, gap = mbox{}, 0
		}
		line.space(gap)
		line.add(b, 0)
		pending = false
	}
	for _, in := range of {
		if in.Math != nil {
			for _, p := range t.pieces(*in.Math) {
				if p.free {
					pending = true
				}
				put(p.box)
			}
			continue
		}
		text := in.Words
		for text != "" {
			trimmed := strings.TrimLeft(text, " \t\n")
			pending = pending || len(trimmed) < len(text)
			text = trimmed
			end := strings.IndexAny(text, " \t\n")
			if end < 0 {
				end = len(text)
			}
			word := text[:end]
			for ink.Advance(word, style, size) > width {
				n := fitting(word, style, size, width)
				pending = line.width > 0
				put(t.text(style, word[:n]))
				pending, word = true, word[n:]
			}
			if word != "" {
				put(t.text(style, word))
			}
			text = text[end:]
		}
	}
	if line.width > 0 || len(lines) == 0 {
		lines = append(lines, line)
	}
	return lines
}

// fitting is how many bytes of a word go into a width; one character at least.
func fitting(word string, style ink.Style, size, width float64) int {
	n := 0
	for i, r := range word {
		next := i + utf8.RuneLen(r)
		if r == utf8.RuneError {
			_, w := utf8.DecodeRuneInString(word[i:])
			next = i + w
		}
		if n > 0 && ink.Advance(word[:next], style, size) > width {
			break
		}
		n = next
	}
	return n
}
