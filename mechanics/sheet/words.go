package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"
)

// saying is one message of the TOML library in the words of a sheet.
type saying struct{ theirs, ours, hint string }

// sayings is searched from the top for a message that contains theirs.
var sayings = [...]saying{
	{"expected '=' after key", "an = is missing after the name", `write it as name = "value"`},
	{"expected value, not end of input", "the value is missing", `write it as name = "value"`},
	{"expected keyword", "this value is not in quotes", `put it in quotes: "..."`},
	{"strings must be quoted", "this value is not in quotes", `put it in quotes: "..."`},
	{"at start of value", "this value is not in quotes", `put it in quotes: "..."`},
	{"too many quotes", "there are too many quotes at the end of this text", "three close it"},
	{"multiline literal string not terminated", "the text is not closed", "close it with '''"},
	{"multiline basic string not terminated", "the text is not closed", `close it with """`},
	{"unterminated literal string", "the closing quote is missing", "end the value with '"},
	{"unterminated basic string", "the closing quote is missing", `end the value with "`},
	{"literal strings cannot have new lines", "the closing quote is missing", "end the value with ' on its line"},
	{"basic strings cannot have new lines", "the closing quote is missing", `end the value with " on its line`},
	{"invalid escape character", "this is no escape", `write \\ for a backslash, or put the value in '...'`},
	{"need a character after", "this is no escape", `write \\ for a backslash, or put the value in '...'`},
	{"unicode", "this escape is no character", `write four hexadecimal digits after \u`},
	{"code point", "this escape is no character", `write four hexadecimal digits after \u`},
	{"expected ']' to close", "the ] of the header is missing", "write it as [name]"},
	{"expected ']]' to close", "the ]] of the header is missing", "write it as [[name]]"},
	{"array is incomplete", "the ] of the list is missing", "close it with ]"},
	{"expected ',' or ']'", "a comma is missing in the list", "put commas between its values"},
	{"inline table is incomplete", "the } is missing", "close the row with }"},
	{"expected ',' or '}'", "a comma is missing between two cells", `write { at = "...", on = "..." }`},
	{"unexpected comma", "there is a comma too many", "take it away"},
	{"expected value but got", "there is a comma too many", "take it away"},
	{"expected key but reached end", "the name is missing", `write it as name = "value"`},
	{"underscores", "this number is not written in full", "put digits on both sides of _, or the value in quotes"},
	{"leading zeroes", "a number cannot start with 0", "take the zero away, or put the value in quotes"},
	{"decimal point must be followed", "digits are missing after the decimal point", "add one, or put the value in quotes"},
	{"exponent must", "digits are missing in the exponent", "add one, or put the value in quotes"},
	{"expected number after sign", "the number after the sign is missing", "add it, or put the value in quotes"},
	{"radix prefix", "this is no number", "put the value in quotes"},
	{"expected digit but got", "this is no number", "put the value in quotes"},
	{"too large to fit", "this number is too large", "put the value in quotes"},
	{"unable to parse float", "this number is too large", "put the value in quotes"},
	{"already exists as a value", "this name has a value already and cannot be a table too", "rename one of them"},
	{"should be a table", "this name has a value already and cannot be a table too", "rename one of them"},
	{"as defined by a dotted key", "this table is written with dotted names already", "put its entries in one place"},
	{"already exists", "this table is there already", "put the rows of both under one header"},
	{"as an array of tables", "this table is a list already", "rename one of them"},
	{"date", "this is no date", "put the value in quotes"},
	{"hour", "this is no time of day", "put the value in quotes"},
	{"minutes", "this is no time of day", "put the value in quotes"},
	{"seconds", "this is no time of day", "put the value in quotes"},
	{"times are expected", "this is no time of day", "put the value in quotes"},
	{"local time", "this is no time of day", "put the value in quotes"},
}

// inWords turns a message of the TOML library into ours.
func inWords(text string, at int, theirs string) *fault {
	theirs = strings.TrimPrefix(theirs, "toml: ")
	if strings.Contains(theirs, "expected newline") {
		r, _ := utf8.DecodeRuneInString(text[min(at, len(text)):])
		return &fault{at, fmt.Sprintf("%q is left over after the value", r), "put the whole value in quotes, or start a new line"}
	}
	if strings.Contains(theirs, "start of key") {
		r, _ := utf8.DecodeRuneInString(text[min(at, len(text)):])
		switch r {
		case ']':
			return &fault{at, "the name is missing", "write it as [name]"}
		case '=', '\n', '\r':
			return &fault{at, "the name is missing", `write it as name = "value"`}
		}
		return &fault{at, fmt.Sprintf("a name cannot start with %q", r), "put the name in quotes"}
	}
	if strings.Contains(theirs, "at start of value") && strings.ContainsRune("\r\n#", rune((text + "\n")[min(at, len(text))])) {
		return &fault{at, "the value is missing", `write it as name = "value"`}
	}
	if name, ok := strings.CutPrefix(theirs, "key "); ok && strings.HasSuffix(theirs, " is already defined") {
		return &fault{at, fmt.Sprintf("the name %q is used twice", strings.TrimSuffix(name, " is already defined")), "rename one of them"}
	}
	for _, w := range sayings {
		if strings.Contains(theirs, w.theirs) {
			return &fault{at, w.ours, w.hint}
		}
	}
	return &fault{at, fmt.Sprintf("this does not read as TOML: %q", theirs), ""}
}
