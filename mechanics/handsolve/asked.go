package handsolve

import (
	"math"
	"slices"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/statics"
)

// DependsOn lists the unknowns that results depend on: those with another value of which
// one of the results is another. All where no result is asked for.
func DependsOn(s *statics.Solution, asked []problem.Query) []int {
	other := *s
	other.X = slices.Clone(s.X)
	for j := range other.X { // values that no sum or product cancels by chance
		other.X[j].Fixed, other.X[j].Value = true, math.Sqrt(float64(j)+math.E)
	}
	return say.Places(len(other.X), func(j int) bool {
		return len(asked) == 0 || slices.ContainsFunc(asked, func(q problem.Query) bool { return changes(&other, q, j) })
	})
}

// changes tells that a result is another with another value of an unknown, of the other
// sign, since a direction keeps for as long as the sign does.
func changes(s *statics.Solution, q problem.Query, unknown int) bool {
	x := &s.X[unknown].Value
	was, _ := s.Evaluate(q)
	*x *= -math.Phi
	now, _ := s.Evaluate(q)
	*x /= -math.Phi
	return was != now
}
