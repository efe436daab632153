// Package theme gives each role on the screen its look. A look never carries a
// meaning alone: a mark or a word says the same.
package theme

import (
	"strings"

	"trivet/tui/grid"
)

// The roles.
const (
	Plain grid.Style = iota
	Dim
	Rule      // the rule between columns
	RuleFocus // the head of the pane that has the keys, and the mark of the cursor
	Head      // heads of panes and columns
	Name      // names of rows
	Computed  // what follows from the cells
	Stale     // what followed from earlier cells
	Selected  // the cell under the cursor
	Typing    // the cell being typed in
	Caret     // the place in it
	Bad       // a cell that does not read, a check that fails
	Good
	Warn
	Bar // first and last line of the screen
	Key // a key in the hints
	Cable
	Strut
	Link
	Spring
	Force // that is given
	Found // that is to be found
	Ground
	Point
	Emphasis // the selected row in the picture
	Answer   // what a working arrives at
	roles
)

// Theme is the looks of one session.
type Theme struct {
	Styles []grid.Sequences
	Glyphs Glyphs
	Set    Set
	Scheme Scheme
	Depth  Depth
}

// Set is the characters that a terminal has.
type Set int

// The sets.
const (
	Unicode Set = iota
	NoDots      // letters and signs, but no braille and no fine lines
	Seven       // ASCII alone
)

// Glyphs are the drawing characters, which not every terminal has.
type Glyphs struct {
	ASCII      bool
	Rule, Wall rune
	Row        rune   // marks the row under the cursor
	More       rune   // marks a text that goes on
	Between    string // stands between the facts of the head
}

// New makes the theme in 16 colours, so that it follows the reader's own palette,
// light or dark.
func New(set Set) Theme { return Of(set, Palette, Sixteen) }

// Of makes the theme in a scheme of colours, on a terminal of so many.
func Of(set Set, scheme Scheme, depth Depth) Theme {
	looks := looks(scheme, depth)
	t := Theme{Styles: make([]grid.Sequences, roles), Set: set, Scheme: scheme, Depth: depth}
	for role, look := range looks {
		// The style is worked out once; a frame only writes what stands
		// before and after the text.
		before, after, ok := strings.Cut(look.Render("x"), "x")
		if ok {
			t.Styles[role] = grid.Sequences{Prefix: before, Suffix: after}
		}
	}
	t.Glyphs = Glyphs{Rule: '─', Wall: '│', Row: '▸', More: '…', Between: " · "}
	if set != Unicode {
		t.Glyphs = Glyphs{ASCII: true, Rule: '-', Wall: '|', Row: '>', More: '~', Between: ", "}
	}
	return t
}

// Characters tells from a session's environment which characters its terminal
// has: the Linux console has no braille, and a locale that is not UTF-8 has
// nothing beyond ASCII.
func Characters(env []string) Set {
	get := func(name string) string {
		for i := len(env) - 1; i >= 0; i-- {
			if v, ok := strings.CutPrefix(env[i], name+"="); ok {
				return v
			}
		}
		return ""
	}
	// The first that is set decides, as setlocale has it.
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(get(name)); v != "" {
			if !strings.Contains(v, "utf-8") && !strings.Contains(v, "utf8") {
				return Seven
			}
			break
		}
	}
	switch get("TERM") {
	case "linux":
		return NoDots
	case "vt100", "vt220", "dumb":
		return Seven
	}
	return Unicode
}
