package problem

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Distributed is a load spread along a line from A to B, q(s) per length at the
// distance s from A. Its resultant is
//
//	R = ∫ q ds along Direction, at s̄ = ∫ q s ds / R from A
//
// and where R is nothing though q is not, a couple of ∫ q s ds. A diagram of straight
// pieces, as that of water on a gate, is integrated in closed form, a function of s by
// adaptive quadrature.
type Distributed struct {
	Name      string
	Ref       sheet.Ref
	OK        bool
	Body      int
	From, To  int
	Direction r3.Vec
	Length    float64
	Diagram   []Ordinate // q from A to B, straight between the ordinates
	Knots     []Ordinate // of a diagram of straight pieces: where they meet
	Water     *Water     // of the pressure of water
	Total     float64    // R, N
	Distance  float64    // s̄, m; 0 where R is nothing
	Error     float64    // the estimated error of R relative to ∫|q| ds, or of its moment about A to ∫|q| s ds; 0 in closed form
	At        r3.Vec
	Acts      []Act
}

// Water is what the pressure of water on a gate follows from: density in kg/m³, width
// and the depths of the gate's two ends in m, negative above the surface.
type Water struct{ Density, Width, From, To float64 }

func (r *reading) readDistributed() {
	rows := Rows(r.s, "distributed")
	r.p.Loads = make([]Distributed, len(rows))
	for i, row := range rows {
		d := &r.p.Loads[i]
		*d = Distributed{Name: row.Name, Ref: sheet.Ref{Table: "distributed", Row: row.Name}}
		d.OK = r.loadName(d) && r.distributed(d, row)
	}
}

// loadName refuses the name of a line or a joint: q.size would be a part of either.
func (r *reading) loadName(d *Distributed) bool {
	switch {
	case indexOf(r.p.Joints, d.Name) >= 0:
		return r.usedTwice(d.Ref, d.Name, "a joint", "a distributed load")
	case r.isLine(d.Name):
		return r.usedTwice(d.Ref, d.Name, "a line", "a distributed load")
	}
	return true
}

func (r *reading) distributed(d *Distributed, row sheet.Row) bool {
	path, ref, ok := r.text("distributed", row, "path")
	if !ok {
		return r.fail(d.Ref, diag.Span{}, "the load "+d.Name+" has no path", "a path such as A B")
	}
	words := fields(path)
	if len(words) != 2 {
		return r.fail(ref, whole(path), "a distributed load extends from one point to another", "a path such as A B")
	}
	ends, ok := r.pointsNamed(ref, words)
	if !ok {
		return false
	}
	d.From, d.To = ends[0], ends[1]
	a, b := &r.p.Points[d.From], &r.p.Points[d.To]
	along, hasLength := unit(between(a.At, b.At))
	d.Length = r3.Norm(r3.Sub(b.At, a.At))
	if !hasLength {
		return r.fail(ref, whole(path), "the points "+a.Name+" and "+b.Name+" coincide, so the load "+d.Name+" has no length", "move one of them")
	}
	if d.Body, ok = r.loadBody(d, row, a, b); !ok {
		return false
	}
	text, ref, ok := r.text("distributed", row, "along")
	if !ok {
		return r.fail(d.Ref, diag.Span{}, "the load "+d.Name+" has no direction", "along -y, the direction in which it pushes")
	}
	if d.Direction, ok = r.direction(ref, text, env{r: r, scope: inGeometry}); !ok {
		return false
	}
	q, ok := r.readIntensity(d, row)
	if !ok {
		return false
	}
	_, ref, _ = r.text("distributed", row, "magnitude")
	return r.spread(d, ref, along, q)
}

// loadBody is the body that a load lies on: as on says, or the one that both
// its ends share.
func (r *reading) loadBody(d *Distributed, row sheet.Row, a, b *Point) (int, bool) {
	if on, ref, ok := r.text("distributed", row, "on"); ok {
		body, ok := r.bodyNamed(ref, on)
		if ok && r.p.Bodies[body].Particle {
			return 0, r.fail(ref, whole(on), "a distributed load acts on a body, but "+on+" is a particle", "put it on a body")
		}
		return body, ok
	}
	for _, x := range a.Bodies {
		if onBody(b, x) && !r.p.Bodies[x].Particle {
			return x, true
		}
	}
	return 0, r.fail(d.Ref, diag.Span{}, "the load "+d.Name+" is not on a body", "put it on a body")
}

