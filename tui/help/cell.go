package help

import (
	"cmp"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// Takes says what a cell takes, from the table of keys.
func Takes(ref sheet.Ref) string {
	if k, ok := keyOf(ref); ok {
		return k.Says + ". Example: " + k.Example
	}
	return ""
}

// keyOf is the key that a cell holds the value of.
func keyOf(ref sheet.Ref) (k problem.KeyInfo, ok bool) {
	for _, t := range problem.Tables() {
		if t.Name == ref.Table {
			key := cmp.Or(ref.Key, t.Plain)
			if t.Fixed {
				key = ref.Row
			}
			return t.Key(key)
		}
	}
	return k, false
}
