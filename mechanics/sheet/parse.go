package sheet

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"trivet/mechanics/diag"
)

// What a sheet may hold. A problem stays far below most of these; they keep a
// wrong file from costing time or memory. The largest that is worked out within
// a keystroke or two is a truss of 3,000 bars: 1,500 joints, each with a load,
// make 6,000 rows of 19,500 entries.
const (
	MaxBytes  = 1 << 20  // bytes of the text
	maxDepth  = 8        // arrays and tables within each other, and parts of a dotted name
	maxRows   = 6 << 10  // rows in all tables together
	maxValues = 20 << 10 // headers and values; the check for names used twice takes time as its square
	maxCells  = 256      // cells of one row
	maxCell   = 4096     // bytes of a cell's text
	maxTop    = 64 << 10 // bytes of a text before the first header, such as the statement
)

// Parse reads the text of a sheet. An error is an *diag.Error.
func Parse(text []byte) (*Sheet, error) { return parse(string(text)) }

func parse(text string) (*Sheet, error) {
	b := builder{s: &Sheet{text: text, Tables: []Table{{}}}, tables: map[string]int{"": 0}, rows: map[Ref]int{}}
	err := checkSize(text)
	if err == nil {
		err = b.read()
	}
	if err == nil {
		err = b.unmarshal()
	}
	if err != nil {
		return nil, &diag.Error{Place: place(text, err.Span), Msg: err.Msg, Hint: err.Hint}
	}
	if len(b.s.Tables[0].Rows) == 0 {
		b.s.Tables = b.s.Tables[1:]
	}
	return b.s, nil
}

// checkSize refuses what is too long, or in another encoding, before anything reads it as TOML.
func checkSize(text string) *diag.Error {
	switch {
	case len(text) > MaxBytes:
		return errorIn(0, "the sheet is larger than 1 MiB", "check that this is the intended file")
	case strings.HasPrefix(text, "\xff\xfe"), strings.HasPrefix(text, "\xfe\xff"):
		return errorIn(0, "the text is in UTF-16", "save it as UTF-8")
	}
	return nil
}

// builder collects rows while the expressions of a text go by. What TOML forbids, such as a
// name used twice, the library refuses in the end; until then all that counts is that
// nothing is lost.
type builder struct {
	s      *Sheet
	base   int            // bytes before what the parser sees: a byte order mark
	tables map[string]int // where they stand in the sheet
	rows   map[Ref]int    // and rows in their table
	values int
}

// part is one name of a dotted key or header.
type part struct {
	name string
	at   diag.Span
}

