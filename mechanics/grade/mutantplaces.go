package grade

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// skew is the smallest component of a unit vector that counts: with a smaller one
// there is no sine and cosine to exchange.
const skew = 1e-6

// exchange exchanges the sizes of two components and keeps their signs, as who takes
// the sine for the cosine does; ok is false where that changes nothing.
func exchange(v r3.Vec, a, b int) (out r3.Vec, ok bool) {
	c := [3]float64{v.X, v.Y, v.Z}
	x, y := math.Abs(c[a]), math.Abs(c[b])
	if x < skew*r3.Norm(v) || y < skew*r3.Norm(v) || math.Abs(x-y) < skew*r3.Norm(v) {
		return v, false
	}
	c[a], c[b] = math.Copysign(y, c[a]), math.Copysign(x, c[b])
	return r3.Vec{X: c[0], Y: c[1], Z: c[2]}, true
}

// turned gives acts with all directions changed; ok is false where none is.
func turned(acts []problem.Act, by func(r3.Vec) (r3.Vec, bool)) (out []problem.Act, ok bool) {
	out = cloned(acts)
	change := func(v *r3.Vec) {
		w, changes := by(*v)
		*v, ok = w, ok || changes
	}
	for i := range out {
		change(&out[i].Const)
		for k := range out[i].Terms {
			change(&out[i].Terms[k].D)
		}
	}
	return out, ok
}

// directions: sine and cosine exchanged in the plane, and a rope over a pulley that
// pulls but once.
func (m *maker) directions() {
	for i, l := range m.p.Lines {
		if len(l.Legs) == 1 && m.p.Planar {
			m.exchanged(i, 0, 1, "sine and cosine of "+l.Name+" were exchanged")
		}
		if len(l.Legs) < 2 {
			continue
		}
		for k := range l.Acts {
			at := slices.Index(l.Path, l.Acts[k].Point)
			if at <= 0 || at >= len(l.Path)-1 {
				continue
			}
			for leg := at - 1; leg <= at; leg++ {
				p, c := m.line(i)
				u := c.Legs[leg].U
				if leg < at {
					u = r3.Scale(-1, u)
				}
				a := &c.Acts[k]
				a.Const = r3.Scale(l.Magnitude.Const, u)
				for t := range a.Terms {
					a.Terms[t].D = r3.Scale(l.Magnitude.Terms[t].Coef, u)
				}
				far := m.p.Points[l.Path[2*leg+1-at]].Name
				m.add(p, fmt.Sprintf("%s pulled at %s towards %s alone", l.Name, m.p.Points[l.Path[at]].Name, far))
			}
		}
	}
}

// exchanged exchanges two components of a line's direction.
func (m *maker) exchanged(i, a, b int, says string) {
	p, c := m.line(i)
	acts, ok := turned(c.Acts, func(v r3.Vec) (r3.Vec, bool) { return exchange(v, a, b) })
	if !ok {
		return
	}
	c.Acts = acts
	c.Legs[0].U, _ = exchange(c.Legs[0].U, a, b)
	m.add(p, says)
}

// spaceDirections: two components of a direction exchanged.
func (m *maker) spaceDirections() {
	if m.p.Planar {
		return
	}
	for i, l := range m.p.Lines {
		for _, pair := range [][2]int{{0, 1}, {0, 2}, {1, 2}} {
			if len(l.Legs) == 1 {
				m.exchanged(i, pair[0], pair[1], fmt.Sprintf("%c and %c of %s's direction were exchanged", "xyz"[pair[0]], "xyz"[pair[1]], l.Name))
			}
		}
	}
}

// joints: sine and cosine of a skew normal exchanged, and impending friction that
// acts the other way.
func (m *maker) joints() {
	for i, j := range m.p.Joints {
		change := func(by func(r3.Vec) (r3.Vec, bool), says string) {
			p := *m.p
			c := own(&p.Joints, i)
			acts, ok := turned(c.Acts, by)
			if !ok || len(acts) == 0 {
				return
			}
			c.Acts, c.Forces = acts, acts[0].Terms
			m.add(&p, says)
		}
		switch {
		case j.Impending:
			change(func(v r3.Vec) (r3.Vec, bool) {
				return r3.Sub(r3.Scale(2*r3.Dot(v, j.Normal), j.Normal), v), true
			}, "friction at "+j.Name+" acted the other way")
		case m.p.Planar && j.Normal != (r3.Vec{}):
			change(func(v r3.Vec) (r3.Vec, bool) { return exchange(v, 0, 1) }, "sine and cosine of "+j.Name+"'s normal were exchanged")
		}
	}
}

