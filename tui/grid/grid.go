// Package grid composes a frame in a plain grid of cells: each holds a
// character and a style number. It becomes one string of lines at the end,
// with one pair of escape sequences for a run of equal style.
package grid

import (
	"image"
	"strings"
	"unicode/utf8"
)

// Style is an index into the styles the frame is rendered with; 0 is plain.
type Style uint8

// Sequences are what a style writes before and after its run.
type Sequences struct{ Prefix, Suffix string }

type cell struct {
	r     rune // 0 where a wide character to the left covers the cell
	style Style
}

// Grid is a frame of W by H cells.
type Grid struct {
	W, H  int
	cells []cell
	more  map[int]string // characters that are more than one rune, by cell
}

// New makes a frame of blanks.
func New(w, h int) *Grid {
	g := &Grid{W: max(w, 0), H: max(h, 0)}
	g.cells = make([]cell, g.W*g.H)
	for i := range g.cells {
		g.cells[i].r = ' '
	}
	return g
}

// Canvas is a rectangle of a frame; what is drawn outside it is cut off.
type Canvas struct {
	grid *Grid
	rect image.Rectangle
}

// All is the whole frame.
func (g *Grid) All() Canvas { return Canvas{g, image.Rect(0, 0, g.W, g.H)} }

// In gives a part of a canvas, in the canvas's own coordinates.
func (c Canvas) In(r image.Rectangle) Canvas {
	return Canvas{c.grid, r.Add(c.rect.Min).Intersect(c.rect)}
}

// W is the width of the canvas.
func (c Canvas) W() int { return c.rect.Dx() }

// H is the height of the canvas.
func (c Canvas) H() int { return c.rect.Dy() }

// Set puts a narrow rune into a cell.
func (c Canvas) Set(x, y int, r rune, s Style) {
	if x < 0 || y < 0 || x >= c.W() || y >= c.H() {
		return
	}
	c.put(x, y, r, s)
}

func (c Canvas) put(x, y int, r rune, s Style) {
	g := c.grid
	i := (c.rect.Min.Y+y)*g.W + c.rect.Min.X + x
	// Half of a wide character cannot stay.
	if g.cells[i].r == 0 && i > 0 {
		g.cells[i-1].r = ' '
	}
	if i+1 < len(g.cells) && g.cells[i+1].r == 0 && r != 0 {
		g.cells[i+1].r = ' '
	}
	if g.more != nil {
		delete(g.more, i)
	}
	g.cells[i] = cell{r, s}
}

// Paint gives a run of cells another style and keeps what they hold.
func (c Canvas) Paint(x, y, n int, s Style) {
	for i := max(x, 0); i < min(x+n, c.W()); i++ {
		if y >= 0 && y < c.H() {
			c.grid.cells[(c.rect.Min.Y+y)*c.grid.W+c.rect.Min.X+i].style = s
		}
	}
}

// Copy puts another frame into the canvas, from its upper left corner.
func (c Canvas) Copy(g *Grid) {
	for y := range min(c.H(), g.H) {
		for x := range min(c.W(), g.W) {
			i := y*g.W + x
			c.put(x, y, g.cells[i].r, g.cells[i].style)
			if s, ok := g.more[i]; ok {
				c.keep(x, y, s)
			}
		}
	}
}

// Fill covers the canvas with one rune.
func (c Canvas) Fill(r rune, s Style) {
	for y := range c.H() {
		for x := range c.W() {
			c.put(x, y, r, s)
		}
	}
}

// Text writes s at x, y and gives the column after it. Characters that would
// not fit whole are left out; control characters show as a dot, so that no
// text can steer the terminal.
func (c Canvas) Text(x, y int, style Style, s string) int {
	if y < 0 || y >= c.H() {
		return x
	}
	for len(s) > 0 {
		if plain(s) {
			if x >= 0 && x < c.W() {
				c.put(x, y, rune(s[0]), style)
			}
			x, s = x+1, s[1:]
			continue
		}
		taken, shows, w := character(s)
		s = s[len(taken):]
		if w <= 0 {
			continue
		}
		if x >= 0 && x+w <= c.W() {
			r, n := utf8.DecodeRuneInString(shows)
			c.put(x, y, r, style)
			if n < len(shows) {
				c.keep(x, y, shows)
			}
			for k := 1; k < w; k++ {
				c.put(x+k, y, 0, style)
				c.grid.cells[(c.rect.Min.Y+y)*c.grid.W+c.rect.Min.X+x].r = r
			}
		}
		x += w
	}
	return x
}

func (c Canvas) keep(x, y int, cluster string) {
	if c.grid.more == nil {
		c.grid.more = map[int]string{}
	}
	c.grid.more[(c.rect.Min.Y+y)*c.grid.W+c.rect.Min.X+x] = cluster
}

// Clean gives a text as a grid would show it, in the same columns, for what does
// not go through one.
func Clean(s string) string {
	var b strings.Builder
	for len(s) > 0 {
		if plain(s) {
			b.WriteByte(s[0])
			s = s[1:]
			continue
		}
		taken, shows, _ := character(s)
		b.WriteString(shows)
		s = s[len(taken):]
	}
	return b.String()
}
