package statics

import "testing"

// TestWordsOfContacts holds what is said of what lifts off, tips and slips, and of
// members that two or three forces act on.
func TestWordsOfContacts(t *testing.T) {
	sayAll(t, []wordCase{
		{"a beam lifting off a roller", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "2, 0", on = "beam" }
C = { at = "5, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "pin" }
[lines]
F = { kind = "force", at = "C", along = "-y", magnitude = "100 N" }`, `
not possible as drawn: the roller at A would have to pull (150 N); the beam lifts off
without A, there is no equilibrium
then nothing prevents the beam from rotating clockwise about B: a moment of 300 N m is unbalanced
- the beam is a three-force member: the lines of action of its forces at C, A and B are parallel`},
		{"a beam lifting off a roller, caught by a cable", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "2, 0", on = "beam" }
C = { at = "5, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "pin" }
[lines]
T = { kind = "cable", at = "C", along = "+y" }
F = { kind = "force", at = "C", along = "-y", magnitude = "100 N" }`, `
statically indeterminate to the first degree: 3 independent equations for 4 unknowns
T is at least 100 N, with no upper bound
A is at least 0 N, with no upper bound
Bx = 0 N is nevertheless determinate
By is at most 0 N, with no lower bound
- equilibrium is possible: the undetermined unknowns have admissible values`},
		{"block that stands", `
plane = "xy"
[points]
A = { at = "0, 0", on = "block" }
B = { at = "1, 0", on = "block" }
H = { at = "0, 1.5", on = "block" }
M = { at = "0.5, 0", on = "block" }
[bodies]
block = { weight = "200 N", centre = "0.5, 1" }
[joints]
M = { kind = "rough-surface", normal = "+y", friction = "0.4", face = "A B" }
[lines]
P = { kind = "force", at = "H", along = "+x", magnitude = "60 N" }`, `
statically determinate: every unknown has a single value
- the block does not slip at M: F = 60.0 N ≤ μN = 80.0 N
- the block does not tip: the normal force at M acts 0.950 m from A, inside the contact; at this load it is closer to tipping (90.0 % of the half width) than to slipping (75.0 % of the available friction)`},
		{"block that tips", `
plane = "xy"
[points]
A = { at = "0, 0", on = "block" }
B = { at = "1, 0", on = "block" }
H = { at = "0, 1.5", on = "block" }
M = { at = "0.5, 0", on = "block" }
[bodies]
block = { weight = "200 N", centre = "0.5, 1" }
[joints]
M = { kind = "rough-surface", normal = "+y", friction = "0.4", face = "A B" }
[lines]
P = { kind = "force", at = "H", along = "+x", magnitude = "75 N" }`, `
not possible as drawn: the normal force at M would have to act 0.0625 m beyond B, outside the contact; the block tips about B
- the block does not slip at M: F = 75.0 N ≤ μN = 80.0 N
- the block tips about B: the normal force at M would have to act 0.0625 m beyond it`},
		{"block that slips", `
plane = "xy"
[points]
A = { at = "0, 0", on = "block" }
B = { at = "1, 0", on = "block" }
H = { at = "0, 0.5", on = "block" }
M = { at = "0.5, 0", on = "block" }
[bodies]
block = { weight = "200 N", centre = "0.5, 1" }
[joints]
M = { kind = "rough-surface", normal = "+y", friction = "0.4", face = "A B" }
[lines]
P = { kind = "force", at = "H", along = "+x", magnitude = "90 N" }`, `
not possible as drawn: equilibrium requires a friction force of 90.0 N at M, but μN = 80.0 N; the block slips
- the block slips at M: equilibrium requires F = 90.0 N, but μN = 80.0 N
- the block does not tip: the normal force at M acts 0.725 m from A, inside the contact`},
		{"block that slips and tips", `
plane = "xy"
[points]
A = { at = "0, 0", on = "block" }
B = { at = "1, 0", on = "block" }
H = { at = "0, 1.25", on = "block" }
M = { at = "0.5, 0", on = "block" }
[bodies]
block = { weight = "200 N", centre = "0.5, 1" }
[joints]
M = { kind = "rough-surface", normal = "+y", friction = "0.4", face = "A B" }
[lines]
P = { kind = "force", at = "H", along = "+x", magnitude = "80 N" }`, `
statically determinate: every unknown has a single value
- the block does not slip at M: F = 80.0 N ≤ μN = 80.0 N
- the block does not tip: the normal force at M acts 1.00 m from A, inside the contact; at this load it is as close to slipping (100 % of the available friction) as to tipping (100 % of the half width)`},
		{"block with a smooth face pushed", `
plane = "xy"
[points]
A = { at = "0, 0", on = "block" }
B = { at = "1, 0", on = "block" }
[bodies]
block = { weight = "200 N", centre = "0.5, 1" }
[joints]
A = { kind = "smooth", normal = "+y", face = "A B" }
[lines]
P = { kind = "force", at = "A", along = "+x", magnitude = "6 N" }`, `
no equilibrium: the loads move the body and no support prevents it
the block is unsupported in the direction +x: 6.00 N is unbalanced`},
		{"ladder that holds", `
plane = "xy"
[points]
A = { at = "0, 0", on = "ladder" }
B = { at = "3, 4", on = "ladder" }
[bodies]
ladder = { weight = "200 N", centre = "(A + B)/2" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.5" }
B = { kind = "smooth-surface", normal = "-x" }`, `
statically determinate: every unknown has a single value
- the ladder is a three-force member: the lines of action of its forces at A, B and (1.50, 2.00) m are concurrent at (1.50, 4.00) m
- the ladder does not slip at A: F = 75.0 N ≤ μN = 100 N`},
		{"ladder that slips", `
plane = "xy"
[points]
A = { at = "0, 0", on = "ladder" }
B = { at = "3, 4", on = "ladder" }
[bodies]
ladder = { weight = "200 N", centre = "(A + B)/2" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.3" }
B = { kind = "smooth-surface", normal = "-x" }`, `
not possible as drawn: equilibrium requires a friction force of 75.0 N at A, but μN = 60.0 N; the ladder slips
- the ladder is a three-force member: the lines of action of its forces at A, B and (1.50, 2.00) m are concurrent at (1.50, 4.00) m
- the ladder slips at A: equilibrium requires F = 75.0 N, but μN = 60.0 N`},
		{"ladder about to slip", `
plane = "xy"
[points]
A = { at = "0, 0", on = "ladder" }
B = { at = "3, 4", on = "ladder" }
[bodies]
ladder = { weight = "200 N", centre = "(A + B)/2" }
[joints]
A = { kind = "rough-surface", normal = "+y", friction = "0.375", impending = "-x" }
B = { kind = "smooth-surface", normal = "-x" }`, `
statically determinate, partially constrained: every unknown has a single value
nothing prevents the ladder from rotating about (1.50, 4.00) m, but no load causes it
- the ladder is a three-force member: the lines of action of its forces at A, B and (1.50, 2.00) m are concurrent at (1.50, 4.00) m
- slip is impending at A, as specified: F = μN = 75.0 N`},
		{"frame with a two-force member", `
plane = "xy"
[points]
A = { at = "0, 0", on = "post" }
B = { at = "0, 3", on = "post arm" }
C = { at = "4, 3", on = "arm" }
D = { at = "0, 1", on = "post brace" }
E = { at = "2, 3", on = "arm brace" }
[joints]
A = { kind = "fixed" }
B = { kind = "pin" }
D = { kind = "pin" }
E = { kind = "pin" }
[lines]
F = { kind = "force", at = "C", along = "-y", magnitude = "600 N" }`, `
statically determinate: every unknown has a single value
- the arm is a three-force member: the lines of action of its forces at C, B and E are concurrent at (4.00, 5.00) m
- the brace is a two-force member: its forces at D and E act along the line that joins them`},
		{"a three-force member", `
plane = "xy"
[points]
A = { at = "0, 0", on = "bar" }
B = { at = "4, 0", on = "bar" }
C = { at = "2, 0", on = "bar" }
W = "0, 3"
[joints]
A = { kind = "pin" }
[lines]
T = { kind = "cable", path = "B W" }
F = { kind = "force", at = "C", along = "-y", magnitude = "600 N" }`, `
statically determinate: every unknown has a single value
- the bar is a three-force member: the lines of action of its forces at B, C and A are concurrent at (2.00, 1.50) m`},
		{"parallel forces on three points", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
A = { kind = "roller", normal = "+y" }
B = { kind = "roller", normal = "+y" }
[lines]
F = { kind = "force", at = "M", along = "-y", magnitude = "600 N" }`, `
statically determinate, partially constrained: every unknown has a single value
the beam is unsupported in the x direction, but no load acts in that direction
- the beam is a three-force member: the lines of action of its forces at M, A and B are parallel`},
		{"limits on joints", `
plane = "xy"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
M = { at = "2, 0", on = "beam" }
[joints]
A = { kind = "pin", limit = "40 N" }
B = { kind = "roller", normal = "+y", limit = "60 N" }
[lines]
F = { kind = "force", at = "M", along = "-y", magnitude = "100 N" }`, `
statically determinate: every unknown has a single value
- the beam is a three-force member: the lines of action of its forces at M, A and B are parallel
- A exceeds its limit of 40.0 N: utilisation 125 %
- B is at 83.3 % of its limit of 60.0 N; reserve factor 1.20`},
	})
}
