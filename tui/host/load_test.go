package host

import (
	"fmt"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// The load is measured on a host in a process of its own, by
//
//	go test -run '^$' -bench Load -benchtime 1x ./tui/host
//
// on the loopback address alone: half a minute of a class of 500, 1,000 held, 50
// private visitors, and a class with hostile visitors beside it.

// classSizes are those of a class: a few usual ones.
var classSizes = [][2]int{{80, 24}, {100, 30}, {120, 36}, {120, 40}, {132, 43}, {160, 45}, {200, 60}, {90, 28}}

func (p *process) watchers(n int) []*end {
	all := make([]*end, n)
	var wait sync.WaitGroup
	for part := range 8 {
		wait.Go(func() {
			for i := part; i < n; i += 8 {
				s := classSizes[i%len(classSizes)]
				all[i] = p.visit(nil, s[0], s[1])
			}
		})
	}
	wait.Wait()
	if p.b.Failed() {
		p.b.FailNow()
	}
	return all
}

// settled is how long no bytes have come where a keystroke has been shown to all:
// bytes that come behind the next one are then its own.
const settled = 30 * time.Millisecond

// teach types a key at a time and gives how long the last watcher waited for the
// first bytes after it. unsettled counts the keys for which that may be too short,
// since bytes of the key before were still under way.
func teach(b *testing.B, presenter *end, watchers []*end, keys int, every time.Duration) (waits []time.Duration, unsettled int) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	for i := range keys {
		<-tick.C
		for _, w := range watchers {
			if time.Since(time.Unix(0, w.last.Load())) < settled {
				unsettled++
				break
			}
		}
		typed := time.Now()
		fmt.Fprint(presenter.in, string("0123456789"[i%10]))
		if i%8 == 7 {
			fmt.Fprint(presenter.in, "\x15") // the cell anew
		}
		waitFor(b, "all have seen it", func() bool {
			for _, w := range watchers {
				if w.last.Load() < typed.UnixNano() {
					return false
				}
			}
			return true
		})
		var last int64
		for _, w := range watchers {
			last = max(last, w.last.Load())
		}
		waits = append(waits, time.Unix(0, last).Sub(typed))
	}
	slices.Sort(waits)
	return waits, unsettled
}

func p95(waits []time.Duration) float64 {
	return float64(waits[len(waits)*95/100]) / float64(time.Millisecond)
}

func inClassroom(b *testing.B) (*process, *end) {
	k := key(b)
	p := load(b, write(b, filepath.Join(b.TempDir(), "lamp.toml"), lamp), "", keys(b, k))
	presenter := p.visit(k, 120, 36)
	fmt.Fprint(presenter.in, down+right)
	return p, presenter
}

func BenchmarkLoadClassOf500(b *testing.B) {
	p, presenter := inClassroom(b)
	empty := p.memory()
	watchers := p.watchers(500)
	came := p.memory() - empty
	for b.Loop() {
		before, from := p.cpu(), time.Now()
		waits, unsettled := teach(b, presenter, watchers, 100, time.Second/5)
		b.ReportMetric(float64(unsettled), "unsettled-of-100")
		b.ReportMetric(100*float64(p.cpu()-before)/float64(time.Since(from)), "%core")
		b.ReportMetric(p95(waits), "ms-p95")
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(came)/500/1024, "kB/watcher")
	b.ReportMetric(float64(p.memory()-empty)/500/1024, "kB/watcher-after")
}

func BenchmarkLoad1000Held(b *testing.B) {
	p, presenter := inClassroom(b)
	empty := p.memory()
	for b.Loop() {
		watchers := p.watchers(1000)
		waits, _ := teach(b, presenter, watchers, 20, time.Second)
		b.ReportMetric(float64(p.memory()-empty)/1000/1024, "kB/watcher")
		b.ReportMetric(p95(waits), "ms-p95")
	}
	b.ReportMetric(0, "ns/op")
}

func BenchmarkLoadPrivate50(b *testing.B) {
	p, all, empty := inPrivate(b, 50)
	for b.Loop() {
		before, from := p.cpu(), time.Now()
		waits := work(b, all, 50)
		b.ReportMetric(100*float64(p.cpu()-before)/float64(time.Since(from)), "%core")
		b.ReportMetric(p95(waits), "ms-p95")
		b.ReportMetric(float64(p.memory()-empty)/50/1024, "kB/visitor")
	}
	b.ReportMetric(0, "ns/op")
}

// inPrivate is a host with n visitors each on a copy of the lamp, in a cell, and
// the memory it took before they came.
func inPrivate(b *testing.B, n int) (*process, []*end, int) {
	folder := b.TempDir()
	write(b, filepath.Join(folder, "lamp.toml"), lamp)
	p := load(b, "", folder, "")
	empty := p.memory()
	all := make([]*end, n)
	for i := range all {
		e := p.visit(key(b), 120, 40)
		n := e.n.Load()
		fmt.Fprint(e.in, "\r")
		waitFor(b, "the workbench", func() bool { return e.n.Load() > n+1000 })
		fmt.Fprint(e.in, down+right)
		all[i] = e
	}
	return p, all, empty
}

// work types keys at each of several workbenches, five a second, and gives all
// waits for the first bytes after a key.
func work(b *testing.B, all []*end, keys int) (waits []time.Duration) {
	var wait sync.WaitGroup
	var mu sync.Mutex
	for _, e := range all {
		wait.Go(func() {
			own, _ := teach(b, e, []*end{e}, keys, time.Second/5)
			mu.Lock()
			waits = append(waits, own...)
			mu.Unlock()
		})
	}
	wait.Wait()
	slices.Sort(waits)
	return waits
}

// The others' wait beside visitors of each hostile sort: at most twice that of the
// calm class.
func BenchmarkLoadBesideHostile(b *testing.B) {
	p, presenter := inClassroom(b)
	watchers := p.watchers(20)
	for b.Loop() {
		besideHostile(b, p, func() gossh.Signer { return nil }, func() []time.Duration {
			waits, _ := teach(b, presenter, watchers, 40, time.Second/5)
			return waits
		})
	}
	b.ReportMetric(0, "ns/op")
}

// The same among private visitors.
func BenchmarkLoadPrivateBesideHostile(b *testing.B) {
	p, all, _ := inPrivate(b, 10)
	for b.Loop() {
		besideHostile(b, p, func() gossh.Signer { return key(b) }, func() []time.Duration { return work(b, all, 40) })
	}
	b.ReportMetric(0, "ns/op")
}

func besideHostile(b *testing.B, p *process, k func() gossh.Signer, work func() []time.Duration) {
	measure := func(name string) {
		before, from := p.cpu(), time.Now()
		b.ReportMetric(p95(work()), "ms-p95-"+name)
		b.ReportMetric(100*float64(p.cpu()-before)/float64(time.Since(from)), "%core-"+name)
	}
	measure("calm")
	for _, name := range sorts {
		stop := make(chan struct{})
		var wait sync.WaitGroup
		for range 3 {
			who := k()
			wait.Go(func() { pester(p, name, who, stop) })
		}
		measure(name)
		close(stop)
		wait.Wait()
	}
}
