package host

import (
	"strings"

	"github.com/charmbracelet/colorprofile"

	"trivet/tui/theme"
)

// terminal is what counts of a visitor's terminal. Two of the same kind and size
// see the same bytes.
type terminal struct {
	kind   string // whose escape sequences it knows
	colour bool
	set    theme.Set
}

const maxW, maxH = 300, 100 // a larger screen shows the rest blank

// kinds are the terminals whose sequences are used; of the others that are
// known each has at least those of xterm.
var kinds = map[string]string{
	"xterm": "xterm-256color", "alacritty": "xterm-256color", "contour": "xterm-256color", "foot": "xterm-256color",
	"ghostty": "xterm-256color", "kitty": "xterm-256color", "rio": "xterm-256color", "wezterm": "xterm-256color", "rxvt": "xterm-256color",
	"tmux": "screen-256color", "screen": "screen-256color", "linux": "linux",
}

// unknownKind is what a terminal of no known name gets: cursor addressing alone.
const unknownKind = "vt100"

// variables are those of a visitor's environment that are read.
var variables = map[string]bool{"COLORTERM": true, "LANG": true, "NO_COLOR": true}

// terminalOf reads the environment of a session, TERM among it.
func terminalOf(env []string) terminal {
	get := func(name string) (value string) {
		for _, e := range env {
			if v, ok := strings.CutPrefix(e, name+"="); ok {
				value = v
			}
		}
		return value
	}
	name := get("TERM")
	first, _, _ := strings.Cut(name, "-")
	t := terminal{kind: kinds[first], set: theme.Characters(env)}
	if t.kind == "" {
		t.kind = unknownKind
	}
	// The theme's colours are the sixteen that every colour terminal has.
	coloured := t.kind != unknownKind || strings.Contains(name, "color") || get("COLORTERM") != ""
	t.colour = coloured && name != "dumb" && get("NO_COLOR") == ""
	return t
}

// profile is the colours of the terminal.
func (t terminal) profile() colorprofile.Profile {
	if t.colour {
		return colorprofile.ANSI
	}
	return colorprofile.ASCII
}

func clamped(w, h int) (int, int) {
	return min(w, maxW), min(h, maxH)
}
