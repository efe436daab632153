package names

import (
	"fmt"
	"slices"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
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
func Rename(s *sheet.Sheet, what problem.Thing, from, to string) ([]sheet.Edit, error) {
	r := renaming{symbols: symbolsOf(s), to: map[problem.Named]string{}}
	switch {
	case problem.Private(from) && from == to:
		return nil, nil
	case problem.Private(from) || problem.Private(to):
		return r.setAside(what, from, to)
	}
	if err := r.plan(what, from, to); err != nil {
		return nil, err
	}
	if from == to {
		return nil, nil
	}
	edits := r.edits()
	next, err := s.Apply(edits...)
	if err != nil {
		return nil, err
	}
	if err := r.check(next); err != nil {
		return nil, err
	}
	return edits, nil
}

// renaming is which names change, and how.
type renaming struct {
	*symbols
	to map[problem.Named]string
}

func refused(hint, format string, args ...any) *diag.Error {
	return diag.New(fmt.Sprintf(format, args...), hint)
}

// setAside renames a row to or from a name that is kept and not read. What is set aside
// may not be used elsewhere; a thing that comes back is a new one.
func (r *renaming) setAside(what problem.Thing, from, to string) ([]sheet.Edit, error) {
	table := what.Table()
	if _, ok := r.s.Table(table).Row(from); !ok || table == "" {
		return nil, refused("", "there is no %s %q", what, from)
	}
	if !problem.Private(to) {
		if err := NewName(r.s, what, to); err != nil {
			return nil, err
		}
	}
	for _, u := range r.uses {
		if own := u.Ref.Table == table && u.Ref.Row == from; u.Thing == what && u.Name == from && !own {
			return nil, refused("remove it there first", "%s is used in %s, but a row whose name begins with x- is ignored", from, where(u.Ref))
		}
	}
	return []sheet.Edit{sheet.RenameRow{Table: table, Row: from, To: to}}, nil
}

func (r *renaming) plan(what problem.Thing, from, to string) error {
	kinds := []problem.Thing{what}
	switch what {
	case problem.AnUnknown: // which may be a line's own, or a couple's
		kinds = []problem.Thing{problem.AnUnknown, problem.ACouple, problem.ALine}
	case problem.ABody:
		kinds = []problem.Thing{problem.AParticle, problem.ABody}
	}
	sym, ok := r.find(from, kinds...)
	switch {
	case what <= problem.NoThing || what > problem.AnUnknown:
		return refused("", "this cannot be renamed")
	case !ok:
		known := say.Each(r.listed[what], func(other symbol) string { return other.Name })
		return refused(units.Suggest(from, known), "there is no %s %q", what, from)
	case sym.owner.Name != "":
		return refused("rename "+sym.owner.Name, "%s is named after the %s %s", from, sym.owner.Thing, sym.owner.Name)
	}
	if err := problem.NameFor(sym.Thing, to); err != nil {
		return err
	}
	r.to[sym.Named] = to
	if (sym.Thing == problem.AJoint || sym.Thing == problem.APoint) && r.afterPoint(from) { // the two are one name
		r.to[problem.AJoint.Named(from)], r.to[problem.APoint.Named(from)] = to, to
	}
	for _, u := range r.listed[problem.AnUnknown] {
		if _, goes := r.to[u.owner]; goes {
			r.to[u.Named] = u.before + to + u.behind
		}
	}
	return r.free(from, to)
}

// NewName refuses the name of a new row that cells could not use, or that is taken,
// with a *diag.Error. A name that magnitudes use already is none of them: a
// line, or a given, may be named there first.
func NewName(s *sheet.Sheet, what problem.Thing, name string) error {
	if problem.Private(name) {
		return nil // the sheet's own affair
	}
	if err := problem.NameFor(what, name); err != nil {
		return err
	}
	if what == problem.ABody {
		return nil // whose points may name it first
	}
	r := renaming{symbolsOf(s), map[problem.Named]string{what.Named(""): name}}
	for _, u := range r.listed[problem.AnUnknown] {
		if u.owner.Name == "" {
			delete(r.named, u.Named)
		}
	}
	return r.free("", name)
}

// clashes says of each kind which others may not bear its name.
var clashes = [...][]problem.Thing{
	problem.AGiven:    {problem.AGiven, problem.APoint, problem.ALine, problem.ACouple, problem.AnUnknown},
	problem.APoint:    {problem.APoint, problem.AGiven},
	problem.ABody:     {problem.ABody},
	problem.ALine:     {problem.ALine, problem.AGiven, problem.AJoint, problem.ACouple, problem.ALoad, problem.AnUnknown},
	problem.AJoint:    {problem.AJoint, problem.ALine, problem.ALoad},
	problem.ACouple:   {problem.ACouple, problem.ALine, problem.AGiven, problem.AnUnknown},
	problem.ALoad:     {problem.ALoad, problem.ALine, problem.AJoint},
	problem.AnUnknown: {problem.AnUnknown, problem.ALine, problem.AGiven, problem.ACouple},
}

// free refuses names that are taken.
func (r *renaming) free(from, to string) error {
	if from == to {
		return nil
	}
	for old, name := range r.to {
		kinds := clashes[old.Thing]
		if _, ok := r.find(old.Name, problem.AParticle); ok && old.Thing == problem.APoint {
			kinds = append([]problem.Thing{problem.ABody}, kinds...)
		}
		_, particle := r.find(name, problem.AParticle)
		for _, t := range r.bearing(name) {
			_, goes := r.to[t.Named(name)]
			if !goes && (old.Thing == problem.ABody && t == problem.APoint && particle || slices.Contains(kinds, t)) {
				return refused("another name", "the name %q is already used for %s", name, t.One())
			}
		}
	}
	return nil
}

// edits rewrites the cells first, since their rows still have their old names
// then, and the rows' names after.
func (r *renaming) edits() []sheet.Edit {
	var cells, names []sheet.Edit
	for uses := r.uses; len(uses) > 0; {
		at := uses[0]
		n := 1
		for n < len(uses) && uses[n].Ref == at.Ref && uses[n].InName == at.InName {
			n++
		}
		c, _ := r.s.Cell(at.Ref)
		was := c.Text
		if at.InName {
			was = at.Ref.Row
		}
		text := was
		for _, u := range slices.Backward(uses[:n]) { // so that the places before in the text stay
			if to := r.now(u); to != u.Name {
				text = text[:u.Span.Start] + to + text[u.Span.End:]
			}
		}
		switch uses = uses[n:]; {
		case at.InName && at.Ref.Table == "joints": // which is renamed as a joint below
		case at.InName && text != was:
			names = append(names, sheet.RenameRow{Table: at.Ref.Table, Row: was, To: text})
		case text != was:
			cells = append(cells, sheet.SetCell{Ref: at.Ref, Text: text})
		}
	}
	for t := problem.AGiven; t <= problem.ALoad; t++ {
		for old, to := range r.to {
			if _, row := r.s.Table(t.Table()).Row(old.Name); row && old.Thing == t {
				names = append(names, sheet.RenameRow{Table: t.Table(), Row: old.Name, To: to})
			}
		}
	}
	return append(cells, names...)
}

// check holds the renamed sheet against the old one: every use of a name must
// be one still, of the same thing, and what read before must read after.
func (r *renaming) check(next *sheet.Sheet) error {
	before, after := r.uses, symbolsOf(next).uses
	same := func(i, j int) bool { // use i before is use j after
		if i >= len(before) || j >= len(after) {
			return i >= len(before) && j >= len(after)
		}
		u, v := before[i], after[j]
		return v.Thing == u.Thing && v.Name == r.now(u) && v.Ref.Table == u.Ref.Table && v.Ref.Key == u.Ref.Key
	}
	for i := range max(len(before), len(after)) {
		switch {
		case same(i, i):
			continue
		case i < len(before) && r.now(before[i]) != before[i].Name && same(i+1, i):
			return refused("another name", "%[2]q would not be read as a name in %[1]s", where(before[i].Ref), r.now(before[i]))
		case len(after) == 0:
			return refused("another name", "the name would not be read everywhere")
		}
		// a name that stood for something else would be the new one
		v := after[min(i, len(after)-1)]
		return refused("another name", "the name %q already has another meaning in %s", v.Name, where(v.Ref))
	}
	if _, errs := problem.Read(r.s); len(errs) == 0 {
		if _, errs := problem.Read(next); len(errs) > 0 {
			return refused("another name", "in %s: %s", where(errs[0].Ref), errs[0].Msg)
		}
	}
	return nil
}

// now is the name that a use will have.
func (r *renaming) now(u Use) string {
	if to, ok := r.to[u.Named]; ok {
		return to
	}
	return u.Name
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
