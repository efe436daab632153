package picture

import (
	"image"
	"math"

	"trivet/mechanics/figure"
)

// Costs of a place. One for each step down the list of places comes to that, so
// that a small turn of the picture leaves a label where it was.
const (
	onOwn    = 2  // a cell of the label's own line hidden
	onOther  = 4  // a cell of another stroke
	onMany   = 5  // a cell where strokes meet
	onSign   = 14 // a cell of a sign or of an arrow's head
	byOther  = 2  // another line at an end of a line's label
	atOther  = 8  // another point next to the label
	offThing = 10 // a leader, for each cell of its length one more
	handy    = 6  // a free place beside a point costs less
	hidden   = 1 << 20
)

// Places beside a point, from its cell: the text's first cell, in units of its
// length and in cells, and its row.
var beside = [...]struct{ length, x, y int }{
	{0, 2, 0}, {-1, -1, 0}, {0, 1, -1}, {0, 1, 1}, {-1, 0, -1}, {-1, 0, 1}, {0, 3, 0}, {-1, -2, 0},
	{0, 0, -1}, {0, 0, 1}, {-1, 1, -1}, {-1, 1, 1}, {0, 0, -2}, {0, 0, 2},
}

// Places that a leader reaches.
var beyond = [...]struct{ length, x, y int }{
	{0, 3, -2}, {-1, -2, -2}, {0, 3, 2}, {-1, -2, 2}, {0, 5, -1}, {-1, -4, -1}, {0, 5, 1}, {-1, -4, 1},
	{0, 5, 0}, {-1, -4, 0}, {0, 4, -3}, {-1, -3, -3}, {0, 4, 3}, {-1, -3, 3}, {0, 7, -2}, {-1, -6, -2}, {0, 7, 2}, {-1, -6, 2},
}

// Shares of a line at which its label may stand, from the middle outwards.
var shares = [...]float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78}

// best is the cheapest place of a label that costs less than so much.
func (s *setting) best(t *tag, most int) (best placed, ok bool) {
	low := most
	try := func(base, x, y int, leader bool) {
		if base >= low {
			return
		}
		box := image.Rect(x, y, x+t.n, y+1)
		if cost := base + s.cost(t, box); cost < low {
			if leader {
				n, clear := s.reach(t, box)
				if cost += n; !clear || cost >= low {
					return
				}
			}
			low, best = cost, placed{*t, box, leader}
		}
	}
	step := 0
	if t.runs {
		for _, share := range shares {
			x, y, in := s.cell(figure.Vec{X: t.line[0].X + share*(t.line[1].X-t.line[0].X), Y: t.line[0].Y + share*(t.line[1].Y-t.line[0].Y)})
			if !in {
				continue
			}
			for _, o := range s.along(t) {
				try(step, x+o.X, y+o.Y, false)
				step++
			}
		}
	} else {
		for _, o := range beside {
			try(step, t.at.X+o.length*t.n+o.x, t.at.Y+o.y, false)
			step++
		}
	}
	if t.alone {
		return best, low < most
	}
	for i, o := range beyond {
		try(offThing+i/2, t.at.X+o.length*t.n+o.x, t.at.Y+o.y, true)
	}
	return best, low < most
}

// along gives the places beside a place of a line: to its right and left where it
// is steep, above and below where it is flat, last on the line itself.
func (s *setting) along(t *tag) [3]image.Point {
	dx, dy := math.Abs(t.line[1].X-t.line[0].X), math.Abs(t.line[1].Y-t.line[0].Y)
	const flat = 0.35
	if dy < flat*dx {
		return [3]image.Point{{X: -t.n / 2, Y: -1}, {X: -t.n / 2, Y: 1}, {X: -t.n / 2}}
	}
	return [3]image.Point{{X: 2}, {X: -t.n - 1}, {X: -t.n / 2}}
}

// cost is what a place hides; hidden where it can't be had.
func (s *setting) cost(t *tag, box image.Rectangle) (cost int) {
	w, y := s.c.W(), box.Min.Y
	if box.Min.X < 0 || y < 0 || box.Max.X > w || y >= s.c.H() {
		return hidden
	}
	row := y * w
	if box.Min.X > 0 && s.blocked(t, s.names[row+box.Min.X-1]) || box.Max.X < w && s.blocked(t, s.names[row+box.Max.X]) {
		return hidden // two labels that touch read as one
	}
	for _, n := range s.names[row+box.Min.X : row+box.Max.X] {
		if n != 0 && (n == closed || s.blocked(t, n)) {
			return hidden
		}
	}
	others := 0
	for k := row + box.Min.X; k < row+box.Max.X; k++ {
		if s.bits[k] == 0 {
			continue
		}
		switch {
		case s.own[k] == t.own && t.runs:
			cost += onOwn
		case s.own[k] == whole:
			cost += onSign
			others++
		case s.own[k] == several:
			cost += onMany
			others++
		default:
			cost += onOther
			others++
		}
	}
	// A label may break its own line, and hide a little of others.
	if most := max(t.n/3, 1); !t.lit && others > most {
		return hidden
	}
	if t.runs {
		for _, x := range [2]int{box.Min.X - 1, box.Max.X} {
			if x >= 0 && x < w && s.bits[row+x] != 0 && s.own[row+x] != t.own {
				cost += byOther
			}
		}
		return cost
	}
	for ny := max(y-1, 0); ny <= min(y+1, s.c.H()-1); ny++ {
		for nx := max(box.Min.X-1, 0); nx <= min(box.Max.X, w-1); nx++ {
			if n := s.spot[ny*w+nx]; n != 0 && n != t.own {
				cost += atOther
			}
		}
	}
	return cost
}
