package theme

import (
	"strings"
	"testing"
)

func TestSchemesDifferInColourAlone(t *testing.T) {
	for _, c := range []struct {
		scheme Scheme
		want   string // before a force
	}{{Palette, "31"}, {Light, "38;5;124"}, {Dark, "38;5;210"}, {Bare, ""}} {
		got := Of(Unicode, c.scheme)
		if p := got.Styles[Force].Prefix; c.want == "" && p != "" || !strings.Contains(p, c.want) {
			t.Errorf("scheme %d draws a force with %q, want %q", c.scheme, p, c.want)
		}
		for role, s := range got.Styles {
			if c.scheme == Bare && strings.Contains(s.Prefix, "38;") {
				t.Errorf("role %d has a colour in the plain scheme: %q", role, s.Prefix)
			}
		}
		// A look never carries a meaning by colour alone.
		if got.Glyphs != New(Unicode).Glyphs || got.Styles[Selected] != New(Unicode).Styles[Selected] {
			t.Errorf("scheme %d differs in more than colour", c.scheme)
		}
	}
}
