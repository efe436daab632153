package host

import (
	"log/slog"
	"sync"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/tui"
	"trivet/tui/host/pace"
)

// workbench runs the program for no terminal of its own: keys come from whoever is
// at it, and it may be handed from one to another in the middle of a cell.
type workbench struct {
	log     *slog.Logger
	msgs    chan tea.Msg
	stop    chan struct{}
	stopped chan struct{}
	once    sync.Once
	look    atomic.Pointer[tui.Look]
	changed func()          // something may look otherwise
	left    func(tui.Model) // the workbench was quit
	bounds  bounds
	full    atomic.Bool // the last key was not done: it would have passed the bounds
	turn    sync.Mutex  // of the commands, where they rest
}

// bounds are what one who is no presenter may take; none where they are zero, but
// for the turns.
type bounds struct {
	rows, bytes int        // of the sheet
	rests       int        // times the time of a command is rested after it
	turns       pace.Turns // when a key is done
}

// fit changes the terminal that a workbench is drawn for.
type fit func(tui.Model) tui.Model

// ask takes the session's own answer to a question, between two messages.
type ask struct {
	f    func(tui.Model)
	done chan struct{}
}

func newWorkbench(log *slog.Logger, opt tui.Options, b bounds, changed func(), left func(tui.Model)) *workbench {
	d := &workbench{
		log: log, bounds: b, msgs: make(chan tea.Msg), stop: make(chan struct{}), stopped: make(chan struct{}),
		changed: changed, left: left,
	}
	m := tui.New(opt)
	d.publish(m)
	go d.run(m)
	return d
}

func (d *workbench) publish(m tui.Model) {
	l := m.Look()
	d.look.Store(&l)
}

// post hands the workbench a message; it waits until the workbench takes it, so that one
// who types too fast waits himself.
func (d *workbench) post(msg tea.Msg) {
	select {
	case d.msgs <- msg:
	case <-d.stop:
	}
}

func (d *workbench) close() {
	d.once.Do(func() { close(d.stop) })
	<-d.stopped
}

// see runs f on the session as it stands. It is false once the workbench is closed.
func (d *workbench) see(f func(tui.Model)) bool {
	a := ask{f, make(chan struct{})}
	select {
	case d.msgs <- a:
	case <-d.stop:
		return false
	}
	select {
	case <-a.done:
		return true
	case <-d.stopped:
		return false
	}
}

func (d *workbench) run(m tui.Model) {
	defer close(d.stopped)
	d.do(m.Init())
	for {
		select {
		case <-d.stop:
			return
		case msg := <-d.msgs:
			m = d.take(m, msg)
		}
	}
}

// take does one message. A fault of ours costs this message and nothing else:
// the session before stands. So it does where the next would be too large.
func (d *workbench) take(m tui.Model, msg tea.Msg) (next tui.Model) {
	before := m.Apart()
	next = m
	defer func() {
		if r := recover(); r != nil {
			d.log.Error("a key could not be done", "fault", r)
			next = before
			d.renote(before)
		}
	}()
	var cmd tea.Cmd
	switch msg := msg.(type) {
	case ask:
		defer close(msg.done)
		msg.f(m)
		return m
	case fit:
		next = msg(m)
	case tea.QuitMsg:
		d.left(m)
		return m
	default:
		d.bounds.turns.Do(func() {
			var after tea.Model
			after, cmd = m.Update(msg)
			next = after.(tui.Model)
		})
		over := d.large(before, next)
		if over {
			next, cmd = before, nil
			d.renote(before)
		}
		switch msg.(type) {
		case tea.KeyPressMsg, tea.PasteMsg:
			d.full.Store(over)
		}
	}
	d.publish(next)
	d.changed()
	d.do(cmd)
	return next
}

// renote takes a step back in the journal too.
func (d *workbench) renote(m tui.Model) {
	defer func() {
		if r := recover(); r != nil {
			d.log.Error("the journal could not be put right", "fault", r)
		}
	}()
	m.Renote()
}

// large tells whether a session has grown beyond the workbench's bounds.
func (d *workbench) large(was, now tui.Model) bool {
	if d.bounds.rows == 0 {
		return false
	}
	wasRows, wasBytes := was.Size()
	rows, bytes := now.Size()
	return rows > d.bounds.rows && rows > wasRows || bytes > d.bounds.bytes && bytes > wasBytes
}

// do runs a command beside the workbench.
func (d *workbench) do(cmd tea.Cmd) {
	if cmd != nil {
		go d.doNow(cmd)
	}
}

func (d *workbench) doNow(cmd tea.Cmd) {
	if d.bounds.rests > 0 {
		// One at a time, and a rest after a long one: who works on a sheet that takes
		// long waits himself.
		d.turn.Lock()
		defer d.turn.Unlock()
		select {
		case <-d.stop:
			return
		default:
		}
		began := time.Now()
		defer func() { d.rest(time.Duration(d.bounds.rests) * time.Since(began)) }()
	}
	d.doAll(cmd)
}

// rest is not worth its while after what took a moment.
func (d *workbench) rest(t time.Duration) {
	if t >= 10*time.Millisecond {
		_ = pace.Sleep(t, d.stop)
	}
}

// doAll does a command and those that it is a batch of. A sequence, which has no name
// outside its library, is for a terminal of the workbench's own.
func (d *workbench) doAll(cmd tea.Cmd) {
	defer func() {
		if r := recover(); r != nil {
			d.log.Error("a command failed", "fault", r)
		}
	}()
	msg := cmd()
	if batch, ok := msg.(tea.BatchMsg); ok {
		for _, c := range batch {
			d.do(c)
		}
		return
	}
	if msg != nil {
		d.post(msg)
	}
}
