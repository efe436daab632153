package report

import (
	"strings"
	"testing"

	"trivet/fixtures"
)

func TestCheckLine(t *testing.T) {
	const sound = `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
[lines]
T = { kind = "cable", at = "P", along = "+y", limit = "90 N" }
H = { kind = "link", at = "P", along = "+x" }
W = { kind = "weight", at = "P", magnitude = "50 N" }
`
	for _, c := range []struct {
		name, text string
		well       bool
		want       string
	}{
		{"sound", sound, true, "ok    a.toml: determinate, 8 checks"},
		{"with an answer", sound + "[answers]\nT = \"50 N\"\n", true, "ok    a.toml: determinate, 8 checks, 1 reference answer met"},
		{"over its limit", strings.Replace(sound, "90 N", "40 N", 1), false, "FAILS a.toml: T exceeds its limit of 40.0 N: utilisation 125 %"},
		{"over its limit within the ±", strings.Replace(sound, "50 N", "80 N ± 12 N", 1), false,
			"FAILS a.toml: at risk: T could reach 92.0 N within the ±, above its limit of 90.0 N, mostly from magnitude of W (± 12 N)"},
		{"within its limit within the ±", strings.Replace(sound, "50 N", "80 N ± 9 N", 1), true, "ok    a.toml: determinate, 8 checks"},
		{"slack within the ±", strings.Replace(sound, "50 N", "5 N ± 9 N", 1), false,
			"FAILS a.toml: at risk: T could go slack: in the worst case it would have to push (4.00 N), mostly from magnitude of W (± 9 N)"},
		{"a lesson about the ±", "expect = \"at-risk\"\n" + strings.Replace(sound, "50 N", "80 N ± 12 N", 1), true, "ok    a.toml: determinate, 8 checks, at risk as expected"},
		{"a lesson about the ± that is none", "expect = \"at-risk\"\n" + strings.Replace(sound, "50 N", "80 N ± 9 N", 1), false,
			"FAILS a.toml: expected to be at risk within the ±, but every check holds throughout"},
		{"a lesson about the ± of a check that fails", "expect = \"at-risk\"\n" + strings.Replace(sound, "50 N", "95 N ± 12 N", 1), false,
			"FAILS a.toml: T exceeds its limit of 90.0 N: utilisation 106 %; expected to be at risk within the ±, but every check holds throughout"},
		{"a lesson about a check that fails", "expect = \"failed-check\"\n" + strings.Replace(sound, "50 N", "95 N ± 12 N", 1), true, "ok    a.toml: determinate, 8 checks"},
		{"a missed answer", sound + "[answers]\nT = \"51 N\"\n", false, "FAILS a.toml: T = 50.000 N differs from the reference 51 N"},
		{"a resultant", "expect = \"resultant\"\n" + strings.Join(strings.Split(sound, "\n")[:4], "\n") +
			"\nF = { kind = \"force\", at = \"P\", along = \"+x\", magnitude = \"50 N\" }\n", true, "ok    a.toml: resultant, 1 check"},
		{"a frame whose support was forgotten", "asked = \"P.loads.size\"\n" + strings.Join(strings.Split(sound, "\n")[:4], "\n") +
			"\nF = { kind = \"force\", at = \"P\", along = \"+x\", magnitude = \"50 N\" }\n", false,
			"FAILS a.toml: no equilibrium: the loads move the particle and no support prevents it; P is unsupported in the direction +x: 50.0 N is unbalanced; " +
				"the sheet has neither supports nor unknowns. Try: set expect to \"resultant\" if only the resultant of the known forces is wanted"},
	} {
		t.Run(c.name, func(t *testing.T) {
			well, got := CheckLine("a.toml", solution(t, c.text), uncertaintyOf(t, c.text))
			if got != c.want || well != c.well {
				t.Errorf("%v %q, want %v %q", well, got, c.well, c.want)
			}
		})
	}
	f, _ := fixtures.Get("lamp-pushed-sideways")
	s := solution(t, f.Answered())
	s.Problem.Expect = "no-equilibrium"
	if well, got := CheckLine("lamp", s, nil); !well || !strings.HasPrefix(got, "ok    lamp: no-equilibrium, ") {
		t.Errorf("%v %q", well, got)
	}
}
