package host

import (
	"fmt"
	"sync"
	"sync/atomic"
	"time"

	"charm.land/ssh"
	gossh "golang.org/x/crypto/ssh"
	"golang.org/x/time/rate"
)

// connection is what the sessions of one connection have in common.
type connection struct {
	who   person
	conn  *gossh.ServerConn
	below *guarded
	opens *rate.Limiter // sessions opened, and whatever was refused
	count atomic.Int32
}

// source is whose the commands of a connection are: a key's, or an address's.
func (c *connection) source() string {
	if c.who.print != "" {
		return c.who.print
	}
	return c.below.place.String()
}

// kill closes what is below: closing what is above would wait for bytes to go.
func (c *connection) kill() { _ = c.below.Close() }

// flooded ends a connection that asks for more than any client does.
func (c *connection) flooded() { c.below.cut("it asked for more than any client does") }

// session is one channel: a terminal, or a command.
type session struct {
	host *Host
	conn *connection
	ch   gossh.Channel
	id   int64

	env  []string
	size int // bytes of env
	pty  bool
	w, h int

	visitor *visitor
	begun   bool
	resize  *resizer
	over    chan struct{} // the client has closed the channel
}

// serve takes the channels of type session; there are no others.
func (h *Host) serve(_ *ssh.Server, conn *gossh.ServerConn, ask gossh.NewChannel, ctx ssh.Context) {
	c := h.connection(conn, ctx)
	if !c.opens.Allow() {
		c.flooded()
		return
	}
	if c.count.Add(1) > maxSessions {
		c.count.Add(-1)
		_ = ask.Reject(gossh.ResourceShortage, fmt.Sprintf("one connection has at most %d sessions", maxSessions))
		return
	}
	defer c.count.Add(-1)
	ch, requests, err := ask.Accept()
	if err != nil {
		return
	}
	s := &session{host: h, conn: c, ch: ch, id: h.ids.Add(1), over: make(chan struct{})}
	s.requests(requests)
}

// requests answers a session's requests until the client closes it. What is not
// named here, an agent, a subsystem, X11, signals, is refused.
func (s *session) requests(in <-chan *gossh.Request) {
	var running sync.WaitGroup
	defer running.Wait()
	defer s.ch.Close()
	defer func() {
		close(s.over)
		if s.visitor != nil {
			s.visitor.end(s.conn.below.reason())
		}
	}()
	asks := rate.NewLimiter(asksPerSecond, asksBurst)
	for r := range in {
		if !asks.Allow() {
			s.conn.flooded()
			return
		}
		ok := false
		var work func() int
		if len(r.Payload) <= maxPayload {
			switch r.Type {
			case "env":
				ok = s.setEnv(r.Payload)
			case "pty-req":
				ok = s.setTerminal(r.Payload)
			case "window-change":
				s.setSize(r.Payload)
				continue // no reply is wanted
			case "shell":
				work = s.begin("")
			case "exec":
				var command struct{ Line string }
				if gossh.Unmarshal(r.Payload, &command) == nil {
					work = s.begin(command.Line)
				}
			}
		}
		ok = ok || work != nil
		if !ok && !s.conn.opens.Allow() {
			s.conn.flooded()
			return
		}
		if r.WantReply {
			_ = r.Reply(ok, nil)
		}
		if work != nil { // only now: it may be over before a reply is
			running.Go(func() { s.do(work) })
		}
	}
}

// do runs a visit or a command, and closes the session behind it.
func (s *session) do(work func() int) {
	code := 1
	defer func() {
		if r := recover(); r != nil {
			s.host.log.Error("a visit failed", "visitor", s.conn.who.name(), "fault", r)
		}
		status := struct{ Code uint32 }{uint32(code)}
		_, _ = s.ch.SendRequest("exit-status", false, gossh.Marshal(&status))
		_ = s.ch.Close()
		s.host.depart()
	}()
	code = work()
}

func (s *session) setEnv(payload []byte) bool {
	var e struct{ Name, Value string }
	if s.begun || gossh.Unmarshal(payload, &e) != nil || !variables[e.Name] || s.size+len(e.Value) > maxEnvBytes {
		return false
	}
	s.size += len(e.Name) + len(e.Value)
	s.env = append(s.env, e.Name+"="+e.Value)
	return true
}

