package handsolve

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// end is a place of a body: what acts there.
type end struct {
	at    r3.Vec
	joint int  // the joint whose forces alone act here, or -1
	pure  bool // nothing else acts here
}

// findMembers sees which rigid bodies are two-force members (common practice)
// and ties the unknowns of the joints at their ends to one force along the line.
// An end where something else acts too is left alone: there only the sum lies
// along the line.
func (f *finder) findMembers() {
	f.tied = make([]int, f.n)
	f.share = make([]float64, f.n)
	for j := range f.tied {
		f.tied[j] = -1
	}
	for b := range f.p.Bodies {
		if !f.p.Bodies[b].Particle {
			f.findMember(b)
		}
	}
}

func (f *finder) findMember(b int) {
	ends, ok := f.ends(b)
	if !ok || len(ends) != 2 {
		return
	}
	d := r3.Sub(ends[1].at, ends[0].at)
	length := r3.Norm(d)
	if length == 0 {
		return
	}
	u := r3.Scale(1/length, d)
	m := Member{Body: b, From: f.pointAt(ends[0].at), To: f.pointAt(ends[1].at), Along: u}
	for k, e := range ends {
		if !e.pure || e.joint < 0 {
			continue
		}
		out := u // tension pulls the end at To along u
		if k == 0 {
			out = r3.Scale(-1, u)
		}
		m.Shares = append(m.Shares, f.shares(b, e.joint, out)...)
	}
	if len(m.Shares) == 0 {
		return
	}
	for _, s := range m.Shares {
		f.tied[s.Unknown], f.share[s.Unknown] = len(f.route.Members), s.Coef
	}
	f.route.Members = append(f.route.Members, m)
}

// shares takes the force along out on body b apart into the joint's unknowns;
// none where the joint does not prevent all translations, or one is tied already.
func (f *finder) shares(b, joint int, out r3.Vec) []Share {
	j := &f.p.Joints[joint]
	if len(j.Forces) != f.dims {
		return nil
	}
	if j.First != b {
		out = r3.Scale(-1, out)
	}
	var shares []Share
	for _, t := range j.Forces {
		c := r3.Dot(out, t.D)
		if f.tied[t.Unknown] >= 0 || f.usedElsewhere(t.Unknown, joint) {
			return nil
		}
		shares = append(shares, Share{t.Unknown, c})
	}
	return shares
}

// usedElsewhere tells that an unknown of a joint occurs in a magnitude as well.
func (f *finder) usedElsewhere(unknown, joint int) bool {
	for act := range f.p.Acts() {
		for _, terms := range [][]problem.ActTerm{act.Terms, act.CoupleTerms} {
			for _, t := range terms {
				if t.Unknown == unknown && f.jointOf(act) != joint {
					return true
				}
			}
		}
	}
	return false
}

// jointOf is the joint that an act is of, or -1.
func (f *finder) jointOf(act *problem.Act) int {
	for i := range f.p.Joints {
		for k := range f.p.Joints[i].Acts {
			if act == &f.p.Joints[i].Acts[k] {
				return i
			}
		}
	}
	return -1
}

// ends gathers the places where forces act on a body; false where a couple acts on
// it, or a force at a third place.
func (f *finder) ends(b int) (ends []end, ok bool) {
	for a := range f.p.Acts() {
		switch {
		case a.Body != b || a.Const == (r3.Vec{}) && len(a.Terms) == 0 && a.Couple == (r3.Vec{}) && len(a.CoupleTerms) == 0:
			continue
		case a.Couple != (r3.Vec{}) || len(a.CoupleTerms) > 0:
			return nil, false
		}
		i := slices.IndexFunc(ends, func(e end) bool { return e.at == a.At })
		if i < 0 {
			ends = append(ends, end{at: a.At, joint: f.jointOf(a), pure: true})
		} else {
			ends[i].pure = false
		}
	}
	return ends, len(ends) <= 2
}

// pointAt is the first point at a place, or -1.
func (f *finder) pointAt(at r3.Vec) int {
	for i := range f.p.Points {
		if f.p.Points[i].OK && f.p.Points[i].At == at {
			return i
		}
	}
	return -1
}
