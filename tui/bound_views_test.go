package tui

import (
	"fmt"
	"path/filepath"
	"strings"
)

// redraws: the picture is another, and a text stays.
func redraws(text string) effect {
	return func(before, after view) string {
		if before.text == after.text {
			return "the screen is the same"
		}
		return still(text)(before, after)
	}
}

// dotless: the picture is drawn in plain characters, where it was in dots.
func dotless() effect {
	dotted := func(v view) bool {
		return strings.ContainsFunc(v.text, func(r rune) bool { return r >= 0x2800 && r < 0x2900 })
	}
	return func(before, after view) string {
		if !dotted(before) || dotted(after) {
			return fmt.Sprintf("drawn in dots before: %v, and after: %v", dotted(before), dotted(after))
		}
		return ""
	}
}

// viewScripts press the keys of what is looked at rather than typed in, and of
// questions.
func viewScripts() []script {
	start := seating{w: 120, h: 36}
	return []script{
		{name: "reading", at: at120(crane), deeds: []deed{
			{"alt+y esc", lit("Points")}, {"alt+y enter", lit("Points")}, {"alt+y tab", lit("Picture in space")}, {"shift+tab", lit("System")},
			{"b", appears("step 1 of ")}, {"esc h", lit("Hand solution")}, {"r", lit("Ranges")}, {"l", lit("Limits")}, {"i", lit("Picture in space")},
			{"l .", lit("System")}, {",", lit("Limits")},
		}},
		{name: "system", at: at80(crane), deeds: []deed{
			{"alt+y right", appears("TB in ΣFx on D: x of u from D to B")}, {"left", appears("TA in ΣFx on D")}, {"down down", appears("TA in ΣFy on D")}, {"up up", appears("TA in ΣFx on D")},
			{"pgdown", vanishes("TA in ΣFx on D")}, {"pgup", appears("TA in ΣFx on D")}, {"space", vanishes("TA in ΣFx on D")}, {"home", appears("TA in ΣFx on D")},
			{"end", appears("qualified")},
		}},
		{name: "picture", at: at120(crane), deeds: []deed{
			{"alt+i f", appears("Picture front")}, {"s", appears("Picture side")}, {"t", appears("Picture top")}, {"v", appears("Picture in space")},
			{"left", appears("turned -45°")}, {"right", appears("turned -30°")}, {"up", appears("from 35°")}, {"down", appears("from 20°")},
			{"+", appears(", 1.2 times")}, {"=", appears(", 1.6 times")}, {"-", appears(", 1.2 times")}, {"0", vanishes("times")},
			{"n", appears("A is picked")}, {"p", appears("D is picked")},
			{"x", appears("arrows: to scale")}, {"d", appears("3.00 m")}, {"g", appears("Force polygon of D")}, {"a", dotless()},
		}},
		{name: "which row", at: at120(beam), deeds: []deed{
			{"f7 s ctrl+n j", appears("new in joints")}, {"esc ctrl+n b", appears("new in bodies")}, {"esc ctrl+n c", appears("new in couples")},
			{"esc ctrl+n l", appears("new in distributed")}, {"esc ctrl+n esc", vanishes("Make which row?")}, {"ctrl+n ctrl+c", vanishes("Make which row?")},
		}},
		{name: "board", at: at120(crane), deeds: []deed{
			{"f5 space", appears("step 2 of")}, {"left", appears("step 1 of")}, {"right", appears("step 2 of")}, {"pgup", appears("step 1 of")},
			{"pgdown", appears("step 2 of")}, {"backspace", appears("step 1 of")}, {"enter", appears("step 2 of")},
			{"end", vanishes("step 2 of")}, {"home", appears("step 1 of")},
			{"l", appears("enter: go")},
			{"esc end h", all(appears("answers are hidden"), vanishes("150 N"))}, {"r", appears("150 N")}, {"home p", vanishes("TA?")},
			{"esc", appears("Points")}, {"f5 b", appears("Points")}, {"f5 f5", appears("Points")}, {"f5 alt+b", appears("Points")},
			{"f5 ctrl+p", appears("page as (")}, {"esc ?", appears("Keys:")},
		}},
		{name: "board's picture", at: at120(crane), deeds: []deed{
			{"f5 f", appears("⠉⠉⠉⠉x")}, {"s", all(appears("⠉⠉⠉⠉y"), vanishes("⠉⠉⠉⠉x"))}, {"t", all(appears("⠉⠉⠉⠉x"), vanishes("⠉⠉⠉⠉y"))}, {"v", all(vanishes("⠉⠉⠉⠉x"))},
			{"<", redraws("step 1 of")}, {",", redraws("step 1 of")}, {">", redraws("step 1 of")}, {".", redraws("step 1 of")},
			{"+", redraws("step 1 of")}, {"=", redraws("step 1 of")}, {"-", redraws("step 1 of")}, {"a", dotless()},
		}},
		{name: "board's text", at: seating{w: 60, h: 16, file: "own.toml", text: crane}, deeds: []deed{
			{"f5 wait p 7 down", vanishes("No sum of forces")}, {"up", appears("No sum of forces")},
		}},
		{name: "steps", at: at80(crane), deeds: []deed{
			{"f5 l down", moves("2  Equilibrium of particle D")}, {"up", moves("1  Free body")}, {"pgdown", moves("10  Answers")}, {"pgup", moves("1  Free body")},
			{"end", moves("10  Answers")}, {"home", moves("1  Free body")},
			{"down enter", appears("step 2 of")}, {"l esc", vanishes("enter: go")}, {"l l", vanishes("enter: go")},
		}},
		{name: "names of files", at: at120(crane), deeds: []deed{
			{"ctrl+o esc", vanishes("save as: ")}, {"ctrl+o ctrl+c", vanishes("save as: ")},
			{`ctrl+p "html" enter`, all(appears("page written to"), stores("own.html", "Wall crane"))},
		}},
		{name: "what differs", at: at120(hanging), first: func(s *seat) {
			s.write(filepath.Join(s.folder, "own.toml"), strings.Replace(hanging, "60 N", "6 kN", 1))
		}, deeds: []deed{
			{"focus wait s", appears("W: here 60 N, on disk 6 kN")}, {"s", vanishes("W: here")}, {"S", appears("W: here 60 N, on disk 6 kN")},
		}},
		{name: "questions", at: at120(hanging), deeds: []deed{
			{`right "1, 1" enter ctrl+q esc`, vanishes("Save them before leaving?")}, {"ctrl+q ctrl+c", vanishes("Save them before leaving?")},
			{"ctrl+q n", leaves()},
		}},
		{name: "yes", at: at120(hanging), deeds: []deed{{`right "1, 1" enter ctrl+q y`, all(leaves(), stores("own.toml", `"1, 1"`))}}},
		{name: "Yes", at: at120(hanging), deeds: []deed{{`right "1, 1" enter ctrl+q Y`, all(leaves(), stores("own.toml", `"1, 1"`))}}},
		{name: "No", at: at120(hanging), deeds: []deed{{`right "1, 1" enter ctrl+q N`, leaves()}}},
		{name: "much that differs", at: at80(crane), first: func(s *seat) {
			s.write(filepath.Join(s.folder, "own.toml"), strings.Replace(beam, "Loaded beam", "Beam of oak "+strings.Repeat("under a long load ", 9), 1))
		}, deeds: []deed{
			{"focus wait s wait down", appears(": 2 to ")}, {"up", appears(": 1 to ")}, {"pgdown", vanishes(": 1 to ")}, {"pgup", appears(": 1 to ")},
			{"space", vanishes(": 1 to ")}, {"home", appears(": 1 to ")}, {"end", appears(" to 47 of 47")},
			{"home wait right", vanishes("title: here")}, {"left", appears("title: here")},
		}},
		{name: "settings", at: at120(hanging), deeds: []deed{
			{"alt+s", appears("Settings")}, {"esc", vanishes("Settings")}, {"f9", appears("Settings")}, {"alt+s", vanishes("Settings")}, {"f9 f9", vanishes("Settings")},
			{"alt+s down", moves("D · false")}, {"up", moves("D · auto")}, {"end", moves("D · usual")}, {"home", moves("D · auto")},
			{"right", moves("D · light")}, {"left", moves("D · auto")}, {"down enter", appears("leave as it was")}, {"esc", vanishes("leave as it was")},
			{"f2", appears("leave as it was")}, {"ctrl+c", vanishes("leave as it was")},
			{`down down "4" enter`, moves("D · 4")}, {"delete", moves("D · 3")}, {`"5" enter backspace`, moves("D · 3")},
			{`"6" down`, all(moves("D · +z"), appears("figures       6"))}, {`up "7" up`, all(moves("D · full"), appears("figures       7"))},
		}},
		{name: "start, settings", at: start, deeds: []deed{{"alt+s", appears("Settings")}, {"esc f9", appears("Settings")}}},
		{name: "help", at: at120(crane), deeds: []deed{
			{"? right", all(appears("Help: workbench, 2 of"), appears("Panes"), vanishes("Keys: Anywhere"))}, {"tab", appears("A problem is a TOML file")}, {"shift+tab", appears("Help: workbench, 2 of")}, {"left", appears("Keys: Anywhere")},
			{"down", vanishes("Free-body equilibrium problems")}, {"up", appears("Free-body equilibrium problems")}, {"pgdown", vanishes("Keys: Anywhere")}, {"pgup", appears("Keys: Anywhere")},
			{"space", vanishes("Keys: Anywhere")}, {"home", appears("Keys: Anywhere")}, {"end", appears("qualified")},
			{"/", appears("find: ")}, {`"proportional"`, appears("proportional")}, {"esc", vanishes("find: ")}, {"ctrl+f", appears("find: ")}, {"esc", vanishes("find: ")},
			{"esc", appears("Points")}, {"? q", appears("Points")}, {"? ?", appears("Points")}, {"? enter", appears("Points")},
		}},
		{name: "start", at: start, deeds: []deed{
			{"home", appears("▸Blank sheet in space")}, {"down", appears("▸Blank sheet in the plane")}, {"up", appears("▸Blank sheet in space")},
			{"pgdown", vanishes("▸Blank sheet in space")}, {"pgup", appears("▸Blank sheet in space")}, {"end", vanishes("▸Blank sheet in space")},
			{`"mq" backspace`, appears("Mast top")}, {"ctrl+u", appears("type to search")}, {"esc", appears("Points")},
		}},
		{name: "another sheet", at: at120(hanging), deeds: []deed{{"alt+z", appears("Blank sheet in the plane")}, {"esc f8", appears("▸Blank sheet in space")}}},
		{name: "start, blank", at: start, deeds: []deed{{"ctrl+n", appears("Points")}}},
		{name: "start, open", at: start, deeds: []deed{{"enter", appears("Points")}}},
		{name: "finding", at: at120(crane), deeds: []deed{
			{`ctrl+f "D" enter`, moves("D A · ")}, {"ctrl+g", moves("D B · ")}, {"down", moves("C D · ")}, {"esc", vanishes("find: ")}, {"ctrl+f ctrl+c", vanishes("find: ")},
		}},
		{name: "commands", at: at120(crane), deeds: []deed{
			{"ctrl+k down", moves("D · row above · ")}, {"up", moves("D · edit the cell; any character replaces it · ")}, {`"top" enter`, appears("Picture top")},
			{"ctrl+k esc", vanishes("command: ")}, {"ctrl+k ctrl+c", vanishes("command: ")}, {"ctrl+k ctrl+k", vanishes("command: ")},
		}},
	}
}
