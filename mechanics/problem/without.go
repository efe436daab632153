package problem

import (
	"maps"
	"slices"
)

// Without is the same problem with some unknowns held at nothing: cables gone
// slack, contacts lifted off. The unknowns that are left keep their order and
// are numbered anew.
func (p *Problem) Without(gone map[int]bool) *Problem {
	q := *p
	q.Asked, q.Answers, q.Expect = nil, nil, "" // they are asked of the whole problem
	q.Unknowns, q.index = nil, maps.Clone(p.index)
	index := map[int]int{}
	for i, u := range p.Unknowns {
		delete(q.index, Named{AnUnknown, u.Name})
		if !gone[i] {
			index[i], q.index[Named{AnUnknown, u.Name}] = len(q.Unknowns), len(q.Unknowns)
			q.Unknowns = append(q.Unknowns, u)
		}
	}
	magnitude := func(a Affine) Affine {
		return Affine{a.Const, renumbered(a.Terms, index, func(t *Term) *int { return &t.Unknown })}
	}
	vector := func(v Vector) Vector {
		return Vector{v.Const, renumbered(v.Terms, index, func(t *ActTerm) *int { return &t.Unknown })}
	}
	acts := func(all []Act) []Act {
		all = slices.Clone(all)
		for i := range all {
			all[i].Force, all[i].Couple = vector(all[i].Force), vector(all[i].Couple)
		}
		return all
	}
	q.Lines, q.Joints, q.Couples = slices.Clone(p.Lines), slices.Clone(p.Joints), slices.Clone(p.Couples)
	for i, l := range p.Lines {
		q.Lines[i].Magnitude, q.Lines[i].Acts = magnitude(l.Magnitude), acts(l.Acts)
	}
	for i, j := range p.Joints {
		q.Joints[i].Forces, q.Joints[i].Moments, q.Joints[i].Acts = vector(j.Forces), vector(j.Moments), acts(j.Acts)
	}
	for i, c := range p.Couples {
		q.Couples[i].Magnitude, q.Couples[i].Acts = magnitude(c.Magnitude), acts(c.Acts)
	}
	return &q
}

// renumbered are the terms whose unknowns are left.
func renumbered[T any](terms []T, index map[int]int, unknown func(*T) *int) (out []T) {
	for _, t := range terms {
		if k, left := index[*unknown(&t)]; left {
			*unknown(&t) = k
			out = append(out, t)
		}
	}
	return out
}
