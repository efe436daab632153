package doc

import (
	"fmt"
	"slices"
	"strings"
)

// Formulas are the formulas of a block, in the order in which it is read.
func Formulas(b Block) (of []*Math) {
	for _, sentence := range b.sentences() {
		for _, in := range sentence {
			if in.Math != nil {
				of = append(of, in.Math)
			}
		}
	}
	return of
}

// Map is a copy of a block with each of its formulas replaced.
func Map(b Block, do func(Math) Math) Block {
	mapped := func(lines ...[]Inline) [][]Inline {
		lines = slices.Clone(lines)
		for i := range lines {
			lines[i] = slices.Clone(lines[i])
			for k, x := range lines[i] {
				if x.Math != nil {
					m := do(*x.Math)
					lines[i][k].Math = &m
				}
			}
		}
		return lines
	}
	switch b := b.(type) {
	case *Paragraph:
		return &Paragraph{Text: mapped(b.Text)[0], Note: b.Note}
	case *Check:
		return &Check{State: b.State, Text: mapped(b.Text)[0], From: b.From}
	case *Formula:
		out := &Formula{Found: b.Found}
		for _, m := range b.Of {
			out.Of = append(out.Of, do(m))
		}
		return out
	case *Boxed:
		return &Boxed{Math: do(b.Math)}
	case *Table:
		return &Table{Columns: b.Columns, Rows: mapped(b.Rows...), Whole: b.Whole}
	case *List:
		return &List{Items: mapped(b.Items...)}
	}
	return b
}

// Numbers are the numbers of a block, in the order in which it is read. A power is not
// one of them.
func Numbers(b Block) (of []*Math) {
	var walk func(m *Math)
	walk = func(m *Math) {
		if m.Op == Number {
			of = append(of, m)
		}
		for k := range m.Of {
			if m.Op != Power || k == 0 {
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
