package tui

import (
	"slices"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Sideways a text goes as a table does: what fits stays where it is, and a row's
// head stays in view. It goes by whole columns of the matrix, so that no figure is
// cut.

// shift is by how many columns of an offset a line moves in a width.
func (d paneText) shift(line, x, w int) int {
	n := 0
	for _, s := range d[line] {
		n += grid.Width(s.text)
	}
	if n <= w {
		return 0
	}
	return x
}

// head is the width of a line's head: what stands before its first number where
// that is a name. A head that leaves no room for a number goes along.
func (d paneText) head(line, w int) int {
	l := d[line]
	if len(l) < 2 || !l[0].head {
		return 0
	}
	if n := grid.Width(l[0].text); w-n > wide {
		return n
	}
	return 0
}

// hasNumbers tells whether a line has any that would be another one where it is cut.
func (d paneText) hasNumbers(line int) bool {
	return len(d[line]) > 0 && d[line][0].head || slices.ContainsFunc(d[line], func(s seg) bool { return s.of != nil })
}

// widen scrolls sideways until the number is whole in view, back to the line's
// start where that shows it too.
func (v *viewState) widen(d paneText, w int) {
	n, head := d.number(v.line, v.seg), d.head(v.line, w)
	x := v.scroll.x
	if n.to > x+w {
		x = (n.to - w + wide - 1) / wide * wide
	}
	if n.from < x+head {
		x = max(n.from-head, 0) / wide * wide
	}
	if n.to <= w {
		x = 0
	}
	v.scroll.x = x
}

// draw shows the part of the text from an offset on in a width. In a stale text every
// look gives way to the stale one.
func (d paneText) draw(c grid.Canvas, from offset, w int, stale bool) {
	for y := range c.H() {
		i := from.y + y
		if i < 0 || i >= len(d) {
			return
		}
		by, head := d.shift(i, from.x, w), d.head(i, w)
		if by == 0 {
			head = 0
		}
		x := -by
		numbers := d.hasNumbers(i)
		for k, s := range d[i] {
			look := s.look
			if stale {
				look = theme.Stale
			}
			text, at := s.text, x
			x += grid.Width(text)
			switch {
			case k == 0 && head > 0:
				c.Text(0, y, look, text)
				continue
			case at < head && numbers:
				// Of a number that is not whole in view nothing shows.
				in := strings.TrimLeft(text, " ")
				if at += len(text) - len(in); at < head {
					continue
				}
				text = in
			}
			if (s.of != nil || d[i][0].head) && at+grid.Width(text) > c.W() {
				continue // a part of a number is another number, a part of a name another name
			}
			c.Text(at, y, look, text)
		}
	}
}
