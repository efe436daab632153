package text

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
	"trivet/tui/keys"
)

// Line is one line of text being typed, with a cursor in bytes.
type Line struct {
	Text string
	At   int
}

// longest is more than any cell needs, and keeps a wrong paste from filling the
// memory.
const longest = 4096

func NewLine(text string) Line { return Line{text, len(text)} }

// Insert puts text at the cursor. Line ends become blanks, other controls go.
func (l *Line) Insert(s string) {
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			return ' '
		case unicode.IsControl(r) || r == utf8.RuneError:
			return -1
		}
		return r
	}, s)
	if len(l.Text)+len(s) > longest {
		return
	}
	l.Text = l.Text[:l.At] + s + l.Text[l.At:]
	l.At += len(s)
}

// Handle does an intent of the text scope; done tells that it was one.
func (l *Line) Handle(i keys.Intent) (done bool) {
	switch i {
	case keys.CharLeft:
		l.At = l.before()
	case keys.CharRight:
		l.At += len(l.under())
	case keys.LineStart:
		l.At = 0
	case keys.LineEnd:
		l.At = len(l.Text)
	case keys.Rubout:
		b := l.before()
		l.Text, l.At = l.Text[:b]+l.Text[l.At:], b
	case keys.Delete:
		l.Text = l.Text[:l.At] + l.Text[l.At+len(l.under()):]
	case keys.ClearLine:
		*l = Line{}
	default:
		return false
	}
	return true
}

// under is the character at the cursor, with all that combines with it.
func (l *Line) under() string {
	if l.At >= len(l.Text) {
		return ""
	}
	c, _ := ansi.FirstGraphemeCluster(l.Text[l.At:], ansi.GraphemeWidth)
	return c
}

// before is where the character before the cursor starts.
func (l *Line) before() int {
	last := 0
	for i := 0; i < l.At; {
		c, _ := ansi.FirstGraphemeCluster(l.Text[i:], ansi.GraphemeWidth)
		last = i
		i += max(len(c), 1)
	}
	return last
}

// Column is the cursor's column.
func (l *Line) Column() int { return grid.Width(l.Text[:l.At]) }
