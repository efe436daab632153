package host

import (
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"net"
	"os"
	"runtime"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// The soak runs for as long as its variable says:
//
//	TRIVET_SOAK=5m go test -run Soak -v -timeout 20m ./tui/host
//
// In that time a class and private visitors come, work, change size, break off and
// come again some thousand times, as in an afternoon, with hostile ones among
// them; behind them goroutines, memory and files are what they were.
const soakEnv = "TRIVET_SOAK"

// soakers is how many come and go at a time.
const soakers = 24

func TestSoak(t *testing.T) {
	span, err := time.ParseDuration(os.Getenv(soakEnv))
	if err != nil {
		t.Skip("for the length that " + soakEnv + " gives, such as 5m")
	}
	folder, _ := shelf(t)
	a, b := key(t), key(t)
	o := Settings{Presenters: keys(t, a, b), ByPlace: 1 << 20}
	class := start(t, o, nil)
	private := start(t, Settings{Private: folder, ByPlace: 1 << 20}, func(_ context.Context, _ []string, in io.Reader, out, _ io.Writer) int {
		n, _ := io.Copy(out, in)
		return int(n & 1)
	})
	crew := make([]gossh.Signer, 20)
	for i := range crew {
		crew[i] = key(t)
	}
	soak := func(span time.Duration) (visits int64, limit uint64) {
		ctx, cancel := context.WithTimeout(t.Context(), span)
		defer cancel()
		var done atomic.Int64
		var all sync.WaitGroup
		for i := range soakers {
			all.Go(func() {
				seed := rand.New(rand.NewPCG(uint64(i), 7))
				for ctx.Err() == nil {
					if seed.IntN(2) == 0 {
						class.soaks(ctx, nil, seed)
					} else {
						private.soaks(ctx, crew[seed.IntN(len(crew))], seed)
					}
					done.Add(1)
				}
			})
		}
		pa, pb, w := class.visit(a, 100, 30), class.visit(b, 90, 28), class.visit(nil, 80, 24)
		pb.sees("ollowing the presenter")
		pa.keys(down + right)
		tick := time.NewTicker(200 * time.Millisecond)
		defer tick.Stop()
		for n := 0; ctx.Err() == nil; n++ {
			<-tick.C
			cell := fmt.Sprintf("-3, %d", 50+n%49)
			pa.keys("\x15" + cell)
			w.sees(cell)
			if n%20 == 19 {
				pa.keys(live + "h")
				pa.sees("hand over to: 1")
				pa.keys("1")
				pb.sees("live:")
				pa, pb = pb, pa
			}
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			limit = max(limit, m.HeapInuse)
		}
		all.Wait()
		for _, g := range []*guest{pa, pb, w} {
			_ = g.client.Close()
			<-g.ended
		}
		for _, r := range []*running{class, private} {
			waitFor(t, "all have left", func() bool {
				there, _ := r.gate.Count()
				return there == 0
			})
		}
		return done.Load(), limit
	}
	soak(min(span/10, 20*time.Second)) // what is made once is made
	var routines int
	waitFor(t, "the first are gone", func() bool {
		n := runtime.NumGoroutine()
		same := n == routines
		routines = n
		return same
	})
	used, files := heap(), openFiles()
	visits, limit := soak(span)
	waitFor(t, "goroutines end", func() bool { return runtime.NumGoroutine() <= routines })
	waitFor(t, "files are closed", func() bool { return openFiles() <= files })
	waitFor(t, "memory is given back", func() bool { return heap() < used+8<<20 })
	t.Logf("%d visits in %v; at most %d MB in use; behind them %d goroutines (%d before), %d kB (%d), %d files (%d)",
		visits, span, limit>>20, runtime.NumGoroutine(), routines, heap()>>10, used>>10, openFiles(), files)
}

// openFiles is how many this process has; none where the system does not tell.
func openFiles() int {
	all, _ := os.ReadDir("/proc/self/fd")
	return len(all)
}

// soaks is one visit of one of many sorts.
func (r *running) soaks(ctx context.Context, k gossh.Signer, seed *rand.Rand) {
	tick := time.NewTicker(20 * time.Millisecond)
	defer tick.Stop()
	if seed.IntN(10) == 0 { // says nothing
		if c, err := net.Dial("tcp", r.addr); err == nil {
			<-tick.C
			_ = c.Close()
		}
		return
	}
	client, err := r.dial(k, "")
	if err != nil {
		r.t.Errorf("not admitted: %v", err)
		return
	}
	defer client.Close()
	s, err := client.NewSession()
	if err != nil {
		r.t.Errorf("no session: %v", err)
		return
	}
	s.Stdout, s.Stderr = io.Discard, io.Discard
	if k != nil && seed.IntN(5) == 0 {
		s.Stdin = strings.NewReader(lamp)
		_ = s.Run("solve -")
		return
	}
	in, err := s.StdinPipe()
	if err != nil {
		r.t.Error(err)
		return
	}
	_ = s.RequestPty("xterm-256color", 10+seed.IntN(60), 40+seed.IntN(200), nil)
	_ = s.Shell()
	hostile := seed.IntN(8)
	pouring := make(chan []byte, 100) // by one at a time, which a host that takes no more holds up
	defer close(pouring)
	go func() {
		for noise := range pouring {
			pour(in, noise)
		}
	}()
	for range seed.IntN(100) {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		switch {
		case hostile == 0:
			noise := make([]byte, 4096)
			for i := range noise {
				noise[i] = byte(seed.UintN(256))
			}
			pouring <- noise
		case hostile == 1:
			if opens(client, "direct-tcpip") != nil {
				return
			}
		case seed.IntN(10) == 0:
			_ = s.WindowChange(10+seed.IntN(60), 40+seed.IntN(200))
		default:
			all := []string{"\r", down, right, "1", ",", escape, "\x1bi", "\x1bb", " ", live, save, "\x0e", "?", "\x1b[5~"}
			_, _ = io.WriteString(in, all[seed.IntN(len(all))])
		}
	}
	if hostile != 0 && seed.IntN(2) == 0 {
		_, _ = io.WriteString(in, quit)
	}
}
