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
)

// stage is one sheet that a presenter works on before everybody. The sheet stays
// when the presenter goes; another may take it up.
type stage struct {
	log   *slog.Logger
	desk  *desk
	save  saver
	code  string // to be read out, empty without
	print string // the host key's fingerprint

	ended chan struct{} // the presenter has ended it
	once  sync.Once

	mu      sync.Mutex
	holder  *visitor
	seats   map[*visitor]*seat
	screens map[shape]*shared
	locked  bool
	known   map[string]bool // keys that were in before the lock
	menu    menu
	refused *sheet.Sheet // what the presenter would not have saved, at the workbench's own end
	offered []*visitor   // to whom the sheet may be handed, as listed

	status atomic.Pointer[status]
	lane   lane // of what a watcher alone has caused: a view of the own, a screen of another size
}

// status is what the last lines say.
type status struct {
	watching int
	locked   bool
	away     bool // nobody presents
	menu     menu
	offers   []string
	note     string
	refused  bool // the presenter would not have it saved
}

// seat is a visitor's place before the stage.
type seat struct {
	on     *shape // the screen followed on
	size   func() (w, h int)
	own    *screen                    // of the presenter, or of one who looks around
	reader atomic.Pointer[tui.Reader] // what one sees who looks around
}

func newStage(log *slog.Logger, opt tui.Options, save saver, code, print string) *stage {
	s := &stage{
		log: log, save: save, code: code, print: print, ended: make(chan struct{}),
		seats: map[*visitor]*seat{}, screens: map[shape]*shared{}, known: map[string]bool{},
	}
	s.status.Store(&status{away: true})
	opt.Width, opt.Height = 80, 23
	s.desk = newDesk(log, opt, bounds{turns: atOnceTurns{}}, s.changed, s.quit)
	return s
}

func (s *stage) finish() { s.once.Do(func() { close(s.ended) }) }

// changed draws everything anew; screens that show the same draw nothing.
func (s *stage) changed() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.touch()
}

func (s *stage) touch() {
	for _, sc := range s.screens {
		sc.touch()
	}
	for _, seat := range s.seats {
		if seat.own != nil {
			seat.own.touch()
		}
	}
}

// attend keeps a visitor until the visit ends.
func (s *stage) attend(v *visitor) {
	if why := s.enter(v); why != "" {
		v.end(why)
		return
	}
	defer s.leave(v)
	for {
		select {
		case <-v.over:
			return
		case msg := <-v.events:
			s.event(v, msg)
		}
	}
}

// enter gives a visitor a seat, or says why there is none.
func (s *stage) enter(v *visitor) (refused string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.locked && v.who.role != presenter && !(v.who.print != "" && s.known[v.who.print]) {
		return "the presenter has closed the door to late-comers"
	}
	if v.who.print != "" && len(s.known) < keysKept {
		s.known[v.who.print] = true
	}
	s.seats[v] = &seat{size: v.size}
	if s.holder == nil && v.who.role == presenter {
		s.holder = v
		s.menu = noMenu
	}
	s.sit(v)
	s.report("")
	return ""
}

func (s *stage) leave(v *visitor) {
	s.mu.Lock()
	defer s.mu.Unlock()
	seat := s.seats[v]
	delete(s.seats, v)
	v.feed.show(nil)
	if seat.own != nil {
		seat.own.close()
	}
	if s.holder == v {
		s.holder, s.menu = nil, noMenu
		s.log.Info("nobody presents", "was", v.who.name())
	}
	s.off(seat.on)
	s.report("")
}

// off takes a visitor from the screen it followed on, which ends with its last.
func (s *stage) off(k *shape) {
	if k == nil {
		return
	}
	if sc := s.screens[*k]; sc.n > 1 {
		sc.n--
	} else {
		sc.close()
		delete(s.screens, *k)
	}
}

