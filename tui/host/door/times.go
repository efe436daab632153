package door

import (
	"time"
)

// Times are how long a connection may take over what it does, and may stay.
type Times struct {
	Handshake time.Duration // to offer keys and type a class word; twice that to come to a session
	Ask       time.Duration // how often a client is asked whether it is there: a quiet watcher stays as long as the terminal answers
	Answer    time.Duration // to answer that
	Idle      time.Duration // without even that, or without a session
	Visit     time.Duration // in all
}

// usual are the times of the product; tests have shorter ones.
func usual() Times {
	return Times{Handshake: time.Minute, Ask: 30 * time.Second, Answer: 30 * time.Second, Idle: 2 * time.Minute, Visit: 12 * time.Hour}
}
