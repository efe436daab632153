// Package xdg finds the folders in which a session keeps what is its own, as the
// XDG Base Directory Specification (version 0.8) lays them out. Everything
// comes from the session's environment, since several people may share the
// process.
package xdg

import (
	"errors"
	"path/filepath"
	"strings"
)

// name is the program's own folder in each of them.
const name = "trivet"

// ErrNowhere says that the environment names no home.
var ErrNowhere = errors.New("neither HOME nor an XDG folder is set")

// State is the folder of what outlives a session and is no setting: journals,
// recent sheets. It need not be there yet.
func State(env []string) (string, error) {
	return folder(env, "XDG_STATE_HOME", ".local", "state")
}

// Data is the folder of what a person has worked on and would miss: the record. It need
// not be there yet.
func Data(env []string) (string, error) {
	return folder(env, "XDG_DATA_HOME", ".local", "share")
}

// Config is the folder of settings. It need not be there yet.
func Config(env []string) (string, error) {
	return folder(env, "XDG_CONFIG_HOME", ".config")
}

// folder takes the variable where it holds an absolute path, as the
// specification asks, else the usual place below the home.
func folder(env []string, variable string, below ...string) (string, error) {
	if base := lookup(env, variable); filepath.IsAbs(base) {
		return filepath.Join(base, name), nil
	}
	for _, v := range []string{"HOME", "USERPROFILE"} {
		if home := lookup(env, v); filepath.IsAbs(home) {
			return filepath.Join(append(append([]string{home}, below...), name)...), nil
		}
	}
	return "", ErrNowhere
}

// Short writes a path below the home as people do: ~/.config/trivet.
func Short(env []string, path string) string {
	home := lookup(env, "HOME")
	if rest, ok := strings.CutPrefix(path, filepath.Clean(home)+string(filepath.Separator)); ok && filepath.IsAbs(home) {
		return "~" + string(filepath.Separator) + rest
	}
	return path
}

// Whole writes the whole path of a file that way, from wherever one stands.
func Whole(env []string, path string) string {
	if abs, err := filepath.Abs(path); err == nil {
		return Short(env, abs)
	}
	return path
}

// User is the name of the account, "" where the environment has none.
func User(env []string) string {
	for _, v := range []string{"USER", "LOGNAME", "USERNAME"} {
		if name := lookup(env, v); name != "" {
			return name
		}
	}
	return ""
}

// lookup gives a variable's value; of several the last one counts, as for a child
// process.
func lookup(env []string, variable string) string {
	for i := len(env) - 1; i >= 0; i-- {
		if k, v, ok := strings.Cut(env[i], "="); ok && k == variable {
			return v
		}
	}
	return ""
}
