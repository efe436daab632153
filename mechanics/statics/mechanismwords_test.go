package statics

import "testing"

// TestWordsOfMechanisms holds what is said of bodies that can move: linkages,
// pendulums, screws, booms.
func TestWordsOfMechanisms(t *testing.T) {
	sayAll(t, []wordCase{
		{"four-bar mechanism, excited", `
plane = "xy"
[points]
A = { at = "0, 0", on = "crank" }
B = { at = "0, 2", on = "crank coupler" }
C = { at = "4, 2", on = "coupler" }
D = "4, 0"
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
[lines]
L = { kind = "link", path = "C D" }
F = { kind = "force", at = "C", along = "+x", magnitude = "40 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps crank from turning about A clockwise, and with it coupler from moving along +x: a moment of 80.0 N m is unbalanced`},
		{"four-bar mechanism, not excited", `
plane = "xy"
[points]
A = { at = "0, 0", on = "crank" }
B = { at = "0, 2", on = "crank coupler" }
C = { at = "4, 2", on = "coupler" }
D = "4, 0"
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
[lines]
L = { kind = "link", path = "C D" }
F = { kind = "force", at = "C", along = "-y", magnitude = "40 N" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps crank from turning about A counter-clockwise, and with it coupler from moving along -x, and no load acts that way
- crank is a two-force member: forces act on it at A and B only, so they lie along the line between
- coupler is a two-force member: forces act on it at C and B only, so they lie along the line between`},
		{"four-bar of three bodies", `
plane = "xy"
[points]
A = { at = "0, 0", on = "crank" }
B = { at = "0, 2", on = "crank coupler" }
C = { at = "3, 4", on = "coupler rocker" }
D = { at = "3, 0", on = "rocker" }
[joints]
A = { kind = "pin" }
B = { kind = "pin" }
C = { kind = "pin" }
D = { kind = "pin" }
[couples]
M = { on = "crank", magnitude = "30 N m" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps crank from turning about A counter-clockwise, and with it coupler from moving along -x and rocker from turning about D counter-clockwise: a moment of 30.0 N m is unbalanced`},
		{"pendulum in the plane, pushed", `
plane = "xy"
[points]
O = { at = "0, 0", on = "bob" }
G = { at = "0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "pin" }
[lines]
F = { kind = "force", at = "G", along = "+x", magnitude = "5 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps bob from turning about O counter-clockwise: a moment of 10.0 N m is unbalanced`},
		{"pendulum in the plane, at rest", `
plane = "xy"
[points]
O = { at = "0, 0", on = "bob" }
G = { at = "0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "pin" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps bob from turning about O, and no load acts that way
- bob is a two-force member: forces act on it at O and G only, so they lie along the line between`},
		{"hung from one point in space", `
[points]
O = { at = "0, 0, 0", on = "bob" }
G = { at = "0, 0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "ball-and-socket" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps bob from turning about O, whichever way, and no load acts that way
- bob is a two-force member: forces act on it at O and G only, so they lie along the line between`},
		{"hung from one point in space, off its centre", `
[points]
O = { at = "0, 0, 0", on = "bob" }
G = { at = "0.5, 0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "ball-and-socket" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps bob from turning about the axis through O along +y: a moment of 49.1 N m is unbalanced
nothing keeps bob from turning about the axis through O along x, and no load acts that way
nothing keeps bob from turning about the axis through O along z, and no load acts that way`},
		{"hung by one cable", `
[points]
O = "0, 0, 3"
T = { at = "0, 0, 0", on = "crate" }
G = { at = "0, 0, -1", on = "crate" }
[bodies]
crate = { weight = "10 kg", centre = "G" }
[lines]
T1 = { kind = "cable", path = "T O" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps crate from turning about T, whichever way, and no load acts that way
nothing holds crate along x or y, and no load acts that way
- crate is a two-force member: forces act on it at T and G only, so they lie along the line between`},
		{"a screw motion, excited", `
[points]
A = { at = "0, 0, 0", on = "nut" }
B = { at = "0, 0, 2", on = "nut" }
C = { at = "1, 0, 0", on = "nut" }
[joints]
A = { kind = "journal-bearing", axis = "+z" }
[lines]
L = { kind = "link", at = "C", along = "(0, 3, 4)" }
F = { kind = "force", at = "B", along = "-z", magnitude = "40 N" }`, `
no equilibrium: the loads excite a motion that nothing resists
nothing keeps nut from turning about the axis from A to B while it moves 0.750 m along it per radian, like a screw with a left-hand thread: a moment of 30.0 N m is unbalanced`},
		{"a screw motion, not excited", `
[points]
A = { at = "0, 0, 0", on = "nut" }
B = { at = "0, 0, 2", on = "nut" }
C = { at = "1, 0, 0", on = "nut" }
[joints]
A = { kind = "journal-bearing", axis = "+z" }
[lines]
L = { kind = "link", at = "C", along = "(0, 3, 4)" }
F = { kind = "force", at = "B", along = "+x", magnitude = "40 N" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps nut from turning about the axis through A and B while it moves 0.750 m along it per radian, like a screw with a left-hand thread, and no load acts that way`},
		{"a boom with two cables", `
[points]
O = { at = "0, 0, 0", on = "boom" }
T = { at = "0, 6, 0", on = "boom" }
A = "3, 0, 4"
B = "-3, 0, 4"
[joints]
O = { kind = "ball-and-socket" }
[lines]
T1 = { kind = "cable", path = "T A" }
T2 = { kind = "cable", path = "T B" }
W = { kind = "weight", at = "T", magnitude = "800 N" }`, `
determinate, partly constrained: every unknown has one value
nothing keeps boom from turning about the axis through O and T, and no load acts that way
- boom is a two-force member: forces act on it at T and O only, so they lie along the line between`},
		{"four-leg sling", `
[points]
H = "0, 0, 2"
A = { at = "1, 1, 0", on = "load" }
B = { at = "-1, 1, 0", on = "load" }
C = { at = "-1, -1, 0", on = "load" }
D = { at = "1, -1, 0", on = "load" }
[bodies]
load = { weight = "4 kN", centre = "0, 0, -1" }
[lines]
T1 = { kind = "cable", path = "A H", limit = "2 kN" }
T2 = { kind = "cable", path = "B H" }
T3 = { kind = "cable", path = "C H" }
T4 = { kind = "cable", path = "D H" }`, `
indeterminate to degree 1, partly constrained: 3 independent equations for 4 unknowns
T1 lies between 0 N and 2450 N
T2 lies between 0 N and 2450 N
T3 lies between 0 N and 2450 N
T4 lies between 0 N and 2450 N
nothing keeps load from turning about H, whichever way, and no load acts that way
- equilibrium is possible: the free unknowns have admissible values
- T1 could reach 2450 N, 122 % of its limit of 2000 N`},
	})
}
