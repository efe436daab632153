package sheet

import "maps"

// Change is a cell in which two sheets differ. A cell that only one of them has
// has the flag of the other false; a row without cells stands with the key "".
type Change struct {
	Ref
	Old, New string
	Was, Is  bool
}

// Diff lists the cells in which two sheets differ, in the order of the new one,
// with what only the old one has at the end. Comments and order count for
// nothing.
func Diff(old, now *Sheet) (out []Change) {
	gone := maps.Collect(old.Cells())
	for ref, c := range now.Cells() {
		was, ok := gone[ref]
		if !ok || was.Text != c.Text {
			out = append(out, Change{ref, was.Text, c.Text, ok, true})
		}
		delete(gone, ref)
	}
	for ref, c := range old.Cells() {
		if _, ok := gone[ref]; ok {
			out = append(out, Change{ref, c.Text, "", true, false})
		}
	}
	return out
}
