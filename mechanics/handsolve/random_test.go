package handsolve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// soundCond is up to what condition number random problems are kept: beyond it
// the solver itself loses more figures than the comparison allows.
const soundCond = 1e5

// read solves a random sheet, nil where it is not determinate and sound.
func read(t *testing.T, text string) *statics.Solution {
	t.Helper()
	s := solveText(t, text)
	if len(s.X) == 0 || !s.Unique() || s.Cond > soundCond {
		return nil
	}
	return s
}

func TestPlaneBodies(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 1))
	bodies, unknowns := 0, 0
	for bodies < long.Of(1000, 5000) {
		text := planeBody(rng)
		s := read(t, text)
		if s == nil {
			continue
		}
		r := Find(s)
		one, ok := follow(t, s, &r)
		if !ok || one != len(s.X) {
			t.Fatalf("%d of %d unknowns by one equation, condition %.2g\n%s\n%s", one, len(s.X), s.Cond, text, tell(&r, s.Problem))
		}
		bodies, unknowns = bodies+1, unknowns+one
	}
	t.Logf("%d bodies, %d unknowns, each by one equation", bodies, unknowns)
}

// planeBody is a body in the plane with three reactions of some kinds, loads and couples.
func planeBody(rng *rand.Rand) string {
	var points, lines, joints, couples strings.Builder
	at := map[[2]int]bool{}
	place := func(on string) string {
		name := fmt.Sprintf("P%d", len(at))
		for {
			q := [2]int{rng.IntN(25) - 12, rng.IntN(25) - 12}
			if !at[q] {
				at[q] = true
				fmt.Fprintf(&points, "%s = { at = \"%d, %d\"%s }\n", name, q[0], q[1], on)
				return name
			}
		}
	}
	mine := func() string { return place(", on = \"b\"") }
	along := func() string {
		switch rng.IntN(3) {
		case 0:
			return []string{"+x", "-x", "+y", "-y"}[rng.IntN(4)]
		case 1:
			return fmt.Sprintf("polar(%d deg)", rng.IntN(360))
		}
		return fmt.Sprintf("(%d, %d)", rng.IntN(9)+1, rng.IntN(19)-9)
	}
	mine()
	left := 3
	for left > 0 {
		q := mine()
		switch k := rng.IntN(9); {
		case k == 0 && left == 3:
			fmt.Fprintf(&joints, "%s = { kind = \"fixed\" }\n", q)
			left = 0
		case k <= 2 && left >= 2:
			fmt.Fprintf(&joints, "%s = { kind = \"%s\" }\n", q, []string{"pin", "rough-surface\", normal = \"" + along()}[rng.IntN(2)])
			left -= 2
		case k == 3 && left >= 2:
			fmt.Fprintf(&joints, "%s = { kind = \"collar\", axis = \"%s\" }\n", q, along())
			left -= 2
		case k == 4:
			fmt.Fprintf(&couples, "C%s = { on = \"b\" }\n", q)
			left--
		case k == 5:
			fmt.Fprintf(&joints, "%s = { kind = \"slider\", axis = \"%s\" }\n", q, along())
			left--
		case k == 6:
			fmt.Fprintf(&joints, "%s = { kind = \"rough-surface\", normal = \"+y\", friction = \"0.3\", impending = \"+x\" }\n", q)
			left--
		case k == 7:
			fmt.Fprintf(&joints, "%s = { kind = \"roller\", normal = \"%s\" }\n", q, along())
			left--
		default:
			fmt.Fprintf(&lines, "T%s = { kind = \"link\", path = \"%s %s\" }\n", q, q, place(""))
			left--
		}
	}
	for k := range rng.IntN(4) {
		fmt.Fprintf(&lines, "F%d = { kind = \"force\", at = \"%s\", along = \"%s\", magnitude = \"%d N\" }\n", k, mine(), along(), rng.IntN(900)+1)
	}
	for k := range rng.IntN(2) {
		fmt.Fprintf(&couples, "M%d = { on = \"b\", magnitude = \"%d N m\" }\n", k, rng.IntN(900)-450)
	}
	return "plane = \"xy\"\nup = \"+y\"\n[points]\n" + points.String() + "[lines]\n" + lines.String() + "[joints]\n" + joints.String() + "[couples]\n" + couples.String()
}

