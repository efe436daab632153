package names_test

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/names"
	"trivet/mechanics/problem"
)

func TestDoubts(t *testing.T) {
	for _, c := range []struct{ on, bodies, want string }{
		{"pa", "", `points D on: "pa" is a body with the one point D. Try: particle, if that is meant`},
		{"Particle", "", `points D on: "Particle" is a body with the one point D. Try: particle, if that is meant`},
		{"partcle", "", `points D on: "partcle" is a body with the one point D. Try: particle, if that is meant`},
		{"particel", "", `points D on: "particel" is a body with the one point D. Try: particle, if that is meant`},
		{"bo", "", `points D on: "bo" is a body with the one point D. Try: boom, if that is meant`},
		{"boon", "", `points D on: "boon" is a body with the one point D. Try: boom, if that is meant`},
		{"boom pa", "", `points D on: "pa" is a body with the one point D. Try: particle, if that is meant`},
		{"particle", "", ""},
		{"boom", "", ""},
		{"ground", "", ""},
		{"p", "", ""},
		{"crate", "", ""},
		{"boom2", "", ""}, // numbered on purpose
		{"pa", "pa = { about = \"D\" }", ""},
	} {
		s := parse(t, "plane = \"xy\"\n[points]\nO = { at = \"0, 0\", on = \"boom\" }\nT = { at = \"1, 0\", on = \"boom\" }\nD = { at = \"3, 0\", on = \""+c.on+"\" }\nA = \"3, 4\"\n[bodies]\n"+c.bodies+
			"\n[lines]\nT1 = { kind = \"cable\", path = \"D A\" }\nF = { kind = \"force\", at = \"D\", along = \"-y\", magnitude = \"5 N\" }\n[joints]\nO = { kind = \"fixed\" }\n")
		p, _ := names.Read(problem.NewReader(), s)
		var got []string
		for _, e := range p.Doubts {
			cell, _ := s.Cell(e.Ref)
			if at := cell.Text[e.Span.Start:e.Span.End]; !strings.Contains(e.Msg, at) {
				t.Errorf("on = %q: points at %q", c.on, at)
			}
			got = append(got, e.Ref.Table+" "+e.Ref.Row+" "+e.Ref.Key+": "+e.Text())
		}
		if strings.Join(got, "\n") != c.want {
			t.Errorf("on = %q: %q, want %q", c.on, got, c.want)
		}
	}
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		if p, _ := names.Read(problem.NewReader(), parse(t, f.Answered())); len(p.Notes()) > 0 {
			t.Errorf("%s: %v", f.Name, p.Notes())
		}
	}
}

// Where nothing acts on it yet, the doubt is what to try.
func TestADoubtIsWhatWouldDo(t *testing.T) {
	_, errs := names.Read(problem.NewReader(), parse(t, "plane = \"xy\"\n[points]\nD = { at = \"0, 0\", on = \"partikle\" }\n"))
	if want := `no force acts on partikle. Try: particle, if that is meant`; len(errs) != 1 || errs[0].Text() != want {
		t.Errorf("%v, want %s", errs, want)
	}
}
