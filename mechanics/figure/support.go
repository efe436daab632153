package figure

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// Sign is the drawing that stands for a support in a textbook's table of supports.
type Sign int

// The signs.
const (
	PinSign     Sign = iota // a triangle on hatched ground
	RollerSign              // a wheel on hatched ground
	SmoothSign              // a surface, hatched behind
	RoughSign               // a surface with teeth, hatched behind
	BallSign                // a ball in its socket
	FixedSign               // a wall across the body, hatched behind
	BearingSign             // two plates along the axis
	SliderSign              // a rod along the axis, and a block on it
)

// signs gives the sign of each kind of joint in the plane; in space what turns
// about an axis is drawn as a bearing.
var signs = map[string]Sign{
	"roller": RollerSign, "rocker": RollerSign, "smooth-surface": SmoothSign, "rough-surface": RoughSign, "pin": PinSign,
	"ball-and-socket": BallSign, "hinge": PinSign, "journal-bearing": BearingSign, "square-bearing": BearingSign,
	"thrust-bearing": BearingSign, "slider": SliderSign, "collar": SliderSign, "fixed": FixedSign,
}

// Mark is where a support's sign stands, for a canvas that has characters and no
// lines: the Support strokes of the same Ref draw it. Toward is a unit vector from
// the support to what it holds, or along its axis; zero where that points at the
// reader or away.
type Mark struct {
	At, Toward Vec
	Sign       Sign
	Ref        sheet.Ref
}

// supports draws the sign of each joint to the ground, and the rod or surface
// of those between two bodies.
func (d *drawing) supports() {
	for i := range d.p.Joints {
		j := &d.p.Joints[i]
		if !j.OK || j.Point < 0 || j.Point >= len(d.p.Points) || !d.p.Points[j.Point].OK {
			continue
		}
		sign := d.sign(j)
		if !grounded(*j) && sign != SliderSign && sign != SmoothSign && sign != RoughSign {
			continue // a ring is a pin between two bodies
		}
		m := Mark{At: d.view.Project(d.p.Points[j.Point].At), Toward: d.toward(j, sign), Sign: sign, Ref: j.Ref}
		d.fig.Marks = append(d.fig.Marks, m)
		d.from(d.p.Points[j.Point].At, d.p.Points[j.Point].At)
		d.sketch(m, grounded(*j))
	}
}

func (d *drawing) sign(j *problem.Joint) Sign {
	name := j.Kind.Info().Name
	if !d.p.Planar && j.Kind.Where(false).Needs == "axis" && signs[name] == PinSign {
		return BearingSign
	}
	return signs[name]
}

// toward is the way a sign faces in the picture: along the normal or the axis, for
// a wall along the body, else upwards.
func (d *drawing) toward(j *problem.Joint, sign Sign) Vec {
	v := d.p.Up
	switch sign {
	case RollerSign, SmoothSign, RoughSign:
		v = j.Normal
	case BearingSign, SliderSign:
		v = j.Axis
	case FixedSign:
		v = d.outward(j)
	}
	t := d.view.Project(v)
	n := math.Hypot(t.X, t.Y)
	// Below this share of its length a direction is seen end on.
	const flat = 0.2
	switch {
	case n > flat*r3.Norm(v) && n > 0:
		return Vec{t.X / n, t.Y / n}
	case sign == PinSign || sign == BallSign || sign == FixedSign:
		return Vec{0, 1}
	}
	return Vec{}
}

// outward is the way from a joint to the other points of its body.
func (d *drawing) outward(j *problem.Joint) r3.Vec {
	body, from := j.First, d.p.Points[j.Point].At
	if body == problem.Ground {
		body = j.Second
	}
	if body < 0 || body >= len(d.p.Bodies) {
		return d.p.Up
	}
	var sum r3.Vec
	for _, i := range d.p.Bodies[body].Points {
		if i >= 0 && i < len(d.p.Points) && d.p.Points[i].OK {
			sum = r3.Add(sum, r3.Sub(d.p.Points[i].At, from))
		}
	}
	if r3.Norm(sum) == 0 {
		return d.p.Up
	}
	return sum
}

// supportShare is the height of a support's sign as a share of the diagonal.
const supportShare = 0.06

// sketch draws a sign in lines. Below, u runs from the support to what it
// holds, in units of its height, and t across.
func (d *drawing) sketch(m Mark, hatched bool) {
	h := supportShare * d.size
	at := func(t, u float64) Vec {
		return Vec{m.At.X + h*(u*m.Toward.X-t*m.Toward.Y), m.At.Y + h*(u*m.Toward.Y+t*m.Toward.X)}
	}
	draw := func(pts ...Vec) { d.stroke(Support, m.Ref, false, pts...) }
	ground := func(half, u float64) {
		draw(at(-half, u), at(half, u))
		for k := -1.0; hatched && k <= 1; k += 0.5 {
			draw(at(k*half, u), at(k*half-0.35, u-0.45))
		}
	}
	if m.Toward == (Vec{}) {
		draw(ring(m.At, 0.6*h)...)
		return
	}
	switch m.Sign {
	case PinSign:
		draw(at(0, 0), at(-0.6, -1), at(0.6, -1), at(0, 0))
		ground(0.9, -1)
	case RollerSign:
		draw(ring(at(0, -0.5), 0.5*h)...)
		ground(0.9, -1)
	case SmoothSign:
		ground(1, 0)
	case RoughSign:
		var teeth []Vec
		for k := range 9 {
			teeth = append(teeth, at(-1+0.25*float64(k), -0.3*float64(k%2)))
		}
		draw(teeth...)
		ground(1, -0.3)
	case BallSign:
		draw(ring(m.At, 0.35*h)...)
		var socket []Vec
		for k := range 9 {
			s, c := math.Sincos(math.Pi * (1 + float64(k)/8))
			socket = append(socket, at(0.65*c, 0.65*s))
		}
		draw(socket...)
		ground(0.9, -0.7)
	case FixedSign:
		ground(1.2, 0)
	case BearingSign:
		for _, side := range []float64{-0.5, 0.5} {
			draw(at(side, -0.7), at(side, 0.7))
			for k := -0.7; hatched && k <= 0.7; k += 0.7 {
				draw(at(side, k), at(1.8*side, k-0.3))
			}
		}
	case SliderSign:
		draw(at(0, -1.6), at(0, 1.6))
		draw(at(-0.4, -0.5), at(0.4, -0.5), at(0.4, 0.5), at(-0.4, 0.5), at(-0.4, -0.5))
	}
}
