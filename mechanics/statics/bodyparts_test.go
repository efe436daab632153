package statics

import (
	"fmt"
	"math/big"

	"gonum.org/v1/gonum/spatial/r3"
)

// rigJoint is what a textbook's table of supports says of a joint (common
// practice): the forces and moments it holds, n all of them, a across its axis,
// 1 along its normal.
type rigJoint struct {
	kind            string
	forces, moments byte
	lacks           bool // may lack its moments
}

var planeJoints = []rigJoint{{"pin", 'n', '0', false}, {"hinge", 'n', '0', false}, {"ball-and-socket", 'n', '0', false},
	{"fixed", 'n', 'n', false}, {"slider", 'a', '0', false}, {"collar", 'a', 'n', true}, {"roller", '1', '0', false},
	{"rocker", '1', '0', false}, {"smooth", '1', '0', false}, {"rough", 'r', '0', false}, {"rough", 'i', '0', false}}

var spaceJoints = []rigJoint{{"ball", 'n', '0', false}, {"pin", 'n', 'a', true}, {"hinge", 'n', 'a', true}, {"thrust-bearing", 'n', 'a', true},
	{"journal-bearing", 'a', 'a', true}, {"square-bearing", 'a', 'n', true}, {"slider", 'a', '0', false}, {"collar", 'a', 'a', true},
	{"fixed", 'n', 'n', false}, {"roller", '1', '0', false}, {"smooth-surface", '1', '0', false}, {"rough-surface", 'r', '0', false}, {"rough-surface", 'i', '0', false}}

// across gives unit vectors across n, in the plane one of them.
func across(r *bodyRig, n r3.Vec) []r3.Vec {
	if r.planar {
		return []r3.Vec{{X: -n.Y, Y: n.X}}
	}
	e := r3.Vec{X: 1}
	if n.X*n.X > 0.5 {
		e = r3.Vec{Y: 1}
	}
	u := r3.Unit(r3.Cross(n, e))
	return []r3.Vec{u, r3.Cross(n, u)}
}

func (r *bodyRig) every(moment bool) []r3.Vec {
	switch {
	case r.planar && moment:
		return []r3.Vec{{Z: 1}}
	case r.planar:
		return []r3.Vec{{X: 1}, {Y: 1}}
	}
	return []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
}

// part holds a body to another, or to the ground, by at most so many unknowns.
func (m *bodyMaker) part(r *bodyRig, b, other, most int) part {
	for {
		if m.rng.IntN(3) > 0 {
			if p, ok := m.joint(r, b, other, most); ok {
				return p
			}
		}
		switch m.rng.IntN(5) {
		case 0, 1:
			return m.stay(r, b, other)
		case 2:
			return m.rope(r, b, other)
		case 3:
			return m.push(r, b)
		case 4:
			if !r.bodies[b].particle {
				u, typed := m.direction(r)
				if r.planar {
					u, typed = r3.Vec{Z: -1}, "-z"
				}
				return part{table: "couples", name: m.name("K"), row: fmt.Sprintf("on = %q, about = %q", r.bodies[b].name, typed),
					cols: [][]wrench{{{body: b, c: u}}}}
			}
		}
	}
}

