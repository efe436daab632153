package text

import "trivet/tui/keys"

// Offset is how far a text is scrolled, in cells.
type Offset struct{ X, Y int }

// Scroll moves an offset; page is the height of what shows.
func Scroll(o *Offset, i keys.Intent, page int) bool {
	const sideways = 8
	switch i {
	case keys.Up:
		o.Y--
	case keys.Down:
		o.Y++
	case keys.Left:
		o.X -= sideways
	case keys.Right:
		o.X += sideways
	case keys.PageUp:
		o.Y -= max(page-1, 1)
	case keys.PageDown:
		o.Y += max(page-1, 1)
	case keys.First:
		*o = Offset{}
	case keys.Last:
		*o = Offset{Y: 1 << 30}
	default:
		return false
	}
	return true
}
