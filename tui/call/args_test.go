package call

import "testing"

func TestArgs(t *testing.T) {
	const none = "trivet: no sheet is named. Try: a file, or - for standard input\n"
	allRefused(t, []refused{
		{"lamp.toml push.toml", "trivet: the workbench opens one sheet, but 2 are named. Try: `trivet solve` for several\n"},
		{"-", "trivet: the workbench opens a file, not standard input. Try: `trivet solve -`\n"},
		{"sovle lamp.toml", "trivet: unknown command \"sovle\". Try: `trivet solve`\n"},
		{"nwe", "trivet: unknown command \"nwe\". Try: `trivet new`\n"},
		{"solve", none},
		{"check", none},
		{"page", none},
		{"schema lamp.toml", "trivet: `trivet schema` takes no arguments, but \"lamp.toml\" is given. Try: leave it out\n"},
	})
	// an empty name, such as that of a variable that is not set
	if got, want := calls(t, "solve", "lamp.toml", ""), (said{"", none, CantDo}); got != want {
		t.Errorf("an empty name: %+v, want %+v", got, want)
	}
	// a sheet is opened, be it called almost like a command
	for _, args := range [][]string{nil, {"lamp.toml"}, {"chek"}} {
		if got := calls(t, args...); got != (said{}) {
			t.Errorf("trivet %q: %+v", args, got)
		}
	}
}

func TestOwnWords(t *testing.T) {
	const shells = "trivet: expected the name of a shell. Try: `trivet completion bash`, or zsh, fish, powershell\n"
	allRefused(t, []refused{
		{"help sovle", "trivet: unknown command or topic \"sovle\". Try: `trivet help solve`\n"},
		{"help cell", "trivet: unknown command or topic \"cell\". Try: `trivet help cells`\n"},
		{"help nonsense", "trivet: unknown command or topic \"nonsense\". Try: `trivet help`\n"},
		{"help cells sheet", "trivet: the help is of one command or topic, but 2 are named. Try: `trivet help cells`\n"},
		{"completion", shells},
		{"completion tcsh", shells},
		{"completion bash x", "trivet: `trivet completion bash` takes no arguments, but \"x\" is given. Try: leave it out\n"},
	})
}
