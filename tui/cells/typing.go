package cells

import (
	"trivet/mechanics/names"
	"trivet/tui/text"
)

// Edit is a cell being typed in. It is replaced, never changed, so that a frame
// of an earlier model stays what it was.
type Edit struct {
	text.Line
	Slot Slot
	Was  string   // the text before
	List []choice // what the cell may hold, where it is one of a list
	Pick int      // which of those that fit the text, once an arrow has chosen

	Words  []names.Completion // of the word at the cursor
	Word   int                // which of them, once an arrow has chosen
	Closed bool               // they are not wanted in this cell
}

// Offered gives what stands in the list under the cell: the choices that fit, or
// the completions.
func (e *Edit) Offered() (list []choice, pick int, noun string) {
	if e.List != nil {
		list, pick = e.fitting()
		return list, pick, "kind"
	}
	for _, c := range e.Words {
		list = append(list, choice{Text: c.Text, Says: c.Says})
	}
	return list, e.Word, "word"
}
