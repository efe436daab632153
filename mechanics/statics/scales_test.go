package statics

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures/long"
	"trivet/mechanics/linear"
)

// Sheets on which a part of the problem, or rounding, was judged by what has nothing to
// do with it.
const (
	// A load hung straight down beside a contact that carries nothing: in ΣFx stands the
	// rounding of a typed length only, 1.8e-15 m of 13.12 ft.
	hungStraight = `plane = "xy"
[points]
p = { at = "-4 m, -3", on = "particle" }
A = "-13.1233595800525 ft, -2"
[lines]
W = { kind = "weight", at = "p", magnitude = "300 N" }
C = { kind = "cable", path = "p A" }
N = { kind = "contact", at = "p", along = "(-1, -1)" }
`
	// A small particle and a large one, which share nothing.
	smallBesideLarge = `plane = "xy"
[points]
p = { at = "0, 0", on = "particle" }
q = { at = "5, 0", on = "particle" }
A = "0, 3"
B = "5, 3"
C = "4, 3"
[lines]
T = { kind = "cable", path = "p A" }
w = { kind = "force", at = "p", along = "%s", magnitude = "%s" }
U = { kind = "cable", path = "q B" }
V = { kind = "cable", path = "q C" }
W = { kind = "force", at = "q", along = "-y", magnitude = "%s" }
`
	// The pull on b is -0.001 N beside 10 MN: b is slack.
	justSlack = `plane = "xy"
[points]
p = { at = "0, 0", on = "particle" }
A = "0, 3"
B = "3, 0"
[lines]
a = { kind = "cable", path = "p A" }
b = { kind = "cable", path = "p B" }
W = { kind = "force", at = "p", along = "(1e-10, -1)", magnitude = "10 MN" }
`
	// Two pins hold a beam: how they share the push along it nobody knows.
	twoPins = `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
M = { at = "1, 1", on = "beam" }
[joints]
A = { kind = "pin" }
B = { kind = "%s" }
[lines]
P = { kind = "force", at = "M", along = "(-1, -2)", magnitude = "100 N" }
`
	// The lines of three links meet in a point but for the place of c.
	nearlyConcurrent = `plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "2, 0", on = "beam" }
D = { at = "4, 0", on = "beam" }
a = "1, 1.5"
b = "2, 1.5"
c = "%s, 1.5"
[lines]
T1 = { kind = "link", path = "A a" }
T2 = { kind = "link", path = "B b" }
T3 = { kind = "link", path = "D c" }
P = { kind = "force", at = "%s", along = "-y", magnitude = "100 N" }
`
	// A load on a line that hardly sags.
	hardlySags = `[points]
P = { at = "0, 0, %s", on = "particle" }
A = "-3, 0, 0.001"
B = "3, 0, 0.001"
C = "0, 4, 0"
[lines]
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", path = "P C" }
W = { kind = "weight", at = "P", magnitude = "100 N" }
`
)

