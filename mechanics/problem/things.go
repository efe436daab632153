package problem

import (
	"maps"
	"slices"
	"strings"

	"trivet/mechanics/sheet"
	"trivet/units"
)

// Thing is what a name stands for.
type Thing int

// The things that a sheet names.
const (
	NoThing Thing = iota
	AGiven
	APoint
	ABody
	ALine
	AJoint
	ACouple
	ALoad
	AnUnknown // one that is named in magnitudes only, or belongs to a joint
)

func (t Thing) String() string {
	return [...]string{"thing", "given", "point", "body", "line", "joint", "couple", "load", "unknown"}[t]
}

// table is where things of a kind have their rows.
func (t Thing) table() string {
	return [...]string{"", "given", "points", "bodies", "lines", "joints", "couples", "distributed", ""}[t]
}

// ThingOf gives what the rows of a table are.
func ThingOf(table string) Thing {
	for t := AGiven; t <= ALoad; t++ {
		if t.table() == table {
			return t
		}
	}
	return NoThing
}

// things knows which names a sheet has, and what for.
type things struct {
	s         *sheet.Sheet
	rows      [ALoad + 1]map[string]bool
	bodies    map[string]sheet.Ref // rigid ones: where each is first named
	particles map[string]bool      // points that are particles
	owned     map[string]ownedName // unknowns named after a joint, or after a line whose components are sought, or that is a belt
	shared    map[string]sheet.Ref // unknowns that only magnitudes name: the first of them
}

type thingName struct {
	Thing
	name string
}

// ownedName is the name of an unknown: before + the owner's name + behind.
type ownedName struct {
	of             thingName
	before, behind string
}

func (o ownedName) named(owner string) string { return o.before + owner + o.behind }

func thingsOf(s *sheet.Sheet) *things {
	x := &things{s: s, bodies: map[string]sheet.Ref{}, particles: map[string]bool{}, owned: map[string]ownedName{}, shared: map[string]sheet.Ref{}}
	for t := AGiven; t <= ALoad; t++ {
		rows := Rows(s, t.table())
		x.rows[t] = make(map[string]bool, len(rows))
		for _, r := range rows {
			x.rows[t][r.Name] = true
		}
	}
	for name := range x.rows[ABody] {
		x.bodies[name] = sheet.Ref{Table: "bodies", Row: name}
	}
	for _, r := range Rows(s, "points") {
		on, _ := r.Cell("on")
		for _, w := range fields(on.Text) {
			switch name := w.text; name {
			case groundWord:
			case particleWord:
				x.particles[r.Name] = true
			default:
				if !has(x.bodies, name) {
					x.bodies[name] = sheet.Ref{Table: "points", Row: r.Name, Key: "on"}
				}
			}
		}
	}
	x.jointNames()
	x.lineNames()
	return x
}

// jointNames finds the unknowns of the joints. One that does not read yet has
// all that a joint may have.
func (x *things) jointNames() {
	if len(x.rows[AJoint]) == 0 {
		return
	}
	p, _ := Read(x.s)
	for i := range p.Joints {
		j := &p.Joints[i]
		of := thingName{AJoint, j.Name}
		for k, part := range j.parts {
			before := ""
			if k >= len(j.Forces) {
				before = "M"
			}
			x.owned[j.unknownName(k)] = ownedName{of, before, part}
			if p.Planar && before == "M" {
				x.owned["M"+j.Name] = ownedName{of, "M", ""} // answers to MC as well as to MCz
			}
		}
		if j.Impending && p.Planar {
			x.owned[j.Name+"F"] = ownedName{of, "", "F"}
		}
	}
	for i := range p.Joints {
		if j := &p.Joints[i]; len(j.parts) == 0 {
			x.mayOwn(thingName{AJoint, j.Name}, "", "", "x", "y", "z", "1", "2", "N", "F", "F1", "F2")
			x.mayOwn(thingName{AJoint, j.Name}, "M", "", "x", "y", "z", "1", "2")
		}
	}
}

