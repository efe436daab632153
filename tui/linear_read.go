package tui

import (
	"fmt"

	"trivet/mechanics/report"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/topic"
)

// pageLines is how many lines a page key reads on.
const pageLines = 10

// readLines are the lines of what is read, and the one that is read now; a word in their
// place where nothing is written yet.
func (m Model) readLines() (lines []string, at int) {
	lines, at = m.writtenLines()
	if len(lines) == 0 {
		lines = []string{"nothing yet"}
	}
	return lines, max(min(at, len(lines)-1), 0)
}

func (m Model) writtenLines() (lines []string, at int) {
	switch {
	case m.help != nil:
		lines, at = m.helpLines(), m.help.Y
	case m.board.On:
		lines, at = m.board.Lines(m.boardOf()), m.board.Line
	case m.focus == layout.Picture:
		lines, at = m.pictureLines(), m.speech.read[m.focus]
	default:
		lines, at = m.resultLines(m.focus), m.speech.read[m.focus]
	}
	return lines, at
}

// helpLines are the lines of the help's page.
func (m Model) helpLines() []string {
	if m.help.at > 0 {
		return topic.Spoken(m.help.doc)
	}
	return m.helpText(wholeLine).Read()
}

// wholeLine is a width at which no text is broken.
const wholeLine = 1 << 20

// readOn moves in what is read; false where the intent is none of reading.
func (m *Model) readOn(i keys.Intent) bool {
	lines, at := m.readLines()
	switch i {
	case keys.Up:
		at--
	case keys.Down:
		at++
	case keys.PageUp:
		at -= pageLines
	case keys.PageDown:
		at += pageLines
	case keys.First:
		at = 0
	case keys.Last:
		at = len(lines) - 1
	default:
		return false
	}
	at = max(min(at, len(lines)-1), 0)
	m.speech.jumped = i == keys.First || i == keys.Last
	switch {
	case m.help != nil:
		next := *m.help
		next.Y = at
		m.help = &next
	case m.board.On:
		m.board.Line = at
	default:
		m.speech.read[m.focus] = at
	}
	return true
}

// readScene says the lines that have been read on to.
func (m Model) readScene(was Model, name string) []string {
	lines, at := m.readLines()
	same := was.history != nil && was.mode() == m.mode() && was.focus == m.focus && (m.help == nil || was.help.at == m.help.at)
	if !same {
		return []string{fmt.Sprintf("%s, line %d of %d: %s", name, at+1, len(lines), lines[at])}
	}
	_, before := was.readLines()
	earlier, _ := was.writtenLines()
	written, _ := m.writtenLines()
	switch {
	case len(earlier) == 0 && len(written) > 0:
		return []string{fmt.Sprintf("%s, line %d of %d: %s", name, at+1, len(lines), lines[at])}
	case at != before && m.speech.jumped:
		return lines[at : at+1]
	case at > before && at-before <= pageLines:
		return lines[before+1 : at+1]
	case at < before && before-at <= pageLines:
		return lines[at:before]
	case at != before:
		return lines[at : at+1]
	}
	if m.help == nil && m.focus.Result() && m.read[m.focus].Moved(was.read[m.focus]) && m.says != "" {
		return []string{m.says}
	}
	if m.focus == layout.Picture && was.selected() != m.selected() {
		return m.pickedWords()
	}
	return nil
}

// pickedWords says more of what was picked in the picture.
func (m Model) pickedWords() []string {
	if m.live.Problem == nil {
		return nil
	}
	if line := report.DescribedRow(m.live.Problem, m.live.Solution, m.selected()); line != "" {
		return []string{line}
	}
	return nil
}
