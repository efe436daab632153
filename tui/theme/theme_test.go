package theme

import "testing"

func TestNarrow(t *testing.T) {
	for _, c := range []struct {
		env  []string
		want bool
	}{
		{nil, false},
		{[]string{"TERM=linux", "LANG=en_GB.UTF-8"}, true},
		{[]string{"TERM=xterm-256color", "LANG=C"}, true},
		{[]string{"TERM=xterm-256color", "LANG=C.UTF-8"}, false},
		{[]string{"LANG=C", "LC_ALL=de_DE.utf8"}, false},
		{[]string{"LC_ALL=", "LANG=C"}, true},
	} {
		if got := Narrow(c.env); got != c.want {
			t.Errorf("%v: %v", c.env, got)
		}
	}
}

func TestEveryRoleButPlainHasALook(t *testing.T) {
	th := New(false)
	for i, s := range th.Styles {
		if (s.Prefix == "") != (i == int(Plain)) {
			t.Errorf("role %d is %q", i, s.Prefix)
		}
	}
	g := New(true).Glyphs
	for _, r := range []rune{g.Rule, g.RuleFocus, g.Wall, g.Row, g.More} {
		if r >= 0x80 {
			t.Errorf("%q is not ASCII", r)
		}
	}
}
