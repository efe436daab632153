package grade_test

import (
	"testing"

	"trivet/mechanics/grade"
)

// The mistakes of one sheet, with all its mutants solved.
func BenchmarkMark(b *testing.B) {
	for _, name := range []string{"mast-top", "frame-of-two-members", "planar-truss", "space-truss"} {
		b.Run(name, func(b *testing.B) {
			text := start(b, name)
			for b.Loop() {
				key, _ := keyOf(b, text, grade.Rule{})
				var typed []grade.Typed
				for _, n := range key.Asked() {
					typed = append(typed, grade.Typed{Name: n, Text: "7.77"})
				}
				key.Mark(typed)
			}
		})
	}
}
