package grid

import (
	"maps"
	"slices"
	"strings"
	"unicode/utf8"
)

// Frame is a grid with the styles that its cells number.
type Frame struct {
	*Grid
	Styles []Sequences
}

// String is the frame as Render writes it.
func (f Frame) String() string { return f.Render(f.Styles) }

// Changes calls do for the cells that differ from those of another grid, or for all
// where that is nil or of another size: with the characters, the columns that they
// take and the style. What a wide character covers goes with it.
func (g *Grid) Changes(was *Grid, do func(x, y int, text string, columns int, s Style)) {
	fresh := was == nil || was.W != g.W || was.H != g.H
	for i, c := range g.cells {
		text, own := g.more[i]
		if c.r == 0 || !fresh && c == was.cells[i] && text == was.more[i] {
			continue
		}
		if !own {
			text = string(c.r)
		}
		columns := 1
		for x := i%g.W + 1; x < g.W && g.cells[i+columns].r == 0; x++ {
			columns++
		}
		do(i%g.W, i/g.W, text, columns, c.style)
	}
}

// Grow adds rows of blanks below.
func (g *Grid) Grow(rows int) {
	g.cells = append(g.cells, New(g.W, rows).cells...)
	g.H += rows
}

// Same tells whether two frames show the same.
func (f Frame) Same(as Frame) bool {
	return as.Grid != nil && f.W == as.W && slices.Equal(f.cells, as.cells) && maps.Equal(f.more, as.more) && slices.Equal(f.Styles, as.Styles)
}

// Render writes the frame as H lines of W columns. A style beyond the list is
// plain.
func (g *Grid) Render(styles []Sequences) string {
	var b strings.Builder
	b.Grow(len(g.cells) + len(g.cells)/2)
	for y := range g.H {
		if y > 0 {
			b.WriteByte('\n')
		}
		var open Sequences
		current := Style(0)
		for x := range g.W {
			i := y*g.W + x
			c := g.cells[i]
			if c.style != current {
				b.WriteString(open.Suffix)
				current, open = c.style, Sequences{}
				if int(current) < len(styles) {
					open = styles[current]
				}
				b.WriteString(open.Prefix)
			}
			g.write(&b, i, c.r)
		}
		b.WriteString(open.Suffix)
	}
	return b.String()
}

func (g *Grid) write(b *strings.Builder, i int, r rune) {
	if g.more != nil {
		if s, ok := g.more[i]; ok {
			b.WriteString(s)
			return
		}
	}
	if r == 0 {
		return
	}
	if r < utf8.RuneSelf {
		b.WriteByte(byte(r))
		return
	}
	b.WriteRune(r)
}

// Width measures a text in columns.
func Width(s string) int {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf || s[i] < ' ' {
			return measure(s)
		}
	}
	return len(s)
}

// plain tells that a text begins with a character of one byte, which nothing
// behind it changes.
func plain(s string) bool {
	return s[0] >= ' ' && s[0] < utf8.RuneSelf-1 && (len(s) == 1 || s[1] < utf8.RuneSelf)
}

func measure(s string) int {
	n := 0
	for len(s) > 0 {
		if plain(s) {
			s, n = s[1:], n+1
			continue
		}
		taken, _, w := character(s)
		s, n = s[len(taken):], n+w
	}
	return n
}

// Fit draws a text as the function of that name gives it, to the right with the padding in
// front, and gives the column behind it.
func (c Canvas) Fit(x, y int, style Style, s string, w int, right bool) int {
	n := Width(s)
	if n > w {
		return c.Text(x, y, style, Fit(s, w))
	}
	if right {
		x = c.blank(x, y, style, w-n)
	}
	x = c.Text(x, y, style, s)
	if !right {
		x = c.blank(x, y, style, w-n)
	}
	return x
}

func (c Canvas) blank(x, y int, style Style, n int) int {
	return c.Text(x, y, style, strings.Repeat(" ", n))
}

// Fit cuts a text to w columns, with … for what is left out, and pads it.
func Fit(s string, w int) string {
	if w <= 0 {
		return ""
	}
	n := Width(s)
	if n <= w {
		return s + strings.Repeat(" ", w-n)
	}
	s = cut(s, w-1) + "…"
	return s + strings.Repeat(" ", max(w-Width(s), 0))
}

// FitRight is Fit with the padding in front, for numbers.
func FitRight(s string, w int) string {
	if n := Width(s); n < w {
		return strings.Repeat(" ", w-n) + s
	}
	return Fit(s, w)
}

// cut gives the longest start of s that takes at most w columns.
func cut(s string, w int) string {
	end := 0
	for end < len(s) {
		taken, _, n := character(s[end:])
		if w -= n; w < 0 {
			break
		}
		end += len(taken)
	}
	return s[:end]
}

// Window gives the part of s that shows column at within w columns, and how
// many columns are left out before it: a long text scrolls under its cursor.
func Window(s string, at, w int) (string, int) {
	if w <= 0 {
		return "", 0
	}
	skip := 0
	if at >= w {
		skip = at - w + 1
	}
	rest := s
	left := 0
	for left < skip && len(rest) > 0 {
		taken, _, n := character(rest)
		rest, left = rest[len(taken):], left+n
	}
	return cut(rest, w), left
}

// stand are the characters that stand for others of the same width where a
// terminal has ASCII alone. It is never written to.
var stand = map[rune]rune{
	'…': '~', '·': '.', '°': 'o', '×': 'x', '±': '+', 'Σ': 'S', '−': '-', '≥': '>', '≤': '<', '⊙': '.', '⊗': 'x', '√': 'V', '²': '2', '³': '3', '│': '|', '─': '-', '┌': '+', '┐': '+', '└': '+', '┘': '+',
	'⎡': '[', '⎢': '[', '⎣': '[', '⎤': ']', '⎥': ']', '⎦': ']', 'α': 'a', 'β': 'b', 'γ': 'g', 'μ': 'u', 'θ': 'O', '\u00a0': ' ', '\u202f': ' ', '\u2009': ' ',
}

// Seven leaves only ASCII in the frame; what has no stand-in becomes a question
// mark.
func (g *Grid) Seven() {
	g.more = nil
	for i, c := range g.cells {
		switch r, ok := stand[c.r]; {
		case c.r == 0:
			g.cells[i].r = '?'
		case c.r < utf8.RuneSelf:
		case ok:
			g.cells[i].r = r
		default:
			g.cells[i].r = '?'
		}
	}
}
