package sheet

// History is a sheet with all its changes, undone and redone without limit.
type History struct {
	now         *Sheet
	done, undid []string // the texts before and after it
	saved       string   // the text as last saved
}

// NewHistory begins with a sheet that counts as saved.
func NewHistory(s *Sheet) *History { return &History{now: s, saved: s.text} }

// Current is the sheet as it is now.
func (h *History) Current() *Sheet { return h.now }

// Do makes edits as one step. After an error everything is as before. Edits that
// change nothing leave no trace.
func (h *History) Do(edits ...Edit) error {
	next, err := h.now.Apply(edits...)
	if err == nil {
		h.Replace(next)
	}
	return err
}

// Replace puts another text in the place of the sheet's, as one step that undo
// takes back.
func (h *History) Replace(s *Sheet) {
	if s.text != h.now.text {
		h.done, h.undid = append(h.done, h.now.text), nil
		h.now = s
	}
}

// Undo takes the last step back and reports whether there was one.
func (h *History) Undo() bool { return h.move(&h.done, &h.undid) }

// Redo makes the step last undone again and reports whether there was one.
func (h *History) Redo() bool { return h.move(&h.undid, &h.done) }

func (h *History) move(from, to *[]string) bool {
	n := len(*from) - 1
	if n < 0 {
		return false
	}
	next, err := parse((*from)[n])
	if err != nil {
		return false // cannot be: this text was parsed before
	}
	h.now, *from, *to = next, (*from)[:n], append(*to, h.now.text)
	return true
}

// Modified reports whether the text differs from the one last saved.
func (h *History) Modified() bool { return h.now.text != h.saved }

// MarkSaved notes that the sheet as it is now has been saved.
func (h *History) MarkSaved() { h.saved = h.now.text }
