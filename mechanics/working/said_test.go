package working

import (
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
)

// told is a working in plain text.
func told(t *testing.T, sheet string) string {
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
	got := told(t, "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"bar\" }\nB = { at = \"2, 0\", on = \"bar\" }\n"+
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
	got := told(t, "plane = \"xy\"\n[given]\nload = \"42 kg\"\n[points]\nA = { at = \"0, 0\", on = \"bar\" }\nB = { at = \"2, 0\", on = \"bar\" }\n"+
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
		got := told(t, "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"bar\" }\nB = { at = \"6, 0\", on = \"bar\" }\n"+
			"[joints]\nA = { kind = \"fixed\" }\n[distributed]\nq = { path = \"A B\", along = \"-y\", magnitude = \""+magnitude+"\" }\n")
		if !strings.Contains(got, want) {
			t.Errorf("%s: no %q in\n%s", magnitude, want, got)
		}
	}
}
