package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// What a sheet may hold. A problem stays far below most of these; they keep a
// wrong file from costing time or memory. The largest that is worked out within
// a keystroke or two is a truss of 3,000 bars: 1,500 joints, each with a load,
// make 6,000 rows of 19,500 entries.
const (
	MaxBytes  = 1 << 20  // bytes of the text
	maxDepth  = 8        // arrays and tables within each other, and parts of a dotted name
	maxRows   = 6 << 10  // rows in all tables together
	maxValues = 20 << 10 // entries of any kind; the check for names used twice takes time as its square
	maxCells  = 256      // cells of one row
	maxCell   = 4096     // bytes of a cell's text
	maxTop    = 64 << 10 // bytes of a text before the first header, such as the statement
)

// checkText refuses what is not text before anything reads it as TOML.
func checkText(text string) *diag.Error {
	switch {
	case len(text) > MaxBytes:
		return placed("", errorIn(0, "the sheet is larger than 1 MiB", "check that this is the intended file"))
	case strings.HasPrefix(text, "\xff\xfe"), strings.HasPrefix(text, "\xfe\xff"):
		return placed("", errorIn(0, "the text is in UTF-16", "save it as UTF-8"))
	}
	for i, r := range text {
		switch {
		case r == utf8.RuneError && !strings.HasPrefix(text[i:], string(r)): // the character itself may stand there
			return placed(text, errorIn(i, fmt.Sprintf("byte 0x%02x is not text in UTF-8", text[i]), "save the file as UTF-8"))
		case r == '\r' && !strings.HasPrefix(text[i+1:], "\n"):
			return placed(text, errorIn(i, "a carriage return must be followed by a line feed", "end each line with LF or with CR LF"))
		case r < ' ' && r != '\t' && r != '\n' && r != '\r', r == 0x7f:
			return placed(text, errorIn(i, fmt.Sprintf("the control character 0x%02x is not allowed", r), "remove it"))
		}
	}
	return nil
}

// tooDeep gives the offset of the first bracket that opens more than maxDepth
// arrays and tables within each other, or -1. It looks before the parser does,
// which recurses.
func tooDeep(text string) int {
	depth := 0
	for i := 0; i < len(text); {
		switch text[i] {
		case '#':
			i = lineEnd(text, i)
			continue
		case '"', '\'':
			i = stringEnd(text, i)
			continue
		case '[', '{':
			if depth++; depth > maxDepth {
				return i
			}
		case ']', '}':
			depth = max(0, depth-1)
		}
		i++
	}
	return -1
}

// lineEnd is the offset of the line feed that ends the line of offset i, or
// the end of the text.
func lineEnd(text string, i int) int {
	if n := strings.IndexByte(text[i:], '\n'); n >= 0 {
		return i + n
	}
	return len(text)
}

// lineStart is the offset at which the line of offset i begins.
func lineStart(text string, i int) int {
	start := strings.LastIndexByte(text[:i], '\n') + 1
	if start == 0 && strings.HasPrefix(text, bom) {
		return min(i, len(bom))
	}
	return start
}

// stringEnd is the offset after the string that opens at i. A string left open
// ends with its line, or with the text where it may span lines.
func stringEnd(text string, i int) int {
	quote := text[i : i+1]
	if strings.HasPrefix(text[i:], strings.Repeat(quote, 3)) {
		quote = strings.Repeat(quote, 3)
	}
	for i += len(quote); i < len(text); {
		switch {
		case text[i] == '\\' && quote[0] == '"':
			i += 2
		case text[i] == '\n' && len(quote) == 1:
			return i
		case strings.HasPrefix(text[i:], quote):
			i += len(quote)
			for len(quote) == 3 && i < len(text) && text[i] == quote[0] {
				i++ // quotes that belong to the text stand before the closing ones
			}
			return i
		default:
			i++
		}
	}
	return len(text)
}

// skipBlank moves over spaces, tabs, line ends and comments.
func skipBlank(text string, i int) int {
	for i = skip(text, i, " \t\r\n"); i < len(text) && text[i] == '#'; i = skip(text, i, " \t\r\n") {
		i = lineEnd(text, i)
	}
	return i
}

// skip moves over the characters of a set.
func skip(text string, i int, set string) int {
	i = min(i, len(text))
	return len(text) - len(strings.TrimLeft(text[i:], set))
}
