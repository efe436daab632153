package figure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// beam is a beam A(0, 0) to B(4, 0) in the plane, built in at A, under 2 kN/m
// downwards: A holds 8 kN upwards and 16 kN m counter-clockwise.
func beam() (*problem.Problem, *statics.Solution) {
	p := &problem.Problem{
		Planar: true, Up: r3.Vec{Y: 1},
		Points: []problem.Point{
			{Name: "A", OK: true, Ref: sheet.Ref{Table: "points", Row: "A"}},
			{Name: "B", At: r3.Vec{X: 4}, OK: true},
			{Name: "C", At: r3.Vec{X: 2}, OK: true},
		},
		Bodies: []problem.Body{{Name: "beam", Points: []int{0, 1, 2}, Ref: sheet.Ref{Table: "bodies", Row: "beam"}}},
	}
	p.Unknowns = []problem.Unknown{{Name: "Ay"}, {Name: "MA"}}
	p.Joints = []problem.Joint{{
		Name: "A", Kind: kind("fixed"), OK: true, First: 0, Second: problem.Ground, Ref: sheet.Ref{Table: "joints", Row: "A"},
		Acts: []problem.Act{{
			Terms:       []problem.ActTerm{{Unknown: 0, D: r3.Vec{Y: 1}}},
			CoupleTerms: []problem.ActTerm{{Unknown: 1, D: r3.Vec{Z: 1}}},
		}},
	}}
	load := problem.Distributed{Name: "q", OK: true, From: 0, To: 1, Direction: r3.Vec{Y: -1}, Length: 4}
	load.Diagram = []problem.Ordinate{{S: 0, Q: 2000}, {S: 4, Q: 2000}}
	p.Loads = []problem.Distributed{load}
	return p, &statics.Solution{Problem: p, X: []statics.Unknown{{Value: 8000, Fixed: true}, {Value: 16000, Fixed: true}}}
}

// kind finds a kind of joint by its name.
func kind(name string) problem.JointKind {
	for i, k := range problem.Joints() {
		if k.Name == name {
			return problem.JointKind(i)
		}
	}
	panic("no joint is called " + name)
}

func strokes(f Figure, k StrokeKind) (out []Stroke) {
	for _, s := range f.Strokes {
		if s.Kind == k {
			out = append(out, s)
		}
	}
	return out
}

func TestABeamIsALineThroughItsPoints(t *testing.T) {
	p, sol := beam()
	f := Draw(p, sol, Front(p))
	got := strokes(f, Body)
	if len(got) != 2 || !same(got[0].Pts[0], Vec{0, 0}) || !same(got[0].Pts[1], Vec{2, 0}) || !same(got[1].Pts[1], Vec{4, 0}) {
		t.Errorf("the beam is %v, want A-C-B", got)
	}
	// The wall stands across the beam and is hatched away from it.
	wall := strokes(f, Support)
	if len(wall) != 6 || wall[0].Pts[0].X != 0 || wall[0].Pts[1].X != 0 || wall[1].Pts[1].X >= 0 {
		t.Errorf("the wall at A is %v", wall)
	}
	if n := len(strokes(f, Particle)); n != 1 {
		t.Errorf("%d rings, want one at the joint", n)
	}
}

func TestReactionsPointAsFound(t *testing.T) {
	p, sol := beam()
	arrows := strokes(Draw(p, sol, Front(p)), Arrow)
	// The only arrow is the largest: 0.28 of the diagonal of 4 m, upwards.
	if len(arrows) != 2 || !same(arrows[0].Pts[1], Vec{0, 0.28 * 4}) {
		t.Errorf("the reaction is %v", arrows)
	}
	sol.X[0].Fixed = false
	if n := len(strokes(Draw(p, sol, Front(p)), Arrow)); n != 0 {
		t.Errorf("a reaction not found is drawn with %d strokes", n)
	}
}

func TestACoupleTurnsTheWayItActs(t *testing.T) {
	p, sol := beam()
	for _, c := range []struct {
		m    float64
		sign float64
	}{{16000, 1}, {-16000, -1}} {
		sol.X[1].Value = c.m
		arc := strokes(Draw(p, sol, Front(p)), Couple)[0].Pts
		turn := arc[0].X*arc[1].Y - arc[0].Y*arc[1].X // the centre is at the origin
		if turn*c.sign <= 0 {
			t.Errorf("%g N m turns by %g", c.m, turn)
		}
	}
	// From above in space the same axis is seen across: two heads along it.
	p.Planar, p.Up = false, r3.Vec{Y: 1}
	if n := len(strokes(Draw(p, sol, Top(p)), Couple)); n != 3 {
		t.Errorf("%d strokes across the axis, want shaft and two heads", n)
	}
}

func TestADistributedLoadStandsOnItsStretch(t *testing.T) {
	p, sol := beam()
	f := Draw(p, sol, Front(p))
	got := strokes(f, Load)
	// Five arrows of shaft and head, and the line over them.
	if len(got) != 11 || !same(got[0].Pts[1], Vec{0, 0}) || !same(got[0].Pts[0], Vec{0, arrowLow * 4}) {
		t.Errorf("%d strokes, first %v", len(got), got[0])
	}
	if l, ok := find(f, "q"); !ok || !same(l.At, Vec{2, arrowLow * 4}) {
		t.Errorf("the label is at %v", l.At)
	}
}

func TestTreeIsTheShortest(t *testing.T) {
	square := []r3.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}, {X: 5}}
	length := 0.0
	for _, l := range Tree(square) {
		length += r3.Norm(r3.Sub(l[1], l[0]))
	}
	if math.Abs(length-7) > near {
		t.Errorf("length %g, want 7", length)
	}
	if Tree(nil) != nil || Tree(square[:1]) != nil {
		t.Error("a tree without legs has some")
	}
}
