package sheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// saying is what messages of the TOML library are in the words of a sheet.
type saying struct {
	ours, hint string
	theirs     []string // parts of their messages
}

// sayings is searched from the top for a message with one of theirs in it.
var sayings = []saying{
	{"an = is missing after the name", `name = "value"`, []string{"expected '=' after key"}},
	{"the value is missing", `name = "value"`, []string{"expected value, not end of input"}},
	{"this value is not in quotes", `"..."`, []string{"expected keyword", "strings must be quoted", "at start of value"}},
	{"there are too many quotes at the end of this text", "three", []string{"too many quotes"}},
	{"the closing ''' is missing", "end the text with '''", []string{"multiline literal string not terminated"}},
	{`the closing """ is missing`, `end the text with """`, []string{"multiline basic string not terminated"}},
	{"the closing quote is missing", "end the value with '", []string{"unterminated literal string"}},
	{"the closing quote is missing", `end the value with "`, []string{"unterminated basic string"}},
	{"the closing quote is missing", "end the value with ' on its line", []string{"literal strings cannot have new lines"}},
	{"the closing quote is missing", `end the value with " on its line`, []string{"basic strings cannot have new lines"}},
	{"unknown escape sequence", `\\ for a backslash, or the value in '...'`, []string{"invalid escape character", "need a character after"}},
	{"this escape sequence is not a character", `four hexadecimal digits after \u`, []string{"unicode", "code point"}},
	{"the ] of the header is missing", "[name]", []string{"expected ']' to close"}},
	{"the ]] of the header is missing", "[[name]]", []string{"expected ']]' to close"}},
	{"the ] of the list is missing", "close it with ]", []string{"array is incomplete"}},
	{"a comma is missing in the list", "commas between its values", []string{"expected ',' or ']'"}},
	{"the } is missing", "close the row with }", []string{"inline table is incomplete"}},
	{"a comma is missing between two cells", `{ at = "...", on = "..." }`, []string{"expected ',' or '}'"}},
	{"there is one comma too many", "remove it", []string{"unexpected comma", "expected value but got"}},
	{"the name is missing", `name = "value"`, []string{"expected key but reached end"}},
	{"digits are missing beside the underscore", "digits on both sides of it, or the value in quotes", []string{"underscores"}},
	{"a number cannot start with 0", "remove the zero, or put the value in quotes", []string{"leading zeroes"}},
	{"digits are missing after the decimal point", "add one, or put the value in quotes", []string{"decimal point must be followed"}},
	{"digits are missing in the exponent", "add one, or put the value in quotes", []string{"exponent must"}},
	{"the number after the sign is missing", "add it, or put the value in quotes", []string{"expected number after sign"}},
	{"this is not a number", "put the value in quotes", []string{"radix prefix", "expected digit but got"}},
	{"this number is too large", "put the value in quotes", []string{"too large to fit", "unable to parse float"}},
	{"this name has a value already, so it cannot be a table", "rename one of them", []string{"already exists as a value", "should be a table"}},
	{"this table already has entries with dotted names", "put its entries in one place", []string{"as defined by a dotted key"}},
	{"this table occurs twice", "put the rows of both under one header", []string{"already exists"}},
	{"this is not a date", "put the value in quotes", []string{"date"}},
	{"this is not a time of day", "put the value in quotes", []string{"hour", "minutes", "seconds", "times are expected", "local time"}},
	{tooDeep.Msg, tooDeep.Hint, []string{"nested more than"}},
}

// tooDeep is said of arrays and tables within each other.
var tooDeep = diag.New(fmt.Sprintf("arrays and tables are nested more than %d deep", maxDepth), "fewer levels; a problem needs two")

// inWords turns a message of the TOML library into ours.
func inWords(text string, at int, theirs string) *diag.Error {
	theirs = strings.TrimPrefix(theirs, "toml: ")
	after := (text + "\n")[min(at, len(text)):]
	here, width := utf8.DecodeRuneInString(after)
	switch name, twice := strings.CutSuffix(theirs, " is already defined"); {
	case here == utf8.RuneError && width == 1:
		return errorIn(at, fmt.Sprintf("byte 0x%02x is not text in UTF-8", after[0]), "save the file as UTF-8")
	case here == '\r' && !strings.HasPrefix(after, "\r\n"):
		return errorIn(at, "a carriage return must be followed by a line feed", "end each line with LF or with CR LF")
	case here == '\x7f', here < ' ' && !strings.ContainsRune("\t\r\n", here):
		return errorIn(at, fmt.Sprintf("the control character 0x%02x is not allowed", here), "remove it")
	case strings.Contains(theirs, "expected newline"):
		return errorIn(at, fmt.Sprintf("unexpected %q after the value", here), "the whole value in quotes, or a new line")
	case strings.Contains(theirs, "start of key") && here == ']':
		return errorIn(at, "the name is missing", "[name]")
	case strings.Contains(theirs, "start of key") && strings.ContainsRune("=\r\n", here):
		return errorIn(at, "the name is missing", `name = "value"`)
	case strings.Contains(theirs, "start of key"):
		return errorIn(at, fmt.Sprintf("a name cannot start with %q", here), "put the name in quotes")
	case strings.Contains(theirs, "at start of value") && strings.ContainsRune("\r\n#", here):
		return errorIn(at, "the value is missing", `name = "value"`)
	case twice:
		return errorIn(at, fmt.Sprintf("the name %q is used twice", strings.TrimPrefix(name, "key ")), "rename one of them")
	}
	for _, w := range sayings {
		if slices.ContainsFunc(w.theirs, func(part string) bool { return strings.Contains(theirs, part) }) {
			return errorIn(at, w.ours, w.hint)
		}
	}
	return errorIn(at, fmt.Sprintf("this is not valid TOML: %s", theirs), "")
}
