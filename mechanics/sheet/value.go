package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"

	"trivet/mechanics/printable"
)

var bareName = regexp.MustCompile(`^[A-Za-z0-9_-]+$`)

// EncodeName writes a name as a key.
func EncodeName(name string) string {
	if bareName.MatchString(name) {
		return name
	}
	return `"` + escaped(name, false) + `"`
}

// encode writes a cell's text as a TOML value, in the style of the value it
// takes the place of; old is "" for a new one.
func encode(text, old string) string {
	quote, length := opening(old)
	switch {
	case quote == "" && old != "" && isBare(text):
		return text
	case len(quote) == 3:
		lead := old[3:length]
		if lead == "" && (strings.HasPrefix(text, "\n") || strings.HasPrefix(text, "\r\n")) {
			lead = "\n" // which is not part of the text
		}
		if quote == "'''" && isLiteral(text, true) {
			return quote + lead + text + quote
		}
		return `"""` + lead + escaped(text, true) + `"""`
	case (quote == "'" || strings.ContainsAny(text, `"\`)) && isLiteral(text, false):
		return "'" + text + "'"
	}
	return `"` + escaped(text, false) + `"`
}

// isBare tells whether a text can stand in TOML without quotes: true, false, a decimal number.
func isBare(text string) bool {
	if text == "true" || text == "false" {
		return true
	}
	var v map[string]any
	if strings.Trim(text, "+-0123456789_.eE") != "" || toml.Unmarshal([]byte("x="+text), &v) != nil {
		return false
	}
	switch v["x"].(type) {
	case int64, float64:
		return true
	}
	return false // a date
}

// isLiteral tells whether '...' can hold a text, or of many lines triple quotes.
func isLiteral(text string, lines bool) bool {
	if lines && (strings.Contains(text, "'''") || strings.HasSuffix(text, "'")) {
		return false
	}
	if lines {
		text = strings.NewReplacer("\r\n", "", "\n", "", "'", "").Replace(text)
	}
	return !strings.ContainsFunc(text, func(r rune) bool { return r == '\'' || r != '\t' && printable.Acts(r) })
}

// escapes are the characters with an escape of their own.
var escapes = map[rune]string{'"': `\"`, '\\': `\\`, '\n': `\n`, '\r': `\r`, '\t': `\t`}

// escaped is a text as it stands in double quotes, or of many lines in triple ones: with
// an escape for what TOML asks for, and for every other character that acts on a
// terminal instead of showing. Within triple ones a quote is escaped where the next
// one, or the closing ones, would join it.
func escaped(text string, lines bool) string {
	var sb strings.Builder
	for text != "" {
		r, n := utf8.DecodeRuneInString(text)
		rest := text[n:]
		stands := lines && (r == '\n' || r == '\t' || r == '\r' && strings.HasPrefix(rest, "\n") ||
			r == '"' && rest != "" && rest[0] != '"')
		if own, ok := escapes[r]; ok && !stands {
			sb.WriteString(own)
		} else if !stands && printable.Acts(r) {
			fmt.Fprintf(&sb, `\u%04X`, r)
		} else {
			sb.WriteRune(r)
		}
		text = rest
	}
	return sb.String()
}
