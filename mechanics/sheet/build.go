package sheet

import (
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"

	"trivet/mechanics/diag"
)

// builder collects rows while the expressions of a text go by.
type builder struct {
	s      *Sheet
	base   int            // bytes before what the parser sees: a byte order mark
	seen   map[string]int // table name -> index in s.Tables
	rows   map[rowKey]int // row -> index in the table's Rows
	heads  map[string]int // path of a [header] -> times seen
	lists  map[string]bool
	values int
	path   []part  // of the current header
	kept   bool    // below a [[header]]: survives, but no rows are known
	open   *rowKey // the row of the current [table.row] header
}

type rowKey struct {
	table int
	name  string
}

// part is one name of a dotted key or header.
type part struct {
	name string
	at   diag.Span
}

func newBuilder(text string) *builder {
	b := &builder{
		s:    &Sheet{text: text, Tables: []Table{{own: 0}}},
		seen: map[string]int{"": 0}, rows: map[rowKey]int{},
		heads: map[string]int{}, lists: map[string]bool{},
	}
	if strings.HasPrefix(text, bom) {
		b.base = len(bom)
	}
	b.s.sections = []section{{head: diag.Between(b.base, b.base), end: b.base}}
	return b
}

// finish drops the table of the keys before the first header where it is empty.
func (b *builder) finish() *Sheet {
	if len(b.s.Tables[0].Rows) == 0 {
		b.s.Tables = b.s.Tables[1:]
	}
	return b.s
}

func (b *builder) span(r unstable.Range) diag.Span {
	start := b.base + int(r.Offset)
	return diag.Between(start, start+int(r.Length))
}

func (b *builder) parts(n *unstable.Node) []part {
	var out []part
	for it := n.Key(); it.Next(); {
		k := it.Node()
		out = append(out, part{string(k.Data), b.span(k.Raw)})
	}
	return out
}

// counted refuses a text with more entries than any problem has.
func (b *builder) counted(at int) *diag.Error {
	if b.values++; b.values > maxValues {
		return errorIn(at, fmt.Sprintf("a sheet has at most %d entries", maxValues), "check that this is the intended file")
	}
	return nil
}

// joined is a path as one string; no name can hold the separator unescaped,
// as control characters do not stand in keys as they are.
func joined(path []part) string {
	var sb strings.Builder
	for _, p := range path {
		fmt.Fprintf(&sb, "%q.", p.name)
	}
	return sb.String()
}

func nameless(path []part) bool {
	return slices.ContainsFunc(path[:min(3, len(path))], func(p part) bool { return p.name == "" })
}

// header opens a section.
func (b *builder) header(n *unstable.Node) *diag.Error {
	path := b.parts(n)
	start := strings.LastIndexByte(b.s.text[:path[0].at.Start], '[')
	end := path[len(path)-1].at.End
	end += strings.IndexByte(b.s.text[end:], ']') + 1
	list := n.Kind == unstable.ArrayTable
	if list {
		start, end = start-1, end+1
	}
	head := diag.Between(start, end)
	if err := b.counted(start); err != nil {
		return err
	}
	if len(path) > maxDepth {
		return errorIn(start, fmt.Sprintf("the name of this table has more than %d parts", maxDepth), "a shorter one; a problem needs two")
	}
	sec := section{head: head, end: end, list: list}
	for _, p := range path {
		sec.path = append(sec.path, p.name)
	}
	b.s.sections = append(b.s.sections, sec)
	if list {
		b.lists[joined(path)] = true
	}
	listed := 0 // how many parts name the first list on the way
	for i := range path {
		if b.lists[joined(path[:i+1])] {
			listed = i + 1
			break
		}
	}
	b.path, b.kept, b.open = path, listed > 0, nil
	if nameless(path) {
		return nil
	}
	if !b.kept {
		if b.heads[joined(path)]++; b.heads[joined(path)] > 1 {
			return errorIn(start, fmt.Sprintf("the table %s occurs twice", b.s.text[start:end]), "put the rows of both under one header")
		}
	}
	t := b.table(path[0])
	if len(path) == 1 && list {
		b.s.Tables[t].Listed = true
	} else if len(path) == 1 {
		b.s.Tables[t].own = len(b.s.sections) - 1
	}
	if len(path) == 1 || listed == 1 {
		return nil
	}
	return b.headRow(t, path, head, listed)
}

// headRow is a row with a header of its own: [points.A].
func (b *builder) headRow(t int, path []part, head diag.Span, listed int) *diag.Error {
	r, err := b.row(t, path[1])
	if err != nil {
		return err
	}
	if r.form == formBare || r.form == formInline {
		return b.twice(t, path[1])
	}
	r.pieces = append(r.pieces, piece{name: path[1].at, whole: head, section: len(b.s.sections) - 1, header: true})
	if len(path) == 2 || r.form == formNone {
		r.form = formHeader
	}
	b.open = &rowKey{t, path[1].name}
	kept := Cell{at: head, keyAt: path[1].at, whole: head, Text: b.s.text[head.Start:head.End]}
	switch {
	case listed == 2:
		r.form = formKept
		if len(r.Cells) == 0 {
			r.Cells = append(r.Cells, kept)
		}
	case len(path) > 2:
		kept.Key, kept.keyAt = path[2].name, path[2].at
		return b.cell(r, kept)
	}
	return nil
}

// table gives the index of a table, new or not.
func (b *builder) table(p part) int {
	t, ok := b.seen[p.name]
	if !ok {
		t = len(b.s.Tables)
		b.seen[p.name] = t
		b.s.Tables = append(b.s.Tables, Table{Name: p.name, at: p.at, own: -1})
	}
	return t
}

// row gives a row, new or not. The pointer holds until the next call.
func (b *builder) row(t int, p part) (*Row, *diag.Error) {
	tab := &b.s.Tables[t]
	k := rowKey{t, p.name}
	i, ok := b.rows[k]
	if !ok {
		if len(b.rows) == maxRows {
			return nil, errorIn(p.at.Start, fmt.Sprintf("a sheet has at most %d rows", maxRows), "split the problem into several sheets")
		}
		i = len(tab.Rows)
		b.rows[k] = i
		tab.Rows = append(tab.Rows, Row{Name: p.name})
	}
	return &tab.Rows[i], nil
}

func (b *builder) twice(t int, p part) *diag.Error {
	where := inTable(b.s.Tables[t].Name)
	return errorIn(p.at.Start, fmt.Sprintf("the name %q is used twice%s", p.name, where), "rename one of them")
}

// cell adds a cell to a row. Kept pieces of one cell, such as at.x and at.y,
// fall together.
func (b *builder) cell(r *Row, c Cell) *diag.Error {
	for i := range r.Cells {
		if r.Cells[i].Key != c.Key {
			continue
		}
		if r.Cells[i].Readable || c.Readable {
			return errorIn(c.keyAt.Start, fmt.Sprintf("%q is used twice in the row %q", c.Key, r.Name), "remove one of them")
		}
		return nil
	}
	if len(r.Cells) == maxCells {
		return errorIn(c.keyAt.Start, fmt.Sprintf("the row %q has more than %d cells", r.Name, maxCells), "check that this is the intended file")
	}
	r.Cells = append(r.Cells, c)
	return nil
}
