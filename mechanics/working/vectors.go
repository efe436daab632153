package working

import (
	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
)

// vectors are the forces as vectors.
func (b *builder) vectors() {
	b.springs()
	type one struct {
		title string
		m     doc.Math
		about Subject
	}
	var all []one
	for i := range b.acts {
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			if !a.isForce() || a.sign {
				continue // the far end of a line or joint takes the opposite
			}
			title := "Force vector of "
			switch {
			case a.line >= 0 && len(b.p.Lines[a.line].Path) > 2:
				title = "Force of " + b.p.Lines[a.line].Name + " at " + a.at
			case a.line >= 0:
				title += b.p.Lines[a.line].Name
			case a.joint >= 0:
				title = "Reaction at " + b.p.Joints[a.joint].Name
			case len(a.subject.Loads) > 0:
				title += b.p.Loads[a.subject.Loads[0]].Name
			default:
				title = "Weight of " + b.p.Bodies[i].Name
			}
			all = append(all, one{title, b.forceVector(a), a.subject})
		}
	}
	note := b.opposites()
	if len(all) <= many {
		for k, x := range all {
			body := []doc.Block{formula(x.m)}
			if k == len(all)-1 {
				body = append(body, note...)
			}
			b.step(Vector, x.title, x.about, body...)
		}
		return
	}
	var of []doc.Math
	var about Subject
	for _, x := range all {
		of = append(of, x.m)
		about.Lines, about.Joints = append(about.Lines, x.about.Lines...), append(about.Joints, x.about.Joints...)
	}
	b.step(Vector, "Force vectors", about, append([]doc.Block{aligned(of...)}, note...)...)
}

// opposites says once that the far ends take the opposite forces.
func (b *builder) opposites() []doc.Block {
	for i := range b.acts {
		for k := range b.acts[i] {
			if b.acts[i][k].sign {
				return []doc.Block{say("The body at the other end of a line or a joint takes the opposite force: action and reaction.")}
			}
		}
	}
	return nil
}

// forceVector is F = F u = F (..), known or unknown.
func (b *builder) forceVector(a *act) doc.Math {
	f := b.p.Units.Force
	of := []doc.Math{a.vec}
	if a.line >= 0 {
		if m, ok := b.magnitudeTimesUnit(a); ok {
			of = append(of, m)
		}
	}
	value := b.expression(a.Const, a.Terms, f)
	if a.known() {
		value = measured(bracketed(value), f)
	}
	return equal(append(of, value)...)
}

// magnitudeTimesUnit is T1 u, or -S u of a strut, or T (u1 - u2) over a pulley.
func (b *builder) magnitudeTimesUnit(a *act) (doc.Math, bool) {
	l := &b.p.Lines[a.line]
	if len(l.Legs) == 0 || l.Magnitude.Const == 0 && len(l.Magnitude.Terms) == 0 {
		return doc.Math{}, false
	}
	magnitude := b.affine(l.Magnitude, b.p.Units.Force)
	if len(l.Magnitude.Terms) == 0 {
		magnitude = named(l.Name)
	}
	var u []doc.Math
	if len(l.Legs) == 1 {
		// the act's own direction says whether it is along u or against it
		d := a.Const
		if len(a.Terms) > 0 {
			d = r3.Scale(1/l.Magnitude.Terms[0].Coef, a.Terms[0].D)
		} else {
			d = r3.Scale(1/l.Magnitude.Const, d)
		}
		along := vectorUnit(named(l.Name))
		if r3.Dot(d, l.Legs[0].U) < 0 {
			return neg(product(grouped(magnitude), along)), true
		}
		return product(grouped(magnitude), along), true
	}
	names := b.stretchNames(a.line)
	for k, at := range l.Path {
		if at != a.Point {
			continue
		}
		if k < len(l.Legs) {
			u = append(u, vectorUnit(names[k]))
		}
		if k > 0 {
			u = append(u, neg(vectorUnit(names[k-1])))
		}
	}
	m := product(grouped(magnitude), grouped(sum(u...)))
	if l.Kind == problem.Strut {
		m = neg(m)
	}
	return m, len(u) > 0 && len(u) < 3 // a path that comes twice through a point acts there twice
}

func (b *builder) stretchNames(line int) []doc.Math {
	var names []doc.Math
	for _, s := range b.stretches() {
		if s.line == line {
			names = append(names, s.name)
		}
	}
	return names
}
