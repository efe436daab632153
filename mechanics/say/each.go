package say

// Each is what becomes of each of some things, in their order; an empty list of none, not nil.
func Each[S, T any](of []S, become func(S) T) []T {
	out := make([]T, len(of))
	for i, x := range of {
		out[i] = become(x)
	}
	return out
}
