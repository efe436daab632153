package statics

import (
	"fmt"

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
