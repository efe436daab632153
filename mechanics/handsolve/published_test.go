package handsolve

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
)

func equations(steps []Step) (n int) {
	for i := range steps {
		n += len(steps[i].Equations)
	}
	return n
}

// No published body or structure takes more equations than it has unknowns, nor
// more for what is asked; and how often an order has one equation for each
// unknown that is asked, which no hand solution goes below.
func TestPublishedLengths(t *testing.T) {
	cases, shortest := 0, 0
	for _, fx := range fixtures.Published() {
		s := solveText(t, fx.Answered())
		p := s.Problem
		rigid := len(p.Bodies) > 2
		for b := range p.Bodies {
			rigid = rigid || !p.Bodies[b].Particle
		}
		if !rigid || len(p.Unknowns) == 0 || !s.Single() {
			continue
		}
		r, order := find(s, nil), Find(s)
		follow(t, s, &order, p.Asked...)
		of := DependsOn(s, p.Asked)
		all, some := equations(r.Steps), equations(order.Steps)
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
		t.Errorf("only %d of %d orders have one equation for each unknown asked", shortest, cases)
	}
}

// The orders of sources, as far as their printed equations or their titles say
// them: how many equations lead to what is asked.
func TestPublishedOrders(t *testing.T) {
	for _, c := range []struct {
		name  string
		most  int
		order string
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
		s := solveText(t, fx.Answered())
		r := Find(s)
		if got := equations(r.Steps); got > c.most {
			t.Errorf("%s: %d equations, and the source takes %d: %s\n%s", c.name, got, c.most, c.order, tell(&r, s.Problem))
		}
	}
}

// Where members of a truss are asked for, the reactions and one section give them: no
// joint is cut free.
func TestMembersBySection(t *testing.T) {
	for _, name := range []string{"roof-truss-in-the-wind", "truss-by-section", "wall-truss-by-section"} {
		fx, ok := fixtures.Get(name)
		if !ok {
			t.Fatalf("no sheet %s", name)
		}
		s := solveText(t, fx.Answered())
		r := Find(s)
		follow(t, s, &r, s.Problem.Asked...)
		cuts := map[string]bool{}
		for i := range r.Steps {
			for _, e := range r.Steps[i].Equations {
				if !e.Whole && len(e.Cut) == 0 {
					t.Errorf("%s: an equation for the bodies %v\n%s", name, e.Bodies, tell(&r, s.Problem))
				}
				if !e.Whole {
					cuts[fmt.Sprint(e.Cut)] = true
				}
			}
		}
		if len(cuts) != 1 {
			t.Errorf("%s: %d sections\n%s", name, len(cuts), tell(&r, s.Problem))
		}
	}
}

// Each unloaded joint of the step of zero-force members obeys one of the two rules.
func TestZeroForceMembers(t *testing.T) {
	seen := 0
	rng := rand.New(rand.NewPCG(12, 1))
	for range 200 {
		s := solveText(t, truss(rng, 4+rng.IntN(10)))
		r := Find(s)
		for _, step := range r.Steps {
			for _, z := range step.Zero {
				seen++
				for act := range s.Problem.Acts() {
					if act.Body == z.Body && act.Force.Const != (r3.Vec{}) {
						t.Errorf("a load acts at joint %s", s.Problem.Bodies[z.Body].Name)
					}
				}
				direction := func(symbol int) r3.Vec { return s.Problem.Lines[s.Problem.Unknowns[symbol].Line].Legs[0].U }
				apart := func(a, b int) bool { return r3.Norm(r3.Cross(direction(a), direction(b))) > parallelSine }
				two := len(z.Zero) == 2 && len(z.Collinear) == 0 && apart(z.Zero[0], z.Zero[1])
				third := len(z.Zero) == 1 && len(z.Collinear) == 2 && !apart(z.Collinear[0], z.Collinear[1]) && apart(z.Zero[0], z.Collinear[0])
				if !two && !third {
					t.Errorf("neither rule: %v beside %v", z.Zero, z.Collinear)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no truss has a zero-force member")
	}
}
