package doc

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode/utf8"
)

// breaks fills lines with pieces, the first in so much room and the rest in so much, and
// gives where each line ends. None begins with the piece that stays.
func breaks[T any](s Setter[T], of []Piece[T], stays int, first, rest float64) (ends []int) {
	for at, room := 0, first; at < len(of); room = rest {
		free, must, last, width, k := 0, 0, 0, 0.0, at
		for ; k < len(of); k++ {
			if k > at {
				width += s.Width(s.Space(of[k].Lead))
				switch {
				case of[k].Lead == None || k == stays:
				case of[k].Measured:
					last = k
				case of[k].Deep:
					must = k
				default:
					free = k
				}
			}
			if width += s.Width(of[k].Box); width > room+rounding && free+must+last > 0 {
				break
			}
		}
		if k == len(of) {
			break
		}
		at = cmp.Or(free, must, last)
		ends = append(ends, at)
	}
	return append(ends, len(of))
}

// rounding is what widths in points may add up to beyond the room that they fill.
const rounding = 0.01

// EquationLine is a line of equations: pieces From to To of one, so far from the left.
type EquationLine[T any] struct {
	Of, From, To int
	Box          T // these pieces
	X            float64
	At           int // the piece that is aligned with those above and below; -1 for none
}

// widestLeft is how much of a line the left side of an equation may take and still be
// aligned with others.
const widestLeft = 0.4

// Arrange sets equations under each other in a width, their first relations in one
// column. What is too wide goes on in the next line: at a relation in that column, at a
// sign behind it.
func Arrange[T any](s Setter[T], of []Math, room float64) (lines []EquationLine[T]) {
	column, all := 0.0, make([][]Piece[T], len(of))
	ats, lefts := make([]int, len(of)), make([]float64, len(of))
	for i, m := range of {
		pieces := Pieces(s, m)
		all[i] = pieces
		ats[i] = slices.IndexFunc(pieces, Piece[T].relates)
		lefts[i] = s.Width(Line(s, pieces[:max(ats[i], 0)]))
		if lefts[i] > widestLeft*room {
			ats[i] = -1
		}
		if ats[i] > 0 {
			column = math.Max(column, lefts[i])
		}
	}
	relation, behind := s.Width(s.Space(Relation)), s.Width(s.Join(s.Sign("="), s.Space(Relation)))
	for i, pieces := range all {
		x, on := 0.0, s.Width(s.Space(Indent))
		if ats[i] > 0 {
			x, on = column-lefts[i], column+relation
		}
		from := 0
		for _, to := range breaks(s, pieces, ats[i], room-x, room-on-behind) {
			line := EquationLine[T]{Of: i, From: from, To: to, Box: Line(s, pieces[from:to]), X: x, At: -1}
			switch {
			case ats[i] < 0:
			case from == 0 || pieces[from].relates():
				line.At = max(ats[i], from)
			default:
				line.X += behind
			}
			lines = append(lines, line)
			from, x = to, on
		}
	}
	return lines
}

// Line is pieces side by side.
func Line[T any](s Setter[T], of []Piece[T]) T {
	if len(of) == 1 {
		return of[0].Box
	}
	parts := make([]T, 0, 2*len(of))
	for k, p := range of {
		if k > 0 {
			parts = append(parts, s.Space(p.Lead))
		}
		parts = append(parts, p.Box)
	}
	return s.Join(parts...)
}

// keptTogether is how much of a line a formula in a sentence may take and still not be
// broken.
const keptTogether = 0.4

