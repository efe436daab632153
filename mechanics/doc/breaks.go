package doc

import (
	"math"
	"strings"
)

// span is a thing in a line: how wide it is, what space stands before it within a line,
// and whether a line may begin with it.
type span struct {
	width, gap float64
	may        may
}

type may int

const (
	never may = iota
	whereItMust
	freely
)

// breaks fills lines, the first in so much room and the rest in so much, and gives the
// thing that each line after the first begins with.
func breaks(of []span, first, rest float64) (starts []int) {
	for at, room := 0, first; at < len(of); room = rest {
		free, must, width, k := 0, 0, 0.0, at
		for ; k < len(of); k++ {
			if k > at {
				width += of[k].gap
				switch of[k].may {
				case freely:
					free = k
				case whereItMust:
					must = k
				}
			}
			if width += of[k].width; width > room+rounding && free+must > 0 {
				break
			}
		}
		if k == len(of) {
			return starts
		}
		if at = free; free == 0 {
			at = must
		}
		starts = append(starts, at)
	}
	return starts
}

// rounding is what widths in points may add up to beyond the room that they fill.
const rounding = 0.01

// EquationLine is a line of equations: pieces From to To of one, so far from the left.
type EquationLine struct {
	Of, From, To int
	X            float64
	At           int // the piece that is aligned with those above and below; -1 for none
}

// widestLeft is how much of a line the left side of an equation may take and still be
// aligned with others.
const widestLeft = 0.4

// Arrange sets equations under each other in a width, their first relations in one
// column. What is too wide goes on in the next line: at a relation in that column, at a
// sign behind it.
func Arrange[T any](s Setter[T], of [][]Piece[T], room float64) (lines []EquationLine) {
	column := 0.0
	all, cuts, lefts := make([][]span, len(of)), make([]int, len(of)), make([]float64, len(of))
	for i, pieces := range of {
		cuts[i] = -1
		left := 0.0
		for k, p := range pieces {
			x := span{width: s.Width(p.Box)}
			if k > 0 {
				x.gap, x.may = s.Width(s.Space(p.Lead)), freely
			}
			if p.Deep && k > 0 {
				x.may = whereItMust
			}
			if p.Lead == Relation && !p.Deep && cuts[i] < 0 {
				cuts[i], lefts[i] = k, left
			}
			left += x.gap + x.width
			all[i] = append(all[i], x)
		}
		if cuts[i] > 0 && lefts[i] <= widestLeft*room {
			all[i][cuts[i]].may = never
			column = math.Max(column, lefts[i])
		} else {
			cuts[i] = -1
		}
	}
	relation, behind := s.Width(s.Space(Relation)), s.Width(s.Join(s.Sign("="), s.Space(Relation)))
	for i := range of {
		x, on := 0.0, s.Width(s.Space(Indent))
		if cuts[i] > 0 {
			x, on = column-lefts[i], column+relation
		}
		from := 0
		starts := breaks(all[i], room-x, room-on-behind)
		for _, to := range append(starts, len(of[i])) {
			line := EquationLine{Of: i, From: from, To: to, X: x, At: -1}
			switch {
			case cuts[i] > 0 && (from == 0 || of[i][from].Lead == Relation && !of[i][from].Deep):
				line.At = max(cuts[i], from)
			case from > 0 && cuts[i] > 0:
				line.X += behind
			}
			lines = append(lines, line)
			from, x = to, on
		}
	}
	return lines
}

// Line is the pieces of a line of equations in one.
func Line[T any](s Setter[T], of []Piece[T]) T { return whole(s, of) }

// keptTogether is how much of a line a formula in a sentence may take and still not be
// broken.
const keptTogether = 0.4

