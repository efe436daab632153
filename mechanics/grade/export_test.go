package grade

// Mutants gives what each mutant says, whether it is plain, and its value of a result.
func (k *Key) Mutants() (says [][]string, plain []bool, value func(i int, name string) (float64, bool)) {
	for _, m := range k.breed() {
		says, plain = append(says, m.says), append(plain, m.plain)
	}
	return says, plain, func(i int, name string) (float64, bool) {
		q, err := k.Query(name)
		if err != nil {
			return 0, false
		}
		return evaluate(k.mutants[i].solution, q)
	}
}

// Known are the names of what an answer may be mistaken for.
func (k *Key) Known() (names []string) {
	for _, q := range k.known {
		names = append(names, q.name)
	}
	return names
}
