package report

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/sheet"
	"trivet/mechanics/uncertainty"
)

func uncertaintyOf(t *testing.T, text string) *uncertainty.Effect {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return uncertainty.Of(s, solution(t, text))
}

func measured(t *testing.T) (string, *uncertainty.Effect) {
	t.Helper()
	f, ok := fixtures.Get("sign-measured-by-tape")
	if !ok {
		t.Fatal("no such sheet")
	}
	return f.Answered(), uncertaintyOf(t, f.Answered())
}

// uncertaintyHeading is what heads the text for the sign.
const uncertaintyHeading = `statically determinate: every unknown has a single value
at risk  T2 could reach 2.54 kN within the ±, above its limit of 2.50 kN, mostly
         from W (± 0.1 kN).

Unknowns
  T1  = 2.15 kN  tension  85.9 % of 2.50 kN
  T2  = 2.40 kN  tension  96.0 % of 2.50 kN  at risk

`

// uncertaintyText is the section of the text for the sign: T2 = 2.4 kN carries W/2.4 of
// ± 0.1 kN, 0.1 kN, and much less of the rest.
const uncertaintyText = `Effect of measurement tolerance
  Result    Value  Independent  Worst case          Mostly from
  T1      2.15 kN  ± 0.095 kN   2.01 kN to 2.29 kN  W (± 0.1 kN)
  T2      2.40 kN  ± 0.10 kN    2.26 kN to 2.54 kN  W (± 0.1 kN)
  Inputs with ±: h (± 2 cm), W (± 0.1 kN), x of A (± 0.02 m), x of B (± 0.02 m).
  Each ± is used as typed, whether it is a tolerance or a standard deviation.
  Independent: each input is moved to both ends of its ± in turn, and the
  changes are combined as the root of the sum of their squares.
  Worst case: all inputs at their adverse ends, from all 16 combinations of the
  ends of the ±, and from between the ends wherever a result has an extreme
  there.

Lines of action`

func TestUncertaintyText(t *testing.T) {
	text, tr := measured(t)
	got := textOf(solution(t, text), tr)
	for _, want := range []string{uncertaintyHeading + uncertaintyText, "\n  ok       T1 is at 85.9 % of", "\n  at risk  T2 is at 96.0 % of", "reserve factor 1.04; at risk\nwithin the ±.\n"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if got := textOf(solution(t, text), nil); strings.Contains(got, "measurement tolerance") {
		t.Errorf("nothing is uncertain, and it says\n%s", got)
	}
}

// TestUncertaintyJSON holds the fields of "trust", which may be added to.
func TestUncertaintyJSON(t *testing.T) {
	text, tr := measured(t)
	o := parsed(t, JSON("-", solution(t, text), tr))
	want := "{at_risk bool, inputs [{name string, plus string}], results [{by [{input number, moves number}], high number, independent number, low number, name string, unit string, value number, worst number}], says [string], searched {all bool, between bool, combinations number}}"
	if got := shape(o["trust"]); got != want {
		t.Errorf("trust is %s, want %s", got, want)
	}
	if got := o["trust"].(map[string]any)["says"].([]any)[0]; got != "T2 could reach 2.54 kN within the ±, above its limit of 2.50 kN, mostly from W (± 0.1 kN)" {
		t.Errorf("says %q", got)
	}
	for _, c := range o["checks"].([]any) {
		c := c.(map[string]any)
		if risk, is := c["at_risk"]; is != (c["name"] == "limit T2") || is && risk != true || c["ok"] != true {
			t.Errorf("check %v", c)
		}
	}
	if o := parsed(t, JSON("-", solution(t, text), nil)); o["trust"] != nil {
		t.Errorf("trust is %v without one", o["trust"])
	}
}

// TestUncertaintyOnPages: every form of a page has the numbers and the warning.
func TestUncertaintyOnPages(t *testing.T) {
	text, tr := measured(t)
	s := solution(t, text)
	const risk = "T2 could reach 2.54 kN within the ±, above its limit of 2.50 kN"
	for _, format := range []string{"md", "tex", "html"} {
		for _, field := range []bool{false, true} {
			page, err := Page(format, s, PageOptions{Field: field, Uncertainty: tr, File: "sign.toml"})
			if err != nil {
				t.Fatal(err)
			}
			got := string(page)
			if format == "tex" {
				got = strings.ReplaceAll(got, `$\pm$`, "±")
			}
			for _, want := range []string{"Effect of measurement tolerance", "± 0.095 kN", risk, "96.0"} {
				if !strings.Contains(strings.ReplaceAll(got, `\%`, "%"), want) {
					t.Errorf("%s, field %v: no %q", format, field, want)
				}
			}
			// The page heads with it: nothing of the other rope stands before it.
			first := strings.Index(got, "T1")
			for _, head := range []string{"At risk within the ± of the inputs", risk} {
				if at := strings.Index(got, head); at < 0 || first < 0 || at > first {
					t.Errorf("%s, field %v: %q at %d, and the results begin at %d", format, field, head, at, first)
				}
			}
		}
	}
	for _, format := range []string{"pdf", "svg", "png"} {
		if _, err := Page(format, s, PageOptions{Field: true, Uncertainty: tr, File: "sign.toml"}); err != nil {
			t.Errorf("%s: %v", format, err)
		}
	}
}

// TestUncertaintyOfNothingSure: results without a bound and too many inputs are said in
// words, and no number of a report is infinite.
func TestUncertaintyOfNothingSure(t *testing.T) {
	text := `plane = "xy"
[given]
y = "1 cm ± 2 cm"
[points]
O = { at = "0, 0", on = "particle" }
A = "-1, y"
B = "1, y"
[lines]
T1 = { kind = "link", path = "O A" }
T2 = { kind = "link", path = "O B" }
W = { kind = "weight", at = "O", magnitude = "100 N" }
`
	const noBound = "  T1      5000 N  no bound     no bound    y (± 2 cm)\n"
	tr := uncertaintyOf(t, text)
	if got := textOf(solution(t, text), tr); !strings.Contains(got, noBound) || strings.Contains(got, "Inf") {
		t.Errorf("%s", got)
	}
	o := parsed(t, JSON("-", solution(t, text), tr))
	want := "{by [{input number, moves null}], high null, independent null, low null, name string, unit string, value number, worst null}"
	if got := shape(o["trust"].(map[string]any)["results"].([]any)[0]); got != want {
		t.Errorf("%s, want %s", got, want)
	}
}
