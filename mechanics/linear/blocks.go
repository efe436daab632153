package linear

import (
	"slices"

	"gonum.org/v1/gonum/graph"
	"gonum.org/v1/gonum/graph/iterator"
	"gonum.org/v1/gonum/graph/topo"
)

// Block is a square part of a system: as many rows as columns, ascending.
type Block struct{ Rows, Cols []int }

// Blocks gives the block triangular form of a square matrix: blocks in an order in
// which they can be solved, each with unknowns of its own and of blocks before it
// only,
//
//	A[k][k]·x[k] = b[k] - Σ A[k][l]·x[l],  l < k
//
// and none that falls into smaller ones. It is false where the matrix is not
// square, or structurally singular: no choice of values for its entries would
// make it regular.
//
// Rows are matched with columns; the blocks are the strongly connected components
// of the graph in which a pair depends on the pairs of the other columns in its
// row: pairs that need each other can only be solved together.
func (a *Matrix) Blocks() ([]Block, bool) {
	n := a.Cols
	if len(a.Rows) != n {
		return nil, false
	}
	rowOf, size := a.Match()
	if size < n {
		return nil, false
	}
	parts := topo.TarjanSCC(newDependence(a, rowOf))
	out := make([]Block, len(parts))
	rows, cols := make([]int, 0, n), make([]int, 0, n)
	for k, part := range parts {
		first := len(rows)
		for _, j := range part {
			rows, cols = append(rows, rowOf[j.ID()]), append(cols, int(j.ID()))
		}
		out[k] = Block{rows[first:len(rows):len(rows)], cols[first:len(cols):len(cols)]}
		slices.Sort(out[k].Rows)
		slices.Sort(out[k].Cols)
	}
	return out, true
}

// dependence is the directed graph of a matched matrix: column j needs the other
// columns in the row that it is matched with. Components are found by Nodes and From
// alone, so that it has no other methods of a graph.
type dependence struct {
	graph.Directed
	all   []graph.Node
	needs [][]graph.Node
}

type column int64

func (c column) ID() int64 { return int64(c) }

func newDependence(a *Matrix, rowOf []int) dependence {
	d := dependence{all: make([]graph.Node, a.Cols), needs: make([][]graph.Node, a.Cols)}
	for j := range d.all {
		d.all[j] = column(j)
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
