package figure

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

const (
	dimensionGap = 12 // points from the figure to its dimensions
	dimensionTip = 4.2
	maxSteps     = 7 // of a chain of dimensions; a longer one shows the whole only
)

// stops are the coordinates of a figure at which there is a point, along one of its axes, in
// metres.
func stops(s *scene.Scene, v View, axis drawing.Vec) (out []float64) {
	for _, q := range s.Reach {
		x := v.project(q).Dot(axis)
		if !slices.ContainsFunc(out, func(o float64) bool { return math.Abs(o-x) <= scene.Flat*s.Size }) {
			out = append(out, x)
		}
	}
	slices.SortFunc(out, cmp.Compare)
	return out
}

// The axes of a figure.
var rightwards, downwards = drawing.Vec{X: 1}, drawing.Vec{Y: 1}

// Dimensioned tells that the dimensions of a figure give the place of each point.
func Dimensioned(s *scene.Scene) bool {
	v := Front(s)
	return s.Planar && max(len(stops(s, v, rightwards)), len(stops(s, v, downwards))) <= maxSteps+1
}

// dimensions draws chains of dimensions below and to the left of the figure, between the
// coordinates at which there is a point.
func (t *setter) dimensions(b drawing.Box) {
	t.chain(rightwards, downwards, b.High.Y+t.pt(dimensionGap))
	t.chain(downwards, rightwards.Scale(-1), t.pt(dimensionGap)-b.Low.X)
}

// chain draws the dimensions along an axis, so far out from the origin.
func (t *setter) chain(axis, out drawing.Vec, far float64) {
	chain := stops(t.scene, t.view, axis)
	if len(chain) > maxSteps+1 {
		chain = []float64{chain[0], chain[len(chain)-1]}
	}
	if len(chain) < 2 {
		return
	}
	at := func(x float64) drawing.Vec { return axis.Scale(x * t.scale).Add(out.Scale(far)) }
	for i, x := range chain {
		end := at(x)
		t.hair(end.Sub(out.Scale(t.offFigure(end, out))), end.Add(out.Scale(t.pt(3))))
		if i > 0 {
			t.dimension(at(chain[i-1]), end, out, x-chain[i-1])
		}
	}
}

// offFigure is how far back from a place on a dimension line its extension line may
// begin, so that it touches nothing that is drawn.
func (t *setter) offFigure(end, out drawing.Vec) float64 {
	gap := t.pt(dimensionGap)
	nearest := math.Inf(1)
	for _, s := range t.lines {
		for _, q := range [3]drawing.Vec{s.a, s.b, s.a.Add(s.b).Scale(0.5)} {
			d := end.Sub(q)
			along, aside := d.Dot(out), math.Abs(d.X*out.Y-d.Y*out.X)
			if aside <= t.pt(3) && along >= 0 {
				nearest = math.Min(nearest, along)
			}
		}
	}
	if math.IsInf(nearest, 0) {
		return gap
	}
	return math.Max(t.pt(3), nearest-t.pt(4))
}

// dimension draws one: a line with tips at its ends, and the length beside it.
func (t *setter) dimension(a, b, out drawing.Vec, length float64) {
	u := b.Sub(a).Unit()
	t.line(drawing.Faint, 0.5, a, b)
	if b.Sub(a).Len() > t.pt(2.5*dimensionTip) {
		t.tip(drawing.Faint, a, u.Scale(-1), t.pt(dimensionTip), t.pt(2.6))
		t.tip(drawing.Faint, b, u, t.pt(dimensionTip), t.pt(2.6))
	}
	t.wants = append(t.wants, want{spots: []spot{{a.Add(b).Scale(0.5), out}}, forms: worded(scene.Plain(t.scene.Dimensions(length))), small: true, first: true, tone: drawing.Dark, rank: scene.OfSize})
}

// axis is one of space as a view shows it: its name, where its unit vector ends, and
// whether it points at the reader (+1), away (-1) or neither.
type axis struct {
	name   string
	at     drawing.Vec
	toward int
}

// axes gives the axes in a view: x, y and, in space, z.
func axes(s *scene.Scene, v View) (all []axis) {
	for k, u := range [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		if s.Planar && k == 2 {
			break
		}
		a := axis{name: string(rune('x' + k)), at: v.project(u)}
		if a.at.Len() < endOn {
			a.toward = int(math.Copysign(1, r3.Dot(u, v.Toward())))
		}
		all = append(all, a)
	}
	return all
}

// triad draws the axes in the corner below the figure on the right.
func (t *setter) triad(b drawing.Box) {
	const long = 20
	o := drawing.Vec{X: b.High.X + t.pt(16), Y: b.High.Y - t.pt(4)}
	for _, a := range axes(t.scene, t.view) {
		w := want{forms: worded(scene.Italic(a.name)), tone: drawing.Dark, rank: scene.OfSize}
		if a.toward != 0 {
			t.alongSight(drawing.Dark, 0.7, o, t.pt(2.6), a.toward > 0)
			w.spots = []spot{{o, drawing.Vec{X: -1, Y: 1}.Unit()}}
		} else {
			end := o.Add(a.at.Scale(t.pt(long)))
			t.shaft(drawing.Dark, o, end, false)
			w.spots = []spot{{end, a.at.Unit()}}
		}
		t.wants = append(t.wants, w)
	}
}

// corner is the one of a screen in which a box hides least; ok is false where it would lie on
// a label in each.
func (t *setter) corner(f *field, size drawing.Vec, wanted bool) (low drawing.Vec, ok bool) {
	room := t.room()
	far := room.High.Sub(size)
	least := int32(math.MaxInt32)
	for _, q := range [4]drawing.Vec{{X: room.Low.X, Y: far.Y}, far, room.Low, {X: far.X, Y: room.Low.Y}} {
		b := drawing.Box{Low: q, High: q.Add(size)}
		if under := f.under(f.squares(b)); wanted && under < least && !f.taken(b) {
			least, low, ok = under, q, true
		}
	}
	if ok {
		f.take(drawing.Box{Low: low, High: low.Add(size)})
	}
	return low, ok
}

// corners has the axes of a screen, and how many labels have no room.
func (t *setter) corners(f *field) {
	const width, height, length, letter = 9, 6, 7.0, 8.5 // cells with the letters; units
	write := func(at drawing.Vec, text string) {
		t.d.Texts = append(t.d.Texts, drawing.Text{At: t.onCell(at, 0), Runs: scene.Plain(text), Tone: drawing.Faint})
	}
	cell := t.m.Cell
	if low, ok := t.corner(f, drawing.Vec{X: width * cell.X, Y: height * cell.Y}, t.m.Triad); ok {
		o := low.Add(drawing.Vec{X: 4 * cell.X, Y: 3 * cell.Y})
		for _, a := range axes(t.scene, t.view) {
			if a.toward == 0 {
				t.d.Line(drawing.Faint, t.m.Fine/2, o, o.Add(a.at.Scale(length)))
				write(o.Add(a.at.Scale(letter)), a.name)
			}
		}
	}
	text := leftOut(t.left)
	if low, ok := t.corner(f, drawing.Vec{X: cell.X * float64(len(text)), Y: cell.Y}, t.left > 0 && float64(len(text)+2)*cell.X <= t.m.Width); ok {
		write(low, text)
	}
}
