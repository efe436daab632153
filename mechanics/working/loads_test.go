package working

import (
	"testing"

	"trivet/mechanics/statics"
)

// Distributed loads of every sort: each number is what it is, and the equations hold as
// written; none ends in a panic.
func TestDistributedLoadsAreWorked(t *testing.T) {
	const plane = "plane = \"xy\"\n[points]\nA = { at = \"0, 0\", on = \"beam\" }\nB = { at = \"0, 6\", on = \"beam\" }\n"
	const space = "[points]\nA = { at = \"0, 0, 0\", on = \"beam\" }\nB = { at = \"0, 3, 6\", on = \"beam\" }\n"
	for name, text := range map[string]string{
		"a couple in the plane": plane + "[distributed]\nq = { path = \"A B\", along = \"+x\", magnitude = \"120 N/m .. -120 N/m\" }\n",
		"a couple clockwise":    plane + "[distributed]\nq = { path = \"A B\", along = \"-x\", magnitude = \"120 N/m .. -120 N/m\" }\n",
		"a couple in space":     space + "[distributed]\nq = { path = \"A B\", along = \"(1, 1, 0)\", magnitude = \"120 N/m .. -120 N/m\" }\n",
		"a gate partly wet":     plane + "[distributed]\nq = { kind = \"hydrostatic\", path = \"A B\", along = \"+x\", surface = \"0.12 m\", width = \"2 m\" }\n",
		"a dry gate":            plane + "[distributed]\nq = { kind = \"hydrostatic\", path = \"A B\", along = \"+x\", surface = \"-1 m\", width = \"2 m\" }\n",
		"a corner":              plane + "[distributed]\nq = { path = \"A B\", along = \"+x\", magnitude = \"5 kN/m * max(0, s - 5.94 m)/(1 m)\" }\n",
	} {
		for _, support := range []string{"A = { kind = \"fixed\" }\n", "A = { kind = \"ball-and-socket\" }\n"} {
			p := read(t, text+"[joints]\n"+support)
			if p == nil {
				t.Fatalf("%s does not read", name)
			}
			checkWorking(t, name, Build(statics.Solve(p)))
		}
	}
}
