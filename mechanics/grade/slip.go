package grade

import (
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/tutor"
)

// slip is a mistake in one equation, where all others are right: the unknowns that come of it.
// The likelier one has the lower rank.
type slip struct {
	*tutor.Slip
	rank int
	x    []float64
}

// ranks are how likely a mistake in one equation is beside the others that come to the same
// numbers: a force left out of a sum of moments is one whose arm is measured from its own point.
var ranks = map[tutor.MistakeKind]int{
	"missing-force": 0, "sign": 0, "friction-limit": 0,
	"sine-cosine": 1, "whole-force": 1, "intensity": 1, "load-length": 1, "load-place": 1, "gravity": 1, "factor-1000": 1, "couple-as-force": 1, "other-body": 1,
	"arm-distance": 2, "other-axis": 2,
	"arm-point": 3, "extra-force": 3,
}

// lastRank is beyond those of the table, with the one more of what is seldom forgotten.
const lastRank = 5

const (
	// maxSlipChance is the greatest chance that made-up numbers would fit one of the slips, and
	// maxSingleChance where only one number speaks for it.
	maxSlipChance   = 0.01
	maxSingleChance = 0.005
)

// allSlips solves the sheet with each mistake in each equation.
func (k *Key) allSlips() (all []slip) {
	effects := k.effects()
	if effects == nil {
		return nil
	}
	found := tutor.Slips(k.solution, k.sums())
	for i := range found {
		s := &found[i]
		for n, e := range k.directions(s.Sum, effects) {
			rank := ranks[s.Kind]
			if n > 0 {
				rank += lastRank
			}
			if s.Kind == "missing-force" && s.Change[len(s.Change)-1] == 0 {
				rank++ // what is to be found is seldom forgotten
			}
			if x := solved(k.solution, s.Change, e); x != nil {
				all = append(all, slip{s, rank, x})
			}
		}
	}
	return append(all, k.frictionLimits(effects)...)
}

// solved gives the unknowns where an equation is changed by d, and e is what one unit on the
// right of that equation does to them:
//
//	x = x* - e (d·(x*, 1)) / (1 + d·e)
func solved(s *statics.Solution, d, e []float64) []float64 {
	n := len(s.X)
	off, by := d[n], 1.0
	for j := range n {
		off += d[j] * s.X[j].Value
		by += d[j] * e[j]
	}
	if math.Abs(by) < weak {
		return nil
	}
	x := make([]float64, n)
	for j := range n {
		x[j] = s.X[j].Value - e[j]*off/by
	}
	return x
}

// directions are what one unit on the right of a sum does to the unknowns where the other
// equations hold: the sums of forces perpendicular to it, or beside one of moments the sums of
// forces, or in the plane that along two points and the moments about the other of them.
func (k *Key) directions(s *tutor.Sum, effects [][]float64) (all [][]float64) {
	sys := &k.solution.System
	add := func(to []float64, axis string, by float64) {
		for row := sys.Start[s.Body]; row < sys.Start[s.Body+1]; row++ {
			if sys.Rows[row].Axis != axis {
				continue
			}
			for j, e := range effects[row] {
				to[j] += by * e / sys.Rows[row].Scale
			}
		}
	}
	along := func(prefix string, v r3.Vec) []float64 {
		e := make([]float64, len(k.solution.X))
		add(e, prefix+"x", v.X)
		add(e, prefix+"y", v.Y)
		add(e, prefix+"z", v.Z)
		return e
	}
	if !s.Moment {
		return [][]float64{along("F", s.Along)}
	}
	all = append(all, along("M", s.Along))
	p := k.solution.Problem
	if !p.Planar {
		return all
	}
	body := &p.Bodies[s.Body]
	for _, i := range body.Points {
		d := r3.Sub(p.Points[i].At, s.At)
		length := r3.Norm(d)
		if !p.Points[i].OK || length == 0 {
			continue
		}
		n := r3.Vec{X: -d.Y / length / length, Y: d.X / length / length} // (q - p) × n = 1
		e := along("F", n)
		add(e, "Mz", r3.Cross(r3.Sub(p.Points[i].At, body.About), n).Z)
		all = append(all, e)
	}
	return all
}

