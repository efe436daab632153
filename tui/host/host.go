// Package host shows a sheet live over SSH: one presenter and a class of
// watchers, or a private workbench for each visitor. It alone knows SSH.
//
// Every visitor is one terminal whose keys go to a workbench that
// belongs to no terminal, and whose screen is one of a few drawings: those who
// see the same in the same size share one drawing and its differences, and each
// has a short queue of its own, so that nobody waits for anybody.
package host

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"

	"trivet/mechanics/printable"
	"trivet/tui/host/door"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
)

// Run is the command line without a terminal, for the verbs that a visitor may
// use.
type Run func(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int

// service is what visitors come to: a classroom, or a library.
type service interface {
	attend(v *visitor) // until the visit ends
	end(why string)    // of all visits
	watch(now time.Time)
}

// Host serves visitors on one listener.
type Host struct {
	log      *slog.Logger
	key      gossh.Signer
	doors    *door.Admission
	service  service
	gate     *door.Gate
	run      Run
	anybody  bool          // commands for those in no list too
	commands chan struct{} // those that compute
	inputs   chan struct{} // those whose sheet is under way
	shares   pace.Shares   // of both, by key

	refusals *pace.Log // of those not admitted

	ids    atomic.Int64
	visits sync.WaitGroup
	mu     sync.Mutex
	closed bool
	limit  int // visits at a time, but for presenters
	inside int
}

// ctxConn is where a context holds its connection.
type ctxConn struct{}

func connectionOf(ctx ssh.Context) *door.Connection { return ctx.Value(ctxConn{}).(*door.Connection) }

func (h *Host) server() *ssh.Server {
	return &ssh.Server{
		HostSigners: []ssh.Signer{h.key},
		ConnCallback: func(ctx ssh.Context, c net.Conn) net.Conn {
			in := h.gate.Admit(c)
			if in == nil {
				return nil
			}
			ctx.SetValue(ctxConn{}, in)
			return in
		},
		ServerConfigCallback: func(ctx ssh.Context) *gossh.ServerConfig { return h.doors.Config(connectionOf(ctx)) },
		HandshakeTimeout:     h.gate.Times.Handshake,
		IdleTimeout:          h.gate.Times.Idle,
		MaxTimeout:           h.gate.Times.Visit,
		// Sessions alone: no forwarding, no subsystem, and no answer to requests of
		// the connection but that there is none.
		ChannelHandlers:          map[string]ssh.ChannelHandler{"session": h.serve, "default": noChannel},
		RequestHandlers:          map[string]ssh.RequestHandler{"default": noRequest},
		SubsystemHandlers:        map[string]ssh.SubsystemHandler{},
		ConnectionFailedCallback: h.refused,
	}
}

// refused logs who was not admitted, a line as long and as often as anybody reads
// it: both are a stranger's to choose.
func (h *Host) refused(c net.Conn, err error) {
	why := door.Reasons(err)
	if errors.Is(err, os.ErrDeadlineExceeded) {
		why = "it did not say who it is within " + h.gate.Times.Handshake.String()
	}
	h.ended("not admitted", c, why)
}

func (h *Host) ended(what string, c net.Conn, why string) {
	if len(why) > longestWhy {
		why = strings.ToValidUTF8(why[:longestWhy], "") + "..."
	}
	h.refusals.Info(h.log, what, "from", c.RemoteAddr().String(), "why", why)
}

func noChannel(_ *ssh.Server, _ *gossh.ServerConn, ask gossh.NewChannel, ctx ssh.Context) {
	_ = ask.Reject(gossh.Prohibited, "sessions only: no forwarding")
	connectionOf(ctx).Asks()
}

func noRequest(ctx ssh.Context, _ *ssh.Server, r *gossh.Request) (bool, []byte) {
	usual := r.Type == "keepalive@openssh.com" || r.Type == "no-more-sessions@openssh.com" || r.Type == "hostkeys-prove-00@openssh.com"
	if !usual {
		connectionOf(ctx).Asks()
	}
	return false, nil // any answer is one
}

// Serve takes visitors until ctx ends or the presenter ends it; then everybody
// is told and what is not saved is saved.
func (h *Host) Serve(ctx context.Context, l net.Listener) (err error) {
	s := h.server()
	served := make(chan error, 1)
	go func() { served <- s.Serve(l) }()
	stopWatch := make(chan struct{})
	go h.watch(stopWatch)
	defer h.leftOut(true)
	defer close(stopWatch)

	var over <-chan struct{}
	if st, ok := h.service.(*classroom); ok {
		over = st.ended
	}
	why := "the host is going down"
	select {
	case err = <-served:
		why = "the host has lost its address"
	case <-ctx.Done():
	case <-over:
		why = "the presenter has ended it"
	}
	h.mu.Lock()
	h.closed = true
	h.mu.Unlock()
	_ = l.Close()
	h.service.end(why)
	gone := make(chan struct{})
	go func() { h.visits.Wait(); close(gone) }()
	select {
	case <-gone:
	case <-time.After(2 * farewellLimit):
	}
	// Clients go first: one that is cut off while it has the last words still to
	// show does not show them.
	last, cancel := context.WithTimeout(context.Background(), farewellLimit)
	defer cancel()
	_ = s.Shutdown(last)
	if cerr := s.Close(); err == nil && !errors.Is(cerr, net.ErrClosed) {
		err = cerr
	}
	if errors.Is(err, ssh.ErrServerClosed) || errors.Is(err, net.ErrClosed) {
		err = nil
	}
	h.log.Info("ended", "why", why)
	return err
}

// typing is how fast a visitor's keys are taken, and how soon: one who only
// watches pastes nothing, and holds a key down at most.
func (h *Host) typing(who door.Person) pace.Typing {
	switch l, private := h.service.(*library); {
	case private:
		return l.accounts.Of(who.Folder).Typing
	case who.Role == door.Presenter:
		return pace.Worker()
	}
	return pace.Looker()
}

// assignment is the set that visitors practise; nil where there is none.
func (h *Host) assignment() *assignment {
	if l, private := h.service.(*library); private {
		return l.set
	}
	return nil
}

// arrive counts a visit in, unless the host is closing. Where it is full there is
// room for presenters alone.
func (h *Host) arrive(who door.Person) (in, room bool) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.closed {
		return false, false
	}
	h.visits.Add(1)
	h.inside++
	return true, h.inside <= h.limit || who.Role == door.Presenter
}

