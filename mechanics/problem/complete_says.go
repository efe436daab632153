package problem

import (
	"strings"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// says describes a thing in one line, from its row as typed.
func (x *things) says(t Thing, name string) string {
	cell := func(key string) string {
		row, _ := x.s.Table(t.table()).Row(name)
		if _, ok := row.Cell(key); !ok && key == tableByName[t.table()].Plain {
			key = ""
		}
		return row.Text(key)
	}
	with := func(before, text string) string {
		if text == "" {
			return ""
		}
		return before + text
	}
	switch t {
	case AGiven:
		return "given" + with(", ", cell("value"))
	case APoint:
		return "point" + with(" at ", cell("at")) + with(", on ", cell("on"))
	case ABody:
		return "body" + with(", weight ", cell("weight"))
	case ALine:
		return cell("kind") + with(" ", cell("path")) + with(" at ", cell("at")) + with(" ", cell("along"))
	case AJoint:
		return cell("kind") + with(" at ", cell("at"))
	case ACouple:
		return "couple on " + cell("on")
	case ALoad:
		return "load" + with(" on ", cell("path"))
	}
	if o, ok := x.owned[name]; ok {
		if x.belt(o.of.Thing, o.of.name) {
			return "tension of the belt " + o.of.name
		}
		what := "force"
		if o.before == "M" {
			what = "moment"
		}
		return what + " of the " + o.of.Thing.String() + " " + o.of.name
	}
	return "an unknown that several lines share"
}

// results gives the names of results: unknowns and lines first, and behind a dot
// the parts of what stands before it.
func (c *choices) results() {
	before := c.text[:c.from]
	if strings.HasSuffix(before, ".") {
		head := units.Word(c.text, c.from-1)
		c.parts(c.text[head.Start:head.End], before[:head.Start])
		return
	}
	if open := strings.LastIndexByte(before, '('); open > strings.LastIndexByte(before, ')') && !strings.HasSuffix(before[:open], "abs") {
		for _, row := range Rows(c.s, "lines") {
			t := ALine
			if isBelt(row) {
				t = AnUnknown
			}
			for _, name := range LinesOf(row) {
				c.add(name, c.says(t, name))
			}
		}
		return
	}
	for _, t := range []Thing{ALine, AnUnknown, ACouple} {
		for _, name := range c.names(t) {
			if !c.belt(t, name) {
				c.add(name, c.says(t, name))
			}
		}
	}
	for _, t := range []Thing{AJoint, ALoad} {
		for _, name := range c.names(t) {
			c.add(name+".", c.says(t, name))
		}
	}
	for _, name := range append(c.names(ABody), c.names(APoint)...) {
		if c.body(name) != NoThing {
			c.add(name+".loads.", "the resultant of the known forces on "+name)
		}
	}
	c.add("abs(", "abs(Ax), or |Ax|: the magnitude of a result, without its sign")
	c.add("angle(", "angle(T1, T2): the angle between two lines")
	c.add("component(", "component(F, T1): the component of a line's force along another line")
}

// partSays is never written to.
var partSays = map[Part]string{
	X: "component along +x", Y: "component along +y", Z: "component along +z", Size: "its magnitude",
	Alpha: "direction angle from +x", Beta: "direction angle from +y", Gamma: "direction angle from +z", PlaneAngle: "angle counter-clockwise from +x",
	MX: "moment about x", MY: "moment about y", MZ: "moment about z",
}

func (c *choices) parts(head, before string) {
	planar := c.planar()
	forces := func(moments bool) {
		for _, k := range parts {
			if k.stands(planar) && (k.dim == units.Moment) == moments {
				c.add(k.name, partSays[k.part])
			}
		}
	}
	if body, ok := strings.CutSuffix(before, "."); ok && head == "loads" {
		owner := units.Word(body, len(body))
		forces(false)
		if !c.particles[body[owner.Start:owner.End]] {
			forces(true)
		}
		return
	}
	switch {
	case c.rows[ALine][head] && !c.belt(ALine, head), c.belt(c.owned[head].of.Thing, c.owned[head].of.name):
		forces(false)
		c.add("length", "the line's length")
		for _, axis := range []string{"x", "y", "z"} {
			if !planar || axis != "z" {
				c.add("u"+axis, "the line's unit vector along +"+axis)
			}
		}
		if row, _ := c.s.Table("lines").Row(head); row.Text("kind") == SpringKind.String() {
			c.add("stretch", "the elongation of the spring")
		}
	case c.rows[AJoint][head]:
		forces(false)
		forces(true)
	case c.rows[ALoad][head]:
		forces(false)
		c.add("at", "the distance of the resultant from its first end")
	}
	if c.body(head) != NoThing {
		c.add("loads.", "the resultant of the known forces on it")
	}
}

// Definition gives the cell that defines the name under a cursor: of a point, a
// given, a line, a body, a joint, or the first magnitude that names an unknown.
// text is what stands in the cell now, typed or kept.
func Definition(s *sheet.Sheet, ref sheet.Ref, text string, cursor int) (sheet.Ref, bool) {
	if c, ok := s.Cell(ref); !ok || c.Text != text {
		s = s.With(ref, text)
	}
	x := thingsOf(s)
	for _, u := range x.uses() {
		if u.Ref == ref && !u.InName && u.Span.Start <= cursor && cursor <= u.Span.End {
			return x.cell(u.Thing, u.Name)
		}
	}
	return sheet.Ref{}, false
}
