package scene

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/units"
)

// intensity is the largest of a distributed load.
func intensity(l *problem.Distributed) (max float64) {
	for _, o := range l.Diagram {
		max = math.Max(max, math.Abs(o.Q))
	}
	if math.IsInf(max, 0) || math.IsNaN(max) {
		return 0
	}
	return max
}

// loads draws the distributed loads that shows says: all to one scale, and those on one
// stretch one upon the other.
func (b *builder) loads(shows func(load int) bool) {
	largest := 0.0
	for i := range b.p.Loads {
		if l := &b.p.Loads[i]; l.OK {
			largest = math.Max(largest, intensity(l))
		}
	}
	var drawn []Thing
	for i := range b.p.Loads {
		l := &b.p.Loads[i]
		if !l.OK || !shows(i) || !b.placed(l.From) || !b.placed(l.To) || intensity(l) == 0 || l.Length == 0 {
			continue
		}
		t := b.load(l, largest)
		for _, under := range drawn {
			if stacked(&under, &t, Flat*b.out.Size) {
				t.Base = math.Max(t.Base, under.Base+math.Max(0, slices.Max(under.Heights)))
			}
		}
		drawn = append(drawn, t)
		b.add(t)
		b.water(l)
	}
}

// onPath is the place so far along the path of a load.
func (b *builder) onPath(l *problem.Distributed, s float64) r3.Vec {
	from, to := b.p.Points[l.From].At, b.p.Points[l.To].At
	return r3.Add(from, r3.Scale(s/l.Length, r3.Sub(to, from)))
}

// load is the diagram of one: its feet on the stretch that it loads.
func (b *builder) load(l *problem.Distributed, largest float64) Thing {
	t := Thing{Kind: Load, Ref: l.Ref, Along: l.Direction, Value: largest, Tone: drawing.Load, Label: Label{Short: Typeset(l.Name), Rank: OfForce}}
	from, to := l.Loaded()
	highest, even := 0, true
	sign := 1.0
	if !slices.ContainsFunc(l.Diagram, func(o problem.Ordinate) bool { return o.Q > 0 }) { // against its direction throughout
		sign, t.Along = -1, r3.Scale(-1, l.Direction)
	}
	for k, o := range l.Diagram {
		if o.S >= from && o.S <= to {
			t.At, t.Heights, t.Values = append(t.At, b.onPath(l, o.S)), append(t.Heights, sign*o.Q/largest), append(t.Values, "")
		}
		if math.Abs(o.Q) > math.Abs(l.Diagram[highest].Q) {
			highest = k
		}
		even = even && math.Abs(o.Q-l.Diagram[0].Q) <= nothing*largest
	}
	if l.Water != nil && b.opt.Typed != nil { // the intensity follows from the density
		t.Label.Runs = append(With(t.Label.Short, ", "), With(Italic("ρ"), " = "+units.Compact(l.Water.Density)+" kg/m³")...)
		return t
	}
	f := b.p.Units.For(units.LineLoad)
	if even {
		t.Label.Runs = With(t.Label.Short, " = "+b.magnitude(l.Ref, sign > 0, math.Abs(l.Diagram[0].Q), f))
		return t
	}
	for i, o := range []problem.Ordinate{l.Diagram[0], l.Diagram[len(l.Diagram)-1]} {
		if i*(len(l.Diagram)-1) != highest && math.Abs(o.Q) > nothing*largest {
			t.Values[i*(len(t.Values)-1)] = f.Format(math.Abs(o.Q), b.p.Figures)
		}
	}
	// It says where it has that value.
	t.Label.Runs = With(t.Label.Short, " = "+f.Format(math.Abs(l.Diagram[highest].Q), b.p.Figures)+" at "+b.p.Place(b.onPath(l, l.Diagram[highest].S)))
	return t
}

// stacked tells that two loads lie on one stretch and act the same way.
func stacked(a, b *Thing, near float64) bool {
	if len(a.At) < 2 || len(b.At) < 2 || r3.Dot(a.Along, b.Along) < 1-Flat {
		return false
	}
	on, u := a.At[0], unit(r3.Sub(a.At[len(a.At)-1], a.At[0]))
	span := func(t *Thing) (low, high float64) {
		s, e := r3.Dot(r3.Sub(t.At[0], on), u), r3.Dot(r3.Sub(t.At[len(t.At)-1], on), u)
		return math.Min(s, e), math.Max(s, e)
	}
	lowA, highA := span(a)
	lowB, highB := span(b)
	return OffLine(b.At[0], on, r3.Add(on, u)) < near && OffLine(b.At[len(b.At)-1], on, r3.Add(on, u)) < near && lowB < highA-near && lowA < highB-near
}

// water draws the surface of the water that a load is the pressure of.
func (b *builder) water(l *problem.Distributed) {
	if l.Water == nil {
		return
	}
	upper, to := l.Loaded()
	depth := l.Water.From
	if l.Water.To < depth {
		upper, depth = to, l.Water.To
	}
	// The water stands on the side from which it presses.
	at := r3.Add(b.onPath(l, upper), r3.Scale(math.Max(0, depth), b.p.Up))
	const off = 0.12 // of the size: where its sign stands
	back := r3.Sub(l.Direction, r3.Scale(r3.Dot(l.Direction, b.p.Up), b.p.Up))
	b.add(Thing{Kind: Water, Ref: l.Ref, At: []r3.Vec{at, r3.Sub(at, r3.Scale(off*b.out.Size, unit(back))), b.onPath(l, upper)}, Along: b.p.Up})
}
