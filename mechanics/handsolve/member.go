package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// findMembers sees which rigid bodies are two-force members (common practice)
// and ties the unknowns of the joints at their ends to one force along the line.
// An end where something else acts too is left alone: there only the sum lies
// along the line.
func (f *finder) findMembers() {
	f.tied = map[int]Share{}
	for b := range f.p.Bodies {
		if !f.p.Bodies[b].Particle {
			f.findMember(b)
		}
	}
}

func (f *finder) findMember(b int) {
	ends := problem.ByPlace(f.acts[b], func(a act) *problem.Act { return a.Act })
	if len(ends) != 2 {
		return
	}
	from, to := ends[0][0].At, ends[1][0].At
	d := r3.Sub(to, from)
	if d == (r3.Vec{}) {
		return
	}
	m := Member{Body: b, From: f.pointAt(from), To: f.pointAt(to)}
	out := r3.Scale(-1/r3.Norm(d), d)
	for _, end := range ends {
		if len(end) == 1 && end[0].from.Thing == problem.AJoint {
			m.Shares = append(m.Shares, f.shares(b, end[0].from, out)...)
		}
		out = r3.Scale(-1, out) // tension pulls the end at To the other way
	}
	if len(m.Shares) == 0 {
		return
	}
	for _, s := range m.Shares {
		f.tied[s.Unknown] = Share{f.n + len(f.order.Members), s.Coef}
	}
	f.order.Members = append(f.order.Members, m)
}

// shares takes the force along out on body b apart into the joint's unknowns;
// none where the joint does not prevent all translations, or one is tied already.
func (f *finder) shares(b int, joint problem.Source, out r3.Vec) (shares []Share) {
	j := &f.p.Joints[joint.Index]
	if len(j.Forces.Terms) != len(f.axes) {
		return nil
	}
	if j.First != b {
		out = r3.Scale(-1, out)
	}
	for _, t := range j.Forces.Terms {
		if _, tied := f.tied[t.Unknown]; tied || f.usedElsewhere(t.Unknown, joint) {
			return nil
		}
		shares = append(shares, Share{t.Unknown, r3.Dot(out, t.D)})
	}
	return shares
}

// usedElsewhere tells that an unknown of a joint occurs in a magnitude as well.
func (f *finder) usedElsewhere(unknown int, joint problem.Source) bool {
	uses := func(t problem.ActTerm) bool { return t.Unknown == unknown }
	return slices.ContainsFunc(slices.Concat(f.acts...), func(a act) bool {
		return a.from != joint && (slices.ContainsFunc(a.Force.Terms, uses) || slices.ContainsFunc(a.Couple.Terms, uses))
	})
}
