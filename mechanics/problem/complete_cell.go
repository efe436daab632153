package problem

import (
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

func (c *choices) words(words []Word) {
	c.inside = true
	for _, w := range words {
		if w.Text != "" {
			c.add(w.Text, w.Says)
		}
	}
}

func (c *choices) units(list []units.Unit) {
	for _, u := range list {
		c.add(u.Symbol, u.Name)
	}
}

// trimmed is the span of a text without the blanks around it.
func trimmed(text string) diag.Span {
	start := len(text) - len(strings.TrimLeft(text, " \t\r\n"))
	return diag.Between(start, max(start, len(strings.TrimRight(text, " \t\r\n"))))
}

// fieldAt is the word of a path at a cursor.
func fieldAt(text string, cursor int) diag.Span {
	for _, w := range fields(text) {
		if w.Start <= cursor && cursor <= w.End {
			return w.Span
		}
	}
	return diag.Between(cursor, cursor)
}

// listed gives the points or the bodies that a cell may name, less those that
// it names already.
func (c *choices) listed(reads Reads, ref sheet.Ref) {
	there := fields(c.text)
	add := func(name, says string) {
		if !slices.ContainsFunc(there, func(w word) bool { return w.text == name && w.Start != c.from }) {
			c.add(name, says)
		}
	}
	listed := ABody
	if reads == ReadsPoint || reads == ReadsPoints {
		listed = APoint
	}
	for _, name := range c.names(listed) {
		add(name, c.says(listed, name))
	}
	if listed == APoint {
		return
	}
	if ref.Table == "points" {
		add(particleWord, "a free particle of its own: forces only")
		return
	}
	for _, name := range c.names(APoint) {
		if c.particles[name] {
			add(name, "the particle "+name)
		}
	}
	if ref.Table == "joints" {
		add(groundWord, "fixed ground")
	}
}

// expression gives names, units and functions for a value, a vector, a
// direction or a magnitude.
func (c *choices) expression(k KeyInfo, ref sheet.Ref) {
	if set := units.SettingAt(c.text, c.from); set.Unit {
		if k.Reads == ReadsPrinted && set.From < c.from {
			c.senses(ref.Row)
		}
		c.word(diag.Between(set.From, c.to))
		c.unitsOf(k)
		return
	} else if set.Place {
		c.all(APoint, sheet.Ref{})
	}
	if k.Reads == ReadsPrinted || ref.Table == "" {
		return
	}
	if k.Reads == ReadsMagnitude {
		for _, t := range []Thing{ALine, ACouple, AnUnknown} {
			for _, name := range c.names(t) {
				if !c.belt(t, name) && (t != AnUnknown || c.owned[name].behind+c.owned[name].before != "" || c.owned[name].of.name == "") && name != ref.Row {
					c.add(name, c.says(t, name))
				}
			}
		}
	}
	if k.Reads == ReadsDirection {
		c.directions()
	}
	c.all(AGiven, ref)
	if k.Reads == ReadsVector {
		c.all(APoint, ref)
	}
	if k.Reads == ReadsIntensity {
		c.add("s", "the distance from the first point of the path")
	}
	if k.Dim == units.Force && k.Reads != ReadsDirection {
		c.add("g", "the acceleration of gravity, for a mass times g")
	}
	c.functions(k)
}

// all gives the names of the things of a kind but for the row that is written.
func (c *choices) all(t Thing, own sheet.Ref) {
	for _, name := range c.names(t) {
		if own.Table != t.table() || name != own.Row {
			c.add(name, c.says(t, name))
		}
	}
}

// unitsOf gives the units that a number in a cell may have: those of what the
// cell measures; all of the table where that is not settled, or none of them fits.
func (c *choices) unitsOf(k KeyInfo) {
	c.units(setOf(c.s).Choices(k.Dim))
	if k.Dim == units.Force {
		c.add("kg", "kilogram, as a weight or times g")
	}
	if len(c.found) == 0 || k.Reads == ReadsValue || k.Reads == ReadsRange || k.Reads == ReadsDirection || k.Reads == ReadsPrinted {
		c.units(units.Table())
	}
}

// senses gives the words for the sense of a line with a path.
func (c *choices) senses(line string) {
	row, _ := c.s.Table("lines").Row(line)
	if k, ok := kindOf(row.Text("kind")); ok && k.Info().Path {
		for _, s := range senses[:4] {
			c.add(s.word, "in "+s.means)
		}
	}
}

// setOf reads the units of a sheet, SI where they do not read.
func setOf(s *sheet.Sheet) units.Set {
	r := &reading{Reader: NewReader(), s: s, p: &Problem{}}
	return r.unitSet()
}

// directions gives the axes, where nothing but a sign stands before.
func (c *choices) directions() {
	axes := []string{"+x", "-x", "+y", "-y", "+z", "-z"}
	if c.planar() {
		axes = axes[:4]
	}
	was := *c
	switch strings.TrimSpace(c.text[:c.from]) {
	case "":
	case "+", "-":
		c.word(diag.Between(strings.IndexAny(c.text, "+-"), c.to))
	default:
		return
	}
	for _, a := range axes {
		c.add(a, "along the axis "+a[1:])
	}
	c.from, c.to, c.typed = was.from, was.to, was.typed
}

func (c *choices) planar() bool {
	plane, _ := c.s.Table("").Row("plane")
	return plane.Text("") != ""
}

// functions gives those that end in a value, or in a vector, as fits the cell.
func (c *choices) functions(k KeyInfo) {
	vector := k.Reads == ReadsDirection || k.Reads == ReadsVector
	planar := c.planar()
	for _, makes := range []bool{vector, false} {
		for _, f := range units.Functions() {
			behind := "("
			if !strings.Contains(f.Usage, behind) {
				behind = " " // slope 3:4
			}
			elsewhere := (f.Name == "polar" || f.Name == "slope") && !planar || (f.Name == "angles" || f.Name == "bearing") && planar
			if f.Vector == makes && !elsewhere {
				c.add(f.Name+behind, f.Usage+": "+f.Says) // once: a second time it is there already
			}
		}
	}
}
