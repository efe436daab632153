package statics

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"testing"

	"gonum.org/v1/gonum/floats"

	"trivet/fixtures/long"
	"trivet/mechanics/problem"
)

// measurable is the part of the loads that must be unbalanced before a test asks
// for the verdict no equilibrium: ten times what the solver lets pass (loadTol).
// A smaller part is no equilibrium to exact arithmetic and to nobody else.
const measurable = 10 * loadTol

// whole is a vector of small whole components, not all zero. Its length need not
// be rational: where only the verdict is asked, the column r does as well as u.
func (m *maker) whole(r *rig) (v [4]int64) {
	for v == [4]int64{} {
		for k := range r.dim() {
			v[k] = int64(m.rng.IntN(9) - 4)
		}
	}
	return v
}

// link joins a particle to a new point of the ground, or to another particle;
// its unknown in the exact system is its force over its length.
func (m *maker) link(r *rig, from, to int) *rigLine {
	l := rigLine{name: m.name("T"), kind: "link", path: []int{from, to}, legs: []*big.Rat{one()}}
	l.terms = map[string]*big.Rat{l.name: one()}
	r.lines = append(r.lines, l)
	return &r.lines[len(r.lines)-1]
}

func (m *maker) linkAlong(r *rig, from int, v [4]int64) {
	at, _ := r.off(from, v, big.NewRat(int64(1+m.rng.IntN(3)), 1))
	m.link(r, from, r.point(false, at))
}

func (m *maker) push(r *rig, at int, v [4]int64) {
	l := rigLine{name: m.name("F"), kind: "force", at: at}
	for k := range r.dim() {
		l.components = append(l.components, fmt.Sprint(v[k]))
	}
	r.lines = append(r.lines, l)
}

// degenerate makes a rig whose directions depend on each other in one of several
// ways, with loads that lie in their span or anywhere.
func (m *maker) degenerate() *rig {
	r := &rig{planar: m.rng.IntN(3) == 0}
	n := 1 + m.rng.IntN(3)
	for i := range n {
		at := [3]*big.Rat{new(big.Rat), new(big.Rat), new(big.Rat)}
		if i > 0 {
			at, _ = r.off(i-1, m.whole(r), one())
		}
		for j := range r.points { // no two at one place
			if slices.EqualFunc(at[:], r.points[j].at[:], func(a, b *big.Rat) bool { return a.Cmp(b) == 0 }) {
				at[0].Add(at[0], big.NewRat(17, 1))
			}
		}
		r.point(true, at)
	}
	for i := 1; i < n; i++ {
		if m.rng.IntN(4) > 0 {
			m.link(r, i, i-1)
		}
	}
	for i := range n {
		a, b := m.whole(r), m.whole(r)
		span := [][4]int64{a, b}
		switch m.rng.IntN(5) {
		case 0: // all in one plane, or in the plane of one line
			for range 2 + m.rng.IntN(2) {
				m.linkAlong(r, i, mix(a, b, int64(m.rng.IntN(5)-2), int64(1+m.rng.IntN(3))))
			}
		case 1: // on one straight line
			for _, k := range []int64{1, -1, 2}[:1+m.rng.IntN(3)] {
				m.linkAlong(r, i, mix(a, b, k, 0))
			}
			span = span[:1]
		case 2: // as many as it takes, anywhere
			for range r.dim() {
				m.linkAlong(r, i, m.whole(r))
			}
		case 3: // too many
			for range r.dim() + 1 + m.rng.IntN(2) {
				m.linkAlong(r, i, m.whole(r))
			}
		case 4: // two alike and one other
			m.linkAlong(r, i, a)
			m.linkAlong(r, i, a)
			m.linkAlong(r, i, b)
		}
		switch m.rng.IntN(4) {
		case 0: // no load here
		case 1:
			m.push(r, i, m.whole(r))
		default:
			sum := [4]int64{}
			for _, v := range span {
				sum = mix(sum, v, 1, int64(m.rng.IntN(41)-20))
			}
			m.push(r, i, sum)
		}
	}
	return r
}

func mix(a, b [4]int64, s, t int64) (v [4]int64) {
	for k := range 3 {
		v[k] = s*a[k] + t*b[k]
	}
	if v == [4]int64{} {
		v[0] = 1
	}
	return v
}

// nudge moves one point of the ground along one axis by a small part of 8 m.
func (m *maker) nudge(r *rig, by string) {
	var ground []int
	for i, p := range r.points {
		if !p.free {
			ground = append(ground, i)
		}
	}
	if len(ground) == 0 {
		return
	}
	d, _ := new(big.Rat).SetString(by)
	if m.rng.IntN(2) == 0 {
		d.Neg(d)
	}
	at := &r.points[pick(m.rng, ground...)].at
	k := m.rng.IntN(r.dim())
	at[k] = new(big.Rat).Add(at[k], d)
}

