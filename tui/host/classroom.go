package host

import (
	"log/slog"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"trivet/mechanics/sheet"
	"trivet/tui"
	"trivet/tui/grid"
	"trivet/tui/host/door"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
	"trivet/tui/host/store"
)

// classroom is one sheet that a presenter works on before everybody. The sheet stays
// when the presenter goes; another may take it up.
type classroom struct {
	log       *slog.Logger
	workbench *workbench
	save      *store.Store
	word      string // the class word, to be read out, empty without
	print     string // the host key's fingerprint

	ended chan struct{} // the presenter has ended it
	once  sync.Once

	mu      sync.Mutex
	holder  *visitor
	clients map[*visitor]*client
	screens map[shape]*shared
	closed  bool            // the door, to late-comers
	known   map[string]bool // keys that were in before the door was closed
	menu    menu
	refused *sheet.Sheet // what the presenter would not have saved, at the workbench's own end
	offered []*visitor   // to whom the sheet may be handed, as listed

	status atomic.Pointer[status]
	queue  pace.Queue // of what a watcher alone has caused: a view of the own, a screen of another size
}

// status is what the last lines say.
type status struct {
	watching int
	closed   bool // the door
	away     bool // nobody presents
	menu     menu
	offers   []string
	note     string
	refused  bool // the presenter would not have it saved
}

// client is a visitor in the classroom: what is shown there and how it is seen.
type client struct {
	on     *shape // the screen followed on
	size   func() (w, h int)
	own    *line.Screen               // of the presenter, or of one who looks around
	reader atomic.Pointer[tui.Reader] // what one sees who looks around
}

func newClassroom(log *slog.Logger, opt tui.Options, save *store.Store, word, print string) *classroom {
	s := &classroom{
		log: log, save: save, word: word, print: print, ended: make(chan struct{}),
		clients: map[*visitor]*client{}, screens: map[shape]*shared{}, known: map[string]bool{},
	}
	s.status.Store(&status{away: true})
	opt.Width, opt.Height = 80, 23
	s.workbench = newWorkbench(log, opt, bounds{turns: pace.AtOnce{}}, s.changed, s.quit)
	return s
}

func (s *classroom) finish() { s.once.Do(func() { close(s.ended) }) }

// changed draws everything anew; screens that show the same draw nothing.
func (s *classroom) changed() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.touch()
}

func (s *classroom) touch() {
	for _, sc := range s.screens {
		sc.Touch()
	}
	for _, client := range s.clients {
		if client.own != nil {
			client.own.Touch()
		}
	}
}

// attend keeps a visitor until the visit ends.
func (s *classroom) attend(v *visitor) {
	if why := s.enter(v); why != "" {
		v.end(why)
		return
	}
	defer s.leave(v)
	for {
		select {
		case <-v.ctx.Done():
			return
		case msg := <-v.events:
			s.event(v, msg)
		}
	}
}

// enter lets a visitor in, or says why not.
func (s *classroom) enter(v *visitor) (refused string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.closed && v.who.Role != door.Presenter && !(v.who.Print != "" && s.known[v.who.Print]) {
		return "the presenter has closed the door to late-comers"
	}
	if v.who.Print != "" && len(s.known) < door.KeysKept {
		s.known[v.who.Print] = true
	}
	s.clients[v] = &client{size: v.size}
	if s.holder == nil && v.who.Role == door.Presenter {
		s.holder = v
		s.menu = noMenu
	}
	s.sit(v)
	s.report("")
	return ""
}

func (s *classroom) leave(v *visitor) {
	s.mu.Lock()
	defer s.mu.Unlock()
	client := s.clients[v]
	delete(s.clients, v)
	v.sender.Show(nil)
	if client.own != nil {
		client.own.Close()
	}
	if s.holder == v {
		s.holder, s.menu = nil, noMenu
		s.log.Info("nobody presents", "was", v.who.Name())
	}
	s.off(client.on)
	s.report("")
}

// off takes a visitor from the screen it followed on, which ends with its last.
func (s *classroom) off(k *shape) {
	if k == nil {
		return
	}
	if sc := s.screens[*k]; sc.n > 1 {
		sc.n--
	} else {
		sc.Close()
		delete(s.screens, *k)
	}
}

