package report

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/diag"
)

func percent(use float64) string {
	if math.IsInf(use, 1) {
		return "inf"
	}
	return fmt.Sprintf("%.0f", 100*use)
}

// parsed reads a report as another program would.
func parsed(t *testing.T, b []byte) map[string]any {
	t.Helper()
	var o map[string]any
	if err := json.Unmarshal(b, &o); err != nil {
		t.Fatalf("%v\n%s", err, b)
	}
	return o
}

// shape writes a value's fields and their types: null or number, and so on.
func shape(v any) string {
	switch v := v.(type) {
	case nil:
		return "null"
	case string:
		return "string"
	case float64:
		return "number"
	case bool:
		return "bool"
	case []any:
		if len(v) == 0 {
			return "[]"
		}
		return "[" + shape(v[0]) + "]"
	case map[string]any:
		var parts []string
		for k, x := range v {
			parts = append(parts, k+" "+shape(x))
		}
		slices.Sort(parts)
		return "{" + strings.Join(parts, ", ") + "}"
	}
	return "?"
}

const contractSheet = `title = "Two wires"
plane = "xy"
asked = "T1 T1.x"
[units]
force = "kN"
[points]
P = { at = "0, 0", on = "particle" }
A = "-4, 3"
B = "4, 3"
[lines]
T1 = { kind = "cable", path = "P A", limit = "2 kN" }
T2 = { kind = "cable", path = "P B" }
W = { kind = "weight", at = "P", magnitude = "1.2 kN" }
[answers]
source = "own"
T1 = "1.00 kN"
`

// TestJSONContract holds the fields of design section 6, their types and their
// values. A field may be added; none of these may go, or mean another thing.
func TestJSONContract(t *testing.T) {
	o := parsed(t, JSON("wires.toml", solution(t, contractSheet), nil))
	for field, want := range map[string]string{
		"sheet": "string", "title": "string", "verdict": "string",
		"unknowns":  "[{fixed bool, high null, limit number, low null, name string, sense string, text string, unit string, use number, value number}]",
		"lines":     "[{kind string, length number, name string, r [number], u [number], unit string}]",
		"equations": "[{axis string, body string, relative number, residual number, right number, terms {T1 number, T2 number}, unit string}]",
		"checks":    "[{name string, ok bool, says string}]",
		"answers":   "[{computed string, name string, ok bool, printed string}]",
		"asked":     "[{name string, text string, unit string, value number}]",
		"words":     "[string]", "degree": "number",
	} {
		if got := shape(o[field]); got != want {
			t.Errorf("%s is %s, want %s", field, got, want)
		}
	}
	for _, field := range []string{"free_motions", "errors"} {
		if _, there := o[field]; there {
			t.Errorf("%s is there, and there are none", field)
		}
	}

	first := func(field string) map[string]any { return o[field].([]any)[0].(map[string]any) }
	expect := func(field, key string, want any) {
		t.Helper()
		got := first(field)[key]
		if g, ok := got.(float64); ok {
			if w := want.(float64); math.Abs(g-w) > 1e-12*max(1, math.Abs(w)) {
				t.Errorf("%s.%s = %v, want %v", field, key, got, want)
			}
		} else if got != want {
			t.Errorf("%s.%s = %v, want %v", field, key, got, want)
		}
	}
	if o["sheet"] != "wires.toml" || o["title"] != "Two wires" || o["verdict"] != "determinate" || o["degree"] != 0.0 {
		t.Errorf("head: %v %v %v %v", o["sheet"], o["title"], o["verdict"], o["degree"])
	}
	expect("unknowns", "name", "T1")
	expect("unknowns", "value", 1.0)
	expect("unknowns", "unit", "kN")
	expect("unknowns", "fixed", true)
	expect("unknowns", "sense", "tension")
	expect("unknowns", "limit", 2.0)
	expect("unknowns", "use", 50.0)
	expect("unknowns", "text", "1.00 kN")
	expect("lines", "name", "T1")
	expect("lines", "kind", "cable")
	expect("lines", "length", 5.0)
	expect("lines", "unit", "m")
	expect("equations", "body", "P")
	expect("equations", "axis", "Fx")
	expect("equations", "unit", "kN")
	expect("equations", "right", 0.0)
	expect("answers", "name", "T1")
	expect("answers", "printed", "1.00 kN")
	expect("answers", "computed", "1.0000 kN")
	expect("answers", "ok", true)
	expect("asked", "name", "T1")
	if r := first("lines")["r"].([]any); len(r) != 3 || r[0] != -4.0 || r[1] != 3.0 || r[2] != 0.0 {
		t.Errorf("r = %v", r)
	}
	if n := len(o["unknowns"].([]any)); n != 2 {
		t.Errorf("%d unknowns", n)
	}
	if n := len(o["equations"].([]any)); n != 2 {
		t.Errorf("%d equations", n)
	}
}