// truss builds a simple truss: a triangle, and joint by joint two members more,
// on a pin and a roller. It has 2 joints - 3 members.
func truss(rng *rand.Rand, joints int) string {
	var points, lines strings.Builder
	type xy struct{ x, y float64 }
	at := []xy{{0, 0}, {4, 0}, {2, 3}}
	put := func(a, b int) {
		fmt.Fprintf(&lines, "m%d_%d = { kind = \"link\", path = \"J%d J%d\" }\n", a, b, a, b)
	}
	put(0, 1)
	put(1, 2)
	put(0, 2)
	ends := [][2]int{{0, 1}, {1, 2}, {0, 2}}
	for len(at) < joints {
		n := len(at)
		e := ends[rng.IntN(len(ends))]
		if rng.IntN(3) > 0 {
			e = ends[len(ends)-1-rng.IntN(2)] // a strip more often than a cluster
		}
		a, b := at[e[0]], at[e[1]]
		dx, dy := b.x-a.x, b.y-a.y
		side := float64(rng.IntN(2)*2 - 1)
		s, h := 0.2+0.6*rng.Float64(), side*(0.5+0.6*rng.Float64())
		q := xy{math.Round((a.x+s*dx-h*dy)*8) / 8, math.Round((a.y+s*dy+h*dx)*8) / 8}
		clash := false
		for _, o := range at {
			clash = clash || math.Hypot(o.x-q.x, o.y-q.y) < 0.25
		}
		if clash {
			continue
		}
		at = append(at, q)
		put(e[0], n)
		put(e[1], n)
		ends = append(ends, [2]int{e[0], n}, [2]int{e[1], n})
	}
	for i, q := range at {
		fmt.Fprintf(&points, "J%d = { at = \"%v, %v\", on = \"particle\" }\n", i, q.x, q.y)
	}
	for i := range at {
		if rng.IntN(3) == 0 || i == 2 {
			fmt.Fprintf(&lines, "W%d = { kind = \"force\", at = \"J%d\", along = \"polar(%d deg)\", magnitude = \"%d N\" }\n", i, i, rng.IntN(360), rng.IntN(900)+1)
		}
	}
	roller := 1 + rng.IntN(len(at)-1)
	return "plane = \"xy\"\nup = \"+y\"\n[points]\n" + points.String() + "[lines]\n" + lines.String() +
		fmt.Sprintf("[joints]\nJ0 = { kind = \"pin\" }\nJ%d = { kind = \"roller\", normal = \"+y\" }\n", roller)
}

func TestTrusses(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 2))
	trusses, unknowns := 0, 0
	for trusses < long.Of(100, 400) {
		text := truss(rng, 4+rng.IntN(18))
		s := read(t, text)
		if s == nil {
			continue
		}
		r := Find(s)
		one, ok := follow(t, s, &r)
		if !ok || one != len(s.X) {
			t.Fatalf("%d of %d unknowns by one equation, condition %.2g\n%s\n%s", one, len(s.X), s.Cond, text, tell(&r, s.Problem))
		}
		trusses, unknowns = trusses+1, unknowns+one
	}
	t.Logf("%d trusses, %d unknowns, each by one equation", trusses, unknowns)
}

func TestSpaceParticles(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 3))
	for n := 0; n < 1000; {
		text := "up = \"+z\"\n[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\n"
		lines := "[lines]\nW = { kind = \"weight\", at = \"P\", magnitude = \"700 N\" }\n"
		for k := range 3 {
			text += fmt.Sprintf("A%d = \"%d, %d, %d\"\n", k, rng.IntN(17)-8, rng.IntN(17)-8, rng.IntN(9)+1)
			lines += fmt.Sprintf("T%d = { kind = \"cable\", path = \"P A%d\" }\n", k, k)
		}
		s := read(t, text+lines)
		if s == nil {
			continue
		}
		n++
		r := Find(s)
		if one, ok := follow(t, s, &r); !ok || one != 3 {
			t.Fatalf("%d of 3 unknowns by one equation, or one after another\n%s\n%s", one, text+lines, tell(&r, s.Problem))
		}
		// A direction that is a cross product is for what no sum along a coordinate begins with.
		few := slices.ContainsFunc(s.System.Terms, func(row []linear.Term) bool { return len(row) < 3 })
		if few && r.Steps[0].Kind == One && r.Steps[0].Equations[0].Unnamed() {
			t.Fatalf("not by components\n%s\n%s", text+lines, tell(&r, s.Problem))
		}
	}
}

