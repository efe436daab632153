package figure

import (
	"math"
	"testing"
)

// In the front view of a z-up problem the reader stands at negative y: of a point
// at y, -y is how near it is.
func TestStrokesKnowHowNearTheyAre(t *testing.T) {
	p, sol := solved(t, `[points]
D = { at = "0, 0, 0", on = "particle" }
A = "3, 0, 0"
B = "0, 4, 0"
C = "0, 0, 5"
G = { at = "1, -2, 0", on = "beam" }
H = { at = "2, 6, 0", on = "beam" }
[lines]
TA = { kind = "link", path = "D A" }
TB = { kind = "cable", path = "D B" }
TC = { kind = "spring", path = "D C" }
F = { kind = "force", at = "D", along = "(1, -1, 0)", magnitude = "60 N" }
`)
	f := Draw(p, sol, Front(p))
	got := map[StrokeKind][2]float64{}
	for _, s := range f.Strokes {
		if _, seen := got[s.Kind]; !seen {
			got[s.Kind] = s.Near
		}
	}
	for kind, want := range map[StrokeKind][2]float64{Link: {0, 0}, Cable: {0, -4}, Spring: {0, 0}, Body: {2, -6}, Particle: {0, 0}} {
		if near := got[kind]; math.Abs(near[0]-want[0]) > 1e-9 || math.Abs(near[1]-want[1]) > 1e-9 {
			t.Errorf("kind %d runs from %v to %v, want %v", kind, near[0], near[1], want)
		}
	}
	if a := got[Arrow]; a[0] != 0 || a[1] <= 0 {
		t.Errorf("the force toward the reader runs from %v to %v", a[0], a[1])
	}
}

func TestRanksOfLabels(t *testing.T) {
	p, sol := solved(t, lamp)
	want := map[string]Rank{"D": OfPoint, "A": OfPoint, "B": OfPoint, "T1": OfUnknown, "T2": OfUnknown, "F": OfForce, "G": OfForce, "5.00 m": OfSize}
	for _, l := range DrawAs(p, sol, Front(p), Look{Dimensions: true}).Labels {
		if rank, ok := want[l.Text]; !ok || l.Rank != rank {
			t.Errorf("%q has rank %d, want %d", l.Text, l.Rank, rank)
		}
		if runs := l.Along[0] != l.Along[1]; runs != (l.Rank == OfUnknown || l.Rank == OfSize) {
			t.Errorf("%q runs along %v", l.Text, l.Along)
		}
	}
}
