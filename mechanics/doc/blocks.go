package doc

import (
	"fmt"
	"strings"
)

// Formulas are the formulas of a block, in the order in which it is read.
func Formulas(b Block) (of []*Math) {
	inline := func(text []Inline) {
		for i := range text {
			if text[i].Math != nil {
				of = append(of, text[i].Math)
			}
		}
	}
	switch b := b.(type) {
	case *Paragraph:
		inline(b.Text)
	case *Check:
		inline(b.Text)
	case *Formula:
		for i := range b.Of {
			of = append(of, &b.Of[i])
		}
	case *Boxed:
		of = append(of, &b.Math)
	case *Table:
		for _, r := range b.Rows {
			inline(r)
		}
	case *List:
		for _, item := range b.Items {
			inline(item)
		}
	}
	return of
}

// Map is a copy of a block with each of its formulas replaced.
func Map(b Block, do func(Math) Math) Block {
	inline := func(text []Inline) []Inline {
		out := make([]Inline, len(text))
		for i, x := range text {
			if x.Math != nil {
				m := do(*x.Math)
				x.Math = &m
			}
			out[i] = x
		}
		return out
	}
	lines := func(of [][]Inline) [][]Inline {
		out := make([][]Inline, len(of))
		for i := range of {
			out[i] = inline(of[i])
		}
		return out
	}
	switch b := b.(type) {
	case *Paragraph:
		return &Paragraph{Text: inline(b.Text), Note: b.Note}
	case *Check:
		return &Check{State: b.State, Text: inline(b.Text), From: b.From}
	case *Formula:
		out := &Formula{Found: b.Found}
		for _, m := range b.Of {
			out.Of = append(out.Of, do(m))
		}
		return out
	case *Boxed:
		return &Boxed{Math: do(b.Math)}
	case *Table:
		return &Table{Columns: b.Columns, Rows: lines(b.Rows), Whole: b.Whole}
	case *List:
		return &List{Items: lines(b.Items)}
	}
	return b
}

// Numbers are the numbers of a block, in the order in which it is read. A power is not
// one of them.
func Numbers(b Block) (of []*Math) {
	var walk func(m *Math)
	walk = func(m *Math) {
		switch m.Op {
		case Number:
			of = append(of, m)
		case Power:
			walk(&m.Of[0])
		default:
			for k := range m.Of {
				walk(&m.Of[k])
			}
		}
	}
	for _, m := range Formulas(b) {
		walk(m)
	}
	return of
}

// Run is the blocks of one kind that follow each other: formulas are aligned with each
// other, checks stand in one list.
func Run[B Block](blocks []Block) (of []B) {
	for _, b := range blocks {
		x, ok := b.(B)
		if !ok {
			break
		}
		of = append(of, x)
	}
	return of
}

// Equations are the formulas of some blocks.
func Equations(of []*Formula) (all []Math) {
	for _, f := range of {
		all = append(all, f.Of...)
	}
	return all
}

// CodeLines are the lines of a code.
func CodeLines(text string) (lines []string) {
	for line := range strings.Lines(text) {
		lines = append(lines, Printed(strings.TrimRight(line, blanks)))
	}
	return lines
}

// Stray is a block that a printer does not know: our mistake.
func Stray(b Block) { panic(fmt.Sprintf("doc: no printer for a block of type %T", b)) }
