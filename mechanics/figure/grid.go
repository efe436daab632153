package figure

import (
	"image"
	"math"

	"trivet/mechanics/drawing"
)

// field is the figure in small squares: how much is drawn in each, and in all to the
// left and above it, so that what lies under a label is four numbers.
type field struct {
	low     drawing.Vec
	side    float64
	inverse float64 // of the side
	margin  float64 // kept free round a label
	w, h    int
	weight  []int16
	sums    []int32 // of (w+1) × (h+1)

	trial int32 // the label that a place is looked for
	tried []try // by cells, of a medium that has them: where its corner was tried
	cell  drawing.Vec
	cells int // in a row

	labels [][]drawing.Box // the labels placed, by larger squares
	lw     int             // of these in a row
}

// try is what a place cost the label for which it was tried last.
type try struct {
	trial int32
	cost  float32
}

// first tells that the corner of the label was not tried at a place within the field yet for
// as little.
func (f *field) first(corner drawing.Vec, cost float64) bool {
	if f.cells == 0 {
		return true
	}
	last := &f.tried[int((corner.Y-f.low.Y)/f.cell.Y+0.5)*f.cells+int((corner.X-f.low.X)/f.cell.X+0.5)]
	if last.trial == f.trial && float64(last.cost) <= cost {
		return false
	}
	*last = try{f.trial, float32(cost)}
	return true
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

func newField(b drawing.Box, side, margin float64, cell drawing.Vec) *field {
	side = math.Max(side, math.Max(b.High.X-b.Low.X, b.High.Y-b.Low.Y)/maxSquares)
	f := &field{low: b.Low, side: side, inverse: 1 / side, margin: margin, w: int((b.High.X-b.Low.X)/side) + 1, h: int((b.High.Y-b.Low.Y)/side) + 1}
	f.weight = make([]int16, f.w*f.h)
	if cell != (drawing.Vec{}) {
		f.cell, f.cells = cell, int((b.High.X-b.Low.X)/cell.X)+2
		f.tried = make([]try, f.cells*(int((b.High.Y-b.Low.Y)/cell.Y)+2))
	}
	f.lw = f.w/labelSide + 1
	f.labels = make([][]drawing.Box, f.lw*(f.h/labelSide+1))
	return f
}

// square is the one that a place lies in.
func (f *field) square(q drawing.Vec) (x, y int) {
	return int((q.X-f.low.X)*f.inverse+1) - 1, int((q.Y-f.low.Y)*f.inverse+1) - 1 // rounded down, from -1 on
}

// stroke notes a line: each square on its way once.
func (f *field) stroke(s segment, weight int16) {
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
		f.weight[last] = max(f.weight[last], weight)
	}
}

// sum adds the squares up.
func (f *field) sum() {
	f.sums = make([]int32, (f.w+1)*(f.h+1))
	for y := range f.h {
		row := int32(0)
		for x := range f.w {
			row += int32(f.weight[y*f.w+x])
			f.sums[(y+1)*(f.w+1)+x+1] = f.sums[y*(f.w+1)+x+1] + row
		}
	}
}

// squares are those that a box touches, as far as the field reaches.
func (f *field) squares(b drawing.Box) image.Rectangle {
	lx, ly := f.square(b.Low)
	hx, hy := f.square(b.High)
	return image.Rectangle{Min: image.Pt(max(lx, 0), max(ly, 0)), Max: image.Pt(min(hx+1, f.w), min(hy+1, f.h))}
}

// under is the weight of what lies in squares.
func (f *field) under(q image.Rectangle) int32 {
	if q.Empty() {
		return 0
	}
	row := f.w + 1
	low, high := q.Min.Y*row, q.Max.Y*row
	return f.sums[high+q.Max.X] - f.sums[low+q.Max.X] - f.sums[high+q.Min.X] + f.sums[low+q.Min.X]
}

// inside tells that a box lies in the field.
func (f *field) inside(b drawing.Box) bool {
	return b.Low.X >= f.low.X && b.Low.Y >= f.low.Y && b.High.X <= f.low.X+float64(f.w)*f.side && b.High.Y <= f.low.Y+float64(f.h)*f.side
}

// taken tells that a label lies in a box.
func (f *field) taken(b drawing.Box) bool {
	q := f.squares(b)
	for y := q.Min.Y / labelSide; y*labelSide < q.Max.Y; y++ {
		for x := q.Min.X / labelSide; x*labelSide < q.Max.X; x++ {
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
func (f *field) take(b drawing.Box) {
	q := f.squares(b)
	for y := q.Min.Y / labelSide; y*labelSide < q.Max.Y; y++ {
		for x := q.Min.X / labelSide; x*labelSide < q.Max.X; x++ {
			f.labels[y*f.lw+x] = append(f.labels[y*f.lw+x], b)
		}
	}
}
