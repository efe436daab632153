package tui

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/results"
	"trivet/tui/theme"
	"trivet/units"
)

// The columns of the supports and loads. What stands in one depends on the row:
// the heads are those of the row under the cursor.
const (
	colName = iota
	colKind
	colAt        // the point of a joint, the centre of a body, the body of a couple, the path of a load
	colDirection // normal or axis, a body's point for moments, about, along
	colSize      // friction, weight, magnitude
	colLimit     // a joint's limit, a couple's stiffness
	colGives     // what follows
	colOn        // the bodies of a joint or a load, a couple's turn
	colMore      // and four columns that few rows need
	supportCols  = colMore + 4
)

// supports is the pane of what holds bodies and of what loads them beside the
// force lines: joints, bodies, couples, distributed loads.
func (b builder) supports() table {
	t := table{
		columns: []column{
			{head: "name", width: 6, limit: 9}, {head: "kind", width: 9, limit: 16, grow: 2}, {head: "at", width: 6, grow: 1}, {head: "direction", width: 9, grow: 1},
			{head: "magnitude", width: 9, grow: 1}, {head: "limit", width: 6}, {head: "gives", width: 12, grow: 2}, {head: "on", width: 8},
			{width: 9}, {width: 9}, {width: 8}, {width: 8},
		},
		empty: "empty: ctrl+n adds a joint, a body, a couple or a load",
	}
	for _, of := range []struct {
		table string
		slots func(builder, sheet.Row) ([]slot, []string)
	}{{"bodies", builder.body}, {"joints", builder.joint}, {"couples", builder.couple}, {"distributed", builder.load}} {
		for _, row := range b.rows(of.table) {
			slots, heads := of.slots(b, row)
			slots[colName] = b.name(of.table, row)
			t.records = append(t.records, record{row: sheet.Ref{Table: of.table, Row: row.Name}, slots: slots, heads: heads})
		}
		b.insert(&t, of.table)
	}
	return t
}

func fixed(s string) slot { return slot{text: s, look: theme.Dim} }

func (b builder) planar() bool { return b.Latest != nil && b.Latest.Planar }

func (b builder) joint(row sheet.Row) ([]slot, []string) {
	s, heads := make([]slot, supportCols), []string{"joint", "kind", "at", "normal", "friction", "limit", "holds", "on", "moments", "impending", "face", ""}
	has := func(key string) bool { _, ok := row.Cell(key); return ok }
	cell := func(key string) slot { return b.cell("joints", row, key) }
	s[colKind], s[colAt], s[colLimit], s[colOn] = cell("kind"), cell("at"), cell("limit"), cell("on")
	if s[colAt].text == "" {
		s[colAt].text, s[colAt].look = row.Name, theme.Dim // the point of its own name
	}
	info, known := jointNamed(s[colKind].text)
	holds := info.Space
	if b.planar() {
		holds = info.Plane
	}
	switch {
	case holds.Needs == "axis" || has("axis"):
		s[colDirection], heads[colDirection] = cell("axis"), "axis"
	case holds.Needs == "normal" || has("normal"):
		s[colDirection] = cell("normal")
	case known:
		heads[colDirection] = ""
	}
	s[colKind].need, s[colDirection].need = true, holds.Needs != ""
	rough := holds.Forces == problem.HoldRough
	for k, x := range []struct {
		key  string
		want bool
		col  int
	}{
		{"friction", rough, colSize}, {"moments", info.MayLack && holds.Moments != problem.HoldNone, colMore},
		{"impending", rough, colMore + 1}, {"face", b.planar() && info.PushOnly, colMore + 2},
	} {
		if x.want || has(x.key) {
			s[x.col] = cell(x.key)
		} else if k > 0 || known {
			heads[x.col] = ""
		}
	}
	if i, ok := b.jointAt[row.Name]; ok {
		s[colGives] = b.computed(strings.Join(b.brings[i], " "))
	}
	return s, heads
}

// jointNamed finds a kind of joint by its name or by another that it goes by.
func jointNamed(name string) (problem.JointInfo, bool) {
	name = strings.TrimSpace(name)
	for _, j := range problem.Joints() {
		if j.Name == name || slices.Contains(j.Aliases, name) {
			return j, true
		}
	}
	return problem.JointInfo{}, false
}

