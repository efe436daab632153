package tui

import (
	"strings"

	"trivet/mechanics/problem"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// supportsHelp is the textbook's table of supports: what each holds in the plane
// and in space. Its first rows, cables and links, are force lines; the others
// come from the table that the equations are written by.
func supportsHelp(d *paneText, w int) {
	d.wrapped(theme.Plain, "  ", "The unknowns are named after the joint: Ax Ay, and MAz for a moment; a joint with one force bears its own name; a rough surface has AN and AF.", w)
	rows := [][4]string{}
	for _, k := range []problem.Kind{problem.Cable, problem.Link} {
		rows = append(rows, [4]string{k.String(), "1 force along it", "1 force along it", k.Info().Holds + " (a force line)"})
	}
	for _, j := range problem.Joints() {
		rows = append(rows, [4]string{j.Name, holdsWords(j.Plane, true), holdsWords(j.Space, false), j.Says})
	}
	const name, plane, space = 16, 24, 26
	d.text(theme.Head, "  "+grid.Fit("support", name)+" "+grid.Fit("in the plane", plane)+" "+grid.Fit("in space", space))
	for _, r := range rows {
		d.add(seg{text: "  " + grid.Fit(r[0], name) + " ", look: theme.Name}, seg{text: grid.Fit(r[1], plane) + " " + grid.Fit(r[2], space)})
		d.wrapped(theme.Dim, "      ", r[3], w)
	}
}

// holdsWords counts what a support holds: "3 forces, 2 moments".
func holdsWords(h problem.Holds, planar bool) string {
	if !h.Stands {
		return "-"
	}
	dims := 3
	if planar {
		dims = 2
	}
	var parts []string
	switch h.Forces {
	case problem.HoldAll:
		parts = append(parts, count(dims, "force"))
	case problem.HoldNormal:
		parts = append(parts, "1 force")
	case problem.HoldAcross:
		parts = append(parts, count(dims-1, "force"))
	case problem.HoldRough:
		parts = append(parts, count(dims, "force"))
	}
	switch {
	case h.Moments == problem.HoldNone:
	case planar:
		parts = append(parts, "1 moment")
	case h.Moments == problem.HoldAll:
		parts = append(parts, "3 moments")
	default:
		parts = append(parts, "2 moments")
	}
	words := strings.Join(parts, ", ")
	if h.Needs != "" {
		words += "; " + h.Needs
	}
	return words
}
