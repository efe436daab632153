package tui

import (
	"strings"
	"unicode"
	"unicode/utf8"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
)

// maxWords is how many completions are kept: more than anybody reads.
const maxWords = 50

// complete looks for what the word at the cursor may become. A word that is whole
// as it stands asks for nothing, and neither does a blank: plain typing is never
// in the way of a list.
func (m *Model) complete() {
	e := *m.edit
	e.Words, e.Word = nil, cells.Unpicked
	m.edit = &e
	ref := e.Slot.Ref
	switch {
	case e.List != nil || e.Closed || e.Text == e.Was || !lettered(e.Text[:e.At]):
		return
	case e.Slot.Does == cells.SetAsked:
		ref = sheet.Ref{Row: "asked"}
	case e.Slot.Does != cells.SetCell:
		return
	}
	for _, c := range names.Complete(m.history.Current(), ref, e.Text, e.At) {
		if c.From >= e.At || c.To > len(e.Text) || c.From > c.To {
			continue
		}
		if c.Text == e.Text[c.From:c.To] {
			e.Words = nil
			return
		}
		if len(e.Words) < maxWords {
			e.Words = append(e.Words, c)
		}
	}
}

// lettered tells whether a text ends in a word rather than in a number, a blank or
// a sign: numbers, the most of what is typed, need not be looked up.
func lettered(text string) bool {
	number := strings.TrimRight(text, "0123456789.")
	last, _ := utf8.DecodeLastRuneInString(number)
	return unicode.IsLetter(last) || last == '_' || len(number) == len(text) && (last == '+' || last == '-')
}

// inWords does the intents of the list of completions; ok tells that it was one.
func (m *Model) inWords(i keys.Intent) (cmd tea.Cmd, ok bool) {
	e := *m.edit
	if len(e.Words) == 0 {
		return nil, false
	}
	switch {
	case i == keys.PickUp:
		e.Word = max(e.Word-1, cells.Unpicked)
	case i == keys.PickDown:
		e.Word = min(e.Word+1, len(e.Words)-1)
	case i == keys.CloseList:
		e.Words, e.Closed = nil, true
	case i == keys.TakeWord, i == keys.Commit && e.Word != cells.Unpicked:
		c := e.Words[max(e.Word, 0)]
		e.Text, e.At = e.Text[:c.From]+c.Text+e.Text[c.To:], c.From+len(c.Text)
		e.Words, e.Word = nil, cells.Unpicked
		m.edit = &e
		return m.preview(), true
	default:
		return nil, false
	}
	m.edit = &e
	return nil, true
}
