package host

import (
	"context"
	"fmt"
	"sync"
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"
	"golang.org/x/time/rate"

	"trivet/tui/host/door"
	"trivet/tui/host/line"
)

// session is one channel: a terminal, or a command. The library answers its
// requests; what it would not bound is taken out before.
type session struct {
	gossh.NewChannel
	host *Host
	conn *door.Connection
	id   int64

	ch      gossh.Channel
	ctx     context.Context // until the client closes the channel
	closed  context.CancelFunc
	env     int // bytes of it
	resize  resizer
	running sync.WaitGroup
	work    func(ssh.Session) int
}

// serve takes the channels of type session; there are no others.
func (h *Host) serve(by *ssh.Server, conn *gossh.ServerConn, ask gossh.NewChannel, ctx ssh.Context) {
	c := connectionOf(ctx)
	c.Admit(h.doors, conn, func(why string) { h.ended("a connection ended", c, why) })
	if !c.Asks() {
		return
	}
	if !c.Opens() {
		_ = ask.Reject(gossh.ResourceShortage, fmt.Sprintf("one connection has at most %d sessions", door.MaxSessions))
		return
	}
	defer c.Closes()
	s := &session{NewChannel: ask, host: h, conn: c, id: h.ids.Add(1)}
	s.ctx, s.closed = context.WithCancel(context.Background())
	s.resize.rate = rate.NewLimiter(resizesPerSecond, resizeBurst)
	defer s.running.Wait()
	defer s.closed()
	ssh.DefaultSessionHandler(&ssh.Server{
		Handler: s.handle, SessionRequestCallback: s.begin,
		PtyHandler: func(ctx ssh.Context, in ssh.Session, t ssh.Pty) (func() error, error) {
			_, sizes, _ := in.Pty()
			go s.resize.follow(sizes)
			return by.PtyHandler(ctx, in, t)
		},
	}, conn, s, ctx)
}

// Accept is what the library accepts the channel by.
func (s *session) Accept() (gossh.Channel, <-chan *gossh.Request, error) {
	ch, in, err := s.NewChannel.Accept()
	s.ch = ch
	out := make(chan *gossh.Request)
	go s.pass(in, out)
	return ch, out, err
}

// pass passes on the requests that a terminal or a command needs, until the client
// closes the channel. What is not named here, an agent, a subsystem, X11, signals, is
// refused.
func (s *session) pass(in <-chan *gossh.Request, out chan<- *gossh.Request) {
	defer close(out)
	defer s.closed()
	asks := rate.NewLimiter(asksPerSecond, asksBurst)
	for r := range in {
		ok := len(r.Payload) <= maxPayload
		switch r.Type {
		case "env":
			var v struct{ Name, Value string }
			s.env += len(r.Payload)
			ok = ok && gossh.Unmarshal(r.Payload, &v) == nil && line.Reads(v.Name) && s.env <= maxEnvBytes
		case "pty-req", "window-change", "shell", "exec":
		default:
			ok = false
		}
		switch {
		case !asks.Allow() || !ok && !s.conn.Asks():
			s.conn.Flooded()
			gossh.DiscardRequests(in) // until the connection is closed
			return
		case ok:
			out <- r
		case r.WantReply:
			_ = r.Reply(false, nil)
		}
	}
}

// begin gives a session what it is for, a terminal's visit or a command, unless the
// host is closing.
func (s *session) begin(in ssh.Session, _ string) bool {
	arrived, room := s.host.arrive(s.conn.Who)
	if !arrived {
		return false
	}
	s.running.Add(1)
	t, _, isTerminal := in.Pty()
	switch command := in.RawCommand(); {
	case !room:
		s.work = s.full
	case command != "" || !isTerminal:
		s.work = func(in ssh.Session) int { return s.host.command(s, in, command, isTerminal) }
	default:
		w, h := line.Clamped(t.Window.Width, t.Window.Height)
		if w == 0 || h == 0 {
			w, h = 80, 24 // a terminal that does not know its size
		}
		v := newVisitor(s.conn.Who, s.id, s.host.log, line.TerminalOf(append(in.Environ(), "TERM="+t.Term)), w, h, s.ch, s.conn.Kill)
		s.resize.tell(v)
		context.AfterFunc(s.ctx, func() { v.end(s.conn.Reason()) })
		s.work = func(ssh.Session) int { return s.visit(v) }
	}
	return true
}

// handle runs a visit or a command, and closes the session behind it.
func (s *session) handle(in ssh.Session) {
	code := 1
	defer func() {
		if r := recover(); r != nil {
			s.host.log.Error("a visit failed", "visitor", s.conn.Who.Name(), "fault", r)
		}
		_ = in.Exit(code)
		s.host.depart()
		s.running.Done()
	}()
	code = s.work(in)
}

// full says that there is no room.
func (s *session) full(in ssh.Session) int {
	slow := time.AfterFunc(farewellLimit, s.conn.Kill)
	defer slow.Stop()
	fmt.Fprint(in.Stderr(), "trivet: the host is full: try again later\r\n")
	s.conn.Visits().Info(s.host.log, "no room", "visitor", s.conn.Who.Name(), "from", s.conn.RemoteAddr().String())
	return 1
}

// visit runs a terminal's visit from the first frame to the last word. Its bytes go
// round the library, which would look for line ends in each frame.
func (s *session) visit(v *visitor) int {
	defer v.end("a fault of the host's")
	started := time.Now()
	log := s.conn.Visits()
	log.Info(s.host.log, "came", "visitor", v.who.Name(), "role", v.who.Role.String(), "from", s.conn.RemoteAddr().String(), "session", s.id)
	by := s.host.typing(v.who)
	_ = by.Comes.Wait(v.ctx) // one who has gone meanwhile is told so below
	go func() {
		err := line.Listen(v.ctx, s.ch, v.term.Kind, by, v.event)
		why := s.conn.Reason()
		if err != nil {
			why = err.Error()
		}
		v.end(why)
	}()
	s.host.entertain(v, s.ch)
	log.Info(s.host.log, "left", "visitor", v.who.Name(), "session", s.id, "why", v.reason(), "after", time.Since(started).Round(time.Second).String(), "frames dropped", v.sender.Dropped())
	return 0
}

// resizer lets a terminal's size change a few times a second, the last one
// always: a whole frame follows each.
type resizer struct {
	mu    sync.Mutex
	v     *visitor // nil until there is one
	w, h  int
	timer *time.Timer
	last  time.Time
	rate  *rate.Limiter
}

// follow takes sizes until their channel is closed, whether or not there is a
// visitor: nobody else reads them, and unread they block the session's requests.
func (r *resizer) follow(sizes <-chan ssh.Window) {
	for size := range sizes {
		r.mu.Lock()
		r.w, r.h = line.Clamped(size.Width, size.Height)
		if r.timer == nil {
			r.timer = time.AfterFunc(max(r.rate.Reserve().Delay(), resizeEvery-time.Since(r.last)), r.apply)
		}
		r.mu.Unlock()
	}
}

func (r *resizer) tell(v *visitor) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.v = v
}

func (r *resizer) apply() {
	r.mu.Lock()
	v, w, h := r.v, r.w, r.h
	r.timer, r.last = nil, time.Now()
	r.mu.Unlock()
	if v != nil && w > 0 && h > 0 {
		v.resized(w, h)
	}
}
