package host

import (
	"strconv"
	"strings"

	tea "charm.land/bubbletea/v2"

	"trivet/tui"
	"trivet/tui/host/door"
)

// menu is what the presenter's last line asks.
type menu int

const (
	noMenu menu = iota
	askLive
	askHand
	askEnd
)

// liveKey opens the presenter's line, and brings a watcher back to the presenter.
// The workbench has no such key.
const liveKey = "ctrl+l"

// maxOffers is how many presenters the line can list, by a digit each.
const maxOffers = 9

// event does what a visitor typed.
func (s *classroom) event(v *visitor, msg tea.Msg) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		s.resit(v)
	case tea.KeyPressMsg:
		v.types()
		if s.presents(v) {
			if !s.live(v, msg) {
				s.workbench.post(msg)
			}
			return
		}
		s.watcherKey(v, msg)
	case tea.PasteMsg:
		v.types()
		if s.presents(v) {
			s.workbench.post(msg)
		}
	}
}

func (s *classroom) resit(v *visitor) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.sit(v)
}

func (s *classroom) presents(v *visitor) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.holder == v
}

// live takes the keys of the presenter's line; the others are the workbench's.
func (s *classroom) live(v *visitor, msg tea.KeyPressMsg) bool {
	s.mu.Lock()
	defer s.mu.Unlock()
	key := msg.String()
	was := s.menu
	if was == noMenu && key != liveKey {
		if s.status.Load().note != "" { // read by now, and it hides who watches and the class word
			s.report("")
		}
		return false
	}
	s.menu = noMenu
	note := ""
	switch {
	case was == noMenu:
		s.menu = askLive
	case was == askLive && key == "d":
		s.closed = !s.closed
	case was == askLive && key == "h":
		if s.offered = s.presenters(); len(s.offered) == 0 {
			note = "no other presenter is here"
		} else {
			s.menu = askHand
		}
	case was == askLive && key == "k":
		note = "host key " + s.print
	case was == askLive && key == "e":
		s.menu, s.refused = askEnd, nil // the line says that it is saved
	case was == askLive && key == "q" && !v.who.Local:
		v.end("you have left; the sheet stays with the host")
	case was == askEnd && key == "y":
		s.finish()
	case was == askHand && len(key) == 1 && key[0] >= '1' && int(key[0]-'1') < len(s.offered):
		note = s.handOver(v, s.offered[key[0]-'1'])
	}
	s.report(note)
	return true
}

// quit is the workbench's own end, which here is everybody's: it is asked first.
// What the presenter has just not saved there is not saved at the end either.
func (s *classroom) quit(m tui.Model) {
	_, refused, _, _ := m.Unsaved()
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.holder != nil {
		s.refused, s.menu = refused, askEnd
		s.report("")
	}
}

// handOver gives the sheet to another presenter, who goes on in the same cell and is
// told so in the line that is the presenter's from now on.
func (s *classroom) handOver(from, to *visitor) (note string) {
	if s.clients[to] == nil {
		return to.who.Name() + " has left"
	}
	s.holder = to
	s.log.Info("the sheet is handed over", "from", from.who.Name(), "to", to.who.Name())
	s.sit(to)
	s.sit(from)
	return "live: the sheet is yours now, all see what you type"
}

// watcherKey moves a watcher's own view. Nothing of it reaches the sheet.
func (s *classroom) watcherKey(v *visitor, msg tea.KeyPressMsg) {
	switch msg.String() {
	case "ctrl+q", "ctrl+c":
		if v.who.Local {
			v.end("you have left; the host goes on, and ctrl+c ends it")
			return
		}
		v.end("you have left")
	case liveKey:
		s.follows(v)
	default:
		s.looks(v, msg)
	}
}

// follows brings a watcher back to the presenter; one with a presenter's key
// takes a sheet up that nobody presents, or that the same key presents on a line
// that may be dead.
func (s *classroom) follows(v *visitor) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.clients[v].reader.Store(nil)
	was := s.holder
	if v.who.Role == door.Presenter && (was == nil || was.who.Print != "" && was.who.Print == v.who.Print) {
		s.holder, s.menu = v, noMenu
		s.log.Info("the sheet is taken up", "by", v.who.Name())
		if was != nil {
			s.sit(was)
		}
	}
	s.sit(v)
	s.report("")
}

// looks moves a watcher's own view, which begins with the first key that means
// anything there.
func (s *classroom) looks(v *visitor, msg tea.KeyPressMsg) {
	client := s.client(v)
	w, h := v.size()
	for {
		was := client.reader.Load()
		var r tui.Reader
		if was != nil {
			r = *was
		} else {
			r = s.workbench.look.Load().Reader(w, h-1, v.term.Set)
		}
		next, ok := r.Key(msg)
		if !ok {
			return
		}
		if client.reader.CompareAndSwap(was, &next) {
			break
		} // else it has just been drawn with a newer sheet
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	if client.own == nil {
		s.sit(v)
	} else {
		client.own.Touch()
	}
}

func (s *classroom) client(v *visitor) *client {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.clients[v]
}

// presenting is the presenter's last line.
func (st *status) presenting(word string, local, hides bool) string {
	door := "d: close the door"
	if st.closed {
		door = "d: open the door"
	}
	switch st.menu {
	case askLive:
		if local { // whose leaving is the end
			return door + ", h: hand over, k: host key, e: end for all, esc: back"
		}
		return door + ", h: hand over, k: host key, e: end for all, q: leave, esc: back"
	case askHand:
		return "hand over to: " + strings.Join(st.offers, ", ") + ", esc: back"
	case askEnd:
		yes := "y: yes, any other key: no"
		if !local {
			yes = "y: yes, other keys: no; ctrl+l q: leave alone"
		}
		if st.refused { // as just answered at the workbench's own end
			return "end it for everybody? " + yes
		}
		return "end it for everybody? it is saved: " + yes
	}
	if st.note != "" {
		return st.note + ", ctrl+l: more"
	}
	text := "live: " + watching(st.watching)
	if word != "" {
		text += ", class word " + word
	}
	if st.closed {
		text += ", door closed"
	}
	if hides {
		text += ", answers hidden"
	}
	return text + ", ctrl+l: more"
}

// following is a follower's last line, the same for all of them.
func (st *status) following() string {
	if st.away {
		return "nobody presents now (ctrl+l, with a presenter's key); ?: keys, ctrl+q: leave"
	}
	return "following the presenter: arrows and pane keys look around, ?: keys, ctrl+q: leave"
}

func watching(n int) string {
	if n == 1 {
		return "1 watches"
	}
	return strconv.Itoa(n) + " watch"
}
