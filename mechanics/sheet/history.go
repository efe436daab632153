package sheet

// History is a sheet with all its changes, undone and redone without limit.
// It keeps the patches, not the texts.
type History struct {
	now   *Sheet
	done  []Patch
	undid []Patch
	saved string // the text as last saved
}

// NewHistory begins with a sheet that counts as saved.
func NewHistory(s *Sheet) *History { return &History{now: s, saved: s.text} }

// Current is the sheet as it is now.
func (h *History) Current() *Sheet { return h.now }

// Do makes an edit. After an error everything is as before. An edit that
// changes nothing leaves no trace.
func (h *History) Do(e Edit) error { return h.step(h.now.Apply(e)) }

// DoAll makes edits as one step of the history. After an error everything is as
// before.
func (h *History) DoAll(edits []Edit) error { return h.step(h.now.ApplyAll(edits)) }

func (h *History) step(next *Sheet, p Patch, err error) error {
	if err != nil || p.empty() {
		return err
	}
	h.now, h.done, h.undid = next, append(h.done, p), nil
	return nil
}

// Undo takes the last edit back and reports whether there was one.
func (h *History) Undo() bool { return h.move(&h.done, &h.undid) }

// Redo makes the edit last undone again and reports whether there was one.
func (h *History) Redo() bool { return h.move(&h.undid, &h.done) }

func (h *History) move(from, to *[]Patch) bool {
	n := len(*from) - 1
	if n < 0 {
		return false
	}
	back := (*from)[n].Inverse()
	next, err := parse(back.on(h.now.text))
	if err != nil {
		return false // cannot be: this text was parsed before
	}
	h.now, *from, *to = next, (*from)[:n], append(*to, back)
	return true
}

// Modified reports whether the text differs from the one last saved.
func (h *History) Modified() bool { return h.now.text != h.saved }

// MarkSaved notes that the sheet as it is now has been saved.
func (h *History) MarkSaved() { h.saved = h.now.text }

// Replace puts another text in the place of the sheet's, as one step that undo
// takes back.
func (h *History) Replace(s *Sheet) {
	if s.text == h.now.text {
		return
	}
	h.done, h.undid = append(h.done, Patch{Old: h.now.text, New: s.text}), nil
	h.now = s
}
