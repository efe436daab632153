package tutor

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/units"
)

// MistakeKind names a mistake, as the JSON of `trivet try` does.
type MistakeKind string

// Mistake is the one that explains what was entered; Term is the force or the word it is
// in, "" where it is in none.
type Mistake struct {
	Kind MistakeKind `json:"kind"`
	Term string      `json:"term"`
}

// sentences say what a tutor would of a mistake: %[1]s is the term, %[2]s the sum. They are written without a
// capital and a full stop, since a remark of several has neither.
var sentences = map[MistakeKind]string{
	"sign":            "look at the sign of %[1]s in %[2]s",
	"missing-force":   "a force on the body is missing in %[2]s: %[1]s",
	"extra-force":     "%[1]s has no part in %[2]s",
	"sine-cosine":     "sine and cosine are exchanged in the component of %[1]s in %[2]s",
	"whole-force":     "the whole force %[1]s stands in %[2]s in place of its component",
	"other-axis":      "the component of %[1]s in %[2]s is the one along another axis",
	"arm-point":       "the arm of %[1]s in %[2]s is measured from another point",
	"arm-distance":    "the arm of %[1]s in %[2]s is the distance to the point, not the perpendicular distance to the line of action",
	"couple-as-force": "%[1]s is a couple: it has no part in a sum of forces, and the same moment about every point",
	"intensity":       "the intensity of %[1]s stands in %[2]s in place of its resultant",
	"load-length":     "the resultant of %[1]s in %[2]s is taken over a wrong length",
	"load-place":      "the resultant of %[1]s acts at another place than in %[2]s as entered",
	"gravity":         "weight is mass times g: look at %[1]s in %[2]s",
	"factor-1000":     "%[1]s in %[2]s is off by a factor of 1000: look at its unit",
	"other-body":      "%[1]s in %[2]s has the sense that it has on the other body; by Newton's third law the two have opposite senses",
	"friction-limit":  "slip does not impend at %[1]s, so its friction is not μN: leave it an unknown",
}

// Says is what a tutor would say of a mistake in a term of a sum, as a part of a sentence.
func (k MistakeKind) Says(term, in string) string { return fmt.Sprintf(sentences[k], term, in) }

// sentence is Says as a sentence; a name it begins with stays as it is typed.
func (k MistakeKind) sentence(term, in string) string {
	says := k.Says(term, in) + "."
	if strings.HasPrefix(sentences[k], "%") {
		return says
	}
	return say.Capital(says)
}

// hypothesis is an equation with one mistake in it.
type hypothesis struct {
	kind MistakeKind
	term string
	row  []float64
	gone bool // the term is as good as gone: a thousandth, an arm of nearly nothing
	new  bool // the term has no part in the right sum

	joint string // whose forces are reversed, "" where it is no whole joint

	sum  *sum
	of   *force  // the force that is changed, nil where it is more than one
	part float64 // what it is in the equation
	by   float64 // the factor of the equation as written
}

