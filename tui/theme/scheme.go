package theme

import "charm.land/lipgloss/v2"

// Scheme is what colours are taken from.
type Scheme int

// The schemes.
const (
	Palette Scheme = iota // the terminal's own 16
	Light                 // for a light background
	Dark                  // for a dark one
	Bare                  // none: bold, underlined and reversed alone
)

// colours are what the looks are mixed from.
type colours struct{ focus, computed, bad, good, warn, cable, strut, link, spring, force string }

// colours keep blue and orange apart from each other and from red in lightness too,
// so that they differ for readers who do not tell red from green.
func (s Scheme) colours() colours {
	switch s {
	case Light:
		return colours{focus: "25", computed: "24", bad: "124", good: "22", warn: "94", cable: "25", strut: "130", link: "90", spring: "22", force: "124"}
	case Dark:
		return colours{focus: "75", computed: "80", bad: "203", good: "114", warn: "221", cable: "75", strut: "215", link: "176", spring: "114", force: "210"}
	case Bare:
		return colours{}
	}
	return colours{focus: "4", computed: "6", bad: "1", good: "2", warn: "3", cable: "4", strut: "3", link: "5", spring: "2", force: "1"}
}

// looks dresses the roles.
func looks(c colours) [roles]lipgloss.Style {
	plain := lipgloss.NewStyle()
	// Bright black, the usual grey, is the background itself in some palettes;
	// faint text is never less than readable.
	faint := plain.Faint(true)
	colour := func(name string) lipgloss.Style {
		if name == "" {
			return plain
		}
		return plain.Foreground(lipgloss.Color(name))
	}
	return [roles]lipgloss.Style{
		Plain:     plain,
		Dim:       faint,
		Rule:      faint,
		RuleFocus: colour(c.focus).Bold(true),
		Head:      plain.Underline(true),
		Name:      plain.Bold(true),
		Computed:  colour(c.computed),
		Stale:     faint.Italic(true),
		Selected:  plain.Reverse(true),
		Beside:    plain.Underline(true),
		Typing:    plain.Underline(true).Bold(true),
		Caret:     plain.Reverse(true).Bold(true),
		Bad:       colour(c.bad).Bold(true),
		Good:      colour(c.good),
		Warn:      colour(c.warn).Bold(true),
		Bar:       plain.Bold(true),
		Key:       colour(c.focus).Bold(true),
		Cable:     colour(c.cable),
		Strut:     colour(c.strut),
		Link:      colour(c.link),
		Spring:    colour(c.spring),
		Force:     colour(c.force),
		Ground:    faint,
		Point:     plain.Bold(true),
		Emphasis:  colour(c.computed).Bold(true),
	}
}