// Wrap breaks a sentence into lines, the first in so much room and the rest in so much.
func Wrap[T any](s Setter[T], text []Inline, first, rest float64) []T {
	s = s.Inline()
	var boxes, gaps []T
	var spans []span
	blank := false // a blank stands before what comes
	put := func(box, gap T, allowed may) {
		boxes, gaps = append(boxes, box), append(gaps, gap)
		spans = append(spans, span{width: s.Width(box), gap: s.Width(gap), may: allowed})
	}
	word := func(box T) {
		if blank {
			put(box, s.Space(Word), freely)
		} else {
			put(box, s.Space(None), never)
		}
		blank = false
	}
	for _, in := range text {
		switch {
		case in.Math != nil:
			pieces := Pieces(s, *in.Math)
			if box := whole(s, pieces); s.Width(box) <= keptTogether*rest {
				word(box)
				continue
			}
			for k, p := range pieces {
				if k == 0 {
					word(p.Box)
				} else {
					put(p.Box, s.Space(p.Lead), freely)
				}
			}
		case in.Blank > 0:
			word(s.Prose(strings.Repeat(".", in.Blank), Upright))
		default:
			for text := in.Words; text != ""; {
				trimmed := strings.TrimLeft(text, blanks)
				blank = blank || len(trimmed) < len(text)
				end := strings.IndexAny(trimmed, blanks)
				if end < 0 {
					end = len(trimmed)
				}
				piece := trimmed[:end]
				for piece != "" {
					n := s.Fit(piece, in.Style, rest)
					word(s.Prose(piece[:n], in.Style))
					if piece = piece[n:]; piece != "" {
						put(s.Space(None), s.Space(None), freely)
					}
				}
				text = trimmed[end:]
			}
		}
	}
	var lines []T
	from := 0
	for _, to := range append(breaks(spans, first, rest), len(spans)) {
		var parts []T
		for k := from; k < to; k++ {
			if k > from {
				parts = append(parts, gaps[k])
			}
			parts = append(parts, boxes[k])
		}
		lines = append(lines, s.Join(parts...))
		from = to
	}
	return lines
}

// blanks are the characters at which a line of prose may break.
const blanks = " \t\r\n"

// TableSet is a table whose cells are set, each in its lines.
type TableSet[T any] struct {
	Rows   [][][]T // the head first, where it has one
	Headed bool
	Widths []float64
	Fits   bool // in the room
	behind func(row, column int) float64
}

// lines is how many lines row i has.
func (t *TableSet[T]) lines(i int) (n int) {
	for _, lines := range t.Rows[i] {
		n = max(n, len(lines))
	}
	return n
}

// pad is the space behind a cell of row i.
func (t *TableSet[T]) pad(i, k int) float64 {
	if t.Headed {
		i--
	}
	if i < 0 || t.behind == nil {
		return 0
	}
	return t.behind(i, k)
}

// SetTable sets the cells of a table. Its widest columns are narrowed, none below the
// least width, until all fit in a room; one that is to stay whole is not. Space may be left
// behind a cell of a row; nil for none.
func SetTable[T any](s, head Setter[T], t *Table, behind func(row, column int) float64, gap, least, room float64) TableSet[T] {
	n := len(t.Columns)
	out := TableSet[T]{Headed: t.Headed(), Widths: make([]float64, n), behind: behind}
	wraps := make([]bool, n)
	rows := t.Rows
	if out.Headed {
		heads := make([]Inline, n)
		for k, c := range t.Columns {
			heads[k].Words = c.Head
		}
		rows = append([][]Inline{heads}, rows...)
	}
	setter := func(i int) Setter[T] {
		if out.Headed && i == 0 {
			return head
		}
		return s
	}
	for i, r := range rows {
		row := make([][]T, n)
		for k := range row {
			row[k] = Wrap(setter(i), []Inline{Cell(r, k)}, unbroken, unbroken)
			width := out.pad(i, k)
			for _, box := range row[k] {
				width += s.Width(box)
			}
			out.Widths[k] = math.Max(out.Widths[k], width)
			wraps[k] = wraps[k] || !t.Whole && wrapsIn(Cell(r, k)) && width > least && (i > 0 || !out.Headed)
		}
		out.Rows = append(out.Rows, row)
	}
	fitted, fits := fitColumns(out.Widths, wraps, gap, least, room)
	if out.Fits = fits; t.Whole {
		return out
	}
	for i, r := range rows {
		for k, width := range fitted {
			if width < out.Widths[k] {
				out.Rows[i][k] = Wrap(setter(i), []Inline{Cell(r, k)}, width, width)
			}
		}
	}
	out.Widths = fitted
	return out
}

// unbroken is a room in which nothing breaks.
const unbroken = 1 << 30

// fitColumns narrows the widest columns that wrap, none below the least width, until all
// fit in a room; ok tells whether they do.
func fitColumns(widths []float64, wraps []bool, gap, least, room float64) (out []float64, ok bool) {
	out = append(out, widths...)
	room -= gap * float64(len(widths)-1)
	for {
		total, widest := 0.0, -1
		for k, w := range out {
			total += w
			if wraps[k] && w > least && (widest < 0 || w > out[widest]) {
				widest = k
			}
		}
		if total <= room+rounding {
			return out, true
		}
		if widest < 0 {
			return out, false
		}
		second := least
		for k, w := range out {
			if k != widest && wraps[k] && w < out[widest] {
				second = math.Max(second, w)
			}
		}
		const step = 0.9 // a little beyond the next widest, so that this ends
		out[widest] = math.Max(math.Max(second*step, least), out[widest]-(total-room))
	}
}
