// Package figure sets a scene on paper or on a screen: it projects it, draws symbols and
// arrows in the sizes of the medium, and places the labels so that none lies on another
// or on a stroke. What it gives is a drawing, which has a writer for each format.
package figure

import (
	"math"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// Medium is what a scene is set on. Sizes of symbols and letters do not shrink with the
// figure, so they belong to the medium.
type Medium struct {
	Width, Height float64 // the room for the figure, in units of the medium
	Scale         float64 // units a metre; 0 fits the figure into the room
	Zoom          float64 // of the scale that fits; 0 is 1
	Point         float64 // a point of paper (1/72 in) in units: the size of symbols
	Fine          float64 // the smallest gap that shows
	Arrows        Arrows
	Bounded       bool        // nothing may stand outside the room, which has its middle at the figure's
	Beside        drawing.Vec // the margin of a bounded room in which labels alone stand
	Triad         bool        // the axes are drawn

	// Measure gives the size of a text and how far its baseline lies below its top.
	Measure func(runs []drawing.Run, small bool) (width, height, rise float64)
	Doubt   string // stands behind the names of forces that are sought
	// Selected tells the things whose labels stand in brackets and are never left out.
	Selected func(*scene.Thing) bool
	Cell     drawing.Vec // a text begins at a corner of cells of this size; zero where it may begin anywhere
}

// Arrows says how long the arrows of forces are.
type Arrows int

// The lengths of arrows.
const (
	Legible Arrows = iota // longer where the force is larger, none too short to see
	ToScale               // in proportion to the force
	Equal                 // all alike
)

// Sizes of letters on paper, in points.
const (
	textSize  = 9.5
	smallSize = 8.5
)

// Paper is the medium of a page, with room for a figure of so many points of width and
// height.
func Paper(width, height float64) Medium {
	return Medium{Width: width, Height: height, Point: 1, Fine: 1.5, Triad: true, Measure: func(runs []drawing.Run, small bool) (float64, float64, float64) {
		t := drawing.Text{Runs: runs, Size: paperSize(small)}
		b := t.Box()
		return b.High.X - b.Low.X, b.High.Y - b.Low.Y, -b.Low.Y
	}}
}

func paperSize(small bool) float64 {
	if small {
		return smallSize
	}
	return textSize
}

// arrow is the length of an arrow whose force is a share of the largest.
func (m *Medium) arrow(share float64) float64 {
	const shortest, longest = 24, 44 // points
	switch m.Arrows {
	case ToScale:
		return m.Point * longest * share
	case Equal:
		share = 0.5
	}
	return m.Point * (shortest + (longest-shortest)*math.Min(1, share))
}
