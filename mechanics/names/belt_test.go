package names_test

import (
	"math"
	"strings"
	"testing"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

const roundDrum = `plane = "xy"
asked = "R1 R2.x angle(R1, F) |R2|"
[points]
A = { at = "-2, -3", on = "particle" }
C = "0, 0"
B = { at = "2, -3", on = "particle" }
[lines]
R = { kind = "belt", path = "A C B", friction = "0.3", tight = "R2" }
F = { kind = "force", at = "A", along = "dir(C, A)", magnitude = "100 N" }
G = { kind = "force", at = "B", along = "dir(C, B)", magnitude = "R1 + 2*R2 - 2*R_1" }
[answers]
R1 = "100 N"
"R2.y" = "1 N"
`

// The tensions of a belt go with it, wherever they are named.
func TestRenameABelt(t *testing.T) {
	s := parse(t, roundDrum)
	edits, err := names.Rename(s, problem.ALine, "R", "rope")
	if err != nil {
		t.Fatal(err)
	}
	next, err := s.Apply(edits...)
	if err != nil {
		t.Fatal(err)
	}
	want := strings.NewReplacer("R_1", "rope1", "R1", "rope1", "R2", "rope2", "R =", "rope =").Replace(roundDrum)
	if got := string(next.Text()); got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	for _, c := range []struct{ what, to, want string }{
		{"R1", "S", "R1 is named after the line R"},
		{"R", "F", `the name "F" is already used for a line`},
	} {
		thing := problem.ALine
		if c.what != "R" {
			thing = problem.AnUnknown
		}
		if _, err := names.Rename(s, thing, c.what, c.to); err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s to %s: %v, want %s", c.what, c.to, err, c.want)
		}
	}
}

// What completes where a belt's tensions may stand.
func TestCompleteBelts(t *testing.T) {
	s := parse(t, roundDrum)
	for _, c := range []struct{ table, row, key, text, want string }{
		{"lines", "R", "tight", "", "R1 R2"},
		{"lines", "X", "magnitude", "2*R", "R1 R2"},
		{"", "asked", "", "R", "R1 R2"},
		{"", "asked", "", "R2.s", "size"},
		{"", "asked", "", "angle(R", "R1 R2"},
	} {
		var got []string
		for _, o := range names.Complete(s, sheet.Ref{Table: c.table, Row: c.row, Key: c.key}, c.text, len(c.text)) {
			got = append(got, o.Text)
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s %s %q: %v, want %s", c.row, c.key, c.text, got, c.want)
		}
	}
}

// The wrap is the angle by which the path changes its direction, or what is typed, of
// several turns too.
func TestWrap(t *testing.T) {
	for _, c := range []struct {
		cell string
		want float64 // in turns
	}{
		{"", math.Atan(1.5) / math.Pi},
		{`, wrap = "200 deg"`, 200. / 360},
		{`, wrap = "3*360 deg + 90 deg"`, 3.25},
		{`, wrap = "1.5 turn"`, 1.5},
		{`, wrap = "pi rad"`, 0.5},
		{`, wrap = "45"`, 0.125},
	} {
		p, errs := problem.Read(parse(t, strings.Replace(roundDrum, `, friction`, c.cell+`, friction`, 1)))
		if len(errs) > 0 {
			t.Errorf("%s: %v", c.cell, errs)
			continue
		}
		belts := p.Belts()
		if len(belts) != 1 || math.Abs(belts[0].Wrap-2*math.Pi*c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.cell, belts[0].Wrap, 2*math.Pi*c.want)
		}
	}
}