// wrong says which one mistake explains a wrong equation, where just one kind does.
func (t *Practice) wrong(j Judgement, w written, sums []sum) Judgement {
	j.Verdict = Wrong
	uses := w.uses()
	j.on = t.bodiesWith(func(f *force) bool { return f.unknown >= 0 && uses(f.unknown) })
	if w.couple != "" {
		j.Mistake = &Mistake{"couple-as-force", w.couple}
		j.Says = MistakeKind("couple-as-force").sentence(w.couple, "")
		return j
	}
	n := len(t.Problem.Unknowns)
	if has := func(row []float64) bool { return largest(row[:n]) > 0 }; !has(w.c) && (len(sums) == 0 || has(sums[0].exact(t.forces, n))) {
		j.Says = "It contains none of the unknown forces, so it is not an equation for one of them."
		return j
	}
	var found []hypothesis
	for _, just := range []bool{true, false} {
		for i := range sums {
			row := sums[i].exact(t.forces, n)
			for _, h := range t.mistakes(&sums[i], row, &w) {
				if by, ok := w.factor(h.row, just); ok {
					h.sum, h.by = &sums[i], by
					found = append(found, h)
				}
			}
		}
		if len(found) > 0 {
			break
		}
	}
	found = slices.DeleteFunc(found, func(h hypothesis) bool {
		return h.gone && h.kind != "missing-force" && slices.ContainsFunc(found, func(o hypothesis) bool { return o.kind == "missing-force" && o.term == h.term }) ||
			h.kind == "arm-point" && slices.ContainsFunc(found, func(o hypothesis) bool { return o.kind == "load-place" && o.term == h.term }) ||
			h.kind == "extra-force" && slices.ContainsFunc(found, func(o hypothesis) bool { return o.kind != "extra-force" && o.term == h.term })
	})
	if other := slices.IndexFunc(found, func(h hypothesis) bool { return h.kind == "other-body" && h.by > 0 }); other >= 0 {
		found = slices.DeleteFunc(found, func(h hypothesis) bool {
			return h.kind == "sign" && (h.by < 0 || h.of.of.Thing == problem.AJoint && t.Problem.NameOf(h.of.of) == found[other].joint)
		})
	}
	found = t.asWritten(found, &w)
	if len(found) > 0 && !slices.ContainsFunc(found, func(h hypothesis) bool { return h.kind != found[0].kind }) {
		h := found[0]
		j.Mistake, j.Is, j.on = &Mistake{h.kind, h.term}, h.sum.is(t.Problem), h.sum.bodies
		j.Says = h.kind.sentence(h.term, j.Is)
		return j
	}
	if len(sums) == 0 {
		j.Says = "It is not a sum of the forces on one body. Try: one sum at a time, such as ΣFx"
		return j
	}
	s := &sums[0]
	if len(found) > 0 {
		s = found[0].sum
	}
	j.Is, j.on = s.is(t.Problem), s.bodies
	if terms := t.differing(w, s); len(terms) > 0 && len(terms) <= 2 {
		j.Says = "Compare " + say.And(terms...) + " in " + j.Is + " with the figure."
		return j
	}
	j.Says = "This is not " + j.Is + ": go through the forces on the body one by one."
	return j
}

// differing names the terms that are not those of a sum.
func (t *Practice) differing(w written, s *sum) (terms []string) {
	n := len(t.Problem.Unknowns)
	row := s.exact(t.forces, n)
	_, by := w.misses(row)
	scale := largest(w.c[:n])
	for k := range row {
		if w.agrees(row, k, by, scale) {
			continue
		}
		if k == n {
			terms = append(terms, "the known forces")
		} else {
			terms = append(terms, t.Problem.Unknowns[k].Name)
		}
	}
	return terms
}

// agrees tells whether a coefficient is that of λ times a row; scale is the largest of the
// equation's coefficients.
func (w *written) agrees(row []float64, k int, by, scale float64) bool {
	if k == len(row)-1 {
		scale = math.Max(scale, math.Abs(w.c[k]))
	}
	return math.Abs(w.c[k]-by*row[k]) <= w.half[k]+10*rounding*scale
}

// misses is how many coefficients of an equation are not those of the best multiple of a
// row, and by which factor.
func (w *written) misses(row []float64) (least int, best float64) {
	least = len(row) + 1
	scale := largest(w.c[:len(row)-1])
	try := func(by float64) {
		n := 0
		for k := range row {
			if !w.agrees(row, k, by, scale) {
				n++
			}
		}
		if n < least {
			least, best = n, by
		}
	}
	try(1)
	try(-1)
	for k := range row[:len(row)-1] {
		if row[k] != 0 && w.c[k] != 0 {
			try(w.c[k] / row[k])
		}
	}
	return least, best
}

// nearest are the sums that differ from an equation in the fewest terms, and how many.
func (t *Practice) nearest(w written) (out []sum, least int) {
	n := len(t.Problem.Unknowns)
	least = n + 2
	for _, set := range t.groups(w.uses()) {
		for _, c := range t.candidates(set) {
			if c.moment != w.moment {
				continue
			}
			terms, written := 0, 0
			for k := range n {
				if math.Abs(c.row[k]) > 0 {
					terms++
				}
				if w.c[k] != 0 {
					written++
				}
			}
			if terms == 0 {
				continue
			}
			miss, _ := w.misses(c.row)
			if miss > (max(terms, written)+2)/2 {
				continue // no more like it than like any other
			}
			if miss < least {
				least, out = miss, out[:0]
			}
			if miss == least && len(out) < maxNearest {
				out = append(out, c.sum)
			}
		}
	}
	return out, least
}

