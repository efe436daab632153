package report

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// FuzzSolve takes any text the whole road: parse, read, solve, report as text
// and as JSON. Nothing may panic, the JSON must be finite and read again, every
// error must mark characters of its own cell, and what is called determinate must
// balance.
func FuzzSolve(f *testing.F) {
	for _, s := range append(fixtures.Starts(), fixtures.Published()...) {
		f.Add(s.Answered())
	}
	for _, s := range []string{
		"", "\ufeff", "[points]", "[lines]\n", contractSheet, "asked = \"T1\"\n[points]\nP={on=\"particle\",at=\"0,0,0\"}",
		"[points]\nP={on=\"particle\",at=\"0,0,0\"}\n[lines]\nT={kind=\"force\",at=\"P\",components=\"?\"}",
		"[points]\nP={on=\"particle\",at=\"1e40,0,0\"}\n[lines]\nT={kind=\"force\",at=\"P\",along=\"x\",magnitude=\"1e49\"}",
		"[points]\nP={on=\"particle\",at=\"1e-40,0,0\"}\nA=\"0,0,0\"\n[lines]\nT={kind=\"link\",path=\"P A\"}\nS={kind=\"spring\",path=\"A P\",stiffness=\"1e49\",natural=\"1e49\"}",
		"plane=\"xy\"\n[points]\nO={at=\"0,0\",on=\"b\"}\nB={at=\"4,0\",on=\"b\"}\n[joints]\nO={kind=\"pin\"}\nB={kind=\"rough\",normal=\"y\",friction=\"0.3\"}\n[couples]\nM={on=\"b\",magnitude=\"5\"}\n[distributed]\nq={on=\"b\",path=\"O B\",along=\"-y\",magnitude=\"1 .. 2\"}",
		"[points]\nO={at=\"0,0,0\",on=\"b\"}\nB={at=\"4,0,1\",on=\"b\"}\n[joints]\nO={kind=\"hinge\",axis=\"(1,2,3)\"}\n[couples]\nM={on=\"b\",about=\"z\"}\n[bodies]\nb={weight=\"3 kg\",centre=\"B\"}",
		"plane=\"xy\"\n[points]\nB={at=\"0,1\",on=\"particle\"}\nW={at=\"0,0\",on=\"particle\"}\n[lines]\nN={kind=\"contact\",path=\"B W\",along=\"+x\"}\nF={kind=\"force\",path=\"B W\"}\n[joints]\nJ={kind=\"rough\",on=\"B W\",normal=\"y\",friction=\"0.3\",impending=\"+x\"}",
		"[points]\nE={at=\"0,0,0\",on=\"a b\"}\nB={at=\"4,0,1\",on=\"b\"}\nA={at=\"4,0,0\",on=\"a\"}\n[lines]\nN={kind=\"contact\",at=\"E\",along=\"z\",on=\"a b\"}\nK={kind=\"contact\",path=\"A B\"}\nV={kind=\"force\",at=\"E\",components=\"?\",on=\"b a\"}",
	} {
		f.Add(s)
	}
	// The texts that people write by hand in a file are seeds too.
	if b, err := os.ReadFile("../names/testdata/errors.txt"); err == nil {
		for line := range strings.Lines(string(b)) {
			if _, cell, ok := strings.Cut(line, "=>"); ok {
				f.Add(contractSheet + strings.ReplaceAll(strings.TrimSpace(cell), `\n`, "\n"))
			}
		}
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 8192 {
			return // large texts only slow the search down
		}
		sh, err := sheet.Parse([]byte(text))
		if err != nil {
			return
		}
		wholeRoad(t, sh)
	})
}

func checkError(t *testing.T, sh *sheet.Sheet, e problem.Error) {
	t.Helper()
	c, _ := sh.Cell(e.Ref)
	if e.Span.Start < 0 || e.Span.End < e.Span.Start || e.Span.End > len(c.Text) {
		t.Errorf("the span %v of %q lies outside %q", e.Span, e.Msg, c.Text)
	}
	if e.Msg == "" {
		t.Error("an error says nothing")
	}
	if at := e.Placed(sh); at.Line < 1 || at.Column < 1 {
		t.Errorf("%q stands at %d:%d", e.Msg, at.Line, at.Column)
	}
}

