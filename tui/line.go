package tui

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
	"trivet/tui/keys"
)

// line is one line of text being typed, with a cursor in bytes.
type line struct {
	text string
	at   int
}

// longest is more than any cell needs, and keeps a wrong paste from filling the
// memory.
const longest = 4096

func newLine(text string) line { return line{text, len(text)} }

// insert puts text at the cursor. Line ends become blanks, other controls go.
func (l *line) insert(s string) {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case unicode.IsControl(r) || r == utf8.RuneError:
			return -1
		}
		return r
	}, s)
	if len(l.text)+len(s) > longest {
		return
	}
	l.text = l.text[:l.at] + s + l.text[l.at:]
	l.at += len(s)
}

// handle does an intent of the text scope; done tells that it was one.
func (l *line) handle(i keys.Intent) (done bool) {
	switch i {
	case keys.CharLeft:
		l.at = l.before()
	case keys.CharRight:
		l.at += len(l.under())
	case keys.LineStart:
		l.at = 0
	case keys.LineEnd:
		l.at = len(l.text)
	case keys.Rubout:
		b := l.before()
		l.text, l.at = l.text[:b]+l.text[l.at:], b
	case keys.Delete:
		l.text = l.text[:l.at] + l.text[l.at+len(l.under()):]
	case keys.ClearLine:
		*l = line{}
	default:
		return false
	}
	return true
}

// under is the character at the cursor, with all that combines with it.
func (l *line) under() string {
	if l.at >= len(l.text) {
		return ""
	}
	c, _ := ansi.FirstGraphemeCluster(l.text[l.at:], ansi.GraphemeWidth)
	return c
}

// before is where the character before the cursor starts.
func (l *line) before() int {
	last := 0
	for i := 0; i < l.at; {
		c, _ := ansi.FirstGraphemeCluster(l.text[i:], ansi.GraphemeWidth)
		last = i
		i += max(len(c), 1)
	}
	return last
}

// column is the cursor's column.
func (l *line) column() int { return grid.Width(l.text[:l.at]) }
