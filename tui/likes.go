package tui

import (
	"fmt"

	"trivet/tui/settings"
	"trivet/tui/theme"
)

// settle reads the person's settings and the sheets opened last. What does not
// read is said once and never stands in the way.
func (opt *Options) settle() {
	likes, problems := settings.Load(opt.Env)
	opt.Settings = &likes
	if len(problems) > 0 {
		opt.Note = problems[0]
		if n := len(problems); n > 1 {
			opt.Note = fmt.Sprintf("1 of %d: %s", n, opt.Note)
		}
	}
	env := opt.Env
	if opt.Keep == nil {
		opt.Keep = func(was, set settings.Settings) error { return settings.Save(env, was, set) }
	}
	if opt.Start && opt.Recent == nil {
		opt.Recent = settings.Recent(env)
	}
	if opt.Opened == nil {
		opt.Opened = func(path string) error { return settings.Opened(env, path) }
	}
}

// scheme is the one that a setting names; auto begins with the terminal's own
// colours until its background is known.
func scheme(name string) theme.Scheme {
	return map[string]theme.Scheme{"light": theme.Light, "dark": theme.Dark, "plain": theme.Bare}[name]
}

// asksBackground tells whether the colours depend on the terminal's background.
func (m Model) asksBackground() bool { return m.likes != nil && m.likes.Theme == "auto" }

// background takes the terminal's answer to what its background is.
func (m *Model) background(dark bool) {
	if m.likes == nil {
		return // another program's session: its terminals differ
	}
	m.liking.scheme = theme.Light
	if dark {
		m.liking.scheme = theme.Dark
	}
	m.dress()
}
