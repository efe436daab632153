package tutor

import (
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
)

// sum is ΣF along a direction, or ΣM about an axis through a place, on bodies cut free
// together:
//
//	ΣF·e = 0,  Σ ((r - q) × F + C)·e = 0
//
// In the plane e of a moment is +z, so that counter-clockwise is positive.
type sum struct {
	bodies  []bool
	moment  bool
	along   r3.Vec // e
	at      r3.Vec // q
	words   string // what it is called: "ΣFx", "ΣM about A"
	named   bool   // along an axis or a line, about a named point
	rounded bool   // along a vector that was typed
}

// alike tells whether two sums of forces are on the same bodies and along the same
// direction, as far as the digits of a typed one go.
func (s *sum) alike(o *sum) bool {
	return !s.moment && !o.moment && slices.Equal(s.bodies, o.bodies) &&
		r3.Norm(r3.Cross(r3.Unit(s.along), r3.Unit(o.along))) < directionTol
}

// directionTol is what components of three significant figures leave of a direction.
const directionTol = 0.005

// of is what a piece is in the sum.
func (s *sum) of(p piece) float64 {
	if p.body < 0 || !s.bodies[p.body] {
		return 0
	}
	if !s.moment {
		return r3.Dot(p.force, s.along)
	}
	return r3.Dot(r3.Add(r3.Cross(r3.Sub(p.at, s.at), p.force), p.turn), s.along)
}

// on are the pieces of a force on the bodies of the sum.
func (s *sum) on(f *force) iter.Seq[piece] {
	return func(yield func(piece) bool) {
		for _, p := range f.pieces {
			if p.body >= 0 && s.bodies[p.body] && !yield(p) {
				return
			}
		}
	}
}

// size is the magnitude of all that a force exerts on the bodies of the sum.
func (s *sum) size(f *force) (v float64) {
	for p := range s.on(f) {
		v += r3.Norm(p.force)
	}
	return v
}

func (s *sum) part(f *force) (v float64) {
	for _, p := range f.pieces {
		v += s.of(p)
	}
	if math.Abs(v) < tiny*s.reach(f) {
		return 0
	}
	return v
}

// reach is the largest that a force could be in a sum, beside which rounding is judged.
func (s *sum) reach(f *force) (v float64) {
	for _, p := range f.pieces {
		arm := 1.0
		if s.moment {
			arm = math.Max(r3.Norm(r3.Sub(p.at, s.at)), 1e-6)
		}
		v += arm*r3.Norm(p.force) + r3.Norm(p.turn)
	}
	return v
}

// exact is the equation that the sum is: a coefficient for each unknown, and last the sum
// of the known forces, so that row·(x, 1) = 0.
func (s *sum) exact(forces []force, unknowns int) []float64 {
	row := make([]float64, unknowns+1)
	for i := range forces {
		f := &forces[i]
		k := f.unknown
		if k < 0 {
			k = unknowns
		}
		row[k] += s.part(f)
	}
	return row
}

// group names the bodies of a sum: "the beam", "the beam and the post", "T".
func (s *sum) group(p *problem.Problem) string {
	var names []string
	for i := range p.Bodies {
		if s.bodies[i] {
			names = append(names, say.The(p.Bodies[i].Name))
		}
	}
	return say.AndMore(names, 4)
}

// is says which sum it is, on what.
func (s *sum) is(p *problem.Problem) string { return s.words + " on " + s.group(p) }

// only is the set of one body.
func only(p *problem.Problem, body int) []bool {
	set := make([]bool, len(p.Bodies))
	set[body] = true
	return set
}

func overlap(one, two []bool) bool {
	for i := range one {
		if one[i] && two[i] {
			return true
		}
	}
	return false
}

// keyOf is a set as the key of a map.
func keyOf(set []bool) string {
	key := make([]byte, len(set))
	for i, in := range set {
		if in {
			key[i] = 1
		}
	}
	return string(key)
}

// everything is the set of all bodies.
func (t *Practice) everything() []bool {
	set := make([]bool, len(t.Problem.Bodies))
	for i := range set {
		set[i] = true
	}
	return set
}

func size(set []bool) (n int) {
	for _, in := range set {
		if in {
			n++
		}
	}
	return n
}

var axes = [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}

// dims is how many axes forces are summed along.
func (t *Practice) dims() int {
	if t.Problem.Planar {
		return 2
	}
	return 3
}

