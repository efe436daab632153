package statics

import (
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// bodyMaker makes random rigs of bodies.
type bodyMaker struct {
	rng    *rand.Rand
	serial int
	view
	planar, chosen bool // the next rig is planar, or not, as chosen
}

func newBodyMaker(seed uint64) *bodyMaker {
	return &bodyMaker{rng: rand.New(rand.NewPCG(seed, 5)), view: plain()}
}

func (m *bodyMaker) name(stem string) string {
	m.serial++
	return fmt.Sprint(stem, m.serial)
}

// vector has components from -size to size, of three decimals as people type them.
func (m *bodyMaker) vector(r *bodyRig, size float64) r3.Vec {
	c := func() float64 { return math.Round(1000*size*(2*m.rng.Float64()-1)) / 1000 }
	v := r3.Vec{X: c(), Y: c()}
	if !r.planar {
		v.Z = c()
	}
	return v
}

// direction gives a unit vector and how it is typed.
func (m *bodyMaker) direction(r *bodyRig) (r3.Vec, string) {
	axes := []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}, {X: -1}, {Y: -1}, {Z: -1}}
	if k := m.rng.IntN(6); m.rng.IntN(3) == 0 && (!r.planar || k%3 < 2) {
		if r.turn != nil {
			return axes[k], "(" + r.way(axes[k]) + ")"
		}
		return axes[k], []string{"+x", "+y", "+z", "-x", "-y", "-z"}[k]
	}
	v := m.vector(r, 1)
	for r3.Norm(v) < 0.1 {
		v = m.vector(r, 1)
	}
	return r3.Unit(v), "(" + r.way(v) + ")"
}

// point adds a point near some bodies, on them; on none it is ground.
func (m *bodyMaker) point(r *bodyRig, bodies ...int) (string, r3.Vec) {
	name := m.name("P")
	at, on := m.vector(r, 6), ""
	if len(bodies) > 0 {
		at = r3.Vec{}
	}
	for k, b := range bodies {
		at = r3.Add(at, r3.Scale(1/float64(len(bodies)), r.bodies[b].centre))
		if k > 0 {
			on += " "
		}
		on += r.bodies[b].name
		r.bodies[b].points = append(r.bodies[b].points, name)
	}
	if len(bodies) > 0 {
		at = r3.Add(at, m.vector(r, 2))
	}
	r.points = append(r.points, fmt.Sprintf("%s = { at = \"%s\", on = \"%s\" }", name, r.place(at), on))
	return name, at
}

// end is a point of a body to tie something to: a particle has one only, and
// body -1 is the ground.
func (m *bodyMaker) end(r *bodyRig, b int) (string, r3.Vec) {
	switch {
	case b < 0:
		return m.point(r)
	case r.bodies[b].particle:
		return r.bodies[b].name, r.bodies[b].centre
	}
	return m.point(r, b)
}

// bodies adds n bodies, some of them particles. The first point of a body is its centre.
func (m *bodyMaker) bodies(r *bodyRig, n int) {
	for range n {
		b := rigidBody{name: m.name("b"), particle: m.rng.IntN(6) == 0, centre: m.vector(r, 4)}
		on := b.name
		if b.particle {
			b.points, on = []string{b.name}, "particle"
		} else {
			b.points = []string{m.name("M")}
		}
		r.points = append(r.points, fmt.Sprintf("%s = { at = \"%s\", on = %q }", b.points[0], r.place(b.centre), on))
		r.bodies = append(r.bodies, b)
		if i := len(r.bodies) - 1; !b.particle {
			m.point(r, i)
			row := ""
			if m.rng.IntN(2) == 0 {
				about, _ := m.point(r, i)
				row = fmt.Sprintf("about = %q, ", about)
			}
			if m.rng.IntN(3) == 0 {
				weight, at := float64(10+m.rng.IntN(500)), m.vector(r, 5)
				if r.turn == nil { // up does not turn
					row += fmt.Sprintf("weight = \"%.0f kg\", centre = \"%s\", ", weight, r.place(at))
					r.known = append(r.known, wrench{body: i, at: at, f: r3.Scale(-9.81*weight, r.up())})
				}
			}
			if row != "" {
				r.add("bodies", fmt.Sprintf("%s = { %s }", b.name, row[:len(row)-2]))
			}
		}
	}
}

// maxRigCond is the condition number up to which a rig is taken: its unknowns then
// carry far more figures than the 1e-9 that the tests ask for.
const maxRigCond = 1e5

// determinate makes a rig with as many independent unknowns as equations. Bodies
// come in groups that hold on to each other, to earlier ones and to the ground.
func (m *bodyMaker) determinate() *bodyRig {
	for {
		planar := m.planar
		if !m.chosen {
			planar = m.rng.IntN(2) == 0
		}
		r := &bodyRig{planar: planar, rows: map[string][]string{}, view: m.view}
		m.bodies(r, 1+m.rng.IntN(6))
		for first := 0; first < len(r.bodies); {
			n := min(1+m.rng.IntN(3), len(r.bodies)-first)
			m.hold(r, first, n)
			first += n
		}
		m.tie(r)
		var lu mat.LU
		lu.Factorize(r.matrix(r.parts))
		if lu.Cond() < maxRigCond {
			m.loads(r)
			return r
		}
	}
}

// hold adds parts to bodies first.. until they have as many unknowns as equations.
func (m *bodyMaker) hold(r *bodyRig, first, n int) {
	left := make([]int, n)
	for k := range n {
		left[k] = r.dim(first + k)
	}
	for {
		k := 0
		for i := range left {
			if left[i] > left[k] {
				k = i
			}
		}
		if left[k] == 0 {
			return
		}
		other := -1
		if m.rng.IntN(2) == 0 {
			other = m.rng.IntN(first + n)
		}
		if other == first+k {
			other = -1
		}
		p := m.part(r, first+k, other, left[k])
		r.parts = append(r.parts, p)
		left[k] -= len(p.cols)
	}
}
