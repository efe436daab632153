package host

import (
	"log/slog"
	"sync/atomic"
	"time"

	"golang.org/x/time/rate"
)

// boundedLog writes lines whose number others choose, at no more than a rate, and
// counts those that it leaves out.
type boundedLog struct {
	rate *rate.Limiter
	out  atomic.Int64
}

func newBoundedLog(burst int) *boundedLog {
	return &boundedLog{rate: rate.NewLimiter(rate.Every(time.Hour/linesPerHour), burst)}
}

func (b *boundedLog) info(log *slog.Logger, what string, args ...any) {
	if !b.rate.Allow() {
		b.out.Add(1)
		return
	}
	log.Info(what, args...)
}

// report says how many lines were left out since it was last said, where the rate has
// a line to spare or it is the last time.
func (b *boundedLog) report(log *slog.Logger, last bool, about ...any) {
	if b.out.Load() == 0 || !b.rate.Allow() && !last {
		return
	}
	log.Info("lines left out", append(about, "lines", b.out.Swap(0))...)
}

// idle tells whether nothing is left to say, and all of the burst is there again.
func (b *boundedLog) idle() bool { return b.out.Load() == 0 && full(b.rate) }
