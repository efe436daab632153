package call

import (
	"context"
	"os"
	"os/signal"
	"syscall"
	"time"
)

// together is the time within which signals tell the same end: a service that is
// stopped gets two, and so does what ran in a terminal that is closed. The second
// must not end the process while it restores the terminal.
const together = time.Second

// UntilSignal gives a context that ends with a signal that would end the
// process, so that the terminal is restored first; a second one ends it at once,
// unless it came together with the first.
// The function gives the exit code that shells give such an end, 0 without a
// signal. What is ignored, as under nohup, stays ignored.
func UntilSignal(ctx context.Context) (context.Context, func() int) {
	const shells = 128 // and the number of the signal
	ctx, cancel := context.WithCancel(ctx)
	come, code := make(chan os.Signal, 1), make(chan int, 1)
	for _, s := range []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP} {
		if !signal.Ignored(s) {
			signal.Notify(come, s)
		}
	}
	go func() {
		defer signal.Stop(come)
		select {
		case s := <-come:
			if n, ok := s.(syscall.Signal); ok {
				code <- shells + int(n)
			}
			cancel()
			<-time.After(together)
		case <-ctx.Done():
			code <- 0
		}
	}()
	return ctx, func() int {
		cancel()
		return <-code
	}
}
