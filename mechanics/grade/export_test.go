package grade

import "math"

// Mutants gives what each mutant says, whether it is plain, and its value of a result.
func (k *Key) Mutants() (says [][]string, plain []bool, value func(i int, name string) (float64, bool)) {
	for _, m := range k.mistakes() {
		says, plain = append(says, m.says), append(plain, m.plain)
	}
	return says, plain, func(i int, name string) (float64, bool) {
		v := k.mistakes()[i].value(name)
		return v, !math.IsNaN(v)
	}
}
