package host

import "testing"

// OpenSSH shows its key before it asks for the code, and is known by it again: the
// code is asked once.
func TestOpenSSHComesBackThroughAClosedDoor(t *testing.T) {
	t.Parallel()
	k, private := rawKey(t)
	_, own := rawKey(t)
	r := start(t, Settings{Presenters: keys(t, k), Word: true}, nil)
	p := newPanes(t, r)
	p.pane("presenter", p.identity("id", private), 100, 30)
	p.sees("presenter", "live: 0 watch")
	file := p.identity("own", own)
	for _, asked := range []bool{true, false} {
		p.pane("watcher", file, 80, 24)
		if asked {
			p.sees("watcher", "Class word:")
			p.keys("watcher", r.doors.Word, "Enter")
		}
		p.sees("watcher", "following the presenter")
		p.sees("presenter", "live: 1 watches")
		p.tmux("kill-session", "-t", "watcher")
		p.sees("presenter", "live: 0 watch")
		p.keys("presenter", "C-l")
		p.sees("presenter", "e: end for all")
		p.keys("presenter", "l") // locked for the second visit
		p.sees("presenter", "live: 0 watch")
	}
}
