package statics

// sets keeps which of some items belong together.
type sets []int

func newSets(n int) sets {
	s := make(sets, n)
	for i := range s {
		s[i] = i
	}
	return s
}

func (s sets) find(i int) int {
	for s[i] != i {
		s[i] = s[s[i]]
		i = s[i]
	}
	return i
}

func (s sets) join(i, j int) { s[s.find(i)] = s.find(j) }

// groups lists the sets in the order of their first items.
func (s sets) groups() [][]int {
	at := map[int]int{}
	var out [][]int
	for i := range s {
		r := s.find(i)
		if _, ok := at[r]; !ok {
			at[r] = len(out)
			out = append(out, nil)
		}
		out[at[r]] = append(out[at[r]], i)
	}
	return out
}
