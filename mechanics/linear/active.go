package linear

import (
	"math"
	"slices"
)

// active is what is left to eliminate: rows with values, columns with the rows
// that have an entry there, and both in lists by their number of entries.
type active struct {
	rows     [][]Term
	in       [][]int
	largest  []float64 // the largest magnitude in each row
	gone     []bool
	goneCol  []bool
	late     []bool // rows and columns that get no pivot
	lateCol  []bool
	byRow    lengths
	byCol    lengths
	where    []int // place of a column in the pivot row, plus one, while it is eliminated
	touched  []int // the last pivot at which a column of that row was met in another
	sequence int
}

func newActive(a *Matrix, lateRows, lateCols []bool) *active {
	m, n := len(a.Rows), a.Cols
	w := &active{rows: make([][]Term, m), in: make([][]int, n), largest: make([]float64, m), gone: make([]bool, m), goneCol: make([]bool, n),
		late: lateRows, lateCol: lateCols, where: make([]int, n), touched: make([]int, n)}
	entries := 0
	counts := make([]int, n)
	for _, row := range a.Rows {
		entries += len(row)
		for _, t := range row {
			counts[t.Col]++
		}
	}
	// Preallocating for some fill-in beside each row and column saves growing them.
	store := make([]Term, 0, 2*entries)
	places := make([]int, 2*entries)
	for j, c := range counts {
		w.in[j], places = places[:0:2*c], places[2*c:]
	}
	for i, row := range a.Rows {
		first := len(store)
		for _, t := range row {
			if t.Value != 0 {
				store = append(store, t)
				w.in[t.Col] = append(w.in[t.Col], i)
			}
		}
		end := len(store)
		store = store[:first+2*len(row)]
		w.rows[i] = store[first:end:len(store)]
		w.largest[i] = largest(w.rows[i])
	}
	w.byRow, w.byCol = newLengths(m, n), newLengths(n, m)
	for i := m - 1; i >= 0; i-- {
		w.file(i)
	}
	for j := n - 1; j >= 0; j-- {
		if !w.lateCol[j] {
			w.byCol.put(j, len(w.in[j]))
		}
	}
	return w
}

// file puts a row in its list, or in none where it can't give a pivot.
func (w *active) file(i int) {
	if w.late[i] || w.largest[i] < faint {
		w.byRow.take(i)
		return
	}
	w.byRow.put(i, len(w.rows[i]))
}

// good tells that an entry of row i can be a pivot.
func (w *active) good(i, j int, value float64) bool {
	size := math.Abs(value)
	return size >= rowShare*w.largest[i] && size >= faint && !w.late[i] && !w.lateCol[j]
}

// choose finds a pivot with little fill-in; false where there is none left.
func (w *active) choose() (row, col int, ok bool) {
	best, size, seen := math.MaxInt, 0.0, 0
	offer := func(i, j int, value float64) {
		cost := (len(w.rows[i]) - 1) * (len(w.in[j]) - 1)
		if cost < best || cost == best && math.Abs(value) > size {
			row, col, best, size, ok = i, j, cost, math.Abs(value), true
		}
	}
	for k := 1; k < max(len(w.byRow.first), len(w.byCol.first)); k++ {
		if best <= (k-1)*(k-1) {
			return row, col, ok
		}
		for j := w.byCol.head(k); j >= 0; j = w.byCol.next[j] {
			found := false
			for _, i := range w.in[j] {
				if v := w.rows[i][place(w.rows[i], j)].Value; w.good(i, j, v) {
					offer(i, j, v)
					found = true
				}
			}
			if found {
				if seen++; seen >= lists || best <= (k-1)*(k-1) {
					return row, col, true
				}
			}
		}
		if best <= k*(k-1) {
			return row, col, ok
		}
		for i := w.byRow.head(k); i >= 0; i = w.byRow.next[i] {
			found := false
			for _, t := range w.rows[i] {
				if w.good(i, t.Col, t.Value) {
					offer(i, t.Col, t.Value)
					found = true
				}
			}
			if found {
				if seen++; seen >= lists || best <= k*(k-1) {
					return row, col, true
				}
			}
		}
	}
	return row, col, ok
}

// place is where a row has its entry of a column.
func place(row []Term, col int) int {
	return slices.IndexFunc(row, func(t Term) bool { return t.Col == col })
}

// eliminate takes the row and column of a pivot out, and its multiples from the
// other rows of the column.
func (w *active) eliminate(p, q int) pivot {
	row := w.rows[p]
	out := pivot{row: p, col: q, right: make([]Term, 0, len(row)-1), below: make([]Term, 0, len(w.in[q])-1)}
	for _, t := range row {
		if t.Col == q {
			out.value = t.Value
			continue
		}
		out.right = append(out.right, t)
		w.in[t.Col] = without(w.in[t.Col], p)
		w.where[t.Col] = len(out.right)
	}
	for _, i := range w.in[q] {
		if i != p {
			out.below = append(out.below, Term{i, w.reduce(i, q, &out)})
			w.file(i)
		}
	}
	for _, t := range out.right {
		w.where[t.Col] = 0
		if !w.lateCol[t.Col] {
			w.byCol.put(t.Col, len(w.in[t.Col]))
		}
	}
	w.rows[p], w.in[q] = nil, nil
	w.gone[p], w.goneCol[q] = true, true
	w.byRow.take(p)
	w.byCol.take(q)
	return out
}

// reduce takes the multiple of the pivot's row from row i that makes its entry in
// column q nothing, and gives the multiple.
func (w *active) reduce(i, q int, p *pivot) float64 {
	row := w.rows[i]
	at := place(row, q)
	times := row[at].Value / p.value
	row[at] = row[len(row)-1]
	row = row[:len(row)-1]
	w.sequence++
	for k := range row {
		if t := &row[k]; w.where[t.Col] > 0 {
			t.Value -= times * p.right[w.where[t.Col]-1].Value
			w.touched[t.Col] = w.sequence
		}
	}
	for _, t := range p.right {
		if w.touched[t.Col] != w.sequence {
			row = append(row, Term{t.Col, -times * t.Value})
			w.in[t.Col] = append(w.in[t.Col], i)
		}
	}
	w.rows[i], w.largest[i] = row, largest(row)
	return times
}

func without(list []int, x int) []int {
	list[slices.Index(list, x)] = list[len(list)-1]
	return list[:len(list)-1]
}
