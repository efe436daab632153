package working

import (
	"trivet/mechanics/doc"
	"trivet/units"
)

// spreads are the resultants of the distributed loads, and where they act.
func (b *builder) spreads() {
	for i := range b.p.Loads {
		d := &b.p.Loads[i]
		if !d.OK || len(d.Acts) == 0 {
			continue
		}
		f, l, m := b.p.Units.Force, b.p.Units.Length, b.p.Units.For(units.Moment)
		about := Subject{Loads: []int{i}, Bodies: []int{d.Body}, Points: []int{d.From, d.To}}
		name := doc.Math{Op: doc.Symbol, Text: "R", Of: []doc.Math{leafed(named(d.Name))}}
		from, to := b.p.Points[d.From].Name, b.p.Points[d.To].Name
		start, end := d.Loaded()
		reach := []any{"The load " + d.Name + ", spread over ", measured(b.length(d.Length), l), " from " + from + " to " + to}
		if start > 0 || end < d.Length {
			reach = []any{"The load " + d.Name + ", spread over ", measured(b.length(end-start), l), ", from ", measured(b.length(start), l),
				" to ", measured(b.length(end), l), " along the line from " + from + " to " + to}
		}
		result := formula(equal(name, measured(b.force(d.Total), f)))
		var body []doc.Block
		switch {
		case d.Nothing():
			body = []doc.Block{say("The load " + d.Name + " is zero from " + from + " to " + to + "."), result}
		case d.Total == 0:
			body = []doc.Block{say(append(reach, ", has no resultant force. It has the same effect on the body as a couple.")...), result,
				formula(equal(loadCouple(d), measured(short(m.In(d.Couple()), b.p.Figures+1), m)))}
		default:
			body = []doc.Block{say(append(reach, ", has the same effect on the body as one force, its resultant: the area under it, at the area's centroid.")...), result,
				say("It acts ", measured(b.length(d.Distance), l), " from "+from+", at ", measured(b.tuple(d.At, b.length), l), ".")}
		}
		b.step(Vector, "Resultant of "+d.Name, about, body...)
	}
}

// springs are the forces of springs whose stretch is known: k (length - natural).
func (b *builder) springs() {
	f := b.p.Units.Force
	k := b.p.Units.For(units.LineLoad)
	for i := range b.p.Lines {
		s := b.p.Lines[i].Spring
		if s == nil || s.Free || b.p.Lines[i].Length() == 0 || len(b.p.Lines[i].Magnitude.Terms) > 0 {
			continue
		}
		name := b.p.Lines[i].Name
		stiffness := short(k.In(s.Stiffness), b.p.Figures+1)
		b.step(Vector, "Force of the spring "+name, Subject{Lines: []int{i}},
			say("A spring pulls with its stiffness times its stretch, ", measured(stiffness, k), " times what its length exceeds the natural length by:"),
			formula(equal(named(name), product(stiffness, paren(sum(b.length(b.p.Lines[i].Length()), neg(b.length(s.Natural))))),
				measured(b.force(b.p.Lines[i].Magnitude.Const), f))))
	}
}
