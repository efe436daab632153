package statics

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
)

// free treats an indeterminate system: all solutions are
//
//	x = x₀ + Z y
//
// with Z = D⁻¹ V₂, V₂ an orthonormal basis of the null space of the scaled system
// whose vectors are given. An unknown whose row of V₂ is nothing keeps its value;
// the others get the range that the conditions (cables pull, contacts press, within
// their faces and |F| <= μN) leave over all y. Parameters that share no unknown
// and no condition have nothing to do with each other, and each such part is worked
// out alone.
func (s *Solution) free(null [][]float64, scale []float64) {
	n := len(s.X)
	s.Verdict, s.Degree = Indeterminate, n-s.Rank
	z := make([][]float64, n) // in units of the largest load of each part
	for j := range n {
		z[j] = make([]float64, s.Degree)
		size := 0.0
		for k := range s.Degree {
			z[j][k] = null[k][j] / scale[j]
			size = math.Hypot(size, null[k][j])
		}
		if s.X[j].Fixed = size <= max(fixedTol, s.parts[s.partOf[j]].blur); s.X[j].Fixed {
			clear(z[j])
			s.X[j].Low, s.X[j].High = s.X[j].Value, s.X[j].Value
		}
	}
	s.unbind()
	s.freedom, s.spans = z, map[int][2]float64{}
	takes := make([][]int, n, n+len(s.conditions)) // the parameters of an unknown, and of a condition
	for j := range z {
		for k, x := range z[j] {
			if x != 0 {
				takes[j] = append(takes[j], k)
			}
		}
	}
	for i := range s.conditions {
		var of []int
		for _, t := range s.conditions[i].terms() {
			of = append(of, takes[t.Unknown]...)
		}
		takes = append(takes, of)
	}
	s.possible = true
	work := int(programmeWork)
	for _, g := range groups(s.Degree, takes) {
		if len(g.things) > 0 && len(g.items) > 0 {
			s.freePart(z, g, &work)
		}
	}
}

// freePart works out the ranges of the unknowns that depend on the parameters of a group.
func (s *Solution) freePart(z [][]float64, g group, work *int) {
	ks := g.things
	mine := make([][]float64, len(z)) // of the parameters
	for j := range z {
		mine[j] = make([]float64, len(ks))
		for i, k := range ks {
			mine[j][i] = z[j][k]
		}
	}
	split, _ := slices.BinarySearch(g.items, len(z)) // conditions come after the unknowns
	// The unit is the largest load of the part, so that the parameters are about one in each.
	r, load := s.region(mine, cmp.Or(s.parts[s.partOf[g.items[0]]].load, 1), g.items[split:])
	r.work = work
	switch r.admissible() {
	case linear.Empty:
		s.possible = false
		s.conflict(r)
		return
	case linear.Unknown:
		s.possible = false
		s.undecided = s.undecided || r.round() && *work > 0 && r.programme.Feasible() == linear.Found
		return
	}
	if s.alone {
		return
	}
	kept := [][]float64{r.inside} // points y at which some unknown is least or greatest
	span := func(m problem.Affine) (ends [2]float64, by [2][]Ended, known bool) {
		g := make([]float64, len(ks))
		for _, t := range m.Terms {
			floats.AddScaled(g, t.Coef, mine[t.Unknown])
		}
		if _, fixed := s.single(m); fixed || floats.Norm(g, 2) == 0 {
			return ends, by, false // other parameters decide it, or none
		}
		ends = [2]float64{math.Inf(-1), math.Inf(1)}
		for side, sign := range []float64{1, -1} {
			switch l := r.least(floats.ScaleTo(make([]float64, len(ks)), sign, g)); l.Extent {
			case linear.Found:
				ends[side] = s.at(m) + sign*l.Value*load
				if math.Abs(ends[side]) <= onBound*load {
					ends[side] = 0 // a cable that just goes slack
				}
				by[side] = l.ends
				kept = append(kept, l.Y)
			case linear.Endless:
			default:
				return ends, by, false
			}
		}
		if width := ends[1] - ends[0]; width < r.narrow()*load {
			only := (ends[0] + ends[1]) / 2
			if math.Abs(only) <= r.narrow()*load {
				only = 0
			}
			ends[0], ends[1] = only, only
		}
		return ends, by, true
	}
	for _, j := range g.items[:split] {
		if ends, by, known := span(times(j, 1)); known {
			x := &s.X[j]
			x.Ranged, x.Low, x.High, x.LowBy, x.HighBy = true, ends[0], ends[1], by[0], by[1]
		}
	}
	for i := range s.Problem.Lines {
		if l := &s.Problem.Lines[i]; l.Limit > 0 && len(l.Magnitude.Terms) > 1 {
			if ends, _, known := span(l.Magnitude); known {
				s.spans[i] = ends
			}
		}
	}
	for _, j := range g.items[:split] { // a mean of points that keep the conditions keeps them too
		for _, y := range kept {
			for k := range y {
				s.X[j].Value += mine[j][k] * y[k] * load / float64(len(kept))
			}
		}
	}
}

