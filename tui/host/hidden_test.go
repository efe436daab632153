package host

import (
	"cmp"
	"fmt"
	"io"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"

	length "trivet/fixtures/long"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
	"trivet/tui/host/door"
	"trivet/tui/host/line"
)

// askew hangs on two cables of which the second is askew, so that its components and what
// follows are no numbers of the sheet: u2 = (2, 5)/√29.
const askew = `title = "Lamp askew"
plane = "xy"
asked = "T1 T2"
figures = 4

[given]
W = "61 ± 1 N"

[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "2, 5"

[lines]
T1 = { kind = "cable", path = "D A", limit = "50 N" }
T2 = { kind = "cable", path = "D B", limit = "45 N" }
F = { kind = "force", at = "D", along = "-y", magnitude = "W" }

[answers]
source = "own"
T1 = "26.5 N"
`

// told are what a screen may not hold while a presenter hides so much.
func told(t *testing.T, hides int) *regexp.Regexp {
	t.Helper()
	s, err := sheet.Parse([]byte(askew))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		t.Fatal(errs[0])
	}
	solution := statics.Solve(p)
	var all []string
	for _, x := range solution.X {
		for _, figures := range []int{3, 4} {
			all = append(all, regexp.QuoteMeta(p.Units.Force.Number(x.Value, figures)))
		}
	}
	all = append(all, `26\.5`, `T[12] \([TC]\)`, `\bin tension`, `(?i)utilisation [0-9]`)
	const u2 = `0\.(37|371|3714|93|928|929|9285)\b`
	if hides > 1 {
		all = append(all, u2+` ?·? ?T2`, `-0\.60* +`+u2)
	}
	if hides > 2 {
		all = append(all, u2, `5\.3(85|9)`, `-0\.60*, 0\.80*`)
	}
	return regexp.MustCompile(strings.Join(all, "|"))
}

// pressed are the keys that there are, as a terminal sends them.
func pressed() (all []string) {
	for c := ' '; c <= '~'; c++ {
		all = append(all, string(c), "\x1b"+string(c))
	}
	for c := 'a'; c <= 'z'; c++ {
		if c != 'c' && c != 'q' { // which leave
			all = append(all, string(c-'a'+1))
		}
	}
	for _, end := range []string{"A", "B", "C", "D", "H", "F", "Z", "5~", "6~", "2~", "3~", "15~", "17~", "18~", "19~", "20~", "21~", "23~", "24~"} {
		all = append(all, "\x1b["+end)
		if len(end) == 1 {
			all = append(all, "\x1b[1;2"+end, "\x1b[1;3"+end, "\x1b[1;5"+end)
		}
	}
	return append(all, "\x1bOP", "\x1bOQ", "\x1bOR", "\x1bOS", "\x7f", "\x1b\x1b")
}

// hiding is a classroom on the sheet askew, whose presenter hides so much, on the board or
// off it.
func hiding(t *testing.T, hides int, board bool) (r *running, p *guest) {
	t.Helper()
	k := key(t)
	r = start(t, Settings{Presenters: keys(t, k), Sheet: write(t, filepath.Join(t.TempDir(), "askew.toml"), askew)}, nil)
	p = r.visit(k, 120, 40)
	p.sees("determinate")
	p.keys("\x1bb")
	p.sees("step 1 of")
	for i := range hides {
		p.keys("h")
		p.sees([]string{"answers hidden", "answers and equations hidden", "answers, equations and vectors hidden"}[i])
	}
	if !board {
		p.keys(escape)
		waitFor(t, "the board is left", func() bool { return !strings.Contains(p.screen(), "step 1 of") })
	}
	return r, p
}

// While the presenter hides answers, equations or vectors, no byte that a watcher's line
// gets tells them, whatever keys the watcher presses, on a screen of whatever size.
func TestWatchersLinesTellNothingHidden(t *testing.T) {
	for hides := 1; hides <= 3; hides++ {
		for _, board := range []bool{true, false} {
			rng := rand.New(rand.NewPCG(uint64(hides), 5))
			r, p := hiding(t, hides, board)
			leak := told(t, hides)
			for _, size := range [][2]int{{80, 24}, {160, 50}} {
				g := r.visit(nil, size[0], size[1])
				g.sees("following the presenter")
				typed, found := "", ""
				g.mu.Lock()
				g.reads = func(bytes []byte, screen string) {
					for _, text := range []string{strip(string(bytes)), screen} {
						if at := leak.FindString(text); at != "" && found == "" {
							found = fmt.Sprintf("%q, behind the keys %q, on\n%s", at, typed, screen)
						}
					}
				}
				g.mu.Unlock()
				all := pressed()
				rng.Shuffle(len(all), func(i, j int) { all[i], all[j] = all[j], all[i] })
				for _, k := range all[:min(len(all), length.Of(60, 1000))] {
					g.mu.Lock()
					typed += k
					g.mu.Unlock()
					g.keys(k)
				}
				p.keys("\x1b[D")
				g.keys("x" + live + live) // whatever the last key left half read
				g.sees("following the presenter")
				g.mu.Lock()
				if found != "" {
					t.Errorf("hiding %d, board %v: %s", hides, board, found)
				}
				g.reads = nil
				g.mu.Unlock()
			}
		}
	}
}

