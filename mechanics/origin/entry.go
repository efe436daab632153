package origin

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/units"
)

// Entry says where A[i][j] comes from: the component of a unit vector, or the
// moment of one, with the coordinates put in.
func Entry(s *statics.Solution, i, j int) string {
	p, r := s.Problem, &s.System.Rows[i]
	name := s.System.Cols[j].Name
	head := name + " in " + Row(p, *r) + ": "
	words, numbers := "", ""
	n, acts := 0, false
	for a := range sources(p, r.Body) {
		w, v := a.share(s, r, j)
		acts = acts || w != ""
		if v == 0 {
			continue
		}
		if n++; n > 1 {
			words, numbers = words+" + ", numbers+" + "
		}
		words, numbers = words+w, numbers+behind(cosine(v))
	}
	switch total := s.Coefficient(i, j); {
	case !acts:
		return head + "0, it does not act on " + r.Name
	case n == 0 && !r.Moment:
		return head + "0, it acts across " + r.Axis[1:]
	case n == 0 && p.Planar:
		return head + "0, its line of action passes through " + r.About
	case n == 0:
		return head + "0, its line of action meets the axis along " + r.Axis[1:] + " through " + r.About + " or is parallel to it"
	case n > most:
		return head + fmt.Sprintf("%d parts that come to %s", n, Coefficient(total))
	case n > 1:
		return head + words + " = " + numbers + " = " + cosine(total)
	default:
		return head + words + " = " + cosine(total)
	}
}

// share is what one unit of an unknown exerts through an act along a row, in
// words and in the sheet's units; no words where the act has nothing of it.
func (a source) share(s *statics.Solution, r *statics.Row, j int) (string, float64) {
	p := s.Problem
	scale := p.Units.For(p.Unknowns[j].Dim).Factor / rowUnit(p, r).Factor
	for _, t := range a.Terms {
		if t.Unknown != j {
			continue
		}
		v := part(p, r, a.Act, t.D, r3.Vec{}) * scale
		if r.Moment {
			return a.moment(p, r, t.D), v
		}
		return a.cosine(p, r, t), v
	}
	for _, t := range a.CoupleTerms {
		if t.Unknown == j {
			if !r.Moment {
				return "a couple has no part along " + r.Axis[1:], 0
			}
			return a.turn(p, r, t.D), component(t.D, axisOf(r)) * scale
		}
	}
	return "", 0
}

// turn is a couple's part about an axis.
func (a source) turn(p *problem.Problem, r *statics.Row, d r3.Vec) string {
	switch {
	case p.Planar && d.Z > 0:
		return "it turns counter-clockwise"
	case p.Planar:
		return "it turns clockwise"
	}
	return "it turns " + direction(p, d)
}

// cosine is the component of a force's direction.
func (a source) cosine(p *problem.Problem, r *statics.Row, t problem.ActTerm) string {
	axis := axisOf(r)
	if a.line >= 0 {
		if words := legs(p, &p.Lines[a.line], a.Act, t, axis); words != "" {
			return words
		}
	}
	if a.joint >= 0 && p.Joints[a.joint].Second == a.Body {
		return "it acts on " + r.Name + " " + direction(p, t.D) + ", opposite to " + p.Bodies[p.Joints[a.joint].First].Name
	}
	return "it acts " + direction(p, t.D)
}

// direction names a direction: an axis where it is one, else a vector.
func direction(p *problem.Problem, d r3.Vec) string {
	const aligned = 1e-12 // rounding of a typed direction
	n := r3.Norm(d)
	for k := range axes {
		switch c := component(d, k); {
		case math.Abs(c-n) <= aligned*n:
			return "along +" + axes[k:k+1]
		case math.Abs(c+n) <= aligned*n:
			return "along -" + axes[k:k+1]
		}
	}
	return "along " + tuple(p, d)
}

// tuple is a direction by its components.
func tuple(p *problem.Problem, d r3.Vec) string {
	s := "(" + cosine(d.X) + ", " + cosine(d.Y)
	if !p.Planar {
		s += ", " + cosine(d.Z)
	}
	return s + ")"
}

// legs is the component of the unit vectors of the stretches of a line that meet at
// a point, away from it in tension and towards it in compression.
func legs(p *problem.Problem, l *problem.Line, a *problem.Act, t problem.ActTerm, axis int) string {
	coef := 0.0
	for _, m := range l.Magnitude.Terms {
		if m.Unknown == t.Unknown {
			coef = m.Coef
		}
	}
	if coef == 0 || len(l.Legs) == 0 {
		return "" // given by components
	}
	words := ""
	add := func(from, to int, sign float64, leg problem.Leg) {
		if words != "" {
			words += " + "
		}
		if times := coef * sign; times != 1 {
			words += units.Compact(times) + "·"
		}
		words += stretch(p, from, to, leg, axis)
	}
	switch {
	case l.Legs[0].To < 0 && (l.Kind == problem.Strut || l.Between() && a.Body == l.Acts[1].Body):
		add(-1, -1, -1, l.Legs[0])
	case l.Legs[0].To < 0:
		add(-1, -1, 1, l.Legs[0])
	case !l.Kind.Info().Path && !l.Between():
		add(l.Legs[0].From, l.Legs[0].To, 1, l.Legs[0])
	default:
		for k, at := range l.Path {
			if at != a.Point {
				continue
			}
			ends := func(from, to int, leg problem.Leg) {
				if l.Pushes() {
					from, to = to, from // compression pushes the ends apart
				}
				add(from, to, 1, leg)
			}
			if k < len(l.Legs) {
				ends(at, l.Path[k+1], l.Legs[k])
			}
			if k > 0 {
				ends(at, l.Path[k-1], l.Legs[k-1])
			}
			break
		}
	}
	return words
}

// stretch is a component of a unit vector from one point to another, or of a
// direction where there is none.
func stretch(p *problem.Problem, from, to int, leg problem.Leg, axis int) string {
	name := axes[axis : axis+1]
	if to < 0 {
		return name + " of u " + direction(p, leg.U)
	}
	u := p.Units.Length
	a, b := &p.Points[from], &p.Points[to]
	return fmt.Sprintf("%s of u from %s to %s = (%s - %s) %s / %s", name, a.Name, b.Name,
		in(u, component(b.At, axis), p.Figures), behind(in(u, component(a.At, axis), p.Figures)), u.Symbol, u.Format(leg.Length, p.Figures))
}

// moment is a component of r × u, r from the point that moments are taken about.
func (a source) moment(p *problem.Problem, r *statics.Row, d r3.Vec) string {
	axis, u := axisOf(r), p.Units.Length
	one, two := (axis+1)%3, (axis+2)%3 // (r × u)x = y·uz - z·uy, and so on round
	arm := p.Arm(a.Act)
	number := func(k int) string { return in(u, component(arm, k), p.Figures) }
	return fmt.Sprintf("%s·u%s - %s·u%s, from %s to where it acts, = (%s·%s - %s·%s) %s",
		axes[one:one+1], axes[two:two+1], axes[two:two+1], axes[one:one+1], r.About,
		behind(number(one)), behind(cosine(component(d, two))), behind(number(two)), behind(cosine(component(d, one))), u.Symbol)
}
