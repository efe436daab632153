package statics

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures/long"
	"trivet/mechanics/problem"
)

// beamUnder is a beam of 6 m on two supports under one distributed load.
func beamUnder(magnitude string) string {
	return simpleBeam + fmt.Sprintf("[distributed]\nq = { path = \"A B\", along = \"-y\", magnitude = %q }\n", magnitude)
}

// TestPartlyWetGates: gates wet over any part of their length, leaning any way, with
// the path up or down, pushed from either side, wherever up is.
func TestPartlyWetGates(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 11))
	ups := []struct {
		name string
		v    r3.Vec
	}{{"+y", r3.Vec{Y: 1}}, {"-y", r3.Vec{Y: -1}}, {"+x", r3.Vec{X: 1}}, {"-x", r3.Vec{X: -1}}}
	for range 400 {
		up := ups[rng.IntN(len(ups))]
		slope := 2 * math.Pi * rng.Float64()
		length := 0.5 + 10*rng.Float64()
		a := r3.Vec{X: 20*rng.Float64() - 10, Y: 20*rng.Float64() - 10}
		b := r3.Add(a, r3.Vec{X: length * math.Cos(slope), Y: length * math.Sin(slope)})
		n := r3.Vec{X: -math.Sin(slope), Y: math.Cos(slope)}
		if rng.IntN(2) == 0 {
			n = r3.Scale(-1, n)
		}
		low, high := r3.Dot(a, up.v), r3.Dot(b, up.v)
		share := math.Pow(10, -4*rng.Float64()) // of the length that is wet
		level := min(low, high) + share*math.Abs(high-low)
		switch rng.IntN(8) {
		case 0: // wholly under water
			level = max(low, high) + 10*rng.Float64()
		case 1: // wholly dry
			level = min(low, high) - 1 - rng.Float64()
		case 2: // the waterline at an end
			level = max(low, high)
		}
		width := 0.5 + rng.Float64()
		text := fmt.Sprintf(`plane = "xy"
up = %q
[points]
A = { at = "%v, %v", on = "gate" }
B = { at = "%v, %v", on = "gate" }
[joints]
A = { kind = "fixed" }
[distributed]
q = { kind = "hydrostatic", path = "A B", along = "%v, %v", surface = "%v", width = "%v", density = "1000 kg/m^3" }
`, up.name, a.X, a.Y, b.X, b.Y, n.X, n.Y, level, width)
		s := solveText(t, text)
		area, at := waterOn(level-low, level-high, length)
		f := 9810 * width * area
		get := func(name string) float64 {
			q, qerr := problem.ParseQuery(s.Problem, name)
			if qerr != nil {
				t.Fatal(qerr)
			}
			v, err := s.Evaluate(q)
			if err != nil {
				t.Fatal(err)
			}
			return v
		}
		// The typed levels and coordinates round by some 1e-15 of 30 m, beside a depth of 1e-4 of the gate's height.
		near := func(what string, got, want, size float64) {
			if !(math.Abs(got-want) <= 1e-9*size) {
				t.Errorf("%s = %.15g, want %.15g, share %g:\n%s", what, got, want, share, text)
			}
		}
		near("q.size", get("q.size"), f, max(f, 1e-3))
		if f > 0 {
			near("q.at", get("q.at"), at, length)
		}
		near("Ax", get("Ax"), -f*n.X, max(f, 1e-3))
		near("Ay", get("Ay"), -f*n.Y, max(f, 1e-3))
		near("MA", get("MA"), -f*at*r3.Cross(r3.Sub(b, a), n).Z/length, max(f*length, 1e-3))
		for _, c := range s.Checks {
			if !c.OK || c.Kind == CheckLoad {
				t.Errorf("%s\n%s", c.Says(s.Problem), text)
			}
		}
	}
}

