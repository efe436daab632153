// Package overlay is what stands over the rest of the screen: a list to choose from, narrowed by
// what is typed, and a text to scroll.
package overlay

import (
	"strings"

	"trivet/tui/keys"
	"trivet/tui/text"
)

// List is where a list to choose from stands: the text that narrows it, and the row picked among
// those that show.
type List struct {
	text.Line
	Pick int
}

// Narrowed gives what has every word that is typed in what is said of it; capitals count for
// nothing.
func Narrowed[T any](l List, all []T, says func(T) string) (list []T) {
	words := strings.Fields(strings.ToLower(l.Text))
rows:
	for _, x := range all {
		in := strings.ToLower(says(x))
		for _, w := range words {
			if !strings.Contains(in, w) {
				continue rows
			}
		}
		list = append(list, x)
	}
	return list
}

// Typed adds to what narrows the list.
func (l List) Typed(chars string) List {
	l.Insert(chars)
	l.Pick = 0
	return l
}

// Do moves in a list of n rows, some of which are a page, or edits what narrows it.
func (l List) Do(i keys.Intent, n, page int) (_ List, ok bool) {
	switch i {
	case keys.Up, keys.PickUp, keys.CommitUp:
		l.Pick--
	case keys.Down, keys.PickDown, keys.CommitDown:
		l.Pick++
	case keys.PageUp:
		l.Pick -= page
	case keys.PageDown:
		l.Pick += page
	case keys.First:
		l.Pick = 0
	case keys.Last:
		l.Pick = n - 1
	default:
		was := l.Text
		if !l.Handle(i) {
			return l, false
		}
		if l.Text != was {
			l.Pick = 0
		}
		return l, true
	}
	l.Pick = max(min(l.Pick, n-1), 0)
	return l, true
}
