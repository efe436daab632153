package tutor

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
	"trivet/units"
)

// rig is a sheet that equations can be written for.
type rig struct {
	name     string
	solution *statics.Solution
	begun    *Practice // with the hand solution found
}

// practice is a new one of the rig; the hand solution is found once.
func (r *rig) practice() *Practice {
	if r.begun == nil {
		r.begun = New(r.solution)
	}
	p := *r.begun
	p.values, p.done, p.guesses = map[int]float64{}, map[string]bool{}, map[int]int{}
	return &p
}

// rigs are the sheets that come with the program, and variants of those whose givens have
// ranges.
var rigs = sync.OnceValue(func() (all []*rig) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(f.Text))
		if err != nil {
			panic(err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			continue
		}
		sol := statics.Solve(p)
		if !sol.Unique() || len(sol.X) == 0 || sol.Verdict == statics.Resultant {
			continue
		}
		all = append(all, &rig{name: f.Name, solution: sol})
		src, err := variant.NewSource(s, sol)
		if err != nil {
			continue
		}
		drawn, _ := src.Draw(variant.Seeded(7), long.Of(1, 12))
		for k, v := range drawn {
			if v.Solution != nil && v.Solution.Unique() {
				all = append(all, &rig{name: fmt.Sprintf("%s variant %d", f.Name, k+1), solution: v.Solution})
			}
		}
	}
	rand.New(rand.NewPCG(1, 2)).Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
	return all[:min(mostRigs, len(all))]
})

// mostRigs is as many as the design's figures are given for.
const mostRigs = 500

// pick is a random sum on a random body or group, about a point of the sheet or any other.
func pick(t *Practice, rng *rand.Rand) (sum, bool) {
	p := t.Problem
	set := only(p, rng.IntN(len(p.Bodies)))
	if rng.IntN(3) == 0 {
		sets := t.groups(func(int) bool { return rng.IntN(2) == 0 })
		set = sets[rng.IntN(len(sets))]
	}
	all := t.elementary(set)
	s := all[rng.IntN(len(all))]
	if s.moment && rng.IntN(2) == 0 {
		s.at = r3.Vec{X: 4*rng.Float64() - 2, Y: 4*rng.Float64() - 2}
		if !p.Planar {
			s.at.Z = 4*rng.Float64() - 2
		}
	} else if !s.moment && rng.IntN(4) == 0 {
		a := 2 * math.Pi * rng.Float64()
		s.along = r3.Vec{X: math.Cos(a), Y: math.Sin(a)}
	}
	return s, largest(s.exact(t.forces, len(p.Unknowns))[:len(p.Unknowns)]) > 1e-6
}

// load is a term of a known force as people write it: its value, which as a product has
// the force itself, or its resultant, as a factor.
type load struct{ value, force float64 }

// print writes an equation to so many figures, on both sides of =, in the sheet's units. The
// known forces are one number where they are not given one by one.
func print(t *Practice, row []float64, moment bool, figures int, rng *rand.Rand, loads ...load) string {
	p := t.Problem
	n := len(p.Unknowns)
	d := units.Force
	if moment {
		d = units.Moment
	}
	var left, right []string
	put := func(v float64, what string) {
		if v == 0 {
			return
		}
		side := &left
		if rng.IntN(2) == 0 {
			side, v = &right, -v
		}
		*side = append(*side, signed(v, figures)+what)
	}
	top := largest(row[:n])
	for _, k := range rng.Perm(n + 1) {
		v := row[k]
		if k == n {
			unit := " " + p.Units.For(d).Symbol
			if t.isName(strings.TrimSpace(unit)) {
				unit = "" // 300 N beside a contact N can be read two ways
			}
			if len(loads) == 0 {
				loads = []load{{v, 0}}
			}
			for _, l := range loads {
				if arm := math.Abs(l.value/l.force) / p.Units.Length.Factor; moment && l.force > 0 && arm > 1e-3 {
					put(math.Copysign(l.force, l.value)/p.Units.Force.Factor, "*"+units.Figures(arm, figures))
				} else {
					put(l.value/p.Units.For(d).Factor, unit)
				}
			}
			continue
		}
		if math.Abs(v) < 1e-12*top {
			continue
		}
		if moment && p.Unknowns[k].Dim == units.Force {
			put(v/p.Units.Length.Factor, []string{" ", "*"}[rng.IntN(2)]+p.Unknowns[k].Name)
		} else {
			put(v, "*"+p.Unknowns[k].Name)
		}
	}
	side := func(all []string) string {
		if len(all) == 0 {
			return "0"
		}
		return strings.TrimPrefix(strings.Join(all, " "), "+")
	}
	return side(left) + " = " + side(right)
}