// What a user is told, word for word: says stands among the words of the verdict and of
// the checks, and says not does not.
func TestEachPartIsJudgedByItself(t *testing.T) {
	for _, c := range []struct {
		name, text string
		verdict    Verdict
		values     map[string]float64
		says, not  string
	}{
		{"hung straight down", hungStraight, Determinate, map[string]float64{"C": 300, "N": 0},
			"ΣF = 0 on p, exactly", "is not 0"},
		{"a nanonewton beside a meganewton", fmt.Sprintf(smallBesideLarge, "-y", "1e-9 N", "1 MN"), Determinate, map[string]float64{"T": 1e-9, "U": 1e6, "V": 0},
			"T = 1.00e-9 N in tension", ""},
		{"a millinewton sideways beside ten meganewtons", fmt.Sprintf(smallBesideLarge, "+x", "0.001 N", "10 MN"), NoEquilibrium, nil,
			"p is unsupported in the direction +x: 0.00100 N is unbalanced", "no load acts that way"},
		{"a nanonewton the wrong way beside a meganewton", fmt.Sprintf(smallBesideLarge, "+y", "1e-9 N", "1 MN"), Inadmissible, map[string]float64{"T": -1e-9},
			"T = 1.00e-9 N in compression, which a cable cannot carry", ""},
		{"a slack cable", justSlack, Determinate, map[string]float64{"a": 1e7, "b": 0},
			"b = 0 N: no force", "in tension, which"},
		{"a beam on two pins", fmt.Sprintf(twoPins, "pin"), Indeterminate, nil,
			"Ay = 78.3 N is nevertheless determinate", "three-force member"},
		{"a beam on a pin and a roller", fmt.Sprintf(twoPins, `roller", normal = "+y`), Determinate, nil,
			"the beam is a three-force member: the lines of action of its forces at M, A and B are concurrent at (4.00, 7.00) m", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := solveText(t, c.text)
			if s.Verdict != c.verdict {
				t.Errorf("%v, want %v", s.Verdict, c.verdict)
			}
			for _, x := range s.X {
				if want, ok := c.values[x.Name]; ok && math.Abs(x.Value-want) > 1e-9*math.Abs(want) {
					t.Errorf("%s = %v, want %v", x.Name, x.Value, want)
				}
			}
			all := said(s)
			if !strings.Contains(all, c.says) || c.not != "" && strings.Contains(all, c.not) {
				t.Errorf("said\n%s\nwant %q and not %q", all, c.says, c.not)
			}
		})
	}
}

// said is all that a solution says of itself.
func said(s *Solution) string {
	all := s.Words()
	for _, c := range s.Checks {
		all = append(all, c.Says(s.Problem))
	}
	return strings.Join(all, "\n")
}

func TestNearlyUnsupportedIsSaid(t *testing.T) {
	inFeet := func(text string) string {
		return strings.Replace(text, "[points]", "[units]\nlength = \"ft\"\n[points]", 1)
	}
	for _, c := range []struct{ name, text, want string }{
		{"a tenth of a millimetre off", fmt.Sprintf(nearlyConcurrent, "3.0001", "D"),
			"the beam is nearly unsupported: it can almost rotate about (2.00, 3.00) m; T2 is 20 000 times the largest load, and moving b by 0.1 mm could leave the beam unsupported"},
		{"two millimetres off", fmt.Sprintf(nearlyConcurrent, "3.002", "D"),
			"the beam is nearly unsupported: it can almost rotate about (2.00, 3.00) m; T2 is 1000 times the largest load, and moving b by 0.1 mm could change it by about 11 %"},
		{"where the load does not show it", fmt.Sprintf(nearlyConcurrent, "3.0003", "B"),
			"the beam is nearly unsupported: it can almost rotate about (2.00, 3.00) m; moving B by 0.1 mm could change T2 by about 200 %"},
		{"in feet", inFeet(fmt.Sprintf(nearlyConcurrent, "3.001", "D")),
			"the beam is nearly unsupported: it can almost rotate about (2.00, 3.00) ft; T2 is 2000 times the largest load, and moving b by 0.004 in could change it by about 200 %"},
		{"by a measured place", strings.Replace(fmt.Sprintf(nearlyConcurrent, "3.002", "D"), `b = "2, 1.5"`, `b = "2 m ± 0.2 mm, 1.5"`, 1),
			"the beam is nearly unsupported: it can almost rotate about (2.00, 3.00) m; T2 is 1000 times the largest load, and moving b by its ± of 0.20 mm could change it by about 25 %"},
		{"a line that hardly sags", fmt.Sprintf(hardlySags, "0"),
			"P is nearly unsupported: it can almost move in the z direction; T1 is 1500 times the largest load, and moving P by 0.1 mm could change it by about 11 %"},
		{"ten centimetres off", fmt.Sprintf(nearlyConcurrent, "3.1", "D"), ""},
		{"one link far off", fmt.Sprintf(nearlyConcurrent, "4", "D"), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := ""
			s := solveText(t, c.text)
			for _, k := range s.Checks {
				if k.Kind == CheckSupport {
					got = k.Says(s.Problem)
					if k.OK || s.Well() {
						t.Error("it is well all the same")
					}
				}
			}
			if got != c.want {
				t.Errorf("says\n%s\nwant\n%s", got, c.want)
			}
		})
	}
}

