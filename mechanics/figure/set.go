package figure

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/ink"
	"trivet/mechanics/scene"
)

// Drawing is a scene set in a view: what is drawn, by the things of the scene, and what
// had no room.
type Drawing struct {
	ink.Drawing
	Scale   float64 // units a metre
	LeftOut int     // labels without room
	view    View
	origin  ink.Vec
	zero    [][]ink.Run // forces that are zero, and not drawn
}

// Place is where a place of space lies on the drawing.
func (d *Drawing) Place(q r3.Vec) ink.Vec { return d.view.Project(q).Scale(d.Scale).Add(d.origin) }

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
	t.place()
	if m.Bounded {
		t.d.Move(t.origin)
		t.d.Width, t.d.Height = m.Width, m.Height
	}
	return Drawing{Drawing: t.d, Scale: t.scale, LeftOut: t.left, view: v, origin: t.origin, zero: s.Zero}
}

// setter is a scene being set.
type setter struct {
	scene  *scene.Scene
	view   View
	m      *Medium
	scale  float64 // units a metre
	origin ink.Vec // where the origin of space lies

	d      ink.Drawing
	of     int // 1 + the thing that is drawn
	lines  []stroke
	wants  []want
	arrows []segment
	quiet  bool // labels are not asked for yet
	left   int
}

type segment struct{ a, b ink.Vec }

// stroke is a line on the way of labels.
type stroke struct {
	segment
	weight int32 // solid or thin
}

// at projects a place.
func (t *setter) at(q r3.Vec) ink.Vec { return t.view.Project(q).Scale(t.scale) }

// dir projects a direction; its length is what foreshortening leaves of 1.
func (t *setter) dir(u r3.Vec) ink.Vec { return t.view.Project(u) }

// pt is so many points of paper.
func (t *setter) pt(x float64) float64 { return x * t.m.Point }

// fit finds the scale at which all but the labels fills the room; symbols do not shrink
// with it, so that what they take beside the places is taken off first.
func (t *setter) fit() {
	low, high := reach(t.view, placesOf(t.scene))
	size := high.Sub(low)
	full := ink.Vec{X: t.m.Width, Y: t.m.Height}.Sub(t.m.Beside.Scale(2))
	fill := func(room ink.Vec) {
		const least = 0.3 // of the room is left to the places
		t.scale = math.Inf(1)
		if size.X > 0 {
			t.scale = math.Max(room.X, least*full.X) / size.X
		}
		if size.Y > 0 {
			t.scale = math.Min(t.scale, math.Max(room.Y, least*full.Y)/size.Y)
		}
		if math.IsInf(t.scale, 0) || math.IsNaN(t.scale) {
			t.scale = math.Min(full.X, full.Y) / t.scene.Size
		}
	}
	fill(full)
	t.draw()
	bounds := t.d.Bounds()
	b := bounds.High.Sub(bounds.Low)
	fill(full.Sub(b.Sub(size.Scale(t.scale))))
	if t.m.Bounded && size.X == 0 && size.Y == 0 { // arrows at one place: they alone have a size
		const most = 2.5 // times that of a symbol
		t.m.Point *= math.Max(1, math.Min(most, math.Min(full.X/b.X, full.Y/b.Y))) * math.Max(1/most, math.Min(most, cmp.Or(t.m.Zoom, 1)))
	}
	if t.m.Zoom > 0 {
		t.scale *= t.m.Zoom
	}
}

// drawable tells that a thing lies within what numbers can tell apart.
func (t *setter) drawable(s *scene.Thing) bool { return drawable(t.scene, s) }

func drawable(whole *scene.Scene, s *scene.Thing) bool {
	const far = 1e9 // times the size of the problem
	for _, q := range s.At {
		if n := r3.Norm(q); !(n <= far*whole.Size) {
			return false
		}
	}
	return len(s.At) > 0
}

// placesOf are those that a figure leaves room for.
func placesOf(whole *scene.Scene) []r3.Vec {
	all := slices.Clone(whole.Reach)
	for i := range whole.Things {
		if s := &whole.Things[i]; drawable(whole, s) {
			all = append(all, s.At...)
			if e1, e2 := perpendicular(s.Along); s.Kind == scene.Disc {
				for _, e := range [4]r3.Vec{e1, e2, r3.Scale(-1, e1), r3.Scale(-1, e2)} {
					all = append(all, r3.Add(s.At[0], r3.Scale(s.Radius, e)))
				}
			}
		}
	}
	return all
}

