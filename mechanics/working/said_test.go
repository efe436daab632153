package working

import (
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
)

// told is a working in plain text.
func textOf(t *testing.T, sheet string) string {
	t.Helper()
	p := read(t, sheet)
	if p == nil {
		t.Fatalf("does not read:\n%s", sheet)
	}
	d := &doc.Doc{}
	for _, step := range Build(statics.Solve(p)).Steps {
		d.Sections = append(d.Sections, doc.Section{Title: step.Title, Blocks: step.Body})
	}
	return doc.Text(d)
}

// Known forces that do not balance are added; nothing claims that they do.
func TestAResultantThatIsNotExpectedClaimsNoEquilibrium(t *testing.T) {
	got := textOf(t, "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"bar\" }\nB = { at = \"2, 0\", on = \"bar\" }\n"+
		"[lines]\nF = { kind = \"force\", at = \"B\", along = \"(0, -1)\", magnitude = \"10 N\" }\n")
	for _, no := range []string{"equations", "second point", "satisfy"} {
		if strings.Contains(got, no) {
			t.Errorf("%q is said of known forces that do not balance:\n%s", no, got)
		}
	}
	if !strings.Contains(got, "the known forces are added") {
		t.Errorf("no word of the sum:\n%s", got)
	}
}

// A weight typed as a mass is derived, of a line and of a body, also through a given.
func TestAMassIsWeighed(t *testing.T) {
	got := textOf(t, "plane = \"xy\"\n[given]\nload = \"42 kg\"\n[points]\nA = { at = \"0, 0\", on = \"bar\" }\nB = { at = \"2, 0\", on = \"bar\" }\n"+
		"[bodies]\nbar = { weight = \"100 kg\", centre = \"(A + B)/2\" }\n[lines]\nW = { kind = \"weight\", at = \"B\", magnitude = \"load\" }\n"+
		"[joints]\nA = { kind = \"fixed\", at = \"A\" }\n")
	for _, want := range []string{"W = m g = (42)(9.81) = 412.02 N", "W_bar = m g = (100)(9.81) = 981 N"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not derived:\n%s", want, got)
		}
	}
}

// The triangle of a trapezoid is written with the intensities that the sheet gives, falling and rising.
func TestTheTriangleOfATrapezoidShowsItsSubtraction(t *testing.T) {
	for magnitude, want := range map[string]string{"200 N/m .. 500 N/m": "R_2 = 1/2 · 6 (500 - 200) = 900 N", "500 N/m .. 200 N/m": "R_2 = 1/2 · 6 (500 - 200) = 900 N"} {
		got := textOf(t, "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"bar\" }\nB = { at = \"6, 0\", on = \"bar\" }\n"+
			"[joints]\nA = { kind = \"fixed\" }\n[distributed]\nq = { path = \"A B\", along = \"-y\", magnitude = \""+magnitude+"\" }\n")
		if !strings.Contains(got, want) {
			t.Errorf("%s: no %q in\n%s", magnitude, want, got)
		}
	}
}

// A force with a known and an unknown component has a symbol for each, subscripted, and no step calls the
// known one by the name of the whole.
func TestComponentsOfAForceAreSubscripted(t *testing.T) {
	got := textOf(t, "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"beam\" }\nC = { at = \"3, 1\", on = \"beam\" }\nB = { at = \"6, 0\", on = \"beam\" }\n"+
		"[joints]\nA = { kind = \"pin\" }\n[lines]\nF = { kind = \"force\", at = \"C\", components = \"(100 N, ?)\" }\n"+
		"G = { kind = \"force\", at = \"B\", along = \"(3, -4)\", magnitude = \"50 N\" }\n")
	for _, want := range []string{"ΣM_A = 3 Fy - Fx - 6 · 0.8 G = 0", "ΣM_A = 3 Fy - 100 - 4.8 · 50 = 0", "ΣFx = Ax + Fx + 0.6 G = 0"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is not derived:\n%s", want, got)
		}
	}
}

// Where slip impends, the friction has the name and the sign that it has where slip does not.
func TestFrictionHasOneName(t *testing.T) {
	for slip, want := range map[string][]string{
		"+x": {"AF = -μ AN = -0.3 AN", "AF = -0.3 AN = -0.3 · 100 = -30.0 N", "ΣFx = P + AF = 0"},
		"-x": {"AF = μ AN = 0.3 AN", "AF = 0.3 AN = 0.3 · 100 = 30.0 N", "ΣFx = P + AF = 0"},
	} {
		got := textOf(t, "plane = \"xy\"\nasked = \"P AF\"\n[points]\nA = { at = \"0, 0\", on = \"particle\" }\n[lines]\nW = { kind = \"force\", at = \"A\", along = \"-y\", magnitude = \"100 N\" }\n"+
			"P = { kind = \"force\", at = \"A\", along = \"+x\" }\n[joints]\nA = { kind = \"rough-surface\", normal = \"+y\", friction = \"0.3\", impending = \""+slip+"\" }\n")
		for _, want := range want {
			if !strings.Contains(got, want) {
				t.Errorf("slip along %s: no %q in\n%s", slip, want, got)
			}
		}
		if strings.Contains(got, "F_A") {
			t.Errorf("slip along %s: F_A is another name of AF:\n%s", slip, got)
		}
	}
}
