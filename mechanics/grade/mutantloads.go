package grade

import (
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// known tells whether acts have a part that is given.
func known(acts []problem.Act) bool {
	return slices.ContainsFunc(acts, func(a problem.Act) bool { return a.Const != (r3.Vec{}) || a.Couple != (r3.Vec{}) })
}

// scaled gives acts with their known part times a factor.
func scaled(acts []problem.Act, by float64) []problem.Act {
	acts = cloned(acts)
	for i := range acts {
		acts[i].Const, acts[i].Couple = r3.Scale(by, acts[i].Const), r3.Scale(by, acts[i].Couple)
	}
	return acts
}

// loads: one left out, or turned round.
func (m *maker) loads() {
	for i, l := range m.p.Lines {
		if !known(l.Acts) {
			continue
		}
		for k, says := range []string{" were left out", " acted the other way"} {
			p, c := m.line(i)
			c.Acts = scaled(c.Acts, float64(-k))
			c.Magnitude.Const *= float64(-k)
			m.add(p, l.Name+says)
		}
	}
	for i, c := range m.p.Couples {
		if !known(c.Acts) {
			continue
		}
		for k, says := range []string{" were left out", " turned the other way"} {
			p := *m.p
			own(&p.Couples, i).Acts = scaled(c.Acts, float64(-k))
			m.add(&p, "the couple "+c.Name+says)
		}
	}
	for i, b := range m.p.Bodies {
		if known(b.Acts) {
			p := *m.p
			own(&p.Bodies, i).Acts = nil
			m.add(&p, "the weight of "+b.Name+" were left out")
		}
	}
	m.spread()
}

// spread: a distributed load left out, or its resultant in a wrong place.
func (m *maker) spread() {
	for i, d := range m.p.Loads {
		if !known(d.Acts) {
			continue
		}
		at := func(share float64, says string) {
			p := *m.p
			c := own(&p.Loads, i)
			c.Acts = cloned(c.Acts)
			from, to := p.Points[d.From].At, p.Points[d.To].At
			c.Distance = share * d.Length
			c.At = r3.Add(from, r3.Scale(share, r3.Sub(to, from)))
			for k := range c.Acts {
				c.Acts[k].At = c.At
			}
			m.add(&p, says)
		}
		p := *m.p
		own(&p.Loads, i).Acts = nil
		m.add(&p, d.Name+" were left out")
		if d.Total != 0 && d.Length > 0 {
			at(0.5, "the resultant of "+d.Name+" acted in the middle")
			at(1-d.Distance/d.Length, "the resultant of "+d.Name+" acted as far from the other end")
		}
	}
}

// massOf tells whether a cell holds a mass, by itself or by the name of a given.
func (m *maker) massOf(ref sheet.Ref) (text string, mass bool) {
	cell, ok := m.k.sheet.Cell(ref)
	if !ok {
		return "", false
	}
	text = strings.TrimSpace(cell.Text)
	for _, g := range m.p.Givens {
		if g.Name == text {
			return text, g.Value.Dim == units.Mass
		}
	}
	e, err := units.ParseOne(text)
	if err != nil {
		return text, false
	}
	_, dim, literal := e.Literal()
	return text, literal && dim == units.Mass
}

// values of g that are used besides that of the sheet.
var otherG = []struct {
	g    float64
	says string
}{{10, "g were 10 m/s^2"}, {9.8, "g were 9.8 m/s^2"}}

// gravity: masses taken for forces, one or all of them, and another g.
func (m *maker) gravity() {
	var masses []int
	var texts []string
	for i, l := range m.p.Lines {
		if l.Kind != problem.Weight || !known(l.Acts) {
			continue
		}
		if text, mass := m.massOf(sheet.Ref{Table: "lines", Row: l.Name, Key: "magnitude"}); mass {
			masses, texts = append(masses, i), append(texts, text)
		}
	}
	all := func(by float64) *problem.Problem {
		p := *m.p
		p.Lines = slices.Clone(p.Lines)
		for _, i := range masses {
			p.Lines[i].Acts = scaled(p.Lines[i].Acts, by)
			p.Lines[i].Magnitude.Const *= by
		}
		return &p
	}
	if len(masses) == 0 || m.p.G == 0 {
		return
	}
	for k, i := range masses {
		p, c := m.line(i)
		c.Acts = scaled(c.Acts, 1/m.p.G)
		c.Magnitude.Const /= m.p.G
		m.add(p, massWords(texts[k]))
	}
	if len(masses) > 1 {
		m.add(all(1/m.p.G), "all masses were forces, without g")
	}
	for _, o := range otherG {
		m.add(all(o.g/m.p.G), o.says)
	}
}

// massWords says that a mass was taken for a force: 20 kg for 20 N.
func massWords(text string) string {
	if number, kg := strings.CutSuffix(text, "kg"); kg {
		return text + " were " + strings.TrimSpace(number) + " N"
	}
	return text + " were a force, without g"
}