// read walks the expressions of the text without its byte order mark.
func (b *builder) read() *diag.Error {
	if strings.HasPrefix(b.s.text, bom) {
		b.base = len(bom)
	}
	b.s.sections = []*group{{at: diag.Between(b.base, b.base)}}
	b.s.Tables[0].group = b.s.sections[0]
	var p unstable.Parser
	p.Reset([]byte(b.s.text[b.base:]))
	for p.NextExpression() {
		e := p.Expression()
		key := e.Key()
		key.Next()
		err := b.bounded(e, b.span(key.Node().Raw).Start, 0)
		switch {
		case err != nil:
		case e.Kind == unstable.KeyValue:
			err = b.entry(e, b.s.sections[len(b.s.sections)-1])
		default:
			err = b.header(e)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// unmarshal has the library refuse what is not TOML.
func (b *builder) unmarshal() *diag.Error {
	var all map[string]any
	err := toml.Unmarshal([]byte(b.s.text[b.base:]), &all)
	var d *toml.DecodeError
	switch {
	case err == nil:
		return nil
	case !errors.As(err, &d):
		return errorIn(0, err.Error(), "")
	}
	line, column := d.Position()
	at := b.base
	for range line - 1 {
		at = nextLine(b.s.text, at)
	}
	return inWords(b.s.text, min(at+column-1, len(b.s.text)), d.Error())
}

func (b *builder) span(r unstable.Range) diag.Span {
	start := b.base + int(r.Offset)
	return diag.Between(start, start+int(r.Length))
}

// bounded refuses more values than any problem has, and what is nested deeper; at is
// the name they stand behind.
func (b *builder) bounded(n *unstable.Node, at, depth int) *diag.Error {
	switch n.Kind {
	case unstable.Key:
		return nil
	case unstable.KeyValue:
		at = b.span(n.Raw).Start
	case unstable.Array, unstable.InlineTable:
		depth++
		fallthrough
	default:
		b.values++
	}
	switch {
	case depth > maxDepth:
		return errorIn(at, tooDeep.Msg, tooDeep.Hint)
	case b.values > maxValues:
		return errorIn(at, fmt.Sprintf("a sheet has at most %d entries", maxValues), "check that this is the intended file")
	}
	for it := n.Children(); it.Next(); {
		if err := b.bounded(it.Node(), at, depth); err != nil {
			return err
		}
	}
	return nil
}

// under is the path of a key or header below another path.
func (b *builder) under(above []part, n *unstable.Node) ([]part, *diag.Error) {
	path := slices.Clip(above)
	for it := n.Key(); it.Next(); {
		k := it.Node()
		path = append(path, part{string(k.Data), b.span(k.Raw)})
	}
	if len(path) > maxDepth {
		return nil, errorIn(path[len(path)-1].at.Start, fmt.Sprintf("this name has more than %d parts", maxDepth), "a shorter one; a problem needs two")
	}
	return path, nil
}

// nameless tells that a path names no row.
func nameless(path []part) bool {
	return slices.ContainsFunc(path[:min(3, len(path))], func(p part) bool { return p.name == "" })
}

// header opens a section.
func (b *builder) header(n *unstable.Node) *diag.Error {
	path, err := b.under(nil, n)
	if err != nil {
		return err
	}
	sec := &group{path: path, list: n.Kind == unstable.ArrayTable, kept: nameless(path)}
	brackets := 1
	if sec.list {
		brackets = 2
	}
	first, last := path[0].at.Start, path[len(path)-1].at.End
	sec.at.Start = strings.LastIndexByte(b.s.text[:first], '[') + 1 - brackets
	sec.at.End = last + strings.IndexByte(b.s.text[last:], ']') + brackets
	b.s.sections = append(b.s.sections, sec)
	if sec.kept {
		return nil
	}
	t := b.table(path[0])
	t.Listed = t.Listed || sec.list && len(path) == 1
	switch {
	case t.Listed:
		sec.kept = true
	case len(path) == 1:
		t.group = sec
	}
	if sec.kept || t.group == sec {
		return nil
	}
	r, err := b.row(path) // with a header of its own: [points.A]
	if err != nil {
		return err
	}
	e := entry{name: path[1].at, value: sec.at, whole: sec.at, in: sec, header: true}
	listed := r.listed() || sec.list && len(path) == 2
	sec.kept = listed || sec.list
	r.pieces = append(r.pieces, e)
	kept := Cell{Text: b.s.text[sec.at.Start:sec.at.End], entry: e}
	if len(path) > 2 && !listed {
		kept.Key, kept.name = path[2].name, path[2].at
	} else if !listed {
		r.group = sec
		return nil
	}
	return r.add(path[0].name, kept)
}

// table gives the table of a path, new or not. The pointer holds until the next call.
func (b *builder) table(p part) *Table {
	i, known := b.tables[p.name]
	if !known {
		i = len(b.s.Tables)
		b.tables[p.name], b.s.Tables = i, append(b.s.Tables, Table{Name: p.name, at: p.at})
	}
	return &b.s.Tables[i]
}

// row gives the row of a path, new or not. The pointer holds until the next call.
func (b *builder) row(path []part) (*Row, *diag.Error) {
	t, p := b.table(path[0]), path[1]
	ref := Ref{Table: t.Name, Row: p.name}
	i, known := b.rows[ref]
	if !known {
		if len(b.rows) == maxRows {
			return nil, errorIn(p.at.Start, fmt.Sprintf("a sheet has at most %d rows", maxRows), "split the problem into several sheets")
		}
		i = len(t.Rows)
		b.rows[ref], t.Rows = i, append(t.Rows, Row{Name: p.name})
	}
	return &t.Rows[i], nil
}

// entry files a key and its value below what it stands in.
func (b *builder) entry(n *unstable.Node, in *group) *diag.Error {
	path, err := b.under(in.path, n)
	if err != nil {
		return err
	}
	last := path[len(path)-1].at
	equals := last.End + strings.IndexByte(b.s.text[last.End:], '=')
	e := entry{name: last, whole: b.span(n.Raw), in: in}
	e.value = diag.Between(skip(b.s.text, equals+1, " \t"), e.whole.End)
	in.entries = append(in.entries, e)
	if in.kept || nameless(path) {
		return nil
	}
	v := n.Value()
	if len(path) == 1 && v.Kind == unstable.InlineTable {
		t := b.table(path[0])
		t.group = &group{at: e.value, path: path, braces: true}
		return b.inside(v, t.group)
	}
	limit := maxCell
	if len(path) == 1 { // a row of the table ""
		path, limit = append([]part{{}}, path...), maxTop
	}
	r, err := b.row(path)
	if err != nil {
		return err
	}
	if len(in.path) < 2 {
		e.name = path[1].at
		r.pieces = append(r.pieces, e)
	}
	if len(path) == 2 && v.Kind == unstable.InlineTable {
		r.group = &group{at: e.value, path: path, braces: true}
		return b.inside(v, r.group)
	}
	c := Cell{Text: b.s.text[e.value.Start:e.value.End], entry: e}
	if len(path) > 2 {
		c.Key, c.name = path[2].name, path[2].at
	}
	switch {
	case len(path) > 3:
	case v.Kind == unstable.String:
		c.Text, c.Readable = string(v.Data), true
	case v.Kind == unstable.Integer, v.Kind == unstable.Float, v.Kind == unstable.Bool:
		c.Readable = true
	}
	if c.Readable && len(c.Text) > limit {
		return errorIn(c.value.Start, fmt.Sprintf("this text has %d bytes, but at most %d are allowed", len(c.Text), limit), "shorten it")
	}
	return r.add(path[0].name, c)
}

// inside files the entries of an inline table.
func (b *builder) inside(v *unstable.Node, in *group) *diag.Error {
	for it := v.Children(); it.Next(); {
		if err := b.entry(it.Node(), in); err != nil {
			return err
		}
	}
	return nil
}

// add adds a cell to a row of a table. Kept pieces of one cell, such as at.x and at.y, fall
// together.
func (r *Row) add(table string, c Cell) *diag.Error {
	switch old, there := r.Cell(c.Key); {
	case there && !old.Readable && !c.Readable:
		return nil
	case r.plain(), c.Key == "" && len(r.Cells) > 0:
		return errorIn(r.pieces[len(r.pieces)-1].name.Start, fmt.Sprintf("the name %q is used twice%s", r.Name, inTable(table)), "rename one of them")
	case there:
		return errorIn(c.name.Start, fmt.Sprintf("%q is used twice in the row %q", c.Key, r.Name), "remove one of them")
	}
	if len(r.Cells) == maxCells {
		return errorIn(c.name.Start, fmt.Sprintf("the row %q has more than %d cells", r.Name, maxCells), "check that this is the intended file")
	}
	r.Cells = append(r.Cells, c)
	return nil
}
