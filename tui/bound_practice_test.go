package tui

// practiceScripts press the keys of practice.
func practiceScripts() []script {
	return []script{
		{name: "practice", at: at80(hanging), deeds: []deed{
			{"alt+q", appears("practice: 0 of 2 independent equations", "Your work", "Nothing yet.")},
			{`"0.8 T1 + 0.8 T2 = 60" enter`, appears("ok 0.8 T1 + 0.8 T2 = 60", "This is ΣFy on D.", "practice: 1 of 2")},
			{"alt+h", appears("hint 1")}, {"f2", appears("hint 2")},
			{`"T1 = 41 N" enter`, appears("!  T1 = 41 N")}, {"up", appears("entry: T1 = 41 N")}, {"up", appears("entry: 0.8 T1")}, {"down", appears("entry: T1 = 41 N")},
			{`ctrl+u "wei" tab`, appears("no name begins with wei")}, {`ctrl+u "3 T" tab`, appears("names: T1, T2")},
			{"ctrl+u ctrl+z", all(vanishes("!  T1 = 41 N"), appears("entry: T1 = 41 N"))},
			{"ctrl+w", lit("The task")}, {"pgdown", appears("above")}, {"pgup", vanishes("above")}, {"f6", lit("Picture in its plane")}, {"shift+f6", lit("The task")},
			{"f4", vanishes("Your work")}, {"esc", appears("Your work")},
			{"ctrl+u alt+w", appears("Show the solution?")}, {"esc esc", appears("Unknowns value")},
		}},
		{name: "practice, from the start", at: seating{w: 120, h: 36}, deeds: []deed{
			{`"traffic" alt+q`, appears("practice: 0 of 2 independent equations")}, {"esc", appears("choose a sheet")},
		}},
		{name: "problems of a set", at: seating{w: 120, h: 36}, deeds: []deed{
			{`"particles practise" enter`, appears("▸Lantern over the stage")}, {"down", appears("▸Feed trolley")}, {"up", appears("▸Lantern")},
			{"end", appears("▸Sheer legs")}, {"home", appears("▸Lantern")}, {"enter", appears("0 of 3 hints")}, {"esc esc", appears("choose a sheet")},
		}},
	}
}
