package sheet

import "slices"

// defaultKey is the key under which a plain value goes when its row becomes a
// table: A = "4, 0, 0" is A = { at = "4, 0, 0" }.
func defaultKey(table string) string {
	switch table {
	case "points":
		return "at"
	case "answers":
		return "printed"
	}
	return "value"
}

// keyIn is the key a cell has as this row is written: a plain value answers to
// "" and to the default key alike.
func (r *Row) keyIn(table, key string) string {
	switch {
	case table == "":
		return key
	case r.plain() && key == defaultKey(table):
		return ""
	case !r.plain() && key == "" && len(r.pieces)+len(r.Cells) > 0:
		return defaultKey(table)
	}
	return key
}

// With previews a cell as it is being typed: the same text and tables, with
// the text of one cell replaced, or added where the sheet has no such cell,
// row or table. Nothing is parsed; Text still gives the old text, and an edit
// applied to a preview is applied to the sheet it was made of.
func (s *Sheet) With(ref Ref, text string) *Sheet {
	next := *s
	if next.under == nil {
		next.under = s
	}
	next.Tables = slices.Clone(s.Tables)
	t := next.table(ref.Table)
	if t == nil {
		next.Tables = append(next.Tables, Table{Name: ref.Table})
		t = &next.Tables[len(next.Tables)-1]
	}
	t.Rows = slices.Clone(t.Rows)
	i := t.index(ref.Row)
	if i < 0 {
		i = len(t.Rows)
		t.Rows = append(t.Rows, Row{Name: ref.Row})
	}
	r := &t.Rows[i]
	r.Cells = slices.Clone(r.Cells)
	key := r.keyIn(ref.Table, ref.Key)
	if r.plain() && key != "" && ref.Table != "" {
		r.Cells[0].Key = defaultKey(ref.Table)
	}
	j := slices.IndexFunc(r.Cells, func(c Cell) bool { return c.Key == key })
	if j < 0 {
		j = len(r.Cells)
		r.Cells = append(r.Cells, Cell{Key: key})
	}
	r.Cells[j].Text, r.Cells[j].Readable = text, true
	return &next
}
