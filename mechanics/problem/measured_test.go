package problem

import (
	"math"
	"slices"
	"testing"
)

// TestEveryMeasuredCell: a ± is found in whatever cell it stands, under the name that
// a person would call it by, and the cell is read elsewhere when asked to.
func TestEveryMeasuredCell(t *testing.T) {
	s := parsedSheet(t, `plane = "xy"
g = "9.8 ± 0.1"
[units]
force = "kN"
[given]
h = { value = "2 m ± 1 cm", range = "1 m .. 3 m", step = "0.5 m" }
n = "3 ± 1"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4 ± 0.01, h", on = "beam" }
C = { at = "(A + B)/2", on = "beam" }
D = "0, 5 ± 2 %"
[bodies]
beam = { weight = "20 kg ± 1 kg", centre = "2, 1 ± 0.05" }
[joints]
A = { kind = "pin" }
C = { kind = "rough-surface", normal = "(0.1 ± 0.02, 1)", friction = "0.3 ± 0.1", limit = "5 ± 0.2" }
[lines]
F = { kind = "force", at = "B", components = "(1 ± 0.1, ?)" }
G = { kind = "force", at = "B", along = "(3 ± 0.1, 4)", magnitude = "n*1 kN ± 5 N" }
K = { kind = "spring", path = "B D", stiffness = "1 kN/m ± 10 N/m", natural = "1 m ± 1 mm" }
[couples]
M = { on = "beam", magnitude = "2 ± 0.1" }
S = { on = "beam", stiffness = "20 N m/rad ± 1 N m/rad", turn = "20 deg ± 1 deg" }
[distributed]
q = { path = "A B", along = "-y", magnitude = "1 kN/m .. n*1 kN/m" }
r = { path = "A B", along = "-y", magnitude = "s * 1 kN/m^2 ± 3 N/m" }
w = { path = "A B", along = "-y", kind = "hydrostatic", surface = "3 m ± 1 cm", width = "1 m ± 2 cm", density = "1 kg/m^3 ± 0.1 kg/m^3" }
[answers]
source = "own"
Ax = { printed = "1 kN ± 0.1 kN", within = "0.2 kN ± 0.1 kN" }
`)
	rd := NewReader()
	p, errs := rd.Read(s)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	want := []string{
		"along x of G ± 0.1", "centre y of beam ± 0.05 m", "components x of F ± 0.1 kN", "density of w ± 0.1 kg/m^3", "friction of C ± 0.1",
		"g ± 0.1 m/s^2", "h ± 1 cm", "limit of C ± 0.2 kN", "magnitude of G ± 5 N", "magnitude of M ± 0.1 kN m", "magnitude of r ± 3 N/m", "n ± 1",
		"natural of K ± 1 mm", "normal x of C ± 0.02", "stiffness of K ± 10 N/m", "stiffness of S ± 1 N m/rad", "surface of w ± 1 cm",
		"turn of S ± 1 deg", "weight of beam ± 1 kg", "width of w ± 2 cm", "x of B ± 0.01 m", "y of D ± 2 %",
	}
	var got []string
	for _, m := range p.Measured {
		got = append(got, m.Name+" ± "+m.Half)
	}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("measured are\n%q\nwant\n%q", got, want)
	}
	// A point's own ± and that of the given in it move apart from each other.
	for _, m := range p.Measured {
		moved, errs := rd.Moved(s, map[Place]float64{m.Place: 1})
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		b, at := p.Points[1].At, moved.Points[1].At
		dx, dy := 0.0, 0.0
		switch m.Name {
		case "h":
			dy = 0.01
		case "x of B":
			dx = 0.01
		}
		if math.Abs(at.X-b.X-dx) > 1e-12 || math.Abs(at.Y-b.Y-dy) > 1e-12 {
			t.Errorf("with %s moved B is at %v, was at %v", m.Name, at, b)
		}
		if len(moved.Measured) != len(p.Measured) {
			t.Errorf("with %s moved %d values are measured, were %d", m.Name, len(moved.Measured), len(p.Measured))
		}
	}
}
