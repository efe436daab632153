package statics

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/mechanics/problem"
)

// pushed are two things side by side on a smooth floor: 50 N pushes the first, Q holds
// the second, and N is what stands between them.
const pushed = `plane = "xy"
[points]
a = { at = "0, 0", on = "%a" }
b = { at = "2, 0", on = "%b" }
%points
[bodies]
%weights
[lines]
N = { %line }
P = { kind = "force", at = "a", along = "+x", magnitude = "50 N" }
Q = { kind = "force", at = "b", along = "-x" }
[joints]
a = { kind = "smooth-surface", normal = "+y" }
b = { kind = "smooth-surface", normal = "+y" }
`

func pushedBy(line, kind string) string {
	set := []string{"%a", "left", "%b", "right", "%points", `E = { at = "1, 0", on = "left right" }`,
		"%weights", "left = { weight = \"10 N\", centre = \"a\" }\nright = { weight = \"20 N\", centre = \"b\" }", "%line", line}
	if kind == "particles" {
		set = []string{"%a", "particle", "%b", "particle", "%points", "", "%weights", "", "%line", line}
	}
	return strings.NewReplacer(set...).Replace(pushed)
}

func asked(t *testing.T, s *Solution, name string) float64 {
	t.Helper()
	q, bad := problem.ParseQuery(s.Problem, name)
	if bad != nil {
		t.Fatal(bad)
	}
	v, err := s.Evaluate(q)
	if err != nil {
		t.Error(name, err)
	}
	return v
}

// A force or a contact between two bodies acts on both. By hand: ΣFx = 0 of the first
// gives 50 N between them, ΣFx = 0 of the second Q = 50 N, and the force on the first
// is N.x = -50 N. A contact along its path pushes the two apart; a force acts on the
// first along its direction, which is towards the second along a path.
func TestActsOnBoth(t *testing.T) {
	for _, c := range []struct {
		line, of string
		n        float64
	}{
		{`kind = "contact", path = "a b"`, "bodies", 50},
		{`kind = "contact", path = "b a"`, "bodies", 50},
		{`kind = "contact", path = "a b"`, "particles", 50},
		{`kind = "contact", path = "a b", along = "-x"`, "particles", 50},
		{`kind = "contact", at = "E", along = "-x", on = "left right"`, "bodies", 50},
		{`kind = "contact", at = "E", along = "+x", on = "right left"`, "bodies", 50},
		{`kind = "force", path = "a b"`, "bodies", -50},
		{`kind = "force", path = "a b"`, "particles", -50},
		{`kind = "force", path = "a b", along = "-x"`, "particles", 50},
		{`kind = "force", at = "E", along = "polar(180 deg)", on = "left right"`, "bodies", 50},
	} {
		s := solveText(t, pushedBy(c.line, c.of))
		if s.Verdict != Determinate {
			t.Errorf("%s: %s", c.line, s.Words())
			continue
		}
		onFirst := -50.0
		if strings.Contains(c.line, `"b a"`) || strings.Contains(c.line, `"right left"`) {
			onFirst = 50
		}
		for name, want := range map[string]float64{"N": c.n, "Q": 50, "N.x": onFirst, "N.size": 50, "a": 10, "b": 20} {
			if c.of == "particles" && len(name) == 1 && name != "N" && name != "Q" {
				want = 0 // they have no weight
			}
			if got := asked(t, s, name); math.Abs(got-want) > 1e-9 {
				t.Errorf("%s: %s = %v, want %v", c.line, name, got, want)
			}
		}
		for _, check := range s.Checks {
			if !check.OK {
				t.Errorf("%s: %+v fails", c.line, check)
			}
		}
	}
	s := solveText(t, pushedBy(`kind = "force", at = "E", components = "(?, 0) N", on = "left right"`, "bodies"))
	if got := asked(t, s, "Nx"); s.Verdict != Determinate || math.Abs(got+50) > 1e-9 || math.Abs(asked(t, s, "Q")-50) > 1e-9 {
		t.Errorf("by components: Nx = %v, %v", got, s.Verdict)
	}
}

// What two bodies exert on each other adds up to nothing, in force and in moment
// (Newton's third law); a second point of the first body's own only gives a direction.
func TestActionAndReaction(t *testing.T) {
	text := `[points]
A = { at = "1, 2, 3", on = "one" }
B = { at = "-2, 1, 5", on = "two" }
C = { at = "4, -1, 2", on = "one two" }
[lines]
N = { kind = "contact", path = "A B", magnitude = "3 N" }
F = { kind = "force", path = "B A", magnitude = "7 N" }
K = { kind = "force", at = "C", along = "(1, 2, 2)", on = "two one", magnitude = "5 N" }
V = { kind = "contact", at = "C", along = "+z", on = "one two", magnitude = "2 N" }
D = { kind = "force", path = "A C", magnitude = "4 N" }
`
	s := solveText(t, text)
	for i := range s.Problem.Lines {
		l := &s.Problem.Lines[i]
		var f, m r3.Vec
		for _, a := range l.Acts {
			f, m = r3.Add(f, a.Force.Const), r3.Add(m, r3.Cross(a.At, a.Force.Const))
		}
		if l.Name == "D" {
			if len(l.Acts) != 1 {
				t.Errorf("D acts %d times", len(l.Acts))
			}
			continue
		}
		if len(l.Acts) != 2 || l.Acts[0].Body == l.Acts[1].Body || r3.Norm(f) > 1e-12 || r3.Norm(m) > 1e-12 {
			t.Errorf("%s: ΣF = %v, ΣM = %v of %d", l.Name, f, m, len(l.Acts))
		}
	}
}

