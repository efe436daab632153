package statics

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// rigid are sheets with rigid bodies, joints, couples and distributed loads.
func rigid() map[string]string {
	return map[string]string{
		"beam": `plane = "xy"
[points]
O = { at = "1, 2", on = "beam" }
M = { at = "O + (2, 1) m", on = "beam" }
B = { at = "5, 2", on = "beam" }
A = "5, 7"
[bodies]
beam = { weight = "300 N", centre = "3, 2" }
[joints]
O = { kind = "pin" }
[couples]
C = { on = "beam", magnitude = "50 N m" }
[lines]
T = { kind = "cable", path = "M A" }
F = { kind = "force", at = "B", along = "(1, -2)", magnitude = "80 N" }
[distributed]
q = { on = "beam", path = "O B", along = "-y", magnitude = "20 N/m .. 60 N/m" }
`,
		"frame": `plane = "xy"
[points]
A = { at = "0, 0", on = "left" }
B = { at = "3, 4", on = "left right" }
C = { at = "6, 0", on = "right" }
D = { at = "(B + C)/2", on = "right" }
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
C = { kind = "rough", normal = "+y" }
[lines]
F = { kind = "force", at = "D", along = "-y", magnitude = "90 N" }
`,
		"boom": `[points]
O = { at = "0, 0, 0", on = "boom" }
T = { at = "0, 6, 3", on = "boom" }
M = { at = "(O + T)/2", on = "boom" }
A = "3, 0, 5"
B = "-2, 0, 6"
[bodies]
boom = { weight = "40 kg", centre = "M", about = "O" }
[joints]
O = { kind = "ball-and-socket" }
[lines]
T1 = { kind = "cable", path = "T A" }
T2 = { kind = "cable", path = "T B" }
W = { kind = "weight", at = "T", magnitude = "60 kg" }
`,
		"tied couples": `[points]
A = { at = "0, 0, 0", on = "rod" }
B = { at = "0.4, 0.2, 0", on = "rod" }
D = { at = "0, 0.2, 0", on = "rod" }
[lines]
F = { kind = "force", at = "D", components = "(-300, 100, -150) N" }
H = { kind = "link", at = "B", along = "(2, 1, 0)", magnitude = "Mx/(2 m) + 3 N" }
[joints]
A = { kind = "pin", axis = "dir(A, B)" }
[couples]
My = { on = "rod", about = "+y", magnitude = "Mx/2" }
Mx = { on = "rod", about = "+x" }
`,
		"loose": `[points]
O = { at = "0, 0, 1", on = "gate" }
P = { at = "2, 0, 0", on = "gate" }
[joints]
O = { kind = "journal-bearing", axis = "(1, 2, 2)" }
[lines]
T = { kind = "cable", at = "P", along = "+z" }
F = { kind = "force", at = "P", along = "(1, 2, 2)", magnitude = "9 N" }
`,
	}
}

func cellSheets(t *testing.T) map[string]*sheet.Sheet {
	out := map[string]*sheet.Sheet{}
	texts := rigid()
	for _, f := range allSheets() {
		texts[f.Name] = f.Answered()
	}
	for name, text := range texts {
		sh, err := sheet.Parse([]byte(text))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out[name] = sh
	}
	return out
}

func readSheet(t *testing.T, name string, sh *sheet.Sheet) *problem.Problem {
	t.Helper()
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatalf("%s: %v at %v", name, errs[0], errs[0].Ref)
	}
	return p
}

// TestInvariantUnderTranslationOfCells types other places into the cells of
// points, rigid bodies' and centres of weight too, and leaves all else as it is.
// It moves across the vertical only: water has its surface where it was.
func TestInvariantUnderTranslationOfCells(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 5))
	for name, sh := range cellSheets(t) {
		p := readSheet(t, name, sh)
		d := [3]float64{30 * rng.NormFloat64(), 30 * rng.NormFloat64(), 30 * rng.NormFloat64()}
		for k, up := range []float64{p.Up.X, p.Up.Y, p.Up.Z} {
			if up != 0 || p.Planar && k == 2 {
				d[k] = 0
			}
		}
		place := func(x, y, z float64) string {
			if p.Planar {
				return fmt.Sprintf("(%.17g, %.17g) m", x+d[0], y+d[1])
			}
			return fmt.Sprintf("(%.17g, %.17g, %.17g) m", x+d[0], y+d[1], z+d[2])
		}
		moved := sh
		for _, pt := range p.Points {
			ref := sheet.Ref{Table: "points", Row: pt.Name, Key: "at"}
			moved = moved.With(ref, place(pt.At.X, pt.At.Y, pt.At.Z))
		}
		for _, b := range p.Bodies {
			if b.Weight > 0 {
				ref := sheet.Ref{Table: "bodies", Row: b.Name, Key: "centre"}
				moved = moved.With(ref, place(b.Centre.X, b.Centre.Y, b.Centre.Z))
			}
		}
		same(t, name+" moved", Solve(p), Solve(readSheet(t, name+" moved", moved)), sameName, 1)
	}
}

// TestInvariantUnderReorderingOfRows shuffles the rows of every table.
func TestInvariantUnderReorderingOfRows(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 6))
	for name, sh := range cellSheets(t) {
		was := Solve(readSheet(t, name, sh))
		for range 5 {
			other := *sh
			other.Tables = slices.Clone(sh.Tables)
			for i := range other.Tables {
				rows := slices.Clone(other.Tables[i].Rows)
				rng.Shuffle(len(rows), func(a, b int) { rows[a], rows[b] = rows[b], rows[a] })
				other.Tables[i].Rows = rows
			}
			same(t, name+" reordered", was, Solve(readSheet(t, name+" reordered", &other)), sameName, 1)
		}
	}
}

// TestInvariantUnderMomentPoint takes the moments of a body about each of its
// points in turn: the unknowns know nothing of it.
func TestInvariantUnderMomentPoint(t *testing.T) {
	turned := 0
	for name, sh := range cellSheets(t) {
		p := readSheet(t, name, sh)
		was := Solve(p)
		for _, b := range p.Bodies {
			if b.Particle {
				continue
			}
			for _, i := range b.Points {
				turned++
				other := sh.With(sheet.Ref{Table: "bodies", Row: b.Name, Key: "about"}, p.Points[i].Name)
				same(t, fmt.Sprintf("%s about %s", name, p.Points[i].Name), was, Solve(readSheet(t, name, other)), sameName, 1)
			}
		}
	}
	if turned < 10 {
		t.Errorf("%d points", turned)
	}
}
