package problem

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Rename gives the edits that rename a thing everywhere: its row, and every use
// of the name in paths, at, on, expressions, asked and answers. A joint without
// at goes with the point it is named after, and takes its unknowns along: Ox
// becomes Px. Apply them as one step, with History.Do.
//
// A name that is taken, that cells could not use, or that would be read as
// something else somewhere is refused with a *diag.Error.
func Rename(s *sheet.Sheet, what Thing, from, to string) ([]sheet.Edit, error) {
	x := thingsOf(s)
	uses := x.uses()
	r := renaming{things: x, to: map[thingName]string{}}
	switch {
	case Private(from) && from == to:
		return nil, nil
	case Private(from) || Private(to):
		return r.setAside(what, from, to, uses)
	}
	if err := r.plan(what, from, to); err != nil {
		return nil, err
	}
	if from == to {
		return nil, nil
	}
	edits := r.edits(uses)
	next, err := s.Apply(edits...)
	if err != nil {
		return nil, err
	}
	if err := r.check(s, next, uses); err != nil {
		return nil, err
	}
	return edits, nil
}

// renaming is which names change, and how.
type renaming struct {
	*things
	to map[thingName]string
}

func refused(hint, format string, args ...any) *diag.Error {
	return diag.New(fmt.Sprintf(format, args...), hint)
}

// setAside renames a row to or from a name that is kept and not read. What is set aside
// may not be used elsewhere; a thing that comes back is a new one.
func (r *renaming) setAside(what Thing, from, to string, uses []Use) ([]sheet.Edit, error) {
	table := what.table()
	if _, ok := r.s.Table(table).Row(from); !ok || table == "" {
		return nil, refused("", "there is no %s %q", what, from)
	}
	if !Private(to) {
		if err := NewName(r.s, what, to); err != nil {
			return nil, err
		}
	}
	for _, u := range uses {
		if own := u.Ref.Table == table && u.Ref.Row == from; u.Thing == what && u.Name == from && !own {
			return nil, refused("remove it there first", "%s is used in %s, but a row whose name begins with x- is ignored", from, where(u.Ref))
		}
	}
	return []sheet.Edit{sheet.RenameRow{Table: table, Row: from, To: to}}, nil
}

func (r *renaming) plan(what Thing, from, to string) error {
	owner, owned := r.owned[from]
	switch {
	case what <= NoThing || what > AnUnknown:
		return refused("", "this cannot be renamed")
	case what == AnUnknown && owned:
		return refused("rename "+owner.of.name, "%s is named after the %s %s", from, owner.of.Thing, owner.of.name)
	case what == AnUnknown && r.rows[ALine][from]: // the line's own unknown
		what = ALine
	case what == AnUnknown && r.rows[ACouple][from]:
		what = ACouple
	case what == ABody && r.bodies[from] == sheet.Ref{} && r.particles[from]:
		what = APoint
	}
	if _, ok := r.cell(what, from); !ok {
		return refused(suggestion(from, r.names(what), ""), "there is no %s %q", what, from)
	}
	if err := nameFor(what, to); err != nil {
		return err
	}
	r.to[thingName{what, from}] = to
	// A joint and the point it is named after are one name.
	if what == AJoint && r.afterPoint(from) {
		r.to[thingName{APoint, from}] = to
	}
	if what == APoint && r.afterPoint(from) {
		r.to[thingName{AJoint, from}] = to
	}
	for name, u := range r.owned {
		if _, goes := r.to[u.of]; goes {
			r.to[thingName{AnUnknown, name}] = u.named(to)
		}
	}
	return r.free(from, to)
}

// nameFor refuses what cannot be a name of such a thing.
func nameFor(what Thing, name string) *diag.Error {
	_, isUnit := units.Find(name)
	word := name != "" && !strings.ContainsFunc(name, func(c rune) bool { return unicode.IsSpace(c) || strings.ContainsRune(",().\"?", c) })
	switch {
	case what == AGiven && !isIdentifier(name):
		return refused("letters, digits and _, beginning with a letter", "%q cannot be used as a name in a cell", name)
	case what == AGiven && isUnit && name != "g":
		return refused(name+"1", "a given cannot be named %s, which is a unit", name)
	case !word:
		return refused("one word without , ( ) . ? or quotes", "%q cannot be the name of %s %s", name, say.Article(what.String()), what)
	case what == AnUnknown && (!isIdentifier(name) || isUnit || units.Reserved(name) || name == "g"):
		return refused("letters, digits and _, beginning with a letter, that are not a unit", "%q cannot be the name of an unknown", name)
	case what == ABody && (name == particleWord || name == groundWord):
		return refused("another name", "%q cannot be the name of a body", name)
	}
	return nil
}

// NewName refuses the name of a new row that cells could not use, or that is taken,
// with a *diag.Error. A name that magnitudes use already is none of them: a
// line, or a given, may be named there first.
func NewName(s *sheet.Sheet, what Thing, name string) error {
	if Private(name) {
		return nil // the sheet's own affair
	}
	if err := nameFor(what, name); err != nil {
		return err
	}
	if what == ABody {
		return nil // whose points may name it first
	}
	r := renaming{things: thingsOf(s), to: map[thingName]string{{what, ""}: name}}
	return r.free("", name)
}

