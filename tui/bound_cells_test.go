package tui

import (
	"fmt"
	"slices"
	"strings"

	"trivet/tui/theme"
)

// at120 and at80 seat a person before a sheet.
func at120(text string) seating { return seating{w: 120, h: 36, file: "own.toml", text: text} }
func at80(text string) seating  { return seating{w: 80, h: 24, file: "own.toml", text: text} }

// swaps: what stood above another text stands below it.
func swaps(above, below string) effect {
	return func(before, after view) string {
		for i, v := range []view{before, after} {
			a, b := strings.Index(v.text, above), strings.Index(v.text, below)
			if a < 0 || b < 0 || (a < b) != (i == 0) {
				return fmt.Sprintf("%q and %q do not change places", above, below)
			}
		}
		return ""
	}
}

// lit: a pane with this title has the keys. A terminal that is not asked for another
// background has a dark one.
func lit(title string) effect {
	return func(before, after view) string {
		if after.backdrop.name == "" {
			after.backdrop = backdrops[1]
		}
		return dressed(title, theme.RuleFocus)(before, after)
	}
}

// stores: the sheet's file holds a text that it did not hold when the program was
// opened.
func stores(name, text string) effect {
	return func(_, after view) string {
		if !strings.Contains(after.seat.file(name), text) {
			return fmt.Sprintf("%s does not hold %q:\n%s", name, text, after.seat.file(name))
		}
		return ""
	}
}

