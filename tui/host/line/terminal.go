package line

import (
	"strings"

	"github.com/charmbracelet/colorprofile"

	"trivet/tui/theme"
)

// Terminal is what counts of a visitor's terminal. Two of the same kind and size
// see the same bytes.
type Terminal struct {
	Kind   string // whose escape sequences it knows
	Colour bool
	Set    theme.Set
}

const MaxW, MaxH = 300, 100 // a larger screen shows the rest blank

// kinds are the terminals whose sequences are used; of the others that are
// known each has at least those of xterm.
var kinds = map[string]string{
	"xterm": "xterm-256color", "alacritty": "xterm-256color", "contour": "xterm-256color", "foot": "xterm-256color",
	"ghostty": "xterm-256color", "kitty": "xterm-256color", "rio": "xterm-256color", "wezterm": "xterm-256color", "rxvt": "xterm-256color",
	"tmux": "screen-256color", "screen": "screen-256color", "linux": "linux",
}

// UnknownKind is what a terminal of no known name gets: cursor addressing alone.
const UnknownKind = "vt100"

// Reads tells whether a variable of a visitor's environment is read.
func Reads(name string) bool { return name == "COLORTERM" || name == "LANG" || name == "NO_COLOR" }

// TerminalOf reads the environment of a session, TERM among it.
func TerminalOf(env []string) Terminal {
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
	t := Terminal{Kind: kinds[first], Set: theme.Characters(env)}
	if t.Kind == "" {
		t.Kind = UnknownKind
	}
	// The theme's colours are the sixteen that every colour terminal has.
	coloured := t.Kind != UnknownKind || strings.Contains(name, "color") || get("COLORTERM") != ""
	t.Colour = coloured && name != "dumb" && get("NO_COLOR") == ""
	return t
}

// profile is the colours of the terminal.
func (t Terminal) profile() colorprofile.Profile {
	if t.Colour {
		return colorprofile.ANSI
	}
	return colorprofile.ASCII
}

// Clamped is the part of a terminal that is drawn.
func Clamped(w, h int) (int, int) {
	return min(w, MaxW), min(h, MaxH)
}
