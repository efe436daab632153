package tui

import (
	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/overlay"
	"trivet/tui/results"
	"trivet/tui/settings"
	"trivet/tui/text"
	"trivet/tui/theme"
)

// setup is the list of settings. It is replaced, never changed.
type setup struct {
	overlay.List
	typing *text.Line // the value being typed; nil while one is chosen
}

// liking is what becomes of changed settings.
type liking struct {
	keep   func(was, set settings.Settings) error // nil: they hold for this session alone
	where  string                                 // the file, for people
	kept   settings.Settings                      // as they were kept last
	busy   bool                                   // they are being kept
	chars  theme.Set                              // what the terminal has
	depth  theme.Depth                            // how many colours
	scheme theme.Scheme                           // for its background, once that is known
}

// likesKept is what became of keeping settings.
type likesKept struct {
	set settings.Settings
	err error
}

// like gives the settings as they hold now.
func (m Model) like() settings.Settings {
	if m.likes == nil {
		return settings.Defaults()
	}
	return *m.likes
}

// dress takes the characters and colours that the settings and the terminal say.
func (m *Model) dress() {
	like, set := m.like(), m.liking.chars
	if like.ASCII {
		set = theme.Seven
	}
	colours := scheme(like.Theme)
	if like.Theme == "auto" {
		colours = m.liking.scheme
	}
	if m.theme.Styles == nil || m.theme.Set != set || m.theme.Scheme != colours {
		m.theme = theme.Of(set, colours, m.liking.depth)
		m.texts = [layout.Panes]results.Pane{}
	}
}

// settingUp does the intents of the list of settings.
func (m *Model) settingUp(i keys.Intent) (cmd tea.Cmd, ok bool) {
	s, like, name := *m.setup, m.like(), m.setup.name()
	switch i {
	case keys.Edit:
		l := text.NewLine(like.Get(name))
		s.typing, ok = &l, true
	case keys.Cancel:
		m.setup = nil
		return nil, true
	case keys.Left:
		cmd, _ = m.set(name, like.Beside(name, -1))
		return cmd, true
	case keys.Right:
		cmd, _ = m.set(name, like.Beside(name, 1))
		return cmd, true
	case keys.ClearCell:
		cmd, _ = m.set(name, settings.Defaults().Get(name))
		return cmd, true
	default:
		s.List, ok = s.Do(i, len(settings.Keys()), 1)
	}
	m.setup = &s
	return nil, ok
}

// name is that of the setting picked.
func (s setup) name() string { return settings.Keys()[s.Pick].Name }

// valuing does the intents of a setting being typed.
func (m *Model) valuing(i keys.Intent) (cmd tea.Cmd, ok bool) {
	s := *m.setup
	switch i {
	case keys.Cancel:
		s.typing = nil
	case keys.Commit, keys.CommitUp, keys.CommitDown:
		if cmd, ok = m.set(s.name(), s.typing.Text); !ok {
			return nil, true // it stays as it is typed; the bottom line says why
		}
		s.typing = nil
		s.List, _ = s.Do(i, len(settings.Keys()), 1)
	default:
		l := *s.typing
		if !l.Handle(i) {
			return nil, false
		}
		s.typing = &l
	}
	m.setup = &s
	return cmd, true
}

// typedSetting takes characters into the value, in place of the one that is there.
func (m *Model) typedSetting(chars string) {
	s := *m.setup
	l := text.Line{}
	if s.typing != nil {
		l = *s.typing
	}
	l.Insert(chars)
	s.typing = &l
	m.setup = &s
}

// set changes a setting: at once here, and in the file in a command. What is no
// value is said, and false.
func (m *Model) set(name, text string) (tea.Cmd, bool) {
	next, wrong := m.like().With(name, text)
	if wrong != nil {
		m.say(wrong.Text(), true)
		return nil, false
	}
	if name == "screen" && m.liking.keep == nil {
		m.say("a session over SSH always uses the full screen", false)
		return nil, true
	}
	m.likes = &next
	m.dress()
	if m.liking.keep == nil {
		m.say("for this session only: settings are not saved here", false)
		return nil, true
	}
	cmd := m.keepLikes()
	if name == "screen" {
		m.say("the screen changes at the next start", false)
	}
	if next.Theme == "auto" && m.liking.scheme == theme.Palette {
		cmd = tea.Batch(cmd, tea.RequestBackgroundColor)
	}
	return cmd, true
}

// keepLikes writes changed settings, one state after the other.
func (m *Model) keepLikes() tea.Cmd {
	was, set, keep := m.liking.kept, m.like(), m.liking.keep
	if keep == nil || m.liking.busy || was == set {
		return nil
	}
	m.liking.busy = true
	return func() tea.Msg { return likesKept{set, keep(was, set)} }
}

// tookLikes says that settings could not be kept; the next change tries again.
func (m *Model) tookLikes(msg likesKept) tea.Cmd {
	m.liking.busy = false
	if msg.err != nil {
		m.say("for this session only: "+m.liking.where+": "+msg.err.Error(), true)
		if m.like() == msg.set {
			return m.gone()
		}
	} else {
		m.liking.kept = msg.set
	}
	if cmd := m.keepLikes(); cmd != nil {
		return cmd
	}
	return m.gone()
}
