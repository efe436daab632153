package picture

import (
	"math"
	"slices"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
)

// depth maps how near a place stands to the range 0 (the farthest) to 1. A flat
// figure has no span.
type depth struct{ low, span, apart float64 }

func (d depth) share(near float64) float64 {
	if d.span <= 0 || math.IsNaN(near) {
		return 0
	}
	return math.Max(0, math.Min(1, (near-d.low)/d.span))
}

const (
	// A figure less deep than this share of its size is drawn as flat.
	flatShare = 0.1
	// Lines nearer to each other than this share of the size meet, rather than pass.
	meetShare = 0.06
	// Behind this share of the depth a line is dotted.
	farShare = 0.3
)

// deepen numbers the rows and measures how deep the figure is.
func (p *pen) deepen(f figure.Figure) {
	p.numbers = make(map[sheet.Ref]int32, len(f.Labels))
	p.strokes = make([]int32, len(f.Strokes))
	low, high := math.Inf(1), math.Inf(-1)
	for i, s := range f.Strokes {
		if i > 0 && s.Ref == f.Strokes[i-1].Ref {
			p.strokes[i] = p.strokes[i-1]
		} else {
			p.strokes[i] = p.number(s.Ref)
		}
		low = math.Min(low, math.Min(s.Near[0], s.Near[1]))
		high = math.Max(high, math.Max(s.Near[0], s.Near[1]))
	}
	size := math.Max(f.High.X-f.Low.X, f.High.Y-f.Low.Y)
	if span := high - low; span > flatShare*size && !math.IsInf(span, 0) && size > 0 {
		p.deep = depth{low, span, meetShare * size / span}
	}
}

func (p *pen) number(r sheet.Ref) int32 {
	n, ok := p.numbers[r]
	if !ok {
		n = int32(len(p.numbers) + 1)
		p.numbers[r] = n
	}
	return n
}

// order gives the strokes from the farthest to the nearest.
func (p *pen) order(f figure.Figure) []int {
	order := make([]int, len(f.Strokes))
	for i := range order {
		order[i] = i
	}
	if p.deep.span > 0 {
		mean := func(i int) float64 { return p.deep.share(f.Strokes[i].Near[0]) + p.deep.share(f.Strokes[i].Near[1]) }
		slices.SortStableFunc(order, func(a, b int) int {
			switch d := mean(a) - mean(b); {
			case d < 0:
				return -1
			case d > 0:
				return 1
			}
			return 0
		})
	}
	return order
}

func (p *pen) far(near float64) bool { return p.deep.span > 0 && near < farShare }
