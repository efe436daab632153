package figure

import (
	"math"

	"trivet/mechanics/ink"
)

// field is the figure in small squares: how much is drawn in each, and in all to the
// left and above it, so that what lies under a label is four numbers.
type field struct {
	low    ink.Vec
	side   float64
	w, h   int
	weight []int32
	sums   []int32 // of (w+1) × (h+1)

	labels [][]ink.Box // the labels placed, by larger squares
	lw, lh int
}

// What a stroke weighs that a label must keep off, and one that it may interrupt.
const (
	solid = 8
	thin  = 1
)

// labelSide is the side of the squares by which labels are found, in small ones.
const labelSide = 16

// maxSquares bounds the field's memory: a figure beyond it has larger squares.
const maxSquares = 2000

func newField(b ink.Box, side float64) *field {
	side = math.Max(side, math.Max(b.High.X-b.Low.X, b.High.Y-b.Low.Y)/maxSquares)
	f := &field{low: b.Low, side: side, w: int((b.High.X-b.Low.X)/side) + 1, h: int((b.High.Y-b.Low.Y)/side) + 1}
	f.weight = make([]int32, f.w*f.h)
	f.lw, f.lh = f.w/labelSide+1, f.h/labelSide+1
	f.labels = make([][]ink.Box, f.lw*f.lh)
	return f
}

// square is the one that a place lies in.
func (f *field) square(q ink.Vec) (x, y int) {
	return int(math.Floor((q.X - f.low.X) / f.side)), int(math.Floor((q.Y - f.low.Y) / f.side))
}

// stroke notes a line: each square on its way once.
func (f *field) stroke(a, b ink.Vec, weight int32) {
	d := b.Sub(a)
	n := int(math.Ceil(d.Len()/f.side*1.5)) + 1
	if n < 1 || n > 4*maxSquares {
		return // nothing in the figure is this long
	}
	last := -1
	for i := range n + 1 {
		x, y := f.square(a.Add(d.Scale(float64(i) / float64(n))))
		if x < 0 || y < 0 || x >= f.w || y >= f.h || y*f.w+x == last {
			continue
		}
		last = y*f.w + x
		f.weight[last] = max(f.weight[last], weight)
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

// under is the weight of what lies in a box.
func (f *field) under(b ink.Box) int32 {
	lx, ly := f.square(b.Low)
	hx, hy := f.square(b.High)
	lx, ly, hx, hy = max(lx, 0), max(ly, 0), min(hx+1, f.w), min(hy+1, f.h)
	if lx >= hx || ly >= hy {
		return 0
	}
	row := f.w + 1
	return f.sums[hy*row+hx] - f.sums[ly*row+hx] - f.sums[hy*row+lx] + f.sums[ly*row+lx]
}

// inside tells that a box lies in the field.
func (f *field) inside(b ink.Box) bool {
	return b.Low.X >= f.low.X && b.Low.Y >= f.low.Y && b.High.X <= f.low.X+float64(f.w)*f.side && b.High.Y <= f.low.Y+float64(f.h)*f.side
}

// around calls visit with the larger squares that a box touches.
func (f *field) around(b ink.Box, visit func(k int) bool) bool {
	lx, ly := f.square(b.Low)
	hx, hy := f.square(b.High)
	for y := max(ly/labelSide, 0); y <= min(hy/labelSide, f.lh-1); y++ {
		for x := max(lx/labelSide, 0); x <= min(hx/labelSide, f.lw-1); x++ {
			if !visit(y*f.lw + x) {
				return false
			}
		}
	}
	return true
}

// taken tells that a label lies in a box.
func (f *field) taken(b ink.Box) bool {
	return !f.around(b, func(k int) bool {
		for _, o := range f.labels[k] {
			if b.Meets(o) {
				return false
			}
		}
		return true
	})
}

// take notes a label.
func (f *field) take(b ink.Box) {
	f.around(b, func(k int) bool {
		f.labels[k] = append(f.labels[k], b)
		return true
	})
}
