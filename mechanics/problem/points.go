package problem

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/sheet"
	"trivet/units"
)

func (r *reading) readPoints() {
	for i := range r.p.Points {
		r.point(i)
	}
}

// point reads where a point is when first asked for, and tells whether it has a place.
func (r *reading) point(i int) bool {
	switch r.pointAt[i] {
	case done:
		return true
	case failed:
		return false
	case underway:
		r.pointAt[i] = failed
		r.fail(r.p.Points[i].Ref, units.Span{}, "points are defined by each other: "+circle(r.chain, r.p.Points[i].Name), "give one of them coordinates")
		return false
	}
	r.pointAt[i] = underway
	r.chain = append(r.chain, r.p.Points[i].Name)
	ok := r.readPoint(i)
	r.chain = r.chain[:len(r.chain)-1]
	if !ok || r.pointAt[i] == failed {
		r.pointAt[i] = failed
		return false
	}
	r.pointAt[i] = done
	r.p.Points[i].OK = true
	return true
}

func (r *reading) readPoint(i int) bool {
	p, row := &r.p.Points[i], r.pointRows[i]
	key := ""
	if _, bare := row.Cell(""); !bare {
		key = "at"
	}
	text, ref, ok := r.text("points", row, key)
	if !ok {
		r.fail(p.Ref, units.Span{}, p.Name+" has no place", "write "+p.Name+" = \""+r.origin()+"\", or at = \""+r.origin()+"\"")
		return false
	}
	v, ok := r.vector(ref, text, env{r: r, scope: inGeometry})
	if !ok {
		return false
	}
	if v, ok = r.wantVector(ref, text, v, units.Length); !ok {
		return false
	}
	p.At = r3.Vec{X: v.V[0], Y: v.V[1], Z: v.V[2]}
	p.Plus = r3.Vec{X: v.Plus[0], Y: v.Plus[1], Z: v.Plus[2]}
	return true
}

func (r *reading) origin() string {
	if r.p.Planar {
		return "0, 0"
	}
	return "0, 0, 0"
}

// particleWord is what `on` says of a point that is a free particle of its own.
const particleWord = "particle"

// readBodies gathers what is cut free: here a particle for each point that is
// one, named after its point.
func (r *reading) readBodies() {
	for i := range r.p.Points {
		pt := &r.p.Points[i]
		on, ref, ok := r.text("points", r.pointRows[i], "on")
		if !ok || on == "ground" {
			continue
		}
		if on != particleWord {
			r.fail(ref, whole(on), "this version cuts particles free, and "+on+" would be a rigid body", "write on = \"particle\", or leave it out for fixed ground")
			continue
		}
		pt.Body = len(r.p.Bodies)
		r.p.Bodies = append(r.p.Bodies, Body{Name: pt.Name, Particle: true, Points: []int{i}})
	}
	for _, table := range []string{"bodies", "joints", "couples", "distributed"} {
		for _, row := range r.s.Table(table).Rows {
			r.fail(sheet.Ref{Table: table, Row: row.Name}, units.Span{}, "this version holds particles, points and lines, and does not read ["+table+"]", "take the row out, or write its force as a line")
		}
	}
}
