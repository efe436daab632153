package figure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

const near = 1e-12 // unit vectors through sines and cosines: a few last places

func same(a, b Vec) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < near }

func TestViewsShowTheAxesWhereTheyBelong(t *testing.T) {
	space := &problem.Problem{Up: r3.Vec{Z: 1}}
	yUp := &problem.Problem{Up: r3.Vec{Y: 1}}
	flat := &problem.Problem{Up: r3.Vec{Y: 1}, Planar: true}
	for _, c := range []struct {
		name    string
		view    View
		x, y, z Vec
	}{
		{"front", Front(space), Vec{1, 0}, Vec{0, 0}, Vec{0, 1}},
		{"side", Side(space), Vec{0, 0}, Vec{1, 0}, Vec{0, 1}},
		{"top", Top(space), Vec{1, 0}, Vec{0, 1}, Vec{0, 0}},
		{"front, y up", Front(yUp), Vec{1, 0}, Vec{0, 1}, Vec{0, 0}},
		{"side, y up", Side(yUp), Vec{0, 0}, Vec{0, 1}, Vec{-1, 0}},
		{"top, y up", Top(yUp), Vec{1, 0}, Vec{0, 0}, Vec{0, -1}},
		{"plane from the side is the plane", Side(flat), Vec{1, 0}, Vec{0, 1}, Vec{0, 0}},
		{"space without turn is the front", Space(space, 0, 0), Vec{1, 0}, Vec{0, 0}, Vec{0, 1}},
		{"space turned a quarter is the side", Space(space, math.Pi/2, 0), Vec{0, 0}, Vec{1, 0}, Vec{0, 1}},
		{"space tilted upright is the top", Space(space, 0, math.Pi/2), Vec{1, 0}, Vec{0, 1}, Vec{0, 0}},
	} {
		for _, axis := range []struct {
			of   r3.Vec
			want Vec
		}{{r3.Vec{X: 1}, c.x}, {r3.Vec{Y: 1}, c.y}, {r3.Vec{Z: 1}, c.z}} {
			if got := c.view.Project(axis.of); !same(got, axis.want) {
				t.Errorf("%s: %v is at %v, want %v", c.name, axis.of, got, axis.want)
			}
		}
	}
}

func TestAViewIsARightHandedFrame(t *testing.T) {
	for _, up := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}, {Z: -1}, {X: 1, Y: 2, Z: 3}, {}} {
		p := &problem.Problem{Up: up}
		for _, v := range []View{Front(p), Side(p), Top(p), Space(p, 0.7, 0.4)} {
			if math.Abs(r3.Norm(v.Right)-1) > near || math.Abs(r3.Norm(v.Up)-1) > near || math.Abs(r3.Dot(v.Right, v.Up)) > near {
				t.Errorf("up %v: %v is no orthonormal pair", up, v)
			}
		}
	}
}

// hanging is a load W = 30 N at D on two cables and a strut's worth of kinds:
// A(-3, 4) and B(3, 4) hold D(0, 0) in the plane.
func hanging() (*problem.Problem, *statics.Solution) {
	p := &problem.Problem{
		Planar: true, Up: r3.Vec{Y: 1},
		Points: []problem.Point{
			{Name: "D", Body: 0, OK: true},
			{Name: "A", At: r3.Vec{X: -3, Y: 4}, Body: problem.Ground, OK: true},
			{Name: "B", At: r3.Vec{X: 3, Y: 4}, Body: problem.Ground, OK: true},
			{Name: "Q", Body: problem.Ground}, // does not read
		},
		Bodies:   []problem.Body{{Name: "D", Particle: true, Points: []int{0}}},
		Unknowns: []problem.Unknown{{Name: "T1", Line: 0, Own: true}, {Name: "S", Line: 1, Own: true}},
	}
	leg := func(to int) []problem.Leg {
		r := p.Points[to].At
		return []problem.Leg{{From: 0, To: to, R: r, Length: r3.Norm(r), U: r3.Unit(r)}}
	}
	p.Lines = []problem.Line{
		{Name: "T1", Kind: problem.Cable, OK: true, Path: []int{0, 1}, Legs: leg(1), Magnitude: problem.Affine{Terms: []problem.Term{{Unknown: 0, Coef: 1}}}},
		{Name: "S", Kind: problem.Strut, OK: true, Path: []int{0, 2}, Legs: leg(2), Magnitude: problem.Affine{Terms: []problem.Term{{Unknown: 1, Coef: 1}}}},
		{Name: "W", Kind: problem.Weight, OK: true, Path: []int{0}, Legs: []problem.Leg{{To: -1, U: r3.Vec{Y: -1}}},
			Magnitude: problem.Affine{Const: 30}, Acts: []problem.Act{{Body: 0, Point: 0, Const: r3.Vec{Y: -30}}}},
		{Name: "K", Kind: problem.SpringKind, OK: true, Path: []int{1, 2}, Legs: []problem.Leg{{From: 1, To: 2}}},
		{Name: "unread", Kind: problem.Cable},
	}
	return p, &statics.Solution{Problem: p, X: []statics.Unknown{{Name: "T1", Value: 18.75, Fixed: true}, {Name: "S", Value: 18.75, Fixed: true}}}
}

