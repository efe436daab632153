package tutor

import (
	"math"
	"strings"
	"testing"

	"trivet/fixtures/leak"
	"trivet/units"
)

// leaks is a sheet whose values have three figures, as many as are shown, that nothing typed
// has.
const leaks = `
plane = "xy"
up    = "+y"
asked = "Ax Ay B"

[units]
length = "m"
force  = "N"

[points]
A = { at = "0, 0", on = "beam" }
C = { at = "1.7, 0", on = "beam" }
D = { at = "4.1, 0", on = "beam" }
B = { at = "6.1, 0", on = "beam" }

[lines]
P = { kind = "force", at = "C", along = "(5, -7)", magnitude = "523 N" }
Q = { kind = "weight", at = "D", magnitude = "617 N" }

[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }
`

// Nothing that comes back, to whatever is entered, shows a value or a coefficient that was
// not typed; no hint does below its last stage.
func TestNothingLeaks(t *testing.T) {
	entries := []string{
		"cut beam: Ax", "cut beam: Ax Ay B P Q", "cut beam: B pulls", "u P = (1, 0)", "u P = (-0.58, 0.81)", "F P = (1, 2) N", "F P = P (1, 0)",
		"M A P = 3 N m", "M A P = (1, 2) N m", "M A Q = 2000 N m", "ΣFx: Ax = 0", "ΣFx beam: Ax = 1", "ΣFx beam: Ax + P = 0", "ΣFy: Ay = B", "ΣFy: Ay + B = 0",
		"ΣFy: Ay + B - Q - P = 0", "ΣFy: Ay + B - Q = 300", "ΣFy: Ay - B = Q", "ΣM A: B = 0", "ΣM A: 6.1 B = 0", "ΣM A: 6.1 B = 4.1*617", "ΣM A: 6.1 B - 1.7*523 - 4.1*617 = 0",
		"ΣM B: 6.1 Ay = 3", "ΣM A: 6 B = 3200", "ΣM D: Ay = B", "Ax = 300", "Ax = -300 N", "Ax = 299 N", "Ay = 1", "Ay = 0.5 kN", "B = 100", "B = -540 N", "B = 541 N", "B = 540 kN",
		"A.size = 1 N", "A.angle = 1 deg", "B.y = 1 N", "P.x = 1 N", "P.alpha = 3 deg", "Ax = Ay", "2*B = 3", "B = B", "Ay =", "B = ?", "B > 3", "determinate", "indeterminate 1", "inadmissible", "no equilibrium",
		"A slips", "tips about D", "0 = 0", "Ax", "B.", "ΣFx", "ΣF along P: B = 0", "ΣF along (1, 1): Ax = 0", "beam.loads.x = 3 N", "0.3 Ax + 0.2 Ay = B",
	}
	p := practice(t, leaks)
	var secret []float64
	for i := range p.Problem.Unknowns {
		secret = append(secret, p.solution.X[i].Value)
	}
	for i := range p.forces { // parts of the known forces
		if f := &p.forces[i]; f.unknown < 0 {
			for _, s := range p.elementary(only(p.Problem, 0)) {
				secret = append(secret, s.part(f))
			}
		}
	}
	for _, s := range p.elementary(only(p.Problem, 0)) {
		for _, c := range s.exact(p.forces, len(p.Problem.Unknowns)) {
			if n := strings.TrimRight(units.Figures(math.Abs(c), 4), "0"); len(strings.ReplaceAll(n, ".", "")) > 3 {
				secret = append(secret, c)
			}
		}
	}
	typed := strings.Join(entries, " ") + leaks
	for _, rounds := range [][]string{entries, {"ΣFx: Ax + 304 = 0", "ΣFy: Ay + B - 617 - 425.6 = 0"}} {
		p := practice(t, leaks)
		for _, entry := range append(rounds, entries...) {
			said := p.Enter(entry)
			all := said.Says + " " + said.Is
			if said.Error != nil {
				all += said.Error.Error()
			}
			if h := p.Hint(); h.Stage < stages {
				all += " " + h.Says
			}
			for _, v := range secret {
				if v != 0 && !leak.Shows(typed, v, 3) && leak.Shows(all, v, 3) {
					t.Errorf("%s shows %.5g:\n%s", entry, v, all)
				}
			}
		}
	}
}

// The look-out for leaks sees one: the last hint has its coefficients.
func TestALeakIsSeen(t *testing.T) {
	p := practice(t, leaks)
	for range stages - 1 {
		p.Hint()
	}
	if says := p.Hint().Says; !leak.Shows(says, 3250, 3) || leak.Shows(says, 7300, 3) {
		t.Errorf("nothing is seen in %s", says)
	}
}
