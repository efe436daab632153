package working_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

func handSteps(t *testing.T, text string) (*statics.Solution, []working.Step) {
	t.Helper()
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(sh)
	if len(errs) > 0 {
		t.Fatal(errs[0])
	}
	w := working.Build(statics.Solve(p))
	return w.Solution, w.HandSteps()
}

// numbers calls each with every number of a formula.
func numbers(m *doc.Math, each func(x float64)) {
	if m == nil {
		return
	}
	if m.Op == doc.Number {
		each(m.Num)
	}
	for i := range m.Of {
		numbers(&m.Of[i], each)
	}
}

// Every step of every fixture has a title, a sentence and finite numbers, and
// its last block gives the solution's values.
func TestHandStepsOfFixtures(t *testing.T) {
	for _, fx := range append(fixtures.Starts(), fixtures.Published()...) {
		s, steps := handSteps(t, fx.Answered())
		if len(steps) == 0 && working.Build(s).NoHandSolution() == "" {
			t.Errorf("%s: no step, not even why", fx.Name)
		}
		for i := range steps {
			step := &steps[i]
			if step.Title == "" || len(step.Body) == 0 {
				t.Errorf("%s: step %d says nothing", fx.Name, i)
			}
			for _, b := range step.Body {
				for _, m := range doc.Formulas(b) {
					numbers(m, func(x float64) {
						if math.IsNaN(x) || math.IsInf(x, 0) {
							t.Errorf("%s: step %d shows %v", fx.Name, i, x)
						}
					})
				}
			}
			var values []doc.Math
			for _, b := range step.Body {
				if f, ok := b.(*doc.Formula); ok {
					values = append(values, f.Of...)
				}
			}
			for k := range values {
				name := values[k].Of[0].Name
				for j := range s.X {
					if s.X[j].Name != name {
						continue
					}
					last := &values[k].Of[len(values[k].Of)-1]
					if hasSymbol(*last) {
						continue // T2 = T3 + 1.3, to be substituted
					}
					want := math.Abs(s.X[j].Value) / s.Problem.Units.For(s.Problem.Unknowns[j].Dim).Factor
					numbers(last, func(x float64) {
						if math.Abs(x-want) > 1e-9*max(want, 1e-3) {
							t.Errorf("%s: %s is %v in step %d and %v in the solution", fx.Name, name, x, i, want)
						}
					})
				}
			}
		}
	}
}

func TestHandStepsInText(t *testing.T) {
	for name, want := range map[string]string{
		"beam-on-supports": `Working

 1  Beam
    ΣM_A on the beam contains only B: Ax and Ay pass through A.
      ΣM_A = 6 B - 1.5 · 0.8 P - 3 W_beam = 0
      ΣM_A = 6 B - 1.2 · 500 - 3 · 600 = 0
         B = 400 N
    ΣFx on the beam contains only Ax: Ay has no component in that direction.
      ΣFx = Ax + 0.6 P = 0
      ΣFx = Ax + 0.6 · 500 = 0
       Ax = -300 N
    ΣFy on the beam contains only Ay. B is already known.
      ΣFy = Ay + B - 0.8 P - W_beam = 0
      ΣFy = Ay + 400 - 0.8 · 500 - 600 = 0
       Ay = 600 N
`,
		"frame-of-two-members": `Working

 1  Two-force member: right part
    Forces act on the right part at B and C only, so it is a two-force member
    and they lie along BC: S_right, positive in tension, replaces Bx, By, Cx and
    Cy.

 2  Whole frame
    On the whole frame the internal forces cancel in pairs, so only the external
    forces remain.
    ΣM_A on the whole frame contains only S_right: Ax and Ay pass through A.
         ΣM_A = -8 · 0.6 S_right - 2 load = 0
         ΣM_A = -4.8 S_right - 2 · 1200 = 0
      S_right = -500 N
    ΣM_B on the whole frame contains only Ay: Ax and S_right pass through B.
      ΣM_B = -8 Ay + 6 load = 0
      ΣM_B = -8 Ay + 6 · 1200 = 0
        Ay = 900 N
    ΣFx on the whole frame contains only Ax. S_right is already known.
      ΣFx = Ax + 0.8 S_right = 0
      ΣFx = Ax - 0.8 · 500 = 0
       Ax = 400 N

 3  Components of the force in the right part
    S_right has these components at the ends of the member:
      Bx = 0.8 S_right = -400 N
      By = -0.6 S_right = 300 N
      Cx = 0.8 S_right = -400 N
      Cy = -0.6 S_right = 300 N
`,
	} {
		fx, ok := fixtures.Get(name)
		if !ok {
			t.Fatalf("no sheet %s", name)
		}
		_, steps := handSteps(t, fx.Answered())
		d := &doc.Doc{Sections: []doc.Section{{Level: 1, Title: "Working"}}}
		for i, step := range steps {
			d.Add(doc.Section{Level: 2, Number: i + 1, Title: step.Title, Blocks: step.Body})
		}
		got := doc.Text(d)
		if strings.TrimSpace(got) != strings.TrimSpace(want) {
			t.Errorf("%s:\n%s\nwant\n%s", name, got, want)
		}
	}
}

func hasSymbol(m doc.Math) bool { return m.Op == doc.Symbol || slices.ContainsFunc(m.Of, hasSymbol) }
