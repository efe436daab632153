package names

import (
	"cmp"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// symbol is a name of a sheet with the cell that defines it. An unknown may be named
// after a joint or a line: before + the owner's name + behind.
type symbol struct {
	problem.Named
	cell           sheet.Ref
	owner          problem.Named
	before, behind string
}

// symbols are the names of a sheet, and where they are used.
type symbols struct {
	s      *sheet.Sheet
	named  map[problem.Named]symbol
	listed [problem.AParticle + 1][]symbol // in the order of the sheet
	uses   []Use
}

func symbolsOf(s *sheet.Sheet) *symbols {
	x := &symbols{s: s, named: map[problem.Named]symbol{}}
	for t := problem.AGiven; t <= problem.ALoad; t++ {
		for _, row := range problem.Rows(s, t.Table()) {
			ref := sheet.Ref{Table: t.Table(), Row: row.Name}
			if len(row.Cells) > 0 {
				ref.Key = row.Cells[0].Key
			}
			x.add(t, symbol{Named: t.Named(row.Name), cell: ref})
		}
	}
	for _, row := range problem.Rows(s, "points") {
		on, _ := row.Cell("on")
		for _, w := range problem.Fields(on.Text) {
			switch w.Text {
			case problem.GroundWord:
			case problem.ParticleWord:
				x.add(problem.AParticle, x.named[problem.APoint.Named(row.Name)])
			default:
				x.add(problem.ABody, symbol{Named: problem.ABody.Named(w.Text), cell: sheet.Ref{Table: "points", Row: row.Name, Key: "on"}})
			}
		}
	}
	if len(x.listed[problem.AJoint]) > 0 {
		x.jointUnknowns()
	}
	x.lineUnknowns()
	x.findUses()
	return x
}

// add lists a symbol as a thing; of several of one name the first counts.
func (x *symbols) add(as problem.Thing, sym symbol) {
	at := as.Named(sym.Name)
	if _, taken := x.named[at]; !taken {
		x.named[at] = sym
		x.listed[as] = append(x.listed[as], sym)
	}
}

// own adds unknowns that are named after a joint or a line.
func (x *symbols) own(owner problem.Named, before string, behind ...string) {
	for _, b := range behind {
		x.add(problem.AnUnknown, symbol{problem.AnUnknown.Named(before + owner.Name + b), x.named[owner].cell, owner, before, b})
	}
}

// jointUnknowns finds the unknowns of the joints. One that does not read yet has all
// that a joint may have and no other has.
func (x *symbols) jointUnknowns() {
	p, _ := problem.Read(x.s)
	for i := range p.Joints {
		j := &p.Joints[i]
		of := problem.AJoint.Named(j.Name)
		for _, c := range j.Held {
			if !c.Moment {
				x.own(of, "", c.Suffix)
				continue
			}
			x.own(of, "M", c.Suffix)
			if p.Planar {
				x.own(of, "M", "") // answers to MC as well as to MCz
			}
		}
		if p.Planar && j.Impending {
			x.own(of, "", "F")
		}
	}
	for i := range p.Joints {
		if of := problem.AJoint.Named(p.Joints[i].Name); len(p.Joints[i].Held) == 0 {
			x.own(of, "", "", "x", "y", "z", "1", "2", "N", "F", "F1", "F2")
			x.own(of, "M", "", "x", "y", "z", "1", "2")
		}
	}
}

// lineUnknowns finds the two tensions of each belt, which are lines too, and the unknowns
// of forces with a ? among their components.
func (x *symbols) lineUnknowns() {
	for _, row := range problem.Rows(x.s, "lines") {
		of := problem.ALine.Named(row.Name)
		if problem.IsBelt(row) {
			x.own(of, "", "1", "2")
			for _, name := range problem.LinesOf(row) {
				x.add(problem.ALine, x.named[problem.AnUnknown.Named(name)])
			}
		}
		text := row.Text("components")
		e, err := units.Parse(text)
		if !strings.Contains(text, "?") || err != nil {
			continue
		}
		parts, tuple := e.Tuple()
		for k, axis := range []string{"x", "y", "z"} {
			if !tuple || k < len(parts) && parts[k].IsQuestion() {
				x.own(of, "", axis)
			}
		}
	}
}

// find gives what a name stands for where it may be a thing of some kinds: of several
// the last.
func (x *symbols) find(name string, kinds ...problem.Thing) (symbol, bool) {
	for _, t := range slices.Backward(kinds) {
		if sym, ok := x.named[t.Named(name)]; ok {
			return sym, true
		}
	}
	return symbol{}, false
}

// bearing lists the things that bear a name.
func (x *symbols) bearing(name string) (out []problem.Thing) {
	for t := problem.AGiven; t <= problem.AnUnknown; t++ {
		if sym, ok := x.named[t.Named(name)]; ok {
			out = append(out, sym.Thing)
		}
	}
	return out
}

// afterPoint tells whether a joint has its place from its name.
func (x *symbols) afterPoint(joint string) bool {
	row, ok := x.s.Table("joints").Row(joint)
	_, point := x.find(joint, problem.APoint)
	return ok && point && row.Text("at") == ""
}

// isBelt tells whether a thing is a belt, which has two tensions and no magnitude.
func (x *symbols) isBelt(of problem.Named) bool {
	row, _ := x.s.Table("lines").Row(of.Name)
	return of.Thing == problem.ALine && problem.IsBelt(row)
}

// described says which cells of a thing's row describe it, each with the text before it.
var described = map[problem.Thing][][2]string{
	problem.AGiven:  {{", ", "value"}},
	problem.APoint:  {{" at ", "at"}, {", on ", "on"}},
	problem.ABody:   {{", weight ", "weight"}},
	problem.ALine:   {{" ", "path"}, {" at ", "at"}, {" ", "along"}},
	problem.AJoint:  {{" at ", "at"}},
	problem.ACouple: {{" on ", "on"}},
	problem.ALoad:   {{" on ", "path"}},
}

// says describes a thing in one line, from its row as typed.
func (x *symbols) says(sym symbol) string {
	switch {
	case sym.Thing != problem.AnUnknown:
	case sym.owner.Name == "":
		return "an unknown that several lines share"
	case x.isBelt(sym.owner):
		return "tension of the belt " + sym.owner.Name
	case sym.before == "M":
		return "moment of the " + sym.owner.String() + " " + sym.owner.Name
	default:
		return "force of the " + sym.owner.String() + " " + sym.owner.Name
	}
	row, _ := x.s.Table(sym.Table()).Row(sym.Name)
	t, _ := problem.TableNamed(sym.Table())
	out := sym.Thing.String()
	if sym.Thing == problem.ALine || sym.Thing == problem.AJoint {
		out = cmp.Or(row.Text("kind"), out)
	}
	for _, c := range described[sym.Thing] {
		text := row.Text(c[1])
		if _, ok := row.Cell(c[1]); !ok && c[1] == t.Plain {
			text = row.Text("")
		}
		if text != "" {
			out += c[0] + text
		}
	}
	return out
}

// OwnerOf gives the thing that an unknown is named after, as Ox after the joint O:
// to rename one is to rename the other. ok is false where the unknown has a name of
// its own.
func OwnerOf(s *sheet.Sheet, unknown string) (what problem.Thing, name string, ok bool) {
	sym, _ := symbolsOf(s).find(unknown, problem.AnUnknown)
	return sym.owner.Thing, sym.owner.Name, sym.owner.Name != ""
}
