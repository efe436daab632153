package problem_test

import (
	"strings"
	"testing"

	"trivet/mechanics/problem"
)

// A body that no force acts on yet is a doubt beside others, and an error alone.
func TestBareBodies(t *testing.T) {
	const head, lines = "plane = \"xy\"\n[points]\n", "[lines]\nT = { kind = \"cable\", path = \"P A\" }\nW = { kind = \"weight\", at = \"P\", magnitude = \"10 N\" }\n"
	const p = "P = { at = \"0, 0\", on = \"particle\" }\nA = \"0, 3\"\n"
	const e = "E = { at = \"1, 0\", on = \"particle\" }\n"
	const eLine = "T2 = { kind = \"cable\", path = \"E A\" }\n"
	says := func(ee []problem.Error) string {
		var out []string
		for _, e := range ee {
			out = append(out, e.Ref.Table+" "+e.Ref.Row+": "+e.Text())
		}
		return strings.Join(out, "\n")
	}
	for _, c := range []struct{ name, text, bare, doubts, errs string }{
		{"all have forces", head + p + e + lines + eLine, "", "", ""},
		{"a particle", head + p + e + lines, "E", `points E: no force acts on E, so it is left out. Try: add a line at E, or let it be a fixed point`, ""},
		{"the first of them", head + e + p + lines, "E", `points E: no force acts on E, so it is left out. Try: add a line at E, or let it be a fixed point`, ""},
		{"a body", head + p + "E = { at = \"1, 0\", on = \"boom\" }\nF = { at = \"2, 0\", on = \"boom\" }\n" + lines, "boom",
			"points E: no force acts on boom, so it is left out. Try: add a line or a joint at one of its points", ""},
		{"a misspelt word says so once", head + p + "E = { at = \"1, 0\", on = \"partikle\" }\n" + lines, "partikle",
			`points E: "partikle" is a body with the one point E. Try: particle, if that is meant`, ""},
		{"beside a line that does not read", head + p + e + lines + "T2 = { kind = \"cable\", path = \"E Z\" }\n", "E", "", `lines T2: there is no point "Z". Try: add it to the points`},
		{"beside an answer that does not read", head + p + e + lines + "[answers]\nT = \"zz\"\n", "E", `points E: no force acts on E, so it is left out. Try: add a line at E, or let it be a fixed point`,
			`answers T: unknown name "zz"`},
		{"the only one", head + e, "E", "", `points E: no force acts on E. Try: add a line at E, or let it be a fixed point`},
	} {
		p, errs := problem.Read(parse(t, c.text))
		var bare []string
		for _, b := range p.Bodies {
			if b.Bare {
				bare = append(bare, b.Name)
			}
		}
		if got := strings.Join(bare, " "); got != c.bare {
			t.Errorf("%s: %q are bare, want %q", c.name, got, c.bare)
		}
		if got := says(p.Doubts); got != c.doubts {
			t.Errorf("%s: doubts\n%s\nwant\n%s", c.name, got, c.doubts)
		}
		if got := says(errs); got != c.errs {
			t.Errorf("%s: errors\n%s\nwant\n%s", c.name, got, c.errs)
		}
	}
}
