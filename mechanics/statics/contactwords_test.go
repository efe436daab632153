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
inadmissible, not possible as drawn: the roller at A would have to pull (150 N); A lifts off
without A there is no equilibrium
then nothing keeps beam from turning about B clockwise: a moment of 300 N m is unbalanced
- beam is a three-force member: its forces at C, A and B have parallel lines of action`},
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
indeterminate to degree 1: 3 independent equations for 4 unknowns
T is at least 100 N, unbounded above
A is at least 0 N, unbounded above
Bx = 0 N is fixed all the same
By is at most 0 N, unbounded below
- equilibrium is possible: the free unknowns have admissible values`},
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
determinate: every unknown has one value
- block does not slip at M: it needs 60.0 N of the 80.0 N of friction available
- block does not tip: the normal force at M acts 0.950 m from A, inside the contact; at this load it is nearer to tipping (90.0 % of the half width) than to slipping (75.0 % of the available friction)`},
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
inadmissible, not possible as drawn: the normal force at M would have to act 0.0625 m beyond B, outside the contact; block tips about B
- block does not slip at M: it needs 75.0 N of the 80.0 N of friction available
- block tips about B: the normal force at M would have to act 0.0625 m beyond it`},
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
inadmissible, not possible as drawn: the surface at M would have to exert 90.0 N of friction, and 80.0 N is available; block slips
- block slips at M: it needs 90.0 N of friction, and 80.0 N is available
- block does not tip: the normal force at M acts 0.725 m from A, inside the contact`},
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
determinate: every unknown has one value
- block does not slip at M: it needs 80.0 N of the 80.0 N of friction available
- block does not tip: the normal force at M acts 1.00 m from A, inside the contact; at this load it is as near to slipping (100 % of the available friction) as to tipping (100 % of the half width)`},
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
no equilibrium: the loads excite a motion that nothing resists
nothing holds block along +x: 6.00 N is unbalanced`},
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
determinate: every unknown has one value
- ladder is a three-force member: the lines of its forces at A, B and (1.50, 2.00) m meet in (1.50, 4.00) m
- ladder does not slip at A: it needs 75.0 N of the 100 N of friction available`},
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
inadmissible, not possible as drawn: the surface at A would have to exert 75.0 N of friction, and 60.0 N is available; ladder slips
- ladder is a three-force member: the lines of its forces at A, B and (1.50, 2.00) m meet in (1.50, 4.00) m
- ladder slips at A: it needs 75.0 N of friction, and 60.0 N is available`},
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
determinate, partly constrained: every unknown has one value
nothing keeps ladder from turning about (1.50, 4.00) m, and no load acts that way
- ladder is a three-force member: the lines of its forces at A, B and (1.50, 2.00) m meet in (1.50, 4.00) m
- A is on the point of slipping, as the sheet says: its friction is 75.0 N, all that is available`},
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
determinate: every unknown has one value
- arm is a three-force member: the lines of its forces at C, B and E meet in (4.00, 5.00) m
- brace is a two-force member: forces act on it at D and E only, so they lie along the line between`},
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
determinate: every unknown has one value
- bar is a three-force member: the lines of its forces at B, C and A meet in (2.00, 1.50) m`},
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
determinate, partly constrained: every unknown has one value
nothing holds beam along x, and no load acts that way
- beam is a three-force member: its forces at M, A and B have parallel lines of action`},
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
determinate: every unknown has one value
- beam is a three-force member: its forces at M, A and B have parallel lines of action
- A exceeds its limit: it uses 125 % of 40.0 N
- B uses 83.3 % of 60.0 N, a factor of 1.20 left`},
	})
}
