package picture

import (
	"fmt"
	"math"

	"trivet/mechanics/figure"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/keys"
)

// Camera is where the picture is seen from, and what of a problem it shows.
type Camera struct {
	Turn, Tilt float64 // of the view in space, rad
	Zoom       float64
	Polygon    bool // the force polygon of a particle stands in place of the problem

	from   keys.Intent // ViewFront, ViewSide, ViewTop or ViewSpace
	plain  bool        // characters instead of dots
	arrows figure.Arrows
	sizes  bool // the lengths of lines are written
}

// The view in space starts from where a textbook draws its axes: a little from
// the left and from above. A key turns by fifteen degrees.
const (
	startTurn = -math.Pi / 6
	startTilt = math.Pi / 9
	step      = math.Pi / 12
	ZoomStep  = 1.25
	maxZoom   = 64
)

// NewCamera is the camera that a session begins with.
func NewCamera() Camera {
	return Camera{from: keys.ViewSpace, Turn: startTurn, Tilt: startTilt, Zoom: 1}
}

// flat are the views along an axis, and the turn and tilt at which the view in space is the same.
var flat = map[keys.Intent]struct {
	name       string
	of         func(*scene.Scene) figure.View
	turn, tilt float64
}{
	keys.ViewFront: {name: "front", of: figure.Front},
	keys.ViewSide:  {name: "side", of: figure.Side, turn: math.Pi / 2},
	keys.ViewTop:   {name: "top", of: figure.Top, tilt: math.Pi / 2},
}

// View is how a scene is seen.
func (c Camera) View(s *scene.Scene) figure.View {
	if v, ok := flat[c.from]; ok {
		return v.of(s)
	}
	return figure.Space(s, c.Turn, c.Tilt)
}

// Options are how a picture shows, on a screen of these characters.
func (c Camera) Options(ascii, stale bool, on sheet.Ref) Options {
	return Options{ASCII: ascii != c.plain, Zoom: c.Zoom, On: on, Arrows: c.arrows, Stale: stale}
}

// Name is the view in words.
func (c Camera) Name(p *problem.Problem) string {
	if p != nil && p.Planar {
		return "in its plane"
	}
	if v, ok := flat[c.from]; ok {
		return v.name
	}
	return "in space"
}

// Words tell in full from where the picture is seen.
func (c Camera) Words(p *problem.Problem) string {
	s := "seen " + c.Name(p)
	if c.from == keys.ViewSpace && (p == nil || !p.Planar) {
		s += fmt.Sprintf(", turned %.0f°, from %.0f° above", c.Turn*180/math.Pi, c.Tilt*180/math.Pi)
	}
	if c.Zoom != 1 {
		s += fmt.Sprintf(", %.2g times", c.Zoom)
	}
	return s
}

// Plain is the camera without the lengths of lines.
func (c Camera) Plain() Camera {
	c.sizes = false
	return c
}

// turns are by how much a key turns and tilts.
var turns = map[keys.Intent][2]float64{keys.Left: {-step, 0}, keys.Right: {step, 0}, keys.Up: {0, step}, keys.Down: {0, -step}}

// Do does an intent of the picture, and says what cannot be seen from it.
func (c *Camera) Do(i keys.Intent) (says string, ok bool) {
	switch i {
	case keys.ViewFront, keys.ViewSide, keys.ViewTop, keys.ViewSpace:
		c.from = i
	case keys.Left, keys.Right, keys.Up, keys.Down:
		c.TurnBy(turns[i][0], turns[i][1])
	case keys.Nearer:
		c.Zoom = math.Min(c.Zoom*ZoomStep, maxZoom)
	case keys.Farther:
		c.Zoom = math.Max(c.Zoom/ZoomStep, 1.0/maxZoom)
	case keys.Fit:
		c.Zoom = 1
	case keys.Characters:
		c.plain = !c.plain
	case keys.ArrowLengths:
		c.arrows = (c.arrows + 1) % (figure.Equal + 1)
		says = [...]string{"arrows: longer where the force is larger", "arrows: to scale", "arrows: all alike"}[c.arrows]
	case keys.Dimensions:
		c.sizes = !c.sizes
	default:
		return "", false
	}
	return says, true
}

// TurnBy turns and tilts from where the picture is seen, rad; a turn from a view along an axis
// goes on from there.
func (c *Camera) TurnBy(turn, tilt float64) {
	if v, ok := flat[c.from]; ok {
		c.Turn, c.Tilt = v.turn, v.tilt
	}
	c.from = keys.ViewSpace
	c.Turn = math.Remainder(c.Turn+turn, 2*math.Pi)
	c.Tilt = math.Max(-math.Pi/2, math.Min(math.Pi/2, c.Tilt+tilt))
}

// Shot is what the picture shows: two that are equal show the same.
type Shot struct {
	Problem  *problem.Problem
	Solution *statics.Solution
	sizes    bool
	polygon  int // the body whose force polygon it is, -1 for none
}

// Shot is what shows of a problem while a row is selected.
func (c Camera) Shot(p *problem.Problem, s *statics.Solution, on sheet.Ref) Shot {
	shot := Shot{p, s, c.sizes, -1}
	if c.Polygon {
		shot.polygon = particle(p, on)
	}
	return shot
}

// Scene is the scene of it: the problem, or the force polygon of a particle, whose name it gives.
func (s Shot) Scene() (_ scene.Scene, polygonOf string) {
	if s.polygon >= 0 {
		if polygon, ok := scene.Polygon(s.Problem, s.Solution, s.polygon); ok {
			return polygon, s.Problem.Bodies[s.polygon].Name
		}
	}
	return scene.System(s.Problem, s.Solution, scene.Options{Reactions: true, Lengths: s.sizes}), ""
}

// TogglePolygon shows the force polygon of a particle, where its forces are known, or the problem
// again.
func (c *Camera) TogglePolygon(p *problem.Problem, s *statics.Solution, on sheet.Ref) (says string) {
	if c.Polygon = !c.Polygon; !c.Polygon {
		return ""
	}
	shot := c.Shot(p, s, on)
	_, of := shot.Scene()
	if c.Polygon = of != ""; c.Polygon {
		return "the forces on " + of + " tip to tail: the polygon closes in equilibrium; g returns to the picture"
	}
	if shot.polygon < 0 {
		return "a force polygon needs a particle, and this sheet has none"
	}
	return "a force on the particle is unknown, so there is no polygon"
}

// particle is the selected one, else the first; -1 where the problem has none.
func particle(p *problem.Problem, on sheet.Ref) int {
	first := -1
	if p == nil {
		return first
	}
	for i, b := range p.Bodies {
		if !b.Particle || b.Bare {
			continue
		}
		if first < 0 {
			first = i
		}
		for _, k := range b.Points {
			if on.Table == "points" && p.Points[k].Name == on.Row {
				return i
			}
		}
	}
	return first
}
