package host

import (
	"testing"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/grid"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
)

// ill is a presenter and two watchers, one of whom looks around, on a host that
// the test makes faults in.
func ill(t *testing.T) (r *running, k gossh.Signer, p, around, w *guest) {
	t.Helper()
	k = key(t)
	r = start(t, Settings{Presenters: keys(t, k)}, nil)
	r.ill = true
	p, around, w = r.visit(k, 100, 30), r.visit(nil, 90, 24), r.visit(nil, 80, 24)
	p.sees("live: 2 watch")
	around.keys("\x1bi")
	around.sees("on your own")
	p.keys(down + right)
	return r, k, p, around, w
}

// seated finds who sits there: the presenter, or the one who looks around.
func (r *running) seated(presents bool) (v *visitor) {
	st := r.service.(*classroom)
	st.mu.Lock()
	defer st.mu.Unlock()
	for o, s := range st.clients {
		if presents && o == st.holder || !presents && s.reader.Load() != nil {
			v = o
		}
	}
	return v
}

// breaks has a visitor's own drawing fail from now on.
func (r *running) breaks(v *visitor) {
	st := r.service.(*classroom)
	st.mu.Lock()
	defer st.mu.Unlock()
	client := st.clients[v]
	client.own.Close()
	client.own = line.NewScreen(st.log, 80, 24, v.term, line.AtOnce, func() grid.Frame { panic("drawn badly") }).Begin(pace.AtOnce{}, pace.AtOnce{})
	v.sender.Show(client.own)
}

// A fault in the drawing of one who looks around leaves that screen as it is, until
// ctrl+l; nobody else notices.
func TestAFaultInTheViewOfOneWhoLooksAround(t *testing.T) {
	r, _, p, around, w := ill(t)
	r.breaks(r.seated(false))
	p.keys("-3, 0")
	w.sees("45.0 T")
	r.says("a frame could not be drawn")
	p.keys("\x15-3, 9")
	w.sees("-3, 9")
	around.keys(live)
	around.sees("following the presenter", "-3, 9")
	p.sees("live: 2 watch")
}

// unseats has the visitor's next screen fail, with everything locked that it locks.
func (r *running) unseats(v *visitor) {
	st := r.service.(*classroom)
	st.mu.Lock()
	defer st.mu.Unlock()
	st.clients[v].on = &shape{} // a screen that is not there
}

// A fault in the key of one who looks around ends that visit alone.
func TestAFaultInTheKeyOfOneWhoLooksAround(t *testing.T) {
	r, _, p, around, w := ill(t)
	r.unseats(r.seated(false))
	around.keys(live)
	around.leaves()
	around.sees("trivet: a fault of the host's")
	r.says("a visit failed")
	p.sees("live: 1 watches")
	p.keys("-3, 0")
	w.sees("45.0 T")
	p.sees("45.0 T")
}

// The presenter types on where his own screen cannot be drawn, and has it again
// with the next size.
func TestAFaultInThePresentersDrawing(t *testing.T) {
	r, _, p, _, w := ill(t)
	r.breaks(r.seated(true))
	r.says("a frame could not be drawn")
	p.keys("-3, 0")
	w.sees("45.0 T")
	p.resize(101, 30)
	p.sees("45.0 T", "live: 2 watch")
	p.keys("\x15-3, 9")
	w.sees("-3, 9")
}