// wholeRoad takes a sheet from its cells to its reports.
func wholeRoad(t *testing.T, sh *sheet.Sheet) {
	t.Helper()
	p, errs := problem.Read(sh)
	for _, e := range errs {
		checkError(t, sh, e)
	}
	if len(errs) > 0 {
		return
	}
	s := statics.Solve(p)
	tr := uncertainty.Of(sh, s)
	if out := textOf(s, tr); !utf8.ValidString(out) || strings.Contains(out, "NaN") {
		t.Errorf("the text is not sound: %q", out)
	}
	out := JSON("-", s, tr)
	if !json.Valid(out) {
		t.Errorf("the JSON does not read: %s", out)
	}
	if s.Verdict == statics.Determinate {
		for i, r := range s.Residuals {
			if math.IsNaN(r.Value) || math.IsNaN(r.Relative) || r.Relative > 1e-6 {
				t.Errorf("row %d leaves %v, %v of the largest force", i, r.Value, r.Relative)
			}
		}
	}
	s.Failures()
	CheckLine("-", s, tr)
}

// cells are texts that people type, half type, and would never type.
func cells() []string {
	return []string{"", " ", "0", "1", "-1", "1e49", "-1e49", "1e-49", "1e300", "1e-300", "0.1 + 0.2", "1/3", "?", "g", "T1", "2*T1", "T1 + T2",
		"T1 - T1", "0*T1", "-T1", "1e-30*T1", "1e30*T1", "N", "W", "5 N", "5 kN", "5 kg", "5 m", "5 N m", "5 N/m", "0, 0, 0", "0, 0", "1, 2, 3", "1e-15, 0, 0",
		"1e40, 1e40, 1e40", "1e-40, 0, 0", "(1, 2, 3)", "(0, 0, 0)", "(1e-49, 0, 0)", "(1, ?, 3)", "(?, ?, ?)", "(?, ?)", "x", "-y", "+z", "dir(A, B)", "dir(A, A)", "A",
		"A + B", "(A + B)/2", "polar(30 deg)", "angles(60 deg, 45 deg, 60 deg)", "bearing(30, 20)", "P A", "A P B", "P A P", "A B", "P", "P P", "O B", "cable", "strut",
		"link", "spring", "force", "weight", "contact", "pin", "roller", "fixed", "hinge", "rough", "collar", "slider", "particle", "ground", "beam", "arm", "none",
		"xy", "12", "1", "0.3", "1 .. 2", "1 kN/m .. 3 kN/m", "2 * s", "1/s", "sqrt(s)", "hydrostatic", "6 ± 1", "6 ± 1e49", "T1 T2 T1.x angle(T1, T2)", "P.loads.alpha", "1e49 N", "indeterminate"}
}

// FuzzCells types such texts into cells of the sheets that come with the program.
func FuzzCells(f *testing.F) {
	for seed := range uint64(1500) {
		f.Add(seed)
	}
	sheets := append(fixtures.Starts(), fixtures.Published()...)
	keys := []string{"at", "on", "path", "along", "magnitude", "kind", "limit", "components", "stiffness", "natural", "normal", "axis", "friction", "impending",
		"moments", "weight", "centre", "about", "turn", "face", "printed", "within"}
	f.Fuzz(func(t *testing.T, seed uint64) {
		rng := rand.New(rand.NewPCG(seed, 1))
		sh, err := sheet.Parse([]byte(sheets[rng.IntN(len(sheets))].Answered()))
		if err != nil {
			t.Fatal(err)
		}
		for range 1 + rng.IntN(4) {
			table := sh.Tables[rng.IntN(len(sh.Tables))]
			if len(table.Rows) == 0 {
				continue
			}
			row := table.Rows[rng.IntN(len(table.Rows))]
			ref := sheet.Ref{Table: table.Name, Row: row.Name}
			if len(row.Cells) > 0 {
				ref.Key = row.Cells[rng.IntN(len(row.Cells))].Key
			}
			if ref.Key != "" && rng.IntN(4) == 0 {
				ref.Key = keys[rng.IntN(len(keys))]
			}
			sh = sh.With(ref, cells()[rng.IntN(len(cells()))])
		}
		wholeRoad(t, sh)
	})
}