const axisNames = "xyz"

// rigid tells whether moments can be taken of a set of bodies: of more than one particle,
// or of a body that is none.
func rigid(p *problem.Problem, set []bool) bool {
	for i, in := range set {
		if in && !p.Bodies[i].Particle {
			return true
		}
	}
	return size(set) > 1
}

// elementary are the sums that a student would write of some bodies: of forces along the
// axes and the lines of action, of moments about the points, and in space the axes through
// them.
func (t *Practice) elementary(set []bool) (all []sum) {
	p := t.Problem
	for k := range t.dims() {
		all = append(all, sum{bodies: set, along: axes[k], words: "ΣF" + axisNames[k:k+1]})
	}
	if rigid(p, set) {
		for i := range p.Points {
			q := &p.Points[i]
			if !q.OK {
				continue
			}
			if p.Planar {
				all = append(all, sum{bodies: set, moment: true, along: axes[2], at: q.At, words: "ΣM about " + q.Name})
				continue
			}
			for k := range 3 {
				all = append(all, sum{bodies: set, moment: true, along: axes[k], at: q.At, words: "ΣM" + axisNames[k:k+1] + " about " + q.Name})
			}
		}
	}
	for i := range p.Lines {
		l := &p.Lines[i]
		u, ok := l.Direction()
		if !ok || !l.OK || problem.Axis(u) != "" {
			continue
		}
		all = append(all, sum{bodies: set, along: u, words: "ΣF along " + l.Name})
		if p.Planar {
			all = append(all, sum{bodies: set, along: r3.Vec{X: -u.Y, Y: u.X}, words: "ΣF perpendicular to " + l.Name})
		}
	}
	for i := range all {
		all[i].named = true
	}
	return all
}

// candidate is a sum that an entry may be, with its equation.
type candidate struct {
	sum
	row []float64
}

// candidates are the elementary sums of some bodies. They are kept, since an entry is held
// against them more than once: those of one body for all entries, of more for this one.
func (t *Practice) candidates(set []bool) []candidate {
	kept, key := t.joined, keyOf(set)
	if size(set) == 1 {
		kept = t.single
	}
	if all, ok := kept[key]; ok {
		return all
	}
	var all []candidate
	forces := t.acting(set)
	for _, s := range t.elementary(set) {
		all = append(all, candidate{s, s.exact(forces, len(t.Problem.Unknowns))})
	}
	kept[key] = all
	return all
}

// groups are the sets of bodies that an equation with these unknowns could be of: each
// body, what hangs together once the lines and joints of these unknowns are cut, the whole.
func (t *Practice) groups(used func(unknown int) bool) (sets [][]bool) {
	p := t.Problem
	seen := map[string]bool{}
	add := func(set []bool) {
		if key := keyOf(set); size(set) > 0 && !seen[key] {
			seen[key] = true
			sets = append(sets, set)
		}
	}
	if len(p.Bodies) <= maxSingles {
		for i := range p.CutFree() {
			add(only(p, i))
		}
	} else {
		for i := range p.CutFree() {
			one := only(p, i)
			for k := range t.forces {
				if f := &t.forces[k]; f.unknown >= 0 && used(f.unknown) && f.on(one) {
					add(one)
					break
				}
			}
		}
	}
	label := make([]int, len(p.Bodies))
	for i := range label {
		label[i] = i
	}
	root := func(i int) int {
		for label[i] != i {
			i = label[i]
		}
		return i
	}
	for k := range t.forces {
		f := &t.forces[k]
		if f.unknown < 0 || used(f.unknown) {
			continue
		}
		for _, x := range f.pieces[1:] {
			label[root(x.body)] = root(f.pieces[0].body)
		}
	}
	for i := range p.Bodies {
		set := make([]bool, len(p.Bodies))
		for k := range p.Bodies {
			set[k] = root(k) == root(i)
		}
		add(set)
	}
	add(t.everything())
	if n := len(p.Bodies); n > 2 && n <= maxPairs {
		for i := range n {
			for k := range i {
				pair := only(p, i)
				pair[k] = true
				add(pair)
			}
		}
	}
	return sets
}

// A problem of more bodies is a truss of many joints: only those joints are looked at on
// which a force of the entry acts.
const maxSingles, maxPairs = 12, 6
