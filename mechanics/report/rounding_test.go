package report

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// residues are the places where a page says by how much sums are off: there alone
// rounding may show.
var residues = regexp.MustCompile(`to\s+within\s+[0-9.]+e-[0-9]+(\s+of\s+the\s+largest\s+(force|moment))?|residual .*`)

// residueColumn is the last of the rows of the system, behind the body's name.
var residueColumn = regexp.MustCompile(`(?m)^( +Σ[FM][xyz] [^=\n][^\n]*) [-0-9.]+e[-+][0-9]+ [A-Za-z ]+$`)

// tiny is a number that only rounding makes, and one a coefficient of 1 that is written.
var (
	tiny = regexp.MustCompile(`[0-9]e-1[0-9]|10\^\{-1[0-9]\}|10⁻¹`)
	one  = regexp.MustCompile(`(?m)(^|[ (=+−-])1( |\\thinspace )[A-Z]([0-9]+|_[0-9{]|[A-Za-z]*[0-9])`)
)

// TestRoundingReachesNoPage writes the sheets of the project and random ones, whose
// geometry is turned so that right angles and forces through a point are there but for
// rounding, in every format.
func TestRoundingReachesNoPage(t *testing.T) {
	look := func(name, text string) {
		sh, err := sheet.Parse([]byte(text))
		if err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		p, errs := problem.Read(sh)
		if len(errs) > 0 {
			return // two random points at one place
		}
		s := statics.Solve(p)
		for _, c := range s.Checks {
			if (c.Kind == statics.CheckResidual || c.Kind == statics.CheckMoment) && !c.OK && s.Verdict != statics.NoEquilibrium {
				t.Errorf("%s: %s\n%s", name, c.Says(p), text)
			}
		}
		for _, format := range []string{"text", "markdown", "latex"} {
			for line := range strings.Lines(residueColumn.ReplaceAllString(residues.ReplaceAllString(Results(format, name, s, nil, true, nil), ""), "$1")) {
				if tiny.MatchString(line) || one.MatchString(line) {
					t.Errorf("%s, %s: %s\n%s", name, format, line, text)
				}
			}
		}
		var read any
		if err := json.Unmarshal(JSON(name, s, nil), &read); err != nil {
			t.Fatal(err)
		}
		walk("", read, func(key string, x float64) {
			if x != 0 && math.Abs(x) < 1e-10 && key != "residual" && key != "relative" {
				t.Errorf("%s, json: %s = %v\n%s", name, key, x, text)
			}
		})
	}
	for _, s := range long.OfEach(append(fixtures.Starts(), fixtures.Published()...), fixtures.Sheet.Group) {
		look(s.Name, s.Answered())
	}
	total := long.Of(60, 200)
	rng := rand.New(rand.NewPCG(11, 10))
	for k := range total {
		look(fmt.Sprint("turned ", k), turned(rng))
		if t.Failed() {
			return
		}
	}
}

func walk(key string, of any, see func(string, float64)) {
	switch of := of.(type) {
	case map[string]any:
		for k, v := range of {
			walk(k, v, see)
		}
	case []any:
		for _, v := range of {
			walk(key, v, see)
		}
	case float64:
		see(key, of)
	}
}

