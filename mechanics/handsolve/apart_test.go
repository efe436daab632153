package handsolve

import "testing"

// Particles that meet across a surface off the line between them have no moments, not
// together either: only their forces are summed. Where the force lies on that line, as a
// contact's along its path, they are as any two bodies.
func TestParticlesApartHaveNoMomentsTogether(t *testing.T) {
	const sheet = `plane = "xy"
[points]
B = { at = "0, 1", on = "particle" }
W = { at = "0, 0", on = "particle" }
[lines]
G = { kind = "weight", at = "B", magnitude = "400 N" }
R = { kind = "contact", at = "B", along = "-x" }
F = { kind = "contact", at = "W", along = "+y" }
P = { kind = "force", at = "W", along = "+x" }
`
	for more, want := range map[string]bool{
		`N = { kind = "contact", path = "B W", along = "polar(82 deg)" }`:                       false,
		"[joints]\nN = { kind = \"smooth-surface\", on = \"B W\", normal = \"polar(82 deg)\" }": false,
		`N = { kind = "contact", path = "B W" }`:                                                true,
	} {
		if got := newFinder(solveText(t, sheet+more+"\n"), nil, false).group([]int{0, 1}); got.rigid != want {
			t.Errorf("%s: moments of both: %v", more, got.rigid)
		}
	}
}
