package plate

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// sketch is one view being drawn.
type sketch struct {
	p     *problem.Problem
	sol   *statics.Solution
	view  figure.View
	typed func(load sheet.Ref) string
	scale float64 // points a metre
	size  float64 // of the problem, m

	d     ink.Drawing
	segs  []segment // what labels keep off, and arrows avoid
	wants []want    // labels to place at the end
}

type segment struct {
	a, b ink.Vec
	hard bool // a member or a body: arrows do not lie on it
	soft bool // a thin line that a label may cross, if it must
}

func newSketch(p *problem.Problem, sol *statics.Solution, v figure.View, scale float64) *sketch {
	low, high := p.Extent()
	return &sketch{p: p, sol: sol, view: v, scale: scale, size: r3.Norm(r3.Sub(high, low))}
}

// at projects a place onto the paper.
func (s *sketch) at(q r3.Vec) ink.Vec {
	v := s.view.Project(q)
	return ink.Vec{X: s.scale * v.X, Y: -s.scale * v.Y}
}

// dir projects a direction; its length is what foreshortening leaves of 1.
func (s *sketch) dir(u r3.Vec) ink.Vec {
	v := s.view.Project(u)
	return ink.Vec{X: v.X, Y: -v.Y}
}

func (s *sketch) point(i int) ink.Vec { return s.at(s.p.Points[i].At) }

func (s *sketch) placed(i int) bool { return i >= 0 && i < len(s.p.Points) && s.p.Points[i].OK }

// line draws a polyline that labels keep off.
func (s *sketch) line(tone ink.Tone, width float64, pts ...ink.Vec) {
	s.d.Line(tone, width, pts...)
	s.block(false, pts...)
}

func (s *sketch) area(fill, tone ink.Tone, width float64, pts ...ink.Vec) {
	s.d.Area(fill, tone, width, pts...)
	s.block(false, append(append([]ink.Vec{}, pts...), pts[0])...)
}

func (s *sketch) block(hard bool, pts ...ink.Vec) {
	for i := 1; i < len(pts); i++ {
		s.segs = append(s.segs, segment{a: pts[i-1], b: pts[i], hard: hard})
	}
}

// thin draws a line that labels cross rather than go far.
func (s *sketch) thin(width float64, a, b ink.Vec) {
	s.d.Line(ink.Faint, width, a, b)
	s.segs = append(s.segs, segment{a: a, b: b, soft: true})
}

// reach is how far a body's points lie apart on the paper.
func (s *sketch) reach(body int) float64 {
	var b ink.Box
	for n, i := range s.p.Bodies[body].Points {
		if !s.placed(i) {
			continue
		}
		if at := s.point(i); n == 0 {
			b = ink.Box{Low: at, High: at}
		} else {
			b = b.With(at)
		}
	}
	return math.Max(b.High.X-b.Low.X, 1.15*(b.High.Y-b.Low.Y))
}

// ring gives a circle, or an arc from one angle to another (radians, clockwise
// on the paper from +X).
func ring(c ink.Vec, r, from, to float64) []ink.Vec {
	n := max(4, int(math.Ceil(math.Abs(to-from)/(2*math.Pi)*36)))
	pts := make([]ink.Vec, 0, n+1)
	for i := range n + 1 {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/float64(n))
		pts = append(pts, ink.Vec{X: c.X + r*cos, Y: c.Y + r*sin})
	}
	return pts
}

func circle(c ink.Vec, r float64) []ink.Vec { return ring(c, r, 0, 2*math.Pi)[:36] }

// finish places the labels.
func (s *sketch) finish() ink.Drawing {
	s.placeLabels()
	return s.d
}

// system draws the whole problem.
func (s *sketch) system(opt Options) {
	s.typed = opt.Typed
	s.bodies()
	s.members()
	s.anchors()
	s.drums()
	s.supports()
	s.pins()
	s.spreadLoads(-1)
	for i := range s.p.Lines {
		s.applied(i)
	}
	for i := range s.p.Couples {
		s.appliedCouple(i)
	}
	for b := range s.p.Bodies {
		s.bodyWeight(b)
	}
	for i := range s.p.Joints {
		s.sought(&s.p.Joints[i], opt.Asked)
	}
	s.pointNames(func(int) bool { return true })
	bounds := s.d.Bounds()
	if opt.Dimensions {
		s.dimensions(bounds)
	}
	s.triad(s.d.Bounds())
}

func (s *sketch) value(a problem.Affine) (float64, bool) { return a.Sum(s.unknown) }

func (s *sketch) unknown(j int) (float64, bool) {
	if s.sol == nil || j >= len(s.sol.X) || !s.sol.X[j].Fixed || s.sol.Verdict == statics.NoEquilibrium {
		return 0, false
	}
	return s.sol.X[j].Value, true
}