// TestJSONNulls: null stands where there is no such number.
func TestJSONNulls(t *testing.T) {
	o := parsed(t, JSON("-", solution(t, `plane = "xy"
[points]
P = { at = "0, 0", on = "particle" }
[lines]
T1 = { kind = "cable", at = "P", along = "+y" }
T2 = { kind = "cable", at = "P", along = "-y", limit = "5 N" }
W = { kind = "weight", at = "P", magnitude = "96 N" }
V = { kind = "force", at = "P", components = "(0, ?)" }
`), nil))
	want := map[string]string{
		"T1": "{fixed bool, high string, limit null, low number, name string, sense null, text string, unit string, use null, value null}",
		"T2": "{fixed bool, high string, limit number, low number, name string, sense null, text string, unit string, use null, value null}",
		"Vy": "{fixed bool, high string, limit null, low string, name string, sense null, text string, unit string, use null, value null}",
	}
	for _, u := range o["unknowns"].([]any) {
		name := u.(map[string]any)["name"].(string)
		if got := shape(u); got != want[name] {
			t.Errorf("%s is %s, want %s", name, got, want[name])
		}
	}
	if got := shape(o["lines"].([]any)[0]); got != "{kind string, length null, name string, r null, u [number], unit string}" {
		t.Errorf("a line by direction is %s", got)
	}
	if got := shape(o["lines"].([]any)[3]); got != "{kind string, length null, name string, r null, u null, unit string}" {
		t.Errorf("a force by components is %s", got)
	}
	if got := shape(o["free_motions"]); got != "[{body string, says string}]" {
		t.Errorf("free_motions is %s", got)
	}
	for _, field := range []string{"asked", "answers"} {
		if got := shape(o[field]); got != "[]" {
			t.Errorf("%s is %s, want an empty list", field, got)
		}
	}
}

// TestJSONVerdicts: the words of the contract, one a sheet.
func TestJSONVerdicts(t *testing.T) {
	for name, want := range map[string]string{
		"traffic-light":         "determinate",
		"cable-that-would-push": "inadmissible",
		"camera-on-four-wires":  "indeterminate",
		"lamp-pushed-sideways":  "no-equilibrium",
	} {
		f, _ := fixtures.Get(name)
		if got := parsed(t, JSON(name, solution(t, f.Answered()), nil))["verdict"]; got != want {
			t.Errorf("%s: %v, want %s", name, got, want)
		}
	}
}

func TestJSONUnreadable(t *testing.T) {
	o := parsed(t, JSONUnreadable("bad.toml", "Bad", []*diag.Error{{Place: diag.Place{Line: 3, Column: 7}, Msg: `there is no name "hh"`, Hint: "h"}}))
	if o["verdict"] != "unreadable" || o["sheet"] != "bad.toml" || o["title"] != "Bad" {
		t.Errorf("%v", o)
	}
	if got := shape(o["errors"]); got != "[{column number, hint string, line number, says string}]" {
		t.Errorf("errors is %s", got)
	}
	for _, field := range []string{"unknowns", "lines", "equations", "asked", "checks", "answers"} {
		if got := shape(o[field]); got != "[]" {
			t.Errorf("%s is %s, want an empty list", field, got)
		}
	}
}

// Warnings are a list of their own, beside a result and beside errors; none where there is nothing to say.
func TestJSONWarnings(t *testing.T) {
	warning := &diag.Error{Place: diag.Place{Line: 2, Column: 1}, Msg: `unknown key "gravity"`, Hint: "g"}
	const want = "[{column number, hint string, line number, says string}]"
	f, _ := fixtures.Get("traffic-light")
	o := parsed(t, JSON("-", solution(t, f.Answered()), nil, warning))
	if got := shape(o["warnings"]); got != want || o["verdict"] != "determinate" || o["errors"] != nil {
		t.Errorf("warnings are %s, errors %v", got, o["errors"])
	}
	if o := parsed(t, JSON("-", solution(t, f.Answered()), nil)); o["warnings"] != nil {
		t.Errorf("warnings are %v", o["warnings"])
	}
	if got := shape(parsed(t, JSONUnreadable("-", "", []*diag.Error{warning}, warning))["warnings"]); got != want {
		t.Errorf("beside errors they are %s", got)
	}
}

// TestSeveralSheets: the objects of several sheets, one behind the other, read
// as a stream, and each sheet that comes with the program writes one.
func TestSeveralSheets(t *testing.T) {
	var all []byte
	sheets := append(fixtures.Starts(), fixtures.Published()...)
	for _, f := range sheets {
		all = append(all, JSON(f.Name, solution(t, f.Answered()), nil)...)
	}
	d := json.NewDecoder(strings.NewReader(string(all)))
	for _, f := range sheets {
		var o struct{ Sheet, Title, Verdict string }
		if err := d.Decode(&o); err != nil {
			t.Fatal(err)
		}
		if o.Sheet != f.Name || o.Title != f.Title || o.Verdict == "" {
			t.Errorf("%s: %+v", f.Name, o)
		}
	}
	if d.More() {
		t.Error("more than one object a sheet")
	}
}
