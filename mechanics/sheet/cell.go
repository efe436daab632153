package sheet

import (
	"fmt"

	"trivet/mechanics/diag"
)

// SetCell gives a cell a text. A cell the row lacks is added: a plain value
// then becomes a table in which it has the table's usual key ("at" for a
// point, "printed" for an answer, else "value"). A row of the table "" that
// is not there is added.
type SetCell struct {
	Ref
	Text string
}

// DropCell takes a cell out of its row. Where there is none nothing happens.
type DropCell struct{ Ref }

func (e SetCell) edit(s *Sheet) ([]splice, error) {
	if err := checkText("this", e.Text); err != nil {
		return nil, err
	}
	if e.Table == "" && e.Key != "" {
		return nil, diag.New(fmt.Sprintf("%q is a single value", e.Row), "set it without a key")
	}
	_, r, err := s.find(e.Table, e.Row)
	switch {
	case err != nil && e.Table == "":
		return AddRow{Name: e.Row, Cells: []KeyText{{"", e.Text}}}.edit(s)
	case err != nil:
		return nil, err
	}
	key := r.keyIn(e.Table, e.Key)
	c, ok := r.Cell(key)
	switch {
	case ok && c.Readable && c.Text == e.Text:
		return nil, nil
	case ok && c.Readable:
		return []splice{{c.value, encode(e.Text, s.text[c.value.Start:c.value.End])}}, nil
	case ok, r.plain() && !r.Cells[0].Readable:
		return nil, errKept(e.Row)
	}
	if err := checkName("the key", key); err != nil {
		return nil, err
	}
	key, value := EncodeName(key), encode(e.Text, "")
	last := r.pieces[len(r.pieces)-1]
	switch {
	case r.plain():
		at := r.Cells[0].value
		return []splice{
			insert(at.Start, "{ "+EncodeName(defaultKey(e.Table))+" = "),
			insert(at.End, ", "+key+" = "+value+" }"),
		}, nil
	case r.group != nil:
		return []splice{s.put(r.group.last(), key, value)}, nil
	case !last.header: // A.at = "..."
		return []splice{s.put(last, s.text[last.whole.Start:last.name.End]+"."+key, value)}, nil
	}
	return nil, errKept(e.Row)
}

func (e DropCell) edit(s *Sheet) ([]splice, error) {
	_, r, err := s.find(e.Table, e.Row)
	if err != nil {
		return nil, err
	}
	c, ok := r.Cell(r.keyIn(e.Table, e.Key))
	switch {
	case !ok:
		return nil, nil
	case !c.Readable:
		return nil, errKept(e.Row)
	case r.plain() && e.Table != "":
		return nil, diag.New(fmt.Sprintf("this is the only cell of %q", e.Row), "delete the row")
	case !r.plain() && r.group == nil && len(r.pieces) == 1: // by a dotted key
		p := r.pieces[0]
		return []splice{{p.whole, s.text[p.whole.Start:p.name.End] + " = {}"}}, nil
	}
	return s.cut(c.entry), nil
}
