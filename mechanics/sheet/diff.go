package sheet

import (
	"maps"
	"strconv"
)

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
func Diff(old, now *Sheet) []Change {
	var out []Change
	before, after := maps.Collect(old.Cells()), maps.Collect(now.Cells())
	for ref, c := range now.Cells() {
		if was, ok := before[ref]; !ok || was.Text != c.Text {
			out = append(out, Change{ref, was.Text, c.Text, ok, true})
		}
	}
	for ref, c := range old.Cells() {
		if _, ok := after[ref]; !ok {
			out = append(out, Change{ref, c.Text, "", true, false})
		}
	}
	return out
}

// String words a change: points.A.at: "4, 0, 0" -> "4, 0, 1".
func (c Change) String() string {
	name := c.Row
	if c.Table != "" {
		name = c.Table + "." + name
	}
	if c.Key != "" {
		name += "." + c.Key
	}
	switch {
	case !c.Was && c.Is:
		return name + ": new, " + strconv.Quote(c.New)
	case c.Was && !c.Is:
		return name + ": gone, was " + strconv.Quote(c.Old)
	}
	return name + ": " + strconv.Quote(c.Old) + " -> " + strconv.Quote(c.New)
}
