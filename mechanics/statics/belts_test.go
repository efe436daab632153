package statics

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/problem"
)

// capstan is a belt round a fixed drum, which two particles pull at along its parts: each
// has one unknown, the tension, or two where pull is "?".
func capstan(belt, pull1, pull2 string) string {
	return fmt.Sprintf(`plane = "xy"
figures = 4
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", %s }
F = { kind = "force", at = "A", along = "dir(C, A)", magnitude = "%s" }
G = { kind = "force", at = "B", along = "dir(C, B)", magnitude = "%s" }
`, belt, pull1, pull2)
}

const gripping = `wrap = "200 deg", friction = "0.3"`

func hasWords(t *testing.T, s *Solution, want string) {
	t.Helper()
	all := s.Words()
	for _, c := range s.Checks {
		all = append(all, c.Says(s.Problem))
	}
	if !slices.Contains(all, want) {
		t.Errorf("%q is not said:\n%s", want, strings.Join(all, "\n"))
	}
}

// What is said of a belt: where it holds, where it slips, and where it is about to.
func TestBeltWords(t *testing.T) {
	for _, c := range []struct{ belt, one, two, verdict, want string }{
		{gripping, "100 N", "210 N", "determinate", "R2/R1 = 2.100 of e^(μβ) = 2.850: belt R does not slip"},
		{gripping, "210 N", "100 N", "determinate", "R1/R2 = 2.100 of e^(μβ) = 2.850: belt R does not slip"},
		{gripping, "100 N", "100 N", "determinate", "R2/R1 = 1.000 of e^(μβ) = 2.850: belt R does not slip"},
		{gripping, "0 N", "0 N", "determinate", "belt R carries no tension"},
		{gripping, "100 N", "800 N", "inadmissible", "R2/R1 = 8.000 exceeds e^(μβ) = 2.850: belt R slips"},
		{gripping, "100 N", "800 N", "inadmissible", "not possible as drawn, partially constrained: belt R would need R2/R1 = 8.000, more than e^(μβ) = 2.850; belt R slips"},
		{gripping, "800 N", "100 N", "inadmissible", "not possible as drawn, partially constrained: belt R would need R1/R2 = 8.000, more than e^(μβ) = 2.850; belt R slips"},
		{gripping, "0 N", "800 N", "inadmissible", "belt R slips: it has a tension of 800.0 N on one side of the drum and none on the other"},
		{gripping, "0 N", "800 N", "inadmissible", "not possible as drawn, partially constrained: belt R would have to carry R2 = 800.0 N with no tension R1; belt R slips"},
		{gripping, "-50 N", "800 N", "inadmissible", "not possible as drawn, partially constrained: the only solution puts belt R1 in compression (50.00 N); R1 goes slack"},
		{gripping, "100 N", "?", "indeterminate", "R2 lies between 35.09 N and 285.0 N"},
		{gripping, "100 N", "?", "indeterminate", "equilibrium is possible with the tensions of belt R within the ratio e^(μβ)"},
		{gripping + `, tight = "R2"`, "100 N", "?", "determinate", "belt R: slip is impending, as specified: R2 = R1 e^(μβ) = 285.0 N"},
		{gripping + `, tight = "R1"`, "100 N", "?", "determinate", "belt R: slip is impending, as specified: R1 = R2 e^(μβ) = 100.0 N"},
		{gripping + `, tight = "R2"`, "0 N", "?", "determinate", "belt R is not in tension, so slip is not impending as specified"},
		{gripping + `, tight = "R2"`, "-100 N", "?", "inadmissible", "belt R is not in tension, so slip is not impending as specified"},
		{gripping, "100 N", "285.01 N", "inadmissible", "R2/R1 = 2.8501 exceeds e^(μβ) = 2.8497: belt R slips"},
		{gripping, "100 N", "285.01 N", "inadmissible", "not possible as drawn, partially constrained: belt R would need R2/R1 = 2.8501, more than e^(μβ) = 2.8497; belt R slips"},
		{gripping + `, limit = "200 N"`, "100 N", "200.001 N", "determinate", "R2 exceeds its limit of 200.0 N: utilisation 100.001 %"},
		{gripping + `, tight = "R2"`, "100 N", "100 N", "no-equilibrium", "belt R: slip is impending"},
		{gripping + `, limit = "150 N"`, "100 N", "210 N", "determinate", "R2 exceeds its limit of 150.0 N: utilisation 140.0 %"},
		{gripping + `, limit = "300 N"`, "210 N", "100 N", "determinate", "R1 is at 70.00 % of its limit of 300.0 N; reserve factor 1.429"},
		{`friction = "0.3"`, "100 N", "120 N", "determinate", "R2/R1 = 1.200 of e^(μβ) = 1.803: belt R does not slip"}, // β = 2 atan(3/2)
	} {
		s := solveText(t, capstan(c.belt, c.one, c.two))
		if s.Verdict.String() != c.verdict {
			t.Errorf("%s, %s and %s: %v, want %s", c.belt, c.one, c.two, s.Verdict, c.verdict)
		}
		if c.verdict != "no-equilibrium" {
			hasWords(t, s, c.want)
		}
	}
}

// The tension of the slack side alone is limited too, once.
func TestBeltLimitIsOfTheLargerTension(t *testing.T) {
	s := solveText(t, capstan(gripping+`, limit = "300 N"`, "210 N", "100 N"))
	limits := 0
	for _, c := range s.Checks {
		if c.Kind == CheckLimit {
			limits++
		}
	}
	if limits != 1 {
		t.Errorf("%d limits are checked", limits)
	}
}