// maxNearest bounds how many sums are looked at that are equally near.
const maxNearest = 12

// mistakes are the equations that come of one mistake in a sum.
func (t *Practice) mistakes(s *sum, row []float64, w *written) (all []hypothesis) {
	n := len(t.Problem.Unknowns)
	for i := range t.forces {
		f := &t.forces[i]
		k := f.unknown
		if k < 0 {
			k = n
		}
		a := s.part(f)
		name := t.nameOf(f)
		put := func(kind MistakeKind, v float64) {
			if kind == "other-axis" && w.angles && t.Problem.Planar {
				kind = "sine-cosine"
			}
			if v == 0 && (kind == "other-axis" || kind == "sine-cosine" || kind == "arm-point" || kind == "whole-force") {
				return // then it is missing
			}
			if math.Abs(v-a) <= 1e-6*math.Max(math.Abs(a), math.Abs(v)) || math.IsNaN(v) || math.IsInf(v, 0) {
				return
			}
			other := slices.Clone(row)
			other[k] += v - a
			all = append(all, hypothesis{kind: kind, term: name, row: other, gone: math.Abs(v) < 0.01*math.Abs(a), new: a == 0, of: f, part: v})
		}
		if !f.on(s.bodies) {
			if f.unknown < 0 {
				for _, v := range t.asIfOn(s, f) {
					put("extra-force", v)
					put("extra-force", -v)
				}
			} else if math.Abs(w.c[k]) > 0 {
				put("extra-force", w.c[k])
				put("extra-force", -w.c[k])
			}
			continue
		}
		if a != 0 {
			put("sign", -a)
			put("missing-force", 0)
		} else if f.unknown >= 0 && w.c[k] != 0 {
			put("extra-force", w.c[k])
			put("extra-force", -w.c[k])
		}
		t.ofForce(s, f, a, put)
		t.ofLoad(s, f, a, put)
	}
	if w.angles {
		all = append(all, t.allExchanged(s, row)...)
	}
	return append(all, t.ofJoints(s, row)...)
}

// allExchanged is a sum of forces in the plane with sine and cosine exchanged in each line's
// component: the angles are measured from the other axis.
func (t *Practice) allExchanged(s *sum, row []float64) []hypothesis {
	h := hypothesis{kind: "sine-cosine", row: slices.Clone(row)}
	n := 0
	for i := range t.forces {
		f := &t.forces[i]
		a := s.part(f)
		if f.of.Thing != problem.ALine || f.unknown < 0 || a == 0 {
			continue
		}
		size := s.size(f)
		h.row[f.unknown] += math.Copysign(math.Sqrt(math.Max(size*size-a*a, 0)), a) - a
		if n++; n == 1 {
			h.term = t.nameOf(f)
		}
	}
	if n < 2 || s.moment || !t.Problem.Planar {
		return nil
	}
	return []hypothesis{h}
}

// asIfOn are the parts that a force on other bodies would have in a sum.
func (t *Practice) asIfOn(s *sum, f *force) (v []float64) {
	for _, p := range f.pieces {
		if !s.moment {
			v = append(v, r3.Dot(p.force, s.along), r3.Norm(p.force))
		} else {
			v = append(v, r3.Dot(r3.Add(r3.Cross(r3.Sub(p.at, s.at), p.force), p.turn), s.along))
		}
	}
	return v
}

