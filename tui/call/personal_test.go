package call

import (
	"os"
	"strings"
	"testing"
	"time"

	"trivet/tui/record"
)

// worked makes calls in a folder with the week's set, where A. Student has worked on both
// of its problems.
func worked(t *testing.T, lines ...string) said {
	t.Helper()
	local := time.Local
	time.Local = time.UTC
	t.Cleanup(func() { time.Local = local })
	state := t.TempDir()
	s, _, err := record.Open(record.File(state))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []record.Event{
		{Problem: record.Problem{Set: "week", Name: "load"}, What: record.Entry, Text: "T1 = 3 m", Verdict: "unreadable"},
		{Problem: record.Problem{Set: "week", Name: "lamp"}, What: record.Entry, Text: "T = 11 N", Kind: "value", Verdict: "wrong"},
		{Problem: record.Problem{Set: "week", Name: "lamp"}, What: record.Hint, Stage: 1},
		{Problem: record.Problem{Set: "week", Name: "lamp"}, What: record.Entry, Text: "ΣFy: T - 10 = 0", Kind: "equation", Verdict: "right"},
		{Problem: record.Problem{Set: "week", Name: "lamp"}, What: record.Done, Points: 3.6, Of: 4},
		{Problem: record.Problem{Name: "lamp"}, What: record.Entry, Text: "T = 10 N", Kind: "value", Verdict: "right"},
	} {
		e.At = time.Date(2026, 12, 7, 9, 0, 0, 0, time.UTC)
		if err := s.Add("A. Student", e); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	for i := range lines {
		lines[i] = strings.NewReplacer("WHO", "--state "+state+" --person A._Student").Replace(lines[i])
	}
	return inFolder(t, nil, lines...)
}

// A student's own work goes on a page, of a sheet and of the problems of a set.
func TestPageMine(t *testing.T) {
	for _, c := range []struct {
		line, out string
		files     map[string][]string // what each has
		without   string
	}{
		{"page lamp.toml --mine WHO -o work.md", "", map[string][]string{"work.md": {"Name: A. Student", "T = 10 N", "1 entry and 0 hints; not done."}}, "11 N"},
		{
			"page week.toml --mine WHO -o work --as md", "work/lamp.md: the work to hand in\nwork/load.md: the work to hand in\n",
			map[string][]string{
				"work/lamp.md": {"Name: A. Student", "Date: ....", "T = 11 N", "ΣFy: T - 10 = 0", "2 entries and 1 hint; done on 7 December 2026 at 09:00: 3.6 of 4 points."},
				"work/load.md": {"1 entry and 0 hints; not done."},
			}, "Working",
		},
		{"page week.toml --problem lamp --mine WHO -o - --as md", "## Own work", nil, "Working"},
	} {
		got := worked(t, c.line)
		if got.code != 0 || !strings.Contains(got.out, c.out) || strings.Contains(got.out, c.without) {
			t.Errorf("%s: %+v", c.line, got)
		}
		for file, all := range c.files {
			text, err := os.ReadFile(file)
			if err != nil {
				t.Error(err)
			}
			for _, want := range all {
				if !strings.Contains(string(text), want) {
					t.Errorf("%s: no %q", file, want)
				}
			}
			if strings.Contains(string(text), c.without) {
				t.Errorf("%s has %q", file, c.without)
			}
		}
	}
}

// The worked solution of a person's own values is another's to have.
func TestPageOfPersonalValues(t *testing.T) {
	got := worked(t, "page week.toml --problem load WHO -o mine.md", "page week.toml --problem load -o all.md")
	mine, _ := os.ReadFile("mine.md")
	all, _ := os.ReadFile("all.md")
	if got != (said{}) || !strings.Contains(string(mine), "## Working") || string(mine) == string(all) {
		t.Errorf("%+v; %d and %d bytes", got, len(mine), len(all))
	}
}

func TestPageMineRefuses(t *testing.T) {
	for _, c := range []struct{ line, want string }{
		{"page lamp.toml --mine --task -o x.md", "trivet: a page with one's own work is neither a task to hand out nor a field page. Try: leave out --task and --field, or --mine\n"},
		{"page lamp.toml --problem lamp -o x.md", "trivet: --problem names a problem of a set, and this is a sheet. Try: leave it out, or name the file of the set\n"},
		{"page lamp.toml --person Ada -o x.md", "trivet: --person and --state say whose work or values are meant, and this page has neither. Try: --mine, or --problem with a set\n"},
		{"page push.toml --mine WHO -o x.md", "record: the record has nothing of A. Student on \"push\". Try: practise it first\n"},
		{"page lamp.toml --mine WHO2 -o x.md", "RECORD: the record has no person named \"A. Student2\". Try: A. Student\n"},
		{"page week.toml --problem lump --mine WHO -o x.md", "trivet: the set has no problem \"lump\". Try: lamp\n"},
		{"page - --mine WHO -o x.md", "trivet: the record has no work on standard input. Try: the file of the sheet by its name\n"},
	} {
		got := worked(t, c.line)
		if i := strings.Index(got.err, "record.db"); i >= 0 {
			got.err = "RECORD" + got.err[i+len("record.db"):]
		}
		if got != (said{"", c.want, CantDo}) {
			t.Errorf("trivet %s:\n%+v, want\n%s", c.line, got, c.want)
		}
	}
}
