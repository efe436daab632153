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
no equilibrium: the loads move the body and no support prevents it
nothing prevents the plate from rotating counter-clockwise about O: a moment of 240 N m is unbalanced`},
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
statically indeterminate to the first degree, partially constrained: 2 independent equations for 3 unknowns
L is at most 0 N, with no lower bound
B is at least 60.0 N, with no upper bound
C is at least 0 N, with no upper bound
nothing prevents the plate from rotating about O, but no load causes it
- equilibrium is possible: the undetermined unknowns have admissible values`},
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
no equilibrium: the loads move the body and no support prevents it
nothing prevents the plate from rotating counter-clockwise about (4.00, 3.00) m: a moment of 240 N m is unbalanced`},
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
no equilibrium: the loads move the body and no support prevents it
nothing prevents the frame from rotating about the axis from O to Q: a moment of 100 N m is unbalanced`},
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
statically indeterminate to the first degree, partially constrained: 5 independent equations for 6 unknowns
L1 is undetermined and unbounded
L2 is undetermined and unbounded
L3 is undetermined and unbounded
L4 is undetermined and unbounded
L5 is undetermined and unbounded
L6 is undetermined and unbounded
nothing prevents the frame from rotating about the axis through O and Q, but no load causes it
- equilibrium is possible: the undetermined unknowns have admissible values`},
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
no equilibrium: the loads move the body and no support prevents it
the beam is unsupported in the direction +x: 30.0 N is unbalanced`},
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
statically determinate, partially constrained: every unknown has a single value
the beam is unsupported in the x direction, but no load acts in that direction
- the beam is a three-force member: the lines of action of its forces at M, A and B are parallel`},
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
no equilibrium: the loads move the body and no support prevents it
the beam is unsupported in the direction +x: 30.0 N is unbalanced`},
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
no equilibrium: the loads move the body and no support prevents it
nothing prevents the door from rotating about the axis from A to B: a moment of 27.0 N m is unbalanced`},
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
statically determinate, partially constrained: every unknown has a single value
nothing prevents the door from rotating about the axis through A and B, but no load causes it
- the door is a three-force member: the lines of action of its forces at A, B and (0.450, 0, 1.00) m are concurrent at (0.450, 0, 2.00) m`},
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
statically indeterminate to the fifth degree, partially constrained: 5 independent equations for 10 unknowns
Ax is undetermined and unbounded
Ay is undetermined and unbounded
Az is undetermined and unbounded
MAx is undetermined and unbounded
MAy is undetermined and unbounded
Bx is undetermined and unbounded
By is undetermined and unbounded
Bz is undetermined and unbounded
MBx is undetermined and unbounded
MBy is undetermined and unbounded
nothing prevents the door from rotating about the axis through A and B, but no load causes it
- equilibrium is possible: the undetermined unknowns have admissible values`},
		{"wholly free body", `
plane = "xy"
[points]
A = { at = "0, 0", on = "raft" }
B = { at = "4, 0", on = "raft" }
[lines]
F = { kind = "force", at = "B", along = "+y", magnitude = "100 N" }
[joints]
A = { kind = "roller", normal = "+x" }`, `
no equilibrium: the loads move the body and no support prevents it
nothing prevents the raft from rotating counter-clockwise about A: a moment of 400 N m is unbalanced
the raft is unsupported in the direction +y: 100 N is unbalanced`},
		{"wholly free body in space", `
[points]
A = { at = "0, 0, 0", on = "raft" }
B = { at = "4, 0, 0", on = "raft" }
[lines]
T = { kind = "link", at = "A", along = "+x" }
F = { kind = "force", at = "B", along = "+y", magnitude = "100 N" }`, `
no equilibrium: the loads move the body and no support prevents it
nothing prevents the raft from rotating about the axis through A along +z: a moment of 400 N m is unbalanced
the raft is unsupported in the direction +y: 100 N is unbalanced
nothing prevents the raft from rotating about the axis through A and B, but no load causes it
nothing prevents the raft from rotating about the axis through A along y, but no load causes it
the raft is unsupported in the z direction, but no load acts in that direction`},
		{"collar on a rod", `
[points]
A = { at = "0, 0, 0", on = "arm" }
B = { at = "0, 1, 0", on = "arm" }
[joints]
A = { kind = "collar", axis = "(3, 0, 4)" }
[lines]
F = { kind = "force", at = "B", along = "-z", magnitude = "100 N" }`, `
no equilibrium: the loads move the body and no support prevents it
nothing prevents the arm from rotating about the axis through A along (-0.6, 0, -0.8): a moment of 60.0 N m is unbalanced
the arm is unsupported in the direction (-0.6, 0, -0.8): 80.0 N is unbalanced`},
	})
}
