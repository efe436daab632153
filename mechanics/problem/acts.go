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
	l := &r.p.Lines[i]
	if l.byComponents {
		at := l.Path[0]
		if a, b, ok := r.between(l, at); ok {
			l.Acts = []Act{r.actAt(a, at, l.fixed, l.free), r.actAt(b, at, r3.Scale(-1, l.fixed), opposite(l.free))}
			return
		}
		body, ok := r.lineBody(l, at)
		switch {
		case !ok:
			l.OK = false
		case body == Ground:
			r.noFreeEnd(l)
		default:
			l.Acts = []Act{r.actAt(body, at, l.fixed, l.free)}
		}
		return
	}
	sign := 1.0
	if l.Kind == Strut {
		sign = -1 // compression pushes the ends apart
	}
	switch {
	case !l.Kind.Info().Path:
		r.directed(l)
	case l.Legs[0].To < 0:
		r.act(l, l.Path[0], r3.Scale(sign, l.Legs[0].U))
	default:
		for k, at := range l.Path {
			var d r3.Vec
			if k < len(l.Legs) {
				d = r3.Add(d, l.Legs[k].U)
			}
			if k > 0 {
				d = r3.Sub(d, l.Legs[k-1].U)
			}
			r.act(l, at, r3.Scale(sign, snapped(d, 1)))
		}
	}
	if len(l.Acts) == 0 && l.OK && !r.heldByDrum(l) {
		r.noFreeEnd(l)
	}
	r.withinOneBody(l)
}

// directed writes the force of a kind that has a direction: on the first body of its
// path along it, and the opposite on the second where its path ends on one. It lies
// on the line through both points then; between two bodies at one point it acts there.
// A contact along its path pushes the two apart.
func (r *reading) directed(l *Line) {
	u := l.Legs[0].U
	if len(l.Path) == 1 {
		at := l.Path[0]
		if a, b, ok := r.between(l, at); ok {
			r.actOn(l, a, at, u)
			r.actOn(l, b, at, r3.Scale(-1, u))
			return
		}
	}
	var ends []int // the points that are on bodies
	for _, at := range l.Path {
		if len(r.p.Points[at].Bodies) > 0 {
			ends = append(ends, at)
		}
	}
	if len(ends) == 0 {
		return
	}
	first, ok := r.lineBody(l, ends[0])
	if !ok {
		l.OK = false
		return
	}
	// a second point on the first body only gives the direction
	ends = append(ends[:1], slices.DeleteFunc(ends[1:], func(at int) bool { return l.Kind == Weight || onBody(&r.p.Points[at], first) })...)
	switch {
	case len(ends) > 1 && len(l.Path) > 2:
		l.OK = false
		r.fail(sheet.Ref{Table: l.Ref.Table, Row: l.Ref.Row, Key: "path"}, diag.Span{}, "a "+l.Kind.String()+" between two bodies has a path of two points, but that of "+l.Name+" has "+say.Number(len(l.Path)),
			"the path "+r.p.Points[ends[0]].Name+" "+r.p.Points[ends[1]].Name)
	case len(ends) > 1:
		second, ok := r.lineBody(l, ends[1])
		if !ok {
			l.OK = false
			return
		}
		if l.Kind == Contact && l.Legs[0].To >= 0 {
			u = r3.Scale(-1, u)
		}
		r.actOn(l, first, ends[0], u)
		r.actOn(l, second, ends[1], r3.Scale(-1, u))
	default:
		r.actOn(l, first, ends[0], u)
	}
}

// between gives the two bodies at one point that a force or a contact acts between,
// where its on names two: on the first along its direction, on the second the opposite.
func (r *reading) between(l *Line, at int) (first, second int, ok bool) {
	if l.Kind != Force && l.Kind != Contact {
		return Ground, Ground, false
	}
	on, _, _ := r.text("lines", r.lineRows[r.lines[l.Name]], "on")
	named := r.namedAt(&r.p.Points[at], on)
	if len(named) != 2 {
		return Ground, Ground, false
	}
	return named[0], named[1], true
}

// lineBody is the body that a line acts on at a point of its path.
func (r *reading) lineBody(l *Line, at int) (int, bool) {
	pt := &r.p.Points[at]
	if len(pt.Bodies) < 2 {
		return pt.Body, true
	}
	on, ref, ok := r.text("lines", r.lineRows[r.lines[l.Name]], "on")
	if !ok {
		ref = l.Ref
	}
	return r.bodyAt(ref, pt, on, l)
}

