package cells

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
	ColKind
	colAt        // the point of a joint, the centre of a body, the body of a couple, the path of a load
	colDirection // normal or axis, a body's point for moments, about, along
	colSize      // friction, weight, magnitude
	colLimit     // a joint's limit, a couple's stiffness
	colGives     // what follows
	colOn        // the bodies of a joint or a load, a couple's turn
	ColMore      // and four columns that few rows need
	supportCols  = ColMore + 4
)

// Supports is the pane of what holds bodies and of what loads them beside the
// force lines: joints, bodies, couples, distributed loads.
func (b Builder) Supports() Table {
	t := Table{
		Columns: []Column{
			{Head: "name", Width: 8, Limit: 9}, {Head: "kind", Width: 9, Limit: 16, Grow: 2}, {Head: "at", Width: 6, Grow: 1}, {Head: "direction", Width: 9, Grow: 1},
			{Head: "magnitude", Width: 9, Grow: 1}, {Head: "limit", Width: 6}, {Head: "gives", Width: 12, Grow: 2}, {Head: "on", Width: 8},
			{Width: 9}, {Width: 9}, {Width: 8}, {Width: 8},
		},
		empty: "empty: ctrl+n adds a joint, a body, a couple or a load",
	}
	for _, of := range []struct {
		table string
		slots func(Builder, sheet.Row) ([]Slot, []string)
	}{{"bodies", Builder.body}, {"joints", Builder.joint}, {"couples", Builder.couple}, {"distributed", Builder.load}} {
		for _, row := range b.rows(of.table) {
			slots, heads := of.slots(b, row)
			slots[colName] = b.name(of.table, row)
			t.Records = append(t.Records, Record{Row: sheet.Ref{Table: of.table, Row: row.Name}, Slots: slots, heads: heads})
		}
		b.insert(&t, of.table)
	}
	return t
}

func fixed(s string) Slot { return Slot{Text: s, look: theme.Dim} }

func (b Builder) planar() bool { return b.Latest != nil && b.Latest.Planar }

func (b Builder) joint(row sheet.Row) ([]Slot, []string) {
	s, heads := make([]Slot, supportCols), []string{"joint", "kind", "at", "normal", "friction", "limit", "holds", "on", "moments", "impending", "face", ""}
	has := func(key string) bool { _, ok := row.Cell(key); return ok }
	cell := func(key string) Slot { return b.cell("joints", row, key) }
	rare := func(key string) Slot { return b.rare("joints", row, key) }
	s[ColKind], s[colAt], s[colLimit], s[colOn] = cell("kind"), cell("at"), rare("limit"), rare("on")
	if _, named := b.Typed.Table("points").Row(row.Name); named {
		s[colAt].Rare = s[colAt].Text == ""
	}
	if s[colAt].Text == "" {
		s[colAt].Text, s[colAt].look = row.Name, theme.Dim // the point of its own name
	}
	info, known := JointNamed(s[ColKind].Text)
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
	s[ColKind].Need, s[colDirection].Need = true, holds.Needs != ""
	rough := holds.Forces == problem.HoldRough
	for k, x := range []struct {
		key  string
		want bool
		col  int
	}{
		{"friction", rough, colSize}, {"moments", info.MayLack && holds.Moments != problem.HoldNone, ColMore},
		{"impending", rough, ColMore + 1}, {"face", b.planar() && info.PushOnly, ColMore + 2},
	} {
		if x.want || has(x.key) {
			s[x.col] = rare(x.key)
			s[x.col].Rare = s[x.col].Rare && x.col != colSize
		} else if k > 0 || known {
			heads[x.col] = ""
		}
	}
	if i, ok := b.jointAt[row.Name]; ok {
		s[colGives] = b.computed(strings.Join(b.brings[i], " "))
	}
	return s, heads
}

// JointNamed finds a kind of joint by its name or by another that it goes by.
func JointNamed(name string) (problem.JointInfo, bool) {
	name = strings.TrimSpace(name)
	for _, j := range problem.Joints() {
		if j.Name == name || slices.Contains(j.Aliases, name) {
			return j, true
		}
	}
	return problem.JointInfo{}, false
}

func (b Builder) body(row sheet.Row) ([]Slot, []string) {
	s := make([]Slot, supportCols)
	cell := func(key string) Slot { return b.cell("bodies", row, key) }
	s[ColKind], s[colAt], s[colDirection], s[colSize] = fixed("body"), cell("centre"), b.rare("bodies", row, "about"), cell("weight")
	s[colSize].Need = s[colAt].Text != ""
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
			if s[colDirection].Text == "" {
				s[colDirection].Text, s[colDirection].look = body.AboutName, theme.Dim
			}
		}
	}
	return s, []string{"body", "", "centre", "ΣM about", "weight", "", "points", "", "", "", "", ""}
}

func (b Builder) couple(row sheet.Row) ([]Slot, []string) {
	s, heads := make([]Slot, supportCols), []string{"couple", "", "on", "about", "magnitude", "stiffness", "moment", "turn", "", "", "", ""}
	cell := func(key string) Slot { return b.cell("couples", row, key) }
	s[ColKind], s[colAt], s[colSize], s[colLimit], s[colOn] = fixed("couple"), cell("on"), cell("magnitude"), b.rare("couples", row, "stiffness"), b.rare("couples", row, "turn")
	s[colDirection] = b.cell("couples", row, "components", "about")
	s[colDirection].Rare = s[colDirection].Text == "" && b.planar()
	if s[colDirection].Ref.Key == "components" {
		heads[colDirection] = "components"
	} else if s[colDirection].Text == "" && b.planar() {
		s[colDirection].Text, s[colDirection].look = "+z", theme.Dim
	}
	s[colAt].Need, s[colDirection].Need, s[colSize].Need = true, !b.planar(), true
	if s[colSize].Text == "" && s[colLimit].Text == "" && heads[colDirection] == "about" {
		s[colSize].Text, s[colSize].look = "?", theme.Dim
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

func (b Builder) load(row sheet.Row) ([]Slot, []string) {
	s, heads := make([]Slot, supportCols), []string{"load", "", "path", "along", "magnitude", "", "resultant", "on", "kind", "", "", ""}
	cell := func(key string) Slot { return b.cell("distributed", row, key) }
	s[ColKind], s[colAt], s[colDirection], s[colSize], s[colOn], s[ColMore] = fixed("load"), cell("path"), cell("along"), cell("magnitude"), b.rare("distributed", row, "on"), b.rare("distributed", row, "kind")
	s[colAt].Need, s[colDirection].Need, s[colSize].Need = true, true, true
	wet := strings.TrimSpace(s[ColMore].Text) == "hydrostatic"
	for i, key := range []string{"surface", "width", "density"} {
		if _, ok := row.Cell(key); ok || wet {
			s[ColMore+1+i], heads[ColMore+1+i] = b.rare("distributed", row, key), key
			s[ColMore+1+i].Need = wet && key != "density"
			s[ColMore+1+i].Rare = s[ColMore+1+i].Rare && !s[ColMore+1+i].Need
		}
	}
	if _, ok := row.Cell("magnitude"); wet && !ok {
		s[colSize], heads[colSize] = Slot{}, ""
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
