package linear

import (
	"slices"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/iterator"
	"gonum.org/v1/gonum/graph/simple"
	"gonum.org/v1/gonum/graph/topo"
)

// Block is a square part of a system: as many rows as columns, ascending.
type Block struct{ Rows, Cols []int }

// Blocks gives the block triangular form of a matrix of full column rank: blocks in an order
// in which they can be solved, each with unknowns of its own and of blocks before it
// only,
//
//	A[k][k]·x[k] = b[k] - Σ A[k][l]·x[l],  l < k
//
// and none that falls into smaller ones. Rows that only repeat others are left out. It
// is nil where pivots do not show full rank, or where no choice of values for the entries
// would make the matrix regular.
//
// Rows are matched with columns; the blocks are the strongly connected components
// of the graph in which a pair depends on the pairs of the other columns in its
// row: pairs that need each other can only be solved together.
func (a *Matrix) Blocks() []Block {
	n := a.Cols
	from := others(nil, len(a.Rows))
	if len(from) > n {
		from = Factor(a).PivotRows()
	}
	if len(from) != n {
		return nil
	}
	a = a.Part(from, others(nil, n))
	rowOf, size := a.match()
	if size < n {
		return nil
	}
	parts := topo.TarjanSCC(newDependence(a, rowOf))
	out := make([]Block, len(parts))
	for k, part := range parts {
		for _, j := range part {
			out[k].Rows, out[k].Cols = append(out[k].Rows, from[rowOf[j.ID()]]), append(out[k].Cols, int(j.ID()))
		}
		slices.Sort(out[k].Rows)
		slices.Sort(out[k].Cols)
	}
	return out
}

// dependence is the directed graph of a matched matrix: column j needs the other
// columns in the row that it is matched with. Components are found by Nodes and From
// alone, so that it has no other methods of a graph.
type dependence struct {
	graph.Directed
	all   []graph.Node
	needs [][]graph.Node
}

func newDependence(a *Matrix, rowOf []int) dependence {
	d := dependence{all: make([]graph.Node, a.Cols), needs: make([][]graph.Node, a.Cols)}
	for j := range d.all {
		d.all[j] = simple.Node(j)
	}
	for j, i := range rowOf {
		for _, t := range a.Rows[i] {
			if t.Value != 0 && t.Col != j {
				d.needs[j] = append(d.needs[j], d.all[t.Col])
			}
		}
	}
	return d
}

func (d dependence) Nodes() graph.Nodes { return iterator.NewOrderedNodes(d.all) }

func (d dependence) From(id int64) graph.Nodes {
	if len(d.needs[id]) == 0 {
		return graph.Empty
	}
	return iterator.NewOrderedNodes(d.needs[id])
}

// match gives a maximum matching of rows and columns over the entries that are
// not zero: rowOf[j] is the row that column j is matched with, or -1, and size
// the number of pairs, the structural rank of A. It looks for an augmenting path
// from each column in turn, by depth first search with a look ahead for a free
// row: a matching without an augmenting path is a largest one.
func (a *Matrix) match() (rowOf []int, size int) {
	m := matcher{in: a.columns(), colOf: none(len(a.Rows)), seen: none(len(a.Rows)), ahead: make([]int, a.Cols)}
	for j := range a.Cols {
		if m.augment(j, j) {
			size++
		}
	}
	rowOf = none(a.Cols)
	for i, j := range m.colOf {
		if j >= 0 {
			rowOf[j] = i
		}
	}
	return rowOf, size
}

func none(n int) []int { return slices.Repeat([]int{-1}, n) }

type matcher struct {
	in    [][]int // the rows of each column
	colOf []int   // the column that a row is matched with, or -1
	seen  []int   // the search in which a row was last looked at
	ahead []int   // the rows of a column before this one are matched: they stay so
}

// augment finds a row for column j, moving other columns to other rows where
// that makes room.
func (m *matcher) augment(j, search int) bool {
	for ; m.ahead[j] < len(m.in[j]); m.ahead[j]++ {
		if i := m.in[j][m.ahead[j]]; m.colOf[i] < 0 {
			m.colOf[i] = j
			return true
		}
	}
	for _, i := range m.in[j] {
		if m.seen[i] == search {
			continue
		}
		m.seen[i] = search
		if m.augment(m.colOf[i], search) {
			m.colOf[i] = j
			return true
		}
	}
	return false
}
