package sheet

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
)

// AddRow adds a row after the row named After, or at the end of the table,
// which is made where it is missing. One cell with the key "" is a plain
// value.
type AddRow struct {
	Table, Name, After string
	Cells              []KeyText
}

// KeyText is a cell of a row to be added.
type KeyText struct{ Key, Text string }

// DeleteRow takes a row out with the lines it stands on.
type DeleteRow struct{ Table, Row string }

// DeleteTable takes a table out, with the comments that stand right above its
// headers. Where there is none nothing happens.
type DeleteTable struct{ Table string }

// RenameRow gives a row another name. Cells that use the name are left alone.
type RenameRow struct{ Table, Row, To string }

// MoveRow puts a row behind the row named After of the same table, or before
// all others where After is "". Comments on its own lines go with it, those
// on lines of their own stay. What is written in scattered dotted keys, or
// otherwise than its new neighbour, is refused.
type MoveRow struct{ Table, Row, After string }

// DuplicateRow adds a row As with the cells of a row, behind it and written
// the same way. Comments stay with the first.
type DuplicateRow struct{ Table, Row, As string }

// The usual order of a sheet, which new entries and tables fall in with.
var (
	usualTop    = []string{"title", "statement", "lesson", "plane", "up", "g", "figures", "asked"}
	usualTables = []string{"units", "given", "points", "bodies", "lines", "joints", "couples", "distributed", "answers"}
)

// line is the last piece of rows that is a key and value.
func line(rows ...Row) (entry, bool) {
	for _, r := range slices.Backward(rows) {
		for _, p := range slices.Backward(r.pieces) {
			if !p.header {
				return p, true
			}
		}
	}
	return entry{}, false
}

// listed tells that a row is [[table.row]], which is kept and not edited.
func (r Row) listed() bool {
	return slices.ContainsFunc(r.pieces, func(p entry) bool { return p.in.list })
}

// value writes the cells of a row as the value of its name.
func (e AddRow) value() (string, error) {
	var inner []string
	for _, c := range e.Cells {
		if err := checkText("this", c.Text); err != nil {
			return "", err
		}
		value := encode(c.Text, "")
		if len(e.Cells) == 1 && c.Key == "" {
			return value, nil
		}
		key := cmp.Or(c.Key, defaultKey(e.Table))
		if err := checkName("the key", key); err != nil {
			return "", err
		}
		inner = append(inner, EncodeName(key)+" = "+value)
	}
	switch {
	case e.Table == "":
		return "", diag.New(fmt.Sprintf("%q is a single value", e.Name), "one cell without a key")
	case len(inner) == 0:
		return "{}", nil
	}
	return "{ " + strings.Join(inner, ", ") + " }", nil
}

func (e AddRow) edit(s *Sheet) ([]splice, error) {
	t := s.Table(e.Table)
	if err := checkNew("the name", t, e.Name); err != nil {
		return nil, err
	}
	if e.Table == "" {
		t.group = s.sections[0]
	} else if err := checkName("the table's name", e.Table); err != nil {
		return nil, err
	}
	value, err := e.value()
	if err != nil {
		return nil, err
	}
	var after Row
	if e.After != "" {
		if _, after, err = s.find(e.Table, e.After); err != nil {
			return nil, err
		}
	}
	usual := -1
	if e.Table == "" && e.After == "" {
		usual = slices.Index(usualTop, e.Name)
	}
	for i := usual - 1; i >= 0 && after.pieces == nil; i-- {
		after, _ = t.Row(usualTop[i])
	}
	name := EncodeName(e.Name)
	beside, ok := line(after)
	if !ok && t.group == nil {
		beside, ok = line(t.Rows...)
	}
	switch {
	case ok: // points.A = "..." before any header
		return []splice{s.put(beside, s.text[beside.whole.Start:beside.name.Start]+name, value)}, nil
	case usual >= 0 && len(t.Rows) > 0: // the first one
		first := t.Rows[0].pieces[0]
		return []splice{s.beside(first, s.assign(name, value, first), true)}, nil
	case t.group != nil:
		return []splice{s.put(t.group.last(), name, value)}, nil
	case t.Listed:
		return nil, errKept(t.Name)
	}
	block := "[" + EncodeName(e.Table) + "]" + s.eol() + name + " = " + value + s.eol()
	return []splice{s.paragraph(nextLine(s.text, s.tableEnd(e.Table)), block)}, nil
}

