package sheet

import "slices"

// ApplyAll gives the sheet with edits made one after the other, and their
// change of its text as one patch. An error is an *diag.Error of the first edit
// that was refused; the sheet is as it was then.
//
// Texts of cells and names that stand in the sheet already are replaced
// together, so that a name used in a thousand cells costs one reading.
func (s *Sheet) ApplyAll(edits []Edit) (*Sheet, Patch, error) {
	if s.under != nil {
		s = s.under
	}
	b := batch{now: s}
	for _, e := range edits {
		if err := b.add(e); err != nil {
			return nil, Patch{}, err
		}
	}
	if err := b.flush(); err != nil {
		return nil, Patch{}, err
	}
	return b.now, between(s.text, b.now.text), nil
}

// batch gathers edits in place until one comes that has to see the others made.
type batch struct {
	now     *Sheet
	splices []splice
	taken   map[int]bool       // where they begin
	renamed map[RenameRow]bool // tables with the new names of their rows
}

func (b *batch) add(e Edit) error {
	if b.inPlace(e) {
		// two edits in place that meet begin at the same byte, each being a whole value or name
		again := func(sp splice) bool { return b.taken[sp.at.Start] }
		if splices, err := e.edit(b.now); err == nil && !slices.ContainsFunc(splices, again) {
			if b.taken == nil {
				b.taken, b.renamed = map[int]bool{}, map[RenameRow]bool{}
			}
			for _, sp := range splices {
				b.taken[sp.at.Start] = true
			}
			b.splices = append(b.splices, splices...)
			if r, ok := e.(RenameRow); ok {
				b.renamed[RenameRow{Table: r.Table, To: r.To}] = true
			}
			return nil
		}
	}
	if err := b.flush(); err != nil {
		return err
	}
	next, _, err := b.now.Apply(e)
	if err != nil {
		return err
	}
	b.now = next
	return nil
}

// inPlace tells whether an edit replaces what stands in the text. A cell set
// behind a renaming is none: its row may be the renamed one.
func (b *batch) inPlace(e Edit) bool {
	switch e := e.(type) {
	case SetCell:
		c, ok := b.now.Cell(e.Ref)
		return ok && c.Readable && c.whole.End > 0 && len(b.renamed) == 0
	case RenameRow:
		return !b.renamed[RenameRow{Table: e.Table, To: e.To}]
	}
	return false
}

// made lets the gathered splices be applied like an edit.
type made []splice

func (m made) edit(*Sheet) ([]splice, error) { return m, nil }

func (b *batch) flush() error {
	if len(b.splices) == 0 {
		return nil
	}
	next, _, err := b.now.Apply(made(b.splices))
	if err != nil {
		return err
	}
	b.now, b.splices, b.taken, b.renamed = next, nil, nil, nil
	return nil
}

// between is the patch from one text to another: what lies between the bytes
// that both begin with and those that both end with.
func between(old, now string) Patch {
	at := 0
	for at < len(old) && at < len(now) && old[at] == now[at] {
		at++
	}
	end := 0
	for end < len(old)-at && end < len(now)-at && old[len(old)-1-end] == now[len(now)-1-end] {
		end++
	}
	return Patch{At: at, Old: old[at : len(old)-end], New: now[at : len(now)-end]}
}
