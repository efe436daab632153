// Package pace says how much one visitor, one key or one address may take, how fast, and who waits
// for whom.
package pace

import (
	"context"
	"io"
	"time"

	"golang.org/x/time/rate"
)

// Take takes n from a limiter and waits for what was not there, at most until a visit
// ends. More than the limiter ever has counts as all of it.
func Take(ctx context.Context, by *rate.Limiter, n int) error {
	return by.WaitN(ctx, min(n, by.Burst()))
}

// Full tells whether all of a limiter's burst is there again.
func Full(by *rate.Limiter) bool { return by.Tokens() >= float64(by.Burst()) }

// Sleep waits, but not beyond the end of a visit.
func Sleep(d time.Duration, over <-chan struct{}) error {
	select {
	case <-time.After(d):
		return nil
	case <-over:
		return io.EOF
	}
}

// PerMinute limits to so many at once, and as many a minute after that.
func PerMinute(n int) *rate.Limiter { return rate.NewLimiter(rate.Limit(n)/60, n) }

// Nudge wakes whoever waits at a channel of one place, now or next.
func Nudge(c chan struct{}) {
	select {
	case c <- struct{}{}:
	default:
	}
}
