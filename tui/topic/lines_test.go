package topic_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/tui/grid"
	"trivet/tui/topic"
)

// text is a line without its looks.
func text(l []doc.Span) string {
	var b strings.Builder
	for _, s := range l {
		b.WriteString(s.Text)
	}
	return b.String()
}

// Every file of the folder is a topic, with a title and something to read, each named
// in one list.
func TestEveryTopicIsListed(t *testing.T) {
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	names := topic.Names()
	if len(names) != len(files) {
		t.Errorf("%d topics, and %d files", len(names), len(files))
	}
	for _, name := range names {
		d, ok := topic.Of(name)
		if !ok || d.Title == "" || len(d.Sections[0].Blocks) == 0 {
			t.Errorf("%s: title %q", name, d.Title)
		}
	}
	if _, ok := topic.Of("no-such-topic"); ok {
		t.Error("there is a topic that is in no list")
	}
}

// smallScreen is what the help has of a screen of 80 columns.
const smallScreen = 76

// Each word of a topic is shown, and no line is wider than the screen.
func TestNothingIsLostAtAnyWidth(t *testing.T) {
	for _, name := range topic.Names() {
		d, _ := topic.Of(name)
		var want []string
		for _, w := range []int{smallScreen, 78, 200} {
			var got []string
			for _, l := range topic.Lines(d, w) {
				if n := grid.Width(text(l)); n > w {
					t.Errorf("%s is %d wide in %d columns: %q", name, n, w, text(l))
				}
				got = append(got, text(l))
			}
			letters := strings.Split(strings.Join(strings.Fields(strings.Join(got, "")), ""), "")
			slices.Sort(letters)
			if marks := slices.DeleteFunc(letters, func(s string) bool { return s == "-" }); want == nil {
				want = marks
			} else if !slices.Equal(marks, want) {
				t.Errorf("%s shows %d characters in %d columns, and %d in %d", name, len(marks), w, len(want), smallScreen)
			}
		}
	}
}

// What is typed in a topic stays together, and the table keeps its columns.
func TestLines(t *testing.T) {
	d, _ := topic.Of("supports")
	var got []string
	for _, l := range topic.Lines(d, 78) {
		got = append(got, text(l))
	}
	all := strings.Join(got, "\n")
	for _, want := range []string{
		"Supports and connections\n\nA row of `[joints]`",
		"\n  B = { kind = \"roller\", normal = \"+y\", limit = \"5 kN\" }\n",
		"\n\nFriction\n",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("the lines do not hold %q:\n%s", want, all)
		}
	}
	if !strings.Contains(all, "journal-bearing  -                        2 forces, 2 moments; axis\n") {
		t.Errorf("the columns do not stand below each other:\n%s", all)
	}
	for _, l := range topic.Spoken(d) {
		if strings.Contains(l, "  ") {
			t.Errorf("a reader hears a column: %q", l)
		}
	}
	if said := topic.Spoken(d); !slices.ContainsFunc(said, func(l string) bool {
		return strings.HasPrefix(l, "support pin; in the plane 2 forces; in space 3 forces, 2 moments; axis")
	}) {
		t.Errorf("no row is said in %q", said)
	}
}
