package statics

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// motions finds what nothing resists. The columns of null span the velocities v
// with Aᵀv = 0: no unknown force does work on them. The loads f = -b excite
//
//	v = N Nᵀ f
//
// where that is more than rounding; the rest of the space the loads leave alone.
// Bodies that share no unknown move apart and are told apart.
func (s *Solution) motions(null *mat.Dense) {
	m, k := null.Dims()
	if k == 0 {
		return
	}
	scale := largestLoad(s.Problem)
	least := max(loadTol, s.blur) * scale
	f := make([]float64, k)
	for c := range k {
		for i := range m {
			f[c] -= null.At(i, c) * s.System.B[i]
		}
	}
	v := make([]float64, m)
	for i := range m {
		for c := range k {
			v[i] += null.At(i, c) * f[c]
		}
	}
	var excited [][]float64
	for _, bodies := range s.groups() {
		part := s.partOf(v, bodies)
		size := norm(part)
		if size > least {
			s.Verdict = NoEquilibrium
			s.Motions = append(s.Motions, s.motion(part, size, true))
			for i := range part {
				part[i] /= size
			}
			excited = append(excited, part)
		}
	}
	s.idleMotions(null, excited)
}

// idleMotions names a simple basis of the motions that the loads leave alone,
// beside the excited ones.
func (s *Solution) idleMotions(null *mat.Dense, excited [][]float64) {
	m, k := null.Dims()
	basis := make([][]float64, k)
	for c := range k {
		row := make([]float64, m)
		for i := range m {
			row[i] = null.At(i, c)
		}
		for _, e := range excited { // these lie apart from each other: one pass does
			dot := 0.0
			for i := range m {
				dot += row[i] * e[i]
			}
			for i := range m {
				row[i] -= dot * e[i]
			}
		}
		basis[c] = row
	}
	for _, row := range reduce(basis) {
		size := norm(row)
		for i := range row {
			row[i] /= size
		}
		s.Motions = append(s.Motions, s.motion(row, 0, false))
	}
}

// reduce brings rows to reduced echelon form, so that motions come out along
// axes where they can. It works in place and gives the rows that are left.
func reduce(rows [][]float64) [][]float64 {
	// Rows have entries up to 1, and what is left of rounding is below 1e-14. An
	// entry that is faint is no pivot: rows divided by it would come out all alike.
	const nothing, faint = 1e-9, 1e-6
	lead := 0
	for col := 0; lead < len(rows) && col < len(rows[0]); col++ {
		best := lead
		for i := lead; i < len(rows); i++ {
			if math.Abs(rows[i][col]) > math.Abs(rows[best][col]) {
				best = i
			}
		}
		if math.Abs(rows[best][col]) < faint {
			continue
		}
		rows[lead], rows[best] = rows[best], rows[lead]
		pivot := rows[lead][col]
		for j := range rows[lead] {
			rows[lead][j] /= pivot
		}
		for i := range rows {
			if f := rows[i][col]; i != lead && f != 0 {
				for j := range rows[i] {
					rows[i][j] -= f * rows[lead][j]
				}
			}
		}
		lead++
	}
	rows = rows[:lead]
	for _, row := range rows {
		for j := range row {
			if math.Abs(row[j]) < nothing {
				row[j] = 0
			}
		}
	}
	return rows
}

func (s *Solution) motion(v []float64, unbalanced float64, excited bool) Motion {
	mo := Motion{Excited: excited, Unbalanced: unbalanced}
	size := norm(v)
	n := len(s.System.Rows) / len(s.Problem.Bodies)
	for b := range s.Problem.Bodies {
		var d [3]float64
		for k := range n {
			d[k] = v[b*n+k] / size
		}
		u := r3.Vec{X: d[0], Y: d[1], Z: d[2]}
		if r3.Norm(u) > max(fixedTol, s.blur) {
			mo.Moves = append(mo.Moves, Move{Body: b, V: u})
		}
	}
	return mo
}

// groups gathers the bodies that share unknowns.
func (s *Solution) groups() [][]int {
	bodies := len(s.Problem.Bodies)
	root := make([]int, bodies)
	for i := range root {
		root[i] = i
	}
	find := func(i int) int {
		for root[i] != i {
			root[i] = root[root[i]]
			i = root[i]
		}
		return i
	}
	for j := range s.System.Cols {
		first := -1
		for i, row := range s.System.Rows {
			if s.System.At(i, j) == 0 {
				continue
			}
			if first < 0 {
				first = row.Body
			}
			root[find(row.Body)] = find(first)
		}
	}
	at := map[int]int{}
	var out [][]int
	for b := range bodies {
		r := find(b)
		if _, ok := at[r]; !ok {
			at[r] = len(out)
			out = append(out, nil)
		}
		out[at[r]] = append(out[at[r]], b)
	}
	return out
}

func (s *Solution) partOf(v []float64, bodies []int) []float64 {
	n := len(s.System.Rows) / len(s.Problem.Bodies)
	part := make([]float64, len(v))
	for _, b := range bodies {
		copy(part[b*n:(b+1)*n], v[b*n:(b+1)*n])
	}
	return part
}

func norm(v []float64) float64 {
	sum := 0.0
	for _, x := range v {
		sum += x * x
	}
	return math.Sqrt(sum)
}
