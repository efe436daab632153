package tui

import "trivet/tui/keys"

// reading does what is the same in the results and the picture.
func (m *Model) reading(i keys.Intent) bool {
	if i == keys.Cancel {
		m.goTo(m.back)
		return true
	}
	return false
}
