// Package printable says which characters act on a terminal instead of showing,
// and what shows in their place, for every screen, file and message alike.
//
// A sheet comes from anybody: a title, a name or a file's name may hold escape
// sequences that clear a screen or set a window's title, marks that turn the
// direction of writing, so that a text reads as another, and signs that show nothing,
// so that two texts look the same.
package printable

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Stand shows in place of a character that would act.
const Stand = '·'

// Acts tells the characters that act instead of showing: the controls, C0, DEL and
// C1; the marks of writing direction that have Unicode's property Bidi_Control; the
// separators of lines and paragraphs; and what takes no room and shows nothing. Of
// the last, the joiners U+200C and U+200D stay: some scripts are not written without.
// A byte that is no UTF-8 reads as utf8.RuneError and counts among them, since some
// terminals take those from 0x80 to 0x9f for controls.
func Acts(r rune) bool {
	return r < ' ' || r >= 0x7f && r < 0xa0 || r == utf8.RuneError || unicode.Is(unicode.Bidi_Control, r) ||
		r == '\u2028' || r == '\u2029' || r == '\u200b' || r >= '\u2060' && r <= '\u2064' || r == byteOrderMark
}

// byteOrderMark is the mark that a text in UTF-8 may begin with, by which spreadsheets
// know it. Anywhere else it is a space that takes no room.
const byteOrderMark = '\ufeff'

// Line is a text as it shows on one line: a Stand for every character that acts, the
// ends of lines and tabs among them.
func Line(text string) string {
	return strings.Map(func(r rune) rune {
		if Acts(r) {
			return Stand
		}
		return r
	}, text)
}

// Text is a text of several lines as a Writer writes it behind others.
func Text(text string) string {
	var b strings.Builder
	w := Writer{to: &b, begun: true} // what stands in a text is no mark of a file
	_ = w.write([]byte(text), true)  // a text that grows does not fail
	return b.String()
}

// JSON writes every character that acts as its \u escape, so that a text stays what it
// is for the program that reads it. The bytes are those of valid JSON, where such
// characters stand in strings alone; the ends of lines between values stay.
func JSON(text []byte) []byte {
	var b bytes.Buffer
	b.Grow(len(text))
	for _, r := range string(text) {
		if Acts(r) && r != '\n' && r != '\t' && r != '\r' {
			fmt.Fprintf(&b, `\u%04x`, r) // all of them lie below U+10000
		} else {
			b.WriteRune(r)
		}
	}
	return b.Bytes()
}
