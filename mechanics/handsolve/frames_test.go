package handsolve

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/statics"
)

// frame is some bodies pinned to each other and to the ground at random, with
// links among them: determinate or not.
func frame(rng *rand.Rand, planar bool) string {
	var points, lines, joints strings.Builder
	bodies := 2 + rng.IntN(4)
	n := 0
	taken := map[string]bool{}
	place := func(on string) string {
		n++
		at := ""
		for at == "" || taken[at] {
			at = fmt.Sprintf("%d, %d", rng.IntN(17)-8, rng.IntN(17)-8)
			if !planar {
				at += fmt.Sprintf(", %d", rng.IntN(17)-8)
			}
		}
		taken[at] = true
		if on != "" {
			on = fmt.Sprintf(", on = %q", on)
		}
		fmt.Fprintf(&points, "P%d = { at = \"%s\"%s }\n", n, at, on)
		return fmt.Sprintf("P%d", n)
	}
	name := func(b int) string { return fmt.Sprintf("b%d", b) }
	pin := "pin"
	if !planar {
		pin = "ball-and-socket"
	}
	for b := range bodies {
		place(name(b))
		switch k := rng.IntN(12); {
		case k == 0:
			fmt.Fprintf(&joints, "%s = { kind = \"fixed\" }\n", place(name(b)))
		case k < 4:
			fmt.Fprintf(&joints, "%s = { kind = \"roller\", normal = \"+y\" }\n", place(name(b)))
		case k < 8:
			fmt.Fprintf(&joints, "%s = { kind = %q }\n", place(name(b)), pin)
		}
		if b > 0 {
			fmt.Fprintf(&joints, "%s = { kind = %q }\n", place(name(b-1)+" "+name(b)), pin)
		}
		if rng.IntN(4) == 0 {
			q := place(name(b))
			fmt.Fprintf(&lines, "T%s = { kind = \"link\", path = \"%s %s\" }\n", q, q, place(""))
		}
		if rng.IntN(3) > 0 {
			fmt.Fprintf(&lines, "W%d = { kind = \"force\", at = \"%s\", along = \"-y\", magnitude = \"%d N\" }\n", b, place(name(b)), 1+rng.IntN(900))
		}
		if rng.IntN(2) == 0 && b > 0 {
			q := place(name(b))
			fmt.Fprintf(&lines, "L%s = { kind = \"link\", path = \"%s %s\" }\n", q, q, place(name(rng.IntN(b))))
		}
	}
	head := "up = \"+y\"\n"
	if planar {
		head += "plane = \"xy\"\n"
	}
	return head + "[points]\n" + points.String() + "[lines]\n" + lines.String() + "[joints]\n" + joints.String()
}

// Whatever is put together, a hand solution gives every unknown that has a value and no
// other, and every value is the solver's.
func TestFrames(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 8))
	kinds := map[statics.Verdict]int{}
	unknowns, single := 0, 0
	for range long.Of(200, 800) {
		text := frame(rng, rng.IntN(3) > 0)
		s := solveText(t, text)
		if s.Cond > soundCond {
			continue
		}
		kinds[s.Verdict]++
		r := Find(s)
		one, ok := follow(t, s, &r)
		if !ok {
			t.Fatalf("%s, condition %.2g\n%s\n%s", s.Verdict, s.Cond, text, tell(&r, s.Problem))
		}
		if s.Verdict == statics.NoEquilibrium {
			if len(r.Steps) > 0 || r.Why != NoEquilibrium {
				t.Fatalf("no equilibrium, and a hand solution of %d steps, %d", len(r.Steps), r.Why)
			}
			continue
		}
		for _, x := range s.X {
			if x.Fixed {
				unknowns++
			}
		}
		single += one
	}
	t.Logf("%v; %d unknowns with a value, %d by one equation", kinds, unknowns, single)
}

// Six links in general position hold a body by screws alone: no direction and no
// axis leaves one of them alone, and some are solved together.
func TestSixLinks(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 9))
	for n := 0; n < 50; {
		text := "up = \"+z\"\n[points]\nO = { at = \"0, 0, 0\", on = \"b\" }\n"
		lines := "[lines]\nW = { kind = \"weight\", at = \"O\", magnitude = \"700 N\" }\n"
		for k := range 6 {
			text += fmt.Sprintf("B%d = { at = \"%d, %d, %d\", on = \"b\" }\nG%d = \"%d, %d, %d\"\n", k, rng.IntN(41)-20, rng.IntN(41)-20, rng.IntN(41)-20,
				k, rng.IntN(41)-20, rng.IntN(41)-20, rng.IntN(41)+30)
			lines += fmt.Sprintf("T%d = { kind = \"link\", path = \"B%d G%d\" }\n", k, k, k)
		}
		s := read(t, text+lines)
		if s == nil {
			continue
		}
		n++
		r := Find(s)
		if _, ok := follow(t, s, &r); !ok {
			t.Fatal(text + lines)
		}
		if first := &r.Steps[0]; first.Kind != Together || !first.Screw || len(first.Equations) < 3 {
			t.Fatalf("%s\n%s", text+lines, tell(&r, s.Problem))
		}
	}
}
