package picture

import (
	"image"
	"math"
)

// Drag is a button of the mouse held down in the picture.
type Drag struct {
	At    image.Point
	Moved bool
}

// The turn for a column and a row that the mouse is dragged; a cell is twice as
// high as wide.
const (
	dragTurn = math.Pi / 60
	dragTilt = math.Pi / 30
)

// Drag turns the picture with the mouse, as if one held the thing itself; one in its plane has one
// view.
func (c *Camera) Drag(d Drag, to image.Point, planar bool) *Drag {
	by := to.Sub(d.At)
	if by != (image.Point{}) && !planar {
		c.TurnBy(-dragTurn*float64(by.X), dragTilt*float64(by.Y))
	}
	return &Drag{At: to, Moved: d.Moved || by != image.Point{}}
}
