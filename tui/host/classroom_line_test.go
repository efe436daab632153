package host

import (
	"strings"
	"testing"
)

// What the presenter's line says once gives way to who watches at the next key, and
// the end says whether it saves.
func TestThePresentersLineComesBackAndTheEndSaysThatItSaves(t *testing.T) {
	k := key(t)
	r := start(t, Settings{Presenters: keys(t, k)}, nil)
	p := r.visit(k, 120, 36)
	p.sees("live: 0 watch, ctrl+l: more")
	p.keys(live + "h")
	p.sees("no other presenter is here, ctrl+l: more")
	p.keys(down)
	p.sees("live: 0 watch, ctrl+l: more")
	p.keys(live + "e")
	p.sees("end it for everybody? it is saved: y: yes, other keys: no; ctrl+l q: leave alone")
	p.keys("n" + right + "-3, 0\r")
	p.sees("45.0 T")
	// The workbench's own end, where saving is refused: then the line promises none.
	p.keys("\x11")
	p.sees("y: yes")
	p.keys("n")
	p.sees("end it for everybody? y: yes, other keys: no; ctrl+l q: leave alone")
	p.keys("n" + live + "e")
	p.sees("it is saved")
	p.keys("y")
	p.leaves()
	waitFor(t, "the host tells where it is saved", func() bool {
		return strings.Contains(p.screen(), "what was not saved is in")
	})
}
