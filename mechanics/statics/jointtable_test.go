package statics

import (
	"fmt"
	"strings"
	"testing"

	"trivet/mechanics/problem"
)

// columns writes the system by columns: for each unknown, which rows it stands
// in and with what coefficient.
func columns(s *Solution) string {
	var lines []string
	for j, col := range s.System.Cols {
		line := col + ":"
		for i, row := range s.System.Rows {
			if c := s.System.At(i, j); c > 1e-12 || c < -1e-12 {
				body := ""
				if len(s.Problem.Bodies) > 1 {
					body = row.Name + "."
				}
				line += fmt.Sprintf(" %s%s %.4g", body, row.Axis, c)
			}
		}
		lines = append(lines, line)
	}
	return strings.Join(lines, "\n")
}

// The joints of the tables below stand at r = (2, 3, 5) from where moments are
// taken, in the plane at (2, 3). A force along x has the moment r × x = (0, 5, -3),
// one along y (-5, 0, 2), one along z (3, -2, 0).
const (
	tablePlane = `plane = "xy"
[points]
Q = { at = "0, 0", on = "bar" }
O = { at = "2, 3", on = "bar" }
[bodies]
bar = { about = "Q" }
[joints]
O = { %s }
`
	tableSpace = `[points]
Q = { at = "0, 0, 0", on = "bar" }
O = { at = "2, 3, 5", on = "bar" }
[bodies]
bar = { about = "Q" }
[joints]
O = { %s }
`
)

const (
	threeForces = "Ox: Fx 1 My 5 Mz -3\nOy: Fy 1 Mx -5 Mz 2\nOz: Fz 1 Mx 3 My -2"
	twoForces   = "Ox: Fx 1 Mz -3\nOy: Fy 1 Mz 2"
)

