package grade

import (
	"maps"
	"slices"
)

// Variants lets the keys of a class know of each other, by the names of their sheets: answers
// that are right of another student's variant, or of the sheet before it was varied, are then
// told to be so.
func Variants(keys map[string]*Key) {
	var all []mistake
	for _, name := range slices.Sorted(maps.Keys(keys)) {
		if k := keys[name]; k != nil && (k.solution.Unique() || k.solution.Single()) {
			all = append(all, mistake{says: []string{"the sheet were " + name}, plain: true, solution: k.solution, values: map[string]float64{}})
		}
	}
	for _, k := range keys {
		if k != nil {
			k.others = all
		}
	}
}
