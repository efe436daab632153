package plate

import (
	"math"
	"slices"
	"strings"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/units"
)

const (
	dimensionGap = 16 // from the figure to its dimensions
	dimensionTip = 4.2
	mostSteps    = 7 // of a chain of dimensions; a longer one shows the whole only
)

// stop is a coordinate at which there is something.
type stop struct {
	along float64 // m, in the view
	at    ink.Vec
}

// chain are the stops along one direction of the paper.
func (s *sketch) chain(flatwise bool) (stops []stop) {
	for _, q := range s.p.Points {
		if !q.OK {
			continue
		}
		v := s.view.Project(q.At)
		x := v.X
		if !flatwise {
			x = v.Y
		}
		k := slices.IndexFunc(stops, func(o stop) bool { return math.Abs(o.along-x) <= flat*s.size })
		at := s.at(q.At)
		switch {
		case k < 0:
			stops = append(stops, stop{x, at})
		case flatwise && at.Y > stops[k].at.Y || !flatwise && at.X < stops[k].at.X:
			stops[k].at = at // the one nearest to the dimension
		}
	}
	slices.SortFunc(stops, func(a, b stop) int { return int(math.Copysign(1, a.along-b.along)) })
	return stops
}

// shown are the stops of a chain; of many the first and the last.
func shown(stops []stop) []stop {
	if len(stops) > mostSteps+1 {
		return []stop{stops[0], stops[len(stops)-1]}
	}
	return stops
}

// Dimensioned tells that the dimensions of a problem's figure give the place of each point.
func Dimensioned(p *problem.Problem) bool {
	s := newSketch(p, nil, figure.Front(p), 1)
	return p.Planar && max(len(s.chain(true)), len(s.chain(false))) <= mostSteps+1
}

// dimensions draws chains of dimensions below and to the left of the figure,
// between the coordinates at which there is something.
func (s *sketch) dimensions(b ink.Box) {
	below := shown(s.chain(true))
	y := b.High.Y + dimensionGap
	for i := range below {
		if len(below) > 1 {
			s.thin(0.4, ink.Vec{X: below[i].at.X, Y: math.Min(below[i].at.Y+9, y)}, ink.Vec{X: below[i].at.X, Y: y + 3})
		}
		if i > 0 {
			s.dimension(ink.Vec{X: below[i-1].at.X, Y: y}, ink.Vec{X: below[i].at.X, Y: y}, below[i].along-below[i-1].along)
		}
	}
	left := shown(s.chain(false))
	x := b.Low.X - dimensionGap
	for i := range left {
		if len(left) > 1 {
			s.thin(0.4, ink.Vec{X: math.Max(left[i].at.X-9, x), Y: left[i].at.Y}, ink.Vec{X: x - 3, Y: left[i].at.Y})
		}
		if i > 0 {
			s.dimension(ink.Vec{X: x, Y: left[i-1].at.Y}, ink.Vec{X: x, Y: left[i].at.Y}, left[i].along-left[i-1].along)
		}
	}
}

// dimension draws one: a line with tips at its ends, and the length beside it.
func (s *sketch) dimension(a, b ink.Vec, length float64) {
	u := b.Sub(a).Unit()
	s.line(ink.Faint, 0.5, a, b)
	if b.Sub(a).Len() > 2.5*dimensionTip {
		for _, end := range [2][2]ink.Vec{{a, u}, {b, u.Scale(-1)}} {
			n := end[1].Across().Scale(1.3)
			back := end[0].Add(end[1].Scale(dimensionTip))
			s.area(ink.Faint, ink.None, 0, end[0], back.Add(n), back.Sub(n))
		}
	}
	w := beside(a, b, plain(s.length(length)), dimensionFirst)
	w.size = textSize - 1
	side := ink.Vec{Y: 1}
	if math.Abs(u.Y) > math.Abs(u.X) {
		side = ink.Vec{X: -1}
	}
	w.spots = []spot{{a.Add(b).Scale(0.5), side}}
	s.wants = append(s.wants, w)
}

// length prints a length in full where that is short, else to the sheet's
// figures.
func (s *sketch) length(m float64) string {
	unit := s.p.Units.Length
	short := units.Figures(unit.In(m), 6)
	if strings.Contains(short, ".") {
		short = strings.TrimRight(strings.TrimRight(short, "0"), ".")
	}
	if len(short) > 6 {
		return unit.Format(m, max(s.p.Figures, 3))
	}
	return short + " " + unit.Symbol
}

// triad draws the axes in the corner below the figure on the right.
func (s *sketch) triad(b ink.Box) {
	const long = 20
	o := ink.Vec{X: b.High.X + 16, Y: b.High.Y - 4}
	for _, a := range figure.Axes(s.p, s.view) {
		run := italic(a.Name)
		v := ink.Vec{X: a.At.X, Y: -a.At.Y}
		if v.Len() < endOn {
			s.d.Area(ink.Paper, ink.Dark, 0.7, circle(o, 2.6)...)
			if a.Toward > 0 {
				s.d.Area(ink.Dark, ink.None, 0, circle(o, 0.9)...)
			} else {
				for _, turn := range []float64{math.Pi / 4, -math.Pi / 4} {
					sin, cos := math.Sincos(turn)
					d := ink.Vec{X: cos, Y: sin}.Scale(2.6)
					s.d.Line(ink.Dark, 0.6, o.Sub(d), o.Add(d))
				}
			}
			s.wants = append(s.wants, near(o, ink.Vec{X: -1, Y: 1}, run, ink.Dark, dimensionFirst))
			continue
		}
		end := o.Add(v.Scale(long))
		s.shaft(ink.Dark, 0.8, o.Add(v.Unit().Scale(0)), end)
		s.wants = append(s.wants, near(end, v, run, ink.Dark, dimensionFirst))
	}
}
