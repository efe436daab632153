package results

import (
	"slices"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/session"
)

func TestALegOfALimitedRopeIsNoLineWithoutALimit(t *testing.T) {
	const head = "plane = \"xy\"\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\nA = \"-3, 4\"\nB = \"3, 4\"\n[lines]\n" +
		"W = { kind = \"weight\", at = \"P\", magnitude = \"80 N\" }\nT1 = { kind = \"cable\", path = \"P A\", limit = \"60 N\" }\n"
	for _, c := range []struct {
		line       string
		none, tied []string
	}{
		{`T2 = { kind = "cable", path = "P B", magnitude = "T1" }`, nil, []string{"T2, as T1"}},
		{`T2 = { kind = "cable", path = "P B", magnitude = "2*T1" }`, []string{"T2"}, nil},
		{`T2 = { kind = "cable", path = "P B", magnitude = "T1 + 1 N" }`, []string{"T2"}, nil},
		{`T2 = { kind = "strut", path = "P B", magnitude = "T1" }`, []string{"T2"}, nil},
		{`T2 = { kind = "cable", path = "P B" }`, []string{"T2"}, nil},
		{`T2 = { kind = "cable", path = "P B", magnitude = "T1", limit = "60 N" }`, nil, nil},
	} {
		s, err := sheet.Parse([]byte(head + c.line + "\n"))
		if err != nil {
			t.Fatal(err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			t.Fatal(errs)
		}
		none, tied := writer{&session.Result{Problem: p, Solution: statics.Solve(p)}}.unlimited()
		if !slices.Equal(none, c.none) || !slices.Equal(tied, c.tied) {
			t.Errorf("%s: without a limit %q, tied %q; want %q, %q", c.line, none, tied, c.none, c.tied)
		}
	}
}
