package cells

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/layout"
)

// NextStep says what a sheet that has little in it yet needs next; empty once the
// rest says itself, or while a row is wrong.
func (b Builder) NextStep(focus layout.Pane) string {
	points, lines, joints := b.read("points"), b.read("lines"), b.read("joints")
	for _, e := range b.Faults() {
		row, _ := b.Typed.Table(e.Ref.Table).Row(e.Ref.Row)
		_, plain := row.Cell("")
		if e.Ref.Row != "" && (plain || e.Ref.Key != "" || len(lines) > 0) {
			return "" // more than a particle that nothing acts on yet
		}
	}
	if p := b.Latest; p != nil {
		if len(p.Unread) > 0 || slices.ContainsFunc(p.Doubts, func(e problem.Error) bool { return e.Ref.Table == "points" && e.Ref.Key == "on" }) {
			return "" // what is missing likely stands there
		}
	}
	there := func(p layout.Pane, key, then string) string {
		if focus == p {
			return "next: " + then
		}
		return "next: " + key + ", then " + then
	}
	body, on, free, fixed := b.stands(points)
	loads := len(b.read("couples")) + len(b.read("distributed"))
	switch {
	case len(points) == 0:
		return there(layout.Points, "alt+p", "type a name for a point where forces act, such as P, and enter")
	case body != "" && on == 1:
		return there(layout.Points, "alt+p", "ctrl+n for each point of "+body+" with a support or a load, "+body+" under on")
	case body != "" && len(joints) == 0 && len(lines)+loads == 0:
		return there(layout.Supports, "f7 s", "ctrl+n and j for a support: its point, its kind; f7 f for a rope")
	case len(joints)+loads > 0 && !b.loaded() && loads == 0:
		return there(layout.Lines, "f7 f", "a name for the load, the kind, weight or force, its point, its magnitude")
	case len(joints)+loads > 0 || body != "" && b.loaded():
		return ""
	case len(points) == 1 && len(lines) == 0:
		return there(layout.Points, "alt+p", "ctrl+n for each point that a rope or strut runs to")
	case len(lines) == 0:
		return there(layout.Lines, "f7 f", "type a name for a rope or a force, such as T1, and enter")
	case !b.loaded() && b.unsized() != "":
		return there(layout.Lines, "f7 f", "type the magnitude of "+b.unsized()+", such as 2 kN, or ? to find it")
	case body == "" && free > 1 && fixed == 0:
		return there(layout.Supports, "f7 s", "ctrl+n and j for each support: its joint, its kind, such as pin")
	case !b.loaded():
		return there(layout.Lines, "f7 f", "ctrl+n for the load: a name, the kind, weight or force, its point, its magnitude")
	}
	return ""
}

// stands counts what the points are on: the first body that is named, and so many points on it or
// another; so many free particles; and so many fixed points.
func (b Builder) stands(points []sheet.Row) (body string, on, free, fixed int) {
	for _, row := range points {
		switch text := row.Text("on"); text {
		case "":
			fixed++
		case particle:
			free++
		default:
			if on++; body == "" {
				body, _, _ = strings.Cut(text, " ")
			}
		}
	}
	return body, on, free, fixed
}

// loaded tells whether any force is known; until one is, every answer is nothing.
func (b Builder) loaded() bool {
	for _, row := range b.read("bodies") {
		if row.Text("weight") != "" {
			return true
		}
	}
	for _, row := range b.read("lines") {
		for _, key := range []string{"magnitude", "components", "stiffness"} {
			if text := row.Text(key); text != "" && text != "?" {
				return true
			}
		}
		if row.Text("kind") == problem.Weight.String() {
			return true // its own cells say what it lacks
		}
	}
	return false
}

// unsized names the first force whose size is still blank: it may be the load. One
// that says ? is meant to be found.
func (b Builder) unsized() string {
	for _, row := range b.read("lines") {
		if row.Text("kind") == problem.Force.String() && row.Text("magnitude") == "" {
			return row.Name
		}
	}
	return ""
}

// FirstPoint tells that a sheet has nothing cut free yet: the first point is the
// one whose forces balance.
func FirstPoint(s *sheet.Sheet) bool {
	return len(s.Table("points").Rows) == 0 && len(s.Table("bodies").Rows) == 0
}
