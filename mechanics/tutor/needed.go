package tutor

import (
	"math"
	"slices"

	"trivet/mechanics/handsolve"
	"trivet/mechanics/problem"
)

// neededFor is the smallest number of single sums from which everything asked follows: that
// of the hand solution, or fewer where a search finds so few; 0 where there is none.
func (t *Practice) neededFor() (n int) {
	for _, step := range t.order.Steps {
		switch step.Kind {
		case handsolve.One:
			n++
		case handsolve.Together:
			n += len(step.Finds)
		}
	}
	wanted := handsolve.DependsOn(t.solution, t.asked())
	if n > 0 { // it may find two unknowns with one sum on a two-force member
		asked := map[int]bool{}
		for _, q := range t.asked() {
			if q.Of.Thing == problem.AnUnknown && q.Kind == problem.AskValue {
				asked[q.Of.Index] = true
			}
		}
		n = max(n, len(asked))
	}
	if n <= len(wanted) || len(t.Problem.Unknowns) > maxSearched {
		return n
	}
	return t.fewest(wanted, n)
}

// maxSearched and maxSpaces bound the search, to some 20 ms: unknowns of a problem, and
// spaces times sums.
const maxSearched, maxSpaces = 6, 60_000

// fewest looks for fewer than most sums from which the wanted unknowns follow, among the
// elementary ones and those of the hand solution. |wanted| + r sums suffice exactly where
// their other columns have rank r and they themselves rank |wanted| + r. So each space that
// r of the sums span in the other columns is tried, with all sums that lie in it there.
func (t *Practice) fewest(wanted []int, most int) int {
	n := len(t.Problem.Unknowns)
	isWanted := make([]bool, n)
	for _, k := range wanted {
		isWanted[k] = true
	}
	var whole, other [][]float64
	var spans [][][]float64 // each of one row
	take := func(s sum) {
		row := s.exact(t.forces, n)[:n]
		length := norm(row)
		if length == 0 {
			return
		}
		rest := make([]float64, n)
		for k := range row {
			row[k] /= length
			if !isWanted[k] {
				rest[k] = row[k]
			}
		}
		if norm(rest) < spanTol {
			rest = make([]float64, n)
		} else if !slices.ContainsFunc(spans, func(e [][]float64) bool { _, ok := with(e, rest); return !ok }) {
			line, _ := with(nil, rest)
			spans = append(spans, line)
		}
		whole, other = append(whole, row), append(other, rest)
	}
	for _, set := range t.groups(func(int) bool { return true }) {
		for _, s := range t.elementary(set) {
			take(s)
		}
	}
	for i := range t.order.Steps {
		for k := range t.order.Steps[i].Equations {
			take(t.sumOf(&t.order.Steps[i].Equations[k]))
		}
	}
	var found func(basis [][]float64, from, r, all int) bool
	found = func(basis [][]float64, from, r, all int) bool {
		if r > 0 {
			for i := from; i < len(spans); i++ {
				if more, ok := with(basis, spans[i][0]); ok && found(more, i+1, r-1, all) {
					return true
				}
			}
			return false
		}
		var rank [][]float64
		for i := range whole {
			if _, beyond := with(basis, other[i]); !beyond {
				rank, _ = with(rank, whole[i])
			}
		}
		return len(rank) >= all
	}
	for r := 0; len(wanted)+r < most && math.Pow(float64(len(spans)), float64(r))*float64(len(whole)) < maxSpaces; r++ {
		if found(nil, 0, r, len(wanted)+r) {
			return len(wanted) + r
		}
	}
	return most
}