// reach bounds places, in metres.
func reach(v View, places []r3.Vec) (low, high ink.Vec) {
	for i, q := range places {
		at := v.Project(q)
		if i == 0 {
			low, high = at, at
		}
		low, high = ink.Vec{X: math.Min(low.X, at.X), Y: math.Min(low.Y, at.Y)}, ink.Vec{X: math.Max(high.X, at.X), Y: math.Max(high.Y, at.Y)}
	}
	return low, high
}

// centre finds where the origin lies when the figure is in the middle of the room.
func (t *setter) centre() {
	low, high := reach(t.view, placesOf(t.scene))
	b := ink.Box{Low: low.Scale(t.scale), High: high.Scale(t.scale)}
	if t.m.Zoom <= 1 {
		b = t.d.Bounds()
	}
	t.origin = ink.Vec{X: t.m.Width / 2, Y: t.m.Height / 2}.Sub(b.Centre())
}

// draw draws everything but the labels, which it collects: what is long from the far to
// the near, then what lies on it.
func (t *setter) draw() {
	t.d = ink.Drawing{Shapes: t.d.Shapes[:0]}
	t.lines, t.wants, t.arrows = t.lines[:0], t.wants[:0], t.arrows[:0]
	for _, group := range t.groups() {
		t.long(group)
	}
	for i := range t.scene.Things {
		if s := &t.scene.Things[i]; s.Kind > scene.Spring && t.drawable(s) {
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
	if t.scene.Dimensions != nil && !t.m.NoDimensions {
		t.dimensions(bounds)
	}
	if t.m.Triad {
		bounds = t.d.Bounds()
		for i := range t.wants { // and the axes beside their names
			if w := &t.wants[i]; !w.lined && w.spots[0].way.X > 0 {
				width, _, _ := t.m.Measure(w.full, w.small)
				bounds = bounds.With(w.spots[0].at.Add(ink.Vec{X: width * w.spots[0].way.X}))
			}
		}
		t.triad(bounds)
	}
}

// groups are the indices of what is long: the bars of one body together, and in space the
// far before the near.
func (t *setter) groups() (groups [][]int) {
	for i := range t.scene.Things {
		s := &t.scene.Things[i]
		if s.Kind > scene.Spring || !t.drawable(s) {
			continue
		}
		if last := len(groups) - 1; s.Kind == scene.Bar && last >= 0 && t.scene.Things[groups[last][0]].Kind == scene.Bar && t.scene.Things[groups[last][0]].Ref == s.Ref {
			groups[last] = append(groups[last], i)
			continue
		}
		groups = append(groups, []int{i})
	}
	if t.scene.Planar {
		return groups
	}
	toward := t.view.Toward()
	depth := func(group []int) float64 {
		sum, n := 0.0, 0.0
		for _, i := range group {
			for _, q := range t.scene.Things[i].At {
				sum, n = sum+r3.Dot(q, toward), n+1
			}
		}
		return sum / n
	}
	slices.SortStableFunc(groups, func(a, b []int) int { return cmp.Compare(depth(a), depth(b)) })
	return groups
}

// line draws a polyline that labels keep off.
func (t *setter) line(tone ink.Tone, width float64, pts ...ink.Vec) {
	t.shape(ink.Shape{Pts: pts, Line: tone, Width: t.pt(width)})
}

// area fills a polygon.
func (t *setter) area(fill, tone ink.Tone, width float64, pts ...ink.Vec) {
	t.shape(ink.Shape{Pts: pts, Closed: true, Line: tone, Width: t.pt(width), Fill: fill})
}

func (t *setter) shape(s ink.Shape) {
	s.Of = t.of
	t.d.Shapes = append(t.d.Shapes, s)
	for a, b := range s.Sides() {
		t.solid(a, b)
	}
}

// solid notes a line that labels keep off.
func (t *setter) solid(a, b ink.Vec) { t.lines = append(t.lines, stroke{segment{a, b}, solid}) }

// hair draws a thin line that a label may interrupt.
func (t *setter) hair(a, b ink.Vec) {
	t.d.Shapes = append(t.d.Shapes, ink.Shape{Pts: []ink.Vec{a, b}, Line: ink.Faint, Width: t.pt(0.4), Of: t.of})
	t.lines = append(t.lines, stroke{segment{a, b}, thin})
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
func (t *setter) circle(fill, tone ink.Tone, width float64, c ink.Vec, r float64) {
	t.area(fill, tone, width, t.ring(c, r, 0, 2*math.Pi)...)
}

// ring gives an arc, from an angle to another, clockwise from the right.
func (t *setter) ring(c ink.Vec, r, from, to float64) []ink.Vec {
	const least, most = 8, 32 // pieces of a circle, by how far they stand out
	full := math.Max(least, math.Min(most, 6*r/t.m.Fine))
	return ink.Arc(c, ink.Vec{X: r}, ink.Vec{Y: r}, from, to, full)
}
