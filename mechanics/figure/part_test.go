package figure

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/working"
)

func TestABodyIsCutFree(t *testing.T) {
	p, sol := beam()
	p.Loads[0].Body = 0
	p.Joints[0].Acts[0].Body = 0
	f := Part(p, sol, Front(p), working.Subject{Bodies: []int{0}})
	// What held it is gone, and its forces stand in its place, as assumed: Ay and MA.
	if len(strokes(f, Support))+len(f.Marks) != 0 {
		t.Error("a body cut free keeps its support")
	}
	arrows := strokes(f, Arrow)
	if len(arrows) != 2 || !arrows[0].Open || arrows[0].Pts[1].Y <= 0 || len(strokes(f, Couple)) != 2 || len(strokes(f, Load)) != 11 {
		t.Errorf("%d arrows, %d of couples, %d of loads", len(arrows), len(strokes(f, Couple)), len(strokes(f, Load)))
	}
	for _, name := range []string{"Ay", "MA", "q", "A", "B", "C"} {
		if _, ok := find(f, name); !ok {
			t.Errorf("no label %s", name)
		}
	}
	// A step about its joint alone leaves out the load.
	f = Part(p, sol, Front(p), working.Subject{Bodies: []int{0}, Joints: []int{0}})
	if len(strokes(f, Load)) != 0 || len(strokes(f, Arrow)) != 2 {
		t.Error("a step about A shows the load, or no force at A")
	}
	whole := Draw(p, sol, Front(p))
	if f.Low.X > whole.Low.X || f.High.Y < whole.High.Y {
		t.Error("the picture jumps between steps")
	}
}

func TestALineAloneIsItsVector(t *testing.T) {
	p, sol := hanging()
	f := Part(p, sol, Front(p), working.Subject{Lines: []int{0}, Points: []int{0}})
	arrows := strokes(f, Arrow)
	if len(arrows) != 2 || len(f.Strokes) != 2 {
		t.Fatalf("%d strokes", len(f.Strokes))
	}
	leg := p.Lines[0].Legs[0]
	if !same(arrows[0].Pts[0], Front(p).Project(p.Points[leg.From].At)) || !same(arrows[0].Pts[1], Front(p).Project(p.Points[leg.To].At)) {
		t.Errorf("the vector is %v", arrows[0])
	}
}

func TestTheAxisOfAMoment(t *testing.T) {
	p, sol := beam()
	if n := len(strokes(Part(p, sol, Front(p), working.Subject{Axis: &working.Axis{Along: [3]float64{0, 0, 1}}}), Center)); n != 3 {
		t.Errorf("%d strokes for a point in the plane, want a ring and a cross", n)
	}
	p.Planar, p.Up = false, r3.Vec{Z: 1}
	got := strokes(Part(p, sol, Front(p), working.Subject{Axis: &working.Axis{Along: [3]float64{1, 0, 0}}}), Center)
	if len(got) != 1 || !got[0].Open {
		t.Errorf("an axis across is %v, want one dashed line", got)
	}
}

func TestInsideForcesCancel(t *testing.T) {
	p, sol := beam()
	p.Bodies = append(p.Bodies, problem.Body{Name: "arm", Points: []int{0, 2}})
	j := &p.Joints[0]
	j.Second = 1
	j.Acts = append(j.Acts, problem.Act{Body: 1, Terms: []problem.ActTerm{{Unknown: 0, D: r3.Vec{Y: -1}}}})
	p.Lines = []problem.Line{{Name: "T", OK: true, Ref: sheet.Ref{Table: "lines", Row: "T"}, Path: []int{0, 1}, Acts: []problem.Act{
		{Body: 0, Terms: []problem.ActTerm{{Unknown: 1, D: r3.Vec{X: 1}}}}, {Body: 1, Point: 1, Terms: []problem.ActTerm{{Unknown: 1, D: r3.Vec{X: -1}}}},
	}}}
	if n := len(strokes(Part(p, sol, Front(p), working.Subject{Bodies: []int{0, 1}}), Arrow)); n != 0 {
		t.Errorf("%d strokes of forces inside", n)
	}
	if n := len(strokes(Part(p, sol, Front(p), working.Subject{Bodies: []int{1}}), Arrow)); n != 4 {
		t.Errorf("%d strokes of forces on the arm, want two arrows", n)
	}
	// An index that the problem does not have is passed over.
	Part(p, sol, Front(p), working.Subject{Bodies: []int{-1, 9}, Lines: []int{9}, Points: []int{7}, Joints: []int{-1}})
	Part(p, sol, Front(p), working.Subject{Lines: []int{9}, Loads: []int{9}, Couples: []int{3}, Joints: []int{5}})
	Part(nil, nil, View{}, working.Subject{})
}