// withinOneBody refuses a line whose ends are both on one body: its two forces
// cancel, and its magnitude decides nothing.
func (r *reading) withinOneBody(l *Line) {
	if len(l.Acts) != 2 || len(l.Path) != 2 || l.Acts[0].Body != l.Acts[1].Body {
		return
	}
	l.OK = false
	body := r.p.Bodies[l.Acts[0].Body].Name
	r.fail(l.Ref, diag.Span{}, "both ends of the line "+l.Name+" are on "+body+", so its forces cancel", "remove it, or put one end on another body")
}

func (r *reading) act(l *Line, at int, d r3.Vec) {
	body, ok := r.lineBody(l, at)
	if !ok {
		l.OK = false
		return
	}
	if body != Ground {
		r.actOn(l, body, at, d)
	}
}

// actOn adds the line's force on a body at a point: its magnitude times d.
func (r *reading) actOn(l *Line, body, at int, d r3.Vec) {
	known, terms := l.Magnitude.along(d)
	l.Acts = append(l.Acts, r.actAt(body, at, known, terms))
}

func (r *reading) actAt(body, at int, known r3.Vec, terms []ActTerm) Act {
	return Act{Body: body, Point: at, At: r.p.Points[at].At, Const: known, Terms: terms}
}

// along is a magnitude times a direction: what is known of it, and the unknowns.
func (a Affine) along(d r3.Vec) (known r3.Vec, terms []ActTerm) {
	if n := len(a.Terms); n > 0 {
		terms = make([]ActTerm, n)
	}
	for k, t := range a.Terms {
		terms[k] = ActTerm{Unknown: t.Unknown, D: r3.Scale(t.Coef, d)}
	}
	return r3.Scale(a.Const, d), terms
}

func (r *reading) noFreeEnd(l *Line) {
	path, name := l.Path, l.Name
	if l.Belt != nil {
		first := &r.p.Lines[l.Belt.Lines[0]]
		path, name = slices.Compact(slices.Concat(first.Path, l.Path)), l.Belt.Name
		first.OK = false
	}
	l.OK = false
	if len(path) == 1 {
		at := r.p.Points[path[0]].Name
		r.fail(l.Ref, diag.Span{}, "the line "+name+" acts at "+at+", which is fixed", "put "+at+" on a particle or a body")
		return
	}
	ends := "both ends"
	if len(path) > 2 {
		ends = "all points"
	}
	r.fail(l.Ref, diag.Span{}, ends+" of the line "+name+" are fixed", "put one end on a particle or a body")
}

// components reads (100, -200, 50) N, with ? for a component that is unknown;
// ? alone makes all of them unknown, named after the line: Vx Vy Vz.
func (r *reading) components(i int, ref sheet.Ref, text string) bool {
	l := &r.p.Lines[i]
	l.byComponents = true
	expr, err := r.parse(text)
	if err != nil {
		r.blocked = false
		return r.failCell(ref, err)
	}
	axes := r.axes()
	if expr.IsQuestion() {
		for k := range axes {
			if !r.unknownComponent(l, i, k) {
				return false
			}
		}
		return true
	}
	parts, isTuple := expr.Tuple()
	if !isTuple || !slices.ContainsFunc(parts, (*units.Expr).IsQuestion) {
		return r.knownComponents(l, ref, text)
	}
	if len(parts) != len(axes) {
		return r.shaped(ref, text, units.Value{N: len(parts), V: [3]float64{1, 1, 1}})
	}
	for k, part := range parts {
		if part.IsQuestion() {
			if !r.unknownComponent(l, i, k) {
				return false
			}
			continue
		}
		v, ok := r.evaluate(ref, part, env{r: r, scope: inGeometry})
		if !ok {
			return false
		}
		if v, ok = r.want(ref, text, v, units.Force); !ok {
			return false
		}
		l.fixed = r3.Add(l.fixed, r3.Scale(v.V[0], axes[k]))
	}
	return true
}

func (r *reading) knownComponents(l *Line, ref sheet.Ref, text string) bool {
	v, ok := r.vectorOf(ref, text, env{r: r, scope: inGeometry}, units.Force)
	if !ok {
		return false
	}
	l.fixed = r3.Vec{X: v.V[0], Y: v.V[1], Z: v.V[2]}
	l.fixed = snapped(l.fixed, largest(l.fixed))
	if u, ok := unit(l.fixed); ok {
		l.Legs = []Leg{{From: l.Path[0], To: -1, R: u, U: u}}
		l.Magnitude.Const = r3.Norm(l.fixed)
	}
	return true
}

func (r *reading) axes() []r3.Vec {
	axes := []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	if r.p.Planar {
		return axes[:2]
	}
	return axes
}

func (r *reading) unknownComponent(l *Line, i, axis int) bool {
	u, ok := r.newUnknown(i, l.Name+string("xyz"[axis]))
	if ok {
		l.free = append(l.free, ActTerm{Unknown: u, D: r.axes()[axis]})
	}
	return ok
}
