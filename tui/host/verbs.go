package host

import (
	"slices"
	"strings"

	"github.com/anmitsu/go-shlex"

	"trivet/mechanics/say"
	"trivet/tui/host/door"
)

// remoteVerb is a verb of the command line that a visitor without a terminal may
// use: from standard input to standard output, with options that name no file.
type remoteVerb struct {
	name    string
	example string
	values  []string // options with a value behind them
	flags   []string
	word    bool     // one word besides, which names no file
	alone   bool     // reads no sheet
	noInput bool     // takes no standard input either
	adds    []string // what the command line wants said besides
}

// remoteVerbs are the verbs of the command line, but for those that keep files
// (vary, mark) or are no commands of one who has come (host, completion).
var remoteVerbs = []remoteVerb{
	{name: "solve", example: "solve - < sheet.toml", values: []string{"--format", "--ask"}, flags: []string{"--working"}},
	{name: "check", example: "check - < sheet.toml"},
	{name: "sweep", example: "sweep - W < sheet.toml", values: []string{"--from", "--to", "--steps", "--format"}, word: true},
	{name: "page", example: "page - --as pdf < sheet.toml > sheet.pdf", values: []string{"--as", "--by", "--date"}, flags: []string{"--field", "--task"}, adds: []string{"--output=-"}},
	{name: "new", example: "new - --from blank > sheet.toml", values: []string{"--from"}, alone: true},
	{name: "schema", example: "schema > sheet.schema.json", noInput: true},
}

func remoteHelp(verbs []remoteVerb) string {
	var b strings.Builder
	b.WriteString("without a terminal there are " + verbNames(verbs) + ", from standard input to standard output:\n\n")
	for _, v := range verbs {
		b.WriteString("  ssh HOST " + v.example + "\n")
	}
	return b.String()
}

func verbNames(verbs []remoteVerb) string {
	var all []string
	for _, v := range verbs {
		if !slices.Contains(all, v.name) {
			all = append(all, v.name)
		}
	}
	return say.And(all...)
}

// options are those of a verb, for people.
func (v remoteVerb) options() string {
	all := append(slices.Clone(v.values), v.flags...)
	if len(all) == 0 {
		return "none; " + v.name + " has no options"
	}
	return say.Or(all...)
}

// split splits a command into its words.
func split(text string) (words []string, why string) {
	words, err := shlex.Split(text, true)
	if err != nil {
		return nil, "a quote in the command is not closed"
	}
	return words, ""
}

// parsed reads a command: one of the verbs, standard input, and options that name no
// file. needs tells whether there is a sheet to read.
func parsed(words []string, verbs []remoteVerb) (args []string, needs bool, why string) {
	i := -1
	if len(words) > 0 { // the last of a name is the one on standard input
		for k, v := range verbs {
			if v.name == words[0] {
				i = k
			}
		}
	}
	if i < 0 {
		return nil, false, "the verbs here are " + verbNames(verbs) + ". Try: `" + verbs[0].example + "`"
	}
	v := verbs[i]
	args, why = v.arguments(words[1:])
	if why != "" {
		return nil, false, why
	}
	return append(append([]string{v.name}, args...), v.adds...), !v.alone && !v.noInput, ""
}

func (v remoteVerb) arguments(words []string) (args []string, why string) {
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
		case slices.Contains(v.values, name):
			if !whole {
				if i++; i == len(words) {
					return nil, w + " needs a value"
				}
				w += "=" + words[i] // else a value with a stroke would be an option
			}
		case slices.Contains(v.flags, w):
		case strings.HasPrefix(w, "-"):
			return nil, "unknown option " + door.Echo(w) + ". Try: " + v.options()
		case v.word && !word && !strings.ContainsAny(w, `/\`):
			word = true
		case v.noInput:
			return nil, v.name + " takes no argument " + door.Echo(w) + ". Try: `" + v.example + "`"
		case v.alone:
			return nil, "a sheet goes to standard output only. Try: `" + v.example + "` instead of " + door.Echo(w)
		default:
			return nil, "sheets are read from standard input only. Try: `" + v.example + "` instead of " + door.Echo(w)
		}
		args = append(args, w)
	}
	switch {
	case v.noInput && input:
		return nil, v.name + " reads no standard input. Try: leave out -"
	case v.noInput && v.word && !word:
		return nil, "the name of a problem is missing. Try: `" + v.example + "`"
	case !v.noInput && !input:
		return nil, "sheets are read from standard input only. Try: `" + v.example + "`"
	case v.word && !word:
		return nil, "the given that runs through its range is missing. Try: `" + v.example + "`"
	}
	return args, ""
}
