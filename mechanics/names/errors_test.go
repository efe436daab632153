package names

import (
	"flag"
	"os"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

var update = flag.Bool("update", false, "write the messages found into testdata/errors.txt")

// bases are sound sheets; each case of testdata/errors.txt spoils one of them.
func bases() map[string]string {
	return map[string]string{
		"empty": "",
		"knot": `up = "+z"
[given]
h = "3 m"
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "4 m, 0, h"
[lines]
T = { kind = "cable", path = "P A" }
W = { kind = "weight", at = "P", magnitude = "20 kg" }
`,
		"beam": `plane = "xy"
[points]
O = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
[joints]
O = { kind = "pin" }
B = { kind = "roller", normal = "+y" }
[lines]
F = { kind = "force", at = "B", along = "-y", magnitude = "50 N" }
`,
		"yoke": `plane = "xy"
[given]
q = "2 kN"
Ay = "3 N"
[points]
P = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"
[lines]
T1 = { kind = "cable", path = "P A", limit = "200 N" }
T2 = { kind = "cable", path = "P B" }
F = { kind = "force", at = "P", along = "-y", magnitude = "100 N" }
`,
		"wedge": `plane = "xy"
[points]
B = { at = "0, 1", on = "particle" }
W = { at = "0, 0", on = "particle" }
A = { at = "1, 1", on = "block" }
C = { at = "2, 2", on = "block cart" }
D = { at = "3, 2", on = "cart" }
[lines]
F = { kind = "contact", path = "B W", along = "polar(82 deg)" }
N = { kind = "contact", path = "A D" }
[joints]
J = { kind = "rough-surface", on = "B W", normal = "+y" }
C = { kind = "pin" }
`,
		"capstan": `plane = "xy"
[given]
mu = "0.3"
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
H = "0, 5"
B = { at = "2, -3", on = "particle" }
D = { at = "3, 3", on = "arm" }
E = { at = "4, 4", on = "arm" }
[lines]
R = { kind = "belt", path = "A C B", wrap = "200 deg", friction = "mu" }
F = { kind = "force", at = "A", along = "-y", magnitude = "50 N" }
G = { kind = "force", at = "D", along = "-y", magnitude = "50 N" }
`,
		"gate": `[points]
O = { at = "0, 0, 0", on = "gate" }
B = { at = "0, 0, 4", on = "gate post" }
C = { at = "0, 3, 4", on = "post" }
[joints]
O = { kind = "hinge", axis = "+y" }
B = { kind = "ball-and-socket" }
C = { kind = "fixed" }
[couples]
M = { on = "gate", about = "+y", magnitude = "50 N m" }
[distributed]
q = { on = "gate", path = "O B", along = "+x", magnitude = "2 kN/m" }
`,
	}
}

// spoil applies a case, BASE: OLD => NEW. With no OLD, NEW goes to the end; an
// OLD of ^ puts it before the first line.
func spoil(t *testing.T, c string) string {
	t.Helper()
	name, edit, ok := strings.Cut(c, ": ")
	base, known := bases()[name]
	from, to, arrow := strings.Cut(edit, "=>")
	if !ok || !known || !arrow {
		t.Fatalf("no case: %q", c)
	}
	from, to = strings.TrimSuffix(from, " "), strings.ReplaceAll(strings.TrimPrefix(to, " "), `\n`, "\n")
	switch {
	case from == "":
		return base + to + "\n"
	case from == "^":
		return to + "\n" + base
	case strings.Count(base, from) != 1:
		t.Fatalf("%q is there %d times: %q", from, strings.Count(base, from), c)
	}
	return strings.Replace(base, from, to, 1)
}

// messages gives a text's errors as they stand on standard error, then what is read by
// nothing, then its doubts.
func messages(t *testing.T, text string) []string {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		return []string{err.Error()}
	}
	p, errs := Read(problem.NewReader(), s)
	var out []string
	for _, says := range []struct {
		kind string
		of   []problem.Error
	}{{"", errs}, {"unread ", p.Unread}, {"doubt ", p.Doubts}} {
		for _, e := range says.of {
			out = append(out, says.kind+e.Placed(s).Error())
			checkSpan(t, s, e)
		}
	}
	return out
}

// checkSpan: an error of a cell marks characters of that cell, others none.
func checkSpan(t *testing.T, s *sheet.Sheet, e problem.Error) {
	t.Helper()
	c, _ := s.Cell(e.Ref)
	if e.Span.Start < 0 || e.Span.End < e.Span.Start || e.Span.End > len(c.Text) {
		t.Errorf("the span %v of %q lies outside %q", e.Span, e.Msg, c.Text)
	}
	if e.Msg == "" || strings.HasSuffix(e.Msg, ".") && !strings.HasSuffix(e.Msg, "..") || strings.HasSuffix(e.Hint, ".") {
		t.Errorf("the message %q: %q is not one", e.Msg, e.Hint)
	}
}

// TestErrors holds the place, the message and the hint of every error and every note.
func TestErrors(t *testing.T) {
	for _, file := range []string{"testdata/errors.txt", "testdata/notes.txt"} {
		testMessages(t, file)
	}
}

func testMessages(t *testing.T, file string) {
	golden, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for name, base := range bases() {
		if got := messages(t, base); len(got) > 0 && base != "" {
			t.Fatalf("the base %s is not sound: %v", name, got)
		}
	}
	var out strings.Builder
	for block := range strings.SplitSeq(strings.TrimSpace(string(golden)), "\n\n") {
		if strings.HasPrefix(block, "#") {
			out.WriteString(block + "\n\n")
			continue
		}
		c, want, _ := strings.Cut(block, "\n")
		got := strings.Join(messages(t, spoil(t, c)), "\n")
		if got == "" {
			got = "no error"
		}
		if got != want && !*update {
			t.Errorf("%s\ngot\n%s\nwant\n%s", c, got, want)
		}
		out.WriteString(c + "\n" + got + "\n\n")
	}
	if *update {
		if err := os.WriteFile(file, []byte(strings.TrimSpace(out.String())+"\n"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