// sit shows a visitor what is due: the presenter the desk, a follower the
// screen of his size, one who looks around his own view.
func (s *stage) sit(v *visitor) {
	seat := s.seats[v]
	w, h := v.size()
	old, was := seat.own, seat.on
	seat.own, seat.on = nil, nil
	around := seat.reader.Load() != nil && v != s.holder
	if !around {
		seat.reader.Store(nil)
	}
	switch {
	case v == s.holder:
		// Beside, since the desk may be waiting for this lock; the size is read
		// when the desk comes to it, so that of two the later stands.
		go s.desk.post(fit(func(m tui.Model) tui.Model {
			w, h := v.size()
			return m.Fitted(w, h-1, v.term.set)
		}))
		seat.own = newScreen(s.log, w, h, v.term, atOnce, func() string { return s.own(w, v) }).begin(atOnceTurns{}, atOnceTurns{})
		v.feed.show(seat.own)
	case around:
		seat.own = newScreen(s.log, w, h, v.term, alone, func() string { return s.around(seat, w, h, v.term) }).begin(&s.lane, &s.lane)
		v.feed.show(seat.own)
	default:
		k := s.shape(w, h, v.term)
		sc := s.screens[k]
		if sc == nil {
			sc = &shared{screen: newScreen(s.log, k.w, k.h, k.t, withClass, func() string { return s.follow(k) }).begin(atOnceTurns{}, &s.lane)}
			s.screens[k] = sc
		}
		sc.n++
		seat.on = &k
		v.feed.show(sc.screen)
	}
	if old != nil {
		old.close()
	}
	s.off(was)
}

// report renews what the last lines say.
func (s *stage) report(note string) {
	st := &status{locked: s.locked, away: s.holder == nil, menu: s.menu, note: note, refused: s.refused != nil}
	for v := range s.seats {
		if v != s.holder {
			st.watching++
		}
	}
	for i, v := range s.offered {
		st.offers = append(st.offers, string(rune('1'+i))+" "+v.who.short())
	}
	was := s.status.Swap(st)
	if was.away != st.away { // all that a follower's line says of it
		s.touch()
	} else if holder := s.seats[s.holder]; holder != nil {
		holder.own.touch()
	}
}

func (s *stage) own(w int, v *visitor) string {
	return s.desk.look.Load().Own() + line(w, v.term, s.status.Load().presenting(s.code, v.who.local))
}

func (s *stage) follow(k shape) string {
	return s.desk.look.Load().On(k.w, k.h-1, k.t.set) + line(k.w, k.t, s.status.Load().following())
}

// around draws for one who looks around, under no lock: a fault or a large sheet
// in there is this visitor's alone.
func (s *stage) around(seat *seat, w, h int, t terminal) string {
	was := seat.reader.Load()
	if was == nil { // just back with the presenter
		return s.follow(shape{w, h, t})
	}
	r := was.On(w, h-1, t.set).Take(*s.desk.look.Load())
	seat.reader.CompareAndSwap(was, &r) // a key that came meanwhile stands
	return r.Frame() + line(w, t, "on your own: ctrl+l back to the presenter, ? keys, ctrl+q leave")
}

// presenters are those who could take the sheet, in the order they came.
func (s *stage) presenters() (all []*visitor) {
	for v := range s.seats {
		if v != s.holder && v.who.role == presenter {
			all = append(all, v)
		}
	}
	slices.SortFunc(all, func(a, b *visitor) int { return int(a.id - b.id) })
	return all[:min(len(all), maxOffers)]
}

// end tells everybody and saves what the presenter had not.
func (s *stage) end(why string) {
	s.finish()
	var kept string
	s.mu.Lock()
	refused := s.refused
	s.mu.Unlock()
	s.desk.see(func(m tui.Model) {
		safe := true
		if _, now, _, _ := m.Unsaved(); refused == nil || now != refused {
			kept, safe = s.save.rescue(s.log, m)
		}
		endJournal(m, safe)
	})
	s.mu.Lock()
	seats := make([]*visitor, 0, len(s.seats))
	for v := range s.seats {
		seats = append(seats, v)
	}
	holder := s.holder
	s.mu.Unlock()
	for _, v := range seats {
		if v == holder || v.who.local {
			v.end(strings.TrimSpace(why + kept))
		} else {
			v.end(why)
		}
	}
	s.desk.close()
}

func (s *stage) watch(now time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for v := range s.seats {
		if v.feed.stalled(now) {
			v.end("the terminal takes no more")
			v.kill()
		}
	}
}
