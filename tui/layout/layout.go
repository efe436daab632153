// Package layout divides the screen among the panes. It is a pure function of
// the size and of what is asked for.
package layout

import "image"

// Pane is a pane of the workbench.
type Pane int

// The panes, in the order in which keys go from one to the next. Those before
// System take input; System and those behind the picture are read: the results.
const (
	Given Pane = iota
	Points
	Lines
	Supports // joints, bodies, couples and distributed loads
	Unknowns
	Sheet // its title, statement, plane, units and the like
	System
	Picture
	Checks
	Working
	HandSolution
	Ranges
	Limits
	Panes // how many
)

// Results are the panes of results, in the order in which they take turns in a
// place that they share.
var results = [...]Pane{System, Checks, Working, HandSolution, Ranges, Limits}

// Result tells the panes of results from the others.
func (p Pane) Result() bool { return p == System || p > Picture && p < Panes }

// Third tells those that take turns in the third place of results, where System
// and Checks have one each.
func (p Pane) Third() bool { return p > Checks && p < Panes }

// next is the result so many turns on, among those that may take its place.
func (p Pane) next(by int, among func(Pane) bool) Pane {
	var of []Pane
	at := 0
	for _, r := range results {
		if among(r) {
			if r == p {
				at = len(of)
			}
			of = append(of, r)
		}
	}
	return of[((at+by)%len(of)+len(of))%len(of)]
}

// Args is what the layout depends on.
type Args struct {
	W, H int
	Turns
	Rows [Panes]int // of each input pane
}

// stands tells which panes of cells show: the sheet's settings while they are worked
// on, in place of all others; givens and supports where there are any, or when asked for.
func (a Args) stands() (panes []Pane) {
	if a.Focus == Sheet {
		return []Pane{Sheet}
	}
	for p := Given; p < Sheet; p++ {
		if p != Given && p != Supports || a.Rows[p] > 0 || a.Focus == p {
			panes = append(panes, p)
		}
	}
	return panes
}

// Screen is where everything is. A pane that does not show has an empty
// rectangle. Walls are the columns between panes, one wide.
type Screen struct {
	TooSmall bool
	Shared   Sharing         // which panes take turns in a place
	Top      image.Rectangle // title and verdict, the settings and the file
	Strip    image.Rectangle // what it comes to
	Foot     image.Rectangle // the cell and what is wrong with it, what can be done here
	Panes    [Panes]image.Rectangle
	Walls    []image.Rectangle
}

// Sharing says which panes take turns in a place.
type Sharing int

// The ways of sharing.
const (
	NoTurns    Sharing = iota // one pane has all the room
	SideTurns                 // the picture or a result: Side
	ResultTurn                // the results: Turn
	ThirdTurn                 // the results but System and Checks: Third
)

// The smallest screen that is divided, and the lines round the panes.
const (
	MinW, MinH = 60, 16
	topLines   = 2
	strip      = 1
	Foot       = 3 // lines at the bottom
)

// Widths from which another arrangement is worth it.
const (
	twoColumns   = 110 // cells left, the picture and a result right
	threeColumns = 170 // cells, system and checks, the picture and another result
	tallEnough   = 32  // below, the picture and a result have too few rows each
)

// Shares of a width or a height, in hundredths.
const (
	cellsOfTwo, cellsOfThree = 54, 34
	cellsAlone               = 65 // beside the picture of a small screen, which has a third
	cellsBeside              = 50 // beside a result there, whose lines are longer
	resultsOfRest            = 47 // the middle column of what the cells leave
	pictureOf                = 58 // over a result
	systemOf                 = 58 // over the checks
)

// shown gives the results that take turns, the first where another is named.
func (a Args) shown() (turn, third Pane) {
	turn, third = a.Turn, a.Third
	if !turn.Result() {
		turn = System
	}
	if !third.Third() {
		third = Limits
	}
	return turn, third
}

// Arrange divides the screen.
func Arrange(a Args) Screen {
	var s Screen
	if a.W < MinW || a.H < MinH {
		s.TooSmall = true
		return s
	}
	s.Top = image.Rect(0, 0, a.W, topLines)
	s.Foot = image.Rect(0, a.H-Foot, a.W, a.H)
	s.Strip = image.Rect(0, a.H-Foot-strip, a.W, a.H-Foot)
	body := image.Rect(0, topLines, a.W, a.H-Foot-strip)
	turn, third := a.shown()
	switch {
	case a.Large && a.Focus >= 0 && a.Focus < Panes:
		s.Panes[a.Focus] = body
	case a.W >= threeColumns && a.H >= tallEnough:
		left, rest := s.split(body, a.W*cellsOfThree/100)
		middle, right := s.split(rest, rest.Dx()*resultsOfRest/100)
		s.stack(left, a)
		s.Shared = ThirdTurn
		s.Panes[System], s.Panes[Checks] = halves(middle, systemOf)
		s.Panes[Picture], s.Panes[third] = halves(right, pictureOf)
	case a.W >= twoColumns && a.H >= tallEnough:
		left, right := s.split(body, a.W*cellsOfTwo/100)
		s.stack(left, a)
		s.Shared = ResultTurn
		s.Panes[Picture], s.Panes[turn] = halves(right, pictureOf)
	default:
		side, share := a.Side, cellsAlone
		if side != Picture {
			side, share = turn, cellsBeside
		}
		s.Shared = SideTurns
		left, right := s.split(body, a.W*share/100)
		s.stack(left, a)
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

// halves cuts a rectangle in two, the upper of so many hundredths.
func halves(r image.Rectangle, share int) (upper, lower image.Rectangle) {
	cut := r.Min.Y + r.Dy()*share/100
	return image.Rect(r.Min.X, r.Min.Y, r.Max.X, cut), image.Rect(r.Min.X, cut, r.Max.X, r.Max.Y)
}

// Frame is the lines of a pane that are not rows: its head, with those of its columns.
const Frame = 1

// stack puts the panes of cells one above the other: each gets a row, then the rows it
// has go round in turn, then a blank line below each. What is left stays blank below.
func (s *Screen) stack(r image.Rectangle, a Args) {
	panes := a.stands()
	heights := make([]int, len(panes))
	left := r.Dy()
	for i := range heights {
		heights[i] = Frame + 1
		left -= Frame + 1
	}
	for given := true; left > 0 && given; {
		given = false
		for i, p := range panes {
			if left > 0 && heights[i] < Frame+a.Rows[p] {
				heights[i]++
				left--
				given = true
			}
		}
	}
	for i := range panes {
		if left > 0 {
			heights[i]++
			left--
		}
	}
	heights[len(panes)-1] += max(left, 0)
	y := r.Min.Y
	for i, p := range panes {
		s.Panes[p] = image.Rect(r.Min.X, y, r.Max.X, y+heights[i])
		y += heights[i]
	}
}
