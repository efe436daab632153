package origin

import "trivet/mechanics/doc"

// found is a number of a block: the formula that it stands in, and the way to it.
type found struct {
	formula *doc.Math
	way     []int
	row     []doc.Inline // of a table
	head    string       // of its column
}

// each goes through the numbers of a block until it is told that it is enough.
func each(b doc.Block, do func(found, *doc.Math) bool) {
	on := true
	formula := func(f found) {
		if on && f.formula != nil {
			on = walk(f, f.formula, do)
		}
	}
	table, isTable := b.(*doc.Table)
	if !isTable {
		for _, m := range doc.Formulas(b) {
			formula(found{formula: m})
		}
		return
	}
	for _, row := range table.Rows {
		for k := range row {
			if k < len(table.Columns) {
				formula(found{formula: row[k].Math, row: row, head: table.Columns[k].Head})
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
func number(b doc.Block, k int) (at found, m *doc.Math) {
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
