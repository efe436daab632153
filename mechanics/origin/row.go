package origin

import (
	"math"

	"trivet/mechanics/doc"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

type entry struct{ row, col int }

// Entry is A[i][j]: the component of a unit vector, or the moment of one, with the
// coordinates put in.
func Entry(s *statics.Solution, i, j int) doc.Origin { return of(s, entry{i, j}) }

func (e entry) says(s *statics.Solution) string {
	p, r := s.Problem, &s.System.Rows[e.row]
	head := s.System.Cols[e.col].Name + " in " + Row(p, r) + ": "
	var words, numbers string
	n, acts := 0, false
	for a := range sources(p, r.Body) {
		w, v := a.share(s, r, e.col)
		acts = acts || w != ""
		if v == 0 {
			continue
		}
		if n++; n > 1 {
			words, numbers = words+" + ", numbers+" + "
		}
		words, numbers = words+w, numbers+print(cosine).behind(v)
	}
	switch total := s.Coefficient(e.row, e.col); {
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
}

// vanishes says why what acts on a body has no part in a row.
func vanishes(s *statics.Solution, r *statics.Row) string {
	switch {
	case !r.Moment:
		return "it has no component along " + r.Axis[1:]
	case s.Problem.Planar:
		return "its line of action passes through " + r.About
	}
	return "its line of action meets the axis along " + r.Axis[1:] + " through " + r.About + " or is parallel to it"
}

type known struct{ row int }

// Known is b[i]: minus the known forces, or moments, of the row.
func Known(s *statics.Solution, i int) doc.Origin { return of(s, known{i}) }

func (k known) says(s *statics.Solution) string {
	p, r := s.Problem, &s.System.Rows[k.row]
	parts := added(s, r, false)
	noun := "force"
	if r.Moment {
		noun = "moment"
	}
	head := "b in " + Row(p, r) + ": "
	switch len(parts) {
	case 0:
		return head + "no known " + noun + " has a part in it"
	case 1:
		return head + "minus the known " + noun + ", " + parts[0]
	}
	return head + "minus the sum of the known " + say.Plural(2, noun) + ", " + say.AndMore(parts, limit)
}

// added are the terms of a row: what is known, or all in the solution.
func added(s *statics.Solution, r *statics.Row, solved bool) (parts []string) {
	for a := range sources(s.Problem, r.Body) {
		f, couple := a.Const, a.Couple
		if solved {
			f, couple = a.solved(s)
		}
		if v := part(s.Problem, r, a.Act, f, couple); v != 0 {
			parts = append(parts, a.name+" "+shown(s.Problem, v, r.Dim()))
		}
	}
	return parts
}

type residual struct {
	row   int
	share bool
}

// Residual is what is left of a row: Σ A x - b, from the forces themselves.
func Residual(s *statics.Solution, i int) doc.Origin { return of(s, residual{i, false}) }

// Share is what is left of a row beside the largest force.
func Share(s *statics.Solution, i int) doc.Origin { return of(s, residual{i, true}) }

func (x residual) says(s *statics.Solution) string {
	p, r, is := s.Problem, &s.System.Rows[x.row], s.Residuals[x.row]
	switch {
	case x.share && is.Relative == 0:
		return "the residual of " + Row(p, r) + " is zero"
	case x.share:
		over := ", over the largest force, "
		if r.Moment {
			over = ", over the largest force times the longest arm, "
		}
		return "the residual of " + Row(p, r) + ", " + left(s, x.row) + over + shown(p, math.Abs(is.Value)/is.Relative, r.Dim())
	}
	return "the residual A x - b of " + Row(p, r) + ", the sum of " + say.AndMore(added(s, r, true), limit) + ": " + left(s, x.row)
}

func left(s *statics.Solution, i int) string {
	u := s.Problem.Units.For(s.System.Rows[i].Dim())
	return Tiny(s.Residuals[i].Value/u.Factor) + " " + u.Symbol
}
