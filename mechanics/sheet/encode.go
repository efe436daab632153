package sheet

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/printable"
)

var (
	integerText = regexp.MustCompile(`^[+-]?(0|[1-9](_?[0-9])*)$`)
	floatText   = regexp.MustCompile(`^[+-]?(0|[1-9](_?[0-9])*)(\.[0-9](_?[0-9])*)?([eE][+-]?[0-9](_?[0-9])*)?$`)
	bareName    = regexp.MustCompile(`^[A-Za-z0-9_-]+$`)
)

// isNumber reports whether text can stand in TOML without quotes.
func isNumber(text string) bool {
	plain := strings.ReplaceAll(text, "_", "")
	if integerText.MatchString(text) {
		_, err := strconv.ParseInt(plain, 10, 64)
		return err == nil
	}
	_, err := strconv.ParseFloat(plain, 64)
	return floatText.MatchString(text) && err == nil
}

// encode writes a cell's text as a TOML value, in the style of the value it
// takes the place of; old is "" for a new one.
func encode(text, old string) string {
	switch {
	case strings.HasPrefix(old, `"""`):
		return multiBasic(text, old)
	case strings.HasPrefix(old, "'''"):
		if isMultiLiteral(text) {
			return "'''" + lead(text, old) + text + "'''"
		}
		return multiBasic(text, old)
	case strings.HasPrefix(old, "'"):
		if isLiteral(text) {
			return "'" + text + "'"
		}
	case old == "true", old == "false":
		if text == "true" || text == "false" {
			return text
		}
	case old != "" && old[0] != '"':
		if isNumber(text) {
			return text
		}
	}
	if strings.ContainsAny(text, `"\`) && isLiteral(text) {
		return "'" + text + "'"
	}
	return basic(text)
}

// isLiteral reports whether '...' can hold text.
func isLiteral(text string) bool {
	return !strings.ContainsFunc(text, func(r rune) bool { return r == '\'' || r != '\t' && isEscaped(r) })
}

func isMultiLiteral(text string) bool {
	flat := strings.NewReplacer("\r\n", "", "\n", "", "'", "").Replace(text)
	return isLiteral(flat) && !strings.Contains(text, "'''") && !strings.HasSuffix(text, "'")
}

// isEscaped reports what is written as an escape wherever it can be: what TOML asks
// for, and every other character that acts on a terminal instead of showing.
func isEscaped(r rune) bool { return printable.Acts(r) }

// basic writes text in double quotes.
func basic(text string) string {
	return `"` + escaping(text, func(r rune, _ string) bool { return r != '"' && r != '\\' && !isEscaped(r) }) + `"`
}

// escaping writes an escape for each character that may not stand before the rest of a text.
func escaping(text string, stands func(r rune, rest string) bool) string {
	var sb strings.Builder
	for i, r := range text {
		_, n := utf8.DecodeRuneInString(text[i:])
		if stands(r, text[i+n:]) {
			sb.WriteRune(r)
		} else {
			sb.WriteString(escaped(r))
		}
	}
	return sb.String()
}

// multiBasic writes text between triple double quotes. A quote is escaped
// where the next one, or the closing ones, would join it.
func multiBasic(text, old string) string {
	inner := escaping(text, func(r rune, rest string) bool {
		switch r {
		case '\n', '\t':
			return true
		case '\r':
			return strings.HasPrefix(rest, "\n")
		case '"':
			return rest != "" && rest[0] != '"'
		}
		return r != '\\' && !isEscaped(r)
	})
	return `"""` + lead(text, old) + inner + `"""`
}

// lead is the line end after the opening triple quotes, which is not part of
// the text: as before, and where the text itself begins with one.
func lead(text, old string) string {
	if n := opening(old); n > 3 {
		return old[3:n]
	}
	if strings.HasPrefix(text, "\n") || strings.HasPrefix(text, "\r\n") {
		return "\n"
	}
	return ""
}

func escaped(r rune) string {
	switch r {
	case '"', '\\':
		return `\` + string(r)
	case '\n':
		return `\n`
	case '\r':
		return `\r`
	case '\t':
		return `\t`
	}
	return fmt.Sprintf(`\u%04X`, r)
}

// encodeName writes a name as a key.
func encodeName(name string) string {
	if bareName.MatchString(name) {
		return name
	}
	return basic(name)
}
