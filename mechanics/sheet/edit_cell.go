package sheet

import (
	"fmt"

	"trivet/mechanics/diag"
)

func (e SetCell) edit(s *Sheet) ([]splice, error) {
	if err := checkCell(e.Text, limitOf(e.Table)); err != nil {
		return nil, err
	}
	if e.Table == "" && e.Key != "" {
		return nil, diag.New(fmt.Sprintf("%q is a single value", e.Row), "set it without a key")
	}
	t, r, err := s.find(e.Table, e.Row)
	if r == nil {
		if e.Table == "" {
			return s.addTop(e.Row, e.Text, "")
		}
		return nil, err
	}
	key := r.keyIn(e.Table, e.Key)
	c, ok := r.Cell(key)
	switch {
	case ok && c.Readable && c.Text == e.Text:
		return nil, nil
	case ok && c.Readable:
		return []splice{{c.at, encode(e.Text, s.text[c.at.Start:c.at.End])}}, nil
	case ok, r.form == formKept, r.form == formBare && !r.Cells[0].Readable:
		return nil, errKept(e.Row)
	}
	if err := checkName("the key", key); err != nil {
		return nil, err
	}
	return s.addCell(t, r, encodeName(key), encode(e.Text, ""))
}

// addCell adds a cell the row lacks, where the form of the row puts it.
func (s *Sheet) addCell(t *Table, r *Row, key, value string) ([]splice, error) {
	switch r.form {
	case formBare:
		c := r.Cells[0]
		return []splice{
			{diag.Between(c.at.Start, c.at.Start), "{ " + encodeName(defaultKey(t.Name)) + " = "},
			{diag.Between(c.at.End, c.at.End), ", " + key + " = " + value + " }"},
		}, nil
	case formInline:
		return []splice{s.putInner(r.braces, 0, key+" = "+value)}, nil
	case formHeader:
		for _, p := range r.pieces {
			if sec := s.sections[p.section]; p.header && len(sec.path) == 2 {
				var like diag.Span
				for _, c := range r.Cells {
					if c.at.Start > sec.head.End && c.whole.End <= sec.end {
						like = c.whole
					}
				}
				return []splice{s.lineAfter(sec.end, s.assign(key, value, like))}, nil
			}
		}
	case formDotted:
		p := r.pieces[len(r.pieces)-1]
		if p.header {
			break
		}
		return s.behind(p, s.text[p.whole.Start:p.name.End]+"."+key, value), nil
	}
	return nil, errKept(r.Name)
}

func (e DropCell) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	if r == nil {
		return nil, err
	}
	key := r.keyIn(e.Table, e.Key)
	c, ok := r.Cell(key)
	switch {
	case !ok:
		return nil, nil
	case !c.Readable:
		return nil, errKept(e.Row)
	case r.form == formBare && e.Table == "":
		return DeleteRow{e.Table, e.Row}.edit(s)
	case r.form == formBare:
		return nil, diag.New(fmt.Sprintf("this is the only cell of %q", e.Row), "delete the row")
	}
	if r.form == formDotted && len(r.pieces) == 1 {
		p := r.pieces[0]
		return []splice{{p.whole, s.text[p.whole.Start:p.name.End] + " = {}"}}, nil
	}
	if !c.inner {
		return []splice{{s.lines(c.whole), ""}}, nil
	}
	br := r.braces
	if br == nil {
		br = t.braces
	}
	return s.cutInner(br, func(at diag.Span) bool { return at == c.whole }), nil
}
