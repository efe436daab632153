package sheet

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
)

// MoveRow puts a row behind the row named After of the same table, or before
// all others where After is "". Comments on its own lines go with it, those
// on lines of their own stay. What is written in scattered dotted keys, or
// otherwise than its new neighbour, is refused.
type MoveRow struct{ Table, Row, After string }

// DuplicateRow adds a row As with the cells of a row, behind it and written
// the same way. Comments stay with the first.
type DuplicateRow struct{ Table, Row, As string }

func (e MoveRow) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	if r == nil {
		return nil, err
	}
	at := t.index(e.Row)
	before, err := s.after(e.Table, e.After)
	if err != nil {
		return nil, err
	}
	if at == before || at == before+1 {
		return nil, nil
	}
	other := t.Rows[0]
	if before >= 0 {
		other = t.Rows[before]
	}
	p, err := movable(r)
	if err != nil {
		return nil, err
	}
	q, err := movable(&other)
	if err != nil {
		return nil, err
	}
	stuck := diag.New(fmt.Sprintf("%q and %q are written in different places", e.Row, other.Name), "move it in a text editor")
	switch {
	case p.braces != q.braces, p.header != q.header, !p.header && p.section != q.section:
		return nil, stuck
	case p.braces != nil:
		entry := s.text[p.whole.Start:p.whole.End]
		out := s.cutInner(p.braces, func(at diag.Span) bool { return at == p.whole })
		if before < 0 {
			return append(out, splice{diag.Between(q.whole.Start, q.whole.Start), entry + ", "}), nil
		}
		return append(out, splice{diag.Between(q.whole.End, q.whole.End), ", " + entry}), nil
	}
	own, to := s.lines(p.whole), s.lines(q.whole)
	block := s.text[own.Start:own.End]
	if !strings.HasSuffix(block, "\n") {
		block += s.eol()
	}
	cut := s.cutLines(p.whole)
	if p.header {
		block += s.eol() // the blank line that sets a header off
		cut = splice{diag.Between(own.Start, s.afterBlank(own.End)), ""}
	}
	switch {
	case before < 0:
		return []splice{cut, {diag.Between(to.Start, to.Start), block}}, nil
	case !strings.HasSuffix(s.text[:to.End], "\n"):
		block = s.eol() + block
	case p.header && s.afterBlank(to.End) == to.End:
		block = s.eol() + strings.TrimSuffix(block, s.eol())
	case p.header:
		to.End = s.afterBlank(to.End)
	}
	return []splice{cut, {diag.Between(to.End, to.End), block}}, nil
}

// movable gives the one piece of text that a row is written in.
func movable(r *Row) (piece, error) {
	if r.form == formKept || r.form == formNone {
		return piece{}, errKept(r.Name)
	}
	if len(r.pieces) != 1 {
		return piece{}, diag.New(fmt.Sprintf("%q is written in several places", r.Name), "write it as "+encodeName(r.Name)+" = { ... } to move it")
	}
	return r.pieces[0], nil
}

func (e DuplicateRow) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	if r == nil {
		return nil, err
	}
	if err := checkNew("the new name", t, e.As); err != nil {
		return nil, err
	}
	if r.form == formKept || r.form == formNone {
		return nil, errKept(e.Row)
	}
	last := r.pieces[len(r.pieces)-1]
	var copied []string
	for _, p := range r.pieces {
		if p.header != last.header || p.braces != last.braces {
			return nil, errKept(e.Row)
		}
		copied = append(copied, s.text[p.whole.Start:p.name.Start]+encodeName(e.As)+s.text[p.name.End:p.whole.End])
	}
	if last.braces != nil {
		return []splice{{diag.Between(last.whole.End, last.whole.End), ", " + strings.Join(copied, ", ")}}, nil
	}
	eol := s.eol()
	if last.header {
		return []splice{s.lineAfter(last.whole.End, eol+strings.Join(copied, eol+eol))}, nil
	}
	indent := s.text[lineStart(s.text, last.whole.Start):last.whole.Start]
	return []splice{s.lineAfter(last.whole.End, indent+strings.Join(copied, eol+indent))}, nil
}
