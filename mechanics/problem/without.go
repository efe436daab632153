package problem

import "slices"

// Without is the same problem with some unknowns held at nothing: cables gone
// slack, contacts lifted off. The unknowns that are left keep their order and
// are numbered anew.
func (p *Problem) Without(gone map[int]bool) *Problem {
	q := *p
	index := make([]int, len(p.Unknowns))
	q.Unknowns = nil
	for i, u := range p.Unknowns {
		index[i] = -1
		if !gone[i] {
			index[i] = len(q.Unknowns)
			q.Unknowns = append(q.Unknowns, u)
		}
	}
	q.Asked, q.Answers, q.Expect = nil, nil, "" // they are asked of the whole problem

	q.Lines = slices.Clone(p.Lines)
	for i := range q.Lines {
		l := &q.Lines[i]
		l.Magnitude = l.Magnitude.renumbered(index)
		l.Acts = renumberedActs(l.Acts, index)
	}
	q.Joints = slices.Clone(p.Joints)
	for i := range q.Joints {
		j := &q.Joints[i]
		j.Forces, j.Moments = renumbered(j.Forces, index), renumbered(j.Moments, index)
		j.Acts = renumberedActs(j.Acts, index)
	}
	q.Couples = slices.Clone(p.Couples)
	for i := range q.Couples {
		c := &q.Couples[i]
		c.Magnitude = c.Magnitude.renumbered(index)
		c.Acts = renumberedActs(c.Acts, index)
	}
	return &q
}

func (a Affine) renumbered(index []int) Affine {
	out := Affine{Const: a.Const}
	for _, t := range a.Terms {
		if k := index[t.Unknown]; k >= 0 {
			out.Terms = append(out.Terms, Term{Unknown: k, Coef: t.Coef})
		}
	}
	return out
}

func renumbered(terms []ActTerm, index []int) []ActTerm {
	var out []ActTerm
	for _, t := range terms {
		if k := index[t.Unknown]; k >= 0 {
			out = append(out, ActTerm{Unknown: k, D: t.D})
		}
	}
	return out
}

func renumberedActs(acts []Act, index []int) []Act {
	out := slices.Clone(acts)
	for i := range out {
		out[i].Terms = renumbered(out[i].Terms, index)
		out[i].CoupleTerms = renumbered(out[i].CoupleTerms, index)
	}
	return out
}