// frictionLimits put μN for a friction that does not impend, in place of one equation.
func (k *Key) frictionLimits(effects [][]float64) (all []slip) {
	p := k.solution.Problem
	for i := range p.Joints {
		j := &p.Joints[i]
		if !j.HasFriction || j.Impending || !p.Planar {
			continue
		}
		var own []int // the normal force, then the friction
		for _, h := range j.Held {
			own = append(own, slices.IndexFunc(p.Unknowns, func(u problem.Unknown) bool { return u.Joint == i && u.Name == j.Name+h.Suffix }))
		}
		if len(own) < 2 || own[0] < 0 || own[1] < 0 {
			continue
		}
		for row, e := range effects {
			for _, sign := range []float64{1, -1} {
				by := e[own[1]] - sign*j.Friction*e[own[0]]
				if math.Abs(by) < weak {
					continue
				}
				x := make([]float64, len(k.solution.X))
				t := (sign*j.Friction*k.solution.X[own[0]].Value - k.solution.X[own[1]].Value) / by
				for c := range x {
					x[c] = k.solution.X[c].Value + t*e[c]
				}
				sum := &tutor.Sum{Words: k.solution.System.Rows[row].Axis}
				all = append(all, slip{&tutor.Slip{Mistake: tutor.Mistake{Kind: "friction-limit", Term: j.Name}, Sum: sum}, ranks["friction-limit"], x})
			}
		}
	}
	return all
}

// value is a result where the unknowns are x.
func (k *Key) value(x []float64, q problem.Query) float64 {
	if q.Of.Thing == problem.AnUnknown && q.Kind == problem.AskValue {
		return x[q.Of.Index]
	}
	s := *k.solution
	s.X = slices.Clone(s.X)
	for i := range x {
		s.X[i].Value = x[i]
	}
	return valueOf(&s, q)
}

// likeliestSlip finds the mistake in one equation that explains all of a student's wrong
// answers, and leaves those right that are, of those below a rank. Among those that come to the same numbers the
// likeliest is said, or two of them.
func (k *Key) likeliestSlip(marks []Mark, below int) (hits []*Mark, words string) {
	var right, naughts []*Mark
	mistaken := 0
	for i := range marks {
		if marks[i].Verdict.mistaken() {
			mistaken++
		}
		switch m := &marks[i]; {
		case m.evidence():
			hits = append(hits, m)
		case m.Verdict == Right:
			right = append(right, m)
		case m.naught():
			naughts = append(naughts, m)
		}
	}
	distinct := k.distinct(hits)
	if len(distinct) == 0 || len(distinct) == 1 && hits[0].Verdict != Wrong {
		return nil, ""
	}
	var found []slip
	tried := map[[2]float64]bool{} // by the first two values, to three figures
	for _, s := range k.slips() {
		if s.rank >= below {
			continue
		}
		other := func(m *Mark) bool { return !k.same(m, k.value(s.x, m.query)) }
		if slices.ContainsFunc(right, other) {
			continue
		}
		var values [2]float64
		near := true // where a made-up number may lie: in the decade on either side of the right one
		for i, m := range distinct[:min(len(distinct), 2)] {
			v := k.value(s.x, m.query)
			near = near && (k.zero(m.query, m.want) || math.Abs(math.Log(math.Abs(v/m.want))) <= spreadOf) && math.Abs(v-m.want) > fine*math.Abs(m.want)
			values[i] = math.Copysign(math.Round(math.Log(math.Abs(v))/fine), v)
		}
		if near {
			tried[values] = true
		}
		if slices.ContainsFunc(hits, other) || slices.ContainsFunc(naughts, other) {
			continue
		}
		found = append(found, s)
	}
	if len(found) == 0 {
		return nil, ""
	}
	chance := float64(len(tried))
	for _, m := range distinct {
		chance *= k.window(m, k.value(found[0].x, m.query))
	}
	if chance > maxSlipChance || len(distinct) == 1 && chance > maxSingleChance {
		return nil, ""
	}
	best := slices.MinFunc(found, func(a, b slip) int { return a.rank - b.rank }).rank
	var says []string
	var seen []tutor.Mistake
	for _, s := range found {
		if s.rank == best && !slices.Contains(seen, s.Mistake) {
			seen = append(seen, s.Mistake)
			says = append(says, s.Says())
		}
	}
	swapped := !slices.ContainsFunc(hits, func(m *Mark) bool { return !m.swapped })
	if len(says) > 2 || swapped && (len(says) == 2 || len(hits) < mistaken) {
		return nil, "" // nobody knows which, or answers in each other's place are likelier
	}
	return hits, strings.Join(says, ", or ")
}

// fine is the share by which values differ that three figures tell apart.
const fine = 0.005
