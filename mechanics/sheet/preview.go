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
	var t *Table
	var r *Row
	var c *Cell
	next.Tables, t = having(s.Tables, func(t Table) bool { return t.Name == ref.Table }, Table{Name: ref.Table})
	t.Rows, r = having(t.Rows, func(r Row) bool { return r.Name == ref.Row }, Row{Name: ref.Row})
	key, plain := r.keyIn(ref.Table, ref.Key), r.plain()
	r.Cells, c = having(r.Cells, func(c Cell) bool { return c.Key == key }, Cell{Key: key})
	if plain && key != "" && ref.Table != "" {
		r.Cells[0].Key = defaultKey(ref.Table)
	}
	c.Text, c.Readable = text, true
	return &next
}

// having is a copy of a list, and what it has in there, new where it has none.
func having[T any](list []T, is func(T) bool, fresh T) ([]T, *T) {
	list = slices.Clone(list)
	i := slices.IndexFunc(list, is)
	if i < 0 {
		i, list = len(list), append(list, fresh)
	}
	return list, &list[i]
}