// What the check says that a small movement would do is what solving anew says: a sag of
// 1 mm is 0.9 mm once P is 0.1 mm higher.
func TestNearlyUnsupportedAgainstSolvingAnew(t *testing.T) {
	s, moved := solveText(t, fmt.Sprintf(hardlySags, "0")), solveText(t, fmt.Sprintf(hardlySags, "0.0001"))
	for _, c := range s.Checks {
		if c.Kind == CheckSupport {
			got, want := c.Value, moved.X[c.Unknown].Value/s.X[c.Unknown].Value-1
			if math.Abs(got-want) > 1e-3*want {
				t.Errorf("a change by %v, and solving anew gives %v", got, want)
			}
			return
		}
	}
	t.Error("nothing is said")
}

// The slopes by which that is told are the derivatives of the solution: on random
// rigs, moving a point and solving anew changes the largest unknown as they say.
func TestSlopesAgainstSolvingAnew(t *testing.T) {
	const step = 1e-6 // m
	m := newBodyMaker(77)
	rng := rand.New(rand.NewPCG(77, 1))
	compared := 0
	for compared < 200 {
		r := m.determinate()
		x, _ := m.answer(r.parts)
		r.balance(r.parts, x)
		text := r.text(r.parts)
		s := solveText(t, text)
		if len(s.parts) != 1 || s.Rank != len(s.X) || s.Cond > 100 || len(s.X) == 0 {
			continue
		}
		j := 0
		for i := range s.X {
			if math.Abs(s.X[i].Value) > math.Abs(s.X[j].Value) {
				j = i
			}
		}
		a, _, scale := s.System.scaled()
		g := linear.NewGeneral(a, rankTol)
		e := make([]float64, len(s.X))
		e[j] = 1 / scale[j]
		slope := s.slopes(g.SolveTrans(e))
		k := rng.IntN(len(s.Problem.Points))
		p := s.Problem.Points[k]
		loads := strings.Index(text, "[distributed]")
		if loads >= 0 && strings.Contains(text[loads:], p.Name) {
			continue // the resultant of a distributed load has no point of its own
		}
		d := r3.Unit(r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64()})
		at := func(by float64) float64 {
			v := r3.Add(p.At, r3.Scale(by, d))
			place := fmt.Sprintf("%.17g, %.17g", v.X, v.Y)
			if !s.Problem.Planar {
				place += fmt.Sprintf(", %.17g", v.Z)
			}
			cell := regexp.MustCompile(`(?m)^(` + p.Name + ` = \{ at = ")[^"]*`)
			return solveText(t, cell.ReplaceAllString(text, "${1}"+place)).X[j].Value
		}
		got, want := r3.Dot(slope[k], d), (at(step)-at(-step))/(2*step)
		if size := math.Abs(s.X[j].Value); math.Abs(got-want) > 1e-4*(math.Abs(want)+size) {
			t.Fatalf("%s by the place of %s: %v N/m, and solving anew gives %v (%s is %v)\n%s", s.X[j].Name, p.Name, got, want, s.X[j].Name, size, text)
		}
		compared++
	}
}

