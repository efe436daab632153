package statics

// group is things, and the items that touch them, that hang together.
type group struct{ things, items []int }

// groups parts the things 0 … n-1 by the items that touch several of them: item i those in
// touched[i]. Groups stand in the order of their first things, and after them come the items
// that touch nothing.
func groups(n int, touched [][]int) (out []group) {
	root := make([]int, n+len(touched))
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
	for item, things := range touched {
		for _, t := range things {
			root[find(t)] = find(n + item)
		}
	}
	at := map[int]int{}
	for i := range root {
		k, ok := at[find(i)]
		if !ok {
			k, out = len(out), append(out, group{})
			at[find(i)] = k
		}
		if i < n {
			out[k].things = append(out[k].things, i)
		} else {
			out[k].items = append(out[k].items, i-n)
		}
	}
	return out
}
