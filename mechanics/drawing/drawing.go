// Package drawing holds a drawing as plain data, shapes and texts on paper, and
// writes it as SVG, PDF, PNG and TikZ: one drawing for all of them. It knows no
// mechanics.
package drawing

import (
	"iter"
	"math"
)

// Vec is a place on the paper in points (1/72 in): X to the right, Y downwards.
type Vec struct{ X, Y float64 }

// Add is a + b.
func (a Vec) Add(b Vec) Vec { return Vec{a.X + b.X, a.Y + b.Y} }

// Sub is a - b.
func (a Vec) Sub(b Vec) Vec { return Vec{a.X - b.X, a.Y - b.Y} }

// Scale is k a.
func (a Vec) Scale(k float64) Vec { return Vec{k * a.X, k * a.Y} }

// Dot is a·b.
func (a Vec) Dot(b Vec) float64 { return a.X*b.X + a.Y*b.Y }

// Len is |a|.
func (a Vec) Len() float64 { return math.Hypot(a.X, a.Y) }

// Perp is a turned by a quarter, clockwise on the paper.
func (a Vec) Perp() Vec { return Vec{-a.Y, a.X} }

// Unit is a/|a|, and +X for a vector without length.
func (a Vec) Unit() Vec {
	n := a.Len()
	if n == 0 || math.IsInf(n, 0) || math.IsNaN(n) {
		return Vec{1, 0}
	}
	return Vec{a.X / n, a.Y / n}
}

// Tone is what a shape or a text stands for; a writer gives it a colour. No
// tone is told from another by colour alone: names and dashes say the same.
type Tone int

// The tones.
const (
	None  Tone = iota // not drawn
	Dark              // bodies, members, text
	Load              // known forces
	Found             // unknown forces
	Faint             // dimensions, hatching, rules
	Fill              // the inside of bodies
	Paper             // the inside of bars, rings and wheels
	Good              // a check that holds
	Bad               // one that does not
	Risk              // one that holds as typed, and not all over the ± of the inputs
)

// Arc is a part of the ellipse with the half axes e1 and e2, from an angle to another, the
// one at e1 being zero; a whole one has so many pieces.
func Arc(c, e1, e2 Vec, from, to, pieces float64) (pts []Vec) {
	n := max(4, int(math.Ceil(pieces*math.Abs(to-from)/(2*math.Pi))))
	pts = make([]Vec, 0, n+1)
	for i := range n + 1 {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(n))
		pts = append(pts, c.Add(e1.Scale(cos)).Add(e2.Scale(sin)))
	}
	return pts
}

// Shape is a polyline or a polygon.
type Shape struct {
	Pts    []Vec
	Closed bool
	Line   Tone
	Width  float64
	Dashed bool
	Fill   Tone
	Of     int  // 1 + the index of what it stands for, 0 of nothing
	Head   bool // the head of an arrow, its tip first
}

// Sides gives the ends of each side of the shape.
func (s *Shape) Sides() iter.Seq2[Vec, Vec] {
	return func(yield func(Vec, Vec) bool) {
		n := len(s.Pts)
		for i := 1; i < n; i++ {
			if !yield(s.Pts[i-1], s.Pts[i]) {
				return
			}
		}
		if s.Closed && n > 2 {
			yield(s.Pts[n-1], s.Pts[0])
		}
	}
}

// Style is a face of the text's font.
type Style int

// The styles.
const (
	Regular Style = iota
	Italic
	Bold
	BoldItalic
)

// Run is a piece of text in one style. Level is -1 for a subscript, 1 for a
// superscript.
type Run struct {
	Text  string
	Style Style
	Level int
}

// Text is runs on a baseline that begins at At.
type Text struct {
	At   Vec
	Runs []Run
	Size float64
	Tone Tone
	Of   int // as of a shape
}

// Drawing is shapes, in the order in which they are drawn, and texts over them.
type Drawing struct {
	Width, Height float64
	Shapes        []Shape
	Texts         []Text
	Title         string // for readers who do not see it
}

// drawn are the shapes that show, without a line where that has no width.
func (d *Drawing) drawn() (all []Shape) {
	for _, s := range d.Shapes {
		if s.Width <= 0 {
			s.Line = None
		}
		if len(s.Pts) > 0 && (s.Line != None || s.Fill != None) {
			all = append(all, s)
		}
	}
	return all
}

// Line draws a polyline.
func (d *Drawing) Line(tone Tone, width float64, pts ...Vec) {
	d.Shapes = append(d.Shapes, Shape{Pts: pts, Line: tone, Width: width})
}

// Area fills a polygon, with a line of this width round it.
func (d *Drawing) Area(fill, line Tone, width float64, pts ...Vec) {
	d.Shapes = append(d.Shapes, Shape{Pts: pts, Closed: true, Line: line, Width: width, Fill: fill})
}

// Write sets a text.
func (d *Drawing) Write(at Vec, size float64, tone Tone, runs ...Run) {
	d.Texts = append(d.Texts, Text{At: at, Runs: runs, Size: size, Tone: tone})
}

// Put draws another drawing, scaled by k, with its corner at the place given.
func (d *Drawing) Put(other Drawing, at Vec, k float64) {
	for _, s := range other.Shapes {
		pts := make([]Vec, len(s.Pts))
		for i, q := range s.Pts {
			pts[i] = at.Add(q.Scale(k))
		}
		s.Pts = pts
		s.Width *= k
		d.Shapes = append(d.Shapes, s)
	}
	for _, t := range other.Texts {
		t.At = at.Add(t.At.Scale(k))
		t.Size *= k
		d.Texts = append(d.Texts, t)
	}
}

// Bounds gives the box round everything drawn.
func (d *Drawing) Bounds() Box {
	b := Box{Low: Vec{math.Inf(1), math.Inf(1)}, High: Vec{math.Inf(-1), math.Inf(-1)}}
	for _, s := range d.Shapes {
		for _, q := range s.Pts {
			b = b.With(q.Sub(Vec{s.Width / 2, s.Width / 2})).With(q.Add(Vec{s.Width / 2, s.Width / 2}))
		}
	}
	for _, t := range d.Texts {
		tb := t.Box()
		b = b.With(tb.Low).With(tb.High)
	}
	if b.Low.X > b.High.X {
		return Box{}
	}
	return b
}

// Trim moves the drawing so that its bounds begin at the corner, with a margin,
// and sets its size.
func (d *Drawing) Trim(margin float64) {
	b := d.Bounds()
	d.Move(Vec{margin - b.Low.X, margin - b.Low.Y})
	d.Width, d.Height = b.High.X-b.Low.X+2*margin, b.High.Y-b.Low.Y+2*margin
}

// Move moves all that is drawn; no two shapes share their places.
func (d *Drawing) Move(by Vec) {
	for i := range d.Shapes {
		for k, q := range d.Shapes[i].Pts {
			d.Shapes[i].Pts[k] = q.Add(by)
		}
	}
	for i := range d.Texts {
		d.Texts[i].At = d.Texts[i].At.Add(by)
	}
}