// TestVerdictsOfExactArithmetic gives rigs that are singular, nearly singular
// and neither, and asks for the verdict that exact elimination has.
func TestVerdictsOfExactArithmetic(t *testing.T) {
	m := newMaker(3)
	counts := map[string]int{}
	total := long.Of(300, 3000)
	for done := 0; done < total; {
		r := m.degenerate()
		kind := "exact"
		switch done % 3 {
		case 1:
			m.nudge(r, "0.000008")
			kind = "nudged by 1e-6"
		case 2:
			m.nudge(r, "0.00000008")
			kind = "nudged by 1e-8"
		}
		system := r.exact()
		want := system.solve()
		if len(system.cols) == 0 {
			continue
		}
		text := r.text()
		s := solveText(t, text)
		if !want.consistent && want.unbalanced < max(measurable, 10*blurOf(s)) {
			counts["too little unbalanced"]++
			continue
		}
		done++
		verdict := Determinate
		switch {
		case !want.consistent:
			verdict = NoEquilibrium
		case want.rank < len(system.cols):
			verdict = Indeterminate
		}
		counts[fmt.Sprint(kind, ": ", verdict)]++
		if verdict != s.Verdict || want.rank != s.Rank {
			t.Fatalf("%s: %v of rank %d, want %v of rank %d (condition %.3g, unbalanced %.3g)\n%s", kind, s.Verdict, s.Rank, verdict, want.rank, s.Cond, want.unbalanced, text)
		}
		checkMotions(t, s, want, text)
		if verdict == NoEquilibrium {
			continue
		}
		if s.Degree != len(system.cols)-want.rank {
			t.Fatalf("degree %d, want %d\n%s", s.Degree, len(system.cols)-want.rank, text)
		}
		checkFixed(t, r, s, want, text)
	}
	t.Log(counts)
	for _, kind := range []string{"exact", "nudged by 1e-6", "nudged by 1e-8"} {
		for _, v := range []Verdict{Determinate, Indeterminate, NoEquilibrium} {
			if counts[fmt.Sprint(kind, ": ", v)] < total/100 {
				t.Errorf("hardly any rigs %s: %v", kind, v)
			}
		}
	}
}

func checkMotions(t *testing.T, s *Solution, want exactAnswer, text string) {
	t.Helper()
	var got [][]float64
	for _, mo := range s.Motions {
		if mo.Excited != (s.Verdict == NoEquilibrium) && mo.Excited {
			t.Fatalf("a motion is excited, and the verdict is %v\n%s", s.Verdict, text)
		}
		v := make([]float64, len(s.System.Rows))
		n := len(v) / len(s.Problem.Bodies) // particles alone
		for _, mv := range mo.Moves {
			for k := range n {
				v[mv.Body*n+k] = problem.Component(mv.V, k)
			}
		}
		got = append(got, v)
	}
	// The motions found span what exact arithmetic leaves unresisted, and no more.
	for _, v := range got {
		rest := append([]float64{}, v...)
		for _, b := range want.left {
			along := dot(b, v)
			for i := range rest {
				rest[i] -= along * b[i]
			}
		}
		if floats.Norm(rest, 2) > 1e-6*floats.Norm(v, 2) {
			t.Fatalf("motion %v is resisted\n%v\n%s", v, s.Words(), text)
		}
	}
	if n := independent(got); n != len(want.left) || len(got) != n {
		t.Fatalf("%d motions of which %d independent, want %d\n%v\n%s", len(got), n, len(want.left), s.Words(), text)
	}
}

// independent counts independent vectors of about unit size.
func independent(rows [][]float64) int {
	var basis [][]float64
	for _, v := range rows {
		v = append([]float64{}, v...)
		for range 2 {
			for _, b := range basis {
				along := dot(b, v)
				for i := range v {
					v[i] -= along * b[i]
				}
			}
		}
		if l := floats.Norm(v, 2); l > 1e-6 {
			for i := range v {
				v[i] /= l
			}
			basis = append(basis, v)
		}
	}
	return len(basis)
}

func checkFixed(t *testing.T, r *rig, s *Solution, want exactAnswer, text string) {
	t.Helper()
	largest := s.load
	for _, x := range s.X {
		if x.Fixed {
			largest = max(largest, math.Abs(x.Value))
		}
	}
	for j, x := range s.X {
		if x.Fixed != want.fixed[x.Name] {
			t.Fatalf("%s: fixed is %v, want %v (condition %.3g)\n%v\n%s", x.Name, x.Fixed, want.fixed[x.Name], s.Cond, s.Words(), text)
		}
		if !x.Fixed {
			continue
		}
		value := want.value[x.Name] * s.Problem.Lines[s.Problem.Unknowns[j].Line].Length()
		// Rounding of the geometry comes in with the condition number.
		if math.Abs(x.Value-value) > (1e-12+1e-14*s.Cond)*largest {
			t.Fatalf("%s = %v, want %v (condition %.3g)\n%s", x.Name, x.Value, value, s.Cond, text)
		}
	}
}
