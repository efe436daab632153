package grade

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// quantity is what has a name and a value on the sheet. With one that is a part of a line
// or a joint only answers of that are compared.
type quantity struct {
	problem.Query
	part  bool
	value float64
}

// quantities lists what answers may be mistaken for: unknowns, results asked for, the
// magnitudes of known forces, and the parts of the reactions and lines.
func (k *Key) quantities() {
	p := k.solution.Problem
	seen := map[string]bool{}
	add := func(name string, part bool) {
		q, err := k.Query(name)
		if seen[name] || err != nil {
			return
		}
		seen[name] = true
		if v, none := k.solution.Evaluate(q); none == nil && !math.IsNaN(v) && !math.IsInf(v, 0) {
			k.known = append(k.known, quantity{q, part, v})
			k.largest[q.Dim] = max(k.largest[q.Dim], math.Abs(v))
		}
	}
	for _, name := range k.Asked() {
		add(name, false)
	}
	for _, u := range p.Unknowns {
		add(u.Name, false)
	}
	for _, l := range p.Lines {
		add(l.Name, false)
	}
	for _, part := range []string{".x", ".y", ".z", ".size", ".alpha", ".beta", ".gamma", ".angle"} {
		for _, l := range p.Lines {
			add(l.Name+part, true)
		}
		for _, j := range p.Joints {
			add(j.Name+part, true)
		}
	}
}

// concerns tells whether an answer to a query may be taken for a quantity.
func (k *Key) concerns(o quantity, q problem.Query) bool {
	p := k.solution.Problem
	switch {
	case o.Dim != q.Dim || o.Name == q.Name || k.zero(q, o.value):
		return false
	case !o.part || q.Of == o.Of:
		return true
	case q.Of.Thing != problem.AnUnknown:
		return false
	case o.Of.Thing == problem.AJoint:
		return p.Unknowns[q.Of.Index].Joint == o.Of.Index
	}
	return p.SensedLine(q) == o.Of.Index
}

// explain finds the mistake that a wrong answer shows by itself.
func (k *Key) explain(m *Mark) (Verdict, string) {
	for _, kind := range []struct {
		verdict Verdict
		says    func(m *Mark) string
	}{{Sign, k.sign}, {Unit, k.unit}, {Another, k.another}} {
		if m.value.Value == 0 {
			break
		}
		if says := kind.says(m); says != "" {
			return kind.verdict, says
		}
	}
	return Wrong, Wrong.String()
}

func (k *Key) sign(m *Mark) string {
	reversed := m.value
	reversed.Value = -reversed.Value
	switch {
	case !k.judge(m.query, reversed, m.want).OK():
		return ""
	case m.value.Sense != "":
		return "sign reversed: it is not " + m.value.Sense
	}
	return Sign.String()
}

// confused are the units that are taken for each other; rarer ones would fit too
// many numbers by chance.
var confused = map[units.Dim][]string{
	units.Force:  {"N", "kN", "lbf", "kip", "kgf"},
	units.Length: {"m", "mm", "cm", "ft", "in"},
	units.Angle:  {"deg", "rad"},
	units.Moment: {"N m", "kN m", "N mm", "lbf ft", "lbf in", "kip ft"},
}

// unit says in which unit the number would be right, or that g is missing or too
// many in it.
func (k *Key) unit(m *Mark) string {
	if k.zero(m.query, m.want) {
		return "" // zero is zero in every unit
	}
	own, factor := k.solution.Problem.Units.For(m.query.Dim), m.value.Factor
	type reading struct {
		factor float64
		says   string
		weighs bool
	}
	readings := []reading{{own.Factor, rightIn(own), false}}
	if m.query.Dim == units.Force {
		g := k.gravity(factor)
		readings = append(readings, reading{factor * g, "factor g missing: a mass taken for a force", true})
		if k.weights() {
			readings = append(readings, reading{factor / g, "factor g too many: a force taken for a mass", true})
		}
	}
	for _, symbol := range confused[m.query.Dim] {
		if u, err := units.ParseUnit(symbol); err == nil {
			readings = append(readings, reading{u.Factor, rightIn(u), false})
		}
	}
	for _, r := range readings {
		if math.Abs(r.factor/factor-1) > slack && k.in(m, r.factor) == Right {
			m.weighs = r.weighs
			return r.says
		}
	}
	return ""
}

// weights tells whether anything on the sheet has a weight that could be taken for a mass.
func (k *Key) weights() bool {
	p := k.solution.Problem
	return slices.ContainsFunc(p.Lines, func(l problem.Line) bool { return l.Kind == problem.Weight }) ||
		slices.ContainsFunc(p.Bodies, func(b problem.Body) bool { return b.Weight != 0 })
}

func rightIn(u units.Unit) string { return "wrong unit: the number is right in " + u.Symbol }

// in judges the number of an answer as if it were in another unit.
func (k *Key) in(m *Mark, factor float64) Verdict {
	v := m.value
	v.Value, v.Half, v.Factor = v.Value/v.Factor*factor, v.Half/v.Factor*factor, factor
	return k.judge(m.query, v, m.want)
}

// gravity is the number of g in the units of a force: a mass of so many kilograms,
// or slugs where the force is in pounds, times this is its weight.
func (k *Key) gravity(factor float64) float64 {
	g := k.solution.Problem.G
	for _, symbol := range []string{"lbf", "kip"} {
		if u, _ := units.Find(symbol); u.Factor == factor {
			foot, _ := units.Find("ft")
			return g / foot.Factor
		}
	}
	return g
}

// otherDimension says what is wrong with an answer of another dimension.
func (k *Key) otherDimension(m *Mark) string {
	own := k.solution.Problem.Units.For(m.query.Dim)
	switch {
	case m.value.Dim == units.Mass && m.query.Dim == units.Force && k.in(m, m.value.Factor*k.solution.Problem.G).OK():
		return "wrong unit: a mass taken for a force"
	case k.in(m, own.Factor) == Right:
		return rightIn(own)
	}
	return "wrong unit: expected " + m.query.Dim.Name() + ", but this is " + m.value.Dim.Name()
}

// maxNamed is the number of quantities of one value that are named; of more nobody
// knows which was meant.
const maxNamed = 3

// another says whose value an answer is.
func (k *Key) another(m *Mark) string {
	switch {
	case m.query.Dim != units.Angle:
	case k.same(m, math.Pi/2-m.want):
		return "the complement, 90 deg less the angle"
	case k.same(m, math.Pi-m.want):
		return "the supplement, 180 deg less the angle"
	}
	var names []string
	for _, o := range k.known { // where a whole thing fits, its parts say nothing more
		if (len(names) == 0 || !o.part) && k.concerns(o, m.query) && k.same(m, o.value) {
			names = append(names, o.Name)
		}
	}
	if len(names) == 0 || len(names) > maxNamed {
		return ""
	}
	return "that is the value of " + say.And(names...)
}

// exchanged finds two answers that stand in each other's place.
func (k *Key) exchanged(marks []Mark) {
	for i := range marks {
		for j := range marks[:i] {
			a, b := &marks[i], &marks[j]
			if a.Verdict == Another && b.Verdict == Another && a.query.Dim == b.query.Dim && k.same(a, b.want) && k.same(b, a.want) {
				a.swapped, b.swapped = true, true
				a.Says, b.Says = "exchanged with "+b.Name, "exchanged with "+a.Name
			}
		}
	}
}
