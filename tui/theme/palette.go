package theme

import (
	"strconv"

	"charm.land/lipgloss/v2"
	"github.com/charmbracelet/colorprofile"
	"github.com/charmbracelet/x/ansi"
)

// Scheme is what colours are taken from.
type Scheme int

// The schemes.
const (
	Palette Scheme = iota // the terminal's own 16, its background unknown
	Light                 // for a light background
	Dark                  // for a dark one
	Bare                  // none: bold, italic, underlined and reversed alone
)

// Depth is how many colours a terminal has.
type Depth int

// The depths.
const (
	True    Depth = iota // all of them
	Indexed              // the 256
	Sixteen              // the first 16, as the terminal mixes them
	None                 // bold, faint, italic and reversed alone
)

// Colours tells from a session's environment how many its terminal has.
func Colours(env []string) Depth {
	switch colorprofile.Env(env) {
	case colorprofile.ANSI256:
		return Indexed
	case colorprofile.ANSI:
		return Sixteen
	case colorprofile.ASCII:
		return None
	}
	return True // what is no terminal leaves them out by itself
}

// Ink is a meaning that has a colour. The empty name is the terminal's own ink.
type Ink int

// The eleven inks.
const (
	Own      Ink = iota // what is typed
	Quiet               // heads, rules, units, hints
	Derived             // what follows from what is typed
	Accent              // where the cursor is
	Pulls               // tension
	Pushes              // compression, contact
	Loads               // a given force
	Reaction            // a force to be found
	Holds               // a check that holds
	Risk                // holds as typed, not everywhere within the ±
	Wrong               // does not read, does not hold
	Inks                // how many
)

// inks are the colours of a scheme: as they are, and what stands for them where
// there are 16. On a light ground yellow, green and cyan cannot be read, nor blue on
// a dark one, so that there some share a colour: a mark or a word tells them apart
// everywhere.
var inks = [...][Inks]struct{ hex, sixteen string }{
	Palette: {
		{}, {}, {"", "6"}, {"", "3"}, {"", "6"}, {"", "3"}, {"", "1"}, {"", "5"}, {"", "2"}, {"", "3"}, {"", "1"},
	},
	Light: {
		{}, {"#5E6873", ""}, {"#0F6C68", "4"}, {"#8A5A00", "5"}, {"#1B62A8", "4"}, {"#A3461A", "1"}, {"#B0243A", "1"}, {"#5B3FB0", "5"},
		{"#1E7A34", "4"}, {"#7A6000", "5"}, {"#C0202A", "1"},
	},
	Dark: {
		{}, {"#96A1AD", "7"}, {"#7FC0BC", "14"}, {"#E3B062", "11"}, {"#79B4EA", "14"}, {"#E89A72", "11"}, {"#F08A94", "13"}, {"#B9A5EC", "13"},
		{"#86C98B", "10"}, {"#E8CB5A", "11"}, {"#FF7B72", "9"},
	},
	Bare: {},
}

// Colour is an ink as a terminal gets it: a colour in hexadecimals, or the number of
// one of 256 or 16; empty for the terminal's own.
func Colour(s Scheme, of Ink, d Depth) string {
	c := inks[s][of]
	switch {
	case d == None:
		return ""
	case d == Sixteen || c.hex == "":
		return c.sixteen
	case d == Indexed:
		return strconv.Itoa(int(ansi.Convert256(lipgloss.Color(c.hex))))
	}
	return c.hex
}

// looks dresses the roles.
func looks(s Scheme, d Depth) [roles]lipgloss.Style {
	plain := lipgloss.NewStyle()
	in := func(of Ink) lipgloss.Style {
		if name := Colour(s, of, d); name != "" {
			return plain.Foreground(lipgloss.Color(name))
		}
		return plain
	}
	quiet := in(Quiet)
	if Colour(s, Quiet, d) == "" {
		quiet = quiet.Faint(true)
	}
	return [roles]lipgloss.Style{
		Plain:     plain,
		Dim:       quiet,
		Rule:      quiet,
		RuleFocus: in(Accent).Bold(true),
		Head:      quiet,
		Name:      plain.Bold(true),
		Computed:  in(Derived),
		Stale:     quiet.Italic(true),
		Selected:  in(Accent).Reverse(true),
		Typing:    in(Accent).Underline(true),
		Caret:     plain.Reverse(true).Bold(true),
		Bad:       in(Wrong).Bold(true),
		Good:      in(Holds),
		Warn:      in(Risk).Bold(true),
		Bar:       plain.Bold(true),
		Key:       plain,
		Cable:     in(Pulls),
		Strut:     in(Pushes),
		Link:      plain,
		Spring:    in(Pulls),
		Force:     in(Loads),
		Found:     in(Reaction),
		Ground:    quiet,
		Point:     plain.Bold(true),
		Emphasis:  in(Accent).Bold(true),
		Answer:    in(Derived).Bold(true),
	}
}
