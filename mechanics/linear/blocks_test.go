package linear

import (
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// Blocks cover the rows and columns once each, use only what was solved before,
// and fall into none smaller.
func TestBlocks(t *testing.T) {
	for seed := range uint64(300) {
		rng := rand.New(rand.NewPCG(seed, 2))
		n := 1 + rng.IntN(60)
		a := sparse(rng, n, n, 1+rng.IntN(3))
		// Other names for rows and columns change nothing.
		rows, cols := rng.Perm(n), rng.Perm(n)
		b := a.Part(rows, cols)
		blocks := b.Blocks()
		if blocks == nil {
			t.Fatalf("seed %d: the diagonal is a matching", seed)
		}
		solved, used := map[int]bool{}, map[int]bool{}
		for _, k := range blocks {
			if len(k.Rows) != len(k.Cols) || !slices.IsSorted(k.Rows) || !slices.IsSorted(k.Cols) {
				t.Fatalf("seed %d: block %v", seed, k)
			}
			for _, j := range k.Cols {
				if solved[j] {
					t.Errorf("seed %d: column %d is solved twice", seed, j)
				}
				solved[j] = true
			}
			for _, i := range k.Rows {
				if used[i] {
					t.Errorf("seed %d: row %d is used twice", seed, i)
				}
				used[i] = true
				for _, e := range b.Rows[i] {
					if !solved[e.Col] {
						t.Errorf("seed %d: row %d needs column %d before it is solved", seed, i, e.Col)
					}
				}
			}
		}
		if len(solved) != n || len(used) != n {
			t.Errorf("seed %d: %d columns and %d rows of %d", seed, len(solved), len(used), n)
		}
		if same := a.Blocks(); len(same) != len(blocks) {
			t.Errorf("seed %d: %d blocks, and %d under other names", seed, len(same), len(blocks))
		}
	}
}

func TestBlocksOfKnownForms(t *testing.T) {
	for _, c := range []struct {
		name string
		a    [][]float64
		want []Block // nil where there is none
	}{
		{"diagonal", [][]float64{{1, 0}, {0, 1}}, []Block{{[]int{0}, []int{0}}, {[]int{1}, []int{1}}}},
		{"triangle", [][]float64{{1, 1, 1}, {0, 1, 1}, {0, 0, 1}}, []Block{{[]int{2}, []int{2}}, {[]int{1}, []int{1}}, {[]int{0}, []int{0}}}},
		{"a pair, then one", [][]float64{{1, 2, 0}, {3, 4, 0}, {0, 1, 1}}, []Block{{[]int{0, 1}, []int{0, 1}}, {[]int{2}, []int{2}}}},
		{"a row that repeats another", [][]float64{{1, 0}, {1, 0}, {1, 1}}, []Block{{[]int{0}, []int{0}}, {[]int{2}, []int{1}}}},
		{"more columns than rows", [][]float64{{1, 0, 1}, {0, 1, 1}}, nil},
		{"an empty column", [][]float64{{1, 0}, {1, 0}}, nil},
		{"two rows for one column", [][]float64{{1, 0, 0}, {1, 0, 0}, {1, 1, 1}}, nil},
	} {
		d := mat.NewDense(len(c.a), len(c.a[0]), nil)
		for i, row := range c.a {
			d.SetRow(i, row)
		}
		got := fromDense(d).Blocks()
		if len(got) != len(c.want) {
			t.Errorf("%s: %v", c.name, got)
			continue
		}
		for k := range got {
			if !slices.Equal(got[k].Rows, c.want[k].Rows) || !slices.Equal(got[k].Cols, c.want[k].Cols) {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
			}
		}
	}
}

// The matching is as large as a search over all choices says.
func TestMatchIsLargest(t *testing.T) {
	for seed := range uint64(500) {
		rng := rand.New(rand.NewPCG(seed, 3))
		m, n := 1+rng.IntN(6), 1+rng.IntN(6)
		a := &Matrix{Rows: make([][]Term, m), Cols: n}
		for i := range m {
			for j := range n {
				if rng.IntN(3) == 0 {
					a.Rows[i] = append(a.Rows[i], Term{j, float64(rng.IntN(3))}) // a stored zero is no entry
				}
			}
		}
		rowOf, size := a.match()
		if want := a.maxPairs(0, 0); size != want {
			t.Errorf("seed %d: %d pairs, want %d", seed, size, want)
		}
		seen := map[int]bool{}
		for j, i := range rowOf {
			if i < 0 {
				continue
			}
			if seen[i] || a.Dense().At(i, j) == 0 {
				t.Errorf("seed %d: column %d is matched with row %d", seed, j, i)
			}
			seen[i] = true
		}
		if len(seen) != size {
			t.Errorf("seed %d: %d pairs of %d", seed, len(seen), size)
		}
	}
}

func (a *Matrix) maxPairs(row int, taken uint) int {
	if row == len(a.Rows) {
		return 0
	}
	most := a.maxPairs(row+1, taken)
	for _, t := range a.Rows[row] {
		if t.Value != 0 && taken&(1<<t.Col) == 0 {
			most = max(most, 1+a.maxPairs(row+1, taken|1<<t.Col))
		}
	}
	return most
}
