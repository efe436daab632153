package host

import "sync"

// share is what one key may have of what all commands have together: its commands
// wait one for another first, so that keys take turns and none waits behind all of
// another's.
type share struct {
	inputs, commands chan struct{}
	users            int
}

// shares are kept by key as long as a command of it is there.
type shares struct {
	mu  sync.Mutex
	all map[string]*share
}

// of gives a key's share, and what is to be called once it is needed no more.
func (s *shares) of(key string) (*share, func()) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.all == nil {
		s.all = map[string]*share{}
	}
	own := s.all[key]
	if own == nil {
		own = &share{inputs: make(chan struct{}, inputsByKey), commands: make(chan struct{}, commandsAtOnce)}
		s.all[key] = own
	}
	own.users++
	return own, func() {
		s.mu.Lock()
		defer s.mu.Unlock()
		if own.users--; own.users == 0 {
			delete(s.all, key)
		}
	}
}
