package host

import (
	"os"
	"strings"
	"testing"

	"trivet/tui/host/line"
)

// follows waits until a watcher's screen is the one that the classroom draws for it.
func follows(t *testing.T, r *running, g *guest, w, h int) {
	t.Helper()
	waitFor(t, "the watcher sees what the classroom draws", func() bool {
		want := plain(r.service.(*classroom).follow(shape{w, h, line.TerminalOf([]string{"TERM=xterm-256color"})}).String())
		return g.screen() == want
	})
}

func plain(frame string) string {
	var b strings.Builder
	for _, l := range strings.Split(strip(frame), "\n") {
		b.WriteString(strings.TrimRight(l, " ") + "\n")
	}
	return b.String()
}

func TestWatchersFollowThePresenterInTheirOwnSizes(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p := r.visit(k, 120, 36)
	p.sees("37.5 T", "live: 0 watch")
	sizes := [][2]int{{80, 24}, {120, 36}, {200, 60}}
	var all []*guest
	for _, s := range sizes {
		all = append(all, r.visit(nil, s[0], s[1]))
	}
	p.sees("live: 3 watch")
	p.keys(down + right + "-3, 0")
	p.sees("45.0 T", "75.0 T")
	for i, g := range all {
		g.sees("45.0 T", "-3, 0", "following the presenter")
		follows(t, r, g, sizes[i][0], sizes[i][1])
	}
	// A half-typed cell is seen half typed, and stale.
	p.keys("\x7f\x7f")
	all[0].sees("stale")
	p.keys(escape)
	all[1].sees("37.5 T")
	// The board, a step at a time, with the presenter.
	p.keys("\x1bb")
	p.sees("step 1 of")
	p.keys("  ")
	p.sees("step 3 of")
	for i, g := range all {
		follows(t, r, g, sizes[i][0], sizes[i][1])
	}
	all[0].resize(132, 40)
	follows(t, r, all[0], 132, 40)
	_ = all[2].client.Close()
	p.sees("live: 2 watch")
}

func TestAWatcherLooksAroundAndComesBack(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p := r.visit(k, 120, 36)
	g := r.visit(nil, 120, 36)
	g.sees("following the presenter")
	g.keys("xyz=1\r" + save + "\x1a\x04") // text, save, undo, delete: nothing
	g.keys("\x1bi")
	g.sees("on your own", "Picture")
	g.keys("\x1bb")
	g.sees("step 1 of")
	g.keys("3")
	g.sees("step 3 of")
	p.keys(down + right + "-3, 0\r")
	p.sees("45.0 T")
	g.keys("b")
	g.sees("45.0 T", "on your own") // still live
	g.keys("\x1bi\x1b[C\x1b[C")
	g.keys(live)
	g.sees("following the presenter")
	follows(t, r, g, 120, 36)
	text, err := os.ReadFile(r.file)
	if err != nil || string(text) != lamp {
		t.Errorf("the file has changed: %v\n%s", err, text)
	}
	if s := r.service.(*classroom).workbench.look.Load().Own().String(); !strings.Contains(s, "-3, 0") {
		t.Error("the presenter's cell is lost")
	}
	g.keys(quit)
	g.leaves()
	p.sees("live: 0 watch")
}

func TestThePresenterClosesTheDoorHandsOverAndEnds(t *testing.T) {
	a, b, late := key(t), key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, a, b)}, nil)
	pa := r.visit(a, 100, 30)
	pa.sees("live: 0 watch")
	pa.keys(live)
	pa.sees("d: close the door")
	pa.keys("h")
	pa.sees("no other presenter is here")
	pb := r.visit(b, 80, 24)
	pb.sees("following the presenter")
	pa.keys(live + "k")
	pa.sees(r.Fingerprint())
	pa.keys(live + "d")
	pa.sees("live: 1 watches, door closed")
	g := r.visit(late, 80, 24)
	g.leaves()
	g.sees("closed the door")
	// In the middle of a cell the sheet goes to the other, who goes on in it.
	pa.keys(down + right + "-3, ")
	pa.sees("stale")
	pa.keys(live + "h")
	pa.sees("hand over to: 1: key2")
	pa.keys("1")
	pb.sees("live: the sheet is yours now, all see what you type, ctrl+l: more")
	pa.sees("following the presenter")
	pa.keys("9") // means nothing now
	pb.keys("0")
	pb.sees("45.0 T")
	pa.sees("45.0 T")
	// One who takes up what is left alone.
	_ = pb.client.Close()
	pa.sees("nobody presents")
	pa.keys(live)
	pa.sees("live: 0 watch")
	pa.keys(live + "ey")
	pa.leaves()
	pa.sees("the presenter has ended it; what was not saved is in lamp.toml")
	text, err := os.ReadFile(r.file)
	if err != nil || string(text) != strings.Replace(lamp, `"-3, 4"`, `"-3, 0"`, 1) {
		t.Errorf("not saved at the end: %v\n%s", err, text)
	}
}

func TestTheEndIsTold(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p, g := r.visit(k, 80, 24), r.visit(nil, 80, 24)
	p.sees("live: 1 watches")
	p.keys(down + right + "-3, 0\r")
	g.sees("45.0 T")
	r.end()
	p.leaves()
	g.leaves()
	g.sees("trivet: the host is going down\n")
	p.sees("the host is going down; what was not saved is in lamp.toml")
}
