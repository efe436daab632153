package picture

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
	"trivet/tui/grid"
)

// plainMarks are what a terminal of plain characters has in place of others.
var plainMarks = strings.NewReplacer("μ", "mu", "β", "beta", "°", "deg", "·", "*", "−", "-")

// characters draws the shapes in characters: lines by their slope, the heads of arrows by
// their direction, and symbols by their texts.
func (p *pen) characters() {
	var heads []func() // which no line hides
	for i := range p.d.Shapes {
		s := &p.d.Shapes[i]
		t := p.thing(s.Of)
		b := stroke{look: p.look(s.Of, max(s.Line, s.Fill)), dashed: s.Dashed, plain: t == nil, lit: t != nil && p.lit(t.Ref) && t.Kind.Member()}
		switch {
		case t != nil && p.symbolic(t) || s.Line == drawing.Paper || s.Line == drawing.Fill:
		case s.Head:
			neck := s.Pts[1].Add(s.Pts[2]).Scale(0.5)
			p.slope(neck, s.Pts[0], b)
			heads = append(heads, func() { p.head(s.Pts[0], s.Pts[0].Sub(neck), t, b.look) })
		default:
			for from, to := range s.Sides() {
				p.slope(from, to, b)
			}
		}
	}
	for _, head := range heads {
		head()
	}
	for i := range p.scene.Things {
		if t := &p.scene.Things[i]; p.symbolic(t) {
			p.symbol(t, p.d.Place(t.At[0]), p.look(i+1, t.Tone))
		}
	}
}

// symbolic tells what is drawn with symbols of its own in characters.
func (p *pen) symbolic(t *scene.Thing) bool {
	return (t.Kind == scene.Support || signs[t.Kind] != nil) && (t.Kind != scene.Couple || p.d.Turns(t)) && (t.Kind != scene.Centre || t.Along == r3.Vec{})
}

// set puts a character into a cell.
func (p *pen) set(x, y int, c byte, look grid.Style) {
	if x >= 0 && y >= 0 && x < p.c.W() && y < p.c.H() && c != ' ' {
		p.dots[y*p.c.W()+x], p.looks[y*p.c.W()+x] = c, look
	}
}

// cell is the one that a place lies in; ok is false outside the canvas.
func (p *pen) cell(q drawing.Vec) (x, y int, ok bool) {
	if !p.size().Holds(q) {
		return 0, 0, false
	}
	return int(q.X) / dotsX, int(q.Y) / dotsY, true
}

// hollow are the heads of the arrows of what is sought.
var hollow = strings.NewReplacer("^", "A", "v", "V", "<", "{", ">", "}")

// head draws the head of a thing's arrow.
func (p *pen) head(tip, u drawing.Vec, t *scene.Thing, look grid.Style) {
	c := "v"
	switch {
	case math.Abs(u.X) > math.Abs(u.Y) && u.X > 0:
		c = ">"
	case math.Abs(u.X) > math.Abs(u.Y):
		c = "<"
	case u.Y < 0:
		c = "^"
	}
	if t != nil && t.Tone == drawing.Found {
		c = hollow.Replace(c)
	}
	if x, y, ok := p.cell(tip.Sub(u.Unit())); ok {
		p.set(x, y, c[0], look)
	}
}

// slope draws a line with one character a column, or a row where it is steep.
func (p *pen) slope(from, to drawing.Vec, b stroke) {
	a, c, ok := p.clip(from, to)
	if !ok {
		return
	}
	// In cells from here on.
	ax, ay, bx, by := a.X/dotsX, a.Y/dotsY, c.X/dotsX, c.Y/dotsY
	first, last := ay, by
	if math.Abs(bx-ax) >= math.Abs(by-ay) {
		first, last = ax, bx
	}
	n, way := int(math.Abs(math.Floor(last)-math.Floor(first))), 1.0
	if last < first {
		way = -1
	}
	const dash, period = 2, 3
	for i := range n + 1 {
		if b.dashed && i%period >= dash {
			continue
		}
		t := 0.0
		if last != first {
			middle := math.Floor(first) + way*float64(i) + 0.5
			t = math.Max(0, math.Min(1, (middle-first)/(last-first)))
		}
		x, y := ax+t*(bx-ax), ay+t*(by-ay)
		in := y - math.Floor(y)
		if b.plain {
			in = 0.5
		}
		char := slopeChar(bx-ax, by-ay, in)
		if b.lit {
			char = '*'
		}
		p.set(int(x), int(y), char, b.look)
	}
}

// slopeChar gives the character for a line that runs dx, dy (downwards) in cells through
// the height y of its cell.
func slopeChar(dx, dy, y float64) byte {
	// Slopes in rows a column: a cell is twice as high as wide.
	const level, flat, steep = 0.04, 0.4, 2.0
	r := math.Abs(dy) / math.Max(math.Abs(dx), 1e-9)
	falls := dx*dy > 0
	switch {
	case r > steep:
		return '|'
	case r > flat && falls:
		return '\\'
	case r > flat:
		return '/'
	case r < level:
		return '-'
	case y < 0.25 && falls:
		return '`'
	case y < 0.25:
		return '\''
	case y < 0.6:
		return '-'
	case y < 0.8:
		return '.'
	}
	return '_'
}

// signs are the characters about a place, but those of supports.
var signs = map[scene.Kind][]string{
	scene.Pin: {"o"}, scene.Dot: {"o"}, scene.Centre: {"+"},
	scene.Water:  {"V", "", ""},
	scene.Couple: {".->", "|  ", "'--"}, // over the top to the right
}

// toTheLeft is a couple over the top to the left.
var toTheLeft = []string{"<-.", "  |", "--'"}

// symbol puts the characters of a symbol at its place.
func (p *pen) symbol(t *scene.Thing, at drawing.Vec, look grid.Style) {
	x, y, ok := p.cell(at)
	if !ok {
		return
	}
	sign := signs[t.Kind]
	if t.Kind == scene.Couple && r3.Dot(t.Along, p.d.Toward()) > 0 {
		sign = toTheLeft
	}
	up := p.d.Place(r3.Add(t.At[0], t.Along)).Sub(at).Unit()
	switch s := t.Symbol; {
	case s == nil:
		if sign = slices.Clone(sign); t.Tone == drawing.Found {
			for i := range sign {
				sign[i] = hollow.Replace(sign[i])
			}
		}
		p.rows(x, y-len(sign)/2-1, 1, sign, look)
	case !s.Axis && math.Abs(up.X) > math.Abs(up.Y):
		p.columns(x, y, -int(math.Copysign(1, up.X)), s.Steep, look)
	case !s.Axis && up.Y > 0:
		p.rows(x, y, -1, s.Flat, look)
	default:
		p.rows(x, y, 1, s.Flat, look)
	}
}

// rows puts texts below (side 1) or above a cell.
func (p *pen) rows(x, y, side int, texts []string, look grid.Style) {
	for i, text := range texts {
		for k := range len(text) {
			p.set(x-len(text)/2+k, y+side*(i+1), text[k], look)
		}
	}
}

// columns puts characters to the right (side 1) or left of a cell; what is a wall is three
// high.
func (p *pen) columns(x, y, side int, texts []string, look grid.Style) {
	for i, c := range texts {
		if c == "<" && side > 0 {
			c = ">"
		}
		rows := 1
		if c == "|" || c == "#" {
			rows = 3
		}
		for r := range rows {
			p.set(x+side*(i+1), y+r-rows/2, c[0], look)
		}
	}
}
