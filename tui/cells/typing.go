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
	Many bool     // it may hold several of them
	New  string   // what a text is that is none of them; "" where none is expected
	Over bool     // what is typed first takes the place of the text

	Words  []names.Completion // of the word at the cursor
	Word   int                // which of them, once an arrow has chosen
	Closed bool               // they are not wanted in this cell
}

// Open begins an edit of a slot from the text it has. over tells that it was come to in passing:
// what is typed then replaces the text, and does not go on from it.
func (b Builder) Open(s Slot, was string, over bool) *Edit {
	e := &Edit{Line: text.NewLine(was), Slot: s, Was: was, List: b.choices(s), Pick: Unpicked, Word: Unpicked}
	if isOn(s) {
		e.Many, e.New = true, "a new body"
	}
	e.Over = over || e.List != nil // one of a list is replaced, not added to
	return e
}

// OpenReaction begins an edit of a reaction: it is to be found, or it is known, which says what is
// made of it then.
func (b Builder) OpenReaction(s Slot, known string) *Edit {
	return &Edit{Slot: s, List: []choice{{"?", "to be found: the reaction of the support", nil}}, New: known, Pick: Unpicked, Word: Unpicked, Over: true}
}

// Replaces tells that the next text typed takes the place of what is there.
func (e *Edit) Replaces() bool { return e.Over && e.Text == e.Was && e.At == len(e.Text) }

// isOn tells the cell that says which bodies a point is on.
func isOn(s Slot) bool { return s.Does == SetCell && s.Ref.Table == "points" && s.Ref.Key == "on" }

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