// Two equal smooth cylinders lie in a box, the upper one leaning on the lower: the line
// of centres rises at 60 degrees. Closed form: N sin 60° = W, and each wall bears
// W cot 60°, the floor 2 W.
func TestCylindersInABox(t *testing.T) {
	s := solveText(t, `plane = "xy"
[points]
U = { at = "cos(60 deg) * 1 m, sin(60 deg) * 1 m", on = "particle" }
L = { at = "0, 0", on = "particle" }
[lines]
WU = { kind = "weight", at = "U", magnitude = "100 N" }
WL = { kind = "weight", at = "L", magnitude = "100 N" }
N = { kind = "contact", path = "U L" }
R = { kind = "contact", at = "U", along = "-x" }
S = { kind = "contact", at = "L", along = "+x" }
F = { kind = "contact", at = "L", along = "+y" }
`)
	wall := 100 / math.Tan(math.Pi/3)
	for name, want := range map[string]float64{"N": 100 / math.Sin(math.Pi/3), "R": wall, "S": wall, "F": 200} {
		if got := asked(t, s, name); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s = %v, want %v", name, got, want)
		}
	}
}

// A smooth block of weight W on a smooth wedge of 20 degrees, kept by a wall: closed
// form P = W tan 20°. Rough and held by friction alone, the same block needs
// F = W sin 20° of N = W cos 20°, within μN while tan 20° < μ.
func TestBlockOnAWedgeOfParticles(t *testing.T) {
	const sheet = `plane = "xy"
[points]
B = { at = "0, 1", on = "particle" }
W = { at = "0, 0", on = "particle" }
[lines]
G = { kind = "weight", at = "B", magnitude = "400 N" }
P = { kind = "force", at = "W", along = "-x" }
[joints]
J = { on = "B W", normal = "polar(110 deg)", kind = `
	const floor = "\nfloor = { kind = \"smooth-surface\", at = \"W\", normal = \"+y\" }\n"
	s := solveText(t, sheet+`"smooth-surface" }`+floor+`wall = { kind = "smooth-surface", at = "B", normal = "+x" }`)
	for name, want := range map[string]float64{"P": 400 * math.Tan(math.Pi/9), "J": 400 / math.Cos(math.Pi/9), "floor": 400} {
		if got := asked(t, s, name); math.Abs(got-want) > 1e-9 {
			t.Errorf("smooth: %s = %v, want %v", name, got, want)
		}
	}
	for mu, verdict := range map[string]Verdict{"0.37": Determinate, "0.36": Inadmissible} {
		s = solveText(t, sheet+`"rough-surface", friction = "`+mu+`" }`+floor)
		if s.Verdict != verdict || math.Abs(asked(t, s, "JN")-400*math.Cos(math.Pi/9)) > 1e-9 || math.Abs(math.Abs(asked(t, s, "JF"))-400*math.Sin(math.Pi/9)) > 1e-9 {
			t.Errorf("rough, %s: %s", mu, s.Words())
		}
	}
}

// The published wedges, which write both reactions by hand, come out alike with a rough
// surface between the two particles (sources: as the sheets name them).
func TestPublishedWedgesWithASurfaceBetweenParticles(t *testing.T) {
	for _, c := range []struct{ name, from, to, surface string }{
		{"wedge-that-raises-a-block", "N1 = ", "N2 = ", `N1 = { kind = "rough-surface", on = "B W", normal = "polar(82 deg)", friction = "mu", impending = "polar(172 deg)" }`},
		{"wedge-that-lowers-a-block", "N1 = ", "N2 = ", `N1 = { kind = "rough-surface", on = "B W", normal = "polar(82 deg)", friction = "mu", impending = "polar(-8 deg)" }`},
		{"wedge-that-would-slide-out", "N2 = ", "n2 = ", `N2 = { kind = "rough-surface", on = "B W", normal = "polar(65 deg)", friction = "mu", impending = "polar(-25 deg)" }`},
	} {
		found := false
		for _, f := range fixtures.Published() {
			if f.Name != c.name {
				continue
			}
			found = true
			before, rest, _ := strings.Cut(f.Answered(), "\n"+c.from)
			_, rest, _ = strings.Cut(rest, "\n"+c.to)
			var kept []string
			for _, line := range strings.Split(c.to+rest, "\n") {
				if !strings.HasPrefix(line, "n") && !strings.HasPrefix(line, "f") { // the reactions by hand
					kept = append(kept, line)
				}
			}
			text, answers, _ := strings.Cut(before+"\n"+strings.Join(kept, "\n"), "[answers]")
			text = strings.Replace(text, "\nasked ", "\nx-asked ", 1) // it asks for N1 or N2, which is a joint now
			s, by := solveText(t, text+"[joints]\n"+c.surface+"\n[answers]"+answers), solveText(t, f.Text)
			if s.Verdict != Determinate || math.Abs(asked(t, s, "P")-asked(t, by, "P")) > 1e-9*asked(t, by, "P") {
				t.Errorf("%s: P = %v, and %v with its reactions by hand", c.name, asked(t, s, "P"), asked(t, by, "P"))
			}
			if len(s.Answers) != 1 || !s.Answers[0].OK {
				t.Errorf("%s: the printed answer is not met", c.name)
			}
		}
		if !found {
			t.Errorf("no sheet %s", c.name)
		}
	}
}
