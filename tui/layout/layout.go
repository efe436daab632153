// Package layout divides the screen among the panes. It is a pure function of
// the size and of what is asked for.
package layout

import "image"

// Pane is a pane of the workbench.
type Pane int

// The panes, in the order of their numbers on screen and of the tab key.
const (
	Given Pane = iota
	Points
	Lines
	Supports // joints, bodies, couples and distributed loads
	Unknowns
	System
	Picture
	Panes // how many
)

// Args is what the layout depends on.
type Args struct {
	W, H  int
	Side  Pane       // what shows in the shared place where there is one: Given, Supports, System or Picture
	Large bool       // one pane has all the room
	Focus Pane       // that pane
	Bare  bool       // nothing is supported: the pane of supports stands only where there is room enough, or where it has the keys
	Want  [Panes]int // rows that each input pane would fill first
	More  [Panes]int // rows that it would fill after that
}

// Screen is where everything is. A pane that does not show has an empty
// rectangle. Walls are the columns between panes, one wide.
type Screen struct {
	TooSmall bool
	Shared   bool            // Side has a place that others could have
	Top      image.Rectangle // file and verdict
	Foot     image.Rectangle // the cell, its caret or message, the keys
	Panes    [Panes]image.Rectangle
	Walls    []image.Rectangle
}

// The smallest screen that is divided, and the lines round the panes.
const (
	MinW, MinH = 60, 16
	topLines   = 1
	Foot       = 3 // lines at the bottom
)

// Widths from which another arrangement is worth it.
const (
	twoColumns   = 110 // inputs left, results right, everything shows
	threeColumns = 170 // inputs, system, picture
	tallEnough   = 32  // below, four input panes have too few rows each
)

// Arrange divides the screen.
func Arrange(a Args) Screen {
	var s Screen
	if a.W < MinW || a.H < MinH {
		s.TooSmall = true
		return s
	}
	s.Top = image.Rect(0, 0, a.W, topLines)
	s.Foot = image.Rect(0, a.H-Foot, a.W, a.H)
	body := image.Rect(0, topLines, a.W, a.H-Foot)
	switch {
	case a.Large && a.Focus >= 0 && a.Focus < Panes:
		s.Panes[a.Focus] = body
	case a.W >= threeColumns && a.H >= tallEnough:
		left, rest := s.split(body, a.W*36/100)
		middle, right := s.split(rest, rest.Dx()*52/100)
		s.stack(left, a, Given, Points, Lines, Supports, Unknowns)
		s.Panes[System], s.Panes[Picture] = middle, right
	case a.W >= twoColumns && a.H >= tallEnough:
		left, right := s.split(body, a.W*53/100)
		if a.Bare && a.Focus != Supports {
			s.stack(left, a, Given, Points, Lines, Unknowns)
		} else {
			s.stack(left, a, Given, Points, Lines, Supports, Unknowns)
		}
		cut := right.Min.Y + right.Dy()*52/100
		s.Panes[System] = image.Rect(right.Min.X, right.Min.Y, right.Max.X, cut)
		s.Panes[Picture] = image.Rect(right.Min.X, cut, right.Max.X, right.Max.Y)
	default:
		side := a.Side
		if side != Given && side != Supports && side != Picture {
			side = System
		}
		share := 58
		if side == Supports {
			share = 46 // its rows have the most cells
		}
		s.Shared = true
		left, right := s.split(body, a.W*share/100)
		s.stack(left, a, Points, Lines, Unknowns)
		s.Panes[side] = right
	}
	return s
}

// split puts a wall at the column x of the rectangle.
func (s *Screen) split(r image.Rectangle, x int) (left, right image.Rectangle) {
	x += r.Min.X
	s.Walls = append(s.Walls, image.Rect(x, r.Min.Y, x+1, r.Max.Y))
	return image.Rect(r.Min.X, r.Min.Y, x, r.Max.Y), image.Rect(x+1, r.Min.Y, r.Max.X, r.Max.Y)
}

// Lines of a pane that are not rows: its rule and its column heads.
const Frame = 2

// stack puts panes one above the other: each gets a row, then the rows it wants
// go round in turn, then the rows it could fill beside, and what is left after
// that goes to all alike.
func (s *Screen) stack(r image.Rectangle, a Args, panes ...Pane) {
	heights := make([]int, len(panes))
	left := r.Dy()
	for i := range heights {
		heights[i] = Frame + 1
		left -= Frame + 1
	}
	most := a.Want
	for range 2 {
		for given := true; left > 0 && given; {
			given = false
			for i, p := range panes {
				if left > 0 && heights[i] < Frame+most[p] {
					heights[i]++
					left--
					given = true
				}
			}
		}
		for p := range most {
			most[p] += a.More[p]
		}
	}
	for i := 0; left > 0; i++ {
		// The last pane first: blank rows are least in the way below.
		heights[len(panes)-1-i%len(panes)]++
		left--
	}
	y := r.Min.Y
	for i, p := range panes {
		s.Panes[p] = image.Rect(r.Min.X, y, r.Max.X, y+heights[i])
		y += heights[i]
	}
}