func signed(v float64, figures int) string {
	s := units.Figures(math.Abs(v), figures)
	if v < 0 {
		return "- " + s
	}
	return "+ " + s
}

// Any equation that follows from equilibrium is right: of any body or group, about any
// point, multiplied, combined, rearranged, rounded to three to six figures.
func TestRightEquationsAreNotRefused(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	all := rigs()
	total, refused := long.Of(400, 20000), 0
	for k := range total {
		r := all[k%len(all)]
		p := r.practice()
		s, ok := pick(p, rng)
		if !ok {
			continue
		}
		row := s.exact(p.forces, len(p.Problem.Unknowns))
		if rng.IntN(3) == 0 {
			other, ok := pick(p, rng)
			if ok && other.moment == s.moment {
				b := other.exact(p.forces, len(p.Problem.Unknowns))
				f := 4*rng.Float64() - 2
				row = slices.Clone(row)
				for i := range row {
					row[i] += f * b[i]
				}
			}
		}
		if rng.IntN(2) == 0 {
			f := math.Exp(4*rng.Float64() - 2)
			row = slices.Clone(row)
			for i := range row {
				row[i] *= f
			}
		}
		text := print(p, row, s.moment, 3+rng.IntN(4), rng)
		if j := p.Enter(text); j.Verdict != Right && j.Verdict != Dependent {
			refused++
			if refused <= 10 {
				t.Errorf("%s: %s\n  is %s\n  %s: %s", r.name, text, s.is(p.Problem), j.Verdict, j.Says)
			}
		}
	}
	if refused > 0 {
		t.Errorf("%d of %d are refused", refused, total)
	}
}

