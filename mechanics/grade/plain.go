package grade

import (
	"math"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// quantity is what has a name and a value on the sheet.
type quantity struct {
	name  string
	dim   units.Dim
	value float64
	of    int // the line or joint that it is a part of, or -1: only answers of that are held against it
	joint bool
}

// name lists what answers may be mistaken for: unknowns, results asked for, the
// magnitudes of known forces, and the parts of the reactions and lines.
func (k *Key) name() {
	p, s := k.solution.Problem, k.solution
	seen := map[string]bool{}
	add := func(name string, of int, joint bool) {
		if seen[name] {
			return
		}
		seen[name] = true
		q, err := problem.ParseQuery(p, name)
		if err != nil {
			return
		}
		v, none := s.Evaluate(q)
		if none != nil || math.IsNaN(v) || math.IsInf(v, 0) {
			return
		}
		k.known = append(k.known, quantity{name, q.Dim, v, of, joint})
		k.largest[q.Dim] = max(k.largest[q.Dim], math.Abs(v))
	}
	for _, q := range p.Asked {
		add(q.Name, -1, false)
	}
	for _, u := range p.Unknowns {
		add(u.Name, -1, false)
	}
	for _, l := range p.Lines {
		add(l.Name, -1, false)
	}
	parts := []string{".x", ".y", ".z", ".size", ".alpha", ".beta", ".gamma", ".angle"}
	for i, l := range p.Lines {
		for _, part := range parts {
			add(l.Name+part, i, false)
		}
	}
	for i, j := range p.Joints {
		for _, part := range parts {
			add(j.Name+part, i, true)
		}
	}
}

// part tells whether a quantity is a part of the thing that a result is of.
func (k *Key) part(of quantity, q problem.Query) bool {
	if of.joint {
		return q.Joint == of.of || q.Unknown >= 0 && k.solution.Problem.Unknowns[q.Unknown].Joint == of.of
	}
	return q.Line == of.of || q.Unknown >= 0 && k.solution.Problem.SensedLine(q) == of.of
}

// plain finds the mistakes that one answer shows by itself.
func (k *Key) plain(marks []Mark) {
	for i := range marks {
		m := &marks[i]
		if m.Verdict != Wrong || m.value.si == 0 {
			continue
		}
		if says := k.sign(m); says != "" {
			m.Verdict, m.Says = Sign, says
		} else if says := k.unit(m); says != "" {
			m.Verdict, m.Says = Unit, says
		} else if says := k.another(m); says != "" {
			m.Verdict, m.Says = Another, says
		}
	}
}

func (k *Key) sign(m *Mark) string {
	if _, ok := k.right(m, -m.value.si); !ok {
		return ""
	}
	if m.value.sense != "" {
		return "sign reversed: it is not " + m.value.sense
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
	if math.Abs(m.want) <= nothing*k.largest[m.query.Dim] {
		return "" // zero is zero in every unit
	}
	at := func(factor float64) bool { return k.rightIn(m, factor) }
	own := k.solution.Problem.Units.For(m.query.Dim)
	if own.Factor != m.value.factor && at(own.Factor) {
		return "wrong unit: the number is right in " + own.Symbol
	}
	if m.query.Dim == units.Force {
		g := k.gravity(m.value.factor)
		m.weighs = at(m.value.factor*g) || at(m.value.factor/g)
		if at(m.value.factor * g) {
			return "factor g missing: a mass taken for a force"
		}
		if at(m.value.factor / g) {
			return "factor g too many: a force taken for a mass"
		}
	}
	for _, symbol := range confused[m.query.Dim] {
		u, err := units.ParseUnit(symbol)
		if err == nil && math.Abs(u.Factor/m.value.factor-1) > slack && at(u.Factor) {
			return "wrong unit: the number is right in " + u.Symbol
		}
	}
	return ""
}

// rightIn tells whether the number of an answer would be right in another unit.
func (k *Key) rightIn(m *Mark, factor float64) bool {
	w := m.value
	w.half, w.factor = w.half/w.factor*factor, factor
	v, ok := k.rule.judge(w, m.value.si/m.value.factor*factor, m.want, k.largest[m.query.Dim], periodic(m.query))
	return ok && v == Right
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
	v := m.value
	if v.dim == units.Mass && m.query.Dim == units.Force {
		w := v
		w.si, w.half, w.factor = v.si*k.solution.Problem.G, v.half*k.solution.Problem.G, v.factor*k.solution.Problem.G
		if _, ok := k.rule.judge(w, w.si, m.want, k.largest[m.query.Dim], false); ok {
			return "wrong unit: a mass taken for a force"
		}
	}
	own := k.solution.Problem.Units.For(m.query.Dim)
	if k.rightIn(m, own.Factor) {
		return "wrong unit: the number is right in " + own.Symbol
	}
	return "wrong unit: expected " + m.query.Dim.Name() + ", but this is " + v.dim.Name()
}

// most is the number of quantities of one value that are named; of more nobody
// knows which was meant.
const most = 3

// another says whose value an answer is.
func (k *Key) another(m *Mark) string {
	if m.query.Dim == units.Angle {
		for _, c := range []struct {
			angle float64
			says  string
		}{{math.Pi / 2, "the complement, 90 deg less the angle"}, {math.Pi, "the supplement, 180 deg less the angle"}} {
			if k.same(m, c.angle-m.want) {
				return c.says
			}
		}
	}
	var names []string
	for _, o := range k.known {
		if o.dim != m.query.Dim || o.name == m.Name || math.Abs(o.value) <= nothing*k.largest[o.dim] || o.of >= 0 && !k.part(o, m.query) {
			continue
		}
		if !k.same(m, o.value) || len(names) > 0 && o.of >= 0 {
			continue // where a whole thing fits, its parts say nothing more
		}
		names = append(names, o.name)
	}
	if len(names) == 0 || len(names) > most {
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
				a.Says, b.Says = "exchanged with "+b.Name, "exchanged with "+a.Name
			}
		}
	}
}
