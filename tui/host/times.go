package host

import (
	"time"
)

// times are how long a connection may take over what it does, and may stay.
type times struct {
	handshake time.Duration // to offer keys and type a class word; twice that to come to a session
	ask       time.Duration // how often a client is asked whether it is there: a quiet watcher stays as long as the terminal answers
	answer    time.Duration // to answer that
	idle      time.Duration // without even that, or without a session
	visit     time.Duration // in all
}

// usual are the times of the product; tests have shorter ones.
func usual() times {
	return times{handshake: time.Minute, ask: 30 * time.Second, answer: 30 * time.Second, idle: 2 * time.Minute, visit: 12 * time.Hour}
}