// TestLoadsWithCorners holds intensities with corners, jumps and roots against closed
// forms: areas and centroids of triangles, trapezoids and powers, and the reactions of
// a simple beam as handbooks of beam formulas tabulate them (common practice).
func TestLoadsWithCorners(t *testing.T) {
	// tent is the triangle of height w over 2 h about c, of the area w h.
	reactions := func(area, at float64) map[string]float64 {
		return map[string]float64{"q.size": area, "q.at": at, "B": area * at / 6, "Ay": area * (6 - at) / 6}
	}
	holdValues(t, []closedForm{
		// The gate of the issue: 2 % of its length wet, as an expression.
		{"a ramp over the last hundredth", beamUnder("5 kN/m * max(0, s - 5.94 m)/(1 m)"), reactions(5000*.06*.06/2, 5.98)},
		{"a ramp over the first hundredth", beamUnder("5 kN/m * max(0, 0.06 m - s)/(1 m)"), reactions(5000*.06*.06/2, .02)},
		{"a ramp over the last thousandth of a millimetre", beamUnder("5 MN/m * max(0, s - 5.999999 m)/(1 mm)"), reactions(5e9*1e-6*1e-6/2, 6-1e-6/3)},
		// Load increasing uniformly to the centre: R = W/2 each.
		{"a triangle", beamUnder("4 kN/m * min(s, 6 m - s)/(3 m)"), reactions(12000, 3)},
		{"a narrow tent", beamUnder("5 kN/m * max(0, 1 - abs(s - 2.0123 m)/(1 mm))"), reactions(5, 2.0123)},
		{"a narrow parabola", beamUnder("5 kN/m * max(0, 1 - ((s - 2.0123 m)/(1 mm))^2)"), reactions(5*4./3, 2.0123)},
		{"a trapezoid", beamUnder("2 kN/m * min(s, 2 m, 6 m - s)/(2 m)"), reactions(8000, 3)},
		{"two tents in one", beamUnder("3 kN/m * abs(abs(s - 3 m) - 1 m)/(1 m)"), reactions(3000*(1+2*2), 3)},
		// Uniform load partially distributed, w over b behind a: R1 = w b (2c + b)/(2l).
		{"a uniform load over a part", beamUnder("2 kN/m * (abs(s - 1.1 m)/(s - 1.1 m) - abs(s - 3.7 m)/(s - 3.7 m))/2"),
			map[string]float64{"Ay": 2000 * 2.6 * (2*2.3 + 2.6) / 12, "B": 2000 * 2.6 * (2*1.1 + 2.6) / 12, "q.size": 5200, "q.at": 2.4}},
		{"a step in the middle", beamUnder("1 kN/m * (1 + abs(s - 3 m)/(s - 3 m))"), reactions(6000, 4.5)},
		// ∫ sqrt(s) ds = 2/3 L^1.5, its centroid at 3/5 L.
		{"a root", beamUnder("1 kN/m * sqrt(s/(1 m))"), reactions(1000*2./3*math.Pow(6, 1.5), 3.6)},
		{"a root of a square", beamUnder("1 kN/m * sqrt((s - 1.7 m)^2)/(1 m)"), map[string]float64{"q.size": 500 * (1.7*1.7 + 4.3*4.3)}},
		{"a power of a square", beamUnder("1 kN/m * (((s - 1.7 m)/(1 m))^2)^0.5"), map[string]float64{"q.size": 500 * (1.7*1.7 + 4.3*4.3)}},
		{"hypot of one", beamUnder("1 kN/m * hypot(s - 1.7 m, 0)/(1 m)"), map[string]float64{"q.size": 500 * (1.7*1.7 + 4.3*4.3)}},
		{"a length", beamUnder("1 kN/m * length((s - 1.7 m, 0 m))/(1 m)"), map[string]float64{"q.size": 500 * (1.7*1.7 + 4.3*4.3)}},
		// ∫ e^(-ks) ds = 1/k, ∫ e^(-ks) s ds = 1/k², but for e^(-kL).
		{"steep to the left", beamUnder("1 kN/m * exp(-200*s/(1 m))"), reactions(5, 1./200)},
		{"steep to the right", beamUnder("1 kN/m * exp(200*(s - 6 m)/(1 m))"), reactions(5, 6-1./200)},
		// 39 arches and a part of one: ∫ |sin| = 2 each.
		{"many arches", beamUnder("1 kN/m * abs(sin(1200 deg*s/(1 m)))"), reactions(1000*80/(1200*math.Pi/180), 3)},
		// ∫ (s - 3)³ ds = 0, and ∫ (s - 3)³ s ds = 2·3⁵/5.
		{"no resultant", beamUnder("-1 kN/m * ((s - 3 m)/(1 m))^3"), map[string]float64{"q.size": 0, "Ay": 97200. / 6, "B": -97200. / 6}},
	})
}

