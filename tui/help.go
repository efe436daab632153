package tui

import (
	"image"
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/tui/grid"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/theme"
	"trivet/units"
)

// directions are the ways to write one; each example reads as it stands.
var directions = [][2]string{
	{"+x   -y   +z", "along an axis"},
	{"(3, 0, -4)", "a vector; its length does not matter"},
	{"dir(A, B)", "from the point A to the point B"},
	{"polar(30 deg)", "in the plane: from +x counter-clockwise"},
	{"slope 3:4", "in the plane: rising 3 in a run of 4 towards +x; slope -3:4 falls"},
	{"angles(60 deg, 45 deg, 120 deg)", "by direction angles from +x, +y, +z"},
	{"bearing(30 deg, 45 deg)", "clockwise from north, and above the horizontal"},
}

// magnitudes are what the size of a force may be.
var magnitudes = [][2]string{
	{"?   (or nothing)", "unknown: to be found, named after the line"},
	{"400 lbf", "known"},
	{"W   2*W/3", "known, in terms of the givens"},
	{"2*T1   0.3*N", "tied to other unknowns, linear in them"},
	{"20 kg", "in a weight alone: a mass, taken times g"},
	{"1,200 lb", "thousands separated by commas, with a unit; noted as 1200 lb"},
	{"6 m +- 2 cm", "a measured value with its uncertainty; 6 m +- 5 % too"},
}

// answers are what a source prints, or you have found.
var answers = [][2]string{
	{"761 N   0.761 kN", "compared to the last place written, in any unit of its kind"},
	{"2*761 N   20 kg*g", "arithmetic, compared to the fewest figures of what goes into it"},
	{"2.5 kN T   2887 lb (C)", "tension or compression of a cable, strut, link or spring, which sets the sign; behind a unit or in parentheses"},
}

// helpText writes the help from the tables that the program itself works by.
func (m Model) helpText(w int) paneText {
	var d paneText
	pairs := func(rows [][2]string, wide int) {
		for _, r := range rows {
			d.wrapped(theme.Plain, "  "+grid.Fit(r[0], wide)+" ", r[1], w)
		}
	}
	if m.watches = m.around; m.watches { // who follows sees the presenter's own help
		d.wrapped(theme.Plain, "", "You watch: what you press moves your own view and changes nothing in the sheet. The last line says how to come back and how to leave.", w)
	} else {
		d.text(theme.Plain, "A workbench for bodies in equilibrium. Type into a cell: everything follows.")
	}
	d.wrapped(theme.Plain, "", "Twelve panes: sheet and givens, points, force lines, supports and loads, and unknown magnitudes take input. The results follow from them: the picture, and the system, checks, working, hand solution, ranges and limits, in which a cursor goes from number to number and a line below says where that number comes from. A wide screen shows several of them, a small one lets them take turns. While a cell does not read, the last result stays and is called stale.", w)
	if m.linear {
		d.wrapped(theme.Plain, "", "Up and down read a line, page up and page down ten, in the results, in the picture, which is said in words, and in this help; in a result left and right go from number to number and say where it comes from. A step of the board is read whole, then line by line.", w)
	}
	for _, s := range m.helpScopes() {
		var rows [][2]string
		for _, b := range keys.Table() {
			if b.Scope == s && m.has(b) {
				rows = append(rows, [2]string{strings.Join(b.Keys, ", "), b.Help})
			}
		}
		if len(rows) > 0 {
			d.heading("Keys: " + s.String())
			wide := 18
			for _, r := range rows {
				wide = max(wide, grid.Width(r[0]))
			}
			pairs(rows, wide)
		}
	}
	d.text(theme.Plain, "  ^s in the last line of the screen is ctrl+s.")
	d.heading("Mouse: nothing needs it")
	pairs([][2]string{
		{"click", "go to a pane, a cell, a number of a result; in the picture, pick what is drawn there; on the start screen, choose, and open what is chosen"},
		{"drag in the picture", "turn and tilt it"}, {"wheel", "scroll; in the picture, zoom"}, {"with shift", "select text, in most terminals"},
	}, 20)
	d.heading("Kinds of force lines")
	var rows [][2]string
	for _, k := range problem.Kinds() {
		rows = append(rows, [2]string{k.Name, k.Holds + "; positive: " + k.Positive})
	}
	pairs(rows, 10)
	d.heading("Supports and joints: what each holds")
	supportsHelp(&d, w)
	d.heading("Directions (along)")
	pairs(directions, 32)
	d.heading("Sizes of forces")
	pairs(magnitudes, 18)
	d.heading("Measured values")
	pairs([][2]string{{"6 m ± 2 cm", "or +-: the ranges pane shows its effect on every result, independent and worst case; the limits pane, which limits may be exceeded"}}, 18)
	d.heading("Answers")
	pairs(answers, 24)
	d.heading("Results to ask for")
	pairs(problem.QueryHelp(), 40)
	d.heading("Functions")
	rows = nil
	for _, f := range units.Functions() {
		rows = append(rows, [2]string{f.Usage, f.Says})
	}
	pairs(rows, 28)
	d.heading("Units")
	rows = nil
	for _, u := range units.Table() {
		rows = append(rows, [2]string{u.Symbol, u.Name + also(u)})
	}
	pairs(rows, 8)
	d.heading("Marks")
	pairs([][2]string{
		{"T  C", "tension, compression"}, {"!", "a cell that does not read, or a sense that cannot be"},
		{"ok  no  FAILS", "an answer that agrees or does not, a check that fails; with the cursor on an answer of yours that is wrong, the line below names the likeliest mistake"}, {"at risk", "a limit that is kept as typed, and not everywhere within ±"}, {"stale", "the result of an earlier sheet"},
		{"more < > ^ v", "there is more that way: columns, rows, lines"}, {"thick line", "a strut or a body, = and // in plain characters"},
		{"[T1]", "the row under the cursor, in the picture; its line is thicker, * in plain characters"}, {"dashed", "an unknown force"},
		{"dotted", "far behind, . and : in plain characters; what is in front breaks the lines behind it"},
	}, 14)
	d.heading("Caution")
	d.wrapped(theme.Plain, "", caution, w)
	return d
}

