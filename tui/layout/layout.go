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

// Next is the result so many turns on, among those that may take its place.
func (p Pane) Next(by int, among func(Pane) bool) Pane {
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
	W, H  int
	Side  Pane       // what shows in the one place beside the cells of a small screen: Given, Supports, Picture or a result
	Turn  Pane       // the result that shows where there is one place for results
	Third Pane       // the one beside System and Checks, where there are three
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
	Shared   Sharing         // which panes take turns in a place
	Top      image.Rectangle // file and verdict
	Foot     image.Rectangle // the cell, its caret or message, the keys
	Panes    [Panes]image.Rectangle
	Walls    []image.Rectangle
}

// Sharing says which panes take turns in a place.
type Sharing int

// The ways of sharing.
const (
	NoTurns    Sharing = iota // one pane has all the room
	SideTurns                 // a result, the picture, the supports, the givens: Side
	ResultTurn                // the results: Turn
	ThirdTurn                 // the results but System and Checks: Third
)

// The smallest screen that is divided, and the lines round the panes.
const (
	MinW, MinH = 60, 16
	topLines   = 1
	Foot       = 3 // lines at the bottom
)

// Widths from which another arrangement is worth it.
const (
	twoColumns   = 110 // inputs left, results right, everything shows
	threeColumns = 170 // inputs, system and checks, picture and another result
	tallEnough   = 32  // below, four input panes have too few rows each
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
	body := image.Rect(0, topLines, a.W, a.H-Foot)
	turn, third := a.shown()
	switch {
	case a.Large && a.Focus >= 0 && a.Focus < Panes:
		s.Panes[a.Focus] = body
	case a.W >= threeColumns && a.H >= tallEnough:
		left, rest := s.split(body, a.W*36/100)
		middle, right := s.split(rest, rest.Dx()*52/100)
		s.stack(left, a, Given, Points, Lines, Supports, Unknowns)
		s.Shared = ThirdTurn
		s.Panes[System], s.Panes[Checks] = halves(middle, 58)
		s.Panes[Picture], s.Panes[third] = halves(right, 58)
	case a.W >= twoColumns && a.H >= tallEnough:
		left, right := s.split(body, a.W*53/100)
		if a.Bare && a.Focus != Supports {
			s.stack(left, a, Given, Points, Lines, Unknowns)
		} else {
			s.stack(left, a, Given, Points, Lines, Supports, Unknowns)
		}
		s.Shared = ResultTurn
		s.Panes[turn], s.Panes[Picture] = halves(right, 52)
	default:
		side := a.Side
		if side != Given && side != Supports && side != Picture {
			side = turn
		}
		share := 58
		if side == Supports {
			share = 46 // its rows have the most cells
		}
		s.Shared = SideTurns
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

// halves cuts a rectangle in two, the upper of so many hundredths.
func halves(r image.Rectangle, share int) (upper, lower image.Rectangle) {
	cut := r.Min.Y + r.Dy()*share/100
	return image.Rect(r.Min.X, r.Min.Y, r.Max.X, cut), image.Rect(r.Min.X, cut, r.Max.X, r.Max.Y)
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
