package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// saying is one message of the TOML library in the words of a sheet.
type saying struct{ theirs, ours, hint string }

// sayings is searched from the top for a message that contains theirs.
var sayings = [...]saying{
	{"expected '=' after key", "an = is missing after the name", `name = "value"`},
	{"expected value, not end of input", "the value is missing", `name = "value"`},
	{"expected keyword", "this value is not in quotes", `"..."`},
	{"strings must be quoted", "this value is not in quotes", `"..."`},
	{"at start of value", "this value is not in quotes", `"..."`},
	{"too many quotes", "there are too many quotes at the end of this text", "three"},
	{"multiline literal string not terminated", "the closing ''' is missing", "end the text with '''"},
	{"multiline basic string not terminated", `the closing """ is missing`, `end the text with """`},
	{"unterminated literal string", "the closing quote is missing", "end the value with '"},
	{"unterminated basic string", "the closing quote is missing", `end the value with "`},
	{"literal strings cannot have new lines", "the closing quote is missing", "end the value with ' on its line"},
	{"basic strings cannot have new lines", "the closing quote is missing", `end the value with " on its line`},
	{"invalid escape character", "unknown escape sequence", `\\ for a backslash, or the value in '...'`},
	{"need a character after", "unknown escape sequence", `\\ for a backslash, or the value in '...'`},
	{"unicode", "this escape sequence is not a character", `four hexadecimal digits after \u`},
	{"code point", "this escape sequence is not a character", `four hexadecimal digits after \u`},
	{"expected ']' to close", "the ] of the header is missing", "[name]"},
	{"expected ']]' to close", "the ]] of the header is missing", "[[name]]"},
	{"array is incomplete", "the ] of the list is missing", "close it with ]"},
	{"expected ',' or ']'", "a comma is missing in the list", "commas between its values"},
	{"inline table is incomplete", "the } is missing", "close the row with }"},
	{"expected ',' or '}'", "a comma is missing between two cells", `{ at = "...", on = "..." }`},
	{"unexpected comma", "there is one comma too many", "remove it"},
	{"expected value but got", "there is one comma too many", "remove it"},
	{"expected key but reached end", "the name is missing", `name = "value"`},
	{"underscores", "digits are missing beside the underscore", "digits on both sides of it, or the value in quotes"},
	{"leading zeroes", "a number cannot start with 0", "remove the zero, or put the value in quotes"},
	{"decimal point must be followed", "digits are missing after the decimal point", "add one, or put the value in quotes"},
	{"exponent must", "digits are missing in the exponent", "add one, or put the value in quotes"},
	{"expected number after sign", "the number after the sign is missing", "add it, or put the value in quotes"},
	{"radix prefix", "this is not a number", "put the value in quotes"},
	{"expected digit but got", "this is not a number", "put the value in quotes"},
	{"too large to fit", "this number is too large", "put the value in quotes"},
	{"unable to parse float", "this number is too large", "put the value in quotes"},
	{"already exists as a value", "this name has a value already, so it cannot be a table", "rename one of them"},
	{"should be a table", "this name has a value already, so it cannot be a table", "rename one of them"},
	{"as defined by a dotted key", "this table already has entries with dotted names", "put its entries in one place"},
	{"already exists", "this table occurs twice", "put the rows of both under one header"},
	{"as an array of tables", "this table is already a list", "rename one of them"},
	{"date", "this is not a date", "put the value in quotes"},
	{"hour", "this is not a time of day", "put the value in quotes"},
	{"minutes", "this is not a time of day", "put the value in quotes"},
	{"seconds", "this is not a time of day", "put the value in quotes"},
	{"times are expected", "this is not a time of day", "put the value in quotes"},
	{"local time", "this is not a time of day", "put the value in quotes"},
}

// inWords turns a message of the TOML library into ours.
func inWords(text string, at int, theirs string) *diag.Error {
	theirs = strings.TrimPrefix(theirs, "toml: ")
	if strings.Contains(theirs, "expected newline") {
		r, _ := utf8.DecodeRuneInString(text[min(at, len(text)):])
		return errorIn(at, fmt.Sprintf("unexpected %q after the value", r), "the whole value in quotes, or a new line")
	}
	if strings.Contains(theirs, "start of key") {
		r, _ := utf8.DecodeRuneInString(text[min(at, len(text)):])
		switch r {
		case ']':
			return errorIn(at, "the name is missing", "[name]")
		case '=', '\n', '\r':
			return errorIn(at, "the name is missing", `name = "value"`)
		}
		return errorIn(at, fmt.Sprintf("a name cannot start with %q", r), "put the name in quotes")
	}
	if strings.Contains(theirs, "at start of value") && strings.ContainsRune("\r\n#", rune((text + "\n")[min(at, len(text))])) {
		return errorIn(at, "the value is missing", `name = "value"`)
	}
	if name, ok := strings.CutPrefix(theirs, "key "); ok && strings.HasSuffix(theirs, " is already defined") {
		return errorIn(at, fmt.Sprintf("the name %q is used twice", strings.TrimSuffix(name, " is already defined")), "rename one of them")
	}
	for _, w := range sayings {
		if strings.Contains(theirs, w.theirs) {
			return errorIn(at, w.ours, w.hint)
		}
	}
	return errorIn(at, fmt.Sprintf("this is not valid TOML: %s", theirs), "")
}
