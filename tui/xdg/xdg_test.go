package xdg

import (
	"errors"
	"testing"
)

func TestFolders(t *testing.T) {
	for _, c := range []struct {
		env           []string
		state, config string
	}{
		{[]string{"HOME=/home/a"}, "/home/a/.local/state/trivet", "/home/a/.config/trivet"},
		{[]string{"HOME=/home/a", "XDG_STATE_HOME=/s", "XDG_CONFIG_HOME=/c"}, "/s/trivet", "/c/trivet"},
		{[]string{"HOME=/home/a", "XDG_STATE_HOME=s", "XDG_CONFIG_HOME="}, "/home/a/.local/state/trivet", "/home/a/.config/trivet"},
		{[]string{"HOME=/home/a", "HOME=/home/b"}, "/home/b/.local/state/trivet", "/home/b/.config/trivet"},
		{[]string{"XDG_STATE_HOME=/s"}, "/s/trivet", ""},
		{[]string{"HOME", "HOME=x"}, "", ""},
		{nil, "", ""},
	} {
		state, err1 := State(c.env)
		config, err2 := Config(c.env)
		if state != c.state || config != c.config {
			t.Errorf("%v: %q %q, want %q %q", c.env, state, config, c.state, c.config)
		}
		if (c.state == "") != errors.Is(err1, ErrNowhere) || (c.config == "") != errors.Is(err2, ErrNowhere) {
			t.Errorf("%v: %v %v", c.env, err1, err2)
		}
	}
}

func TestData(t *testing.T) {
	for want, env := range map[string][]string{"/home/a/.local/share/trivet": {"HOME=/home/a"}, "/d/trivet": {"HOME=/home/a", "XDG_DATA_HOME=/d"}} {
		if got, err := Data(env); got != want || err != nil {
			t.Errorf("%v: %q (%v), want %q", env, got, err, want)
		}
	}
}

func TestUser(t *testing.T) {
	for want, env := range map[string][]string{"ada": {"USER=ada", "LOGNAME=x"}, "ben": {"USER=", "LOGNAME=ben"}, "cy": {"USERNAME=cy"}, "": {"HOME=/home/a"}} {
		if got := User(env); got != want {
			t.Errorf("%v: %q, want %q", env, got, want)
		}
	}
}

func TestShort(t *testing.T) {
	for _, c := range []struct{ home, path, want string }{
		{"HOME=/home/a", "/home/a/.config/trivet", "~/.config/trivet"},
		{"HOME=/home/a/", "/home/a/x", "~/x"},
		{"HOME=/home/a", "/home/ab/x", "/home/ab/x"},
		{"HOME=", "/x", "/x"},
		{"", "/x", "/x"},
	} {
		if got := Short([]string{c.home}, c.path); got != c.want {
			t.Errorf("%s below %s is %s, want %s", c.path, c.home, got, c.want)
		}
	}
}
