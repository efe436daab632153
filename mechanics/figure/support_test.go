package figure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/problem"
)

func TestEveryJointHasItsSign(t *testing.T) {
	for _, k := range problem.Joints() {
		if _, ok := signs[k.Name]; !ok {
			t.Errorf("%s has no sign", k.Name)
		}
	}
}

func TestSignsFaceWhatTheyHold(t *testing.T) {
	for _, c := range []struct {
		kind         string
		planar       bool
		normal, axis r3.Vec
		view         func(*problem.Problem) View
		sign         Sign
		toward       Vec
	}{
		{"pin", true, r3.Vec{}, r3.Vec{}, Front, PinSign, Vec{0, 1}},
		{"roller", true, r3.Vec{X: 1}, r3.Vec{}, Front, RollerSign, Vec{1, 0}},
		{"rough-surface", true, r3.Vec{Y: 1}, r3.Vec{}, Front, RoughSign, Vec{0, 1}},
		{"fixed", true, r3.Vec{}, r3.Vec{}, Front, FixedSign, Vec{1, 0}},
		{"pin", false, r3.Vec{}, r3.Vec{X: 1}, Front, BearingSign, Vec{1, 0}},
		{"ball-and-socket", false, r3.Vec{}, r3.Vec{}, Top, BallSign, Vec{0, 1}},
		{"roller", false, r3.Vec{Y: 1}, r3.Vec{}, Top, RollerSign, Vec{}}, // seen end on
		{"collar", false, r3.Vec{}, r3.Vec{X: 1}, Top, SliderSign, Vec{1, 0}},
	} {
		p, sol := beam()
		p.Planar = c.planar
		j := &p.Joints[0]
		j.Kind, j.Normal, j.Axis = kind(c.kind), c.normal, c.axis
		f := Draw(p, sol, c.view(p))
		if len(f.Marks) != 1 || f.Marks[0].Sign != c.sign || !same(f.Marks[0].Toward, c.toward) || f.Marks[0].Ref != j.Ref {
			t.Errorf("%s: %+v, want sign %d toward %v", c.kind, f.Marks, c.sign, c.toward)
		}
		// No sign stands on the side of what it holds, but for rods and plates.
		for _, s := range strokes(f, Support) {
			for _, q := range s.Pts {
				ahead := q.X*c.toward.X + q.Y*c.toward.Y
				if math.IsNaN(ahead) || c.sign < BallSign && ahead > near {
					t.Errorf("%s: %v lies in front", c.kind, q)
				}
			}
		}
	}
}

func TestAJointBetweenTwoBodiesIsARing(t *testing.T) {
	p, sol := beam()
	p.Bodies = append(p.Bodies, problem.Body{Name: "arm", Points: []int{0, 2}})
	p.Joints[0].Second = 1
	if f := Draw(p, sol, Front(p)); len(f.Marks) != 0 || len(strokes(f, Particle)) != 1 {
		t.Errorf("%d signs, %d rings", len(f.Marks), len(strokes(f, Particle)))
	}
	// A slider keeps its rod, without the hatch.
	p.Joints[0].Kind, p.Joints[0].Axis = kind("slider"), r3.Vec{X: 1}
	if f := Draw(p, sol, Front(p)); len(strokes(f, Support)) != 2 {
		t.Errorf("the slider is %v", strokes(f, Support))
	}
}