// mayOwn adds names that nobody else has.
func (x *things) mayOwn(of thingName, before string, behind ...string) {
	for _, b := range behind {
		o := ownedName{of, before, b}
		name := o.named(of.name)
		if !has(x.owned, name) {
			x.owned[name] = o
		}
	}
}

// lineNames finds the two tensions of each belt, and the unknowns of forces with a ? among
// their components.
func (x *things) lineNames() {
	for _, row := range Rows(x.s, "lines") {
		if isBelt(row) {
			x.mayOwn(thingName{ALine, row.Name}, "", "1", "2")
		}
		c, _ := row.Cell("components")
		e, err := units.Parse(c.Text)
		if !strings.Contains(c.Text, "?") || err != nil {
			continue
		}
		parts, tuple := e.Tuple()
		for k, axis := range []string{"x", "y", "z"} {
			if !tuple || k < len(parts) && parts[k].IsQuestion() {
				x.mayOwn(thingName{ALine, row.Name}, "", axis)
			}
		}
	}
}

// belt tells whether a thing is a belt, whose two tensions have names of their own.
func (x *things) belt(t Thing, name string) bool {
	row, ok := x.s.Table("lines").Row(name)
	return t == ALine && ok && isBelt(row)
}

// OwnerOf gives the thing that an unknown is named after, as Ox after the joint O:
// to rename one is to rename the other. ok is false where the unknown has a name of
// its own.
func OwnerOf(s *sheet.Sheet, unknown string) (what Thing, name string, ok bool) {
	o, ok := thingsOf(s).owned[unknown]
	return o.of.Thing, o.of.name, ok
}

// cell gives the cell that defines a thing, for a cursor to go to.
func (x *things) cell(t Thing, name string) (sheet.Ref, bool) {
	switch t {
	case ABody:
		ref, ok := x.bodies[name]
		if ok && ref.Table == "bodies" {
			return x.firstCell(ref), true
		}
		return ref, ok
	case AnUnknown:
		if u, ok := x.owned[name]; ok {
			return x.cell(u.of.Thing, u.of.name)
		}
		ref, ok := x.shared[name]
		return ref, ok
	}
	if t < AGiven || t > ALoad || !x.rows[t][name] {
		return sheet.Ref{}, false
	}
	return x.firstCell(sheet.Ref{Table: t.table(), Row: name}), true
}

func (x *things) firstCell(ref sheet.Ref) sheet.Ref {
	if row, ok := x.s.Table(ref.Table).Row(ref.Row); ok && len(row.Cells) > 0 {
		ref.Key = row.Cells[0].Key
	}
	return ref
}

// bearing lists the things that bear a name.
func (x *things) bearing(name string) []Thing {
	var out []Thing
	for t := AGiven; t <= ALoad; t++ {
		if t != ABody && x.rows[t][name] {
			out = append(out, t)
		}
	}
	if has(x.bodies, name) {
		out = append(out, ABody)
	}
	if x.unknown(name) {
		out = append(out, AnUnknown)
	}
	return out
}

// afterPoint tells whether a joint has its place from its name.
func (x *things) afterPoint(joint string) bool {
	row, ok := x.s.Table("joints").Row(joint)
	return ok && x.rows[APoint][joint] && row.Text("at") == ""
}

// names lists the names of things of a kind in the order of the sheet.
func (x *things) names(t Thing) []string {
	switch t {
	case ABody:
		return slices.Sorted(maps.Keys(x.bodies))
	case AnUnknown:
		out := slices.AppendSeq(slices.Collect(maps.Keys(x.owned)), maps.Keys(x.shared))
		slices.Sort(out)
		return out
	}
	var out []string
	for _, r := range Rows(x.s, t.table()) {
		out = append(out, r.Name)
	}
	return out
}
