package report

import (
	"flag"
	"os"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

var update = flag.Bool("update", false, "write the reports found into testdata")

// problemOf reads a sheet's text, which has to read.
func problemOf(t testing.TB, text string) *problem.Problem {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		t.Fatalf("%v at %v\n%s", errs[0], errs[0].Ref, text)
	}
	return p
}

func solved(t testing.TB, text string) *statics.Solution {
	t.Helper()
	return statics.Solve(problemOf(t, text))
}

// residuals are rounding, which differs between machines that fuse a multiplication
// and an addition and those that do not; the golden texts have them as ~.
func withoutRounding(text string) string {
	words := strings.Split(text, " ")
	for i, w := range words {
		for _, e := range []string{"e-1", "0.0e+00", "exactly\n", "exactly"} {
			if strings.Contains(w, e) {
				words[i] = "~"
				if strings.HasSuffix(w, "\n") {
					words[i] += "\n"
				}
			}
		}
	}
	out := strings.Join(words, " ")
	out = strings.ReplaceAll(out, "to ~ of the largest force", "~")
	return strings.ReplaceAll(out, "to ~ of the largest moment", "~")
}

// TestText holds whole reports: in space with capacities in use, in the plane
// with a rope over a pulley, and without a single solution.
func TestText(t *testing.T) {
	for _, name := range []string{"boom-tip", "pulley-and-knot", "camera-on-four-wires", "lamp-pushed-sideways"} {
		t.Run(name, func(t *testing.T) {
			f, ok := fixtures.Get(name)
			if !ok {
				t.Fatal("no such sheet")
			}
			got, file := Text(solved(t, f.Text), nil), "testdata/"+name+".txt"
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if withoutRounding(got) != withoutRounding(string(want)) {
				t.Errorf("got\n%s\nwant\n%s", got, want)
			}
		})
	}
}

// A sum that begins with a number stands to the left, as the others do.
func TestSumsStandToTheLeft(t *testing.T) {
	f, _ := fixtures.Get("space-truss")
	text := Text(solved(t, f.Text), nil)
	for _, line := range []string{
		"  ΣFz A  0.8571 AD + Az                      =        0  left over 0.0e+00 N\n",
		"  ΣFz D  -0.8571 AD - 0.8571 BD - 0.6000 CD  =  1200.00  left over 0.0e+00 N\n",
	} {
		if !strings.Contains(withoutRounding(text), withoutRounding(line)) {
			t.Errorf("there is no line\n%sin\n%s", line, text)
		}
	}
}

// TestTextFitsTheScreen: reports of all sheets keep to 80 columns.
func TestTextFitsTheScreen(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := solved(t, f.Text)
		for line := range strings.Lines(Text(s, nil)) {
			if w := ansi.StringWidth(strings.TrimRight(line, "\n")); w > width && len(s.X) <= 4 {
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
	s := solved(t, `plane = "xy"
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
	want := map[string][4]string{ // text, sense, mark, use of the limit in per cent
		"T": {"100 N", "tension", "T", "50"},
		"S": {"-30.0 N", "compression", "C", "150"},
		"A": {"0 N .. 96.0 N", "", "", "50"},
		"B": {"0 N .. 96.0 N", "", "", ""},
		"N": {"0 N", "none", "", ""},
		"C": {"at least 0 N", "", "", "inf"},
		"D": {"at least 0 N", "", "", ""},
		"E": {"unbounded", "", "", ""},
		"V": {"unbounded", "", "", ""},
	}
	for j, x := range s.X {
		got := [4]string{ResultText(s, j), SenseWord(s, j), SenseMark(s, j)}
		if limit, use, ok := LimitUse(s, j); ok {
			got[3] = percent(use)
			if limit <= 0 {
				t.Errorf("%s: limit %v", x.Name, limit)
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