// seed makes one mistake in a sum, of a kind, in a force chosen at random: the row that
// comes of it and the known forces, one by one; false where the sum has no place for it.
func seed(t *Practice, s *sum, kind MistakeKind, rng *rand.Rand) ([]float64, []load, bool) {
	p := t.Problem
	n := len(p.Unknowns)
	row := s.exact(t.forces, n)
	loads := func(of *force, wrong load) (all []load) {
		for i := range t.forces {
			f := &t.forces[i]
			a := load{s.part(f), s.size(f)}
			if f == of {
				a = wrong
			}
			if f.unknown < 0 && a.value != 0 {
				all = append(all, a)
			}
		}
		return all
	}
	var on, off []*force
	for _, k := range rng.Perm(len(t.forces)) {
		if f := &t.forces[k]; f.on(s.bodies) {
			on = append(on, f)
		} else {
			off = append(off, f)
		}
	}
	at := func(f *force) int {
		if f.unknown < 0 {
			return n
		}
		return f.unknown
	}
	put := func(f *force, wrong load) ([]float64, []load, bool) {
		a, v := s.part(f), wrong.value
		row[at(f)] += v - a
		return row, loads(f, wrong), math.Abs(v-a) > 0.05*math.Max(math.Abs(a), math.Abs(v))
	}
	change := func(f *force, v float64) ([]float64, []load, bool) { return put(f, load{v, s.size(f)}) }
	force := func(f *force) (v r3.Vec, place r3.Vec) {
		for _, x := range f.pieces {
			if s.bodies[x.body] {
				v, place = r3.Add(v, x.force), x.at
			}
		}
		return v, place
	}
	for _, f := range on {
		a := s.part(f)
		v, place := force(f)
		arm := r3.Sub(place, s.at)
		one := len(f.pieces) == 1 || !slices.ContainsFunc(f.pieces[1:], func(x piece) bool { return s.bodies[x.body] })
		switch kind {
		case "sign":
			if a != 0 && !(f.of.Thing == problem.AJoint && f.elsewhere(s.bodies)) {
				return change(f, -a)
			}
		case "missing-force":
			if a != 0 {
				return change(f, 0)
			}
		case "whole-force":
			if !s.moment && a != 0 && one && !f.isCouple() && math.Abs(a) < 0.9*r3.Norm(v) {
				return change(f, math.Copysign(r3.Norm(v), a))
			}
		case "sine-cosine":
			if !s.moment && p.Planar && t.byAngle(f) && one && a != 0 && s.along.Z == 0 && (s.along.X == 0 || s.along.Y == 0) {
				return change(f, math.Copysign(r3.Norm(r3.Cross(v, s.along)), a))
			}
		case "other-axis":
			if !s.moment && !t.byAngle(f) && one && a != 0 && !f.isCouple() && problem.Axis(s.along) != "" {
				other := r3.Dot(v, r3.Vec{X: s.along.Y, Y: s.along.Z + s.along.X*b2f(p.Planar), Z: s.along.X * b2f(!p.Planar)})
				if math.Abs(other) > 0.01*r3.Norm(v) && math.Abs(other) < 0.99*r3.Norm(v) {
					return change(f, other)
				}
			}
		case "arm-distance":
			if s.moment && a != 0 && one && !f.isCouple() && r3.Norm(arm) > 0 {
				return change(f, math.Copysign(r3.Norm(arm)*r3.Norm(v), a))
			}
		case "arm-point":
			q := p.Points[rng.IntN(len(p.Points))]
			if s.moment && one && q.OK && !f.isCouple() && a != 0 {
				if m := r3.Dot(r3.Cross(r3.Sub(place, q.At), v), s.along); m != 0 && math.Abs(math.Abs(m)-math.Abs(a)) > 0.01*math.Abs(a) {
					return change(f, m)
				}
			}
		case "factor-1000":
			if f.unknown < 0 && a != 0 {
				return put(f, load{1000 * a, 1000 * s.size(f)})
			}
		case "gravity":
			if f.unknown < 0 && a != 0 && (f.of.Thing == problem.ALine && p.Lines[f.of.Index].Mass > 0 || f.of.Thing == problem.ABody && p.Bodies[f.of.Index].Mass > 0) {
				return put(f, load{a / p.G, s.size(f) / p.G})
			}
		case "couple-as-force":
			if f.unknown < 0 && f.isCouple() && !s.moment {
				c := r3.Norm(f.pieces[0].turn) * p.Units.Force.Factor / p.Units.For(units.Moment).Factor
				return put(f, load{value: c})
			}
		case "other-body":
			flipped := 0
			for k := range t.forces {
				if o := &t.forces[k]; o.of == f.of && f.of.Thing == problem.AJoint && o.unknown >= 0 && o.on(s.bodies) && o.elsewhere(s.bodies) {
					if a := s.part(o); a != 0 {
						row[o.unknown] -= 2 * a
						flipped++
					}
				}
			}
			if flipped > 1 {
				return row, loads(nil, load{}), true
			}
			row = s.exact(t.forces, n)
		case "friction-limit":
			for _, h := range t.ofJoints(s, row) {
				if h.kind == kind && rng.IntN(2) == 0 {
					return h.row, loads(nil, load{}), true
				}
			}
		case "intensity":
			if f.of.Thing == problem.ALoad && a != 0 {
				d := p.Loads[f.of.Index]
				if q := d.IntensityAt(d.Length / 2); q != 0 {
					share := q * p.Units.Length.Factor / d.Total
					return put(f, load{a * share, s.size(f) * math.Abs(share)})
				}
			}
		case "load-length":
			if f.of.Thing == problem.ALoad && a != 0 {
				return put(f, load{a / 2, s.size(f) / 2})
			}
		case "load-place":
			if f.of.Thing == problem.ALoad && a != 0 && s.moment {
				if m := r3.Dot(r3.Cross(r3.Sub(p.Points[p.Loads[f.of.Index].From].At, s.at), v), s.along); math.Abs(m) > 1e-3*math.Abs(a) { // else it is missing
					return change(f, m)
				}
			}
		}
	}
	if kind == "extra-force" && len(off) > 0 && off[0].unknown >= 0 {
		scale := largest(row[:n])
		row[off[0].unknown] += scale * (0.2 + rng.Float64())
		return row, loads(nil, load{}), true
	}
	return nil, nil, false
}