// readIntensity reads q(s): one value, two values from end to end, an expression in
// s, or the pressure of water on a gate.
func (r *reading) readIntensity(d *Distributed, row sheet.Row) (intensity, bool) {
	if kind, ref, ok := r.text("distributed", row, "kind"); ok {
		if strings.TrimSpace(kind) != "hydrostatic" {
			return intensity{}, r.fail(ref, whole(kind), strconv.Quote(kind)+" is not a kind of load", "hydrostatic, or no kind")
		}
		if _, ref, twice := r.text("distributed", row, "magnitude"); twice {
			return intensity{}, r.fail(ref, diag.Span{}, "the magnitude of the load "+d.Name+" follows from the depth of the water", "remove the magnitude or the kind")
		}
		return r.hydrostatic(d, row)
	}
	for _, key := range []string{"surface", "density", "width"} {
		if _, ref, ok := r.text("distributed", row, key); ok {
			return intensity{}, r.fail(ref, diag.Span{}, "the "+key+" is used for water on a gate only", "the kind hydrostatic, or remove the "+key)
		}
	}
	text, ref, ok := r.text("distributed", row, "magnitude")
	if !ok {
		return intensity{}, r.fail(d.Ref, diag.Span{}, "the load "+d.Name+" has no magnitude", "a magnitude such as 2 kN/m, or 0 kN/m .. 4 kN/m from end to end")
	}
	if strings.Contains(text, "..") {
		low, high, ok := r.ends(ref, text)
		if !ok {
			return intensity{}, false
		}
		a, ok1 := r.endIntensity(ref, text, low)
		b, ok2 := r.endIntensity(ref, text, high)
		return linear(a, b, d.Length), ok1 && ok2
	}
	expr, err := r.parseOne(text)
	if err != nil {
		return intensity{}, r.failCell(ref, err)
	}
	r.grouped(ref, text, expr)
	varies := false
	at := func(s float64, corners *[]float64) (float64, *diag.Error) {
		r.blocked = false
		v, err := expr.Eval(env{r: r, scope: inLoad, cell: ref, s: s, varies: &varies, corners: corners})
		if err == nil {
			v, err = units.Want(v, units.LineLoad, r.p.Units.For(units.LineLoad), whole(text))
		}
		if err == nil && abs(v.V[0]) > greatest {
			err = diag.At(whole(text), "the value is too large for a problem", "check the exponent")
		}
		return v.V[0], err
	}
	if at(d.Length/math.E, nil); !varies { // the same all along
		q, ok := r.endIntensity(ref, text, expr)
		return linear(q, q, d.Length), ok
	}
	return intensity{at: at}, true
}

func (r *reading) endIntensity(ref sheet.Ref, text string, e *units.Expr) (float64, bool) {
	v, ok := r.evaluate(ref, e, env{r: r, scope: inGiven})
	if ok {
		v, ok = r.want(ref, text, v, units.LineLoad)
	}
	return v.V[0], ok
}

// waterDensity is that of fresh water in hydrostatic exercises, common practice.
const waterDensity = 1000 // kg/m³

// hydrostatic is the pressure on a plane gate of given width, as a load per
// length of the gate: q(s) = ρ g h(s) width, h the depth below the surface,
// zero above it.
func (r *reading) hydrostatic(d *Distributed, row sheet.Row) (intensity, bool) {
	width := r.quantity("distributed", row, "width")
	if !width.has {
		return intensity{}, r.fail(d.Ref, diag.Span{}, "the gate of the load "+d.Name+" has no width", "a width such as 2 m")
	}
	surface := r.quantity("distributed", row, "surface")
	if !surface.has {
		return intensity{}, r.fail(d.Ref, diag.Span{}, "the water of the load "+d.Name+" has no surface", "a surface such as 3 m, its level")
	}
	density := r.quantity("distributed", row, "density")
	if !density.has {
		density.value, density.ok = waterDensity, true
	}
	if !width.ok || !surface.ok || !density.ok || !r.positive(width, "a width", "the form 2 m") || !r.positive(density, "a density", "the form 1000 kg/m^3") {
		return intensity{}, false
	}
	depth := func(point int) float64 { return surface.value - r3.Dot(r.p.Points[point].At, r.p.Up) }
	d.Water = &Water{Density: density.value, Width: width.value, From: depth(d.From), To: depth(d.To)}
	return wet(depth(d.From), depth(d.To), density.value*r.p.G*width.value, d.Length), true
}

// wet is the intensity of water on a plane gate whose ends lie at these depths, m,
// negative above the surface: straight over the wet part, from its depth on one side to
// the waterline or the depth on the other, and zero over the dry one. by is ρ g width, N/m².
func wet(from, to, by, length float64) intensity {
	knots := []Ordinate{{0, by * max(0, from)}, {length, by * max(0, to)}}
	if from < 0 && to > 0 || from > 0 && to < 0 {
		knots = slices.Insert(knots, 1, Ordinate{length * from / (from - to), 0})
	}
	return intensity{knots: knots}
}
