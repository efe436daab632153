package report

import (
	"encoding/csv"
	"strings"
	"testing"

	"trivet/mechanics/variant"
)

// Numbers stay numbers, formulas become text, and every reader of CSV finds the
// cells again.
func TestCSV(t *testing.T) {
	rows := [][]string{
		{"=1+1", "@x", "+5", "-420", "-1.5e-7", "-2 .. 3", "12 300", "a, \"b\"", "two\nlines", ""},
		{"N", "free", "at least 3", "+cmd|x", "\ttab", "0", "1e7", "-", "=", "x"},
	}
	want := [][]string{
		{"'=1+1", "'@x", "+5", "-420", "-1.5e-7", "'-2 .. 3", "12 300", "a, \"b\"", "two lines", ""},
		{"N", "free", "at least 3", "'+cmd|x", " tab", "0", "1e7", "'-", "'=", "x"},
	}
	got, err := csv.NewReader(strings.NewReader(CSV(rows))).ReadAll()
	if err != nil || len(got) != len(want) {
		t.Fatalf("%v: %q", err, got)
	}
	for i := range want {
		if strings.Join(got[i], "|") != strings.Join(want[i], "|") {
			t.Errorf("%q, want %q", got[i], want[i])
		}
	}
	if text := CSV([][]string{{"θ (deg)"}}); text != "\ufeffθ (deg)\n" {
		t.Errorf("%q", text)
	}
}

func TestKey(t *testing.T) {
	k := variant.Key{Seed: 7, Head: []string{"variant", "W (N)", "T|1 (N)"}, Rows: [][]variant.KeyCell{{{Text: "=a-01"}, {Text: "12 500", Number: true}, {Text: "-3.0", Number: true}}}}
	for format, want := range map[string]string{
		"csv":      "variant,seed,W (N),T|1 (N)\n'=a-01,7,12500,-3.0\n",
		"markdown": "# Lamp: key\n\nFor the instructor. Seed 7.\n\n| variant | W (N) | T\\|1 (N) |\n| --- | ---: | ---: |\n| =a-01 | 12 500 | -3.0 |\n",
	} {
		if got := string(Key(format, "Lamp", k)); got != want {
			t.Errorf("%s: %q, want %q", format, got, want)
		}
	}
}
