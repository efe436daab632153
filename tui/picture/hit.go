package picture

import (
	"image"
	"math"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
)

// How near the mouse has to come, in dots: a cell is two wide and four high. A
// point is looked for first, as lines end at it.
const (
	nearPoint  = 5
	nearStroke = 4.5
)

// Hit tells which row is drawn or named at a cell of a picture of w by h cells.
func Hit(w, h int, f figure.Figure, o Options, x, y int) (sheet.Ref, bool) {
	if w < 4 || h < 3 {
		return sheet.Ref{}, false
	}
	p := drawn(grid.New(w, h).All(), f, o)
	for _, l := range p.placed {
		if image.Pt(x, y).In(l.box) && l.ref.Row != "" {
			return l.ref, true
		}
	}
	mx, my := (float64(x)+0.5)*dotsX, (float64(y)+0.5)*dotsY
	best, ref := math.Inf(1), sheet.Ref{}
	for _, l := range f.Labels {
		if l.Ref.Table != "points" {
			continue
		}
		px, py := p.dot(l.At)
		if d := math.Hypot(px-mx, py-my); d < best && d <= nearPoint {
			best, ref = d, l.Ref
		}
	}
	if ref.Row != "" {
		return ref, true
	}
	for _, s := range f.Strokes {
		if s.Ref.Row == "" {
			continue
		}
		for i := 1; i < len(s.Pts); i++ {
			x0, y0 := p.dot(s.Pts[i-1])
			x1, y1 := p.dot(s.Pts[i])
			if d := apart(mx, my, x0, y0, x1, y1); d < best && d <= nearStroke {
				best, ref = d, s.Ref
			}
		}
	}
	return ref, ref.Row != ""
}

// apart is the distance of a place from a segment.
func apart(x, y, x0, y0, x1, y1 float64) float64 {
	dx, dy := x1-x0, y1-y0
	t := 0.0
	if n := dx*dx + dy*dy; n > 0 {
		t = math.Max(0, math.Min(1, ((x-x0)*dx+(y-y0)*dy)/n))
	}
	return math.Hypot(x-x0-t*dx, y-y0-t*dy)
}
