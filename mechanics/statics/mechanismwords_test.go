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
no equilibrium: the loads move the bodies and no support prevents it
nothing prevents the crank from rotating clockwise about A, and with it the coupler from moving in the direction +x: a moment of 80.0 N m is unbalanced`},
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
statically determinate, partially constrained: every unknown has a single value
nothing prevents the crank from rotating counter-clockwise about A, and with it the coupler from moving in the direction -x, but no load causes it
- the crank is a two-force member: its forces at A and B act along the line that joins them
- the coupler is a two-force member: its forces at C and B act along the line that joins them`},
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
no equilibrium: the loads move the bodies and no support prevents it
nothing prevents the crank from rotating counter-clockwise about A, and with it the coupler from moving in the direction -x and the rocker from rotating counter-clockwise about D: a moment of 30.0 N m is unbalanced`},
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
no equilibrium: the loads move the body and no support prevents it
nothing prevents the bob from rotating counter-clockwise about O: a moment of 10.0 N m is unbalanced`},
		{"pendulum in the plane, at rest", `
plane = "xy"
[points]
O = { at = "0, 0", on = "bob" }
G = { at = "0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "pin" }`, `
statically determinate, partially constrained: every unknown has a single value
nothing prevents the bob from rotating about O, but no load causes it
- the bob is a two-force member: its forces at O and G act along the line that joins them`},
		{"hung from one point in space", `
[points]
O = { at = "0, 0, 0", on = "bob" }
G = { at = "0, 0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "ball-and-socket" }`, `
statically determinate, partially constrained: every unknown has a single value
nothing prevents the bob from rotating about any axis through O, but no load causes it
- the bob is a two-force member: its forces at O and G act along the line that joins them`},
		{"hung from one point in space, off its centre", `
[points]
O = { at = "0, 0, 0", on = "bob" }
G = { at = "0.5, 0, -2", on = "bob" }
[bodies]
bob = { weight = "10 kg", centre = "G" }
[joints]
O = { kind = "ball-and-socket" }`, `
no equilibrium: the loads move the body and no support prevents it
nothing prevents the bob from rotating about the axis through O along +y: a moment of 49.1 N m is unbalanced
nothing prevents the bob from rotating about the axis through O along x, but no load causes it
nothing prevents the bob from rotating about the axis through O along z, but no load causes it`},
		{"hung by one cable", `
[points]
O = "0, 0, 3"
T = { at = "0, 0, 0", on = "crate" }
G = { at = "0, 0, -1", on = "crate" }
[bodies]
crate = { weight = "10 kg", centre = "G" }
[lines]
T1 = { kind = "cable", path = "T O" }`, `
statically determinate, partially constrained: every unknown has a single value
nothing prevents the crate from rotating about any axis through T, but no load causes it
the crate is unsupported in the directions x and y, but no load acts along them
- the crate is a two-force member: its forces at T and G act along the line that joins them`},
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
no equilibrium: the loads move the body and no support prevents it
nothing prevents the nut from rotating about the axis from A to B and advancing 0.750 m along it per radian, as a left-handed screw: a moment of 30.0 N m is unbalanced`},
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
statically determinate, partially constrained: every unknown has a single value
nothing prevents the nut from rotating about the axis through A and B and advancing 0.750 m along it per radian, as a left-handed screw, but no load causes it`},
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
statically determinate, partially constrained: every unknown has a single value
nothing prevents the boom from rotating about the axis through O and T, but no load causes it
- the boom is a two-force member: its forces at T and O act along the line that joins them`},
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
statically indeterminate to the first degree, partially constrained: 3 independent equations for 4 unknowns
T1 lies between 0 N and 2450 N
T2 lies between 0 N and 2450 N
T3 lies between 0 N and 2450 N
T4 lies between 0 N and 2450 N
nothing prevents the load from rotating about any axis through H, but no load causes it
- equilibrium is possible: the undetermined unknowns have admissible values
- T1 could reach 2450 N, 122 % of its limit of 2000 N`},
	})
}
