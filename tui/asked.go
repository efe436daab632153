package tui

import (
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
)

// asking gives the cell of the results asked for with one of them replaced.
func (m Model) asking(s cells.Slot, text string) (sheet.Ref, string) {
	ref := sheet.Ref{Row: "asked"}
	row, _ := m.history.Current().Table("").Row("asked")
	c, _ := row.Cell("")
	all := cells.Words(c.Text)
	if s.Word >= len(all) {
		return ref, c.Text
	}
	w := all[s.Word]
	return ref, strings.TrimSpace(c.Text[:w.Start] + strings.TrimSpace(text) + c.Text[w.End:])
}

func (m *Model) dropAsked(s cells.Slot) tea.Cmd {
	ref, text := m.asking(s, "")
	if err := m.history.Do(change(m.history.Current(), ref, text)); err != nil {
		m.say(err.Error(), true)
		return nil
	}
	return m.changed()
}