func (h *Host) depart() {
	h.mu.Lock()
	h.inside--
	h.mu.Unlock()
	h.visits.Done()
}

// watch looks once a second for terminals that take no bytes.
func (h *Host) watch(stop <-chan struct{}) {
	tick := time.NewTicker(time.Second)
	defer tick.Stop()
	for {
		select {
		case <-stop:
			return
		case now := <-tick.C:
			h.service.watch(now)
			h.leftOut(false)
		}
	}
}

// leftOut says how many lines of the log were left out.
func (h *Host) leftOut(last bool) {
	h.refusals.Report(h.log, last, "about", "those not admitted")
	h.gate.Report(h.log, last)
}

// entertain is a visit: the other screen, the service, and the last words on the
// screen that was there before.
func (h *Host) entertain(v *visitor, out io.Writer) {
	why := "a fault of the host's"
	defer func() { // after a fault too
		v.end(why)
		v.sender.Close()
		slow := time.AfterFunc(farewellLimit, v.kill)
		defer slow.Stop()
		<-v.sender.Done
		fmt.Fprintf(out, "%strivet: %s\r\n", line.Depart, printable.Line(v.reason()))
	}()
	slow := time.AfterFunc(line.StalledLimit, v.kill)
	_, err := io.WriteString(out, line.Enter)
	slow.Stop()
	if err == nil {
		h.service.attend(v)
	}
	why = "hung up"
}
