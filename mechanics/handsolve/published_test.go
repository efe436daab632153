package handsolve

import (
	"testing"

	"trivet/fixtures"
)

func equations(steps []Step) (n int) {
	for i := range steps {
		n += len(steps[i].Equations)
	}
	return n
}

// No published body or structure takes more equations than it has unknowns, nor
// more for what is asked; and how often a route has one equation for each
// unknown that is asked, which no route by hand goes below.
func TestPublishedLengths(t *testing.T) {
	cases, shortest := 0, 0
	for _, fx := range fixtures.Published() {
		s := solveText(t, fx.Text)
		p := s.Problem
		rigid := len(p.Bodies) > 2
		for b := range p.Bodies {
			rigid = rigid || !p.Bodies[b].Particle
		}
		if !rigid || len(p.Unknowns) == 0 || !s.Single() {
			continue
		}
		r, route := find(s, nil), Find(s)
		of := dependsOn(p, p.Asked)
		all, some := equations(r.Steps), equations(route.Steps)
		if all > len(p.Unknowns) || some > all {
			t.Errorf("%s: %d unknowns, %d equations for all and %d for what is asked", fx.Name, len(p.Unknowns), all, some)
		}
		cases++
		if some <= len(of) {
			shortest++
		}
	}
	t.Logf("%d of %d published bodies and structures: one equation for each unknown asked", shortest, cases)
	if 5*shortest < 4*cases {
		t.Errorf("only %d of %d routes have one equation for each unknown asked", shortest, cases)
	}
}

// The routes of sources, as far as their printed equations or their titles say
// them: how many equations lead to what is asked.
func TestPublishedRoutes(t *testing.T) {
	for _, c := range []struct {
		name  string
		most  int
		route string
	}{
		{"truss-by-section", 6, "the three supports, then one section: about G, about C, forces along y (as its title says; the order is assumed)"},
		{"wall-truss-by-section", 3, "one section, three equations (as its title says)"},
		{"moment-about-hinge-line", 1, "one moment about the line (as its title says)"},
		{"moment-about-rod-axis", 1, "one moment about the rod (as its title says)"},
		{"triangle-between-couples", 2, "moments about A, forces along y (common practice)"},
		{"three-hinged-frame", 6, "the whole about A, then a part about its hinge (common practice)"},
		{"lifting-with-the-back", 3, "moments about the pivot, then forces (common practice)"},
	} {
		fx, ok := fixtures.Get(c.name)
		if !ok {
			t.Fatalf("no sheet %s", c.name)
		}
		s := solveText(t, fx.Text)
		r := Find(s)
		if got := equations(r.Steps); got > c.most {
			t.Errorf("%s: %d equations, and the source takes %d: %s\n%s", c.name, got, c.most, c.route, tell(&r, s.Problem))
		}
	}
}