// tableEnd is where a header of a table goes: behind those that it has, else behind
// what comes before it in the usual order, else at the end of the file.
func (s *Sheet) tableEnd(table string) int {
	usual := slices.Index(usualTables, table)
	for _, name := range slices.Backward(append(slices.Clone(usualTables[:max(usual, 0)]), table)) {
		for _, sec := range slices.Backward(s.sections[1:]) {
			if sec.path[0].name == name {
				return sec.last().whole.End
			}
		}
	}
	if root := s.sections[0].last(); usual >= 0 && !root.header {
		return root.whole.End
	}
	return len(s.text)
}

func (e DeleteRow) edit(s *Sheet) ([]splice, error) {
	_, r, err := s.find(e.Table, e.Row)
	return s.cut(r.pieces...), err
}

func (e DeleteTable) edit(s *Sheet) ([]splice, error) {
	if e.Table == "" {
		return nil, diag.New("the rows before the first header are not a table", "delete them one by one")
	}
	t := s.Table(e.Table)
	var out []splice
	for _, sec := range s.sections[1:] {
		if sec.path[0].name == e.Table {
			begin := s.lines(sec.at).Start
			if above := commented().FindStringIndex(s.text[:begin]); above != nil {
				begin = above[0]
			}
			out = append(out, s.cutLines(diag.Between(begin, sec.last().whole.End)))
		}
	}
	if t.group != nil && t.group.braces {
		return append(out, s.cutLines(t.group.at)), nil
	}
	for _, r := range t.Rows { // answers.T1 = "..." before any header
		headed := func(p entry) bool { return p.in != s.sections[0] }
		out = append(out, s.cut(slices.DeleteFunc(slices.Clone(r.pieces), headed)...)...)
	}
	return out, nil
}

// commented are lines of comments that nothing follows.
var commented = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`(?m)(^[ \t]*#.*\n)+\z`) })

func (e RenameRow) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	if err != nil || e.To == e.Row {
		return nil, err
	}
	if err := checkNew("the new name", t, e.To); err != nil {
		return nil, err
	}
	return say.Each(r.pieces, func(p entry) splice { return splice{p.name, EncodeName(e.To)} }), nil
}

func (e MoveRow) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	if err != nil {
		return nil, err
	}
	other, first := t.Rows[0], e.After == ""
	if !first {
		if _, other, err = s.find(e.Table, e.After); err != nil {
			return nil, err
		}
	}
	if at := t.index(e.Row); at == t.index(e.After) || at == t.index(e.After)+1 {
		return nil, nil
	}
	p, err := r.movable()
	if err != nil {
		return nil, err
	}
	q, err := other.movable()
	switch {
	case err != nil:
		return nil, err
	case p.header != q.header, !p.header && p.in != q.in:
		return nil, diag.New(fmt.Sprintf("%q and %q are written in different places", e.Row, other.Name), "move it in a text editor")
	}
	text := s.text[p.whole.Start:p.whole.End]
	if !p.in.braces {
		own := s.lines(p.span())
		text = strings.TrimSuffix(strings.TrimSuffix(s.text[own.Start:own.End], "\n"), "\r")
	}
	return append(s.cut(p), s.beside(q, text, first)), nil
}

// movable gives the one piece of text that a row is written in.
func (r Row) movable() (entry, error) {
	switch {
	case r.listed():
		return entry{}, errKept(r.Name)
	case len(r.pieces) != 1:
		return entry{}, diag.New(fmt.Sprintf("%q is written in several places", r.Name), "write it as "+EncodeName(r.Name)+" = { ... } to move it")
	}
	return r.pieces[0], nil
}

func (e DuplicateRow) edit(s *Sheet) ([]splice, error) {
	t, r, err := s.find(e.Table, e.Row)
	if err != nil {
		return nil, err
	}
	if err := checkNew("the new name", t, e.As); err != nil {
		return nil, err
	}
	last := r.pieces[len(r.pieces)-1]
	var copied []string
	for _, p := range r.pieces {
		if p.header != last.header || r.listed() {
			return nil, errKept(e.Row)
		}
		at := p.span()
		copied = append(copied, s.text[at.Start:p.name.Start]+EncodeName(e.As)+s.text[p.name.End:at.End])
	}
	indent, between := "", ", "
	switch {
	case last.in.braces:
	case last.header:
		between = s.eol() + s.eol()
	default:
		indent = s.text[lineStart(s.text, last.whole.Start):last.whole.Start]
		between = s.eol() + indent
	}
	return []splice{s.beside(last, indent+strings.Join(copied, between), false)}, nil
}
