package origin

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

func TestNumbersOfSteps(t *testing.T) {
	for _, c := range []struct {
		sheet, step   string
		block, number int
		shows, says   string
	}{
		{mast, "The forces on T", 0, 0, "5.6", "mast: its magnitude, as the sheet gives it"},
		{mast, "Position vector along T2", 0, 0, "3", "x of B, from its place in the sheet"},
		{mast, "Position vector along T2", 0, 5, "12", "z of T, from its place in the sheet"},
		{mast, "Position vector along T2", 0, 6, "3", "x of r of T2, from T to B: x of B less x of T = -3.00 - 0 m"},
		{mast, "Position vector along T2", 1, 0, "3", "a component of r_TB, squared and added up"},
		{mast, "Position vector along T2", 1, 3, "13", "|r| of T2, from T to B: √((-3.00)² + 4.00² + (-12.0)²) m"},
		{mast, "Unit vector along T1", 0, 3, "15", "|r| of T1, from T to A: √(9.00² + 0² + (-12.0)²) m"},
		{mast, "Unit vector along T1", 0, 5, "0.8000", "z of u of T1, from T to A: z of r over |r| = -12.0 m / 15.0 m"},
		{mast, "Force vector of T1", 0, 0, "0.6000", "F_T1 = T1 u_T1"},
		{mast, "Equilibrium of T", 2, 1, "0.2308", "T2 in T ΣFx: x of u from T to B = (-3.00 - 0) m / 13.0 m = -0.2308"},
		{mast, "Equilibrium of T", 2, 3, "0.6", "b in T ΣFx: minus the known forces along x on T, wire -0.600 kN"},
		{mast, "Equilibrium of T", 2, 4, "0", "ΣFx = 0: the body is in equilibrium"},
		{mast, "Matrix form", 1, 3, "0", "T1 in T ΣFy: 0, it acts across y"},
		{mast, "Matrix form", 1, 11, "5.6", "b in T ΣFz: minus the known forces along z on T, mast 5.60 kN"},
		{mast, "Solution", 1, 0, "2.50", "T1 = 2.50 kN: T1, T2 and T3 together from T ΣFx, T ΣFy and T ΣFz"},
		{mast, "Checks", 1, 0, "1.500", "Fx, kN of T1, in the solution"},
		{mast, "Particle T", 4, 1, "0.3077", "T3 in ΣFy: the component of a unit of it along +y = -0.3077"},
		{mast, "Particle T", 4, 6, "1.3", "T3, found before: 1, Particle T"},
		{mast, "Particle T", 4, 8, "0.7211", "wire: known, from the sheet"},
		{mast, "Particle T", 5, 0, "2.60", "T2 = 2.60 kN: from the equation above with the numbers put in"},
		{beam, "Beam", 1, 5, "6", "B in ΣM about A: the moment of a unit of it, its arm with its sign = 6.00 m"},
		{beam, "Beam", 1, 8, "900", "M0: known, from the sheet"},
		{beam, "Beam", 1, 10, "1200", "q: the resultant of the load, the area under it"},
		{beam, "Moments on beam about A", 2, 1, "1000", "in M_P: the arm from the point of moments and the force, r × F"},
		{beam, "Moments on beam about A", 2, 2, "2000", "M_P = (2)(-1000)"},
		{beam, "Resultant of q", 0, 0, "2", "length of q, from B to D"},
		{beam, "Resultant of q", 1, 0, "1200", "resultant of q: the area under the load"},
		{beam, "Resultant of q", 2, 0, "1", "from B to where the resultant of q acts: the centroid of the area under the load"},
		{beam, "Resultant of q", 2, 1, "7", "where the resultant of q acts: so far along its line from B"},
		{beam, "Answers", 0, 0, "0", "Ax from beam ΣFx: (b - the others) / its coefficient = 0 N / 1 = 0 N"},
	} {
		w := working.Build(solved(t, c.sheet))
		found := false
		for i := range w.Steps {
			if w.Steps[i].Title != c.step {
				continue
			}
			found = true
			if of := doc.Numbers(w.Steps[i].Body[c.block]); of[c.number].Text != c.shows {
				t.Errorf("%s, block %d: number %d of %v is not %s", c.step, c.block, c.number, of, c.shows)
			}
			says(t, Step(w, i, c.block, c.number), c.says)
		}
		if !found {
			t.Errorf("there is no step %q", c.step)
		}
	}
}

// TestEveryNumberIsExplained goes through every number of every sheet to start from:
// each has one line, and no line names a number that there is none of.
func TestEveryNumberIsExplained(t *testing.T) {
	line := func(where, got string) {
		if got == "" || strings.ContainsAny(got, "\n\r") || strings.Contains(got, "not a number") || strings.Contains(got, "%!") {
			t.Errorf("%s is explained by %q", where, got)
		}
	}
	for _, start := range fixtures.Starts() {
		of, err := sheet.Parse([]byte(start.Text))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(of)
		s := statics.Solve(p)
		for i := range s.System.Rows {
			line(start.Name+" b", Known(s, i))
			if len(s.Residuals) > 0 {
				line(start.Name+" left", Left(s, i))
				line(start.Name+" share", Share(s, i))
			}
			for j := range s.X {
				line(start.Name+" A", Entry(s, i, j))
			}
		}
		for j := range s.X {
			line(start.Name+" x", Value(s, j))
			line(start.Name+" least", End(s, j, false))
			line(start.Name+" greatest", End(s, j, true))
		}
		for k := range s.Checks {
			line(start.Name+" check", Check(s, k))
		}
		for k := range s.Answers {
			line(start.Name+" answer", Answer(s, k))
		}
		w := working.Build(s)
		for i := range w.Steps {
			for j := range w.Steps[i].Body {
				if _, check := w.Steps[i].Body[j].(*doc.Check); check {
					line(start.Name+" "+w.Steps[i].Title, Step(w, i, j, 0))
				}
				for k, shows := range doc.Numbers(w.Steps[i].Body[j]) {
					line(start.Name+" "+w.Steps[i].Title+": "+shows.Text, Step(w, i, j, k))
				}
			}
		}
	}
}