// winSize is how both requests give a size; the pixels mean nothing here.
type winSize struct{ W, H, PixelW, PixelH uint32 }

func (s *session) setTerminal(payload []byte) bool {
	var p struct {
		Term                 string
		W, H, PixelW, PixelH uint32
		Modes                string
	}
	if s.begun || s.pty || gossh.Unmarshal(payload, &p) != nil || s.size+len(p.Term) > maxEnvBytes {
		return false
	}
	s.env = append(s.env, "TERM="+p.Term)
	s.pty = true
	s.w, s.h = clamped(p.W, p.H)
	return true
}

func (s *session) setSize(payload []byte) {
	var size winSize
	if gossh.Unmarshal(payload, &size) != nil {
		return
	}
	s.w, s.h = clamped(size.W, size.H)
	if s.resize != nil {
		s.resize.to(s.w, s.h)
	}
}

// begin gives what a session is for, once: a terminal's visit or a command. It
// is nil where there is nothing to do, and has to be done where it is not.
func (s *session) begin(command string) func() int {
	if s.begun {
		return nil
	}
	in, room := s.host.arrive(s.conn.who)
	if !in {
		return nil
	}
	s.begun = true
	if !room {
		return s.full
	}
	if command != "" || !s.pty {
		return func() int { return s.host.command(s, command) }
	}
	if s.w == 0 || s.h == 0 {
		s.w, s.h = 80, 24 // a terminal that does not know its size
	}
	s.visitor = newVisitor(s.conn.who, s.id, s.host.log, terminalOf(s.env), s.w, s.h, s.ch, s.conn.kill)
	s.resize = newResizer(s.visitor)
	return s.visit
}

// full says that there is no room.
func (s *session) full() int {
	slow := time.AfterFunc(farewellLimit, s.conn.kill)
	defer slow.Stop()
	fmt.Fprint(s.ch.Stderr(), "trivet: the host is full: try again later\r\n")
	s.conn.below.counts.visits.info(s.host.log, "no room", "visitor", s.conn.who.name(), "from", s.conn.conn.RemoteAddr().String())
	return 1
}

// visit runs a terminal's visit from the first frame to the last word.
func (s *session) visit() int {
	v := s.visitor
	defer v.end("a fault of the host's")
	started := time.Now()
	log := s.conn.below.counts.visits
	log.info(s.host.log, "came", "visitor", v.who.name(), "role", v.who.role.String(), "from", s.conn.conn.RemoteAddr().String(), "session", s.id)
	by := s.host.typing(v.who)
	_ = by.comes.Wait(v.ctx) // one who has gone meanwhile is told so below
	go func() {
		err := listen(v.ctx, s.ch, v.term.kind, by, v.event)
		why := s.conn.below.reason()
		if err != nil {
			why = err.Error()
		}
		v.end(why)
	}()
	s.host.entertain(v, s.ch)
	log.info(s.host.log, "left", "visitor", v.who.name(), "session", s.id, "why", v.reason(), "after", time.Since(started).Round(time.Second).String(), "frames dropped", v.sender.dropped())
	return 0
}

// resizer lets a terminal's size change a few times a second, the last one
// always: a whole frame follows each.
type resizer struct {
	v     *visitor
	mu    sync.Mutex
	w, h  int
	timer *time.Timer
	last  time.Time
	rate  *rate.Limiter
}

func newResizer(v *visitor) *resizer {
	return &resizer{v: v, rate: rate.NewLimiter(resizesPerSecond, resizeBurst)}
}

func (r *resizer) to(w, h int) {
	r.mu.Lock()
	defer r.mu.Unlock()
	r.w, r.h = w, h
	if r.timer == nil {
		r.timer = time.AfterFunc(max(r.rate.Reserve().Delay(), resizeEvery-time.Since(r.last)), r.apply)
	}
}

func (r *resizer) apply() {
	r.mu.Lock()
	w, h := r.w, r.h
	r.timer, r.last = nil, time.Now()
	r.mu.Unlock()
	if w > 0 && h > 0 {
		r.v.resized(w, h)
	}
}
