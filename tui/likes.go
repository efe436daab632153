package tui

import (
	"fmt"

	"trivet/tui/settings"
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
