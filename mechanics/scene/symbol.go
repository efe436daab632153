package scene

import (
	"math"

	"trivet/mechanics/drawing"
)

// Symbol is the sign of a support, in points of paper: x along the ground, y from the
// place down to it.
type Symbol struct {
	Strokes []Stroke
	Ground  float64 // how deep the ground lies, which is hatched
	Half    float64 // half its length; 0 where there is none
	Axis    bool    // it lies along an axis, with its ground on both sides
	Rough   bool    // the ground has teeth

	// Flat stands above or below its place where there is nothing but characters, a row a
	// text, and Steep beside it, a column a character.
	Flat, Steep []string
}

// Stroke is a part of a symbol: a polyline, or a polygon that is filled.
type Stroke struct {
	Pts    []drawing.Vec
	Closed bool
	Heavy  bool
}

func polygon(pts ...drawing.Vec) Stroke { return Stroke{Pts: pts, Closed: true} }

func line(heavy bool, pts ...drawing.Vec) Stroke { return Stroke{Pts: pts, Heavy: heavy} }

// arc is a part of a circle, from an angle to another, clockwise from the ground on the
// right.
func arc(x, y, r, from, to float64) []drawing.Vec {
	return drawing.Arc(drawing.Vec{X: x, Y: y}, drawing.Vec{X: r}, drawing.Vec{Y: r}, from, to, 24)
}

func ring(x, y, r float64) Stroke { return polygon(arc(x, y, r, 0, 2*math.Pi)...) }

// pin is the ring of a pin at the place itself.
const pinRadius = 2.2

var (
	pin    = ring(0, 0, pinRadius)
	rails  = []Stroke{line(false, drawing.Vec{X: -22, Y: -1.8}, drawing.Vec{X: 22, Y: -1.8}), line(false, drawing.Vec{X: -22, Y: 1.8}, drawing.Vec{X: 22, Y: 1.8})}
	sleeve = polygon(drawing.Vec{X: -7, Y: -5}, drawing.Vec{X: 7, Y: -5}, drawing.Vec{X: 7, Y: 5}, drawing.Vec{X: -7, Y: 5})
	rocker = polygon(append([]drawing.Vec{{}}, arc(0, 0, 13, 0.3*math.Pi, 0.7*math.Pi)...)...)
)

// collar is a ring on an axle that takes thrust, at a place of its axis.
func collar(x float64) Stroke {
	return line(true, drawing.Vec{X: x, Y: -7.5}, drawing.Vec{X: x, Y: 7.5})
}

// symbols has a row for each kind of joint.
var symbols = map[string]*Symbol{
	"pin": {Strokes: []Stroke{polygon(drawing.Vec{}, drawing.Vec{X: 7, Y: 12}, drawing.Vec{X: -7, Y: 12}), pin}, Ground: 12, Half: 12,
		Flat: []string{`/_\`, `///`}, Steep: []string{"<", "|"}},
	"roller": {Strokes: []Stroke{ring(0, 5.5, 5.5)}, Ground: 11, Half: 12,
		Flat: []string{`(_)`, `///`}, Steep: []string{"O", "|"}},
	"rocker": {Strokes: []Stroke{rocker, pin}, Ground: 13, Half: 12,
		Flat: []string{`(_)`, `///`}, Steep: []string{"O", "|"}},
	"smooth-surface": {Ground: 1, Half: 18, Flat: []string{`===`}, Steep: []string{"|"}},
	"rough-surface":  {Ground: 2.4, Half: 18, Rough: true, Flat: []string{`^^^`, `///`}, Steep: []string{"}", "|"}},
	"ball-and-socket": {Strokes: []Stroke{line(true, arc(0, 0, 6.5, 0.05*math.Pi, 0.95*math.Pi)...), ring(0, 0, 4)}, Ground: 7.5, Half: 9,
		Flat: []string{`(@)`, `///`}, Steep: []string{"@", "|"}},
	"fixed":           {Half: 15, Flat: []string{`###`}, Steep: []string{"#"}},
	"journal-bearing": {Ground: 4.5, Half: 8, Axis: true, Flat: []string{`[=]`}, Steep: []string{"H"}},
	"square-bearing":  {Strokes: []Stroke{line(false, drawing.Vec{X: -5, Y: -4.5}, drawing.Vec{X: -5, Y: 4.5}), line(false, drawing.Vec{X: 5, Y: -4.5}, drawing.Vec{X: 5, Y: 4.5})}, Ground: 4.5, Half: 8, Axis: true, Flat: []string{`[=]`}, Steep: []string{"H"}},
	"thrust-bearing":  {Strokes: []Stroke{collar(-10)}, Ground: 4.5, Half: 8, Axis: true, Flat: []string{`[=]`}, Steep: []string{"H"}},
	"hinge":           {Strokes: []Stroke{collar(-10), collar(10)}, Ground: 4.5, Half: 8, Axis: true, Flat: []string{`[=]`}, Steep: []string{"H"}},
	"slider":          {Strokes: append(rails, ring(0, 0, pinRadius+0.8)), Axis: true, Flat: []string{`[+]`}, Steep: []string{"+"}},
	"collar":          {Strokes: append(rails, sleeve), Axis: true, Flat: []string{`[+]`}, Steep: []string{"+"}},
}

// Symbols of what is no joint.
var (
	anchor  = &Symbol{Half: 8, Flat: []string{`###`}, Steep: []string{"#"}}
	contact = &Symbol{Ground: 2.4, Half: 18, Flat: []string{`===`}, Steep: []string{"|"}}
	pulley  = &Symbol{Strokes: []Stroke{ring(0, 0, 5), ring(0, 0, 1)}, Flat: []string{"O"}, Steep: []string{"O"}}
	weld    = &Symbol{Strokes: []Stroke{polygon(drawing.Vec{X: -3, Y: -3}, drawing.Vec{X: 3, Y: -3}, drawing.Vec{X: 3, Y: 3}, drawing.Vec{X: -3, Y: 3})}, Flat: []string{"#"}, Steep: []string{"#"}}

	// EndOn is that of a support whose normal or axis points at the reader.
	EndOn = &Symbol{Strokes: []Stroke{ring(0, 0, 6), ring(0, 0, 3)}, Flat: []string{"(o)"}, Steep: []string{"(o)"}}
)
