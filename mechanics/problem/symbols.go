package problem

import (
	"cmp"
	"slices"
	"strings"

	"trivet/mechanics/say"
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
	aParticle // a point, where it stands for its body
	ofAJoint  // an unknown by the joint that it belongs to
)

// things says what each thing is called, where it has its rows, and which cells of its row
// describe it, each with the text before it.
var things = [...]struct {
	word, table string
	cells       [][2]string
}{
	NoThing:   {word: "thing"},
	AGiven:    {"given", "given", [][2]string{{", ", "value"}}},
	APoint:    {"point", "points", [][2]string{{" at ", "at"}, {", on ", "on"}}},
	ABody:     {"body", "bodies", [][2]string{{", weight ", "weight"}}},
	ALine:     {"line", "lines", [][2]string{{" ", "path"}, {" at ", "at"}, {" ", "along"}}},
	AJoint:    {"joint", "joints", [][2]string{{" at ", "at"}}},
	ACouple:   {"couple", "couples", [][2]string{{" on ", "on"}}},
	ALoad:     {"load", "distributed", [][2]string{{" on ", "path"}}},
	AnUnknown: {word: "unknown"},
	aParticle: {word: "particle"},
}

func (t Thing) String() string { return things[t].word }

// one is the thing with its article: "a line".
func (t Thing) one() string { return say.Article(t.String()) + " " + t.String() }

// ThingOf gives what the rows of a table are.
func ThingOf(table string) Thing {
	for t := AGiven; t <= ALoad; t++ {
		if things[t].table == table {
			return t
		}
	}
	return NoThing
}

type thingName struct {
	Thing
	name string
}

// symbol is a name of a sheet with the cell that defines it. An unknown may be named
// after a joint or a line: before + the owner's name + behind.
type symbol struct {
	thingName
	cell           sheet.Ref
	owner          thingName
	before, behind string
}

// symbols are the names of a sheet, and where they are used.
type symbols struct {
	s      *sheet.Sheet
	named  map[thingName]symbol
	listed [aParticle + 1][]symbol // in the order of the sheet
	uses   []Use
}

func symbolsOf(s *sheet.Sheet) *symbols {
	x := &symbols{s: s, named: map[thingName]symbol{}}
	for t := AGiven; t <= ALoad; t++ {
		for _, row := range Rows(s, things[t].table) {
			ref := sheet.Ref{Table: things[t].table, Row: row.Name}
			if len(row.Cells) > 0 {
				ref.Key = row.Cells[0].Key
			}
			x.add(t, symbol{thingName: thingName{t, row.Name}, cell: ref})
		}
	}
	for _, row := range Rows(s, "points") {
		on, _ := row.Cell("on")
		for _, w := range fields(on.Text) {
			switch w.text {
			case groundWord:
			case particleWord:
				x.add(aParticle, x.named[thingName{APoint, row.Name}])
			default:
				x.add(ABody, symbol{thingName: thingName{ABody, w.text}, cell: sheet.Ref{Table: "points", Row: row.Name, Key: "on"}})
			}
		}
	}
	if len(x.listed[AJoint]) > 0 {
		x.jointUnknowns()
	}
	x.lineUnknowns()
	x.findUses()
	return x
}

// add lists a symbol as a thing; of several of one name the first counts.
func (x *symbols) add(as Thing, sym symbol) {
	at := thingName{as, sym.name}
	if _, taken := x.named[at]; !taken {
		x.named[at] = sym
		x.listed[as] = append(x.listed[as], sym)
	}
}

// own adds unknowns that are named after a joint or a line.
func (x *symbols) own(owner thingName, before string, behind ...string) {
	for _, b := range behind {
		x.add(AnUnknown, symbol{thingName{AnUnknown, before + owner.name + b}, x.named[owner].cell, owner, before, b})
	}
}

// jointUnknowns finds the unknowns of the joints. One that does not read yet has all
// that a joint may have and no other has.
func (x *symbols) jointUnknowns() {
	p, _ := Read(x.s)
	for i := range p.Joints {
		j := &p.Joints[i]
		of := thingName{AJoint, j.Name}
		for _, c := range j.held {
			if !c.moment {
				x.own(of, "", c.suffix)
				continue
			}
			x.own(of, "M", c.suffix)
			if p.Planar {
				x.own(of, "M", "") // answers to MC as well as to MCz
			}
		}
		if p.Planar && j.Impending {
			x.own(of, "", "F")
		}
	}
	for i := range p.Joints {
		if of := (thingName{AJoint, p.Joints[i].Name}); len(p.Joints[i].held) == 0 {
			x.own(of, "", "", "x", "y", "z", "1", "2", "N", "F", "F1", "F2")
			x.own(of, "M", "", "x", "y", "z", "1", "2")
		}
	}
}

// lineUnknowns finds the two tensions of each belt, which are lines too, and the unknowns
// of forces with a ? among their components.
func (x *symbols) lineUnknowns() {
	for _, row := range Rows(x.s, "lines") {
		of := thingName{ALine, row.Name}
		if isBelt(row) {
			x.own(of, "", "1", "2")
			for _, name := range LinesOf(row) {
				x.add(ALine, x.named[thingName{AnUnknown, name}])
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
func (x *symbols) find(name string, kinds ...Thing) (symbol, bool) {
	for _, t := range slices.Backward(kinds) {
		if sym, ok := x.named[thingName{t, name}]; ok {
			return sym, true
		}
	}
	return symbol{}, false
}

// bearing lists the things that bear a name.
func (x *symbols) bearing(name string) (out []Thing) {
	for t := AGiven; t <= AnUnknown; t++ {
		if sym, ok := x.named[thingName{t, name}]; ok {
			out = append(out, sym.Thing)
		}
	}
	return out
}

// afterPoint tells whether a joint has its place from its name.
func (x *symbols) afterPoint(joint string) bool {
	row, ok := x.s.Table("joints").Row(joint)
	_, point := x.find(joint, APoint)
	return ok && point && row.Text("at") == ""
}

// isBelt tells whether a thing is a belt, which has two tensions and no magnitude.
func (x *symbols) isBelt(of thingName) bool {
	row, _ := x.s.Table("lines").Row(of.name)
	return of.Thing == ALine && isBelt(row)
}

// says describes a thing in one line, from its row as typed.
func (x *symbols) says(sym symbol) string {
	switch {
	case sym.Thing != AnUnknown:
	case sym.owner.name == "":
		return "an unknown that several lines share"
	case x.isBelt(sym.owner):
		return "tension of the belt " + sym.owner.name
	case sym.before == "M":
		return "moment of the " + sym.owner.String() + " " + sym.owner.name
	default:
		return "force of the " + sym.owner.String() + " " + sym.owner.name
	}
	info := things[sym.Thing]
	row, _ := x.s.Table(info.table).Row(sym.name)
	t, _ := tableNamed(info.table)
	out := info.word
	if sym.Thing == ALine || sym.Thing == AJoint {
		out = cmp.Or(row.Text("kind"), out)
	}
	for _, c := range info.cells {
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
func OwnerOf(s *sheet.Sheet, unknown string) (what Thing, name string, ok bool) {
	sym, _ := symbolsOf(s).find(unknown, AnUnknown)
	return sym.owner.Thing, sym.owner.name, sym.owner.name != ""
}
