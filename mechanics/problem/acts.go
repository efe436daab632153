package problem

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// acts writes the forces that a line exerts on bodies. A rope over pulleys pulls
// each point on its path towards its neighbours with one tension, so its
// direction there is the sum of the unit vectors.
func (r *reading) acts(i int) {
	l, on := &r.p.Lines[i], r.rows[r.p.Lines[i].Ref].cell("on")
	sign := 1.0
	if l.Kind == Strut {
		sign = -1 // compression pushes the ends apart
	}
	pull := func(at int, d r3.Vec) {
		if body, ok := r.lineBody(l, on, at); ok && body != Ground {
			r.act(l, body, at, l.Magnitude.Along(r3.Scale(sign, d)))
		}
	}
	switch {
	case !l.Kind.Info().Path:
		r.directed(l, on)
	case l.Legs[0].To < 0:
		pull(l.Path[0], l.Legs[0].U)
	default:
		for k, at := range l.Path {
			var d r3.Vec
			if k < len(l.Legs) {
				d = r3.Add(d, l.Legs[k].U)
			}
			if k > 0 {
				d = r3.Sub(d, l.Legs[k-1].U)
			}
			pull(at, snapped(d, 1))
		}
	}
	if len(l.Acts) == 0 && l.OK && !r.heldByDrum(l) {
		r.noFreeEnd(l)
	}
	if len(l.Acts) == 2 && len(l.Path) == 2 && l.Acts[0].Body == l.Acts[1].Body { // they cancel, and the magnitude decides nothing
		l.OK = r.fail(l.Ref, diag.Span{}, "both ends of the line "+l.Name+" are on "+r.p.Bodies[l.Acts[0].Body].Name+", so its forces cancel", "remove it, or put one end on another body")
	}
}

// directed writes the force of a kind that has a direction or components: on the first body
// of its path along it, and the opposite on the second where its path ends on one. It lies
// on the line through both points then; between two bodies at one point, which on names, it
// acts there. A contact along its path pushes the two apart.
func (r *reading) directed(l *Line, on cell) {
	var force Vector
	path := l.Path
	if l.Components != nil {
		force, path = *l.Components, l.Path[:1]
	} else {
		force = l.Magnitude.Along(l.Legs[0].U)
	}
	if named := r.namedAt(&r.p.Points[path[0]], on.text); len(path) == 1 && len(named) == 2 && l.Kind != Weight {
		r.act(l, named[0], path[0], force)
		r.act(l, named[1], path[0], force.Opposite())
		return
	}
	ends := slices.DeleteFunc(slices.Clone(path), func(at int) bool { return len(r.p.Points[at].Bodies) == 0 })
	if len(ends) == 0 {
		return
	}
	first, ok := r.lineBody(l, on, ends[0])
	if !ok {
		return
	}
	// a second point on the first body only gives the direction
	others := slices.DeleteFunc(ends[1:], func(at int) bool { return l.Kind == Weight || onBody(&r.p.Points[at], first) })
	switch {
	case len(others) > 0 && len(path) > 2:
		l.OK = r.fail(sheet.Ref{Table: l.Ref.Table, Row: l.Ref.Row, Key: "path"}, diag.Span{}, "a "+l.Kind.String()+" between two bodies has a path of two points, but that of "+l.Name+" has "+say.Number(len(path)),
			lineKey("path")+" "+r.p.Points[ends[0]].Name+" "+r.p.Points[others[0]].Name)
	case len(others) > 0:
		if l.Kind == Contact && l.Legs[0].To >= 0 {
			force = force.Opposite()
		}
		if second, ok := r.lineBody(l, on, others[0]); ok {
			r.act(l, first, ends[0], force)
			r.act(l, second, others[0], force.Opposite())
		}
	default:
		r.act(l, first, ends[0], force)
	}
}

// lineBody chooses the body that a line acts on at a point of its path: its only one, or
// the one that on names. It reports what is not settled.
func (r *reading) lineBody(l *Line, on cell, at int) (int, bool) {
	pt := &r.p.Points[at]
	if len(pt.Bodies) < 2 {
		return pt.Body, true
	}
	if named := r.namedAt(pt, on.text); len(named) == 1 {
		return named[0], true
	}
	names := say.Each(pt.Bodies, func(b int) string { return r.p.Bodies[b].Name })
	what, hint := "acts on one of them", "on "+names[0]
	if l.Kind == Force || l.Kind == Contact {
		what = "acts on one of them or between two"
		hint += ", or on " + names[0] + " " + names[1] + " if it acts between them"
	}
	ref := l.Ref
	if on.has {
		ref = on.ref
	}
	l.OK = r.fail(ref, diag.Span{}, "the point "+pt.Name+" is on "+say.And(names...)+", but the line "+l.Name+" "+what, hint)
	return Ground, false
}

func (r *reading) act(l *Line, body, at int, force Vector) {
	l.Acts = append(l.Acts, Act{Body: body, Point: at, At: r.p.Points[at].At, Force: force})
}

func (r *reading) noFreeEnd(l *Line) {
	path, name := l.Path, l.Name
	if l.Belt != nil {
		first := &r.p.Lines[l.Belt.Lines[0]]
		path, name = slices.Compact(slices.Concat(first.Path, l.Path)), l.Belt.Name
		first.OK = false
	}
	what, hint := "both ends of the line "+name+" are fixed", "put one end on a particle or a body"
	switch at := r.p.Points[path[0]].Name; {
	case len(path) == 1:
		what, hint = "the line "+name+" acts at "+at+", which is fixed", "put "+at+" on a particle or a body"
	case len(path) > 2:
		what = "all points of the line " + name + " are fixed"
	}
	l.OK = r.fail(l.Ref, diag.Span{}, what, hint)
}

// components reads (100, -200, 50) N, with ? for a component that is unknown;
// ? alone makes all of them unknown, named after the line: Vx Vy Vz.
func (r *reading) components(i int, c cell) bool {
	l, force := &r.p.Lines[i], &Vector{}
	l.Components = force
	expr, ok := c.expr(r.Parse)
	if !ok {
		return false
	}
	axes := []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	if r.p.Planar {
		axes = axes[:2]
	}
	parts, _ := expr.Tuple()
	asked := slices.ContainsFunc(parts, (*units.Expr).IsQuestion)
	switch c.asks = true; {
	case expr.IsQuestion():
		parts = slices.Repeat([]*units.Expr{expr}, len(axes))
	case asked && len(parts) != len(axes):
		return c.shaped(units.Value{N: len(parts), V: [3]float64{1, 1, 1}})
	default:
		v, ok := c.vector(units.Force)
		if !ok {
			return false
		}
		force.Const = vec(v.V)
	}
	for k, part := range parts {
		if !part.IsQuestion() {
			continue
		}
		axis := string("xyz"[k])
		u, ok := r.newUnknown(i, l.Name+axis)
		if !ok {
			return false
		}
		r.p.Unknowns[u].Part = axis
		force.Terms = append(force.Terms, ActTerm{Unknown: u, D: axes[k]})
	}
	if len(force.Terms) > 0 {
		return true
	}
	known := snapped(force.Const, largest(force.Const))
	force.Const = known
	if u, ok := unit(known); ok {
		l.Legs = []Leg{{From: l.Path[0], To: -1, R: u, U: u}}
		l.Magnitude.Const = r3.Norm(known)
	}
	return true
}