// clashes says of each kind which others may not bear its name.
var clashes = [...][]Thing{
	AGiven:    {AGiven, APoint, ALine, ACouple, AnUnknown},
	APoint:    {APoint, AGiven},
	ABody:     {ABody},
	ALine:     {ALine, AGiven, AJoint, ACouple, ALoad, AnUnknown},
	AJoint:    {AJoint, ALine, ALoad},
	ACouple:   {ACouple, ALine, AGiven, AnUnknown},
	ALoad:     {ALoad, ALine, AJoint},
	AnUnknown: {AnUnknown, ALine, AGiven, ACouple},
}

// free refuses names that are taken.
func (r *renaming) free(from, to string) error {
	if from == to {
		return nil
	}
	for old, name := range r.to {
		kinds := clashes[old.Thing]
		if old.Thing == APoint && r.particles[old.name] {
			kinds = append([]Thing{ABody}, kinds...)
		}
		for _, t := range r.bearing(name) {
			particle := old.Thing == ABody && t == APoint && r.particles[name]
			_, goes := r.to[thingName{t, name}]
			if !goes && (particle || slices.Contains(kinds, t)) {
				return refused("another name", "the name %q is already used for %s %s", name, say.Article(t.String()), t)
			}
		}
	}
	return nil
}

// edits rewrites the cells first, since their rows still have their old names
// then, and the rows' names after.
func (r *renaming) edits(uses []Use) []sheet.Edit {
	type place struct {
		ref    sheet.Ref
		inName bool
	}
	texts := map[place]string{}
	var order []place
	for _, u := range slices.Backward(uses) { // so that the places before in a text stay
		to, ok := r.to[thingName{u.Thing, u.Name}]
		if !ok || u.InName && u.Ref.Table == "joints" { // which is renamed as a joint below
			continue
		}
		at := place{u.Ref, u.InName}
		text, begun := texts[at]
		if !begun {
			order = append(order, at)
			c, _ := r.s.Cell(u.Ref)
			if text = c.Text; u.InName {
				text = u.Ref.Row
			}
		}
		texts[at] = text[:u.Span.Start] + to + text[u.Span.End:]
	}
	slices.Reverse(order)
	var edits, names []sheet.Edit
	for _, at := range order {
		if at.inName {
			names = append(names, sheet.RenameRow{Table: at.ref.Table, Row: at.ref.Row, To: texts[at]})
		} else {
			edits = append(edits, sheet.SetCell{Ref: at.ref, Text: texts[at]})
		}
	}
	for _, t := range []Thing{AGiven, APoint, ABody, ALine, AJoint, ACouple, ALoad} {
		for old, to := range r.to {
			if old.Thing == t && r.rows[t][old.name] {
				names = append(names, sheet.RenameRow{Table: t.table(), Row: old.name, To: to})
			}
		}
	}
	return append(edits, names...)
}

// check holds the renamed sheet against the old one: every use of a name must
// be one still, of the same thing, and what read before must read after.
func (r *renaming) check(old, next *sheet.Sheet, before []Use) error {
	after := Uses(next)
	same := func(i, j int) bool { // use i before is use j after
		if i >= len(before) || j >= len(after) {
			return i >= len(before) && j >= len(after)
		}
		u, v := before[i], after[j]
		return v.Thing == u.Thing && v.Name == r.now(u) && v.Ref.Table == u.Ref.Table && v.Ref.Key == u.Ref.Key
	}
	for i, u := range before {
		switch {
		case same(i, i):
			continue
		case r.now(u) != u.Name && same(i+1, i):
			return refused("another name", "%[2]q would not be read as a name in %[1]s", where(u.Ref), r.now(u))
		}
		return r.captured(after, i)
	}
	if len(after) > len(before) {
		return r.captured(after, len(before))
	}
	if _, errs := Read(old); len(errs) == 0 {
		if _, errs := Read(next); len(errs) > 0 {
			return refused("another name", "in %s: %s", where(errs[0].Ref), errs[0].Msg)
		}
	}
	return nil
}

// now is the name that a use will have.
func (r *renaming) now(u Use) string {
	if to, ok := r.to[thingName{u.Thing, u.Name}]; ok {
		return to
	}
	return u.Name
}

// captured says that a name which stood for something else would be the new one.
func (r *renaming) captured(after []Use, i int) error {
	i = min(i, len(after)-1)
	if i < 0 {
		return refused("another name", "the name would not be read everywhere")
	}
	return refused("another name", "the name %q already has another meaning in %s", after[i].Name, where(after[i].Ref))
}

// where words a cell: "[lines] T1 magnitude".
func where(ref sheet.Ref) string {
	words := ref.Row
	if ref.Table != "" {
		words = "[" + ref.Table + "] " + ref.Row
	}
	if ref.Key != "" {
		words += " " + ref.Key
	}
	return words
}