func (b builder) body(row sheet.Row) ([]slot, []string) {
	s := make([]slot, supportCols)
	cell := func(key string) slot { return b.cell("bodies", row, key) }
	s[colKind], s[colAt], s[colDirection], s[colSize] = fixed("body"), cell("centre"), cell("about"), cell("weight")
	s[colSize].need = s[colAt].text != ""
	if b.Latest != nil {
		for _, body := range b.Latest.Bodies {
			if body.Name != row.Name || body.Particle {
				continue
			}
			names := make([]string, len(body.Points))
			for i, k := range body.Points {
				names[i] = b.Latest.Points[k].Name
			}
			s[colGives] = b.computed(strings.Join(names, " "))
			if s[colDirection].text == "" {
				s[colDirection].text, s[colDirection].look = body.AboutName, theme.Dim
			}
		}
	}
	return s, []string{"body", "", "centre", "ΣM about", "weight", "", "points", "", "", "", "", ""}
}

func (b builder) couple(row sheet.Row) ([]slot, []string) {
	s, heads := make([]slot, supportCols), []string{"couple", "", "on", "about", "magnitude", "stiffness", "moment", "turn", "", "", "", ""}
	cell := func(key string) slot { return b.cell("couples", row, key) }
	s[colKind], s[colAt], s[colSize], s[colLimit], s[colOn] = fixed("couple"), cell("on"), cell("magnitude"), cell("stiffness"), cell("turn")
	s[colDirection] = b.cell("couples", row, "components", "about")
	if s[colDirection].ref.Key == "components" {
		heads[colDirection] = "components"
	} else if s[colDirection].text == "" && b.planar() {
		s[colDirection].text, s[colDirection].look = "+z", theme.Dim
	}
	s[colAt].need, s[colDirection].need, s[colSize].need = true, !b.planar(), true
	if s[colSize].text == "" && s[colLimit].text == "" && heads[colDirection] == "about" {
		s[colSize].text, s[colSize].look = "?", theme.Dim
	}
	if p := b.Latest; p != nil {
		for _, c := range p.Couples {
			if c.Name == row.Name && c.OK && len(c.Magnitude.Terms) == 0 {
				s[colGives] = b.computed(results.Format(p, c.Magnitude.Const, units.Moment))
			}
		}
	}
	return s, heads
}

func (b builder) load(row sheet.Row) ([]slot, []string) {
	s, heads := make([]slot, supportCols), []string{"load", "", "path", "along", "magnitude", "", "resultant", "on", "kind", "", "", ""}
	cell := func(key string) slot { return b.cell("distributed", row, key) }
	s[colKind], s[colAt], s[colDirection], s[colSize], s[colOn], s[colMore] = fixed("load"), cell("path"), cell("along"), cell("magnitude"), cell("on"), cell("kind")
	s[colAt].need, s[colDirection].need, s[colSize].need = true, true, true
	wet := strings.TrimSpace(s[colMore].text) == "hydrostatic"
	for i, key := range []string{"surface", "width", "density"} {
		if _, ok := row.Cell(key); ok || wet {
			s[colMore+1+i], heads[colMore+1+i] = cell(key), key
			s[colMore+1+i].need = wet && key != "density"
		}
	}
	if _, ok := row.Cell("magnitude"); wet && !ok {
		s[colSize], heads[colSize] = slot{}, ""
	}
	if p := b.Latest; p != nil {
		for _, d := range p.Loads {
			if d.Name == row.Name && d.OK {
				s[colGives] = b.computed(resultant(p, d))
			}
		}
	}
	return s, heads
}

// resultant is a distributed load's force and where it acts, from its first end.
func resultant(p *problem.Problem, d problem.Distributed) string {
	switch {
	case d.Nothing():
		return results.Format(p, 0, units.Force)
	case d.Total == 0:
		return "a couple"
	}
	return results.Format(p, d.Total, units.Force) + " at " + results.Format(p, d.Distance, units.Length)
}
