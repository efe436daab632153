package report

import (
	"os"
	"strings"
	"testing"
	"unicode"

	"trivet/fixtures"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// TestDescribed holds the words for sheets that have every kind of thing; the
// numbers are those of the sheets' own answers.
func TestDescribed(t *testing.T) {
	var got strings.Builder
	for _, name := range []string{"pulley-and-knot", "canopy-cantilever", "boom-and-two-cables", "flap-on-torsion-spring", "camera-on-four-wires", "lamp-pushed-sideways"} {
		f, ok := fixtures.Get(name)
		if !ok {
			t.Fatal("no such sheet")
		}
		s := solution(t, f.Answered())
		got.WriteString(name + "\n" + strings.Join(Described(s.Problem, s), "\n") + "\n\n")
	}
	const file = "testdata/described.txt"
	if *update {
		if err := os.WriteFile(file, []byte(got.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got.String() != string(want) {
		t.Errorf("got\n%s\nwant\n%s", got.String(), want)
	}
}

func TestDescribedBeforeThereIsAResult(t *testing.T) {
	s, err := sheet.Parse([]byte(`plane = "xy"
[points]
D = { at = "0, 0", on = "particle" }
A = "3, x"
B = "3, 4"
[lines]
T = { kind = "cable", path = "D A" }
S = { kind = "strut", path = "D B" }
F = { kind = "force", at = "D", along = "-x", magnitude = "-2 N" }
[joints]
J = { kind = "pin" }
[couples]
M = { on = "beam" }
[distributed]
q = { path = "A B" }
`))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	want := `3 points, 3 lines, 1 joint; in the plane, x to the right, y upwards
point D at (0, 0) m, a particle
point A, does not read yet
point B at (3.00, 4.00) m, fixed to the ground
T: cable, does not read yet
S: strut from D to B, 5.00 m long; unknown
F: force at D along -x; 2.00 N against its direction
J: pin, does not read yet
couple M, does not read yet
load q, does not read yet`
	for _, s := range []*statics.Solution{nil, {Problem: &problem.Problem{}}} {
		if got := strings.Join(Described(p, s), "\n"); got != want {
			t.Errorf("got\n%s\nwant\n%s", got, want)
		}
	}
}

// drawn tells the characters that are pictures rather than text: frames, blocks,
// braille, and the pieces of tall brackets.
func drawn(r rune) bool {
	return r >= 0x2500 && r <= 0x259f || r >= 0x2800 && r <= 0x28ff || r >= 0x239b && r <= 0x23b3
}

func TestLinesHoldNothingThatIsDrawn(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solution(t, f.Answered())
		all := append(Described(s.Problem, s), LineEquations(s)...)
		for _, step := range working.Build(s).Steps {
			lines := doc.Lines(step.Body)
			if len(lines) < len(step.Body) {
				t.Errorf("%s, %s: %d lines of %d blocks", f.Name, step.Title, len(lines), len(step.Body))
			}
			all = append(all, lines...)
		}
		for _, line := range all {
			if strings.TrimSpace(line) == "" || strings.ContainsFunc(line, func(r rune) bool { return unicode.IsControl(r) || drawn(r) }) {
				t.Errorf("%s: %q", f.Name, line)
			}
		}
	}
}

func TestLineEquations(t *testing.T) {
	s := solution(t, `plane = "xy"
[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"
[lines]
T1 = { kind = "cable", path = "D A" }
T2 = { kind = "cable", path = "D B" }
F = { kind = "force", at = "D", along = "-y", magnitude = "60 N" }
`)
	got := LineEquations(s)
	for i, want := range []string{"ΣFx D: -0.6000 T1 + 0.6000 T2 = 0 N, residual ", "ΣFy D: 0.8000 T1 + 0.8000 T2 = 60.000 N, residual "} {
		if i >= len(got) || !strings.HasPrefix(got[i], want) {
			t.Errorf("%q, want %q and so on", got, want)
		}
	}
}
