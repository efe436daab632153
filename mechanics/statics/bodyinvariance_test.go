package statics

import (
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures/long"
	"trivet/units"
)

// TestBodiesSeenOtherwise makes the same rigs of bodies in several views: turned,
// moved far away, of other sizes, in feet and pounds, in another order, with other
// names. The answer that they were built from stays.
func TestBodiesSeenOtherwise(t *testing.T) {
	total := long.Of(40, 300)
	foot, _ := units.Find("ft")
	rng := rand.New(rand.NewPCG(1, 7))
	for _, c := range []struct {
		name string
		see  func(r *view, planar bool)
	}{
		{"turned", func(v *view, planar bool) {
			axis := r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()}
			if planar {
				axis = r3.Vec{Z: 1}
			}
			v.turn = r3.NewRotation(2*math.Pi*rng.Float64(), axis).Rotate
		}},
		{"moved", func(v *view, planar bool) { v.shift = r3.Vec{X: 137.5, Y: -1204.25, Z: 88} }},
		{"a thousandth as large", func(v *view, planar bool) { v.scale = 1e-3 }},
		{"a million times as large", func(v *view, planar bool) { v.scale = 1e6 }},
		{"in feet and pounds", func(v *view, planar bool) {
			v.foot, v.head = foot.Factor, "[units]\nlength = \"ft\"\nforce = \"lbf\"\n"
		}},
		{"in another order", func(v *view, planar bool) { v.shuffle = rng }},
	} {
		t.Run(c.name, func(t *testing.T) {
			for seed := range uint64(total) {
				m := newBodyMaker(1000 + seed)
				planar := m.planarNext()
				c.see(&m.view, planar)
				r := m.determinate()
				x, broken := m.answer(r.parts)
				r.balance(r.parts, x)
				text := r.text(r.parts)
				s := solveText(t, text)
				if s.Rank != len(x) || len(s.Motions) > 0 || (s.Verdict == Inadmissible) != broken || s.Verdict > Inadmissible {
					t.Fatalf("%v of rank %d (condition %.3g)\n%v\n%s", s.Verdict, s.Rank, s.Cond, s.Words(), text)
				}
				r.checkAnswer(t, s, r.parts, x, text)
				checkChecks(t, s, text)
			}
		})
	}
}

// planarNext tells whether the next rig will be planar, without making it.
func (m *bodyMaker) planarNext() bool {
	m.planar = m.rng.IntN(2) == 0
	m.chosen = true
	return m.planar
}

// TestBodiesRenamed gives everything on the sheet another name.
func TestBodiesRenamed(t *testing.T) {
	name := regexp.MustCompile(`\b[A-Za-z][0-9]+\b`)
	rename := func(s string) string { return "new" + s + "_" }
	m := newBodyMaker(31)
	for range 200 {
		r := m.determinate()
		x, _ := m.answer(r.parts)
		r.balance(r.parts, x)
		text := name.ReplaceAllStringFunc(r.text(r.parts), rename)
		for i := range r.parts {
			r.parts[i].name = rename(r.parts[i].name)
		}
		s := solveText(t, text)
		if s.Rank != len(x) {
			t.Fatalf("%v\n%s", s.Words(), text)
		}
		r.checkAnswer(t, s, r.parts, x, text)
	}
}

// TestMotionsSeenOtherwise: what a body is free to do turns and moves with it.
func TestMotionsSeenOtherwise(t *testing.T) {
	for seed := range uint64(200) {
		var motions [2]int
		var rank [2]int
		var excited [2]bool
		for k, see := range []view{plain(), {scale: 20, foot: 1, shift: r3.Vec{X: 30, Y: -20}}} {
			m := newBodyMaker(5000 + seed)
			m.view = see
			r := m.determinate()
			r.parts = r.parts[1:]
			x, _ := m.answer(r.parts)
			if seed%2 == 0 {
				r.balance(r.parts, x)
			}
			if len(r.parts) == 0 || r.dangling() {
				continue
			}
			s := solveText(t, r.text(r.parts))
			motions[k], rank[k] = len(s.Motions), s.Rank
			excited[k] = s.Verdict == NoEquilibrium
		}
		if motions[0] != motions[1] || rank[0] != rank[1] || excited[0] != excited[1] {
			t.Fatalf("seed %d: %v motions, ranks %v, excited %v", seed, motions, rank, excited)
		}
	}
}

// dangling tells that a magnitude follows a line that is gone.
func (r *bodyRig) dangling() bool {
	text := fmt.Sprint(r.rows["lines"])
	for _, name := range regexp.MustCompile(`\*([TRF][0-9]+) \+ 25 N`).FindAllStringSubmatch(text, -1) {
		found := false
		for _, p := range r.parts {
			found = found || p.name == name[1]
		}
		if !found {
			return true
		}
	}
	return false
}
