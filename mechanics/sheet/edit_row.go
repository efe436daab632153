package sheet

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/diag"
)

func (e DeleteRow) edit(s *Sheet) ([]splice, error) {
	_, r, err := s.find(e.Table, e.Row)
	if r == nil {
		return nil, err
	}
	var out []splice
	inside := map[*braces][]diag.Span{}
	for _, p := range r.pieces {
		if p.braces != nil {
			inside[p.braces] = append(inside[p.braces], p.whole)
			continue
		}
		out = append(out, s.cutLines(p.whole))
	}
	for br, gone := range inside {
		out = append(out, s.cutInner(br, func(at diag.Span) bool { return slices.Contains(gone, at) })...)
	}
	return out, nil
}

func (e RenameRow) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	switch {
	case r == nil:
		return nil, err
	case e.To == e.Row:
		return nil, nil
	}
	if err := checkNew("the new name", t, e.To); err != nil {
		return nil, err
	}
	var out []splice
	for _, p := range r.pieces {
		out = append(out, splice{p.name, encodeName(e.To)})
	}
	return out, nil
}

// check refuses what cannot be a row, and names the cells of one that has
// several.
func (e AddRow) check() ([]KeyText, error) {
	if err := checkName("the name", e.Name); err != nil {
		return nil, err
	}
	if e.Table != "" {
		if err := checkName("the table's name", e.Table); err != nil {
			return nil, err
		}
	}
	cells := slices.Clone(e.Cells)
	for i := range cells {
		if err := checkCell(cells[i].Text, limitOf(e.Table)); err != nil {
			return nil, err
		}
		if len(cells) == 1 && cells[0].Key == "" {
			break
		}
		if cells[i].Key == "" {
			cells[i].Key = defaultKey(e.Table)
		}
		if err := checkName("the key", cells[i].Key); err != nil {
			return nil, err
		}
	}
	return cells, nil
}

// rowValue writes the cells of a row as the value of its name.
func rowValue(cells []KeyText) string {
	if len(cells) == 1 && cells[0].Key == "" {
		return encode(cells[0].Text, "")
	}
	var inner []string
	for _, c := range cells {
		inner = append(inner, encodeName(c.Key)+" = "+encode(c.Text, ""))
	}
	if len(inner) == 0 {
		return "{}"
	}
	return "{ " + strings.Join(inner, ", ") + " }"
}

func (e AddRow) edit(s *Sheet) ([]splice, error) {
	cells, err := e.check()
	if err != nil {
		return nil, err
	}
	t := s.table(e.Table)
	if t != nil {
		if err := checkNew("the name", t, e.Name); err != nil {
			return nil, err
		}
	}
	after, err := s.after(e.Table, e.After)
	if err != nil {
		return nil, err
	}
	if e.Table == "" {
		if len(cells) != 1 || cells[0].Key != "" {
			return nil, diag.New(fmt.Sprintf("%q is a single value", e.Name), "one cell without a key")
		}
		return s.addTop(e.Name, cells[0].Text, e.After)
	}
	name, value := encodeName(e.Name), rowValue(cells)
	if t == nil {
		return s.addTable(e.Table, name+" = "+value), nil
	}
	if after >= 0 {
		if p, ok := lastLine(t.Rows[after]); ok {
			return s.addBeside(t, p, name, value), nil
		}
	}
	return s.addAtEnd(t, name, value)
}

// lastLine is the last piece of a row that is a key and value.
func lastLine(r Row) (piece, bool) {
	for _, p := range slices.Backward(r.pieces) {
		if !p.header {
			return p, true
		}
	}
	return piece{}, false
}

// addBeside adds a row after a key and value of another one of the table.
func (s *Sheet) addBeside(t *Table, p piece, name, value string) []splice {
	if len(s.sections[p.section].path) == 0 && p.braces == nil {
		name = encodeName(t.Name) + "." + name // points.A = "..." before any header
	}
	return s.behind(p, name, value)
}

// behind puts a key and value behind a piece, and writes them like it.
func (s *Sheet) behind(p piece, key, value string) []splice {
	if p.braces != nil {
		return []splice{s.putInner(p.braces, p.whole.End, key+" = "+value)}
	}
	return []splice{s.lineAfter(p.whole.End, s.assign(key, value, p.whole))}
}

func (s *Sheet) addAtEnd(t *Table, name, value string) ([]splice, error) {
	if t.own >= 0 {
		sec := s.sections[t.own]
		var like diag.Span
		for _, r := range t.Rows {
			for _, p := range r.pieces {
				if p.section == t.own && p.whole.End > like.End {
					like = p.whole
				}
			}
		}
		return []splice{s.lineAfter(sec.end, s.assign(name, value, like))}, nil
	}
	if t.braces != nil {
		return []splice{s.putInner(t.braces, 0, name+" = "+value)}, nil
	}
	for _, r := range slices.Backward(t.Rows) {
		if p, ok := lastLine(r); ok {
			return s.addBeside(t, p, name, value), nil
		}
	}
	last := s.lastSection(t.Name)
	if last < 0 || s.sections[last].list && len(s.sections[last].path) == 1 {
		return nil, errKept(t.Name)
	}
	return []splice{s.block(s.sections[last].end, t.Name, name+" = "+value)}, nil
}
