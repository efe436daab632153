package sheet

import (
	"fmt"

	"github.com/pelletier/go-toml/v2/unstable"

	"trivet/mechanics/diag"
)

// line is a key and value that stand on a line of their own.
func (b *builder) line(n *unstable.Node) *diag.Error {
	whole := b.span(n.Raw)
	b.s.sections[len(b.s.sections)-1].end = whole.End
	if b.open != nil {
		r, _ := b.row(b.open.table, part{name: b.open.name})
		r.pieces[len(r.pieces)-1].whole.End = whole.End
	}
	path := append(b.path[:len(b.path):len(b.path)], b.parts(n)...)
	if b.kept || nameless(b.path) {
		return b.countAll(n)
	}
	return b.entry(path, len(b.path), n, nil)
}

// countAll counts what stands in a value that is kept without being read.
func (b *builder) countAll(n *unstable.Node) *diag.Error {
	if n.Kind == unstable.KeyValue || n.Kind == unstable.InlineTable {
		if err := b.counted(b.base); err != nil {
			return err
		}
	}
	switch n.Kind {
	case unstable.KeyValue:
		return b.countAll(n.Value())
	case unstable.Array, unstable.InlineTable:
		for it := n.Children(); it.Next(); {
			if err := b.countAll(it.Node()); err != nil {
				return err
			}
		}
	}
	return nil
}

// entry files a key and its value. The first settled parts of its path are
// named by what it stands in: a header, or the braces in.
func (b *builder) entry(path []part, settled int, n *unstable.Node, in *braces) *diag.Error {
	whole := b.span(n.Raw)
	if in != nil {
		in.inner = append(in.inner, whole)
	}
	last := path[len(path)-1]
	if err := b.counted(last.at.Start); err != nil {
		return err
	}
	if len(path) > maxDepth {
		return errorIn(last.at.Start, fmt.Sprintf("this name has more than %d parts", maxDepth), "a shorter one; a problem needs two")
	}
	v := n.Value()
	if nameless(path) {
		return b.countAll(v) // names no row: kept
	}
	c := Cell{keyAt: last.at, whole: whole, at: diag.Between(valueStart(b.s.text, last.at.End), whole.End), inner: in != nil}
	c.Text = b.s.text[c.at.Start:c.at.End]
	switch v.Kind {
	case unstable.String:
		c.Text, c.Readable = string(v.Data), true
	case unstable.Integer, unstable.Float, unstable.Bool:
		c.Readable = true
	}
	table := v.Kind == unstable.InlineTable
	if v.Kind == unstable.Array {
		if err := b.countAll(v); err != nil {
			return err
		}
	}
	switch {
	case len(path) == 1 && table:
		t := b.table(path[0])
		if b.s.Tables[t].braces != nil {
			return b.twice(0, path[0])
		}
		br := &braces{at: c.at}
		b.s.Tables[t].braces = br
		return b.inside(path, v, br)
	case len(path) == 1:
		return b.plain(0, path[0], c, in, maxTop)
	case len(path) == 2 && table:
		t := b.table(path[0])
		r, err := b.row(t, path[1])
		if err != nil {
			return err
		}
		if r.form != formNone {
			return b.twice(t, path[1])
		}
		r.form, r.braces = formInline, &braces{at: c.at}
		r.pieces = append(r.pieces, piece{name: path[1].at, whole: whole, braces: in, section: len(b.s.sections) - 1})
		return b.inside(path, v, r.braces)
	case len(path) == 2:
		return b.plain(b.table(path[0]), path[1], c, in, maxCell)
	}
	return b.member(path, settled, c, v, in)
}

// inside files the entries of an inline table.
func (b *builder) inside(path []part, v *unstable.Node, br *braces) *diag.Error {
	for it := v.Children(); it.Next(); {
		kv := it.Node()
		if kv.Kind != unstable.KeyValue {
			continue
		}
		all := append(path[:len(path):len(path)], b.parts(kv)...)
		if err := b.entry(all, len(path), kv, br); err != nil {
			return err
		}
	}
	return nil
}

// plain files a row that is one value.
func (b *builder) plain(t int, p part, c Cell, in *braces, limit int) *diag.Error {
	r, err := b.row(t, p)
	if err != nil {
		return err
	}
	if r.form != formNone {
		return b.twice(t, p)
	}
	r.form = formBare
	r.pieces = append(r.pieces, piece{name: p.at, whole: c.whole, braces: in, section: len(b.s.sections) - 1})
	if err := b.long(c, limit); err != nil {
		return err
	}
	return b.cell(r, c)
}

// member files a cell of a row that is a table.
func (b *builder) member(path []part, settled int, c Cell, v *unstable.Node, in *braces) *diag.Error {
	t := b.table(path[0])
	r, err := b.row(t, path[1])
	if err != nil {
		return err
	}
	if settled < 2 {
		if r.form == formBare || r.form == formInline {
			return b.twice(t, path[1])
		}
		r.form = formDotted
		r.pieces = append(r.pieces, piece{name: path[1].at, whole: c.whole, braces: in, section: len(b.s.sections) - 1})
	}
	c.Key, c.keyAt = path[2].name, path[2].at
	if len(path) > 3 {
		c.Readable, c.Text = false, b.s.text[c.at.Start:c.at.End]
	}
	if v.Kind == unstable.InlineTable {
		if err := b.countAll(v); err != nil {
			return err
		}
	}
	if err := b.long(c, maxCell); err != nil {
		return err
	}
	return b.cell(r, c)
}

func (b *builder) long(c Cell, limit int) *diag.Error {
	if c.Readable && len(c.Text) > limit {
		return errorIn(c.at.Start, fmt.Sprintf("this text has %d bytes, but at most %d are allowed", len(c.Text), limit), "shorten it")
	}
	return nil
}

// valueStart is where the value begins after a key that ends at i.
func valueStart(text string, i int) int {
	const blank = " \t"
	equals := skip(text, i, blank)
	return skip(text, equals+1, blank)
}
