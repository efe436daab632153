package sheet

import "strconv"

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
	before := cellsOf(old)
	for _, t := range now.Tables {
		for _, r := range t.Rows {
			eachCell(t.Name, r, func(ref Ref, text string) {
				was, ok := before[ref]
				if !ok || was != text {
					out = append(out, Change{ref, was, text, ok, true})
				}
			})
		}
	}
	after := cellsOf(now)
	for _, t := range old.Tables {
		for _, r := range t.Rows {
			eachCell(t.Name, r, func(ref Ref, text string) {
				if _, ok := after[ref]; !ok {
					out = append(out, Change{ref, text, "", true, false})
				}
			})
		}
	}
	return out
}

func cellsOf(s *Sheet) map[Ref]string {
	all := map[Ref]string{}
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			eachCell(t.Name, r, func(ref Ref, text string) { all[ref] = text })
		}
	}
	return all
}

func eachCell(table string, r Row, do func(Ref, string)) {
	if len(r.Cells) == 0 {
		do(Ref{table, r.Name, ""}, "")
	}
	for _, c := range r.Cells {
		do(Ref{table, r.Name, c.Key}, c.Text)
	}
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
