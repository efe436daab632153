package help

import (
	"testing"

	"trivet/mechanics/problem"
	"trivet/units"
)

// A cell has three examples, and each reads; words have a list of their own.
func TestExamplesRead(t *testing.T) {
	for _, table := range problem.Tables() {
		for _, k := range table.Keys {
			list := examples(k)
			switch k.Reads {
			case problem.ReadsVector, problem.ReadsQuantity, problem.ReadsDirection, problem.ReadsValue:
				for _, text := range list {
					if _, err := units.Parse(text); err != nil && k.Reads != problem.ReadsDirection && text != "(?, ?, 0)" {
						t.Errorf("%s %s: the example %q does not read: %v", table.Name, k.Name, text, err)
					}
				}
			case problem.ReadsText, problem.ReadsWord, problem.ReadsResults, problem.ReadsTension:
				continue // words
			}
			if rare := k.Dim == (units.Dim{L: -3, M: 1}) || k.Dim == (units.Dim{L: 2, M: 1, T: -2, A: -1}); len(list) < 3 && !rare && k.Name != "step" && k.Name != "within" {
				t.Errorf("%s %s has the examples %q", table.Name, k.Name, list)
			}
		}
	}
}