// TestTableOfJoints holds what each joint holds, in the plane and in space, with
// the names of its unknowns (a textbook's table of supports, common practice).
func TestTableOfJoints(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range []struct{ cells, plane, space string }{
		{`kind = "roller", normal = "+y"`, "O: Fy 1 Mz 2", "O: Fy 1 Mx -5 Mz 2"},
		{`kind = "rocker", normal = "-x"`, "O: Fx -1 Mz 3", "O: Fx -1 My -5 Mz 3"},
		{`kind = "smooth-surface", normal = "+y"`, "O: Fy 1 Mz 2", "O: Fy 1 Mx -5 Mz 2"},
		{`kind = "smooth surface", normal = "+y"`, "O: Fy 1 Mz 2", "O: Fy 1 Mx -5 Mz 2"},
		// The tangent is the normal turned clockwise; in space there are two.
		{`kind = "rough-surface", normal = "+y"`, "ON: Fy 1 Mz 2\nOF: Fx 1 Mz -3", "ON: Fy 1 Mx -5 Mz 2\nOF1: Fx -1 My -5 Mz 3\nOF2: Fz 1 Mx 3 My -2"},
		{`kind = "rough", normal = "-x"`, "ON: Fx -1 Mz 3\nOF: Fy 1 Mz 2", "ON: Fx -1 My -5 Mz 3\nOF1: Fy -1 Mx 5 Mz -2\nOF2: Fz 1 Mx 3 My -2"},
		// About to slip along +x: friction is 0.5 of the normal force, along -x.
		{`kind = "rough", normal = "+y", friction = "0.5", impending = "+x"`, "ON: Fx -0.5 Fy 1 Mz 3.5", "ON: Fx -0.5 Fy 1 Mx -5 My -2.5 Mz 3.5"},
		{`kind = "rough", normal = "+y", friction = "0.5", impending = "-x"`, "ON: Fx 0.5 Fy 1 Mz 0.5", "ON: Fx 0.5 Fy 1 Mx -5 My 2.5 Mz 0.5"},
		{`kind = "pin"`, twoForces, ""},
		{`kind = "pin", axis = "+z"`, twoForces, threeForces + "\nMOx: Mx 1\nMOy: My 1"},
		{`kind = "pin", axis = "-z", moments = "none"`, twoForces, threeForces},
		{`kind = "smooth pin", axis = "+x"`, "", threeForces + "\nMOy: My 1\nMOz: Mz 1"},
		{`kind = "ball-and-socket"`, twoForces, threeForces},
		{`kind = "hinge", axis = "+y"`, "", threeForces + "\nMOx: Mx 1\nMOz: Mz 1"},
		{`kind = "hinge"`, twoForces, ""},
		{`kind = "hinge", axis = "+y", moments = "none"`, "", threeForces},
		// A skew axis (0.6, 0, 0.8): the two directions across it are numbered.
		{`kind = "hinge", axis = "(3, 0, 4)"`, "", threeForces + "\nMO1: Mx 0.8 Mz -0.6\nMO2: My 1"},
		{`kind = "journal-bearing", axis = "+x"`, "", "Oy: Fy 1 Mx -5 Mz 2\nOz: Fz 1 Mx 3 My -2\nMOy: My 1\nMOz: Mz 1"},
		{`kind = "journal", axis = "+x", moments = "none"`, "", "Oy: Fy 1 Mx -5 Mz 2\nOz: Fz 1 Mx 3 My -2"},
		{`kind = "journal bearing", axis = "(3, 0, 4)", moments = "none"`, "", "O1: Fx 0.8 Fz -0.6 Mx -1.8 My 5.2 Mz -2.4\nO2: Fy 1 Mx -5 Mz 2"},
		{`kind = "square-bearing", axis = "+z"`, "", "Ox: Fx 1 My 5 Mz -3\nOy: Fy 1 Mx -5 Mz 2\nMOx: Mx 1\nMOy: My 1\nMOz: Mz 1"},
		{`kind = "square-shaft bearing", axis = "+z", moments = "none"`, "", "Ox: Fx 1 My 5 Mz -3\nOy: Fy 1 Mx -5 Mz 2"},
		{`kind = "thrust-bearing", axis = "+z"`, "", threeForces + "\nMOx: Mx 1\nMOy: My 1"},
		{`kind = "thrust bearing", axis = "+z", moments = "none"`, "", threeForces},
		{`kind = "slider", axis = "+x"`, "O: Fy 1 Mz 2", "Oy: Fy 1 Mx -5 Mz 2\nOz: Fz 1 Mx 3 My -2"},
		{`kind = "slot", axis = "(4, 3)"`, "O: Fx -0.6 Fy 0.8 Mz 3.4", ""},
		{`kind = "collar", axis = "+x"`, "O: Fy 1 Mz 2\nMOz: Mz 1", "Oy: Fy 1 Mx -5 Mz 2\nOz: Fz 1 Mx 3 My -2\nMOy: My 1\nMOz: Mz 1"},
		{`kind = "collar", axis = "+x", moments = "none"`, "O: Fy 1 Mz 2", "Oy: Fy 1 Mx -5 Mz 2\nOz: Fz 1 Mx 3 My -2"},
		{`kind = "fixed"`, twoForces + "\nMOz: Mz 1", threeForces + "\nMOx: Mx 1\nMOy: My 1\nMOz: Mz 1"},
		{`kind = "built-in"`, twoForces + "\nMOz: Mz 1", threeForces + "\nMOx: Mx 1\nMOy: My 1\nMOz: Mz 1"},
	} {
		for _, side := range []struct{ base, want string }{{tablePlane, c.plane}, {tableSpace, c.space}} {
			if side.want == "" {
				continue
			}
			s := solveText(t, fmt.Sprintf(side.base, c.cells))
			if got := columns(s); got != side.want {
				t.Errorf("%s\ngot\n%s\nwant\n%s", c.cells, got, side.want)
			}
			seen[fmt.Sprint(s.Problem.Joints[0].Kind, s.Problem.Planar)] = true
		}
	}
	for k := range problem.Joints() {
		for _, planar := range []bool{true, false} {
			kind := problem.JointKind(k)
			if kind.Where(planar).Stands && !seen[fmt.Sprint(kind, planar)] {
				t.Errorf("no %v, planar %v", kind, planar)
			}
		}
	}
}