// TestRandomCorners: random sums of tents and ramps, against the areas of the triangles.
func TestRandomCorners(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 6))
	for range long.Of(40, 150) {
		var terms []string
		area, moment := 0.0, 0.0
		for range 1 + rng.IntN(4) {
			h := 3 * math.Pow(10, -5*rng.Float64()) // half its width
			c, w := h+(6-2*h)*rng.Float64(), 100+900*rng.Float64()
			terms = append(terms, fmt.Sprintf("%v N/m * max(0, 1 - abs(s - %v m)/(%v m))", w, c, h))
			area, moment = area+w*h, moment+w*h*c
		}
		s := solveText(t, beamUnder(strings.Join(terms, " + ")))
		d := s.Problem.Loads[0]
		if math.Abs(d.Total-area) > 1e-9*area || math.Abs(d.Distance-moment/area) > 1e-9*moment/area {
			t.Errorf("%.12g at %.12g, want %.12g at %.12g: %v", d.Total, d.Distance, area, moment/area, terms)
		}
		if d.Error > problem.LoadTol {
			t.Errorf("an error of %g: %v", d.Error, terms)
		}
	}
}

// TestRandomArches: |sin(ωs + φ)| at any frequency, whose area is 2/ω for each whole
// arch. It is right, or the check says that it is not, and by how much.
func TestRandomArches(t *testing.T) {
	// ∫ |sin| from 0 to x.
	under := func(x float64) float64 {
		n := math.Floor(x / math.Pi)
		return 2*n + 1 - math.Cos(x-n*math.Pi)
	}
	rng := rand.New(rand.NewPCG(12, 7))
	hold := func(deg, phase float64) (doubted bool) {
		w, f := deg*math.Pi/180, phase*math.Pi/180
		want := 10 * (under(6*w+f) - under(f)) / w
		s := solveText(t, beamUnder(fmt.Sprintf("abs(sin(%v deg*s/(1 m) + %v deg))*10 N/m", deg, phase)))
		d := s.Problem.Loads[0]
		off := math.Abs(d.Total-want) / want
		if off > problem.LoadTol && d.Error < off/10 || off > problem.LoadTol && d.Error <= problem.LoadTol {
			t.Errorf("%v deg, %v deg: %.10g N, want %.10g, off by %.1e, and %.1e is said", deg, phase, d.Total, want, off, d.Error)
		}
		return d.Error > problem.LoadTol
	}
	hold(1607*4./6, 37.8) // two kinks between neighbouring probes, of which nothing was said
	for range long.Of(20, 60) {
		deg, phase := 100+3900*rng.Float64(), 180*rng.Float64()
		if hold(deg, phase) {
			t.Errorf("%v deg, %v deg is in doubt", deg, phase)
		}
	}
	for range long.Of(6, 20) { // more arches than corners are followed
		hold(4000*math.Pow(100, rng.Float64()), 180*rng.Float64())
	}
}

// TestLoadCheckWords: what is said of a load that is integrated numerically.
func TestLoadCheckWords(t *testing.T) {
	cases := []struct{ magnitude, says string }{
		{"2 kN/m", ""},
		{"0 kN/m .. 2 kN/m", ""},
		{"2 kN/m^2 * s", "the resultant of the distributed load q is integrated numerically, to within 1.0e-15 of its value"},
		{"5 kN/m * sin(100000 deg*s/(1 m))", "the resultant of the distributed load q is unreliable: its numerical integration is accurate to only "},
	}
	for _, c := range cases {
		s := solveText(t, beamUnder(c.magnitude))
		says, ok := "", true
		for _, check := range s.Checks {
			if check.Kind == CheckLoad {
				says, ok = check.Says(s.Problem), check.OK
				if check.Name() != "distributed load q" {
					t.Errorf("its name is %s", check.Name())
				}
			}
		}
		if !strings.HasPrefix(says, c.says) || (c.says == "") != (says == "") || ok == strings.Contains(says, "unreliable") {
			t.Errorf("%s: %q, ok %v", c.magnitude, says, ok)
		}
		if ok != s.Well() {
			t.Errorf("%s: well is %v", c.magnitude, s.Well())
		}
	}
}
