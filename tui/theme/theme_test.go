package theme

import "testing"

func TestCharacters(t *testing.T) {
	for _, c := range []struct {
		env  []string
		want Set
	}{
		{nil, Unicode},
		{[]string{"TERM=linux", "LANG=en_GB.UTF-8"}, NoDots},
		{[]string{"TERM=linux", "LANG=C"}, Seven},
		{[]string{"TERM=vt100"}, Seven},
		{[]string{"TERM=xterm-256color", "LANG=C"}, Seven},
		{[]string{"TERM=xterm-256color", "LANG=C.UTF-8"}, Unicode},
		{[]string{"LANG=C", "LC_ALL=de_DE.utf8"}, Unicode},
		{[]string{"LC_ALL=", "LANG=C"}, Seven},
	} {
		if got := Characters(c.env); got != c.want {
			t.Errorf("%v: %v, want %v", c.env, got, c.want)
		}
	}
}

func TestEveryRoleButTheTerminalsInkHasALook(t *testing.T) {
	for i, s := range Of(Unicode, Dark, True).Styles {
		ink := i == int(Plain) || i == int(Key) || i == int(Link)
		if (s.Prefix == "") != ink {
			t.Errorf("role %d is %q", i, s.Prefix)
		}
	}
	g := New(NoDots).Glyphs
	for _, r := range []rune{g.Rule, g.Wall, g.Row, g.More} {
		if r >= 0x80 {
			t.Errorf("%q is not ASCII", r)
		}
	}
}
