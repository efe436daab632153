package names

import (
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Completion is a text that may take the place of the bytes From..To of a cell,
// with what it means in one line.
type Completion struct {
	Text     string
	From, To int
	Says     string
}

// Complete gives what the word at a cursor in a cell may become: names, units,
// kinds, functions and directions as fit the cell, the likeliest first. ref names
// the cell, which the sheet need not have yet; text is what is typed in it so
// far, cursor a byte offset. Words that begin as typed come before those that
// begin so in another case; of kinds, those come last that hold it further in.
func Complete(s *sheet.Sheet, ref sheet.Ref, text string, cursor int) []Completion {
	k, ok := problem.CellKey(ref.Table, ref.Row, ref.Key)
	if !ok {
		return nil
	}
	plane, _ := s.Table("").Row("plane")
	c := choices{symbols: symbolsOf(s), key: k, ref: ref, planar: plane.Text("") != "", text: text, cursor: max(0, min(cursor, len(text)))}
	c.replace(trimmed(text))
	switch k.Reads {
	case problem.ReadsText, problem.ReadsCount:
	case problem.ReadsWord:
		for _, w := range k.Words {
			c.add(w.Text, w.Says)
		}
	case problem.ReadsUnit:
		c.units(units.DefaultSet().Choices(k.Dim))
	case problem.ReadsTension:
		for _, name := range problem.Tensions(ref.Row) {
			c.add(name, "tension of the belt "+ref.Row+" where slip impends")
		}
	case problem.ReadsPoint, problem.ReadsPoints, problem.ReadsBody, problem.ReadsBodies:
		c.members()
	case problem.ReadsResults:
		c.replace(units.Word(text, c.cursor))
		c.results()
	default:
		c.replace(units.Word(text, c.cursor))
		c.expression()
	}
	return slices.Concat(c.found[:]...)
}

// choices gathers completions of one word.
type choices struct {
	*symbols
	key      problem.KeyInfo
	ref      sheet.Ref
	planar   bool
	text     string
	cursor   int
	from, to int
	typed    string          // what stands before the cursor
	found    [3][]Completion // that begin as typed, so in another case, and that hold it further in
}

// leastInside is how many letters must be typed before kinds that hold them
// anywhere are offered: one letter is in most words.
const leastInside = 2

// replace chooses the piece of the text that completions take the place of.
func (c *choices) replace(s diag.Span) {
	c.from, c.to = min(s.Start, c.cursor), max(s.End, c.cursor)
	c.typed = c.text[c.from:c.cursor]
}

// add takes a text that goes with what is typed.
func (c *choices) add(text, says string) {
	rank := 0
	switch {
	case text == "":
		return
	case strings.HasPrefix(text, c.typed):
	case len(text) >= len(c.typed) && strings.EqualFold(text[:len(c.typed)], c.typed):
		rank = 1
	case c.key.Reads == problem.ReadsWord && len(c.typed) >= leastInside && strings.Contains(strings.ToLower(text), strings.ToLower(c.typed)):
		rank = 2
	default:
		return
	}
	if !slices.ContainsFunc(c.found[rank], func(other Completion) bool { return other.Text == text }) {
		c.found[rank] = append(c.found[rank], Completion{text, c.from, c.to, says})
	}
}

// all gives the names of the things of a kind but for the row that is written, and for
// belts, whose tensions are named.
func (c *choices) all(t problem.Thing, behind string) {
	for _, sym := range c.listed[t] {
		if own := c.ref.Table == t.Table() && c.ref.Row == sym.Name; !own && !c.isBelt(sym.Named) {
			c.add(sym.Name+behind, c.says(sym))
		}
	}
}

func (c *choices) units(list []units.Unit) {
	for _, u := range list {
		c.add(u.Symbol, u.Name)
	}
}

// members gives the points or the bodies that a cell may name, less those that it names
// already.
func (c *choices) members() {
	there := problem.Fields(c.text)
	at := slices.IndexFunc(there, func(w problem.Token) bool { return w.Start <= c.cursor && c.cursor <= w.End })
	c.replace(diag.Between(c.cursor, c.cursor))
	if at >= 0 {
		c.replace(there[at].Span)
		there = slices.Delete(there, at, at+1)
	}
	add := func(name, says string) {
		if !slices.ContainsFunc(there, func(w problem.Token) bool { return w.Text == name }) {
			c.add(name, says)
		}
	}
	for _, t := range meanings[c.key.Reads] {
		for _, sym := range c.listed[t] {
			switch {
			case t != problem.AParticle:
				add(sym.Name, c.says(sym))
			case c.ref.Table != "points":
				add(sym.Name, "the particle "+sym.Name)
			}
		}
	}
	switch {
	case c.ref.Table == "joints" && c.key.Reads == problem.ReadsBodies:
		add(problem.GroundWord, "fixed ground")
	case c.ref.Table == "points":
		add(problem.ParticleWord, "a free particle of its own: forces only")
	}
}

// expression gives names, units and functions for a value, a vector, a
// direction or a magnitude.
func (c *choices) expression() {
	set := units.SettingAt(c.text, c.from)
	switch {
	case set.Unit:
		if c.key.Reads == problem.ReadsPrinted && set.From < c.from {
			c.senses()
		}
		c.replace(diag.Between(set.From, c.to))
		c.unitsOfKey()
		return
	case set.Place:
		c.all(problem.APoint, "")
	}
	if c.key.Reads == problem.ReadsPrinted || c.ref.Table == "" {
		return
	}
	if c.key.Reads == problem.ReadsDirection {
		c.axes()
	}
	for _, t := range meanings[c.key.Reads] {
		if t != problem.APoint || c.key.Reads == problem.ReadsVector { // a point is no direction
			c.all(t, "")
		}
	}
	if c.key.Reads == problem.ReadsIntensity {
		c.add("s", "the distance from the first point of the path")
	}
	if c.key.Dim == units.Force {
		c.add("g", "the acceleration of gravity, for a mass times g")
	}
	c.functions()
}

// unitsOfKey gives the units that a number in a cell may have: those of what the
// cell measures; all of the table where that is not settled, or none of them fits.
func (c *choices) unitsOfKey() {
	c.units(problem.UnitsOf(c.s).Choices(c.key.Dim))
	if c.key.Dim == units.Force {
		c.add("kg", "kilogram, as a weight or times g")
	}
	switch c.key.Reads {
	case problem.ReadsValue, problem.ReadsRange, problem.ReadsDirection, problem.ReadsPrinted:
		c.units(units.Table())
	default:
		if len(c.found[0])+len(c.found[1]) == 0 {
			c.units(units.Table())
		}
	}
}

// senses gives the words for the sense of a line with a path.
func (c *choices) senses() {
	row, _ := c.s.Table("lines").Row(c.ref.Row)
	k, _ := problem.CellKey("lines", "", "kind")
	if i := problem.WordOf(k.Words, row.Text("kind")); i >= 0 && problem.Kind(i).Info().Path {
		for _, s := range problem.Senses[:4] {
			c.add(s.Word, "in "+s.Means)
		}
	}
}

// axes gives the axes, where nothing but a sign stands before.
func (c *choices) axes() {
	word := diag.Between(c.from, c.to)
	switch before := c.text[:c.from]; strings.TrimSpace(before) {
	case "":
	case "+", "-":
		c.replace(diag.Between(strings.IndexAny(before, "+-"), c.to))
	default:
		return
	}
	for _, axis := range []string{"x", "y", "z"} {
		if axis != "z" || !c.planar {
			c.add("+"+axis, "along the axis "+axis)
			c.add("-"+axis, "along the axis "+axis)
		}
	}
	c.replace(word)
}

// functions gives those that end in a value, or in a vector, as fits the cell.
func (c *choices) functions() {
	spatial := map[string]bool{"polar": false, "slope": false, "angles": true, "bearing": true}
	vector := c.key.Reads == problem.ReadsDirection || c.key.Reads == problem.ReadsVector
	for _, makes := range []bool{vector, false} {
		for _, f := range units.Functions() {
			behind := "("
			if !strings.Contains(f.Usage, behind) {
				behind = " " // slope 3:4
			}
			if inSpace, one := spatial[f.Name]; f.Vector == makes && !(one && inSpace == c.planar) {
				c.add(f.Name+behind, f.Usage+": "+f.Says) // once: a second time it is there already
			}
		}
	}
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
	c.all(problem.ALine, "")
	if open := strings.LastIndexByte(before, '('); open > strings.LastIndexByte(before, ')') && !strings.HasSuffix(before[:open], "abs") {
		return
	}
	c.all(problem.AnUnknown, "")
	c.all(problem.ACouple, "")
	c.all(problem.AJoint, ".")
	c.all(problem.ALoad, ".")
	for _, sym := range slices.Concat(c.listed[problem.ABody], c.listed[problem.AParticle]) {
		c.add(sym.Name+".loads.", "the resultant of the known forces on "+sym.Name)
	}
	c.add("abs(", "abs(Ax), or |Ax|: the magnitude of a result, without its sign")
	c.add("angle(", "angle(T1, T2): the angle between two lines")
	c.add("component(", "component(F, T1): the component of a line's force along another line")
}

// parts gives the parts of what is named before a dot.
func (c *choices) parts(head, before string) {
	kinds := []problem.Thing{problem.ALine, problem.AJoint, problem.ALoad}
	body, loads := strings.CutSuffix(before, ".")
	if loads = loads && head == "loads"; loads {
		owner := units.Word(body, len(body))
		head, kinds = body[owner.Start:owner.End], []problem.Thing{problem.ABody, problem.AParticle}
	}
	row, _ := c.s.Table("lines").Row(head)
	for _, t := range kinds {
		if _, ok := c.find(head, t); !ok || c.isBelt(t.Named(head)) {
			continue
		}
		for _, k := range problem.Parts() {
			if k.Of(t, c.planar) && (k.Kind != problem.AskStretch || row.Text("kind") == problem.SpringKind.String()) {
				c.add(k.Name, k.Says)
			}
		}
	}
	if _, ok := c.find(head, problem.ABody, problem.AParticle); ok && !loads {
		c.add("loads.", "the resultant of the known forces on it")
	}
}
