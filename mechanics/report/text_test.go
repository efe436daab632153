package report

import (
	"flag"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/fixtures"
	"trivet/fixtures/solved"
	"trivet/mechanics/doc"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

var update = flag.Bool("update", false, "write the reports found into testdata")

func solution(t testing.TB, text string) *statics.Solution {
	t.Helper()
	_, s := solved.Sheet(t, text)
	return s
}

// textOf is what solve prints.
func textOf(s *statics.Solution, t *uncertainty.Effect) string { return doc.Text(summary(s, t)) }

var (
	columnOfResiduals = regexp.MustCompile(`(?m) +(residual|[-0-9.]+e[-+][0-9]+ N( m)?)$`)
	residualOfCheck   = regexp.MustCompile(`(?m), (exactly|to within .*)$`)
)

// What solve prints is kept whole, but for how large rounding is, which differs between machines.
func TestTextKept(t *testing.T) {
	f, ok := fixtures.Get("beam-on-supports")
	if !ok {
		t.Fatal("no such sheet")
	}
	text := columnOfResiduals.ReplaceAllString(Results("text", f.Name, solution(t, f.Answered()), nil, false, nil), "  #")
	compare(t, f.Name+".txt", []byte(residualOfCheck.ReplaceAllString(text, ", #")))
}

// What solve prints where there is no single solution: ranges, or why there is none.
func TestTextWithoutASingleSolution(t *testing.T) {
	for name, want := range map[string][]string{
		"camera-on-four-wires": {"indeterminate", "\nUnknowns\n", " .. "},
		"lamp-pushed-sideways": {"no equilibrium", "has no value\n"},
		"pulley-and-knot":      {"statically determinate: every unknown has a single value", "\n  R  = 300 N   tension\n  T  = 90.0 N\n"},
	} {
		f, ok := fixtures.Get(name)
		if !ok {
			t.Fatal("no such sheet")
		}
		got := textOf(solution(t, f.Answered()), nil)
		for _, says := range want {
			if !strings.Contains(got, says) {
				t.Errorf("%s: no %q in\n%s", name, says, got)
			}
		}
	}
}

// A sum that begins with a number stands to the left, as the others do.
func TestSumsStandToTheLeft(t *testing.T) {
	f, _ := fixtures.Get("space-truss")
	text := textOf(solution(t, f.Answered()), nil)
	for _, line := range []string{
		"  ΣFz A  0.8571 AD + Az                      =        0  residual ",
		"  ΣFz D  -0.8571 AD - 0.8571 BD - 0.6000 CD  =  1200.00  residual ",
	} {
		if !strings.Contains(text, line) {
			t.Errorf("there is no line\n%sin\n%s", line, text)
		}
	}
}

// TestTextFitsTheScreen: reports of all sheets keep to 80 columns.
func TestTextFitsTheScreen(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solution(t, f.Answered())
		for line := range strings.Lines(textOf(s, nil)) {
			if w := ansi.StringWidth(strings.TrimRight(line, "\n")); w > doc.TextWidth && len(s.X) <= 4 {
				t.Errorf("%s: %d columns: %s", f.Name, w, line)
			}
			if strings.TrimRight(line, " \n") != strings.TrimRight(line, "\n") {
				t.Errorf("%s: blanks at the end: %q", f.Name, line)
			}
		}
	}
}

// TestWordsOfUnknowns holds what stands beside an unknown.
func TestWordsOfUnknowns(t *testing.T) {
	s := solution(t, `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
Q = { at = "9, 0", on = "particle" }
R = { at = "9, 9", on = "particle" }
[lines]
T = { kind = "cable", at = "P", along = "+x", limit = "200 N" }
S = { kind = "link", at = "P", along = "+y", limit = "20 N" }
F = { kind = "force", at = "P", components = "(-100, 30) N" }
A = { kind = "cable", at = "Q", along = "+y", limit = "192 N" }
B = { kind = "cable", at = "Q", along = "+y" }
N = { kind = "contact", at = "Q", along = "+x" }
W = { kind = "weight", at = "Q", magnitude = "96 N" }
C = { kind = "cable", at = "R", along = "+y", limit = "1 kN" }
D = { kind = "link", at = "R", along = "-y" }
E = { kind = "link", at = "R", along = "+x" }
V = { kind = "link", at = "R", along = "+x" }
`)
	want := map[string][3]string{ // text, sense, use of the limit in per cent
		"T": {"100 N", "tension", "50"},
		"S": {"-30.0 N", "compression", "150"},
		"A": {"0 N .. 96.0 N", "", "50"},
		"B": {"0 N .. 96.0 N", "", ""},
		"N": {"0 N", "none", ""},
		"C": {"at least 0 N", "", "inf"},
		"D": {"at least 0 N", "", ""},
		"E": {"unbounded", "", ""},
		"V": {"unbounded", "", ""},
	}
	for j, x := range s.X {
		got := [3]string{ResultText(s, j), SenseWord(s, j)}
		if _, c := LimitCheck(s, j); c != nil {
			got[2] = percent(c.Value / c.Bound)
			if c.Bound <= 0 {
				t.Errorf("%s: limit %v", x.Name, c.Bound)
			}
		}
		if got != want[x.Name] {
			t.Errorf("%s: %q, want %q", x.Name, got, want[x.Name])
		}
	}
	if len(s.X) != len(want) {
		t.Errorf("%d unknowns", len(s.X))
	}
}
