package sheet

import (
	"strings"
	"testing"
)

// TestHostileTextEnds reads texts made to cost time or stack. It must come to
// an end with a sheet or words; a parser gone quadratic runs into the test's
// time limit.
func TestHostileTextEnds(t *testing.T) {
	fill := func(piece string, n int) string { return strings.Repeat(piece, n/len(piece)) }
	for name, text := range map[string]string{
		"one long array":       "a = [" + fill("1,", MaxBytes-20) + "]",
		"tables in an array":   "a = [" + fill("{a=1},", MaxBytes-20) + "]",
		"one wide row":         "[p]\nA = {" + numbered("", "k%d=1,", maxValues-5) + "z=1}",
		"many lists":           fill("[[a]]\n", 6*maxValues-12),
		"many tables":          numbered("", "[t%d]\n", maxValues-2),
		"many keys of a list":  "[[a]]\n" + numbered("", "k%d=1\n", maxValues-5),
		"one long dotted name": fill("a.", MaxBytes-20) + "a = 1",
		"one long string":      "a = \"" + fill(`\u00b0`, maxTop/2) + "\"",
		"only blank lines":     fill("\r\n", MaxBytes),
		"only quotes":          "a = " + fill(`"`, MaxBytes-10),
		"brackets in strings":  "a = '" + fill("[", maxTop) + "'",
	} {
		t.Run(name, func(t *testing.T) {
			s, err := Parse([]byte(text))
			if (s == nil) == (err == nil) {
				t.Errorf("got %v with %v", s, err)
			}
		})
	}
}
