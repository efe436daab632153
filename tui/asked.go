package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
)

// word is one of the results asked for, and where it stands in the cell.
type word struct {
	text       string
	start, end int
}

// asked splits the cell at blanks and commas outside parentheses.
func (b builder) asked() []word {
	row, _ := b.s.Table("").Row("asked")
	cell, _ := row.Cell("")
	return words(cell.Text)
}

func words(text string) (out []word) {
	start, depth := -1, 0
	for i := 0; i <= len(text); i++ {
		gap := i == len(text)
		if !gap {
			switch c := text[i]; c {
			case '(':
				depth++
			case ')':
				depth = max(depth-1, 0)
			case ' ', ',', '\t', '\n', '\r':
				gap = depth == 0
			}
		}
		switch {
		case gap && start >= 0:
			out = append(out, word{text[start:i], start, i})
			start = -1
		case !gap && start < 0:
			start = i
		}
	}
	return out
}

// asking gives the cell of the results asked for with one of them replaced.
func (m Model) asking(s slot, text string) (sheet.Ref, string) {
	ref := sheet.Ref{Row: "asked"}
	row, _ := m.history.Current().Table("").Row("asked")
	c, _ := row.Cell("")
	all := words(c.Text)
	if s.word >= len(all) {
		return ref, c.Text
	}
	w := all[s.word]
	return ref, strings.TrimSpace(c.Text[:w.start] + strings.TrimSpace(text) + c.Text[w.end:])
}

func (m *Model) dropAsked(s slot) tea.Cmd {
	ref, text := m.asking(s, "")
	if err := m.history.Do(change(m.history.Current(), ref, text)); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	return m.changed()
}
