package pace

import (
	"log/slog"
	"sync/atomic"
	"time"

	"golang.org/x/time/rate"
)

const (
	LinesBurst   = 100 // lines about those not admitted, or about the commands of one address, at once; then
	linesPerHour = 600
)

// Log writes lines whose number others choose, at no more than a rate, and
// counts those that it leaves out.
type Log struct {
	rate *rate.Limiter
	out  atomic.Int64
}

// NewLog writes so many lines at once, and after that as many as anybody reads.
func NewLog(burst int) *Log {
	return &Log{rate: rate.NewLimiter(rate.Every(time.Hour/linesPerHour), burst)}
}

// Info writes a line, or counts it.
func (b *Log) Info(log *slog.Logger, what string, args ...any) {
	if !b.rate.Allow() {
		b.out.Add(1)
		return
	}
	log.Info(what, args...)
}

// Owes tells whether lines were left out that nothing was said of yet.
func (b *Log) Owes() bool { return b.out.Load() > 0 }

// Report says how many lines were left out since it was last said, where the rate has
// a line to spare or it is the last time.
func (b *Log) Report(log *slog.Logger, last bool, about ...any) {
	if !b.Owes() || !b.rate.Allow() && !last {
		return
	}
	log.Info("lines left out", append(about, "lines", b.out.Swap(0))...)
}

// Idle tells whether nothing is left to say, and all of the burst is there again.
func (b *Log) Idle() bool { return !b.Owes() && Full(b.rate) }
