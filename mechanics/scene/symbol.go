package scene

import (
	"math"
	"slices"

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
	Rests   bool    // a body rests on it, where it is drawn as a bar with its outside

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

// places are given by their coordinates in turn.
func places(xy []float64) (pts []drawing.Vec) {
	for q := range slices.Chunk(xy, 2) {
		pts = append(pts, drawing.Vec{X: q[0], Y: q[1]})
	}
	return pts
}

func polygon(xy ...float64) Stroke { return Stroke{Pts: places(xy), Closed: true} }
func line(xy ...float64) Stroke    { return Stroke{Pts: places(xy)} }
func heavy(s Stroke) Stroke        { s.Heavy = true; return s }

// arc is a part of a circle, from an angle to another, clockwise from the ground on the
// right.
func arc(x, y, r, from, to float64) Stroke {
	return Stroke{Pts: drawing.Arc(drawing.Vec{X: x, Y: y}, drawing.Vec{X: r}, drawing.Vec{Y: r}, from, to, 24)}
}

func ring(x, y, r float64) Stroke {
	s := arc(x, y, r, 0, 2*math.Pi)
	s.Closed = true
	return s
}

// collar is a ring on an axle that takes thrust, at a place of its axis.
func collar(x float64) Stroke { return heavy(line(x, -7.5, x, 7.5)) }

// bearing is an axle's, with what tells it from others.
func bearing(strokes ...Stroke) *Symbol {
	return &Symbol{Strokes: strokes, Ground: 4.5, Half: 8, Axis: true, Flat: []string{`[=]`}, Steep: []string{"H"}}
}

// rod is what a slider or collar runs along, with that.
func rod(on Stroke) *Symbol {
	rails := []Stroke{line(-22, -1.8, 22, -1.8), line(-22, 1.8, 22, 1.8)}
	return &Symbol{Strokes: append(rails, on), Axis: true, Flat: []string{`[+]`}, Steep: []string{"+"}}
}

// wheel is a roller or a rocker, on ground so deep.
func wheel(ground float64, strokes ...Stroke) *Symbol {
	return &Symbol{Strokes: strokes, Ground: ground, Half: 12, Flat: []string{`(_)`, `///`}, Steep: []string{"O", "|"}}
}

func resting(s *Symbol) *Symbol { s.Rests = true; return s }

// pin is the ring of a pin at the place itself, of this radius.
const pinRadius = 2.2

var (
	pin    = ring(0, 0, pinRadius)
	sector = Stroke{Pts: append(places([]float64{0, 0}), arc(0, 0, 13, 0.3*math.Pi, 0.7*math.Pi).Pts...), Closed: true}
)

// symbols has a row for each kind of joint.
var symbols = map[string]*Symbol{
	"pin": {Strokes: []Stroke{polygon(0, 0, 7, 12, -7, 12), pin}, Ground: 12, Half: 12,
		Flat: []string{`/_\`, `///`}, Steep: []string{"<", "|"}},
	"roller":         resting(wheel(11, ring(0, 5.5, 5.5))),
	"rocker":         wheel(13, sector, pin),
	"smooth-surface": {Rests: true, Ground: 1, Half: 18, Flat: []string{`===`}, Steep: []string{"|"}},
	"rough-surface":  {Rests: true, Ground: 2.4, Half: 18, Rough: true, Flat: []string{`^^^`, `///`}, Steep: []string{"}", "|"}},
	"ball-and-socket": {Strokes: []Stroke{heavy(arc(0, 0, 6.5, 0.05*math.Pi, 0.95*math.Pi)), ring(0, 0, 4)}, Ground: 7.5, Half: 9,
		Flat: []string{`(@)`, `///`}, Steep: []string{"@", "|"}},
	"fixed":           {Half: 15, Flat: []string{`###`}, Steep: []string{"#"}},
	"journal-bearing": bearing(),
	"square-bearing":  bearing(line(-5, -4.5, -5, 4.5), line(5, -4.5, 5, 4.5)),
	"thrust-bearing":  bearing(collar(-10)),
	"hinge":           bearing(collar(-10), collar(10)),
	"slider":          rod(ring(0, 0, pinRadius+0.8)),
	"collar":          rod(polygon(-7, -5, 7, -5, 7, 5, -7, 5)),
}

// Symbols of what is no joint.
var (
	anchor  = &Symbol{Half: 8, Flat: []string{`###`}, Steep: []string{"#"}}
	contact = &Symbol{Ground: 2.4, Half: 18, Flat: []string{`===`}, Steep: []string{"|"}}
	pulley  = &Symbol{Strokes: []Stroke{ring(0, 0, 5), ring(0, 0, 1)}, Flat: []string{"O"}, Steep: []string{"O"}}
	weld    = &Symbol{Strokes: []Stroke{polygon(-3, -3, 3, -3, 3, 3, -3, 3)}, Flat: []string{"#"}, Steep: []string{"#"}}

	// EndOn is that of a support whose normal or axis points at the reader.
	EndOn = &Symbol{Strokes: []Stroke{ring(0, 0, 6), ring(0, 0, 3)}, Flat: []string{"(o)"}, Steep: []string{"(o)"}}
)
