package pace

import "sync"

const (
	CommandsAtOnce = 1 // solve and check without a terminal; a sheet as people make them takes some milliseconds
	InputsByKey    = 4 // sheets of one key that come in at a time
)

// Share is what one key may have of what all commands have together: its commands
// wait one for another first, so that keys take turns and none waits behind all of
// another's.
type Share struct {
	Inputs, Commands chan struct{}
	users            int
}

// Shares are kept by key as long as a command of it is there.
type Shares struct {
	mu  sync.Mutex
	all map[string]*Share
}

// Of gives a key's share, and what is to be called once it is needed no more.
func (s *Shares) Of(key string) (*Share, func()) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.all == nil {
		s.all = map[string]*Share{}
	}
	own := s.all[key]
	if own == nil {
		own = &Share{Inputs: make(chan struct{}, InputsByKey), Commands: make(chan struct{}, CommandsAtOnce)}
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

// Come is how many commands of a key have their sheet, and wait or are under way.
func (s *Shares) Come(key string) int {
	s.mu.Lock()
	defer s.mu.Unlock()
	if own := s.all[key]; own != nil {
		return own.users - len(own.Inputs)
	}
	return 0
}
