package sheet

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
	case r.form == formBare && key == defaultKey(table):
		return ""
	case r.form != formBare && r.form != formKept && key == "" && (r.form != formNone || len(r.Cells) > 0):
		return defaultKey(table)
	}
	return key
}

// With previews a cell as it is being typed: the same text and tables, with
// the text of one cell replaced, or added where the sheet has no such cell,
// row or table. Nothing is parsed; Text still gives the old text, and an edit
// applied to a preview is applied to the sheet it was made of.
func (s *Sheet) With(ref Ref, text string) *Sheet {
	next := &Sheet{text: s.text, sections: s.sections, under: s.under}
	if next.under == nil {
		next.under = s
	}
	next.Tables = make([]Table, len(s.Tables), len(s.Tables)+1)
	copy(next.Tables, s.Tables)
	t := next.table(ref.Table)
	if t == nil {
		next.Tables = append(next.Tables, Table{Name: ref.Table, own: -1})
		t = &next.Tables[len(next.Tables)-1]
	}
	rows := make([]Row, len(t.Rows), len(t.Rows)+1)
	copy(rows, t.Rows)
	i := t.index(ref.Row)
	if i < 0 {
		i = len(rows)
		rows = append(rows, Row{Name: ref.Row})
	}
	t.Rows = rows
	r := &rows[i]
	r.Cells = append(make([]Cell, 0, len(r.Cells)+1), r.Cells...)
	key := r.keyIn(ref.Table, ref.Key)
	if r.form == formBare && key != "" && ref.Table != "" {
		r.Cells[0].Key, r.form = defaultKey(ref.Table), formInline
	}
	for j := range r.Cells {
		if r.Cells[j].Key == key {
			r.Cells[j].Text, r.Cells[j].Readable = text, true
			return next
		}
	}
	r.Cells = append(r.Cells, Cell{Key: key, Text: text, Readable: true})
	return next
}