// belts: the tight side taken for the slack one, and the drum for a smooth one.
func (m *maker) belts() {
	for b := range m.p.Belts() {
		if b.Tight < 0 {
			continue
		}
		ref := sheet.Ref{Table: "lines", Row: b.Name, Key: "tight"}
		m.reread(ref, m.p.Lines[b.Slack()].Name, "the tight and the slack side of belt "+b.Name+" were exchanged")
		ref.Key = "friction"
		m.reread(ref, smooth, "the drum of belt "+b.Name+" had no friction")
	}
}

// smooth is a coefficient of friction that no result shows: that of a belt is greater than zero.
const smooth = "1e-12"

// angles: an angle that is given taken from the other axis.
func (m *maker) angles() {
	for _, g := range m.p.Givens {
		row, ok := m.k.sheet.Table("given").Row(g.Name)
		if !ok || g.Value.Dim != units.Angle || g.Value.N != 1 {
			continue
		}
		ref := sheet.Ref{Table: "given", Row: g.Name, Key: "value"}
		if _, bare := row.Cell(""); bare {
			ref.Key = ""
		}
		deg := g.Value.V[0] * 180 / math.Pi
		m.reread(ref, fmt.Sprintf("%.12g deg", 90-deg), "sine and cosine of "+g.Name+" were exchanged")
	}
}

// arms: a force on a rigid body that acts at another point of it.
func (m *maker) arms() {
	for i, l := range m.p.Lines {
		for k, a := range l.Acts {
			body := m.p.Bodies[a.Body]
			if body.Particle {
				continue
			}
			for _, at := range body.Points {
				if at == a.Point || m.p.Points[at].At == a.At {
					continue
				}
				p, c := m.line(i)
				c.Acts[k].At, c.Acts[k].Point = m.p.Points[at].At, at
				m.add(p, l.Name+" acted at "+m.p.Points[at].Name)
			}
		}
	}
	for i, b := range m.p.Bodies {
		for _, at := range b.Points {
			if !known(b.Acts) || m.p.Points[at].At == b.Centre {
				continue
			}
			p := *m.p
			body := own(&p.Bodies, i)
			body.Acts = cloned(b.Acts)
			body.Acts[0].At = m.p.Points[at].At
			m.add(&p, "the weight of "+b.Name+" acted at "+m.p.Points[at].Name)
		}
	}
}

// points: two coordinates of a point exchanged, or one with the other sign.
func (m *maker) points() {
	axes := []int{0, 1, 2}
	if m.p.Planar {
		axes = axes[:2]
	}
	for _, pt := range m.p.Points {
		row, ok := m.k.sheet.Table("points").Row(pt.Name)
		if !ok {
			continue
		}
		ref := sheet.Ref{Table: "points", Row: pt.Name, Key: "at"}
		if _, bare := row.Cell(""); bare {
			ref.Key = ""
		}
		at := [3]float64{pt.At.X, pt.At.Y, pt.At.Z}
		write := func(c [3]float64, says string) {
			parts := make([]string, len(axes))
			for i, a := range axes {
				parts[i] = fmt.Sprintf("%.15g m", c[a])
			}
			m.reread(ref, strings.Join(parts, ", "), says)
		}
		for i, a := range axes {
			for _, b := range axes[i+1:] {
				if c := at; c[a] != c[b] {
					c[a], c[b] = c[b], c[a]
					write(c, fmt.Sprintf("%c and %c of %s were exchanged", "xyz"[a], "xyz"[b], pt.Name))
				}
			}
		}
		for _, a := range axes {
			if c := at; c[a] != 0 {
				c[a] = -c[a]
				write(c, fmt.Sprintf("%c of %s had the other sign", "xyz"[a], pt.Name))
			}
		}
	}
}