// sit shows a visitor what is due: the presenter the workbench, a follower the
// screen of his size, one who looks around his own view.
func (s *classroom) sit(v *visitor) {
	client := s.clients[v]
	w, h := v.size()
	old, was := client.own, client.on
	client.own, client.on = nil, nil
	around := client.reader.Load() != nil && v != s.holder
	if !around {
		client.reader.Store(nil)
	}
	switch {
	case v == s.holder:
		// Beside, since the workbench may be waiting for this lock; the size is read
		// when the workbench comes to it, so that of two the later stands.
		go s.workbench.post(fit(func(m tui.Model) tui.Model {
			w, h := v.size()
			return m.Fitted(w, h-1, v.term.Set)
		}))
		client.own = line.NewScreen(s.log, w, h, v.term, line.AtOnce, func() grid.Frame { return s.own(w, h, v) }).Begin(pace.AtOnce{}, pace.AtOnce{})
		v.sender.Show(client.own)
	case around:
		client.own = line.NewScreen(s.log, w, h, v.term, line.Alone, func() grid.Frame { return s.around(client, w, h, v.term) }).Begin(&s.queue, &s.queue)
		v.sender.Show(client.own)
	default:
		k := s.shape(w, h, v.term)
		sc := s.screens[k]
		if sc == nil {
			sc = &shared{Screen: line.NewScreen(s.log, k.w, k.h, k.t, line.WithClass, func() grid.Frame { return s.follow(k) }).Begin(pace.AtOnce{}, &s.queue)}
			s.screens[k] = sc
		}
		sc.n++
		client.on = &k
		v.sender.Show(sc.Screen)
	}
	if old != nil {
		old.Close()
	}
	s.off(was)
}

// report renews what the last lines say.
func (s *classroom) report(note string) {
	st := &status{closed: s.closed, away: s.holder == nil, menu: s.menu, note: note, refused: s.refused != nil}
	for v := range s.clients {
		if v != s.holder {
			st.watching++
		}
	}
	for i, v := range s.offered {
		st.offers = append(st.offers, string(rune('1'+i))+": "+v.who.Short())
	}
	was := s.status.Swap(st)
	if was.away != st.away { // all that a follower's line says of it
		s.touch()
	} else if holder := s.clients[s.holder]; holder != nil {
		holder.own.Touch()
	}
}

func (s *classroom) own(w, h int, v *visitor) grid.Frame {
	look := s.workbench.look.Load()
	return line.Under(look.Own(), w, h, v.term, s.status.Load().presenting(s.word, v.who.Local, look.Hides()))
}

func (s *classroom) follow(k shape) grid.Frame {
	return line.Under(s.workbench.look.Load().On(k.w, k.h-1, k.t.Set), k.w, k.h, k.t, s.status.Load().following())
}

// around draws for one who looks around, under no lock: a fault or a large sheet
// in there is this visitor's alone.
func (s *classroom) around(client *client, w, h int, t line.Terminal) grid.Frame {
	was := client.reader.Load()
	if was == nil { // just back with the presenter
		return s.follow(shape{w, h, t})
	}
	r := was.On(w, h-1, t.Set).Take(*s.workbench.look.Load())
	client.reader.CompareAndSwap(was, &r) // a key that came meanwhile stands
	return line.Under(r.Frame(), w, h, t, "on your own; ctrl+l: back to the presenter, ?: keys, ctrl+q: leave")
}

// presenters are those who could take the sheet, in the order they came.
func (s *classroom) presenters() (all []*visitor) {
	for v := range s.clients {
		if v != s.holder && v.who.Role == door.Presenter {
			all = append(all, v)
		}
	}
	slices.SortFunc(all, func(a, b *visitor) int { return int(a.id - b.id) })
	return all[:min(len(all), maxOffers)]
}

// end tells everybody and saves what the presenter had not.
func (s *classroom) end(why string) {
	s.finish()
	var kept string
	s.mu.Lock()
	refused := s.refused
	s.mu.Unlock()
	s.workbench.see(func(m tui.Model) {
		safe := true
		if _, now, _, _ := m.Unsaved(); refused == nil || now != refused {
			kept, safe = rescue(s.log, s.save, m)
		}
		endJournal(m, safe)
	})
	s.mu.Lock()
	clients := make([]*visitor, 0, len(s.clients))
	for v := range s.clients {
		clients = append(clients, v)
	}
	holder := s.holder
	s.mu.Unlock()
	for _, v := range clients {
		if v == holder || v.who.Local {
			v.end(strings.TrimSpace(why + kept))
		} else {
			v.end(why)
		}
	}
	s.workbench.close()
}

func (s *classroom) watch(now time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for v := range s.clients {
		if v.sender.Stalled(now) {
			v.end("the terminal takes no more")
			v.kill()
		}
	}
}
