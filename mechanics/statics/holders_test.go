package statics

import (
	"math"
	"slices"
	"testing"
)

// checkHolders holds what ends a region to its meaning: with those bounds alone the
// least value is the same, and without them it is less.
func checkHolders(t *testing.T, cost []float64, value float64, bounds []bound, names []string, text string) {
	t.Helper()
	var with, without []bound
	for _, b := range bounds {
		if slices.Contains(names, b.of) {
			with = append(with, b)
		} else {
			without = append(without, b)
		}
	}
	if len(with) == 0 {
		t.Fatalf("%s: nothing ends it", text)
	}
	if same, _, what := newRegion(with, len(cost)).least(cost); what != found || math.Abs(same-value) > 1e-8*(1+math.Abs(value)) {
		t.Fatalf("%s: %v alone leave %v (%d), not %v", text, names, same, what, value)
	}
	if less, _, what := newRegion(without, len(cost)).least(cost); what == found && less >= value-1e-9 {
		t.Fatalf("%s: without %v it is %v all the same", text, names, less)
	}
}
