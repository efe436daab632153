package grade

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/tutor"
	"trivet/units"
)

// held is a sum with a student's values put into it.
type held struct {
	*tutor.Sum
	off     float64 // what is left of it
	holds   bool    // nothing, as the answers are written
	telling bool    // though not all that it contains is right
}

// hold puts a student's own values into the sums on each body, and says which hold and
// which are off, where all unknowns of a body were answered and one of its sums holds whose
// answers are not all right. It tells whether all equations of some body could be looked at:
// then nothing else is to follow, but from the tensions of a belt.
func (k *Key) hold(marks []Mark) (able bool) {
	own := map[int]*Mark{}
	for i := range marks {
		if m := &marks[i]; m.query.Of.Thing == problem.AnUnknown && m.query.Kind == problem.AskValue && (m.Verdict.OK() || m.Verdict.mistaken()) && m.value.Dim == m.query.Dim {
			own[m.query.Of.Index] = m
		}
	}
	if !slices.ContainsFunc(marks, func(m Mark) bool { return m.Verdict == Wrong }) {
		return false
	}
	p, sums := k.solution.Problem, k.sums()
	for body := range p.CutFree() {
		var all []held
		complete := true
		for i := range sums {
			s := &sums[i]
			if s.Body != body || !s.Moment && !slices.Contains([]float64{0, 1}, s.Along.X) {
				continue // along an axis
			}
			h, ok := k.put(s, own)
			complete = complete && ok
			all = append(all, h)
		}
		if !complete || len(all) == 0 {
			continue
		}
		if slices.ContainsFunc(all, func(h held) bool { return h.telling }) {
			k.tell(body, all, own)
		}
		able = len(p.Belts()) == 0
	}
	return able
}

// put puts a student's values into a sum; it fails where one is missing.
func (k *Key) put(s *tutor.Sum, own map[int]*Mark) (h held, ok bool) {
	n := len(s.Row) - 1
	h = held{Sum: s, off: s.Row[n]}
	limit, size := 0.0, math.Abs(h.off)
	for j, c := range s.Row[:n] {
		if c == 0 {
			continue
		}
		m := own[j]
		if m == nil {
			return h, false
		}
		h.off += c * m.value.Value
		limit += math.Abs(c) * m.value.limit(max(math.Abs(m.value.Value), math.Abs(m.want)))
		size = max(size, math.Abs(c*m.value.Value))
	}
	limit += slack * size
	h.holds = math.Abs(h.off) <= limit
	wrong := 0.0
	for j, c := range s.Row[:n] {
		if m := own[j]; c != 0 && !m.Verdict.OK() {
			wrong = max(wrong, math.Abs(c*(m.value.Value-m.want)))
		}
	}
	h.telling = h.holds && wrong > limit && limit <= coarse*size
	return h, true
}

// tell writes to the wrong answers on a body which sums hold with them. One that stands in
// no sum that is off follows from the others.
func (k *Key) tell(body int, all []held, own map[int]*Mark) {
	var hold, off []string
	var offs []held
	about := map[r3.Vec]bool{} // one sum of moments for each axis is enough
	for _, h := range all {
		switch {
		case h.holds && h.Moment && about[h.Along]:
		case h.holds && (!h.Moment || h.telling):
			about[h.Along] = h.Moment
			hold = append(hold, h.Words)
		case !h.holds && (!h.Moment || len(offs) == 0):
			offs = append(offs, h)
			of := units.Force
			if h.Moment {
				of = units.Moment
			}
			off = append(off, h.Words+" is off by "+k.solution.Problem.Units.For(of).Format(math.Abs(h.off), Figures))
		}
	}
	if len(off) == 0 {
		return
	}
	verb := " hold"
	if len(hold) == 1 {
		verb = " holds"
	}
	says := fmt.Sprintf("%s on %s%s with these values, %s", say.And(hold...), say.The(k.solution.Problem.Bodies[body].Name), verb, say.And(off...))
	var wrong, follows []*Mark
	for j := range k.solution.X {
		m := own[j]
		if m == nil || m.Verdict != Wrong || !slices.ContainsFunc(all, func(h held) bool { return h.Row[j] != 0 }) {
			continue
		}
		if slices.ContainsFunc(offs, func(h held) bool { return h.Row[j] != 0 }) {
			wrong = append(wrong, m)
		} else {
			follows = append(follows, m)
		}
	}
	for _, m := range wrong {
		m.Says = says
	}
	for _, m := range follows {
		if len(wrong) > 0 {
			m.Verdict, m.Says = Follows, "follows from your "+say.And(say.Each(wrong, func(m *Mark) string { return m.Name })...)
		}
	}
}