// ofForce are the mistakes in the component or the arm of a force.
func (t *Practice) ofForce(s *sum, f *force, a float64, put func(MistakeKind, float64)) {
	p := t.Problem
	sign := 1.0
	if a < 0 {
		sign = -1
	}
	if f.isCouple() {
		c := 0.0
		for x := range s.on(f) {
			c += r3.Norm(x.turn)
		}
		if !s.moment {
			c *= p.Units.Force.Factor / p.Units.For(units.Moment).Factor
			put("couple-as-force", c)
			put("couple-as-force", -c)
			return
		}
		for _, q := range p.Points {
			if d := r3.Norm(r3.Sub(q.At, s.at)); q.OK && d > 0 {
				put("couple-as-force", a*d/p.Units.Length.Factor)
			}
		}
		return
	}
	exchanged := MistakeKind("other-axis")
	if t.byAngle(f) {
		exchanged = "sine-cosine"
	}
	total := r3.Vec{}
	for x := range s.on(f) {
		total = r3.Add(total, x.force)
	}
	size := r3.Norm(total)
	if !s.moment {
		if a == 0 { // it has no component there
			put("extra-force", size)
			put("extra-force", -size)
		} else {
			put("whole-force", sign*size)
		}
		for k, e := range axes {
			if p.Planar && k == 2 || r3.Norm(r3.Sub(e, s.along)) < tiny {
				continue
			}
			v := r3.Dot(total, e)
			if math.Abs(math.Abs(v)-size) < tiny*size {
				continue // the whole force
			}
			kind := MistakeKind("other-axis")
			if p.Planar {
				kind = exchanged
			}
			put(kind, v)
			put(kind, sign*math.Abs(v))
		}
		if !p.Planar && t.byAngle(f) {
			put("sine-cosine", sign*math.Sqrt(math.Max(size*size-a*a, 0)))
		}
		return
	}
	moment := func(by func(x piece) float64) (v float64) {
		for x := range s.on(f) {
			v += by(x)
		}
		return v
	}
	for _, q := range p.Points {
		if q.OK && r3.Norm(r3.Sub(q.At, s.at)) > tiny {
			v := moment(func(x piece) float64 {
				return r3.Dot(r3.Add(r3.Cross(r3.Sub(x.at, q.At), x.force), x.turn), s.along)
			})
			put("arm-point", v)
			if a != 0 {
				put("arm-point", sign*math.Abs(v)) // in the sense that it has about the right one
			}
		}
	}
	distance := moment(func(x piece) float64 { return r3.Norm(r3.Sub(x.at, s.at)) * r3.Norm(x.force) })
	put("arm-distance", sign*distance)
	if !p.Planar {
		return
	}
	for _, v := range []float64{
		moment(func(x piece) float64 { return math.Abs(x.at.X-s.at.X) * r3.Norm(x.force) }),
		moment(func(x piece) float64 { return math.Abs(x.at.Y-s.at.Y) * r3.Norm(x.force) }),
	} {
		if math.Abs(v-distance) > tiny*distance && v > 0 {
			put("whole-force", sign*v)
		}
	}
	put(exchanged, moment(func(x piece) float64 {
		g := r3.Vec{X: math.Copysign(x.force.Y, x.force.X), Y: math.Copysign(x.force.X, x.force.Y)}
		return r3.Dot(r3.Add(r3.Cross(r3.Sub(x.at, s.at), g), x.turn), s.along)
	}))
}

// byAngle tells whether a line's direction was typed by an angle.
func (t *Practice) byAngle(f *force) bool {
	if f.of.Thing != problem.ALine {
		return false
	}
	legs := t.Problem.Lines[f.of.Index].Legs
	if len(legs) == 0 {
		return false
	}
	switch legs[0].Typed.As {
	case problem.AsPolar, problem.AsAngles, problem.AsBearing:
		return true
	}
	return false
}

