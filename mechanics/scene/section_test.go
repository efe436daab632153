package scene_test

import (
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/scene"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// A section of the hand solution goes through the members that it cuts, in order, and the
// part that it leaves shows its other members.
func TestSections(t *testing.T) {
	one, _ := fixtures.Get("truss-by-section")
	p := read(t, one.Answered())
	w := working.Build(statics.Solve(p))
	cuts := w.Sections()
	if len(cuts) != 1 || len(cuts[0]) != 3 {
		t.Fatalf("the sections go through %v", cuts)
	}
	drawn := 0
	for _, thing := range scene.System(p, nil, scene.Options{Sections: cuts}).Things {
		if thing.Kind != scene.Section {
			continue
		}
		drawn++
		if len(thing.At) != 3 || (thing.At[0].Y-thing.At[1].Y)*(thing.At[1].Y-thing.At[2].Y) <= 0 {
			t.Errorf("it goes through %v", thing.At)
		}
	}
	if drawn != 1 {
		t.Errorf("%d sections are drawn", drawn)
	}
	members := 0
	for i := range w.Hand.Steps {
		step := &w.Hand.Steps[i]
		if len(step.Equations) == 0 || len(step.Equations[0].Cut) == 0 {
			continue
		}
		for _, thing := range scene.Part(p, nil, working.Subject{Bodies: step.Equations[0].Bodies}).Things {
			if thing.Kind.Member() {
				members++
			}
		}
		break
	}
	if members != 3 { // AB, AG and BG of the part with A, B and G
		t.Errorf("the part shows %d members", members)
	}
}
