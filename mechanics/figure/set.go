package figure

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
)

// Drawing is a scene set in a view: what is drawn, by the things of the scene, and what
// had no room.
type Drawing struct {
	drawing.Drawing
	Scale  float64 // units a metre
	left   int     // labels without room
	led    float64 // the length of all lines from labels to what they name
	view   View
	origin drawing.Vec
	zero   [][]drawing.Run // forces that are zero, and not drawn
}

// LeftOut says how many labels have no room; empty where all have.
func (d *Drawing) LeftOut() string { return leftOut(d.left) }

func leftOut(labels int) string {
	if labels == 0 {
		return ""
	}
	return say.Count(labels, "name") + " left out"
}

// Place is where a place of space lies on the drawing.
func (d *Drawing) Place(q r3.Vec) drawing.Vec { return d.view.project(q).Scale(d.Scale).Add(d.origin) }

// Toward is the unit vector that points at whoever looks.
func (d *Drawing) Toward() r3.Vec { return d.view.Toward() }

// Turns tells that a couple is drawn as an arc.
func (d *Drawing) Turns(s *scene.Thing) bool { return asArc(s, d.view) }

// Set draws a scene. The origin of space is that of the drawing, which Trim moves, unless
// the medium is bounded: then the drawing fills the room.
func Set(s *scene.Scene, v View, m Medium) Drawing {
	t := &setter{scene: s, view: v, m: &m, scale: m.Scale, quiet: m.Bounded}
	if t.scale == 0 {
		t.fit()
	}
	t.quiet = false
	t.draw()
	if m.Bounded {
		t.centre()
	}
	f := t.place()
	if m.Bounded {
		t.corners(f)
		t.d.Move(t.origin)
		t.d.Width, t.d.Height = m.Width, m.Height
	}
	return Drawing{Drawing: t.d, Scale: t.scale, left: t.left, led: t.led, view: v, origin: t.origin, zero: s.Zero}
}

// setter is a scene being set.
type setter struct {
	scene  *scene.Scene
	view   View
	m      *Medium
	scale  float64     // units a metre
	origin drawing.Vec // where the origin of space lies

	d       drawing.Drawing
	of      int       // 1 + the thing that is drawn
	lines   []segment // that labels keep off
	hairs   []segment // that they may interrupt
	wants   []want
	arrows  []arrow
	members []int // drawn so far
	quiet   bool  // labels are not asked for yet
	left    int
	led     float64
}

type segment struct{ a, b drawing.Vec }

// arrow is one of a force, from the end at its place, of a thing by 1 + its index.
type arrow struct {
	segment
	of int
}

// at projects a place.
func (t *setter) at(q r3.Vec) drawing.Vec { return t.view.project(q).Scale(t.scale) }

// all projects places.
func (t *setter) all(at []r3.Vec) []drawing.Vec { return t.view.all(at, t.scale) }

// dir projects a direction; its length is what foreshortening leaves of 1.
func (t *setter) dir(u r3.Vec) drawing.Vec { return t.view.project(u) }

// pt is so many points of paper.
func (t *setter) pt(x float64) float64 { return x * t.m.Point }

// fit finds the scale at which all but the labels fills the room; symbols do not shrink
// with it, so that what they take beside the places is taken off first.
func (t *setter) fit() {
	size := t.view.reach(t.scene).Size()
	full := drawing.Vec{X: t.m.Width, Y: t.m.Height}.Sub(t.m.Beside.Scale(2))
	fill := func(room drawing.Vec) {
		const minShare = 0.3 // of the room is left to the places
		t.scale = math.Min(math.Max(room.X, minShare*full.X)/size.X, math.Max(room.Y, minShare*full.Y)/size.Y)
		if math.IsInf(t.scale, 0) || math.IsNaN(t.scale) {
			t.scale = math.Min(full.X, full.Y) / t.scene.Size
		}
	}
	fill(full)
	t.draw()
	b := t.d.Bounds().Size()
	fill(full.Sub(b.Sub(size.Scale(t.scale))))
	if t.m.Bounded && size.X == 0 && size.Y == 0 { // arrows at one place: they alone have a size
		const maxGrowth = 2.5 // times that of a symbol
		t.m.Point *= math.Max(1, math.Min(maxGrowth, math.Min(full.X/b.X, full.Y/b.Y))) * math.Max(1/maxGrowth, math.Min(maxGrowth, cmp.Or(t.m.Zoom, 1)))
	}
	if t.m.Zoom > 0 {
		t.scale *= t.m.Zoom
	}
}

// drawable tells that a thing lies within what numbers can tell apart.
func drawable(whole *scene.Scene, s *scene.Thing) bool {
	const far = 1e9 // times the size of the problem
	for _, q := range s.At {
		if n := r3.Norm(q); !(n <= far*whole.Size) {
			return false
		}
	}
	return len(s.At) > 0
}

// reach is the box of the places that a figure leaves room for, in metres.
func (v View) reach(s *scene.Scene) drawing.Box {
	all := append(make([]drawing.Vec, 0, len(s.Reach)+2*len(s.Things)), v.all(s.Reach, 1)...)
	for i := range s.Things {
		one := &s.Things[i]
		if !drawable(s, one) {
			continue
		}
		for _, q := range one.At {
			all = append(all, v.project(q))
		}
		if one.Kind == scene.Disc {
			all = append(all, v.rim(one, 1, 4)...)
		}
	}
	return drawing.Around(all...)
}