// cellScripts press the keys of the panes of cells, of the workbench around them,
// and of what is typed in a cell.
func cellScripts() []script {
	const rowD, rowA = "D       2, 0, 1", "A       0, 1, 3"
	return []script{
		{name: "moving", at: at120(crane), deeds: []deed{
			{"down", moves("A")}, {"up", moves("D")}, {"right", moves("2, 0, 1")}, {"left", moves("D")},
			{"end", moves("2.00   0      1.00")}, {"home", moves("D")}, {"pgdown", moves("C")}, {"pgup", moves("D")},
			{"tab", moves("2, 0, 1")}, {"shift+tab", moves("D")},
			{"end pgdown tab", moves("TA")}, // on into the next pane
		}},
		{name: "rows", at: at120(crane), deeds: []deed{
			{"ctrl+n", appears("new in points")}, {"esc insert", appears("new in points")},
			{"esc pgup down ctrl+up", swaps(rowD, rowA)}, {"ctrl+down", swaps(rowA, rowD)},
			{"alt+u", swaps(rowD, rowA)}, {"alt+j", swaps(rowA, rowD)},
			{"f7 f alt+d", appears("TA2 is TA once more")}, {"ctrl+d", appears("deleted TA2")},
			{"alt+p pgup right delete", vanishes("2, 0, 1")}, {"ctrl+z", appears("2, 0, 1")}, {"backspace", vanishes("2, 0, 1")},
		}},
		{name: "blocks", at: at120(hanging), deeds: []deed{
			{"right shift+down", moves("0, 0 · -3, 4")}, {"shift+up", moves("0, 0")},
			{"shift+right", moves("0, 0 · particle")}, {"shift+left", moves("0, 0")},
			{"shift+down alt+c", all(appears("copied 2 by 1 cells"), copies("0, 0\n-3, 4\n"))},
			{"ctrl+z up down ctrl+v", appears("pasted 2 cells")}, {"ctrl+z alt+v", appears("pasted 2 cells")},
			{"ctrl+z pgdown home alt+x", all(appears("cut 1 row"), copies("B\t3, 4\t\t(3.00, 4.00)\n"))},
			{"pgup ctrl+x", appears("cut 1 row; ctrl+z")},
		}},
		{name: "undo", at: at120(hanging), deeds: []deed{
			{`right "1, 1" enter ctrl+z`, vanishes("1, 1")}, {"ctrl+y", appears("1, 1")},
			{"ctrl+z ctrl+r", appears("1, 1")},
			{"ctrl+s", all(appears("saved to"), stores("own.toml", `at = "1, 1"`))},
			{"f1", appears("Keys: Anywhere")}, {"f1", vanishes("Keys: Anywhere")}, {"?", appears("Keys: Anywhere")},
			{`esc "2, 2" enter ctrl+q`, appears("own.toml has unsaved changes")}, {"esc ctrl+c", appears("own.toml has unsaved changes")},
			{"n", leaves()},
		}},
		{name: "panes", at: at120(crane), deeds: []deed{
			{"f7", appears("Go to")}, {"esc", vanishes("Go to")}, {"alt+a", appears("Go to")}, {"f7", vanishes("Go to")}, {"f7 alt+a", vanishes("Go to")}, {"f7 ctrl+c", vanishes("Go to")},
			{"f7 g", lit("Givens")}, {"f7 p", lit("Points")}, {"f7 f", lit("Lines")}, {"f7 s", lit("Supports")}, {"f7 m", lit("Unknowns")}, {"f7 e", lit("Sheet")},
			{"f7 y", lit("System")}, {"f7 i", lit("Picture in space")}, {"f7 c", lit("Checks")}, {"f7 w", lit("Working")}, {"f7 h", lit("Hand solution")}, {"f7 r", lit("Ranges")}, {"f7 l", lit("Limits")},
			{"alt+p", lit("Points")}, {"alt+m", lit("Unknowns")}, {"alt+e", lit("Sheet")}, {"alt+y", lit("System")}, {"alt+i", lit("Picture in space")}, {"alt+h", lit("Hand solution")}, {"alt+l", lit("Limits")},
			{"alt+p alt+t", appears("System")},
			{"f7 g ctrl+w", lit("Points")}, {"f6", lit("Lines")}, {"shift+f6", lit("Points")},
			{"ctrl+e", all(vanishes("System"), lit("Points"))}, {"ctrl+e", appears("System")}, {"f4", vanishes("System")}, {"f4", appears("System")},
			{"f5", appears("step 1 of ")}, {"esc alt+b", appears("step 1 of ")},
			{"esc ctrl+k", appears("command: ")}, {"esc alt+k", appears("command: ")},
			{"esc ctrl+o", appears("save as: ")}, {"esc ctrl+p", appears("page as (")},
			{"esc alt+f", appears("field page as (")}, {"esc alt+o", appears("page to hand out as (")},
		}},
		{name: "sides", at: at80(crane), deeds: []deed{{"ctrl+t", appears("System")}, {"f3", appears("Picture in space")}, {"ctrl+q", leaves()}}},
		{name: "names", at: at120(crane), deeds: []deed{
			{"ctrl+f", appears("find: ")}, {`"-1, 3" esc down ctrl+g`, moves("0, -1, 3")},
			{"f7 f right right alt+g", all(moves("2, 0, 1"), appears("alt+r goes back"))}, {"alt+r", moves("D A")},
		}},
		{name: "new numbers", at: at120(crane), deeds: []deed{
			{"alt+n", all(appears("new numbers: load = "), vanishes(`300 N`))}, {"ctrl+z", all(appears("300 N"), vanishes("new numbers"))},
		}},
		{name: "words follow", at: at120(crane), deeds: []deed{
			{`ctrl+f "300 N" esc "400 N" enter`, appears("alt+w removes them")}, {"alt+w", all(appears("the old reference answers were removed"), vanishes("alt+w removes them"))},
		}},
		{name: "nudges", at: at120(crane), deeds: []deed{
			{"right alt+up", moves("2, 0, 2")}, {"alt+=", moves("2, 0, 3")}, {"alt+down", moves("2, 0, 2")}, {"alt+-", moves("2, 0, 1")},
			{"f2 alt+up", appears("D at: 2, 0, 2")}, {"alt+=", appears("D at: 2, 0, 3")}, {"alt+down", appears("D at: 2, 0, 2")}, {"alt+-", appears("D at: 2, 0, 1")},
			{"esc f7 f right right f2 alt+g", all(moves("0, 1, 3"), appears("alt+r goes back"))},
		}},
		{name: "typing", at: at120(hanging), deeds: []deed{
			{"right enter", appears("leave as it was")}, {"esc", vanishes("leave as it was")}, {"f2", appears("leave as it was")},
			{`ctrl+u "1, 1" enter`, moves("particle")}, {`left "2, 2" tab`, moves("particle")}, {`left "3, 3" shift+tab`, moves("D")},
			{`right "4, 4" down`, moves("-3, 4")}, {`"5, 5" up`, moves("4, 4")},
		}},
		{name: "text", at: at120(hanging), deeds: []deed{
			{`right down "123" left`, moves("3 · 3")}, {"home", moves("1 · 1")}, {"right", moves("2 · 2")}, {"end", moves(" · ")},
			{"ctrl+a", moves("1 · 1")}, {"ctrl+e", moves(" · ")}, {"home delete", all(vanishes("A: 123"), still("A: 23"))},
			{"end backspace", all(vanishes("A: 23"), still("A: 2"))}, {"ctrl+u", vanishes("A: 2")},
		}},
		{name: "kinds", at: at120(crane), deeds: []deed{
			{"f7 f right f2 down", moves(" · strut · ")}, {"up", moves(" · cable · ")},
		}},
		{name: "words", at: at120(crane), deeds: []deed{
			{`f7 f home right right right right "l" down`, moves(" · load · ")}, {"up", moves(" · load1 · ")}, {"down tab", appears("TA magnitude: load")},
			{`ctrl+u "l" esc`, vanishes("esc: leave it")}, {`esc "l" enter`, moves("TB")}, {`up right right right right "lo" shift+tab`, moves("")},
		}},
	}
}

// boundScripts press every bound key.
func boundScripts() []script { return slices.Concat(cellScripts(), viewScripts(), practiceScripts()) }