func b2f(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// Of wrong equations, each a right one with one seeded mistake, none is called right, the
// mistake is named in nine of ten, and another one in one of a hundred at most.
func TestMistakesAreNamed(t *testing.T) {
	const least, most = 0.90, 0.01
	rng := rand.New(rand.NewPCG(8, 13))
	all := rigs()
	kinds := []MistakeKind{"sign", "missing-force", "extra-force", "sine-cosine", "whole-force", "other-axis", "arm-point", "arm-distance", "factor-1000", "gravity", "intensity", "load-length", "load-place", "couple-as-force", "other-body", "friction-limit"}
	total := long.Of(2000, 20000)
	type count struct{ seeded, named, wrong, right int }
	counts := map[MistakeKind]*count{}
	shown := map[MistakeKind]int{}
	for n, tries := 0, 0; n < total && tries < 60*total; tries++ {
		r := all[rng.IntN(len(all))]
		p := r.practice()
		set := only(p.Problem, rng.IntN(len(p.Problem.Bodies)))
		sums := p.elementary(set)
		s := sums[rng.IntN(len(sums))]
		kind := kinds[n%len(kinds)]
		exact := s.exact(p.forces, len(p.Problem.Unknowns))
		if largest(exact[:len(exact)-1]) < 1e-6 {
			continue
		}
		row, loads, ok := seed(p, &s, kind, rng)
		if !ok || largest(row[:len(row)-1]) < 1e-6 {
			continue
		}
		n++
		if rng.IntN(2) == 0 {
			loads = nil
		}
		text := print(p, row, s.moment, 4+rng.IntN(2), rng, loads...)
		if rng.IntN(2) == 0 {
			var names []string
			for i, in := range s.bodies {
				if in {
					names = append(names, p.Problem.Bodies[i].Name)
				}
			}
			words := strings.Replace(s.words, " about", "", 1)
			if !strings.Contains(words, "perpendicular") {
				text = words + " (" + strings.Join(names, ", ") + "): " + text
			}
		}
		j := p.Enter(text)
		c := counts[kind]
		if c == nil {
			c = &count{}
			counts[kind] = c
		}
		c.seeded++
		bad := ""
		switch {
		case j.Verdict == Unreadable:
			t.Errorf("%s: %s: %s", r.name, text, j.Says)
		case j.Verdict == Right || j.Verdict == Dependent:
			// The force that is changed may be zero, or the change within the digits.
			if !holds(p, row) {
				c.right++
				bad = "called right"
			} else {
				c.seeded--
			}
		case j.Mistake == nil || j.Mistake.Kind == "figures":
			bad = "not named: " + j.Says
		case j.Mistake.Kind == kind:
			c.named++
		default:
			c.wrong++
			bad = "named " + string(j.Mistake.Kind)
		}
		if bad != "" && shown[kind] < 3 {
			shown[kind]++
			t.Logf("%s: %s in %s (%s)\n  %s\n  %s", r.name, kind, s.is(p.Problem), text, print(p, exact, s.moment, 5, rng), bad)
		}
	}
	var sum count
	for _, k := range kinds {
		if c := counts[k]; c != nil {
			t.Logf("%-14s seeded %5d, named %5d, named another %4d, called right %d", k, c.seeded, c.named, c.wrong, c.right)
			sum.seeded, sum.named, sum.wrong, sum.right = sum.seeded+c.seeded, sum.named+c.named, sum.wrong+c.wrong, sum.right+c.right
		}
	}
	t.Logf("of %d: named %d, named another %d, called right %d", sum.seeded, sum.named, sum.wrong, sum.right)
	if float64(sum.named) < least*float64(sum.seeded) || float64(sum.wrong) > most*float64(sum.seeded) || sum.right > 0 {
		t.Errorf("of %d: named %d, named another %d, called right %d", sum.seeded, sum.named, sum.wrong, sum.right)
	}
}

// holds tells that an equation is true at the solution all the same.
func holds(t *Practice, row []float64) bool {
	n := len(row) - 1
	left, biggest := row[n], math.Abs(row[n])
	for k := range n {
		left += row[k] * t.solution.X[k].Value
		biggest = math.Max(biggest, math.Abs(row[k]*t.solution.X[k].Value))
	}
	return math.Abs(left) < 2e-3*biggest || biggest < 1e-6*t.load()
}

// Of wrong values that come of nothing, one in a hundred at most is said to come of a mistake.
func TestValuesByChance(t *testing.T) {
	const most = 0.01
	rng := rand.New(rand.NewPCG(3, 9))
	total, named := 0, 0
	for _, r := range rigs() {
		for _, q := range r.practice().asked() {
			for range long.Of(5, 30) {
				p := r.practice()
				v, err := p.solution.Evaluate(q)
				if err != nil {
					continue
				}
				unit := p.Problem.Units.For(q.Dim)
				v *= math.Exp(4*rng.Float64() - 2)
				total++
				if j := p.Enter(fmt.Sprintf("%s = %.4g %s", q.Name, v/unit.Factor, unit.Symbol)); j.Mistake != nil && j.Mistake.Kind != "figures" {
					named++
				}
			}
		}
	}
	if float64(named) > most*float64(total) || total == 0 {
		t.Errorf("of %d: named %d", total, named)
	}
}
