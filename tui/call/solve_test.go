package call

import (
	"encoding/json"
	"strings"
	"testing"
)

func TestSolveRefuses(t *testing.T) {
	allRefused(t, []refused{
		{"solve --format xml missing.toml", "trivet: unknown format \"xml\". Try: text, json, markdown, latex or html\n"},
		{"solve --format json --working lamp.toml", "trivet: the format json contains no working. Try: --format text, markdown, latex or html with --working\n"},
		{"solve --format latex lamp.toml push.toml", "trivet: a LaTeX document contains one sheet, but 2 are named. Try: one of them\n"},
		{"solve --format html lamp.toml push.toml", "trivet: an HTML page contains one sheet, but 2 are named. Try: one of them\n"},
		{"solve missing.toml", missingSays},
		{"solve lamp", "lamp: there is no such file. Try: lamp.toml\n"},
		{"solve half.toml", halfSays},
		{"solve broken.toml", brokenSays},
	})
}

func TestSolve(t *testing.T) {
	const determinate, tension = "Lamp on a cable\n\nstatically determinate", "\n  T  = 10.0 N  tension\n"
	for _, c := range []struct {
		line  string
		first string   // of what is printed
		holds []string // further on
		says  string
		code  int
	}{
		{"solve lamp.toml", determinate, []string{tension}, "", 0},
		{"solve -", determinate, []string{tension}, "", 0},
		{"solve --ask T.x lamp.toml", determinate, []string{tension, "\nAsked\n  T.x  = 0 N\n"}, "", 0},
		{"solve --ask Q --ask T.x lamp.toml", determinate, []string{tension, "\nAsked\n  T.x  = 0 N\n"},
			"lamp.toml: --ask \"Q\": there is no result \"Q\". Try: an unknown, or a part of a line such as T1.x\n", CantDo},
		{"solve --ask Q -", determinate, []string{tension},
			"standard input: --ask \"Q\": there is no result \"Q\". Try: an unknown, or a part of a line such as T1.x\n", CantDo},
		{"solve misprint.toml", determinate, []string{tension}, "", Failed},
		{"solve push.toml", "Lamp on a cable\n\nnot possible as drawn, partially constrained", []string{"\n  T  = -10.0 N  compression\n"}, "", Failed},
		{"solve - misprint.toml", "standard input:\nLamp on a cable\n", []string{tension, "\n\nmisprint.toml:\nLamp on a cable\n"}, "", Failed},
		{"solve half.toml misprint.toml", "half.toml:\n\nmisprint.toml:\nLamp on a cable\n", []string{tension}, halfSays, CantDo},
	} {
		got := calls(t, strings.Fields(c.line)...)
		if got.err != c.says || got.code != c.code || !strings.HasPrefix(got.out, c.first) {
			t.Errorf("trivet %s: %+v\nwant exit code %d, %q, and printed first %q", c.line, got, c.code, c.says, c.first)
		}
		for _, text := range c.holds {
			if !strings.Contains(got.out, text) {
				t.Errorf("trivet %s prints\n%s\nwithout %q", c.line, got.out, text)
			}
		}
	}
}

// What does not read is an object too, so that a reader of many loses none.
func TestSolveUnreadableAsJSON(t *testing.T) {
	type fault struct {
		Line, Column int
		Says, Hint   string
	}
	for _, c := range []struct {
		sheet, title string
		fault        fault
		says         string
	}{
		{"half.toml", "Half a lamp", fault{3, 12, "expected a length, but 3 kN is a force", "a value in m"}, halfSays},
		{"broken.toml", "", fault{1, 7, "an = is missing after the name", "name = \"value\""}, brokenSays},
		{"missing.toml", "", fault{0, 0, "there is no such file", "another name, or make the sheet with `trivet new missing.toml`"}, missingSays},
	} {
		got := calls(t, "solve", "--format", "json", c.sheet)
		var o struct {
			Sheet, Title, Verdict string
			Errors                []fault
		}
		if err := json.Unmarshal([]byte(got.out), &o); err != nil {
			t.Fatalf("%s: %v\n%s", c.sheet, err, got.out)
		}
		if o.Sheet != c.sheet || o.Title != c.title || o.Verdict != "unreadable" || len(o.Errors) != 1 || o.Errors[0] != c.fault || got.err != c.says || got.code != CantDo {
			t.Errorf("%s: %+v, exit code %d, says %q", c.sheet, o, got.code, got.err)
		}
	}
}