// Ended is a condition, and the part of it, that ends a range.
type Ended struct{ Condition, Part int }

// noise is the part of the largest load below which what is free is rounding.
const noise = 1e-13

// region writes the conditions of a group over its parameters, of which z[j] is what unknown j
// takes, in a unit of its own: the largest force that its conditions begin from.
func (s *Solution) region(z [][]float64, load float64, conditions []int) (*region, float64) {
	r := &region{gap: max(coneGap, math.Pow(10, -float64(s.Problem.Figures+2))), degree: len(z[0])}
	unit := 0.0
	form := func(m problem.Affine) linearForm {
		f := linearForm{c: s.at(m), g: make([]float64, r.degree)}
		for _, t := range m.Terms {
			floats.AddScaled(f.g, t.Coef, z[t.Unknown])
		}
		unit = max(unit, math.Abs(f.c))
		return f
	}
	lifted := s.lifted()
	for _, i := range conditions {
		i -= len(z)
		c := &s.conditions[i]
		if _, fixed := s.spare(c); fixed {
			continue // kept or not whatever is free
		}
		if c.Kind != Sense && lifted[c.at] {
			continue // it has no normal force, or no tension, to speak of
		}
		for k, m := range c.parts {
			r.bounds = append(r.bounds, bound{u: form(m.u), a: form(m.a), b: form(m.b), round: m.round(), by: Ended{i, k}})
		}
	}
	if unit < noise*load {
		unit = load
	}
	for i := range r.bounds {
		b := &r.bounds[i]
		b.u.c, b.a.c, b.b.c = b.u.c/unit, b.a.c/unit, b.b.c/unit
	}
	return r, unit
}

// conflict is a set of conditions that no solution keeps together, and of which none
// can be left out. Slips tells that without the limits of friction some solution keeps
// all others.
type conflict struct {
	Conditions []Condition
	Slips      bool
}

// conflict keeps what cannot hold together in a region that is empty, and whether
// friction decides it.
func (s *Solution) conflict(r *region) {
	var others []int
	out := conflict{Conditions: say.Each(r.conflict(), func(i int) Condition { return s.conditions[i] })}
	for i := range s.conditions {
		if k := s.conditions[i].Kind; k != Friction && k != Grip {
			others = append(others, i)
		}
	}
	out.Slips = r.with(others) == linear.Found
	s.conflicts = append(s.conflicts, out)
}

// unbind claims nothing of what is free.
func (s *Solution) unbind() {
	for j := range s.X {
		s.X[j].unbind()
	}
}

func (x *Unknown) unbind() {
	if x.Fixed {
		return
	}
	x.Ranged, x.Low, x.High, x.LowBy, x.HighBy = false, math.Inf(-1), math.Inf(1), nil, nil
}
