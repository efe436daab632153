package text

import (
	"strings"
	"testing"
)

func TestWrappedBreaksAtBlanks(t *testing.T) {
	for _, c := range []struct {
		first, text string
		w           int
		want        string
	}{
		{"", "", 10, ""},
		{"", "one", 2, "one"},
		{"", "one two three", 7, "one two|three"},
		{"", "one two three", 8, "one two|three"},
		{"! ", "one two three", 7, "! one|  two|  three"},
		{"! ", "one two three", 9, "! one two|  three"},
		{"", "  one \n two\t three ", 20, "one two three"},
		{"", "ΣM about A", 5, "ΣM|about|A"},
	} {
		var d Lines
		d.Wrapped(0, c.first, c.text, c.w)
		var got []string
		for _, l := range d {
			got = append(got, l[0].Text)
		}
		if is := strings.Join(got, "|"); is != c.want {
			t.Errorf("%q at %d: %q, want %q", c.text, c.w, is, c.want)
		}
	}
}
