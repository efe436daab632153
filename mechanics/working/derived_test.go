package working_test

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/working"
)

// Nothing in a working is asserted that a reader cannot follow: what each line shows stands on the page of its
// sheet, and what was left out of it does not.
func TestEveryStepIsArgued(t *testing.T) {
	for _, c := range []struct{ sheet, shows, not string }{
		{"uniform-and-triangular-load", "R_q1 and R_q2 are the resultants of the distributed loads q1 and q2. Each M is the moment about A of the force or couple in its subscript.", ""},
		{"trapezoidal-load", "The diagram consists of a rectangle (R_1) and a triangle (R_2), so R_q = ΣR_i and d_q = ΣR_i d_i/R_q:", ""},
		{"sluice-gate", "The pressure acts perpendicular to the gate, r_AB = (-3, -4) m: n_water = (4, -3)/5 = 0.8 i - 0.6 j", "R_water = √"},
		{"boat-on-a-bollard", "Slip toward T2 is impending, so T2 is the larger tension, with μ the coefficient of static friction: T2 = T1 e^(μ β)", "against the motion"},
		{"boat-on-a-bollard", "|R_R| = |Rx| = |-1271| = 1271 N", ""},
		{"crate-tips-or-slips", "with μ the coefficient of static friction: F_C = |CF| = 120 N", ""},
		{"hanging-load", "so they are found by substitution. ΣFx on particle R relates TA to TB. ΣFx = 0.667 TA - 0.333 TB = 0 TA = 0.5 TB", "n · u"},
		{"mast-top", "With T1 and T2 substituted, ΣFz on particle T contains only T3.", "n · u"},
		{"mast-top", "T1 = 0.769 T3 + 1.5 = 0.769 · 1.3 + 1.5 = 2.50 kN", ""},
		{"crate-on-three-cables", "FB = FC With FB substituted, ΣFz on particle A contains only FC.", ""},
		{"wedge-that-raises-a-block", "n = (-0.942, 0.486)/√(0.486² + 0.942²) = (-0.8887, 0.4585), perpendicular to the resultant of N1 and F1", "cos -8°"},
		{"wedge-that-raises-a-block", "F_N1 + F_F1 = N1 (0.4858 i + 0.9416 j) n · (-i - 0.35 j) = (-0.8887)(-1) + (0.4585)(-0.35) = 0.7282", ""},
		{"balloon", "998.3 - 196.2 - 98.1 = 704", ""},
		{"wedge-that-raises-a-block", "9 equations (4 of equilibrium and 5 between the forces) in 9 unknowns", ""},
		{"boom-with-cables-at-two-points", "u_EP = r_EP/|r_EP| = (-3, 4, 0)/5 = -0.6 i + 0.8 j", ""},
		{"boom-with-cables-at-two-points", "u_EP · (r_EC × u_CQ) = (-0.6)(-1.732) + (0.8)(1.732) = 2.425", ""},
		{"boom-with-cables-at-two-points", "ΣM_Ey = -6 · 0.384 AP + 3 · 0.577 CQ = 0", ""},
		{"magnitude-and-direction-angles", "Particle O: one force acts on it.", "Resultant of the known forces"},
		{"components-of-a-guys-pull", "|F_T| = |T| = |2500| = 2500 N", ""},
		{"truss-by-section", "u_GC = r_GC/|r_GC| = (4, -3)/5 = 0.8 i - 0.6 j", "u_AG"},
	} {
		fx, found := fixtures.Get(c.sheet)
		if !found {
			t.Fatalf("no sheet %s", c.sheet)
		}
		s, _ := handSteps(t, fx.Text)
		got := pageText(working.Build(s))
		if !strings.Contains(got, c.shows) {
			t.Errorf("%s does not say\n%s\nin\n%s", c.sheet, c.shows, got)
		}
		if c.not != "" && strings.Contains(got, c.not) {
			t.Errorf("%s says %q", c.sheet, c.not)
		}
	}
}

// pageText is a working as text, on one line.
func pageText(w *working.Working) string {
	d := &doc.Doc{}
	for _, step := range w.Steps {
		d.Sections = append(d.Sections, doc.Section{Title: step.Title, Blocks: step.Body})
	}
	return strings.Join(strings.Fields(doc.Text(d)), " ")
}
