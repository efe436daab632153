package figure

import (
	"math"
	"strconv"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
	"trivet/units"
)

// Plot is curves against a common axis.
type Plot struct {
	Title          string
	XLabel, YLabel string // what the axes show, with its unit
	Curves         []Curve
	Level          []float64 // values at which a line runs across the plot: limits
}

// Curve is a named curve, straight between its places; it has a gap where Y is no number.
type Curve struct {
	Name  string
	X, Y  []float64
	Marks []Mark
}

// Mark names a place of a curve.
type Mark struct {
	At   int
	Text string
}

// span is the range of values that numbers are.
type span struct{ low, high float64 }

func (s *span) take(values ...float64) {
	for _, v := range values {
		if !math.IsNaN(v) && !math.IsInf(v, 0) {
			s.low, s.high = math.Min(s.low, v), math.Max(s.high, v)
		}
	}
}

// rounding is the share of a value below which a curve is level.
const rounding = 1e-9

// wide is the span, or one about its value where that is one; ok is false where it has none.
func (s span) wide() (span, bool) {
	if s.low > s.high {
		return span{0, 1}, false
	}
	if s.high-s.low <= rounding*math.Max(math.Abs(s.low), math.Abs(s.high)) {
		off := math.Max(math.Abs(s.low)/2, 0.5)
		return span{s.low - off, s.high + off}, true
	}
	return s, true
}

// ticks are round values within a span, about as many as the limit: a step of 1, 2 or 5 in the
// first figure.
func (s span) ticks(limit int) (out []float64) {
	raw := (s.high - s.low) / float64(max(limit, 2))
	step := math.Pow(10, math.Floor(math.Log10(raw)))
	for _, k := range []float64{2, 5, 10} {
		if step < raw {
			step = math.Pow(10, math.Floor(math.Log10(raw))) * k
		}
	}
	const digits = 12 // to which a multiple of a step is round
	first, last := math.Ceil(s.low/step-rounding), math.Floor(s.high/step+rounding)
	for k := range int(last-first) + 1 {
		x, err := strconv.ParseFloat(strconv.FormatFloat((first+float64(k))*step, 'g', digits, 64), 64)
		if err == nil {
			out = append(out, x)
		}
	}
	return out
}

// SetPlot draws a plot: axes with ticks, the curves with their names at their ends, marked
// places. Curves are told apart by their names and dashes, not by colour.
func SetPlot(p *Plot, m Medium) Drawing {
	t := &setter{scene: &scene.Scene{Planar: true, Size: 1}, m: &m, scale: 1}
	across, up := span{math.Inf(1), math.Inf(-1)}, span{math.Inf(1), math.Inf(-1)}
	for _, c := range p.Curves {
		for i := range c.X {
			if !math.IsNaN(c.Y[i]) && !math.IsInf(c.Y[i], 0) {
				across.take(c.X[i])
				up.take(c.Y[i])
			}
		}
	}
	up.take(p.Level...)
	across, ok := across.wide()
	up, _ = up.wide()
	// Room for the figures of the axes and the names of the curves.
	const left, below, right, above = 44, 26, 54, 16
	low := drawing.Vec{X: t.pt(left), Y: m.Height - t.pt(below)}
	size := drawing.Vec{X: m.Width - t.pt(left+right), Y: m.Height - t.pt(below+above)}
	at := func(x, y float64) drawing.Vec {
		return drawing.Vec{X: low.X + size.X*(x-across.low)/(across.high-across.low), Y: low.Y - size.Y*(y-up.low)/(up.high-up.low)}
	}
	label := func(q, way drawing.Vec, text string, first bool) {
		t.wants = append(t.wants, want{spots: []spot{{q, way}}, forms: worded(scene.Plain(text)), small: true, first: first, tone: drawing.Dark, rank: scene.OfForce})
	}
	t.line(drawing.Dark, 0.8, at(across.low, up.high), low, at(across.high, up.low))
	for _, x := range across.ticks(int(size.X / t.pt(60))) {
		q := at(x, up.low)
		t.line(drawing.Dark, 0.6, q, q.Add(drawing.Vec{Y: t.pt(4)}))
		label(q.Add(drawing.Vec{Y: t.pt(4)}), drawing.Vec{Y: 1}, units.Compact(x), true)
	}
	for _, y := range up.ticks(int(size.Y / t.pt(30))) {
		q := at(across.low, y)
		t.line(drawing.Dark, 0.6, q, q.Sub(drawing.Vec{X: t.pt(4)}))
		label(q.Sub(drawing.Vec{X: t.pt(4)}), drawing.Vec{X: -1}, units.Compact(y), true)
	}
	if up.low < 0 && up.high > 0 {
		t.hair(at(across.low, 0), at(across.high, 0))
	}
	label(at(across.high, up.low), drawing.Vec{X: 1}, p.XLabel, true)
	label(at(across.low, up.high), drawing.Vec{Y: -1}, p.YLabel, true)
	for _, y := range p.Level {
		t.shape(drawing.Shape{Pts: []drawing.Vec{at(across.low, y), at(across.high, y)}, Line: drawing.Load, Width: t.pt(0.7), Dashed: true})
	}
	for i, c := range p.Curves {
		t.curve(&c, at, i)
	}
	if !ok {
		label(at((across.low+across.high)/2, (up.low+up.high)/2), drawing.Vec{Y: -1}, "no values", true)
	}
	t.d.Title, t.d.Width, t.d.Height = p.Title, m.Width, m.Height
	if f := t.place(); m.Bounded {
		t.corners(f)
	} else {
		t.d.Trim(margin)
	}
	return Drawing{Drawing: t.d, Scale: 1, left: t.left}
}

// curve draws one with its marks, and its name beside its last place.
func (t *setter) curve(c *Curve, at func(x, y float64) drawing.Vec, number int) {
	t.of = number + 1
	var run []drawing.Vec
	last := -1
	flush := func() {
		if len(run) > 1 {
			t.shape(drawing.Shape{Pts: run, Line: drawing.Found, Width: t.pt(1.2), Dashed: number%2 == 1})
		}
		run = nil
	}
	for i := range c.X {
		if math.IsNaN(c.Y[i]) || math.IsInf(c.Y[i], 0) {
			flush()
			continue
		}
		run, last = append(run, at(c.X[i], c.Y[i])), i
	}
	flush()
	for _, m := range c.Marks {
		if q := at(c.X[m.At], c.Y[m.At]); !math.IsNaN(q.Y) {
			t.circle(drawing.Paper, drawing.Found, 0.9, q, math.Max(t.pt(2), t.m.Fine))
			t.wants = append(t.wants, want{spots: []spot{{q, drawing.Vec{Y: -1}}}, forms: worded(scene.Plain(m.Text)), small: true, tone: drawing.Found, rank: scene.OfBody, of: t.of})
		}
	}
	if last >= 0 {
		t.wants = append(t.wants, want{spots: []spot{{at(c.X[last], c.Y[last]), drawing.Vec{X: 1}}}, forms: worded(scene.Typeset(c.Name)), tone: drawing.Found, rank: scene.OfUnknown, of: t.of})
	}
	t.of = 0
}