// ofLoad are the mistakes in a known load: a distributed load's resultant, g, the unit.
func (t *Practice) ofLoad(s *sum, f *force, a float64, put func(MistakeKind, float64)) {
	p := t.Problem
	if f.unknown >= 0 || a == 0 {
		return
	}
	put("factor-1000", 1000*a)
	put("factor-1000", a/1000)
	mass := f.of.Thing == problem.ALine && p.Lines[f.of.Index].Mass > 0 || f.of.Thing == problem.ABody && p.Bodies[f.of.Index].Mass > 0
	if mass && p.G > 0 {
		put("gravity", a/p.G)
		put("gravity", a*p.G)
	}
	if f.of.Thing != problem.ALoad {
		return
	}
	d := &p.Loads[f.of.Index]
	if d.Total == 0 || d.Length == 0 {
		return
	}
	per := p.Units.Length.Factor // the number of N/m as one of N, in the sheet's units
	for _, at := range []float64{0, d.Length / 2, d.Length} {
		if q := d.IntensityAt(at); q != 0 {
			put("intensity", a*q*per/d.Total)
		}
	}
	from, along := p.Points[d.From].At, r3.Vec{}
	if v := r3.Sub(p.Points[d.To].At, from); r3.Norm(v) > 0 {
		along = r3.Unit(v)
	}
	lengths := []float64{d.Length / 2}
	if d.IntensityAt(0) != d.IntensityAt(d.Length) {
		lengths = append(lengths, 2*d.Length) // the half of a triangle is forgotten
	}
	for _, q := range p.Points {
		for _, end := range []r3.Vec{from, p.Points[d.To].At} {
			v := r3.Sub(q.At, end)
			if l := r3.Norm(v); q.OK && l > 0 && r3.Norm(r3.Cross(v, along)) < tiny*l {
				lengths = append(lengths, l)
			}
		}
	}
	for _, l := range lengths {
		put("load-length", a*l/d.Length)
	}
	if !s.moment {
		return
	}
	for _, x := range f.pieces {
		for _, share := range []float64{0, 1. / 3, 0.5, 2. / 3, 1} {
			at := r3.Add(from, r3.Scale(share*d.Length, along))
			put("load-place", r3.Dot(r3.Cross(r3.Sub(at, s.at), x.force), s.along))
		}
	}
}

// ofJoints are the mistakes in all that a joint exerts at once.
func (t *Practice) ofJoints(s *sum, row []float64) (all []hypothesis) {
	p := t.Problem
	for i := range p.Joints {
		j := &p.Joints[i]
		flipped := slices.Clone(row)
		n, term := 0, j.Name
		elsewhere := false
		for k := range t.forces {
			f := &t.forces[k]
			if f.of.Thing == problem.AJoint && f.of.Index == i && f.unknown >= 0 && f.on(s.bodies) {
				elsewhere = elsewhere || f.elsewhere(s.bodies)
				if a := s.part(f); a != 0 {
					flipped[f.unknown] -= 2 * a
					n++
					term = t.nameOf(f)
				}
			}
		}
		if n > 1 {
			term = j.Name
		}
		if n > 0 && elsewhere {
			all = append(all, hypothesis{kind: "other-body", term: term, joint: j.Name, row: flipped})
		}
		normal, friction, ok := t.frictionAt(i)
		if !ok || row[friction] == 0 {
			continue
		}
		for _, sign := range []float64{1, -1} {
			limit := slices.Clone(row)
			limit[normal] += sign * j.Friction * row[friction]
			limit[friction] = 0
			all = append(all, hypothesis{kind: "friction-limit", term: j.Name, row: limit})
		}
	}
	return all
}

// frictionAt are the normal force and the friction of a rough surface at which slip does not
// impend, as unknowns; false of any other joint.
func (t *Practice) frictionAt(joint int) (normal, friction int, ok bool) {
	p := t.Problem
	j := &p.Joints[joint]
	normal, friction = -1, -1
	if !j.HasFriction || j.Impending || !p.Planar {
		return normal, friction, false
	}
	for k, h := range j.Held {
		for u := range p.Unknowns {
			if p.Unknowns[u].Joint == joint && p.Unknowns[u].Name == j.Name+h.Suffix {
				if k == 0 {
					normal = u
				} else {
					friction = u
				}
			}
		}
	}
	return normal, friction, normal >= 0 && friction >= 0
}

// atLimit is the joint at which an equation says that F = μN though slip does not impend
// there, -1 where it says no such thing.
func (t *Practice) atLimit(w written) int {
	for i := range t.Problem.Joints {
		normal, friction, ok := t.frictionAt(i)
		if !ok || w.c[friction] == 0 {
			continue
		}
		for _, sign := range []float64{1, -1} {
			limit := make([]float64, len(w.c))
			limit[friction], limit[normal] = 1, sign*t.Problem.Joints[i].Friction
			if w.fits(limit) {
				return i
			}
		}
	}
	return -1
}

// notImpending says that the friction at a joint is not at its limit.
func (t *Practice) notImpending(j Judgement, joint int) Judgement {
	name := t.Problem.Joints[joint].Name
	j.Verdict, j.Is, j.Mistake = Wrong, "", &Mistake{"friction-limit", name}
	j.Says = MistakeKind("friction-limit").sentence(name, "")
	return j
}
