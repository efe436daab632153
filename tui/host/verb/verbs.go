// Package verb reads the commands of a visitor without a terminal; none of them can name a file.
package verb

import (
	"slices"
	"strings"

	"github.com/anmitsu/go-shlex"

	"trivet/mechanics/say"
	"trivet/tui/host/door"
)

// Verb is a verb of the command line that a visitor without a terminal may
// use: from standard input to standard output, with options that name no file.
type Verb struct {
	Name    string
	Example string
	Values  []string // options with a value behind them
	Flags   []string
	Word    bool     // one word besides, which names no file
	Alone   bool     // reads no sheet
	NoInput bool     // takes no standard input either
	Adds    []string // what the command line wants said besides
}

// All are the verbs of the command line, but for those that keep files
// (vary, mark) or are no commands of one who has come (host, completion).
var All = []Verb{
	{Name: "solve", Example: "solve - < sheet.toml", Values: []string{"--format", "--ask"}, Flags: []string{"--working"}},
	{Name: "check", Example: "check - < sheet.toml"},
	{Name: "sweep", Example: "sweep - W < sheet.toml", Values: []string{"--from", "--to", "--steps", "--format"}, Word: true},
	{Name: "page", Example: "page - --as pdf < sheet.toml > sheet.pdf", Values: []string{"--as", "--by", "--date"}, Flags: []string{"--field", "--task"}, Adds: []string{"--output=-"}},
	{Name: "new", Example: "new - --from blank > sheet.toml", Values: []string{"--from"}, Alone: true},
	{Name: "schema", Example: "schema > sheet.schema.json", NoInput: true},
}

// Help lists the verbs with an example of each.
func Help(verbs []Verb) string {
	var b strings.Builder
	b.WriteString("without a terminal there are " + verbNames(verbs) + ", from standard input to standard output:\n\n")
	for _, v := range verbs {
		b.WriteString("  ssh HOST " + v.Example + "\n")
	}
	return b.String()
}

func verbNames(verbs []Verb) string {
	var all []string
	for _, v := range verbs {
		if !slices.Contains(all, v.Name) {
			all = append(all, v.Name)
		}
	}
	return say.And(all...)
}

// options are those of a verb, for people.
func (v Verb) options() string {
	all := append(slices.Clone(v.Values), v.Flags...)
	if len(all) == 0 {
		return "none; " + v.Name + " has no options"
	}
	return say.Or(all...)
}

// Split splits a command into its words.
func Split(text string) (words []string, why string) {
	words, err := shlex.Split(text, true)
	if err != nil {
		return nil, "a quote in the command is not closed"
	}
	return words, ""
}

// Parse reads a command: one of the verbs, standard input, and options that name no
// file. needs tells whether there is a sheet to read.
func Parse(words []string, verbs []Verb) (args []string, needs bool, why string) {
	i := -1
	if len(words) > 0 { // the last of a name is the one on standard input
		for k, v := range verbs {
			if v.Name == words[0] {
				i = k
			}
		}
	}
	if i < 0 {
		return nil, false, "the verbs here are " + verbNames(verbs) + ". Try: `" + verbs[0].Example + "`"
	}
	v := verbs[i]
	args, why = v.Arguments(words[1:])
	if why != "" {
		return nil, false, why
	}
	return append(append([]string{v.Name}, args...), v.Adds...), !v.Alone && !v.NoInput, ""
}

// Arguments are those of the verb behind its name, or why they are not taken.
func (v Verb) Arguments(words []string) (args []string, why string) {
	input, word := false, false
	for i := 0; i < len(words); i++ {
		w := words[i]
		name, _, whole := strings.Cut(w, "=")
		switch {
		case w == "-":
			if input {
				return nil, "there is only one standard input. Try: - once"
			}
			input = true
		case slices.Contains(v.Values, name):
			if !whole {
				if i++; i == len(words) {
					return nil, w + " needs a value"
				}
				w += "=" + words[i] // else a value with a stroke would be an option
			}
		case slices.Contains(v.Flags, w):
		case strings.HasPrefix(w, "-"):
			return nil, "unknown option " + door.Echo(w) + ". Try: " + v.options()
		case v.Word && !word && !strings.ContainsAny(w, `/\`):
			word = true
		case v.NoInput:
			return nil, v.Name + " takes no argument " + door.Echo(w) + ". Try: `" + v.Example + "`"
		case v.Alone:
			return nil, "a sheet goes to standard output only. Try: `" + v.Example + "` instead of " + door.Echo(w)
		default:
			return nil, "sheets are read from standard input only. Try: `" + v.Example + "` instead of " + door.Echo(w)
		}
		args = append(args, w)
	}
	switch {
	case v.NoInput && input:
		return nil, v.Name + " reads no standard input. Try: leave out -"
	case v.NoInput && v.Word && !word:
		return nil, "the name of a problem is missing. Try: `" + v.Example + "`"
	case !v.NoInput && !input:
		return nil, "sheets are read from standard input only. Try: `" + v.Example + "`"
	case v.Word && !word:
		return nil, "the given that runs through its range is missing. Try: `" + v.Example + "`"
	}
	return args, ""
}