func (m *bodyMaker) joint(r *bodyRig, b, other, most int) (part, bool) {
	if r.bodies[b].particle || other >= 0 && r.bodies[other].particle {
		return part{}, false
	}
	table := spaceJoints
	if r.planar {
		table = planeJoints
	}
	j := pick(m.rng, table...)
	u, typed := m.direction(r)
	sides := across(r, u)
	row := fmt.Sprintf("kind = %q", j.kind)
	lack := j.lacks && m.rng.IntN(3) == 0
	if lack {
		row += ", moments = \"none\""
	}
	var forces, moments []r3.Vec
	push := false
	switch j.forces {
	case 'n':
		forces = r.every(false)
	case 'a':
		forces = sides
	case '1':
		forces, push = []r3.Vec{u}, true
	case 'r':
		forces, push = append([]r3.Vec{u}, sides...), true
	case 'i':
		slip, said := m.direction(r)
		slip = r3.Sub(slip, r3.Scale(r3.Dot(slip, u), u))
		if r3.Norm(slip) < 0.1 {
			return part{}, false
		}
		forces, push = []r3.Vec{r3.Sub(u, r3.Scale(0.3, r3.Unit(slip)))}, true
		row += fmt.Sprintf(", friction = \"0.3\", impending = %q", said)
	}
	switch {
	case lack || j.moments == '0':
	case j.moments == 'n':
		moments = r.every(true)
	default:
		moments = sides
	}
	if len(forces)+len(moments) > most {
		return part{}, false
	}
	if j.forces == 'a' || j.moments == 'a' {
		row += fmt.Sprintf(", axis = %q", typed)
	} else if push {
		row += fmt.Sprintf(", normal = %q", typed)
	}
	p := part{table: "joints", name: m.name("J"), forces: len(forces), push: push}
	bodies := []int{b}
	if other >= 0 {
		bodies = append(bodies, other)
	}
	at, where := m.point(r, bodies...)
	p.row = fmt.Sprintf("at = %q, %s", at, row)
	if other >= 0 && m.rng.IntN(2) == 0 { // the first body is the one that on names first
		p.row += fmt.Sprintf(", on = \"%s %s\"", r.bodies[other].name, r.bodies[b].name)
		bodies[0], bodies[1] = other, b
	}
	for k, d := range append(append([]r3.Vec{}, forces...), moments...) {
		var col []wrench
		for side, body := range bodies {
			w := wrench{body: body, at: where}
			if v := r3.Scale(float64(1-2*side), d); k < len(forces) {
				w.f = v
			} else {
				w.c = v
			}
			col = append(col, w)
		}
		p.cols = append(p.cols, col)
	}
	return p, true
}

// stay is a line between two points.
func (m *bodyMaker) stay(r *bodyRig, b, other int) part {
	kind := pick(m.rng, "link", "link", "cable", "strut", "spring")
	from, a := m.end(r, b)
	to, z := m.end(r, other)
	u := r3.Unit(r3.Sub(z, a))
	if kind == "strut" {
		u = r3.Scale(-1, u)
	}
	p := part{table: "lines", name: m.name("T"), row: fmt.Sprintf("kind = %q, path = \"%s %s\"", kind, from, to), push: kind == "cable" || kind == "strut", mult: true}
	col := []wrench{{body: b, at: a, f: u}}
	if other >= 0 {
		col = append(col, wrench{body: other, at: z, f: r3.Scale(-1, u)})
	}
	p.cols = [][]wrench{col}
	return p
}

// rope runs from a body over a pulley on another, or on the ground, to the ground.
func (m *bodyMaker) rope(r *bodyRig, b, other int) part {
	from, a := m.end(r, b)
	over, c := m.end(r, other)
	to, z := m.point(r)
	u, v := r3.Unit(r3.Sub(c, a)), r3.Unit(r3.Sub(z, c))
	col := []wrench{{body: b, at: a, f: u}}
	if other >= 0 {
		col = append(col, wrench{body: other, at: c, f: r3.Sub(v, u)})
	}
	return part{table: "lines", name: m.name("R"), row: fmt.Sprintf("kind = \"cable\", path = \"%s %s %s\"", from, over, to), push: true, mult: true, cols: [][]wrench{col}}
}

// push is a force along a direction.
func (m *bodyMaker) push(r *bodyRig, b int) part {
	at, where := m.end(r, b)
	u, typed := m.direction(r)
	kind := pick(m.rng, "force", "contact")
	return part{table: "lines", name: m.name("F"), row: fmt.Sprintf("kind = %q, at = %q, along = %q", kind, at, typed), push: kind == "contact", mult: true,
		cols: [][]wrench{{{body: b, at: where, f: u}}}}
}

// tie adds forces whose magnitude is a multiple of another line's, and some more.
func (m *bodyMaker) tie(r *bodyRig) {
	for i := range r.parts {
		if p := &r.parts[i]; p.mult && m.rng.IntN(8) == 0 {
			b := m.rng.IntN(len(r.bodies))
			at, where := m.end(r, b)
			u, said := m.direction(r)
			times := pick(m.rng, big.NewRat(2, 1), big.NewRat(3, 10), big.NewRat(-1, 2))
			f, _ := times.Float64()
			p.tied = true
			p.cols[0] = append(p.cols[0], wrench{body: b, at: where, f: r3.Scale(f, u)})
			r.known = append(r.known, wrench{body: b, at: where, f: r3.Scale(25, u)})
			r.add("lines", fmt.Sprintf("%s = { kind = \"force\", at = %q, along = %q, magnitude = \"%s*%s + 25 N\" }", m.name("H"), at, said, typed(times), p.name))
		}
	}
}
