// Package text sets what is read in lines of spans: broken to a width, scrolled, with a cursor on
// its numbers, and the line that is typed in.
package text

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// Span is a piece of a line in one look; a number has its origin, and Head says that
// the piece names its row. A piece that begins a column has in By what stands before it
// where the line is read and not seen.
type Span struct {
	Text string
	Look grid.Style
	Of   doc.Origin
	Head bool
	By   string
}

// Apart begins a column with some pieces.
func Apart(by string, of ...Span) []Span {
	of[0].By = by
	return of
}

// Numeral is a piece whose origin can be told.
func Numeral(text string, look grid.Style, of doc.Origin) Span {
	return Span{Text: text, Look: look, Of: of}
}

// Store is a store of pieces, from which the lines of a long text are cut: a store
// in few parts is cheaper to make than each line by itself.
type Store struct {
	free []Span
	part int // how many the last part held
}

// Line is an empty line with room for so many pieces.
func (s *Store) Line(room int) []Span {
	if len(s.free) < room {
		const first, limit = 32, 1024
		s.part = max(room, min(2*s.part, limit), first)
		s.free = make([]Span, s.part)
	}
	l := s.free[:0:room]
	s.free = s.free[room:]
	return l
}

// Lines are a text to be scrolled.
type Lines [][]Span

func (d *Lines) Add(segs ...Span) { *d = append(*d, segs) }

func (d *Lines) Plain(look grid.Style, s string) { d.Add(Span{Text: s, Look: look}) }

// Heading begins a part.
func (d *Lines) Heading(s string) {
	if len(*d) > 0 {
		d.Add()
	}
	d.Plain(theme.Head, s)
}

// Width is the longest line's.
func (d Lines) Width() (w int) {
	for _, l := range d {
		n := 0
		for _, s := range l {
			n += grid.Width(s.Text)
		}
		w = max(w, n)
	}
	return w
}

// Wrapped adds a text broken at blanks to a width, the later lines set in.
func (d *Lines) Wrapped(look grid.Style, first, s string, w int) {
	if strings.ContainsAny(s, "\n\t") || strings.Contains(s, "  ") {
		s = strings.Join(strings.Fields(s), " ")
	}
	s = strings.TrimSpace(s)
	in := grid.Width(first)
	for row := range Rows(s, w-in) {
		d.Plain(look, first+row)
		first = strings.Repeat(" ", in)
	}
}

// Behind adds a text broken to a width behind a piece, from which it is set apart.
func (d *Lines) Behind(first Span, by string, look grid.Style, s string, w int) {
	at := len(*d)
	d.Wrapped(look, grid.Fit("", grid.Width(first.Text)), s, w)
	text := (*d)[at][0].Text
	(*d)[at] = []Span{first, {Text: text[grid.Width(first.Text):], Look: look, By: by}}
}

// Read gives the lines as they are read aloud, without the blanks that set columns.
func (d Lines) Read() (lines []string) {
	for _, l := range d {
		line := ""
		for _, s := range l {
			text := s.Text
			if s.By != "" {
				text, line = strings.TrimLeft(text, " "), strings.TrimRight(line, " ")
			}
			if s.By != "" && text != "" && line != "" {
				line += s.By
			}
			line += text
		}
		if line = strings.TrimSpace(line); line != "" {
			lines = append(lines, line)
		}
	}
	return lines
}
