// Package scene says what a figure shows, as plain data in space: bodies, members,
// supports, forces, couples and loads, each with the row that it stands for and its
// label. Arrows have the sense and the place that a textbook gives them; package figure
// sets a scene on paper or on a screen.
package scene

import (
	"iter"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/drawing"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Scene is what a figure shows. Things are in the order in which they are drawn where
// none stands in front of another.
type Scene struct {
	Title  string
	Planar bool
	Up     r3.Vec
	Size   float64 // the diagonal of the box of the problem's points, m; 1 where there is none
	Things []Thing
	Zero   [][]drawing.Run // forces that are zero, which are said and not drawn
	Reach  []r3.Vec        // what the figure leaves room for, beside its things

	// Dimensions writes a length between places of Reach; nil where no dimensions are drawn.
	Dimensions func(m float64) string
}

// Thing is one of them.
type Thing struct {
	Kind     Kind
	Ref      sheet.Ref     // the row that it stands for
	Body     string        // the name of the body that an outline, bar or disc belongs to
	At       []r3.Vec      // m; what of it is said beside each kind
	Along    r3.Vec        // a unit vector, likewise
	Radius   float64       // of a disc, m; of a dot, 1 where it is a particle
	Heights  []float64     // of a load's diagram above each place, from -1 to 1
	Values   []string      // and what is written there
	Base     float64       // and of what it stands on
	Share    float64       // of an arrow: its magnitude as a share of the largest, 0.5 where it is not known
	Behind   []float64     // the shares of arrows of the same sense at the same place that it begins behind
	Value    float64       // N or N·m, positive: of an arrow whose magnitude is known, of a load the largest of the sheet's intensities, N/m
	Followed bool          // another arrow of the same sense begins behind it
	Aside    float64       // -1 or 1 where an arrow of the other sense lies on the same line: to which side it gives way; more at a drum
	Head     bool          // the arrow's head is at the place, which it pushes; else its tail, which it pulls
	Tone     drawing.Tone  // Load of what is given, Found of what is sought, Dark of the rest
	Open     bool          // its magnitude is not known
	Broken   bool          // it acts in a sense that its line or support cannot have
	Symbol   *Symbol       // of a support
	Hanging  bool          // of a support without ground behind it: on another body
	Under    bool          // of a surface: a bar that is drawn through its place rests on it
	Slope    []drawing.Run // the angle of a surface to the horizontal, where it has one
	Label    Label
}

// Kind is the kind of a thing.
type Kind int

// The kinds of things.
const (
	Outline Kind = iota // a body: At are its corners
	Bar                 // the bars of a body: At are the ends of each in turn
	Disc                // a wheel or drum: its centre, Along its axis
	Cable               // members: At are their ends
	Strut
	Link
	Spring
	Support // a Symbol at a place; Along points from the ground to the body, or is its axis. At may go on with the ends of a surface
	Pin     // what is pinned together, at a place
	Dot     // a particle, or a point of a body, at a place
	Force   // an arrow at a place; Along is the direction of the force
	Couple  // at a place, about Along; counter-clockwise seen from its head
	Load    // a diagram: At are the feet of its ordinates, Along its direction
	Water   // the surface of water: At are where it meets the wall, a place of it and the upper end of what it presses on; Along is upwards
	Vector  // from a place to another
	Centre  // what moments are taken about: a place, and an axis where Along is not zero
	Section // through members: At are the places where it cuts them, in order
	Name    // of a point, at a place
)

// Member tells that a thing is one of the members.
func (k Kind) Member() bool { return k >= Cable && k <= Spring }

func (t *Thing) member() bool   { return t.Kind.Member() }
func (t *Thing) straight() bool { return t.Kind == Bar || t.Kind.Member() }

// Lines gives the ends of each straight part of a bar, a member or an outline that has a
// length.
func (t *Thing) Lines() iter.Seq2[r3.Vec, r3.Vec] {
	return func(yield func(from, to r3.Vec) bool) {
		step := map[bool]int{true: 1, false: 2}[t.Kind == Outline]
		for i := 0; i < len(t.At) && (t.Kind == Outline || t.straight()); i += step {
			from, to := t.At[i], t.At[(i+1)%len(t.At)]
			if from != to && !yield(from, to) {
				return
			}
		}
	}
}

// Label is what is written beside a thing. Where there is no room for all of it there is
// for Short. Mark stands behind both.
type Label struct {
	Runs, Short []drawing.Run
	Mark        string // "(T)", "(C)", "(0)" of a member, "!" of what cannot be
	Rank        Rank
}

// called is the label that a name is.
func called(name []drawing.Run, rank Rank) Label { return Label{Runs: name, Short: name, Rank: rank} }

// Rank is how much a reader would miss a label: where there is no room for all, the
// first ranks have theirs.
type Rank int

// The ranks.
const (
	OfUnknown Rank = iota // a force whose magnitude is sought
	OfForce               // a known one
	OfBody
	OfPoint
	OfSize // a length, a coefficient, an angle: in small letters
)

// Options say what stands in the figure of a problem beside what has to.
type Options struct {
	Dimensions bool            // and what is typed of members
	Asked      []problem.Query // reactions among them are drawn as arrows with their names
	Reactions  bool            // all reactions are, as far as they are found
	Lengths    bool            // of members, beside them
	Sections   [][]int         // the lines that each section of the hand solution goes through

	// Typed is what a cell has of a load or a surface as it was typed, empty where it is
	// computed; without a key the magnitude of a load. Nil: all values are printed. Where it is
	// set, what follows from the data of a spring, of water or of a surface is not.
	Typed func(sheet.Ref) string
}

// builder collects things. With a solution, sought forces have the sense and magnitude
// that they have in it; without one, the sense that counts as positive.
type builder struct {
	p   *problem.Problem
	sol *statics.Solution
	opt Options
	max float64 // the largest force, N: its arrow is the longest
	out Scene

	lines  map[int][]straight // the parts of bars and members, by the layers that they lie in
	layers float64            // as many are as thick as the problem is large

	whole bool // all of the problem is drawn: what acts on two bodies has its name once
}

func newBuilder(p *problem.Problem, sol *statics.Solution, opt Options) *builder {
	low, high := p.Extent()
	size, layers := r3.Norm(r3.Sub(high, low)), 1+math.Min(float64(len(p.Lines))/8, 0.25/Flat) // thicker than what is near
	if !(size > 0) || math.IsInf(size, 0) {
		size, layers = 1, 0
	}
	if sol != nil && (sol.Problem != p || sol.Verdict == statics.NoEquilibrium) {
		sol = nil
	}
	b := &builder{p: p, sol: sol, opt: opt, out: Scene{Planar: p.Planar, Up: p.Up, Size: size}, lines: map[int][]straight{}, layers: layers}
	// Most lines and points are a thing, and a point has a name.
	b.out.Things = make([]Thing, 0, len(p.Lines)+2*len(p.Points)+16)
	for _, q := range p.Points {
		if q.OK {
			b.out.Reach = append(b.out.Reach, q.At)
		}
	}
	return b
}

func (b *builder) add(t Thing) {
	for from, to := range t.Lines() {
		first, last := b.layer(from), b.layer(to)
		for k := min(first, last) - 1; k <= max(first, last)+1 && t.straight(); k++ { // what lies near it may be of the next
			b.lines[k] = append(b.lines[k], straight{from, to, len(b.out.Things)})
		}
	}
	b.out.Things = append(b.out.Things, t)
}

func (b *builder) placed(i int) bool { return i >= 0 && i < len(b.p.Points) && b.p.Points[i].OK }

// at is where an act takes hold of its body.
func (b *builder) at(a *problem.Act) r3.Vec {
	if b.placed(a.Point) {
		return b.p.Points[a.Point].At
	}
	return a.At
}

// unknown is the value that an unknown was found to have.
func (b *builder) unknown(j int) (float64, bool) {
	if b.sol == nil || j >= len(b.sol.X) || !b.sol.X[j].Fixed {
		return 0, false
	}
	return b.sol.X[j].Value, true
}

// shows tells that the arrow of a joint's unknown is drawn: on a free body all are, in the
// whole problem those that are found, or asked for.
func (b *builder) shows(unknown int) bool {
	_, known := b.unknown(unknown)
	return !b.whole || b.opt.Reactions && known ||
		!b.opt.Reactions && slices.ContainsFunc(b.opt.Asked, func(q problem.Query) bool { return q.Of == problem.Source{Thing: problem.AnUnknown, Index: unknown} })
}

// near tells that two places are one to the eye.
func (b *builder) near(p, q r3.Vec) bool { return r3.Norm(r3.Sub(p, q)) <= Flat*b.out.Size }

// Flat is how far from a line or a plane a point may lie and count as on it, as a share
// of the problem's size: less than a figure shows.
const Flat = 1e-3

// nothing is the share of the largest force below which a force is zero.
const nothing = 1e-9

func finite(v r3.Vec) bool {
	n := r3.Norm(v)
	return n > 0 && !math.IsInf(n, 0) && !math.IsNaN(n)
}

// unit is v/|v|, and zero for what has no direction.
func unit(v r3.Vec) r3.Vec {
	if !finite(v) {
		return r3.Vec{}
	}
	return r3.Scale(1/r3.Norm(v), v)
}

// mean is the mean of places.
func mean(at []r3.Vec) (m r3.Vec) {
	for _, q := range at {
		m = r3.Add(m, r3.Scale(1/float64(len(at)), q))
	}
	return m
}
