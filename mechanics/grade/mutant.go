package grade

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// mutant is the sheet with one common mistake in it, solved. Says completes "as if".
// Plain ones are those that are made most; the others are looked at only where no
// plain one fits.
type mutant struct {
	says     []string // of several mistakes that come to the same
	plain    bool
	solution *statics.Solution
	values   map[string]result // of the results that were asked for so far
}

type result struct {
	value float64
	ok    bool
}

// of gives a result of the mutant.
func (m *mutant) of(q problem.Query) (float64, bool) {
	r, known := m.values[q.Name]
	if !known {
		r.value, r.ok = evaluate(m.solution, q)
		m.values[q.Name] = r
	}
	return r.value, r.ok
}

const (
	// maxMutants bounds what is solved for a sheet; with a hundred unknowns each takes
	// some milliseconds.
	maxMutants = 160
	// maxUnknowns is the size of a system beyond which no mutants are solved.
	maxUnknowns = 60
	// alike is how near the values of two mutants are, relative to the largest, where
	// they are the same mistake to anybody who sees numbers alone.
	alike = 1e-6
)

// breed solves the mutants of the sheet, once.
func (k *Key) breed() []mutant {
	if k.mutated {
		return k.mutants
	}
	k.mutated = true
	s := k.solution
	if len(s.X) > maxUnknowns || !s.Unique() && !s.Single() {
		return nil
	}
	m := &maker{k: k, p: s.Problem, left: maxMutants}
	m.plain = true
	m.loads()
	m.gravity()
	m.directions()
	m.joints()
	m.belts()
	m.angles()
	m.plain = false
	m.arms()
	m.spaceDirections()
	m.points()
	return k.mutants
}

// maker makes the mutants of a problem.
type maker struct {
	k     *Key
	p     *problem.Problem
	plain bool
	left  int
}

// add solves a problem with a mistake in it. What comes out as another mutant does
// is joined to it, or left out where that one is plain and this one is not.
func (m *maker) add(p *problem.Problem, says string) {
	if m.left--; m.left < 0 {
		return
	}
	s := statics.Solve(p)
	if !s.Unique() && !s.Single() || len(s.X) != len(m.k.solution.X) {
		return
	}
	if m.k.equal(s, m.k.solution) {
		return // it makes no difference here
	}
	for i := range m.k.mutants {
		if o := &m.k.mutants[i]; m.k.equal(s, o.solution) {
			if o.plain == m.plain {
				o.says = append(o.says, says)
			}
			return
		}
	}
	m.k.mutants = append(m.k.mutants, mutant{[]string{says}, m.plain, s, map[string]result{}})
}

// equal tells whether two solutions have the same unknowns and known results.
func (k *Key) equal(a, b *statics.Solution) bool {
	for i := range a.X {
		d := a.Problem.Unknowns[i].Dim
		if a.X[i].Name != b.X[i].Name || math.Abs(a.X[i].Value-b.X[i].Value) > alike*k.largest[d] {
			return false
		}
	}
	for _, q := range k.solution.Problem.Asked {
		va, errA := evaluate(a, q)
		vb, errB := evaluate(b, q)
		if errA != errB || math.Abs(va-vb) > alike*k.largest[q.Dim] {
			return false
		}
	}
	return true
}

// evaluate gives a result by its name, since a problem read anew may count otherwise.
func evaluate(s *statics.Solution, q problem.Query) (v float64, ok bool) {
	q, err := problem.ParseQuery(s.Problem, q.Name)
	if err != nil {
		return 0, false
	}
	v, none := s.Evaluate(q)
	return v, none == nil && !math.IsNaN(v) && !math.IsInf(v, 0)
}

// own gives a list copies of its things, one of which is to be changed.
func own[T any](list *[]T, i int) *T {
	*list = slices.Clone(*list)
	return &(*list)[i]
}

// line gives a copy of the problem with a copy of one line in it to be changed.
func (m *maker) line(i int) (*problem.Problem, *problem.Line) {
	p := *m.p
	l := own(&p.Lines, i)
	l.Acts = cloned(l.Acts)
	l.Legs = slices.Clone(l.Legs)
	return &p, l
}

// cloned copies acts with their terms.
func cloned(acts []problem.Act) []problem.Act {
	acts = slices.Clone(acts)
	for i := range acts {
		acts[i].Terms = slices.Clone(acts[i].Terms)
		acts[i].CoupleTerms = slices.Clone(acts[i].CoupleTerms)
	}
	return acts
}

// reread is the sheet with one cell changed, read and solved.
func (m *maker) reread(ref sheet.Ref, text, says string) {
	if m.left <= 0 {
		return
	}
	p, errs := problem.Read(m.k.sheet.With(ref, text))
	if len(errs) == 0 && len(p.Unknowns) == len(m.p.Unknowns) {
		m.add(p, says)
	}
}