// At the ratio e^(μβ) itself a belt does not slip, a little beyond it does; what is open
// lies between P e^(-μβ) and P e^(μβ); where slip impends the ratio is e^(μβ).
func TestBeltsObeyTheirEquation(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 12))
	const near = 1e-9 // rounding of a ratio
	for range 200 {
		mu, beta, pull := 0.02+rng.Float64(), 0.1+12*rng.Float64(), math.Exp(8*rng.Float64())
		grip := math.Exp(mu * beta)
		if grip > 1e6 {
			continue
		}
		belt := fmt.Sprintf(`wrap = "%.17g rad", friction = "%.17g"`, beta, mu)
		newtons := func(v float64) string { return fmt.Sprintf("%.17g N", v) }
		one, two := newtons(pull), newtons(pull*grip)
		if s := solveText(t, capstan(belt, one, two)); s.Verdict != Determinate {
			t.Errorf("%s: %v at the ratio e^(μβ)", belt, s.Verdict)
		}
		if s := solveText(t, capstan(belt, newtons(pull*1.001), newtons(pull*1.001*grip*1.01))); s.Verdict != Inadmissible || s.Broken[0].Kind != Grip {
			t.Errorf("%s: %v beyond the ratio e^(μβ)", belt, s.Verdict)
		}
		s := solveText(t, capstan(belt, one, "?"))
		for _, x := range s.X {
			if x.Name != "R2" {
				continue
			}
			if math.Abs(x.Low-pull/grip) > near*pull || math.Abs(x.High-pull*grip) > near*pull*grip {
				t.Errorf("%s: from %v to %v, want %v to %v", belt, x.Low, x.High, pull/grip, pull*grip)
			}
			if got := s.Ends(x.HighBy); got != "slip is impending at belt R" {
				t.Errorf("%s: %s", belt, got)
			}
		}
		tight := solveText(t, capstan(belt+`, tight = "R2"`, one, "?"))
		if v, ok := tight.Magnitude(1); !ok || math.Abs(v-pull*grip) > near*pull*grip {
			t.Errorf("%s: R2 = %v, want %v", belt, v, pull*grip)
		}
	}
}

// A belt whose path is typed from its other end has its tensions exchanged.
func TestBeltFromTheOtherEnd(t *testing.T) {
	exchange := strings.NewReplacer(`path = "A C B"`, `path = "B C A"`, `"R1"`, `"R2"`, `"R2"`, `"R1"`)
	names := map[string]string{"R1": "R2", "R2": "R1"}
	for _, c := range [][3]string{
		{gripping, "100 N", "210 N"}, {gripping, "100 N", "900 N"}, {gripping, "?", "80 N"}, {gripping, "?", "?"},
		{gripping + `, tight = "R2"`, "100 N", "?"}, {gripping + `, tight = "R1"`, "?", "90 N"}, {`friction = "0.2"`, "-1 N", "?"},
	} {
		text := capstan(c[0], c[1], c[2])
		a, b := solveText(t, text), solveText(t, exchange.Replace(text))
		if a.Verdict != b.Verdict {
			t.Errorf("%v: %v, and from the other end %v", c, a.Verdict, b.Verdict)
		}
		for i, l := range a.Problem.Lines {
			name := l.Name
			if other, ok := names[name]; ok {
				name = other
			}
			k, _ := b.Problem.Find(name, problem.ALine)
			v, fixed := a.Magnitude(i)
			w, also := b.Magnitude(k.Index)
			if fixed != also || fixed && math.Abs(v-w) > invariance*max(1, math.Abs(v)) {
				t.Errorf("%v: %s = %v (%v), and from the other end %v (%v)", c, l.Name, v, fixed, w, also)
			}
		}
	}
}

// A band brake: the belt leaves the drum at P and Q, and its friction turns the drum with
// (T2 - T1) r.
func TestBandBrake(t *testing.T) {
	s := solveText(t, `plane = "xy"
[points]
A = "-0.2, -1"
B = "0.2, -1"
O = { at = "0, 0", on = "drum" }
P = { at = "-0.2, 0", on = "drum" }
Q = { at = "0.2, 0", on = "drum" }
[lines]
T = { kind = "belt", path = "A P Q B", friction = "0.25", magnitude = "?, 800 N", tight = "T2" }
[joints]
O = { kind = "pin" }
[couples]
M = { on = "drum", about = "+z" }
`)
	q, err := problem.ParseQuery(s.Problem, "M")
	if err != nil {
		t.Fatal(err)
	}
	got, failed := s.Evaluate(q)
	// The drum is turned clockwise by the larger tension at Q, and held by M.
	want := 0.2 * (800 - 800*math.Exp(-0.25*math.Pi))
	if failed != nil || math.Abs(got-want) > 1e-9*want || len(s.Problem.Doubts) > 0 {
		t.Errorf("M = %v, want %v; %v %v", got, want, failed, s.Problem.Doubts)
	}
}

// A belt, a cable and a contact that cannot all be kept: the belt slips.
func TestBeltAmongConflicts(t *testing.T) {
	s := solveText(t, `plane = "xy"
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", wrap = "200 deg", friction = "0.3" }
F = { kind = "force", at = "A", along = "dir(C, A)", magnitude = "100 N" }
G = { kind = "force", at = "B", along = "dir(C, B)", magnitude = "400 N" }
T = { kind = "cable", at = "B", along = "dir(C, B)" }
`)
	if s.Verdict != Inadmissible {
		t.Fatal(s.Words())
	}
	hasWords(t, s, "not possible as drawn, partially constrained: no solution has cable T in tension and the tensions of belt R within the ratio e^(μβ); belt R slips")
}