// centre finds where the origin lies when the figure is in the middle of the room.
func (t *setter) centre() {
	middle := t.view.reach(t.scene).Centre().Scale(t.scale)
	if t.m.Zoom <= 1 {
		middle = t.d.Bounds().Centre()
	}
	t.origin = drawing.Vec{X: t.m.Width / 2, Y: t.m.Height / 2}.Sub(middle)
}

// draw draws everything but the labels, which it collects: what is long from the far to
// the near, then what lies on it.
func (t *setter) draw() {
	t.d = drawing.Drawing{Shapes: t.d.Shapes[:0]}
	t.lines, t.hairs, t.wants, t.arrows, t.members = t.lines[:0], t.hairs[:0], t.wants[:0], t.arrows[:0], t.members[:0]
	for _, i := range t.fromFar() {
		t.of = i + 1
		t.long(&t.scene.Things[i])
	}
	for i := range t.scene.Things {
		if s := &t.scene.Things[i]; s.Kind > scene.Spring && drawable(t.scene, s) {
			t.of = i + 1
			t.thing(s)
		}
	}
	t.of = 0
	bounds := t.d.Bounds()
	for i := range t.wants { // dimensions lie below the names of loads
		if w := &t.wants[i]; w.rank <= scene.OfBody && !w.lined {
			bounds = bounds.With(w.spots[0].at.Add(w.spots[0].way.Scale(t.pt(1.5 * textSize))))
		}
	}
	if t.scene.Dimensions != nil {
		t.dimensions(bounds)
	}
	if t.m.Triad && !t.m.Bounded {
		bounds = t.d.Bounds()
		for i := range t.wants { // and the axes beside their names
			if w := &t.wants[i]; !w.lined && w.spots[0].way.X > 0 {
				width, _, _ := t.m.Measure(w.forms[0].runs, w.small)
				bounds = bounds.With(w.spots[0].at.Add(drawing.Vec{X: width * w.spots[0].way.X}))
			}
		}
		t.triad(bounds)
	}
}

// fromFar gives the indices of what is long, in space the far before the near.
func (t *setter) fromFar() (long []int) {
	for i := range t.scene.Things {
		if s := &t.scene.Things[i]; s.Kind <= scene.Spring && drawable(t.scene, s) {
			long = append(long, i)
		}
	}
	depths := make([]float64, len(t.scene.Things))
	if !t.scene.Planar {
		for _, i := range long {
			for _, q := range t.scene.Things[i].At {
				depths[i] += r3.Dot(q, t.view.Toward()) / float64(len(t.scene.Things[i].At))
			}
		}
	}
	slices.SortStableFunc(long, func(a, b int) int { return cmp.Compare(depths[a], depths[b]) })
	return long
}

// line draws a polyline that labels keep off.
func (t *setter) line(tone drawing.Tone, width float64, pts ...drawing.Vec) {
	t.shape(drawing.Shape{Pts: pts, Line: tone, Width: t.pt(width)})
}

// area fills a polygon.
func (t *setter) area(fill, tone drawing.Tone, width float64, pts ...drawing.Vec) {
	t.shape(drawing.Shape{Pts: pts, Closed: true, Line: tone, Width: t.pt(width), Fill: fill})
}

// dashed draws a dashed polyline.
func (t *setter) dashed(tone drawing.Tone, width float64, pts ...drawing.Vec) {
	t.shape(drawing.Shape{Pts: pts, Line: tone, Width: t.pt(width), Dashed: true})
}

func (t *setter) shape(s drawing.Shape) {
	s.Of = t.of
	t.d.Shapes = append(t.d.Shapes, s)
	for a, b := range s.Sides() {
		t.solid(a, b)
	}
}

// solid notes a line that labels keep off.
func (t *setter) solid(a, b drawing.Vec) { t.lines = append(t.lines, segment{a, b}) }

// hair draws a thin line that a label may interrupt.
func (t *setter) hair(a, b drawing.Vec) {
	t.d.Shapes = append(t.d.Shapes, drawing.Shape{Pts: []drawing.Vec{a, b}, Line: drawing.Faint, Width: t.pt(0.4), Of: t.of})
	t.hairs = append(t.hairs, segment{a, b})
}

// What is drawn in rows, such as the arrows of a load and the strokes of a hatching, has an
// end even where a picture is enlarged a million times.
const (
	maxRow    = 200
	maxGround = 1500 // points to either side
)

// count is how many of a row there are.
func (t *setter) count(n float64) int { return int(math.Max(2, math.Min(n, maxRow))) }

// circle is a closed one.
func (t *setter) circle(fill, tone drawing.Tone, width float64, c drawing.Vec, r float64) {
	t.area(fill, tone, width, t.ring(c, r, 0, 2*math.Pi)...)
}

// ring gives an arc, from an angle to another, clockwise from the right.
func (t *setter) ring(c drawing.Vec, r, from, to float64) []drawing.Vec {
	const minPieces, maxPieces = 8, 32 // pieces of a circle, by how far they stand out
	pieces := math.Max(minPieces, math.Min(maxPieces, 6*r/t.m.Fine))
	return drawing.Arc(c, drawing.Vec{X: r}, drawing.Vec{Y: r}, from, to, pieces)
}
