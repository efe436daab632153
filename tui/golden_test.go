package tui

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"

	"trivet/fixtures/long"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
)

var update = flag.Bool("update", false, "write the golden screens anew")

// crane is in space, holds every kind of member, a limit that fails, and a cell
// that says something in each pane. At D: a load of 300 N down; the cables run
// along (-2, 1, 2)/3 and (-2, -1, 2)/3, the strut pushes along (2, 0, 1)/√5: across
// 4/3 T = 2/√5 S, upwards 4/3 T + S/√5 = 2 T = 300 N, so T = 150 N, S = 223.6 N.
// The answer for S is meant to be wrong.
const crane = `title = "Wall crane"
up = "+z"
asked = "TA TB S TA.x angle(TA, TB)"

[units]
length = "m"
force = "N"

[given]
load = { value = "300 N", range = "100 N .. 500 N" }

[points]
D = { at = "2, 0, 1", on = "particle" }
A = "0, 1, 3"
B = "0, -1, 3"
C = "0, 0, 0"

[lines]
TA = { kind = "cable", path = "D A", limit = "120 N" }
TB = { kind = "cable", path = "D B" }
S = { kind = "strut", path = "C D" }
load1 = { kind = "force", at = "D", along = "-z", magnitude = "load" }

[answers]
TA = "150.0 N"
S = "447 N"
`

// beam lies on a pin and a roller under everything that a body can bear: its
// weight of 600 N at M, 1 kN at C, 600 N/m over B to D, 900 N m at its end.
// Moments about A: 6 B = 600*3 + 1000*2 + 600*2*7 - 900 = 11 300, B = 1883 N.
const beam = `title = "Loaded beam"
plane = "xy"
asked = "Ax Ay B"

[points]
A = { at = "0, 0", on = "beam" }
C = { at = "2, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
D = { at = "8, 0", on = "beam" }

[bodies]
beam = { weight = "600 N", centre = "(A + B)/2" }

[lines]
P = { kind = "force", at = "C", along = "-y", magnitude = "1 kN" }

[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y", limit = "1.5 kN" }

[couples]
M0 = { on = "beam", magnitude = "900 N m" }

[distributed]
q = { path = "B D", along = "-y", magnitude = "600 N/m" }
`

// fork is 120 N on three cables in a plane, along (-3, 4)/5, (0, 1) and (3, 4)/5:
// T1 = T3 and 1.6 T1 + T2 = 120 N, so T1 is at most 75 N and T2 at most 120 N.
const fork = `plane = "xy"
[given]
W = { value = "120 N", range = "80 N .. 200 N", step = "10 N" }
[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "0, 4"
C = "3, 4"
[lines]
T1 = { kind = "cable", path = "D A", limit = "100 N" }
T2 = { kind = "cable", path = "D B" }
T3 = { kind = "cable", path = "D C" }
F = { kind = "force", at = "D", along = "-y", magnitude = "W" }
`

