package text

import (
	"slices"
	"strings"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Sideways a text goes as a table does: what fits stays where it is, and a row's
// head stays in view. It goes by whole columns of the matrix, so that no figure is
// cut.

// Shift is by how many columns of an offset a line moves in a width.
func (d Lines) Shift(line, x, w int) int {
	n := 0
	for _, s := range d[line] {
		n += grid.Width(s.Text)
	}
	if n <= w {
		return 0
	}
	return x
}

// HeadWidth is the width of a line's head: what stands before its first number where
// that is a name. A head that leaves no room for a number goes along.
func (d Lines) HeadWidth(line, w int) int {
	l := d[line]
	if len(l) < 2 || !l[0].Head {
		return 0
	}
	if n := grid.Width(l[0].Text); w-n > Column {
		return n
	}
	return 0
}

// hasNumbers tells whether a line has any that would be another one where it is cut.
func (d Lines) hasNumbers(line int) bool {
	return len(d[line]) > 0 && d[line][0].Head || slices.ContainsFunc(d[line], func(s Span) bool { return s.Of != nil })
}

// widen scrolls sideways until the number is whole in view, back to the line's
// start where that shows it too.
func (v *View) widen(d Lines, w int) {
	n, head := d.Number(v.Line, v.Span), d.HeadWidth(v.Line, w)
	x := v.Scroll.X
	if n.To > x+w {
		x = (n.To - w + Column - 1) / Column * Column
	}
	if n.From < x+head {
		x = max(n.From-head, 0) / Column * Column
	}
	if n.To <= w {
		x = 0
	}
	v.Scroll.X = x
}

// Draw shows the part of the text from an offset on in a width. In a stale text every
// look gives way to the stale one.
func (d Lines) Draw(c grid.Canvas, from Offset, w int, stale bool) {
	for y := range c.H() {
		i := from.Y + y
		if i < 0 || i >= len(d) {
			return
		}
		by, head := d.Shift(i, from.X, w), d.HeadWidth(i, w)
		if by == 0 {
			head = 0
		}
		x := -by
		numbers := d.hasNumbers(i)
		for k, s := range d[i] {
			look := s.Look
			if stale {
				look = theme.Stale
			}
			text, at := s.Text, x
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
			if (s.Of != nil || d[i][0].Head) && at+grid.Width(text) > c.W() {
				continue // a part of a number is another number, a part of a name another name
			}
			c.Text(at, y, look, text)
		}
	}
}

// Column is the width of a column of numbers, such as of a matrix: -0.12345 and a blank.
const Column = 8
