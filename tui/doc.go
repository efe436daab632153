package tui

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/theme"
)

// seg is a piece of a line in one look; a number has its origin, and head says that
// the piece names its row. A piece that begins a column has in by what stands before it
// where the line is read and not seen.
type seg struct {
	text string
	look grid.Style
	of   doc.Origin
	head bool
	by   string
}

// apart begins a column with some pieces.
func apart(by string, of ...seg) []seg {
	of[0].by = by
	return of
}

// numeral is a piece whose origin can be told.
func numeral(text string, look grid.Style, of doc.Origin) seg {
	return seg{text: text, look: look, of: of}
}

// segs is a store of pieces, from which the lines of a long text are cut: a store
// in few parts is cheaper to make than each line by itself.
type segs struct {
	free []seg
	part int // how many the last part held
}

// line is an empty line with room for so many pieces.
func (s *segs) line(room int) []seg {
	if len(s.free) < room {
		const first, limit = 32, 1024
		s.part = max(room, min(2*s.part, limit), first)
		s.free = make([]seg, s.part)
	}
	l := s.free[:0:room]
	s.free = s.free[room:]
	return l
}

// doc is a text to be scrolled.
type paneText [][]seg

func (d *paneText) add(segs ...seg) { *d = append(*d, segs) }

func (d *paneText) text(look grid.Style, s string) { d.add(seg{text: s, look: look}) }

// heading begins a part.
func (d *paneText) heading(s string) {
	if len(*d) > 0 {
		d.add()
	}
	d.text(theme.Head, s)
}

// width is the longest line's.
func (d paneText) width() (w int) {
	for _, l := range d {
		n := 0
		for _, s := range l {
			n += grid.Width(s.text)
		}
		w = max(w, n)
	}
	return w
}

// wrapped adds a text broken at blanks to a width, the later lines set in.
func (d *paneText) wrapped(look grid.Style, first, s string, w int) {
	in := strings.Repeat(" ", grid.Width(first))
	line, filled := first, false
	for _, word := range strings.Fields(s) {
		if filled && grid.Width(line)+1+grid.Width(word) > w {
			d.text(look, line)
			line, filled = in, false
		}
		if filled {
			line += " "
		}
		line, filled = line+word, true
	}
	d.text(look, line)
}

// behind adds a text broken to a width behind a piece, from which it is set apart.
func (d *paneText) behind(first seg, by string, look grid.Style, s string, w int) {
	at := len(*d)
	d.wrapped(look, grid.Fit("", grid.Width(first.text)), s, w)
	text := (*d)[at][0].text
	(*d)[at] = []seg{first, {text: text[grid.Width(first.text):], look: look, by: by}}
}

// read gives the lines as they are read aloud, without the blanks that set columns.
func (d paneText) read() (lines []string) {
	for _, l := range d {
		line := ""
		for _, s := range l {
			text := s.text
			if s.by != "" {
				text, line = strings.TrimLeft(text, " "), strings.TrimRight(line, " ")
			}
			if s.by != "" && text != "" && line != "" {
				line += s.by
			}
			line += text
		}
		if line = strings.TrimSpace(line); line != "" {
			lines = append(lines, line)
		}
	}
	return lines
}
