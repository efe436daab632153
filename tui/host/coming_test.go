package host

import (
	"math/rand/v2"
	"runtime"
	"sync"
	"sync/atomic"
	"testing"

	"trivet/tui/grid"
	"trivet/tui/host/door"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
)

// Two presenters hand a sheet to and fro while fifty come and go; after all have
// left, goroutines and memory are what they were.
func TestFiftyComeAndGoWhileTheSheetIsHandedOver(t *testing.T) {
	a, b := key(t), key(t)
	r := start(t, Settings{Presenters: keys(t, a, b)}, nil)
	round := func(visits, handovers int) {
		pa := r.visit(a, 100, 30)
		pa.sees("live:")
		pb := r.visit(b, 90, 30)
		pb.sees("following")
		var all sync.WaitGroup
		for i := range visits {
			all.Go(func() {
				seed := rand.New(rand.NewPCG(uint64(i), 1))
				for range 3 {
					client, err := r.dial(nil, "")
					if err != nil {
						t.Error(err)
						return
					}
					g := r.sit(client, 60+seed.IntN(80), 16+seed.IntN(30))
					g.sees("present") // followed, or by nobody
					for range seed.IntN(4) {
						switch seed.IntN(4) {
						case 0:
							g.resize(60+seed.IntN(80), 16+seed.IntN(30))
						case 1:
							g.keys("\x1bi" + right)
						case 2:
							g.keys(live)
						case 3:
							g.keys("\x1bb ")
						}
					}
					if seed.IntN(2) == 0 {
						_ = client.Close()
					} else {
						g.keys(quit)
						g.leaves()
						_ = client.Close()
					}
				}
			})
		}
		from, to := pa, pb
		for range handovers {
			from.keys("\x1bp") // to the points
			from.sees("live:")
			from.keys(live)
			from.sees("h: hand over")
			from.keys("h")
			from.sees("hand over to: 1")
			from.keys("1")
			to.sees("live:")
			from.sees("following")
			from, to = to, from
		}
		all.Wait()
		for _, g := range []*guest{to, from} {
			_ = g.client.Close()
			<-g.ended
		}
		waitFor(t, "everybody has left", func() bool {
			st := r.service.(*classroom)
			st.mu.Lock()
			defer st.mu.Unlock()
			return len(st.clients) == 0 && len(st.screens) == 0
		})
	}
	round(5, 2) // what is made once is made
	var before int
	waitFor(t, "the first are gone", func() bool {
		n := runtime.NumGoroutine()
		same := n == before
		before = n
		return same
	})
	used := heap()
	round(50, 6)
	waitFor(t, "goroutines end", func() bool { return runtime.NumGoroutine() <= before })
	waitFor(t, "memory is given back", func() bool { return heap() < used+4<<20 })
	if all, strangers := r.gate.Count(); all != 0 || strangers != 0 {
		t.Errorf("%d connections are still counted, %d strangers", all, strangers)
	}
}

// Who comes and goes is told to the presenter alone: a class draws nothing for it,
// and its next frame is not put off.
func TestComingAndGoingIsNothingToTheClass(t *testing.T) {
	var drawn [2]atomic.Int64
	count := func(i int) func() grid.Frame {
		return func() grid.Frame { drawn[i].Add(1); return page(80, 24, "") }
	}
	class := line.NewScreen(nil, 80, 24, line.Terminal{}, line.WithClass, count(0)).Begin(pace.AtOnce{}, pace.AtOnce{})
	own := line.NewScreen(nil, 80, 24, line.Terminal{}, line.AtOnce, count(1)).Begin(pace.AtOnce{}, pace.AtOnce{})
	defer class.Close()
	defer own.Close()
	holder := &visitor{who: door.Person{Role: door.Presenter}}
	s := &classroom{
		holder: holder, clients: map[*visitor]*client{holder: {own: own}, {}: {}},
		screens: map[shape]*shared{{}: {Screen: class}},
	}
	s.status.Store(&status{})
	s.report("")
	waitFor(t, "the presenter is told", func() bool { return drawn[1].Load() == 1 })
	if drawn[0].Load() != 0 {
		t.Error("the class is drawn for one who comes")
	}
	s.holder = nil
	s.report("")
	waitFor(t, "the class is told that nobody presents", func() bool { return drawn[0].Load() == 1 })
}