func find(f Figure, text string) (Label, bool) {
	for _, l := range f.Labels {
		if l.Text == text {
			return l, true
		}
	}
	return Label{}, false
}

func TestDrawAHangingLoad(t *testing.T) {
	p, sol := hanging()
	f := Draw(p, sol, Front(p))
	for _, c := range []struct {
		text, mark string
		at         Vec
	}{
		{"T1", "(T)", Vec{-1.5, 2}}, {"S", "(C)", Vec{1.5, 2}}, {"K", "(0)", Vec{0, 4}},
		{"D", "", Vec{0, 0}}, {"A", "", Vec{-3, 4}},
		// The arrow of the largest force is 0.28 of the diagonal of a 6 by 4 box.
		{"W", "", Vec{0, -0.28 * math.Sqrt(52)}},
	} {
		got, ok := find(f, c.text)
		if !ok || got.Mark != c.mark || !same(got.At, c.at) {
			t.Errorf("label %s: got %+v, want %q at %v", c.text, got, c.mark, c.at)
		}
	}
	if _, ok := find(f, "Q"); ok {
		t.Error("a point that does not read is drawn")
	}
	kinds := map[StrokeKind]int{}
	for _, s := range f.Strokes {
		kinds[s.Kind]++
		for _, q := range s.Pts {
			if q.X < f.Low.X || q.X > f.High.X || q.Y < f.Low.Y || q.Y > f.High.Y {
				t.Errorf("%v lies outside %v..%v", q, f.Low, f.High)
			}
		}
	}
	want := map[StrokeKind]int{Cable: 1, Strut: 1, Spring: 1, Arrow: 2, Ground: 8, Particle: 1}
	for k, n := range want {
		if kinds[k] != n {
			t.Errorf("kind %d: %d strokes, want %d", k, kinds[k], n)
		}
	}
}

func TestWithoutASolutionUnknownsAreOpen(t *testing.T) {
	p, _ := hanging()
	f := Draw(p, nil, Front(p))
	if l, _ := find(f, "T1"); l.Mark != "" {
		t.Errorf("T1 has the mark %q without a solution", l.Mark)
	}
	for _, s := range f.Strokes {
		if s.Kind == Cable && !s.Open {
			t.Error("a cable of unknown tension is not open")
		}
	}
}

func TestAForceAtTheReaderIsAMark(t *testing.T) {
	p, sol := hanging()
	p.Planar, p.Up = false, r3.Vec{Z: 1}
	p.Lines[2].Acts[0].Const = r3.Vec{Z: -30}
	if l, _ := find(Draw(p, sol, Top(p)), "W"); l.Mark != "⊗" {
		t.Errorf("a weight from above has the mark %q, want ⊗", l.Mark)
	}
	axes := Axes(p, Top(p))
	if len(axes) != 3 || axes[2].Toward != 1 || axes[0].Toward != 0 {
		t.Errorf("axes from above: %+v", axes)
	}
}

func TestDrawNothing(t *testing.T) {
	if f := Draw(nil, nil, View{}); len(f.Strokes) != 0 {
		t.Errorf("nothing draws %v", f)
	}
	p := &problem.Problem{Points: []problem.Point{{Name: "A", OK: true, Body: problem.Ground}}}
	if f := Draw(p, nil, Front(p)); len(f.Labels) != 1 {
		t.Errorf("one point draws %v", f)
	}
}