// TestPartsOfManySizes puts random rigs side by side whose loads differ by up to 1e-12:
// each is solved, and judged, as if it stood alone. The values are held against exact
// rationals, verdict and words against those of the rig by itself.
func TestPartsOfManySizes(t *testing.T) {
	total := long.Of(60, 300)
	m := newMaker(41)
	rng := rand.New(rand.NewPCG(41, 1))
	verdicts := map[Verdict]int{}
	for range total {
		rigs := make([]*rig, 2+rng.IntN(2))
		planar := rng.IntN(2) == 0
		alone := make([]*Solution, len(rigs))
		text, factor := "", make([]string, len(rigs))
		points, lines := "", ""
		for k := range rigs {
			for rigs[k] == nil || rigs[k].planar != planar || strings.Contains(rigs[k].text(), "components") {
				rigs[k] = m.determinate()
				if rng.IntN(3) == 0 {
					rigs[k] = m.degenerate()
				}
			}
			factor[k] = pick(rng, "1e-6", "1e-3", "1", "1e6")
			if k == 0 {
				factor[k] = "1e-6"
			}
			if k == 1 {
				factor[k] = "1e6"
			}
			one := apart(rigs[k].text(), k, factor[k])
			alone[k] = solveText(t, one)
			text = one[:strings.Index(one, "[points]")]
			points += one[strings.Index(one, "[points]")+len("[points]\n") : strings.Index(one, "[lines]")]
			lines += one[strings.Index(one, "[lines]")+len("[lines]\n"):]
		}
		text += "[points]\n" + points + "[lines]\n" + lines
		all := solveText(t, text)
		verdicts[all.Verdict]++
		order := []Verdict{Determinate, Indeterminate, Inadmissible, NoEquilibrium}
		worst := Determinate
		for _, s := range alone {
			if slices.Index(order, s.Verdict) > slices.Index(order, worst) {
				worst = s.Verdict
			}
		}
		if all.Verdict != worst {
			t.Fatalf("%v, and the worst alone is %v\n%s", all.Verdict, worst, text)
		}
		j := 0
		for k, s := range alone {
			exact := rigs[k].exact().solve()
			times, _ := new(big.Rat).SetString(factor[k])
			for _, x := range s.X {
				got := all.X[j]
				j++
				if all.Verdict == NoEquilibrium {
					continue
				}
				if got.Name != x.Name || got.Fixed != x.Fixed {
					t.Fatalf("%+v, and alone %+v\n%s", got, x, text)
				}
				want, found := exact.value[strings.TrimPrefix(x.Name, prefix(k))]
				if !x.Fixed || !found || !s.Unique() {
					continue
				}
				size, _ := times.Float64()
				if math.Abs(got.Value-want*size) > 1e-9*s.scale() {
					t.Fatalf("%s = %v, want %v of %v\n%s", x.Name, got.Value, want*size, s.scale(), text)
				}
			}
			if all.Verdict == NoEquilibrium {
				continue
			}
			for _, c := range s.Checks {
				if c.Kind != CheckSense {
					continue
				}
				if says := c.Says(s.Problem); !strings.Contains(said(all), says) {
					t.Fatalf("nothing says %q\n%s\n%s", says, said(all), text)
				}
			}
		}
	}
	t.Log(verdicts)
	for _, v := range []Verdict{Determinate, Inadmissible, Indeterminate, NoEquilibrium} {
		if verdicts[v] < total/100 {
			t.Errorf("only %d are %v", verdicts[v], v)
		}
	}
}

func prefix(k int) string { return string(rune('a' + k)) }

var rigNames = regexp.MustCompile(`\b[A-Z][0-9]+\b`)

// apart gives a rig names of its own, and its known loads a factor.
func apart(text string, k int, factor string) string {
	text = rigNames.ReplaceAllStringFunc(text, func(name string) string { return prefix(k) + name })
	text = knownLoad.ReplaceAllString(text, `magnitude = "`+factor+`*$1"`)
	return strings.ReplaceAll(text, "+ 25 N", "+ "+factor+"*25 N")
}

var knownLoad = regexp.MustCompile(`magnitude = "([0-9]+( kg)?)"`)
