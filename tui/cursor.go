package tui

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/tui/grid"
	"trivet/tui/keys"
)

// viewState is how far a result is scrolled, and the number under its cursor.
type viewState struct {
	scroll    offset
	at        doc.Origin // of which number; nil: none yet
	line, seg int        // where it stands in the text
}

// spotted is a number of a line: its piece, its columns, and whether the column
// before it is blank.
type spotted struct {
	seg, from, to int
	blank         bool
}

// number finds a piece of a line, without the blanks round it.
func (d paneText) number(line, seg int) spotted {
	x, before := 0, ""
	for k, s := range d[line] {
		if k == seg {
			in := strings.TrimLeft(s.text, " ")
			from := x + len(s.text) - len(in)
			blank := len(in) < len(s.text) || strings.HasSuffix(before, " ")
			return spotted{k, from, from + grid.Width(strings.TrimRight(in, " ")), blank}
		}
		x += grid.Width(s.text)
		before = s.text
	}
	return spotted{}
}

// numbers are those of a line.
func (d paneText) numbers(line int) (out []spotted) {
	if line < 0 || line >= len(d) {
		return nil
	}
	for k, s := range d[line] {
		if s.of != nil {
			out = append(out, d.number(line, k))
		}
	}
	return out
}

// has tells whether a line has numbers.
func (d paneText) has(line int) bool {
	for _, s := range d[line] {
		if s.of != nil {
			return true
		}
	}
	return false
}

// next is the line with numbers nearest to a line, that one included, in a
// direction; -1 where there is none.
func (d paneText) next(line, by int) int {
	for ; line >= 0 && line < len(d); line += by {
		if d.has(line) {
			return line
		}
	}
	return -1
}

func (v *viewState) set(d paneText, line, seg int) {
	v.line, v.seg, v.at = line, seg, d[line][seg].of
}

// segsOfLine is more than a line has pieces: a line nearer counts for more than a piece.
const segsOfLine = 1 << 16

// find looks the number under the cursor up in a text that was written anew: the
// one of the same meaning that stands nearest to where it was.
func (v *viewState) find(d paneText) {
	if v.at == nil {
		return
	}
	line, seg, off := -1, 0, 0
	for i := range d {
		for k := range d[i] {
			if !origin.Same(d[i][k].of, v.at) {
				continue
			}
			if away := max(i-v.line, v.line-i)*segsOfLine + max(k-v.seg, v.seg-k); line < 0 || away < off {
				line, seg, off = i, k, away
			}
		}
	}
	if line < 0 {
		v.at = nil
		return
	}
	v.set(d, line, seg)
}

// turn moves to the nearest number in a direction where that is in view, or just
// beyond; else it scrolls.
func (v *viewState) turn(d paneText, i keys.Intent, w, h int) bool {
	switch i {
	case keys.Up, keys.Down, keys.Left, keys.Right:
	case keys.PageUp, keys.PageDown, keys.First, keys.Last:
		was := v.line - v.scroll.y
		scroll(&v.scroll, i, h)
		v.scroll.y = max(min(v.scroll.y, len(d)-h), 0)
		v.land(d, i, was, w, h)
		return true
	default:
		return false
	}
	by := 1
	if i == keys.Up || i == keys.Left {
		by = -1
	}
	if !v.inView(d, h) {
		v.enter(d, by, w, h)
		return true
	}
	if i == keys.Left || i == keys.Right {
		for k := v.seg + by; k >= 0 && k < len(d[v.line]); k += by {
			if d[v.line][k].of != nil {
				v.set(d, v.line, k)
				v.widen(d, w)
				return true
			}
		}
	}
	to := d.next(v.line+by, by)
	if to < 0 || to < v.scroll.y-1 || to > v.scroll.y+h {
		v.scroll.y += by
		return true
	}
	of := d.numbers(to)
	switch i {
	case keys.Right:
		v.set(d, to, of[0].seg)
	case keys.Left:
		v.set(d, to, of[len(of)-1].seg)
	default:
		v.set(d, to, nearest(of, d.number(v.line, v.seg)).seg)
	}
	v.scroll.y = max(min(v.scroll.y, to), to-h+1)
	v.widen(d, w)
	return true
}

// nearest is the number of a line that stands most nearly under or over another.
func nearest(of []spotted, n spotted) spotted {
	best, off := of[0], 1<<30
	for _, x := range of {
		away := x.from + x.to - n.from - n.to
		if away = max(away, -away); away < off {
			best, off = x, away
		}
	}
	return best
}

func (v *viewState) inView(d paneText, h int) bool {
	return v.at != nil && v.line < len(d) && v.line >= v.scroll.y && v.line < v.scroll.y+h
}

// enter puts the cursor on the first number in view, or the last on the way up;
// where there is none it scrolls.
func (v *viewState) enter(d paneText, by, w, h int) {
	from := v.scroll.y
	if by < 0 {
		from = min(v.scroll.y+h, len(d)) - 1
	}
	to := d.next(from, by)
	if to < v.scroll.y || to >= v.scroll.y+h {
		v.scroll.y += by
		return
	}
	of := d.numbers(to)
	v.set(d, to, of[0].seg)
	v.widen(d, w)
}

// land keeps the cursor as far down the pane as it was, after a page was turned.
func (v *viewState) land(d paneText, i keys.Intent, was, w, h int) {
	want := v.scroll.y + max(min(was, h-1), 0)
	switch i {
	case keys.First:
		want = 0
	case keys.Last:
		want = len(d) - 1
	}
	down, up := d.next(want, 1), d.next(want, -1)
	to := down
	if down < 0 || down >= v.scroll.y+h || up >= 0 && want-up < down-want {
		to = up
	}
	if to < v.scroll.y || to >= v.scroll.y+h {
		return // no number is in view
	}
	v.set(d, to, d.numbers(to)[0].seg)
	v.widen(d, w)
}
