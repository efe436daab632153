package text

import (
	"slices"
	"testing"
)

func TestNumerals(t *testing.T) {
	for _, c := range []struct {
		text string
		want []string
	}{
		{"", nil},
		{"B = 1880 N from 11 300 N m", []string{"1880", "11 300"}},
		{"r = (-2.00, 1.00, 2.00)  |r| = 3.00", []string{"-2.00", "1.00", "2.00", "3.00"}},
		{"T1 of u_T1,2 in P10x", nil},
		{"√(9² + (-12)²) = 15 m", []string{"9", "-12", "15"}},
		{"sqrt(9^2 + 4^2)", []string{"9", "4"}},
		{"0..75.0", []string{"0", "75.0"}},
		{"-5..-3", []string{"-5", "-3"}},
		{"to 1.2e-16 of the largest, 1.0e+05", []string{"1.2e-16", "1.0e+05"}},
		{"Ä1 α2 3", []string{"3"}},
		{"1 234 567 890", []string{"1 234 567 890"}},
		{"12 3456", []string{"12", "3456"}},
		{"ends in 2.", []string{"2"}},
		{"a - 5 b -5", []string{"5", "-5"}},
		{"2e", []string{"2"}},
	} {
		var got []string
		for _, n := range numerals(c.text) {
			got = append(got, c.text[n[0]:n[1]])
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%q holds %q, want %q", c.text, got, c.want)
		}
	}
}