// helpScopes are all scopes, the board's first while it shows.
func (m Model) helpScopes() (scopes []keys.Scope) {
	if m.board.on {
		scopes = append(scopes, keys.Board, keys.Jumping)
	}
	for s := range keys.Scopes {
		if !slices.Contains(scopes, s) {
			scopes = append(scopes, s)
		}
	}
	return scopes
}

// also names the other spellings of a unit.
func also(u units.Unit) string {
	if len(u.Aliases) == 0 {
		return ""
	}
	return "; also " + strings.Join(u.Aliases, ", ")
}

// helpRect is where the help stands: all between the first line and the foot.
func (m Model) helpRect() image.Rectangle {
	s := m.screen()
	return image.Rect(1, s.Top.Max.Y, max(m.w-1, 1), max(s.Foot.Min.Y, s.Top.Max.Y))
}

func (m Model) drawHelp(g *grid.Grid) {
	r := m.helpRect()
	c := g.All().In(r)
	c.In(image.Rect(0, 0, c.W(), 1)).Fill(m.theme.Glyphs.RuleFocus, theme.RuleFocus)
	c.Text(1, 0, theme.RuleFocus, " Help ")
	in := c.In(image.Rect(0, 1, c.W(), c.H()))
	d := m.helpText(in.W() - 1)
	d.draw(in, *m.help, in.W(), false)
	if m.help.y+in.H() < len(d) {
		in.Set(in.W()-1, in.H()-1, m.theme.Glyphs.More, theme.Dim)
	}
}

// turnHelp scrolls the help or leaves it.
func (m *Model) turnHelp(i keys.Intent) bool {
	if i == keys.Cancel {
		m.help = nil
		return true
	}
	if m.linear {
		return m.readOn(i)
	}
	page := m.helpRect().Dy() - 1
	o := *m.help
	if !scroll(&o, i, page) {
		return false
	}
	o.x = 0
	o.y = max(min(o.y, len(m.helpText(max(m.helpRect().Dx()-1, layout.MinW-3)))-page), 0)
	m.help = &o
	return true
}
