// Package prefs is how a person likes the workbench: the settings as they hold in a session, the
// list in which they are changed, and what becomes of a change.
package prefs

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/settings"
	"trivet/tui/theme"
	"trivet/tui/xdg"
)

// Prefs are the settings of a session on its terminal. Without settings of its own a session has
// the defaults, and the colours of no terminal.
type Prefs struct {
	Own   *settings.Settings // nil: the defaults
	Chars theme.Set          // what the terminal has

	keep   Keeper            // nil: they hold for this session alone
	where  string            // the file, for people
	kept   settings.Settings // as they were kept last
	busy   bool              // they are being kept
	depth  theme.Depth       // how many colours
	scheme theme.Scheme      // for its background, once that is known
}

// Keeper writes what differs between two states of the settings.
type Keeper func(was, set settings.Settings) error

// Kept is what became of keeping settings.
type Kept struct {
	set settings.Settings
	err error
}

// Said is what a change says, and the command it needs.
type Said struct {
	Text string
	Bad  bool
	Cmd  tea.Cmd
}

// New gives the settings of a session, nil for the defaults, as its environment has them.
func New(own *settings.Settings, keep Keeper, env []string, ascii bool) Prefs {
	p := Prefs{Own: own, Chars: theme.Characters(env), keep: keep, where: "the file of settings", depth: theme.Colours(env)}
	p.kept = p.Now()
	if path, err := settings.Path(env); err == nil {
		p.where = xdg.Short(env, path)
	}
	if ascii {
		p.Chars = theme.Seven
	}
	return p
}

// Now are the settings as they hold.
func (p Prefs) Now() settings.Settings {
	if p.Own == nil {
		return settings.Defaults()
	}
	return *p.Own
}

// schemes are those that the setting names; auto begins with the terminal's own colours until its
// background is known.
var schemes = map[string]theme.Scheme{"light": theme.Light, "dark": theme.Dark, "plain": theme.Bare}

// Dress gives the looks that the settings and the terminal say, and whether they are others than
// before.
func (p Prefs) Dress(was theme.Theme) (_ theme.Theme, other bool) {
	now, set := p.Now(), p.Chars
	if now.ASCII {
		set = theme.Seven
	}
	colours := schemes[now.Theme]
	if now.Theme == "auto" {
		colours = p.scheme
	}
	if was.Styles != nil && was.Set == set && was.Scheme == colours {
		return was, false
	}
	return theme.Of(set, colours, p.depth), true
}

// AsksBackground tells whether the colours depend on the terminal's background.
func (p Prefs) AsksBackground() bool { return p.Own != nil && p.Own.Theme == "auto" }

// Background takes the terminal's answer to what its background is. Another program's session has
// several terminals, which differ.
func (p *Prefs) Background(dark bool) {
	switch {
	case p.Own == nil:
	case dark:
		p.scheme = theme.Dark
	default:
		p.scheme = theme.Light
	}
}

// Busy tells that settings are being kept.
func (p Prefs) Busy() bool { return p.busy }

// Change changes a setting: at once here, and in the file in a command. What is no
// value is said, and false.
func (p *Prefs) Change(name, text string) (out Said, ok bool) {
	next, wrong := p.Now().With(name, text)
	switch {
	case wrong != nil:
		return Said{Text: wrong.Text(), Bad: true}, false
	case name == "screen" && p.keep == nil:
		return Said{Text: "a session over SSH always uses the full screen"}, true
	}
	p.Own = &next
	if p.keep == nil {
		return Said{Text: "for this session only: settings are not saved here"}, true
	}
	out.Cmd = p.save()
	if name == "screen" {
		out.Text = "the screen changes at the next start"
	}
	if next.Theme == "auto" && p.scheme == theme.Palette {
		out.Cmd = tea.Batch(out.Cmd, tea.RequestBackgroundColor)
	}
	return out, true
}

// save writes changed settings, one state after the other.
func (p *Prefs) save() tea.Cmd {
	was, set, keep := p.kept, p.Now(), p.keep
	if keep == nil || p.busy || was == set {
		return nil
	}
	p.busy = true
	return func() tea.Msg { return Kept{set, keep(was, set)} }
}

// Took says that settings could not be kept; the next change tries again.
func (p *Prefs) Took(msg Kept) (out Said) {
	p.busy = false
	if msg.err != nil {
		out = Said{Text: "for this session only: " + p.where + ": " + msg.err.Error(), Bad: true}
		if p.Now() == msg.set {
			return out
		}
	} else {
		p.kept = msg.set
	}
	out.Cmd = p.save()
	return out
}
