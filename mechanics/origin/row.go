package origin

import (
	"math"

	"trivet/mechanics/doc"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// Entry is A[i][j]: the component of a unit vector, or the moment of one, with the
// coordinates put in.
func Entry(s *statics.Solution, i, j int) doc.Origin {
	return of(func() string {
		p, r := s.Problem, &s.System.Rows[i]
		head := s.System.Cols[j] + " in " + Row(p, r) + ": "
		var words, numbers string
		n, acts := 0, false
		for _, a := range sources(p, r.Body) {
			w, v := a.share(s, r, j)
			acts = acts || w != ""
			if v == 0 {
				continue
			}
			if n++; n > 1 {
				words, numbers = words+" + ", numbers+" + "
			}
			words, numbers = words+w, numbers+print(cosine).behind(v)
		}
		switch total := s.Coefficient(i, j); {
		case !acts:
			return head + "0, it does not act on " + r.Name
		case n == 0:
			return head + "0, " + vanishes(s, r)
		case n > limit:
			return head + "the sum of " + say.Count(n, "part") + ", " + Coefficient(total)
		case n > 1:
			return head + words + " = " + numbers + " = " + cosine(total)
		default:
			return head + words + " = " + cosine(total)
		}
	}, "entry", i, j)
}

// vanishes says why what acts on a body has no part in a row.
func vanishes(s *statics.Solution, r *statics.Row) string {
	switch {
	case !r.Moment:
		return "it has no component along " + r.Axis[1:]
	case s.Problem.Planar:
		return "its line of action passes through " + r.About
	}
	return "its line of action intersects the axis along " + r.Axis[1:] + " through " + r.About + " or is parallel to it"
}

// Known is b[i]: minus the known forces, or moments, of the row.
func Known(s *statics.Solution, i int) doc.Origin {
	return of(func() string {
		r := &s.System.Rows[i]
		parts := added(s, r, false)
		noun := "force"
		if r.Moment {
			noun = "moment"
		}
		head := "b in " + Row(s.Problem, r) + ": "
		switch len(parts) {
		case 0:
			return head + "no known " + noun + " has a part in it"
		case 1:
			return head + "minus the known " + noun + ", " + parts[0]
		}
		return head + "minus the sum of the known " + say.Plural(2, noun) + ", " + say.AndMore(parts, limit)
	}, "known", i)
}

// added are the terms of a row: what is known, or all in the solution.
func added(s *statics.Solution, r *statics.Row, solved bool) (parts []string) {
	for _, a := range sources(s.Problem, r.Body) {
		f, couple := a.Force.Const, a.Couple.Const
		if solved {
			f, couple = s.Sum(a.Force), s.Sum(a.Couple)
		}
		if v := part(s.Problem, r, a.Act, f, couple); v != 0 {
			parts = append(parts, a.name+" "+s.Problem.Format(v, r.Dim()))
		}
	}
	return parts
}

// Residual is what is left of a row: Σ A x - b, from the forces themselves.
func Residual(s *statics.Solution, i int) doc.Origin {
	return of(func() string {
		r := &s.System.Rows[i]
		return "the residual A x - b of " + Row(s.Problem, r) + ", the sum of " + say.AndMore(added(s, r, true), limit) + ": " + left(s, i)
	}, "residual", i)
}

// Share is what is left of a row beside the largest force.
func Share(s *statics.Solution, i int) doc.Origin {
	return of(func() string {
		p, r, is := s.Problem, &s.System.Rows[i], s.Residuals[i]
		says := "the residual of " + Row(p, r)
		if is.Relative == 0 {
			return says + " is zero"
		}
		says += ", " + left(s, i) + ", over the largest force"
		if r.Moment {
			says += " times the longest arm"
		}
		return says + ", " + p.Format(math.Abs(is.Value)/is.Relative, r.Dim())
	}, "share", i)
}

func left(s *statics.Solution, i int) string {
	u := s.Problem.Units.For(s.System.Rows[i].Dim())
	return Tiny(s.Residuals[i].Value/u.Factor) + " " + u.Symbol
}