// Wrap breaks a sentence into lines, the first in so much room and the rest in so much.
// What Kept keeps in one line stays where that has room for it.
func Wrap[T any](s Setter[T], text []Inline, first, rest float64) (lines []T) {
	s = s.Inline()
	var of []Piece[T]
	var behind []blank // where the pieces begin that a blank is before
	lead := None       // the space before what comes
	put := func(box T) {
		of = append(of, Piece[T]{Box: box, Lead: lead})
		lead = None
	}
	for i, in := range text {
		switch {
		case in.Math != nil:
			pieces := Pieces(s, *in.Math)
			if box := Line(s, pieces); s.Width(box) <= keptTogether*rest {
				pieces = []Piece[T]{{Box: box}}
			}
			for k, p := range pieces {
				if k > 0 {
					lead = p.Lead
				}
				put(p.Box)
				of[len(of)-1].Deep = p.Deep
			}
		case in.Blank > 0:
			put(s.Prose(strings.Repeat(".", in.Blank)))
		default:
			words, at := in.read(), 0
			for k, word := range strings.Split(words, " ") {
				if k > 0 {
					lead = Word
					behind = append(behind, blank{piece: len(of), of: i, at: at})
					at++
				}
				at += len(word)
				for word != "" {
					box, n := fitting(s, word, rest)
					put(box)
					if word = word[n:]; word != "" {
						lead = Seam
					}
				}
			}
		}
	}
	ends := breaks(s, of, -1, first, rest)
	if len(ends) > 1 { // else no number can be parted
		hold(of, behind, text)
		ends = breaks(s, of, -1, first, rest)
	}
	from := 0
	for _, to := range ends {
		lines = append(lines, Line(s, of[from:to]))
		from = to
	}
	return lines
}

// blank is a blank in the words of a sentence: the piece that it is before, the part of the
// sentence that it is in, and where in that.
type blank struct{ piece, of, at int }

// hold makes the blanks that Kept names places where a line breaks only if it must.
func hold[T any](of []Piece[T], behind []blank, text []Inline) {
	said, begins := "", make([]int, len(text))
	for i, in := range text {
		begins[i] = len(said)
		said += in.read()
	}
	for _, b := range behind {
		if at := begins[b.of] + b.at; b.piece < len(of) {
			of[b.piece].Deep, of[b.piece].Measured = Kept(said, at), Measured(said, at)
		}
	}
}

// fitting is as much of a word as fits in a room, and how many bytes of it that is; one
// character at least.
func fitting[T any](s Setter[T], word string, room float64) (box T, n int) {
	whole := s.Prose(word)
	if s.Width(whole) <= room {
		return whole, len(word)
	}
	for n := range word {
		_, size := utf8.DecodeRuneInString(word[n:])
		next := s.Prose(word[:n+size])
		if n > 0 && s.Width(next) > room {
			return box, n
		}
		box = next
	}
	return whole, len(word)
}

// TableSet is a table whose cells are set, each in its lines.
type TableSet[T any] struct {
	Rows   [][][]T // the head first, where it has one
	Widths []float64
	Fits   bool // in the room
}

// SetTable sets the cells of a table. Its widest columns are narrowed, none below the
// least width, until all fit in a room; one that is to stay whole is not.
func SetTable[T any](s, head Setter[T], t *Table, gap, least, room float64) TableSet[T] {
	n, rows := len(t.Columns), t.Rows
	if t.Headed() {
		heads := make([]Inline, n)
		for k, c := range t.Columns {
			heads[k].Words = c.Head
		}
		rows = append([][]Inline{heads}, rows...)
	}
	wrap := func(i, k int, width float64) []T {
		setter := s
		if i < len(rows)-len(t.Rows) {
			setter = head
		}
		return Wrap(setter, []Inline{Cell(rows[i], k)}, width, width)
	}
	out := TableSet[T]{Widths: make([]float64, n)}
	wraps := make([]bool, n)
	for i, r := range rows {
		row := make([][]T, n)
		for k := range row {
			row[k] = wrap(i, k, unbroken)
			width := s.Width(row[k][0])
			out.Widths[k] = math.Max(out.Widths[k], width)
			wraps[k] = wraps[k] || !t.Whole && wrapsIn(Cell(r, k)) && width > least && i >= len(rows)-len(t.Rows)
		}
		out.Rows = append(out.Rows, row)
	}
	fitted, fits := fitColumns(out.Widths, wraps, gap, least, room)
	if out.Fits = fits; t.Whole {
		return out
	}
	for i, row := range out.Rows {
		for k, width := range fitted {
			if width < out.Widths[k] {
				row[k] = wrap(i, k, width)
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
