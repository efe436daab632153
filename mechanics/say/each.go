package say

// Each is what becomes of each of some things, in their order; an empty list of none, not nil.
func Each[S, T any](of []S, become func(S) T) []T {
	out := make([]T, len(of))
	for i, x := range of {
		out[i] = become(x)
	}
	return out
}

// Places are the numbers below n that something holds of, in their order.
func Places(n int, holds func(int) bool) (of []int) {
	for i := range n {
		if holds(i) {
			of = append(of, i)
		}
	}
	return of
}
