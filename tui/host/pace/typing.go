package pace

import (
	"golang.org/x/time/rate"
)

// How fast one may type.
const (
	keyBurst          = 1024 // events that count as one paste without marks round it
	keysPerSecond     = 200  // sustained; a held key repeats 30 times
	lookBurst         = 60   // the same for one who only watches
	looksPerSecond    = 40
	typedBurst        = 128 << 10 // bytes typed at once
	typedPerSecond    = 32 << 10  // sustained, more only waits
	lookedBurst       = 4 << 10   // and again for one who only watches
	lookedPerSecond   = 1 << 10
	maxSilent         = 256 << 10 // bytes that come to no key: a paste that never ends
	keyComesBurst     = 10        // visits of one private visitor's key at once, more only wait
	keyComesPerSecond = 0.5
)

// Typing is how fast one types: keys, and the bytes that they come in.
type Typing struct {
	Comes       *rate.Limiter // of visits
	Keys, Bytes *rate.Limiter
	Silent      int // bytes that come to no key, as in a paste that never ends
}

// Worker types cells and pastes tables.
func Worker() Typing {
	return Typing{unlimited, rate.NewLimiter(keysPerSecond, keyBurst), rate.NewLimiter(typedPerSecond, typedBurst), maxSilent}
}

// Looker holds a key down at most.
func Looker() Typing {
	return Typing{unlimited, rate.NewLimiter(looksPerSecond, lookBurst), rate.NewLimiter(lookedPerSecond, lookedBurst), lookedBurst}
}

var unlimited = rate.NewLimiter(rate.Inf, 0)
