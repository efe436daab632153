package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// StrokeKind says what a stroke stands for; a canvas chooses how it looks.
type StrokeKind int

// The kinds of stroke.
const (
	Cable StrokeKind = iota
	Strut
	Link
	Spring   // a zigzag
	Arrow    // shaft and head of a force
	Ground   // the hatch under a fixed point
	Particle // the ring round a point that is free, or round a pin
	Body     // what joins the points of a rigid body
	Load     // a distributed load: its arrows and the line over them
	Couple   // a turning arrow, or one along its axis with two heads
	Support  // the sign of a support
	Center   // what moments are taken about
)

// Stroke is a polyline. Open tells that the magnitude of the force it stands
// for is not known, which a canvas may draw dashed.
type Stroke struct {
	Kind StrokeKind
	Pts  []Vec
	Ref  sheet.Ref // the row it comes from
	Open bool
	Near [2]float64 // how far its first and its last point stand toward the reader, m
}

// Label is a text beside a place. Mark is what stands behind it: "(T)" and
// "(C)" on members, "(0)" on one without force, "⊙" and "⊗" on a force that
// points at the reader or away.
type Label struct {
	At    Vec
	Text  string
	Mark  string
	Ref   sheet.Ref
	Rank  Rank
	Along [2]Vec // the ends of a line, beside which its label may stand anywhere; alike for a place
}

// Rank is how much a reader would miss a label: where there is no room for all,
// the first ranks have theirs.
type Rank int

// The ranks.
const (
	OfUnknown Rank = iota // a force whose magnitude is sought
	OfForce               // a known one
	OfBody
	OfPoint
	OfSize // a dimension
)

// rank is that of what acts with so many unknowns.
func rank(unknowns int) Rank {
	if unknowns > 0 {
		return OfUnknown
	}
	return OfForce
}

// Figure is a picture in metres. Low and High bound every stroke and label.
type Figure struct {
	Strokes   []Stroke
	Labels    []Label
	Marks     []Mark // of supports
	Low, High Vec
}

// Draw projects a problem. sol may be nil, or belong to the same problem; its
// values size the arrows and give the senses.
func Draw(p *problem.Problem, sol *statics.Solution, v View) Figure { return draw(p, sol, v, Look{}) }

func draw(p *problem.Problem, sol *statics.Solution, v View, look Look) Figure {
	if p == nil {
		return Figure{}
	}
	d := &drawing{p: p, sol: sol, view: v, size: size(p), look: look}
	// Most lines and points are a stroke.
	d.fig.Strokes = make([]Stroke, 0, len(p.Lines)+len(p.Points)+16)
	d.fig.Labels = make([]Label, 0, len(p.Lines)+len(p.Points))
	d.maxForce()
	d.bodies()
	d.ground()
	for i := range p.Lines {
		if p.Lines[i].OK {
			d.line(&p.Lines[i])
		}
	}
	d.supports()
	d.weights()
	d.reactions()
	d.couples()
	d.distributed()
	d.points()
	if look.Dimensions {
		d.dimensions()
	}
	d.bound()
	return d.fig
}

type drawing struct {
	p    *problem.Problem
	sol  *statics.Solution
	view View
	size float64 // the diagonal of the points' box, so that a turn does not zoom
	max  float64 // the largest force drawn as an arrow
	look Look
	fig  Figure
	near [2]float64 // of the strokes that follow
}

// Shares of the diagonal: how large marks are drawn.
const (
	markShare = 0.025
	arrowLow  = 0.12
	arrowMore = 0.16
)

func size(p *problem.Problem) float64 {
	low, high := p.Extent()
	if d := r3.Norm(r3.Sub(high, low)); d > 0 && !math.IsInf(d, 0) {
		return d
	}
	return 1
}

func (d *drawing) stroke(k StrokeKind, ref sheet.Ref, open bool, pts ...Vec) {
	d.fig.Strokes = append(d.fig.Strokes, Stroke{Kind: k, Pts: pts, Ref: ref, Open: open, Near: d.near})
}

// from tells where in space the strokes that follow begin and end.
func (d *drawing) from(a, b r3.Vec) {
	toward := d.view.Toward()
	d.near = [2]float64{r3.Dot(a, toward), r3.Dot(b, toward)}
}

// value gives an affine magnitude where all its unknowns are known.
func (d *drawing) value(a problem.Affine) (float64, bool) {
	return a.Sum(d.unknown)
}

func (d *drawing) unknown(j int) (float64, bool) {
	if d.sol == nil || j >= len(d.sol.X) || !d.sol.X[j].Fixed {
		return 0, false
	}
	return d.sol.X[j].Value, true
}

// force gives an act's force where its unknowns are known, else its direction.
func (d *drawing) force(a problem.Act) (f r3.Vec, known bool) { return d.sum(a.Const, a.Terms) }

// sum is known + Σ unknown·D, or the direction of it while an unknown is not
// found.
func (d *drawing) sum(fixed r3.Vec, terms []problem.ActTerm) (f r3.Vec, known bool) {
	f, known = fixed, true
	dir := fixed
	for _, t := range terms {
		dir = r3.Add(dir, t.D)
		x, ok := d.unknown(t.Unknown)
		f, known = r3.Add(f, r3.Scale(x, t.D)), known && ok
	}
	if !known {
		return dir, false
	}
	return f, true
}

func (d *drawing) maxForce() {
	look := func(acts []problem.Act) {
		for _, a := range acts {
			if f, known := d.force(a); known {
				d.max = math.Max(d.max, r3.Norm(f))
			}
		}
	}
	for _, l := range d.p.Lines {
		if l.OK && arrowed(l) {
			look(l.Acts)
		}
	}
	for i := range d.p.Bodies {
		look(d.p.Bodies[i].Acts)
	}
	for _, j := range d.p.Joints {
		if j.OK && grounded(j) {
			look(j.Acts)
		}
	}
}

func arrowed(l problem.Line) bool {
	return !l.Kind.Info().Path
}

// bound takes in the labels too: a point that nothing runs to yet has no stroke.
func (d *drawing) bound() {
	first := true
	take := func(q Vec) {
		if first {
			d.fig.Low, d.fig.High, first = q, q, false
		}
		d.fig.Low = Vec{math.Min(d.fig.Low.X, q.X), math.Min(d.fig.Low.Y, q.Y)}
		d.fig.High = Vec{math.Max(d.fig.High.X, q.X), math.Max(d.fig.High.Y, q.Y)}
	}
	for _, s := range d.fig.Strokes {
		for _, q := range s.Pts {
			take(q)
		}
	}
	for _, l := range d.fig.Labels {
		take(l.At)
	}
}
