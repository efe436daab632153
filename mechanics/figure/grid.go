package figure

import (
	"math"

	"trivet/mechanics/ink"
)

// field is the figure in small squares: how much is drawn in each, and in all to the
// left and above it, so that what lies under a label is four numbers.
type field struct {
	low     ink.Vec
	side    float64
	inverse float64 // of the side
	w, h    int
	weight  []int32
	sums    []int32 // of (w+1) × (h+1)

	labels [][]ink.Box // the labels placed, by larger squares
	lw, lh int
}

// What a stroke weighs that a label must keep off, and one that it may interrupt: of the
// latter, more squares than a label has weigh less than one of the former.
const (
	solid = 1 << 12
	thin  = 1
)

// labelSide is the side of the squares by which labels are found, in small ones.
const labelSide = 16

// maxSquares bounds the field's memory: a figure beyond it has larger squares.
const maxSquares = 2000

func newField(b ink.Box, side float64) *field {
	side = math.Max(side, math.Max(b.High.X-b.Low.X, b.High.Y-b.Low.Y)/maxSquares)
	f := &field{low: b.Low, side: side, inverse: 1 / side, w: int((b.High.X-b.Low.X)/side) + 1, h: int((b.High.Y-b.Low.Y)/side) + 1}
	f.weight = make([]int32, f.w*f.h)
	f.lw, f.lh = f.w/labelSide+1, f.h/labelSide+1
	f.labels = make([][]ink.Box, f.lw*f.lh)
	return f
}

// square is the one that a place lies in.
func (f *field) square(q ink.Vec) (x, y int) {
	return int((q.X-f.low.X)*f.inverse+1) - 1, int((q.Y-f.low.Y)*f.inverse+1) - 1 // rounded down, from -1 on
}

// stroke notes a line: each square on its way once.
func (f *field) stroke(s stroke) {
	d := s.b.Sub(s.a)
	n := int(math.Ceil(d.Len()/f.side*1.5)) + 1
	if n < 1 || n > 4*maxSquares {
		return // nothing in the figure is this long
	}
	last := -1
	for i := range n + 1 {
		x, y := f.square(s.a.Add(d.Scale(float64(i) / float64(n))))
		if x < 0 || y < 0 || x >= f.w || y >= f.h || y*f.w+x == last {
			continue
		}
		last = y*f.w + x
		f.weight[last] = max(f.weight[last], s.weight)
	}
}

// sum adds the squares up.
func (f *field) sum() {
	f.sums = make([]int32, (f.w+1)*(f.h+1))
	for y := range f.h {
		row := int32(0)
		for x := range f.w {
			row += f.weight[y*f.w+x]
			f.sums[(y+1)*(f.w+1)+x+1] = f.sums[y*(f.w+1)+x+1] + row
		}
	}
}

// squares are those that a box touches, as far as the field reaches.
type squares struct{ lx, ly, hx, hy int }

func (f *field) squares(b ink.Box) squares {
	lx, ly := f.square(b.Low)
	hx, hy := f.square(b.High)
	return squares{max(lx, 0), max(ly, 0), min(hx, f.w-1), min(hy, f.h-1)}
}

// under is the weight of what lies in a box.
func (f *field) under(q squares) int32 {
	if q.lx > q.hx || q.ly > q.hy {
		return 0
	}
	row := f.w + 1
	low, high := q.ly*row, (q.hy+1)*row
	return f.sums[high+q.hx+1] - f.sums[low+q.hx+1] - f.sums[high+q.lx] + f.sums[low+q.lx]
}

// inside tells that a box lies in the field.
func (f *field) inside(b ink.Box) bool {
	return b.Low.X >= f.low.X && b.Low.Y >= f.low.Y && b.High.X <= f.low.X+float64(f.w)*f.side && b.High.Y <= f.low.Y+float64(f.h)*f.side
}

// taken tells that a label lies in a box.
func (f *field) taken(b ink.Box) bool {
	q := f.squares(b)
	for y := q.ly / labelSide; y <= q.hy/labelSide; y++ {
		for x := q.lx / labelSide; x <= q.hx/labelSide; x++ {
			for _, o := range f.labels[y*f.lw+x] {
				if b.Meets(o) {
					return true
				}
			}
		}
	}
	return false
}

// take notes a label.
func (f *field) take(b ink.Box) {
	q := f.squares(b)
	for y := q.ly / labelSide; y <= q.hy/labelSide; y++ {
		for x := q.lx / labelSide; x <= q.hx/labelSide; x++ {
			f.labels[y*f.lw+x] = append(f.labels[y*f.lw+x], b)
		}
	}
}