// TestJointsBetweenBodies: the reaction acts on the first body, and the opposite
// on the second.
func TestJointsBetweenBodies(t *testing.T) {
	const both = `plane = "xy"
[points]
Q = { at = "0, 0", on = "bar" }
R = { at = "0, 3", on = "post" }
O = { at = "2, 3", on = "bar post" }
[bodies]
bar = { about = "Q" }
post = { about = "R" }
[joints]
O = { %s }
`
	for _, c := range []struct{ cells, want string }{
		{`kind = "pin"`, "Ox: bar.Fx 1 bar.Mz -3 post.Fx -1\nOy: bar.Fy 1 bar.Mz 2 post.Fy -1 post.Mz -2"},
		{`kind = "pin", on = "post bar"`, "Ox: bar.Fx -1 bar.Mz 3 post.Fx 1\nOy: bar.Fy -1 bar.Mz -2 post.Fy 1 post.Mz 2"},
		{`kind = "pin", on = "bar"`, "Ox: bar.Fx 1 bar.Mz -3\nOy: bar.Fy 1 bar.Mz 2"},
		{`kind = "pin", on = "post ground"`, "Ox: post.Fx 1\nOy: post.Fy 1 post.Mz 2"},
		{`kind = "roller", normal = "+y"`, "O: bar.Fy 1 bar.Mz 2 post.Fy -1 post.Mz -2"},
		{`kind = "slider", axis = "+y", on = "post bar"`, "O: bar.Fx 1 bar.Mz -3 post.Fx -1"},
		{`kind = "fixed"`, "Ox: bar.Fx 1 bar.Mz -3 post.Fx -1\nOy: bar.Fy 1 bar.Mz 2 post.Fy -1 post.Mz -2\nMOz: bar.Mz 1 post.Mz -1"},
		{`kind = "rough", normal = "+y"`, "ON: bar.Fy 1 bar.Mz 2 post.Fy -1 post.Mz -2\nOF: bar.Fx 1 bar.Mz -3 post.Fx -1"},
		{`kind = "rough", normal = "+y", friction = "0.5", impending = "+x"`, "ON: bar.Fx -0.5 bar.Fy 1 bar.Mz 3.5 post.Fx 0.5 post.Fy -1 post.Mz -2"},
	} {
		p := read(t, fmt.Sprintf(both, c.cells)+"[couples]\nM = { on = \"bar\", magnitude = \"5 N m\" }\nK = { on = \"post\", magnitude = \"5 N m\" }\n")
		s := &Solution{Problem: p, System: assemble(p)}
		if got := columns(s); got != c.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.cells, got, c.want)
		}
	}
}

// TestJointsOfParticles: a particle takes forces only.
func TestJointsOfParticles(t *testing.T) {
	for _, c := range []struct{ cells, want string }{
		{`kind = "ball-and-socket"`, "Px: Fx 1\nPy: Fy 1\nPz: Fz 1"},
		{`kind = "fixed"`, "Px: Fx 1\nPy: Fy 1\nPz: Fz 1"},
		{`kind = "hinge"`, "Px: Fx 1\nPy: Fy 1\nPz: Fz 1"},
		{`kind = "slider", axis = "+y"`, "Px: Fx 1\nPz: Fz 1"},
		{`kind = "square-bearing", axis = "(3, 0, 4)"`, "P1: Fx 0.8 Fz -0.6\nP2: Fy 1"},
		{`kind = "roller", normal = "(0, 3, 4)"`, "P: Fy 0.6 Fz 0.8"},
		{`kind = "rough", normal = "+z", friction = "0.25", impending = "(4, 3, 9)"`, "PN: Fx -0.2 Fy -0.15 Fz 1"},
	} {
		s := solveText(t, "[points]\nP = { at = \"2, 3, 5\", on = \"particle\" }\n[joints]\nP = { "+c.cells+" }\n")
		if got := columns(s); got != c.want {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c.cells, got, c.want)
		}
	}
}
