package statics

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

// bodyAgreement is how far a solved rig of bodies may be from the answer it was
// built from, relative to the largest force: what the contract asks for.
const bodyAgreement = 1e-9

// answer chooses what a rig's unknowns come to. Most rigs keep their senses.
func (m *bodyMaker) answer(parts []part) (x []float64, broken bool) {
	unruly := m.rng.IntN(10) == 0
	for _, p := range parts {
		for k := range p.cols {
			v := float64(5+m.rng.IntN(1000)) + m.rng.Float64()
			if p.push && k == 0 {
				if unruly && m.rng.IntN(2) == 0 {
					v, broken = -v, true
				}
			} else if m.rng.IntN(2) == 0 {
				v = -v
			}
			x = append(x, v)
		}
	}
	return x, broken
}

// total is what a part exerts on its first body: a force and a moment.
func (p *part) total(x []float64) (f, c r3.Vec) {
	for k := range p.cols {
		f = r3.Add(f, r3.Scale(x[k], p.cols[k][0].f))
		c = r3.Add(c, r3.Scale(x[k], p.cols[k][0].c))
	}
	return f, c
}

// checkAnswer holds every line, couple and joint against the answer.
func (r *bodyRig) checkAnswer(t *testing.T, s *Solution, parts []part, x []float64, text string) (worst float64) {
	t.Helper()
	p := s.Problem
	largest := s.load
	for _, v := range x {
		largest = max(largest, math.Abs(v))
	}
	hold := func(name string, off float64) {
		worst = max(worst, off/largest)
		if !(off <= bodyAgreement*largest) {
			t.Fatalf("%s is off by %g of %g (condition %.3g)\n%v\n%s", name, off, largest, s.Cond, s.Words(), text)
		}
	}
	for i := range parts {
		pt := &parts[i]
		v := x[:len(pt.cols)]
		x = x[len(pt.cols):]
		switch pt.table {
		case "lines":
			line, _ := p.Find(pt.name, problem.ALine)
			got, _ := s.Magnitude(line.Index)
			hold(pt.name, math.Abs(got-v[0]))
		case "couples":
			k := slices.IndexFunc(s.X, func(u Unknown) bool { return u.Name == pt.name })
			hold(pt.name, math.Abs(s.X[k].Value/r.scale-v[0]))
		default:
			j := &p.Joints[slices.IndexFunc(p.Joints, func(j problem.Joint) bool { return j.Name == pt.name })]
			f, c := pt.total(v)
			f, c = r.turned(f), r.turned(c)
			hold(pt.name, r3.Norm(r3.Sub(s.Sum(j.Forces), f)))
			hold("the moment of "+pt.name, r3.Norm(r3.Sub(r3.Scale(1/r.scale, s.Sum(j.Moments)), c)))
		}
	}
	return worst
}

// checkChecks: all that does not depend on senses, limits and friction holds.
func checkChecks(t *testing.T, s *Solution, text string) {
	t.Helper()
	for _, c := range s.Checks {
		if !c.OK && c.Kind != CheckSense && c.Kind != CheckSenseRange && c.Kind != CheckFriction && c.Kind != CheckSupport { // chance makes rigs that hardly stand
			t.Fatalf("%s\n%s", c.Says(s.Problem), text)
		}
	}
}

// TestBodiesBuiltBackwards solves random determinate problems of one to six
// bodies from their text. Each was built from its answer: first the geometry and
// the reactions, then loads that balance them.
func TestBodiesBuiltBackwards(t *testing.T) {
	total := 10000
	if testing.Short() {
		total = 400
	}
	m := newBodyMaker(1)
	worst := 0.0
	counts := map[string]int{}
	for range total {
		r := m.determinate()
		x, broken := m.answer(r.parts)
		r.balance(r.parts, x)
		text := r.text(r.parts)
		s := solveText(t, text)
		want := Determinate
		if broken {
			want = Inadmissible
		}
		if n := len(x); s.Verdict != want || s.Rank != n || len(s.X) != n || len(s.Motions) > 0 || s.Degree != 0 {
			t.Fatalf("%v of rank %d with %d motions, want %v of rank %d (condition %.3g)\n%v\n%s", s.Verdict, s.Rank, len(s.Motions), want, n, s.Cond, s.Words(), text)
		}
		worst = max(worst, r.checkAnswer(t, s, r.parts, x, text))
		checkChecks(t, s, text)
		counts[fmt.Sprint(want, ", ", len(r.bodies), " bodies, planar ", r.planar)]++
	}
	t.Logf("worst agreement %.1e; %v", worst, counts)
}
