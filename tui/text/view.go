package text

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/origin"
	"trivet/tui/grid"
	"trivet/tui/keys"
)

// View is how far a result is scrolled, and the number under its cursor.
type View struct {
	Scroll     Offset
	At         doc.Origin // of which number; nil: none yet
	Line, Span int        // where it stands in the text
}

// spotted is a number of a line: its piece, its columns, and whether the column
// before it is blank.
type spotted struct {
	Span, From, To int
	Blank          bool
}

// Number finds a piece of a line, without the blanks round it.
func (d Lines) Number(line, seg int) spotted {
	x, before := 0, ""
	for k, s := range d[line] {
		if k == seg {
			in := strings.TrimLeft(s.Text, " ")
			from := x + len(s.Text) - len(in)
			blank := len(in) < len(s.Text) || strings.HasSuffix(before, " ")
			return spotted{k, from, from + grid.Width(strings.TrimRight(in, " ")), blank}
		}
		x += grid.Width(s.Text)
		before = s.Text
	}
	return spotted{}
}

// Numbers are those of a line.
func (d Lines) Numbers(line int) (out []spotted) {
	if line < 0 || line >= len(d) {
		return nil
	}
	for k, s := range d[line] {
		if s.Of != nil {
			out = append(out, d.Number(line, k))
		}
	}
	return out
}

// has tells whether a line has numbers.
func (d Lines) has(line int) bool {
	for _, s := range d[line] {
		if s.Of != nil {
			return true
		}
	}
	return false
}

// next is the line with numbers nearest to a line, that one included, in a
// direction; -1 where there is none.
func (d Lines) next(line, by int) int {
	for ; line >= 0 && line < len(d); line += by {
		if d.has(line) {
			return line
		}
	}
	return -1
}

func (v *View) Set(d Lines, line, seg int) {
	v.Line, v.Span, v.At = line, seg, d[line][seg].Of
}

// segsOfLine is more than a line has pieces: a line nearer counts for more than a piece.
const segsOfLine = 1 << 16

// Find looks the number under the cursor up in a text that was written anew: the
// one of the same meaning that stands nearest to where it was.
func (v *View) Find(d Lines) {
	if v.At == nil {
		return
	}
	line, seg, off := -1, 0, 0
	for i := range d {
		for k := range d[i] {
			if !origin.Same(d[i][k].Of, v.At) {
				continue
			}
			if away := max(i-v.Line, v.Line-i)*segsOfLine + max(k-v.Span, v.Span-k); line < 0 || away < off {
				line, seg, off = i, k, away
			}
		}
	}
	if line < 0 {
		v.At = nil
		return
	}
	v.Set(d, line, seg)
}

// Turn moves to the nearest number in a direction where that is in view, or just
// beyond; else it scrolls.
func (v *View) Turn(d Lines, i keys.Intent, w, h int) bool {
	switch i {
	case keys.Up, keys.Down, keys.Left, keys.Right:
	case keys.PageUp, keys.PageDown, keys.First, keys.Last:
		was := v.Line - v.Scroll.Y
		Scroll(&v.Scroll, i, h)
		v.Scroll.Y = max(min(v.Scroll.Y, len(d)-h), 0)
		v.land(d, i, was, w, h)
		return true
	default:
		return false
	}
	by := 1
	if i == keys.Up || i == keys.Left {
		by = -1
	}
	if !v.InView(d, h) {
		v.enter(d, by, w, h)
		return true
	}
	if i == keys.Left || i == keys.Right {
		for k := v.Span + by; k >= 0 && k < len(d[v.Line]); k += by {
			if d[v.Line][k].Of != nil {
				v.Set(d, v.Line, k)
				v.widen(d, w)
				return true
			}
		}
	}
	to := d.next(v.Line+by, by)
	if to < 0 || to < v.Scroll.Y-1 || to > v.Scroll.Y+h {
		v.Scroll.Y += by
		return true
	}
	of := d.Numbers(to)
	switch i {
	case keys.Right:
		v.Set(d, to, of[0].Span)
	case keys.Left:
		v.Set(d, to, of[len(of)-1].Span)
	default:
		v.Set(d, to, nearest(of, d.Number(v.Line, v.Span)).Span)
	}
	v.Scroll.Y = max(min(v.Scroll.Y, to), to-h+1)
	v.widen(d, w)
	return true
}

// nearest is the number of a line that stands most nearly under or over another.
func nearest(of []spotted, n spotted) spotted {
	best, off := of[0], 1<<30
	for _, x := range of {
		away := x.From + x.To - n.From - n.To
		if away = max(away, -away); away < off {
			best, off = x, away
		}
	}
	return best
}

func (v *View) InView(d Lines, h int) bool {
	return v.At != nil && v.Line < len(d) && v.Line >= v.Scroll.Y && v.Line < v.Scroll.Y+h
}

// enter puts the cursor on the first number in view, or the last on the way up;
// where there is none it scrolls.
func (v *View) enter(d Lines, by, w, h int) {
	from := v.Scroll.Y
	if by < 0 {
		from = min(v.Scroll.Y+h, len(d)) - 1
	}
	to := d.next(from, by)
	if to < v.Scroll.Y || to >= v.Scroll.Y+h {
		v.Scroll.Y += by
		return
	}
	of := d.Numbers(to)
	v.Set(d, to, of[0].Span)
	v.widen(d, w)
}

// land keeps the cursor as far down the pane as it was, after a page was turned.
func (v *View) land(d Lines, i keys.Intent, was, w, h int) {
	want := v.Scroll.Y + max(min(was, h-1), 0)
	switch i {
	case keys.First:
		want = 0
	case keys.Last:
		want = len(d) - 1
	}
	down, up := d.next(want, 1), d.next(want, -1)
	to := down
	if down < 0 || down >= v.Scroll.Y+h || up >= 0 && want-up < down-want {
		to = up
	}
	if to < v.Scroll.Y || to >= v.Scroll.Y+h {
		return // no number is in view
	}
	v.Set(d, to, d.Numbers(to)[0].Span)
	v.widen(d, w)
}

// First puts a cursor that is nowhere yet on the first number in view.
func (v *View) First(d Lines, h int) {
	if to := d.next(v.Scroll.Y, 1); to >= 0 && to < v.Scroll.Y+h {
		v.Set(d, to, d.Numbers(to)[0].Span)
	}
}
