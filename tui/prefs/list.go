package prefs

import (
	"fmt"

	"trivet/tui/keys"
	"trivet/tui/overlay"
	"trivet/tui/settings"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// List is the list of settings. It is replaced, never changed.
type List struct {
	overlay.List
	Typing *text.Line // the value being typed; nil while one is chosen
}

// Name is that of the setting picked.
func (l List) Name() string { return settings.Keys()[l.Pick].Name }

// Do does an intent of the list, or of a value being typed; next is nil where it is left.
func (l List) Do(i keys.Intent, p *Prefs) (next *List, out Said, ok bool) {
	name, now, rows := l.Name(), p.Now(), len(settings.Keys())
	if l.Typing != nil {
		switch i {
		case keys.Cancel:
			l.Typing = nil
		case keys.Commit, keys.CommitUp, keys.CommitDown:
			if out, ok = p.Change(name, l.Typing.Text); !ok {
				return &l, out, true // it stays as it is typed
			}
			l.Typing = nil
			l.List, _ = l.List.Do(i, rows, 1)
		default:
			line := *l.Typing
			if !line.Handle(i) {
				return &l, out, false
			}
			l.Typing = &line
		}
		return &l, out, true
	}
	switch i {
	case keys.Edit:
		line := text.NewLine(now.Get(name))
		l.Typing = &line
	case keys.Cancel:
		return nil, out, true
	case keys.Left:
		out, _ = p.Change(name, now.Beside(name, -1))
	case keys.Right:
		out, _ = p.Change(name, now.Beside(name, 1))
	case keys.ClearCell:
		out, _ = p.Change(name, settings.Defaults().Get(name))
	default:
		l.List, ok = l.List.Do(i, rows, 1)
		return &l, out, ok
	}
	return &l, out, true
}

// Typed takes characters into the value, in place of the one that is there.
func (l List) Typed(chars string) *List {
	line := text.Line{}
	if l.Typing != nil {
		line = *l.Typing
	}
	line.Insert(chars)
	l.Typing = &line
	return &l
}

// Shown is a setting's value as it is listed.
func (p Prefs) Shown(name string) string {
	if text := p.Now().Get(name); text != "" {
		return text
	}
	return "usual"
}

// Listed are the settings as they show.
func (l List) Listed(p Prefs) overlay.Shown {
	kept := "for this session"
	if p.keep != nil {
		kept = "kept in " + p.where
	}
	s := overlay.Shown{
		List: l.List, Title: " Settings, " + kept + " ", Intro: "settings, " + kept + "; left and right change one; ",
		Columns: []overlay.Column{{At: 1, Width: 13, Look: theme.Name}, {At: 15, Width: 8, Look: theme.Plain, Picks: true}, {At: 25, Look: theme.Plain}},
	}
	for _, k := range settings.Keys() {
		value := p.Shown(k.Name)
		s.Rows = append(s.Rows, overlay.Row{Cells: []string{k.Name, value, k.Says}, Says: fmt.Sprintf("%s is %s; %s", k.Name, value, k.Says)})
	}
	return s
}

// Line shows the setting picked in full.
func (l List) Line(p Prefs) []text.Span {
	k := settings.Keys()[l.Pick]
	return []text.Span{{Text: k.Name + ": ", Look: theme.Name}, {Text: p.Shown(k.Name)}, {Text: "   " + k.Says, Look: theme.Dim}}
}
