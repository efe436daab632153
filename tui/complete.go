package tui

import (
	"strings"
	"unicode"
	"unicode/utf8"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
)

// maxWords is how many completions are kept: more than anybody reads.
const maxWords = 50

// complete looks for what the word at the cursor may become. A word that is whole
// as it stands asks for nothing, and neither does a blank: plain typing is never
// in the way of a list.
func (m *Model) complete() {
	e := *m.edit
	e.words, e.word = nil, unpicked
	m.edit = &e
	ref := e.slot.ref
	switch {
	case e.list != nil || e.closed || e.text == e.was || !lettered(e.text[:e.at]):
		return
	case e.slot.does == setAsked:
		ref = sheet.Ref{Row: "asked"}
	case e.slot.does != setCell:
		return
	}
	for _, c := range names.Complete(m.history.Current(), ref, e.text, e.at) {
		if c.From >= e.at || c.To > len(e.text) || c.From > c.To {
			continue
		}
		if c.Text == e.text[c.From:c.To] {
			e.words = nil
			return
		}
		if len(e.words) < maxWords {
			e.words = append(e.words, c)
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
	if len(e.words) == 0 {
		return nil, false
	}
	switch {
	case i == keys.PickUp:
		e.word = max(e.word-1, unpicked)
	case i == keys.PickDown:
		e.word = min(e.word+1, len(e.words)-1)
	case i == keys.CloseList:
		e.words, e.closed = nil, true
	case i == keys.TakeWord, i == keys.Commit && e.word != unpicked:
		c := e.words[max(e.word, 0)]
		e.text, e.at = e.text[:c.From]+c.Text+e.text[c.To:], c.From+len(c.Text)
		e.words, e.word = nil, unpicked
		m.edit = &e
		return m.preview(), true
	default:
		return nil, false
	}
	m.edit = &e
	return nil, true
}

// offered gives what stands in the list under the cell: the choices that fit, or
// the completions.
func (e *edit) offered() (list []choice, pick int, noun string) {
	if e.list != nil {
		list, pick = e.fitting()
		return list, pick, "kind"
	}
	for _, c := range e.words {
		list = append(list, choice{text: c.Text, says: c.Says})
	}
	return list, e.word, "word"
}
