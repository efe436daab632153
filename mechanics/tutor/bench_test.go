package tutor

import (
	"fmt"
	"strings"
	"testing"
)

// truss is a Warren truss of so many joints, loaded at each of the lower ones.
func truss(joints int) string {
	var b strings.Builder
	b.WriteString("plane = \"xy\"\nup = \"+y\"\n[units]\nlength = \"m\"\nforce = \"kN\"\n[points]\n")
	for i := range joints {
		fmt.Fprintf(&b, "J%d = { at = \"%d, %d\", on = \"particle\" }\n", i, i, 2*(i%2))
	}
	b.WriteString("[lines]\n")
	for i := range joints - 1 {
		fmt.Fprintf(&b, "D%d = { kind = \"link\", path = \"J%d J%d\" }\n", i, i, i+1)
	}
	for i := range joints - 2 {
		fmt.Fprintf(&b, "C%d = { kind = \"link\", path = \"J%d J%d\" }\n", i, i, i+2)
	}
	for i := 2; i < joints-2; i += 2 {
		fmt.Fprintf(&b, "P%d = { kind = \"weight\", at = \"J%d\", magnitude = \"10 kN\" }\n", i, i)
	}
	fmt.Fprintf(&b, "[joints]\nJ0 = { kind = \"pin\" }\nJ%d = { kind = \"roller\", normal = \"+y\" }\n", joints-1-(joints-1)%2)
	return b.String()
}

// Judging is to take 2 ms at most for six unknowns, and 20 ms for a truss of 40 joints.
func BenchmarkJudge(b *testing.B) {
	for _, c := range []struct {
		name    string
		p       *Practice
		entries []string
	}{
		{"six unknowns", practise(b, "frame-of-two-members"), []string{"ΣM A (left, right): 8 By - 2*1200 = 0", "8 By - 2*1200 = 0", "4 Ay - 3 Ax + 2*1200 = 0", "Ax + Bx = 0", "0.3 Ax + 0.2 Bx - By = 3"}},
		{"40 joints", practice(b, truss(40)), []string{"ΣFy J3: 0.894 D2 + 0.894 D3 = 0", "0.894 D2 + 0.894 D3 = 0", "0.447 D2 + C1 - 0.447 D3 - C3 = 1", "D7 + 0.3 C4 - C5 + D20 = 3"}},
	} {
		for _, e := range c.entries {
			b.Run(c.name+"/"+e, func(b *testing.B) {
				for b.Loop() {
					p := *c.p
					p.guesses = map[int]int{}
					p.Enter(e)
				}
			})
		}
	}
}
