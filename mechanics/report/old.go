package report

import "trivet/mechanics/doc"

type oldTable struct {
	Head []string
	Rows [][]doc.Inline
}

type oldBlock struct {
	Text    []doc.Inline
	Formula *doc.Math
	Aligned []doc.Math
	Table   *oldTable
	Boxed   *doc.Math
	OK      *bool
	Risk    bool
}

func old(b doc.Block) oldBlock {
	switch b := b.(type) {
	case *doc.Paragraph:
		return oldBlock{Text: b.Text}
	case *doc.Check:
		ok := b.State != doc.Fails
		return oldBlock{Text: b.Text, OK: &ok, Risk: b.State == doc.AtRisk}
	case *doc.Formula:
		return oldBlock{Aligned: b.Of}
	case *doc.Boxed:
		return oldBlock{Boxed: &b.Math}
	case *doc.Table:
		t := &oldTable{Rows: b.Rows}
		for _, c := range b.Columns {
			t.Head = append(t.Head, c.Head)
		}
		return oldBlock{Table: t}
	}
	return oldBlock{}
}

func olds(of []doc.Block) (out []oldBlock) {
	for _, b := range of {
		out = append(out, old(b))
	}
	return out
}
