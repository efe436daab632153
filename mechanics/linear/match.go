package linear

import "slices"

// Match gives a maximum matching of rows and columns over the entries that are
// not zero: rowOf[j] is the row that column j is matched with, or -1, and size
// the number of pairs, the structural rank of A. It looks for an augmenting path
// from each column in turn, by depth first search with a look ahead for a free
// row: a matching without an augmenting path is a largest one.
func (a *Matrix) Match() (rowOf []int, size int) {
	m := matcher{in: make([][]int, a.Cols), colOf: none(len(a.Rows)), seen: none(len(a.Rows)), ahead: make([]int, a.Cols)}
	counts := make([]int, a.Cols)
	entries := 0
	for _, row := range a.Rows {
		for _, t := range row {
			if t.Value != 0 {
				counts[t.Col]++
				entries++
			}
		}
	}
	store := make([]int, entries)
	for j, n := range counts {
		m.in[j], store = store[:0:n], store[n:]
	}
	for i, row := range a.Rows {
		for _, t := range row {
			if t.Value != 0 {
				m.in[t.Col] = append(m.in[t.Col], i)
			}
		}
	}
	rowOf = none(a.Cols)
	for j := range a.Cols {
		if m.augment(j, j) {
			size++
		}
	}
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
