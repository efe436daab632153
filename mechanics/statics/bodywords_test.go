package statics

import "testing"

// TestWordsOfImproperSupports holds what is said of bodies whose supports are enough
// in number and hold them badly.
func TestWordsOfImproperSupports(t *testing.T) {
	sayAll(t, []wordCase{
		{"three concurrent reactions in the plane, excited", `
plane = "xy"
[points]
A = { at = "0, 0", on = "plate" }
B = { at = "4, 0", on = "plate" }
C = { at = "0, 3", on = "plate" }
O = "4, 3"
[joints]
B = { kind = "roller", normal = "+y" }
C = { kind = "roller", normal = "+x" }
[lines]
L = { kind = "link", path = "A O" }
F = { kind = "force", at = "A", along = "-y", magnitude = "60 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps plate from turning about O counter-clockwise: a moment of 240 N m is unbalanced`},
		{"three concurrent reactions in the plane, not excited", `
plane = "xy"
[points]
A = { at = "0, 0", on = "plate" }
B = { at = "4, 0", on = "plate" }
C = { at = "0, 3", on = "plate" }
O = "4, 3"
[joints]
B = { kind = "roller", normal = "+y" }
C = { kind = "roller", normal = "+x" }
[lines]
L = { kind = "link", path = "A O" }
F = { kind = "force", at = "B", along = "-y", magnitude = "60 N" }`, `
indeterminate to degree 1, partly constrained: 2 independent equations for 3 unknowns
L is at most 0 N, unbounded below
B is at least 60.0 N, unbounded above
C is at least 0 N, unbounded above
nothing keeps plate from turning about O, and no load acts that way
- equilibrium is possible: the free unknowns have admissible values`},
		{"three concurrent reactions that meet at no named point", `
plane = "xy"
[points]
A = { at = "0, 0", on = "plate" }
B = { at = "4, 0", on = "plate" }
C = { at = "0, 3", on = "plate" }
[joints]
B = { kind = "roller", normal = "+y" }
C = { kind = "roller", normal = "+x" }
[lines]
L = { kind = "link", at = "A", along = "(4, 3)" }
F = { kind = "force", at = "A", along = "-y", magnitude = "60 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps plate from turning about (4.00, 3.00) m counter-clockwise: a moment of 240 N m is unbalanced`},
		{"six lines meeting one axis in space, excited", `
[points]
A = { at = "2, 0, 0", on = "frame" }
B = { at = "0, 2, 1", on = "frame" }
C = { at = "-2, 1, 2", on = "frame" }
D = { at = "1, -2, 3", on = "frame" }
O = "0, 0, 0"
Q = "0, 0, 4"
R = "0, 0, 6"
[lines]
L1 = { kind = "link", path = "A O" }
L2 = { kind = "link", path = "A Q" }
L3 = { kind = "link", path = "B O" }
L4 = { kind = "link", path = "B R" }
L5 = { kind = "link", path = "C Q" }
L6 = { kind = "link", path = "D R" }
F = { kind = "force", at = "A", along = "+y", magnitude = "50 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps frame from turning about the axis from O to Q: a moment of 100 N m is unbalanced`},
		{"six lines meeting one axis in space, not excited", `
[points]
A = { at = "2, 0, 0", on = "frame" }
B = { at = "0, 2, 1", on = "frame" }
C = { at = "-2, 1, 2", on = "frame" }
D = { at = "1, -2, 3", on = "frame" }
O = "0, 0, 0"
Q = "0, 0, 4"
R = "0, 0, 6"
[lines]
L1 = { kind = "link", path = "A O" }
L2 = { kind = "link", path = "A Q" }
L3 = { kind = "link", path = "B O" }
L4 = { kind = "link", path = "B R" }
L5 = { kind = "link", path = "C Q" }
L6 = { kind = "link", path = "D R" }
F = { kind = "force", at = "A", along = "-z", magnitude = "50 N" }`, `
indeterminate to degree 1, partly constrained: 5 independent equations for 6 unknowns
L1 is unbounded
L2 is unbounded
L3 is unbounded
L4 is unbounded
L5 is unbounded
L6 is unbounded
nothing keeps frame from turning about the axis through O and Q, and no load acts that way
- equilibrium is possible: the free unknowns have admissible values`},
		{"parallel rollers, pushed along", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "roller", normal = "+y" }
[lines]
F = { kind = "force", at = "M", along = "(3, -4)", magnitude = "50 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing holds beam along +x: 30.0 N is unbalanced`},
		{"parallel rollers, loaded across", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "roller", normal = "+y" }
[lines]
F = { kind = "force", at = "M", along = "-y", magnitude = "50 N" }`, `
determinate, partly constrained: every unknown has one value
nothing holds beam along x, and no load acts that way
- beam is a three-force member: its forces at M, A and B have parallel lines of action`},
		{"three parallel rollers", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "+y" }
M = { kind = "roller", normal = "+y" }
B = { kind = "roller", normal = "+y" }
[lines]
F = { kind = "force", at = "M", along = "(3, -4)", magnitude = "50 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing holds beam along +x: 30.0 N is unbalanced`},
		{"two hinges with a common axis, excited", `
[points]
A = { at = "0, 0, 0", on = "door" }
B = { at = "0, 0, 2", on = "door" }
C = { at = "0.9, 0, 1", on = "door" }
[joints]
A = { kind = "hinge", axis = "+z", moments = "none" }
B = { kind = "journal-bearing", axis = "+z", moments = "none" }
[lines]
F = { kind = "force", at = "C", along = "+y", magnitude = "30 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps door from turning about the axis from A to B: a moment of 27.0 N m is unbalanced`},
		{"two hinges with a common axis, hanging", `
[points]
A = { at = "0, 0, 0", on = "door" }
B = { at = "0, 0, 2", on = "door" }
C = { at = "0.9, 0, 1", on = "door" }
[bodies]
door = { weight = "30 kg", centre = "0.45, 0, 1" }
[joints]
A = { kind = "hinge", axis = "+z", moments = "none" }
B = { kind = "journal-bearing", axis = "+z", moments = "none" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps door from turning about the axis through A and B, and no load acts that way
- door is a three-force member: the lines of its forces at A, B and (0.450, 0, 1.00) m meet in (0.450, 0, 2.00) m`},
		{"two hinges that both hold everything", `
[points]
A = { at = "0, 0, 0", on = "door" }
B = { at = "0, 0, 2", on = "door" }
C = { at = "0.9, 0, 1", on = "door" }
[bodies]
door = { weight = "30 kg", centre = "0.45, 0, 1" }
[joints]
A = { kind = "hinge", axis = "+z" }
B = { kind = "hinge", axis = "+z" }`, `
indeterminate to degree 5, partly constrained: 5 independent equations for 10 unknowns
Ax is unbounded
Ay is unbounded
Az is unbounded
MAx is unbounded
MAy is unbounded
Bx is unbounded
By is unbounded
Bz is unbounded
MBx is unbounded
MBy is unbounded
nothing keeps door from turning about the axis through A and B, and no load acts that way
- equilibrium is possible: the free unknowns have admissible values`},
		{"wholly free body", `
plane = "xy"
[points]
A = { at = "0, 0", on = "raft" }
B = { at = "4, 0", on = "raft" }
[lines]
F = { kind = "force", at = "B", along = "+y", magnitude = "100 N" }
[joints]
A = { kind = "roller", normal = "+x" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps raft from turning about A counter-clockwise: a moment of 400 N m is unbalanced
nothing holds raft along +y: 100 N is unbalanced`},
		{"wholly free body in space", `
[points]
A = { at = "0, 0, 0", on = "raft" }
B = { at = "4, 0, 0", on = "raft" }
[lines]
T = { kind = "link", at = "A", along = "+x" }
F = { kind = "force", at = "B", along = "+y", magnitude = "100 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps raft from turning about the axis through A along +z: a moment of 400 N m is unbalanced
nothing holds raft along +y: 100 N is unbalanced
nothing keeps raft from turning about the axis through A and B, and no load acts that way
nothing keeps raft from turning about the axis through A along y, and no load acts that way
nothing holds raft along z, and no load acts that way`},
		{"collar on a rod", `
[points]
A = { at = "0, 0, 0", on = "arm" }
B = { at = "0, 1, 0", on = "arm" }
[joints]
A = { kind = "collar", axis = "(3, 0, 4)" }
[lines]
F = { kind = "force", at = "B", along = "-z", magnitude = "100 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps arm from turning about the axis through A along (-0.6000, 0.0000, -0.8000): a moment of 60.0 N m is unbalanced
nothing holds arm along (-0.6000, 0.0000, -0.8000): 80.0 N is unbalanced`},
	})
}
