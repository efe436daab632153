package overlay

import (
	"strings"
	"sync"

	"trivet/mechanics/say"
	"trivet/tui/keys"
	"trivet/tui/theme"
)

// commands are the bindings that do what a command does, those of the cells first.
var commands = sync.OnceValue(func() (list []keys.Binding) {
	seen := map[keys.Intent]keys.Scope{keys.Commands: keys.Scopes}
	for _, s := range []keys.Scope{keys.Cells, keys.Workbench, keys.Always, keys.Result, keys.Picture, keys.Board} {
		for _, b := range keys.Table() {
			if at, ok := seen[b.Intent]; b.Scope == s && (!ok || at == s) {
				seen[b.Intent] = s
				list = append(list, b)
			}
		}
	}
	return list
})

// Commands gives the bindings with all the words that are typed, in what they do,
// where, or their keys.
func Commands(of List) []keys.Binding {
	return Narrowed(of, commands(), func(b keys.Binding) string {
		return b.Help + " " + b.Scope.String() + " " + strings.Join(b.Keys, " ")
	})
}

// ListedCommands are the commands as they show.
func ListedCommands(of List) Shown {
	list := Commands(of)
	s := Shown{
		List: of, Title: " " + say.Count(len(list), "command") + ": type to narrow ",
		Intro: "commands, type to narrow; ", None: "no command matches", Rows: make([]Row, 0, len(list)),
		Columns: []Column{{At: 1, Width: 14, Look: theme.Key}, {At: 16, Look: theme.Plain, Picks: true}},
	}
	for _, b := range list {
		says := b.Help
		if b.Scope > keys.Cells {
			says = strings.ToLower(b.Scope.String()) + ": " + says
		}
		s.Rows = append(s.Rows, Row{Cells: []string{b.Keys[0], says}, Says: b.Help + "; key " + b.Keys[0]})
	}
	return s
}

// none is the pick of a list that has none.
const none = -1

// Offered are the keys of a scope, each with what it does: one is pressed, none is picked.
func Offered(title string, of keys.Scope) Shown {
	s := Shown{
		List: List{Pick: none}, Title: " " + title + " ",
		Columns: []Column{{At: 2, Width: 4, Look: theme.Key}, {At: 7, Look: theme.Plain}},
	}
	for _, b := range keys.Table() {
		if b.Scope == of {
			s.Rows = append(s.Rows, Row{Cells: []string{b.Keys[0], b.Help}, Says: b.Keys[0] + " " + b.Help})
		}
	}
	return s
}
