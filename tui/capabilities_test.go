package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/tui/grid"
	"trivet/tui/theme"
)

// opens seats a person before a sheet; the size is the backdrop's.
func opens(text string) seating { return seating{file: "own.toml", text: text} }

// inked: something of the picture is drawn in the look of a role.
func inked(role grid.Style) effect {
	return func(_, after view) string {
		want := after.backdrop.styled(role)
		for _, row := range after.cells {
			for _, c := range row {
				if r := []rune(c.Content); len(r) == 1 && r[0] >= 0x2800 && r[0] < 0x2900 && c.Style.Attrs == want.Attrs && sameColour(c.Style.Fg, want.Fg) {
					return ""
				}
			}
		}
		return fmt.Sprintf("nothing in the picture has the look of role %d", role)
	}
}

// rewrites is what somebody else makes of the sheet's file meanwhile.
func rewrites(text string) func(*seat) {
	return func(s *seat) { s.write(filepath.Join(s.folder, "own.toml"), text) }
}

// crashed is a seat whose program was killed while a cell was typed in.
func crashed(t *testing.T, at seating) seating {
	t.Helper()
	s := sit(t, at)
	s.does(`right "2, 0, 2" enter "0, 1,"`)
	files, err := filepath.Glob(filepath.Join(s.home, "state", "trivet", "journal", "*"))
	if err != nil || len(files) != 1 {
		t.Fatalf("there are %d journals (%v)", len(files), err)
	}
	kept, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	s.does("esc ctrl+q n")
	s.left()
	// What a killed process leaves, and an orderly end takes away.
	if err := os.WriteFile(files[0], kept, 0o600); err != nil {
		t.Fatal(err)
	}
	at.again = s
	return at
}

// another workbench has the sheet open.
func another(t *testing.T, at seating) seating {
	t.Helper()
	at.again = sit(t, at)
	return at
}

// visited is a home in which a sheet was opened before.
func visited(t *testing.T, at seating) seating {
	t.Helper()
	was := at
	was.file, was.text = "own.toml", hanging
	s := sit(t, was)
	s.does("ctrl+q")
	s.left()
	at.again = s
	return at
}