// The same for each key behind each pane, drawn each time: over a line frames are left out
// where keys come faster.
func TestNoViewTellsWhatIsHidden(t *testing.T) {
	msgs := []tea.KeyPressMsg{}
	for c := ' '; c <= '~'; c++ {
		msgs = append(msgs, tea.KeyPressMsg{Code: c, Text: string(c)}, tea.KeyPressMsg{Code: c, Mod: tea.ModAlt})
		if c >= 'a' && c <= 'z' && c != 'c' && c != 'q' && c != 'l' {
			msgs = append(msgs, tea.KeyPressMsg{Code: c, Mod: tea.ModCtrl})
		}
	}
	for _, code := range []rune{tea.KeyUp, tea.KeyDown, tea.KeyLeft, tea.KeyRight, tea.KeyHome, tea.KeyEnd, tea.KeyPgUp, tea.KeyPgDown, tea.KeyTab, tea.KeyEnter, tea.KeyEscape, tea.KeyF1, tea.KeyF2, tea.KeyF3, tea.KeyF4, tea.KeyF5, tea.KeyF6, tea.KeyF7, tea.KeyF8, tea.KeyF9} {
		msgs = append(msgs, tea.KeyPressMsg{Code: code}, tea.KeyPressMsg{Code: code, Mod: tea.ModAlt}, tea.KeyPressMsg{Code: code, Mod: tea.ModShift})
	}
	places := [][]tea.KeyPressMsg{{{Code: 'b', Mod: tea.ModAlt}}, {{Code: '?', Text: "?"}}, {{Code: 'y', Mod: tea.ModAlt}}}
	for _, c := range "gpfsmeyicwhrl" {
		places = append(places, []tea.KeyPressMsg{{Code: tea.KeyF7}, {Code: c, Text: string(c)}})
	}
	for hides := 0; hides <= 3; hides++ { // 0: that the test would see it
		for _, board := range []bool{true, false} {
			r, _ := hiding(t, hides, board)
			class, leak := r.service.(*classroom), told(t, cmp.Or(hides, 3))
			found := map[string]bool{}
			rng := rand.New(rand.NewPCG(uint64(hides), 6))
			seen := map[string]bool{}
			for visit := range length.Of(1, 60) {
				w, h := 40+rng.IntN(180), 12+rng.IntN(50)
				if visit == 0 { // where everything fits
					w, h = 180, 55
				}
				v := newVisitor(door.Person{}, 99, r.Host.log, line.TerminalOf([]string{"TERM=xterm-256color"}), w, h, io.Discard, func() {})
				if why := class.enter(v); why != "" {
					t.Fatal(why)
				}
				looks := func(where string) {
					client := class.client(v)
					frame := class.follow(shape{w, h, v.term})
					if client.reader.Load() != nil {
						frame = class.around(client, w, h, v.term)
					}
					screen := strip(frame.String())
					seen[grid.Clean(screen)] = true
					for _, at := range leak.FindAllString(screen, -1) {
						if found[at] = true; hides == 0 {
							continue
						}
						t.Fatalf("hiding %d, board %v, %s, %d x %d: %q on\n%s", hides, board, where, w, h, at, screen)
					}
				}
				looks("following")
				for range length.Of(14, 600) {
					keys := append([]tea.KeyPressMsg{{Code: tea.KeyEscape}, {Code: tea.KeyEscape}}, places[rng.IntN(len(places))]...)
					for range 1 + rng.IntN(4) {
						keys = append(keys, msgs[rng.IntN(len(msgs))])
					}
					for i, msg := range keys {
						class.event(v, msg)
						looks(fmt.Sprint("behind ", keys[:i+1]))
					}
				}
				class.leave(v)
				v.sender.Close()
			}
			for _, one := range []string{"26.5", "0.3714", "5.385"} {
				if hides == 0 && !found[one] {
					t.Errorf("board %v: %s is on no screen where nothing is hidden", board, one)
				}
			}
			if len(seen) < 4 {
				t.Errorf("hiding %d, board %v: only %d different screens", hides, board, len(seen))
			}
		}
	}
}
