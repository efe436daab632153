package call

import (
	"strings"
	"testing"
	"unicode/utf8"

	"trivet/fixtures"
	"trivet/mechanics/report"
)

// screen is what the help has to fit on.
const screenW, screenH = 80, 24

// The help names every command, in the order of use, on one screen.
func TestUsageIsOneScreen(t *testing.T) {
	got := calls(t, "help")
	if got.code != 0 || got.err != "" || got != calls(t, "--help") || got != calls(t, "-h") {
		t.Fatalf("%+v", got)
	}
	if n := strings.Count(got.out, "\n"); n > screenH {
		t.Errorf("%d lines", n)
	}
	at := 0
	for _, want := range []string{"trivet solve SHEET...", "trivet check SHEET...", "trivet page SHEET -o FILE", "trivet sweep SHEET GIVEN",
		"trivet vary SHEET -n COUNT -o FOLDER", "trivet mark SHEET ANSWERS", "trivet try SHEET", "trivet record [NAME]", "trivet new SHEET", "trivet schema", "trivet completion SHELL", "trivet help [COMMAND | TOPIC]",
		"Topics: workbench, ", "Exit codes: ", "Caution: "} {
		i := strings.Index(got.out[at:], want)
		if i < 0 {
			t.Errorf("no %q behind the others:\n%s", want, got.out)
		}
		at += max(i, 0)
	}
	if whole := strings.Join(strings.Fields(got.out), " "); !strings.HasSuffix(whole, report.Caution+".") {
		t.Errorf("the caution is not whole:\n%s", got.out)
	}
}

// Every command has a page of its own, in one form: what it is called with, what it
// does, its flags, its exit code, examples, where to read on.
func TestEveryCommandHasAPage(t *testing.T) {
	for _, name := range []string{"solve", "check", "page", "sweep", "vary", "mark", "try", "record", "new", "schema", "completion", "completion bash", "help"} {
		got := calls(t, append(strings.Fields(name), "--help")...)
		if got.code != 0 || !strings.HasPrefix(got.out, "trivet "+name) || got.err != "" {
			t.Errorf("%s: %+v", name, got)
		}
		if name != "help" && got != calls(t, append([]string{"help"}, strings.Fields(name)...)...) {
			t.Errorf("trivet help %s is another page than its --help", name)
		}
		for _, foreign := range []string{"Usage:", "[flags]", "Available Commands", "Flags:", "Use \"", "help for"} {
			if strings.Contains(got.out, foreign) {
				t.Errorf("the page of %s says %q", name, foreign)
			}
		}
		for l := range strings.Lines(got.out) {
			if n := utf8.RuneCountInString(l) - 1; n > screenW {
				t.Errorf("the page of %s is %d wide: %q", name, n, l)
			}
		}
	}
	for _, want := range []string{"\nExit code 1: a sheet has no single solution", "\nFlags\n", "--ask RESULT   ", "'angle(T1, T2)'", "(default text)", "\nExamples\n  trivet solve mast.toml\n", "\n\nMore\n`trivet help verdicts`"} {
		if got := calls(t, "solve", "--help"); !strings.Contains(got.out, want) {
			t.Errorf("the page of solve does not say %q:\n%s", want, got.out)
		}
	}
}

// To a file or a program a topic goes as it is written, byte by byte; on a terminal it is
// set in its width.
func TestHelpOnATopic(t *testing.T) {
	for _, topic := range fixtures.Topics() {
		got := calls(t, "help", topic.Name)
		if got != (said{topic.Text, "", 0}) {
			t.Errorf("trivet help %s is not the topic: exit code %d, %q", topic.Name, got.code, got.err)
		}
		var out strings.Builder
		c := &Call{Stdout: &out, width: 60}
		if code := run(c, "help", topic.Name); code != 0 || strings.Contains(out.String(), "|---|") || !strings.HasPrefix(out.String(), topic.Title+"\n") {
			t.Errorf("on a terminal trivet help %s says\n%s", topic.Name, &out)
		}
	}
}

// What completes is explained in our words.
func TestCompletionsAreExplained(t *testing.T) {
	for _, c := range []struct{ line, want string }{
		{"__complete help ve", "verdicts\tVerdicts\n"}, {"__complete help so", "solve\tsolve sheets and print the results\n"},
		{"__complete solve --", "--help\tprint this help\n"}, {"__complete completion ", "bash\tprint the script of bash\n"},
	} {
		if got := calls(t, append(strings.Fields(c.line), map[bool][]string{true: {""}}[strings.HasSuffix(c.line, " ")]...)...); !strings.Contains(got.out, c.want) {
			t.Errorf("trivet %s: %q, want %q", c.line, got.out, c.want)
		}
	}
}