func golden(t *testing.T, name, got string) {
	t.Helper()
	lines := strings.Split(got, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	got = strings.Join(lines, "\n") + "\n"
	file := filepath.Join("testdata", name+".txt")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if rounded(got) != rounded(string(want)) {
		t.Errorf("%s:\n%s\nwant\n%s", name, got, want)
	}
}

// rounding differs between machines that fuse a multiplication and an addition and
// those that do not; the digits of it are not compared.
var rounding = regexp.MustCompile(`-?\d\.\de-1[4-9]`)

func rounded(screen string) string {
	return rounding.ReplaceAllStringFunc(screen, func(s string) string { return strings.Repeat("~", len(s)) })
}

func TestScreens(t *testing.T) {
	for _, c := range []struct {
		name  string
		w, h  int
		sheet string
		keys  []string
	}{
		{"80x24", 80, 24, crane, nil},
		{"80x24-stale", 80, 24, crane, []string{"down", "right", "0", ",", "1"}},
		{"80x24-picture", 80, 24, crane, []string{"ctrl+t"}},
		{"120x36", 120, 36, crane, nil},
		{"200x60", 200, 60, crane, []string{"alt+m"}},
		{"80x24-plain", 80, 24, hanging, []string{"alt+i", "a"}},
		{"80x24-beam", 80, 24, beam, []string{"f7 s"}},
		{"80x24-beam-picture", 80, 24, beam, []string{"alt+i"}},
		{"80x24-beam-plain", 80, 24, beam, []string{"alt+i", "a"}},
		{"80x24-kinds", 80, 24, beam, []string{"f7 s", "down", "right", "r"}},
		{"120x36-beam", 120, 36, beam, nil},
		{"200x60-beam", 200, 60, beam, []string{"f7 s"}},
		{"80x24-board", 80, 24, beam, []string{"f5", "space"}},
		{"120x36-board", 120, 36, crane, []string{"f5", "9"}},
		{"200x60-board", 200, 60, beam, []string{"f5", "h", "end"}},
		{"80x24-steps", 80, 24, beam, []string{"alt+y", "b", "l", "down"}},
		{"80x24-checks", 80, 24, crane, []string{"f7 c", "down"}},
		{"80x24-working", 80, 24, beam, []string{"f7 w", "pgdown", "pgdown", "down"}},
		{"80x24-limits", 80, 24, crane, []string{"alt+l", "right", "right"}},
		{"120x36-hand-solution", 120, 36, beam, []string{"alt+h", "down", "right"}},
		{"120x36-ranges", 120, 36, fork, []string{"f7 r", "down", "right"}},
		{"200x60-working", 200, 60, crane, []string{"f7 w", "end"}},
		{"40x10", 40, 10, crane, nil},
	} {
		r := newRig(t, c.sheet, c.w, c.h)
		r.keys(c.keys...)
		golden(t, c.name, r.screen())
	}
}

// checkFrame holds every frame to its size.
func checkFrame(t testing.TB, m Model) {
	t.Helper()
	if m.w == 0 || m.h == 0 {
		return
	}
	lines := strings.Split(m.frame(), "\n")
	if len(lines) != m.h {
		t.Fatalf("%d lines on a screen of %d by %d", len(lines), m.w, m.h)
	}
	for i, l := range lines {
		if w := ansi.StringWidth(l); w != m.w {
			t.Fatalf("line %d of %d by %d has %d columns: %q", i, m.w, m.h, w, l)
		}
	}
}

func TestEverySizeIsFilledExactly(t *testing.T) {
	odd := strings.Replace(crane, "Wall crane", "Wändkran 起重机 e\\u0301 \\u202e", 1)
	r := newRig(t, odd, 1, 1)
	var sizes [][2]int
	for w := 1; w < 230; w += 9 {
		for h := 1; h < 70; h += 5 {
			sizes = append(sizes, [2]int{w, h})
		}
	}
	for _, size := range long.Share(sizes) {
		r.m.resize(size[0], size[1])
		for _, k := range []string{"f7 g", "f7 s", "alt+m", "alt+y", "pgdown", "right", "alt+i", "ctrl+e", "?", "end", "esc", "ctrl+e", "f5", "space", "p", "p", "p", "l", "esc", "esc", "alt+s", "end", "x", "esc", "esc", "alt+p"} {
			r.keys(k)
			checkFrame(t, r.m)
		}
	}
}

func TestHelpListsEveryKeyThatHolds(t *testing.T) {
	r := newRig(t, crane, 80, 24)
	r.keys("?")
	var all strings.Builder
	for _, line := range r.m.help.Lines(r.m.helpFor(), 77) {
		for _, s := range line {
			all.WriteString(s.Text)
		}
		all.WriteByte('\n')
	}
	text := all.String()
	for _, b := range keys.Table() {
		if line := strings.Join(b.Keys, ", "); !strings.Contains(text, line) || !strings.Contains(text, strings.Fields(b.Help)[0]) {
			t.Errorf("the help does not list %s: %s", line, b.Help)
		}
	}
	for _, piece := range []string{"tolerances", "supports", "qualified person decides"} {
		if !strings.Contains(text, piece) {
			t.Errorf("the help does not hold %q", piece)
		}
	}
	seen := map[string]bool{}
	for range 60 {
		for _, line := range strings.Split(r.screen(), "\n") {
			seen[strings.TrimSpace(line)] = true
		}
		r.keys("pgdown")
	}
	for _, line := range strings.Split(text, "\n") {
		if l := strings.TrimSpace(line); l != "" && !seen[l] {
			t.Errorf("scrolling never shows %q", l)
		}
	}
}

func TestAPlaneHidesTheViewsItDoesNotHave(t *testing.T) {
	r := newRig(t, hanging, 80, 24)
	r.keys("alt+i")
	if strings.Contains(r.screen(), "left/right: turn") {
		t.Error("a plane offers a side view")
	}
	r.keys("s")
	r.sees("one view")
	r = newRig(t, crane, 80, 24)
	r.keys("alt+i")
	r.sees("left/right: turn")
	r.keys("s")
	r.sees("Picture side")
	r.keys("right")
	r.sees("Picture in space", "turned 105")
}

func TestATerminalOfASCIIGetsASCII(t *testing.T) {
	s, err := sheet.Parse([]byte(strings.Replace(crane, "Wall crane", "Wändkran 世", 1)))
	if err != nil {
		t.Fatal(err)
	}
	for _, keys := range [][]string{nil, {"alt+i"}, {"?", "end"}, {"alt+m", "down", "x"}, {"f7 s", "ctrl+n", "j", "A", "enter"}, {"f5", "8"}, {"f5", "end"}, {"f5", "1", "0"}} {
		r := rigOf(t, Options{Sheet: s, Width: 120, Height: 36, Env: []string{"LANG=C"}})
		r.keys(keys...)
		checkFrame(t, r.m)
		for _, c := range r.screen() {
			if c >= 0x80 {
				t.Fatalf("%q is not ASCII in\n%s", c, r.screen())
			}
		}
	}
}
