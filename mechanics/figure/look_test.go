package figure

import (
	"math"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func solved(t *testing.T, text string) (*problem.Problem, *statics.Solution) {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	return p, statics.Solve(p)
}

// lamp hangs 60 N from two cables along (-3, 4)/5 and (3, 4)/5: 37.5 N each.
const lamp = `plane = "xy"
[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"
[lines]
T1 = { kind = "cable", path = "D A" }
T2 = { kind = "cable", path = "D B" }
F = { kind = "force", at = "D", along = "-y", magnitude = "60 N" }
G = { kind = "force", at = "D", along = "+x", magnitude = "0.001 N" }
`

func TestAForcePolygonClosesInEquilibrium(t *testing.T) {
	p, sol := solved(t, lamp)
	f, ok := Polygon(p, sol, Front(p), 0)
	if !ok {
		t.Fatal("no polygon")
	}
	var shafts [][]Vec
	for _, s := range f.Strokes {
		if len(s.Pts) == 2 {
			shafts = append(shafts, s.Pts)
		}
	}
	if len(shafts) != 4 {
		t.Fatalf("%d forces", len(shafts))
	}
	for i, s := range shafts {
		next := shafts[(i+1)%len(shafts)][0]
		if math.Hypot(s[1].X-next.X, s[1].Y-next.Y) > 1e-9 {
			t.Errorf("force %d ends at %v, the next begins at %v", i, s[1], next)
		}
	}
	if last := shafts[2]; math.Abs(last[0].Y-last[1].Y-60) > 1e-9 {
		t.Errorf("60 N is drawn from %v to %v", last[0], last[1])
	}
	if _, ok := Polygon(p, nil, Front(p), 0); ok {
		t.Error("a polygon without a solution")
	}
	if _, ok := Polygon(p, sol, Front(p), 7); ok {
		t.Error("a polygon of a body that is not there")
	}
}

// reach gives how far the arrows of a line go from its point at the origin.
func reach(f Figure, row string) (far float64) {
	for _, s := range f.Strokes {
		if s.Kind == Arrow && s.Ref.Row == row && len(s.Pts) == 2 {
			far = math.Max(far, math.Hypot(s.Pts[1].X, s.Pts[1].Y))
		}
	}
	return far
}

func TestLengthsOfArrows(t *testing.T) {
	p, sol := solved(t, lamp)
	legible, scale, equal := DrawAs(p, sol, Front(p), Look{}), DrawAs(p, sol, Front(p), Look{Arrows: ToScale}), DrawAs(p, sol, Front(p), Look{Arrows: Equal})
	if a, b := reach(equal, "F"), reach(equal, "G"); math.Abs(a-b) > 1e-9 {
		t.Errorf("equal arrows are %g and %g long", a, b)
	}
	if a, b := reach(scale, "F"), reach(scale, "G"); math.Abs(a/b-60000) > 1e-3 {
		t.Errorf("to scale the arrows are as %g", a/b)
	}
	if a, b := reach(legible, "F"), reach(legible, "G"); b < 0.4*a || b > a {
		t.Errorf("legible arrows are %g and %g long", a, b)
	}
}

func TestDimensionsAreWritten(t *testing.T) {
	p, sol := solved(t, lamp)
	n := 0
	for _, l := range DrawAs(p, sol, Front(p), Look{Dimensions: true}).Labels {
		if l.Text == "5.00 m" {
			n++
		}
	}
	if n != 2 {
		t.Errorf("%d lengths of 5.00 m are written, want 2", n)
	}
}
