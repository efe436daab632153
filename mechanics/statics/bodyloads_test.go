package statics

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// loads puts known loads on the bodies of a rig, whose resultants are written
// here in closed form (common practice): a trapezoidal load of q1 to q2 along a
// length L has the resultant (q1+q2)L/2 at L(q1+2q2)/(3(q1+q2)) from the first end.
func (m *bodyMaker) loads(r *bodyRig) {
	for b := range r.bodies {
		if m.rng.IntN(3) == 0 {
			at, where := m.end(r, b)
			u, said := m.direction(r)
			size := float64(10 + m.rng.IntN(900))
			r.add("lines", fmt.Sprintf("%s = { kind = \"force\", at = %q, along = %q, magnitude = \"%g N\" }", m.name("F"), at, said, size))
			r.known = append(r.known, wrench{body: b, at: where, f: r3.Scale(size, u)})
		}
		if r.bodies[b].particle {
			continue
		}
		if m.rng.IntN(4) == 0 {
			u, said := m.direction(r)
			if r.planar {
				u, said = r3.Vec{Z: 1}, "+z"
			}
			size := float64(10 + m.rng.IntN(900))
			r.add("couples", fmt.Sprintf("%s = { on = %q, about = %q, magnitude = \"%g N m\" }", m.name("K"), r.bodies[b].name, said, size*r.scale))
			r.known = append(r.known, wrench{body: b, c: r3.Scale(size, u)})
		}
		if m.rng.IntN(4) == 0 {
			m.spreadLoad(r, b)
		}
		if m.rng.IntN(4) == 0 && r.turn == nil { // up does not turn
			m.water(r, b)
		}
	}
}

func (m *bodyMaker) spreadLoad(r *bodyRig, b int) {
	from, a := m.point(r, b)
	to, z := m.point(r, b)
	u, said := m.direction(r)
	length := r3.Norm(r3.Sub(z, a))
	q1, q2 := float64(m.rng.IntN(300)), float64(1+m.rng.IntN(300))
	how := fmt.Sprintf("%v N/m .. %v N/m", q1/r.scale, q2/r.scale)
	if m.rng.IntN(2) == 0 { // the same as an expression over the length
		how = fmt.Sprintf("%v N/m + %v N/m^2 * s", q1/r.scale, (q2-q1)/length/r.scale/r.scale)
	}
	r.add("distributed", fmt.Sprintf("%s = { on = %q, path = \"%s %s\", along = %q, magnitude = %q }", m.name("Q"), r.bodies[b].name, from, to, said, how))
	part := (q1 + 2*q2) / (3 * (q1 + q2))
	r.known = append(r.known, wrench{body: b, at: r3.Add(a, r3.Scale(part, r3.Sub(z, a))), f: r3.Scale((q1+q2)*length/2, u)})
}

// water puts water on a gate between two points of a body, wet in full, in part or not at all.
func (m *bodyMaker) water(r *bodyRig, b int) {
	from, a := m.point(r, b)
	to, z := m.point(r, b)
	u, said := m.direction(r)
	low, high := r3.Dot(a, r.up()), r3.Dot(z, r.up())
	level := low + (3*m.rng.Float64()-1)*(high-low)
	density := float64(100 + m.rng.IntN(900))
	r.add("distributed", fmt.Sprintf("%s = { on = %q, kind = \"hydrostatic\", path = \"%s %s\", along = %q, surface = \"%v m\", width = \"%v m\", density = \"%v kg/m^3\" }",
		m.name("Q"), r.bodies[b].name, from, to, said, r.scale*(level+r3.Dot(r.shift, r.up())), r.scale*0.5, density/math.Pow(r.scale, 3)))
	area, s := waterOn(level-low, level-high, r3.Norm(r3.Sub(z, a)))
	r.known = append(r.known, wrench{body: b, at: r3.Add(a, r3.Scale(s, r3.Unit(r3.Sub(z, a)))), f: r3.Scale(9.81*density*0.5*area, u)})
}

// waterOn gives the resultant of water on a plane gate, over γ and its width, and
// how far from the gate's first end it acts, as hydrostatics has them for the wet area A
// (common practice): F = γ h_c A, at y_p = y_c + I/(y_c A) down the slope from the
// waterline. from and to are the depths of its ends, negative in the air.
func waterOn(from, to, length float64) (f, s float64) {
	if from > to { // from the other end
		f, s = waterOn(to, from, length)
		return f, length - s
	}
	if to <= 0 {
		return 0, 0
	}
	slope := (to - from) / length // the sine of the gate's slope
	wet, top := length, max(0, from)
	if from < 0 {
		wet = to / slope
	}
	centre := (top + to) / 2 // the depth of the wet area's centroid
	off := 0.0
	if slope > 0 {
		yc := centre / slope
		off = wet * wet / 12 / yc // I/(y_c A) with I = b l³/12
	}
	return centre * wet, length - wet/2 + off
}