// capabilities is what the workbench is to do, a script for each.
func capabilities() []capability {
	const rowD, rowA = "D       2, 0, 1", "A       0, 1, 3"
	list := []script{
		{name: "start screen", deeds: []deed{
			{"wait", all(still("choose a sheet to start from"), still("Particles in space"), dressed("Particles in space", theme.Head))},
			{`"mast top"`, all(appears("search: mast top"), still("wire = 0.721 kN"))},
			{"enter", all(appears("Points"), still("determinate"), still("not saved yet"))},
		}},
		{name: "completion", at: opens(crane), deeds: []deed{
			{`f7 f home right right right right "lo"`, all(appears("given, 300 N"), still("enter: insert"))},
			{"down tab", all(vanishes("enter: insert"), still("TA magnitude: load"))},
			{`esc home right "st"`, all(appears("a prop: can push, not pull"))},
			{"enter", still("strut")},
		}},
		{name: "errors in the cell", at: opens(crane), deeds: []deed{
			{`right "2, 0"`, all(appears("^^^^ expected three components in space"), still("Try: add the third"), still("stale"), dressed("^^^^ expected three", theme.Bad))},
			{"enter", all(appears("2, 0!"), dressed("2, 0!", theme.Bad), still("D at: "))},
			{`left "2, 0, 1 kN" enter`, all(appears("2, 0, 1 kN!"))},
			{"ctrl+z ctrl+z", all(vanishes("!  "), vanishes("stale"))},
		}},
		{name: "copy, cut and paste", at: opens(hanging), deeds: []deed{
			{"shift+down alt+c", all(appears("copied 2 rows"))},
			{"right up down alt+c", all(appears("copied 1 cell"), copies("-3, 4\n"))},
			{"left alt+x", all(appears("cut 1 row"))},
			{"ctrl+v", all(appears("pasted A"), still("-3, 4"))},
			{`paste "B\t3, 5\nE\t2, 2\tparticle\n"`, all(appears("pasted 1 cell and 1 new row; ctrl+z undoes it"), still("3, 5"), still("no force acts on E, so it is"), still("2, 2  "))},
			{"ctrl+z", vanishes("2, 2  ")},
		}},
		{name: "rename everywhere", at: opens(crane), deeds: []deed{
			{`f2 ctrl+u "ring" enter`, all(appears("ring A"), still("ring B"), still("C ring"))},
			{`alt+m home f2 ctrl+u "guy" enter`, appears("guy ")},
			{"ctrl+s", all(appears("saved to"), stores("own.toml", `asked = "guy TB S guy.x angle(guy, TB)"`), stores("own.toml", `path = "ring A"`))},
		}},
		{name: "rows moved and duplicated", at: opens(crane), deeds: []deed{
			{"down alt+u", swaps(rowD, rowA)}, {"alt+j", swaps(rowA, rowD)},
			{"f7 f alt+d", all(appears("TA2 is TA once more"), still("indeterminate"))}, {"ctrl+d", vanishes("indeterminate")},
		}},
		{name: "to a definition and back", at: opens(crane), deeds: []deed{
			{"f7 f right right alt+g", all(moves("2, 0, 1"), appears("alt+r goes back"))}, {"alt+r", moves("D A")},
		}},
		{name: "nudge", at: opens(crane), deeds: []deed{
			{"right alt+up", all(moves("2, 0, 2"), vanishes("150 N"))}, {"alt+down", all(moves("2, 0, 1"), appears("150 N"))},
		}},
		{name: "new numbers", at: opens(crane), deeds: []deed{
			{`ctrl+k "random variant" enter`, all(appears("new numbers: load = "), vanishes("150 N"))},
			{"ctrl+s", all(appears("saved to"), stores("own.toml", `range = "100 N .. 500 N"`))},
			{"ctrl+z", appears("150 N")},
		}},
		{name: "search", at: opens(crane), deeds: []deed{
			{`ctrl+f "-1, 3"`, all(appears("find: -1, 3"), still("0, -1, 3"))}, {"esc", moves("0, -1, 3")},
			{`ctrl+f "no such"`, all(appears("no cell contains no such"))},
		}},
		{name: "commands", at: opens(crane), deeds: []deed{
			{`ctrl+k "view in space"`, all(appears("1 command: type to narrow"), dressed("picture: view in space", theme.Selected))},
			{"enter", all(lit("Picture in space"), dressed("Picture in space", theme.RuleFocus))},
		}},
		{name: "undo across saves", at: opens(hanging), deeds: []deed{
			{`right "1, 1" enter`, all(appears("unsaved"), dressed("unsaved", theme.Warn))},
			{"ctrl+s", all(appears("saved to ~/statics/own.toml"), vanishes("unsaved"), stores("own.toml", `"1, 1"`))},
			{"ctrl+z", all(appears("unsaved"), vanishes("1, 1"))}, {"ctrl+y", all(vanishes("unsaved"), appears("1, 1"))},
		}},
		{name: "mouse in the cells", at: opens(crane), deeds: []deed{
			{`click "0, -1, 3"`, moves("0, -1, 3")}, {`"9, 9, 9" click "D A"`, all(appears("9, 9, 9"), moves("D A"))},
			{`click "System"`, lit("System")}, {"?", appears("Keys: Anywhere")}, {`wheeldown "Help" wheeldown "Help" wheeldown "Help"`, vanishes("Keys: Anywhere")}, {`wheelup "Help" wheelup "Help" wheelup "Help"`, appears("Keys: Anywhere")},
		}},
		{name: "mouse in the picture", at: opens(crane), deeds: []deed{
			{`alt+i clickby "|D" 0,0`, all(appears("D is picked"), still("Picture"))},
			{`drag "Picture" 6,3`, appears("turned -48°, from 38° above")},
			{`wheelup "Picture"`, appears("1.2 times")}, {`wheeldown "Picture"`, vanishes("1.2 times")},
			{`click "Points"`, lit("Points")},
		}},
		{name: "views", at: opens(crane), deeds: []deed{
			{"alt+i f", appears("Picture front")}, {"s", appears("Picture side")}, {"t", appears("Picture top")}, {"v", appears("Picture in space")},
			{"left", appears("turned -45°")}, {"up", appears("from 35°")}, {"+", appears("1.2 times")}, {"0", vanishes("times")},
			{"n", appears("A is picked")}, {"n n n", all(appears("TA is picked"), inked(theme.Emphasis))},
			{"d", appears("2.24 m")}, {"d", vanishes("2.24 m")}, {"x", appears("to scale")},
			{"a", dotless()},
		}},
		{name: "marks of tension and compression", at: opens(crane), deeds: []deed{
			{"alt+i", all(still("TA (T)"), still("S (C)"), inked(theme.Cable), inked(theme.Strut))},
		}},
		{name: "force polygon", at: opens(hanging), deeds: []deed{
			{"alt+i g", all(appears("Force polygon of D"), still("tip to tail"))}, {"g", vanishes("Force polygon of D")},
		}},
		{name: "limits and answers", at: opens(crane), deeds: []deed{
			{"alt+m ctrl+e", all(still("125%!"), dressed("125%!", theme.Bad), still("no"), still("447 N"))},
		}},
		{name: "results, each number explained", at: opens(crane), deeds: []deed{
			{"alt+y", all(lit("System"), appears("TA in ΣFx on D: x of u from D to A = (0 - 2.00) m / 3.00 m = -0.6667"), moves("-0.6667"))},
			{"f7 c", all(appears("Checks"), appears("150 N of 120 N (limit of TA) = 125 %"), moves("FAILS"))}, {"down", dressed("FAILS", theme.Bad)},
			{"f7 w", all(appears("Working"), still("Free body"))}, {"alt+h", all(lit("Hand solution"), still("by substitution"))},
			{"f7 r", all(appears("Ranges"), still("Every unknown has"))}, {"alt+l", all(appears("Limits"), still("TA governs"), still("125%"))},
		}},
		{name: "results scroll", at: opens(crane), deeds: []deed{
			{"alt+y ctrl+e end", still("qualified")}, {"home", still("A x = b")}, {"f7 w wait end", still("TA = 150 N (tension)")}, {"home", still("Free body")},
		}},
		{name: "board", at: opens(beam), deeds: []deed{
			{"f5", all(appears("step 1 of"), still("Free body"))}, {"end", appears("Answers")},
			{"h", all(appears("answers hidden"), vanishes("917 N"))}, {"r", appears("917 N")},
			{"l", appears("enter: go")}, {"home enter", appears("step 1 of")}, {"esc", appears("Points")},
		}},
		{name: "page", at: opens(crane), deeds: []deed{
			{`ctrl+p "md" enter`, all(appears("page written to ~/statics/own.md"), stores("own.md", "# Wall crane"))},
			{`ctrl+p "md" enter`, all(appears("own.md is there already. Overwrite it?"), dressed("own.md is there already", theme.Warn))}, {"n", appears("not written")},
		}},
		{name: "changed on disk", at: opens(hanging), first: rewrites(strings.Replace(hanging, "60 N", "6 kN", 1)), deeds: []deed{
			{"focus", all(appears("own.toml was changed on disk: 1 cell differs. Read it anew?"), dressed("own.toml was changed on disk", theme.Warn))},
			{"s", appears("W: here 60 N, on disk 6 kN")}, {"y", all(appears("reloaded; ctrl+z returns"), still("3750 N"))},
		}},
		{name: "settings", at: opens(hanging), deeds: []deed{
			{"alt+s", appears("Settings")}, {"esc", vanishes("Settings")},
		}},
		{name: "help", at: opens(hanging), deeds: []deed{
			{"?", all(appears("Keys: Anywhere"), dressed("Keys: Anywhere", theme.Head))}, {"esc", vanishes("Keys: Anywhere")},
		}},
		{name: "verdicts in words", at: opens(hanging), deeds: []deed{
			{`down right "3, 5" enter`, all(appears("not possible as drawn"), dressed("not possible", theme.Bad))},
			{`ctrl+z f7 f down ctrl+d`, all(vanishes("not possible as drawn"), still("no equilibrium"), dressed("no equilibrium", theme.Bad))},
		}},
	}
	var out []capability
	for _, s := range list {
		out = append(out, capability{script: s})
	}
	return append(out,
		capability{before: crashed, script: script{name: "recovery", at: opens(crane), deeds: []deed{
			{"wait", all(still("2 cells differ. Take it over?"))}, {"s", all(appears("D at: on disk 2, 0, 1, left 2, 0, 2"))},
			{"y", all(appears("recovered, not saved yet"), still("2, 0, 2"), still("unsaved"))}, {"ctrl+z", vanishes("2, 0, 2")},
		}}},
		capability{before: another, script: script{name: "two workbenches", at: opens(hanging), deeds: []deed{
			{"wait", all(still("it is open in another workbench too"))},
		}}},
		capability{before: visited, script: script{name: "sheets opened last", deeds: []deed{
			{"wait", all(still("Opened last"), still("▸own.toml"))}, {"enter", all(vanishes("Opened last"), still("37.5 N"))},
		}}},
	)
}
