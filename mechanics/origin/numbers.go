package origin

import "trivet/mechanics/doc"

// found is a number of a block: the formula that it stands in, and the way to it.
type found struct {
	formula *doc.Math
	way     []int
	row     []doc.Inline // of a table
	head    string       // of its column
}

// Numbers are the numbers of a block as they are shown, without signs, in the order
// of its formulas. A power is not one of them.
func Numbers(b *doc.Block) []string {
	var of []string
	each(b, func(f found, m *doc.Math) bool {
		of = append(of, m.Text)
		return true
	})
	return of
}

// each goes through the numbers of a block until it is told that it is enough.
func each(b *doc.Block, do func(found, *doc.Math) bool) {
	on := true
	formula := func(f found) {
		if on && f.formula != nil {
			on = walk(f, f.formula, do)
		}
	}
	formula(found{formula: b.Formula})
	formula(found{formula: b.Boxed})
	for k := range b.Aligned {
		formula(found{formula: &b.Aligned[k]})
	}
	for k := range b.Text {
		formula(found{formula: b.Text[k].Math})
	}
	if b.Table == nil {
		return
	}
	for _, row := range b.Table.Rows {
		for k := range row {
			if k < len(b.Table.Head) {
				formula(found{formula: row[k].Math, row: row, head: b.Table.Head[k]})
			}
		}
	}
}

func walk(f found, m *doc.Math, do func(found, *doc.Math) bool) bool {
	if m.Op == doc.Number {
		return do(f, m)
	}
	for k := range m.Of {
		if m.Op == doc.Power && k > 0 {
			break
		}
		next := f
		next.way = append(f.way[:len(f.way):len(f.way)], k)
		if !walk(next, &m.Of[k], do) {
			return false
		}
	}
	return true
}

// number finds number k of a block.
func number(b *doc.Block, k int) (at found, m *doc.Math) {
	n := 0
	each(b, func(f found, x *doc.Math) bool {
		if n == k {
			at, m = f, x
		}
		n++
		return m == nil
	})
	return at, m
}

// on gives the formulas on the way to a number, the whole first.
func (f found) on() []*doc.Math {
	of := []*doc.Math{f.formula}
	for _, k := range f.way {
		m := of[len(of)-1]
		of = append(of, &m.Of[k])
	}
	return of
}