// The share of unknowns of bodies in space that get an equation of their own:
// what the supports of textbooks leave. The rest is held by screws only.
const spaceShare = 0.85

func TestSpaceBodies(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 5))
	bodies, unknowns, single := 0, 0, 0
	for bodies < 600 {
		text := spaceBody(rng)
		s := read(t, text)
		if s == nil {
			continue
		}
		r := Find(s)
		one, ok := follow(t, s, &r)
		if !ok {
			t.Fatalf("%s\n%s", text, tell(&r, s.Problem))
		}
		bodies, unknowns, single = bodies+1, unknowns+len(s.X), single+one
	}
	share := float64(single) / float64(unknowns)
	t.Logf("%d bodies, %d unknowns, %.1f %% by one equation", bodies, unknowns, 100*share)
	if share < spaceShare {
		t.Errorf("%.3f of the unknowns by one equation, wanted %v", share, spaceShare)
	}
}

// spaceBody is a body in space on supports as textbooks have them.
func spaceBody(rng *rand.Rand) string {
	var points, lines, joints strings.Builder
	n := 0
	place := func(on string) string {
		n++
		fmt.Fprintf(&points, "P%d = { at = \"%d, %d, %d\"%s }\n", n, rng.IntN(13)-6, rng.IntN(13)-6, rng.IntN(13)-6, on)
		return fmt.Sprintf("P%d", n)
	}
	mine := func() string { return place(", on = \"b\"") }
	link := func() {
		q := mine()
		fmt.Fprintf(&lines, "T%s = { kind = \"link\", path = \"%s %s\" }\n", q, q, place(""))
	}
	axes := []string{"+x", "+y", "+z"}
	switch rng.IntN(5) {
	case 0: // ball and socket and two cables, and perhaps a third
		fmt.Fprintf(&joints, "%s = { kind = \"ball-and-socket\" }\n", mine())
		for range 2 + rng.IntN(2) {
			link()
		}
	case 1: // an aligned pair of bearings and a cable
		fmt.Fprintf(&points, "A = { at = \"0, 0, 0\", on = \"b\" }\nB = { at = \"%d, 0, 0\", on = \"b\" }\n", 1+rng.IntN(8))
		joints.WriteString("A = { kind = \"thrust-bearing\", axis = \"+x\", moments = \"none\" }\nB = { kind = \"journal-bearing\", axis = \"+x\", moments = \"none\" }\n")
		link()
	case 2: // a hinge and a cable
		fmt.Fprintf(&joints, "%s = { kind = \"hinge\", axis = %q }\n", mine(), axes[rng.IntN(3)])
		link()
	case 3: // built in
		fmt.Fprintf(&joints, "%s = { kind = \"fixed\" }\n", mine())
	default: // a plate on three rollers and three links
		for range 3 {
			fmt.Fprintf(&joints, "%s = { kind = \"roller\", normal = \"+z\" }\n", mine())
		}
		q := mine()
		fmt.Fprintf(&joints, "%s = { kind = \"journal-bearing\", axis = \"+z\", moments = \"none\" }\n", q)
		link()
	}
	for k := range 1 + rng.IntN(3) {
		fmt.Fprintf(&lines, "F%d = { kind = \"force\", at = \"%s\", along = \"(%d, %d, %d)\", magnitude = \"%d N\" }\n", k, mine(), rng.IntN(9)-4, rng.IntN(9)-4, 1+rng.IntN(5), 1+rng.IntN(900))
	}
	return "up = \"+z\"\n[points]\n" + points.String() + "[lines]\n" + lines.String() + "[joints]\n" + joints.String()
}

// Two hand solutions of one sheet are the same.
func TestSameTwice(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 6))
	for range 20 {
		text := truss(rng, 12)
		s := solveText(t, text)
		a, b := Find(s), Find(s)
		if x, y := tell(&a, s.Problem), tell(&b, s.Problem); x != y {
			t.Fatalf("%s\nand then\n%s", x, y)
		}
	}
}

func BenchmarkTruss60(b *testing.B)  { benchmark(b, truss(rand.New(rand.NewPCG(4, 7)), 32)) }
func BenchmarkTruss150(b *testing.B) { benchmark(b, truss(rand.New(rand.NewPCG(4, 7)), 77)) }

func benchmark(b *testing.B, text string) {
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		b.Fatal(err)
	}
	p, _ := problem.Read(sh)
	s := statics.Solve(p)
	b.ReportAllocs()
	for b.Loop() {
		Find(s)
	}
}
