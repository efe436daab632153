package tui

// boardScene says a whole step where another shows, or the line read on to.
func (m Model) boardScene(was Model) []string {
	lines := m.board.Lines(m.boardOf())
	if was.board.On && was.board.List == nil && was.help == nil && was.ask == nil && was.naming == nil && was.board.Said(was.boardOf()) == m.board.Said(m.boardOf()) {
		if at := max(min(m.board.Line, len(lines)-1), 0); at != was.board.Line && len(lines) > 0 {
			return lines[at : at+1]
		}
		return nil
	}
	return lines
}