// turned is a sheet of particles or of a body whose points lie on a lattice, which was
// turned about an axis, and typed to 17 figures as a program would write it.
func turned(rng *rand.Rand) string {
	planar := rng.IntN(2) == 0
	turn := r3.NewRotation(math.Pi/12*float64(rng.IntN(24)), r3.Vec{Z: 1})
	if !planar {
		turn = r3.NewRotation(math.Pi/2*float64(rng.IntN(4)), pick(rng, r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}))
		if rng.IntN(3) == 0 {
			turn = r3.NewRotation(2*math.Pi/3, r3.Vec{X: 1, Y: 1, Z: 1})
		}
	}
	size := pick(rng, 1, 0.5, 1.3, 0.3048, 0.0254, 3)
	shift := r3.Vec{X: pick(rng, 0, 1.1, -4), Y: pick(rng, 0, 2.54, 7)}
	tuple := func(v r3.Vec) string {
		if planar {
			return fmt.Sprintf("%.17g, %.17g", v.X, v.Y)
		}
		return fmt.Sprintf("%.17g, %.17g, %.17g", v.X, v.Y, v.Z)
	}
	points, lines, joints := "[points]\n", "[lines]\n", "[joints]\n"
	serial := 0
	put := func(v r3.Vec, on string) string {
		serial++
		points += fmt.Sprintf("P%d = { at = \"%s\"%s }\n", serial, tuple(r3.Add(turn.Rotate(r3.Scale(size, v)), shift)), on)
		return fmt.Sprint("P", serial)
	}
	seen := map[r3.Vec]bool{}
	spot := func() r3.Vec {
		for {
			v := r3.Vec{X: float64(rng.IntN(9) - 4), Y: float64(rng.IntN(9) - 4)}
			if !planar {
				v.Z = float64(rng.IntN(9) - 4)
			}
			if !seen[v] {
				seen[v] = true
				return v
			}
		}
	}
	way := func(of ...r3.Vec) string { return "(" + tuple(turn.Rotate(pick(rng, of...))) + ")" }
	x, y, z, slope := r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}, r3.Vec{X: 3, Y: -4}
	if planar {
		z = y
	}
	line := func(kind, from, to string) {
		lines += fmt.Sprintf("T%d = { kind = %q, path = \"%s %s\" }\n", serial, kind, from, to)
	}
	load := func(at string) {
		lines += fmt.Sprintf("F%s = { kind = \"force\", at = %q, along = \"%s\", magnitude = \"%d N\" }\n", at, at, way(x, y, z, slope), 20+rng.IntN(900))
	}
	body := ", on = \"b\""
	switch {
	case rng.IntN(3) == 0: // a particle on axes and slopes
		at := spot()
		p := put(at, ", on = \"particle\"")
		for range 2 + (map[bool]int{false: 1})[planar] {
			line(pick(rng, "link", "cable", "strut"), p, put(r3.Add(at, r3.Scale(float64(1+rng.IntN(3)), pick(rng, x, y, z, slope))), ""))
		}
		load(p)
	case planar: // a beam on a pin, and a roller or a link
		joints += put(spot(), body) + " = { kind = \"pin\" }\n"
		q := put(spot(), body)
		if rng.IntN(2) == 0 {
			joints += fmt.Sprintf("%s = { kind = \"roller\", normal = \"%s\" }\n", q, way(x, y, slope))
		} else {
			line("link", q, put(spot(), ""))
		}
		load(put(spot(), body))
		load(put(spot(), body))
	default: // a body on a socket and links, a hinge and a link, or built in
		q := put(spot(), body)
		switch rng.IntN(3) {
		case 0:
			joints += q + " = { kind = \"ball-and-socket\" }\n"
			for range 3 {
				line("link", put(spot(), body), put(spot(), ""))
			}
		case 1:
			joints += fmt.Sprintf("%s = { kind = \"hinge\", axis = \"%s\" }\n", q, way(x, y, z))
			line("link", put(spot(), body), put(spot(), ""))
		default:
			joints += q + " = { kind = \"fixed\" }\n"
		}
		load(put(spot(), body))
	}
	head := pick(rng, "", "[units]\nlength = \"ft\"\nforce = \"lbf\"\n")
	if planar {
		head = "plane = \"xy\"\n" + head
	}
	return head + points + lines + joints
}

func pick[T any](rng *rand.Rand, from ...T) T { return from[rng.IntN(len(from))] }

// What once stood on printed solutions, and what stands there now.
func TestRoundingOnceSeen(t *testing.T) {
	for _, c := range []struct{ title, line, was string }{
		{"Gate that opens by itself", "Ax, Ay and R_q pass through A and have no moment about it.", "M_Rq = -(1.110e-16)(-22.07) = 2.451e-15 kN m"},
		{"Force in a bridle's leg, by its angle", "ΣFy = -0.866025 T60 - 0.866025 S60 + 1000 = 0", "ΣFx = 3.88578e-16 T60 = 0"},
		{"Force in a bridle's leg, by its angle", "ΣFy = -T30 + 1000 = 0", "ΣFy = -1 T30 + 1000 = 0"},
		{"Block on a smooth incline held by a rope", "ΣF_n = N - 0.8660 G = 0", "ΣF_n = 1 N - 0.8660 G = 0"},
	} {
		for _, s := range append(fixtures.Starts(), fixtures.Published()...) {
			p := solution(t, s.Answered()).Problem
			if p.Title != c.title {
				continue
			}
			text := Results("text", s.Name, statics.Solve(p), nil, true, nil)
			if !strings.Contains(text, c.line) || strings.Contains(text, c.was) {
				t.Errorf("%s does not say %q, or says %q:\n%s", c.title, c.line, c.was, text)
			}
			c.title = ""
		}
		if c.title != "" {
			t.Errorf("there is no sheet %s", c.title)
		}
	}
}
