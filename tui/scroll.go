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

// scroll moves an offset; page is the height of what shows.
func scroll(o *offset, i keys.Intent, page int) bool {
	const sideways = 8
	switch i {
	case keys.Up:
		o.y--
	case keys.Down:
		o.y++
	case keys.Left:
		o.x -= sideways
	case keys.Right:
		o.x += sideways
	case keys.PageUp:
		o.y -= max(page-1, 1)
	case keys.PageDown:
		o.y += max(page-1, 1)
	case keys.First:
		*o = offset{}
	case keys.Last:
		*o = offset{y: 1 << 30}
	default:
		return false
	}
	return true
}
