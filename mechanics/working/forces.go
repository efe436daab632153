package working

import (
	"trivet/mechanics/doc"
	"trivet/units"
)

// forceList is the free-body list of forces.
func (b *builder) forceList() {
	if len(b.p.Bodies) > many {
		t := table("On", "Forces")
		for i := range b.p.CutFree() {
			var of []doc.Math
			for k := range b.acts[i] {
				of = append(of, b.labels(&b.acts[i][k])...)
			}
			t.Add(wordCell(b.p.Bodies[i].Name), listed(of))
		}
		b.step(Forces, "The forces on each", Subject{}, t)
		return
	}
	for i := range b.acts {
		if len(b.acts[i]) == 0 {
			continue
		}
		about := Subject{Bodies: []int{i}}
		t := table("Force", "Of", "At", "Magnitude")
		for k := range b.acts[i] {
			a := &b.acts[i][k]
			about.Lines, about.Joints = append(about.Lines, a.subject.Lines...), append(about.Joints, a.subject.Joints...)
			about.Couples, about.Loads = append(about.Couples, a.subject.Couples...), append(about.Loads, a.subject.Loads...)
			t.Add(listed(b.labels(a)), wordCell(a.what), wordCell(a.at), b.magnitudeCell(a))
		}
		b.step(Forces, "The forces on "+b.p.Bodies[i].Name, about, t)
	}
}

// forceLabels are the symbols of an act's forces.
func (b *builder) forceLabels(a *act) []doc.Math {
	if a.joint < 0 {
		return b.labels(a)
	}
	var of []doc.Math
	for _, t := range b.p.Joints[a.joint].Forces {
		of = append(of, b.unknown(t.Unknown))
	}
	return of
}

// labels are the symbols of an act in the list of forces.
func (b *builder) labels(a *act) []doc.Math {
	if a.joint >= 0 {
		return b.jointHolds(&b.p.Joints[a.joint])
	}
	if a.line >= 0 && len(b.p.Lines[a.line].Path) > 2 {
		return []doc.Math{named(b.p.Lines[a.line].Name)}
	}
	return []doc.Math{a.name}
}

func (b *builder) magnitudeCell(a *act) doc.Inline {
	switch {
	case a.line >= 0 && len(b.p.Lines[a.line].Legs) > 0:
		m := b.p.Lines[a.line].Magnitude
		f := b.p.Units.Force
		switch {
		case len(m.Terms) == 0:
			return cell(measured(short(f.In(m.Const), b.p.Figures+1), f))
		case b.own(a.line):
			return wordCell("unknown")
		}
		return cell(b.affine(m, f))
	case a.couple && len(a.subject.Couples) == 0: // of a distributed load
		u := b.p.Units.For(units.Moment)
		return cell(measured(short(u.In(norm(a.Couple)), b.p.Figures+1), u))
	case a.couple:
		c := &b.p.Couples[a.subject.Couples[0]]
		u := b.p.Units.For(units.Moment)
		switch {
		case len(c.Magnitude.Terms) == 0:
			return cell(measured(short(u.In(c.Magnitude.Const), b.p.Figures+1), u))
		case len(c.Magnitude.Terms) == 1 && c.Magnitude.Terms[0].Coef == 1 && c.Magnitude.Const == 0:
			return wordCell("unknown")
		}
		return cell(b.affine(c.Magnitude, u))
	case a.known():
		f := b.p.Units.Force
		return cell(measured(short(f.In(norm(a.Const)), b.p.Figures+1), f))
	}
	return wordCell("unknown")
}

// own tells that a line's magnitude is the unknown of its own name.
func (b *builder) own(line int) bool {
	m := b.p.Lines[line].Magnitude
	return len(m.Terms) == 1 && m.Const == 0 && m.Terms[0].Coef == 1 && b.p.Unknowns[m.Terms[0].Unknown].Name == b.p.Lines[line].Name
}
