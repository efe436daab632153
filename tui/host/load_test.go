package host

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"net"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime/debug"
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"syscall"
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

// loadEnv makes the test's own program a host; its value is the settings.
const loadEnv = "TRIVET_LOAD"

func TestMain(m *testing.M) {
	if what := os.Getenv(loadEnv); what != "" {
		if err := loadHost(strings.Split(what, "|")); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		return
	}
	if len(os.Args) > 2 && os.Args[1] == programVerb {
		os.Exit(asProgram(os.Args[2:]))
	}
	os.Exit(m.Run())
}

func loadHost(o []string) error {
	h, err := New(Settings{Listen: "127.0.0.1:0", Sheet: o[0], Private: o[1], Presenters: o[2], State: o[3], Most: 2000, ByPlace: 2000}, nil, io.Discard)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer stop()
	debug.SetGCPercent(gcPercent)
	fmt.Println(l.Addr())
	return h.Serve(ctx, l)
}

// process is the host in a process of its own.
type process struct {
	b    *testing.B
	cmd  *exec.Cmd
	addr string
}

func load(b *testing.B, sheet, private, presenters string) *process {
	b.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), loadEnv+"="+strings.Join([]string{sheet, private, presenters, b.TempDir()}, "|"))
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		b.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		b.Fatal(err)
	}
	addr, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { _ = cmd.Process.Signal(syscall.SIGTERM); _ = cmd.Wait() })
	return &process{b, cmd, strings.TrimSpace(addr)}
}

// cpu is the time that the host has computed, from the system's own count of
// hundredths of a second.
func (p *process) cpu() time.Duration {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", p.cmd.Process.Pid))
	if err != nil {
		p.b.Skip("this system does not tell how long a process computes")
	}
	f := strings.Fields(string(text[bytes.LastIndexByte(text, ')')+2:]))
	user, _ := strconv.Atoi(f[11])
	system, _ := strconv.Atoi(f[12])
	return time.Duration(user+system) * 10 * time.Millisecond
}

func (p *process) memory() int {
	text, _ := os.ReadFile(fmt.Sprintf("/proc/%d/status", p.cmd.Process.Pid))
	for l := range strings.Lines(string(text)) {
		if v, ok := strings.CutPrefix(l, "VmRSS:"); ok {
			n, _ := strconv.Atoi(strings.Fields(v)[0])
			return n << 10
		}
	}
	return 0
}

// end is one end of a visit, without a screen.
type end struct {
	in   io.Writer
	last atomic.Int64 // when bytes came last
	n    atomic.Int64
}

func (e *end) Write(p []byte) (int, error) {
	e.n.Add(int64(len(p)))
	e.last.Store(time.Now().UnixNano())
	return len(p), nil
}

func (p *process) visit(k gossh.Signer, w, h int) *end {
	c := &gossh.ClientConfig{HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: time.Minute,
		Auth: []gossh.AuthMethod{gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) { return nil, nil })}}
	if k != nil {
		c.Auth = []gossh.AuthMethod{gossh.PublicKeys(k)}
	}
	client, err := gossh.Dial("tcp", p.addr, c)
	if err != nil {
		p.b.Error(err)
		return nil
	}
	p.b.Cleanup(func() { _ = client.Close() })
	s, err := client.NewSession()
	if err != nil {
		p.b.Error(err)
		return nil
	}
	e := &end{}
	s.Stdout = e
	e.in, _ = s.StdinPipe()
	if err := s.RequestPty("xterm-256color", h, w, nil); err != nil {
		p.b.Error(err)
	}
	if err := s.Shell(); err != nil {
		p.b.Error(err)
	}
	waitFor(p.b, "the first frame", func() bool { return e.n.Load() > 400 })
	return e
}

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

// teach types a key at a time and gives how long the last watcher waited.
func teach(b *testing.B, presenter *end, watchers []*end, keys int, every time.Duration) (waits []time.Duration) {
	tick := time.NewTicker(every)
	defer tick.Stop()
	for i := range keys {
		<-tick.C
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
	return waits
}

func p95(waits []time.Duration) float64 {
	return float64(waits[len(waits)*95/100]) / float64(time.Millisecond)
}

func onStage(b *testing.B) (*process, *end) {
	k := key(b)
	p := load(b, write(b, filepath.Join(b.TempDir(), "lamp.toml"), lamp), "", keys(b, k))
	presenter := p.visit(k, 120, 36)
	fmt.Fprint(presenter.in, down+right)
	return p, presenter
}

func BenchmarkLoadClassOf500(b *testing.B) {
	p, presenter := onStage(b)
	empty := p.memory()
	watchers := p.watchers(500)
	b.ReportMetric(float64(p.memory()-empty)/500/1024, "kB/watcher")
	for b.Loop() {
		before, from := p.cpu(), time.Now()
		waits := teach(b, presenter, watchers, 100, time.Second/5)
		b.ReportMetric(100*float64(p.cpu()-before)/float64(time.Since(from)), "%core")
		b.ReportMetric(p95(waits), "ms-p95")
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(p.memory()-empty)/500/1024, "kB/watcher-after")
}

func BenchmarkLoad1000Held(b *testing.B) {
	p, presenter := onStage(b)
	empty := p.memory()
	for b.Loop() {
		watchers := p.watchers(1000)
		waits := teach(b, presenter, watchers, 20, time.Second)
		b.ReportMetric(float64(p.memory()-empty)/1000/1024, "kB/watcher")
		b.ReportMetric(p95(waits), "ms-p95")
	}
	b.ReportMetric(0, "ns/op")
}

func BenchmarkLoadPrivate50(b *testing.B) {
	folder := b.TempDir()
	write(b, filepath.Join(folder, "lamp.toml"), lamp)
	p := load(b, "", folder, "")
	empty := p.memory()
	var all []*end
	for range 50 {
		e := p.visit(key(b), 120, 40)
		n := e.n.Load()
		fmt.Fprint(e.in, "\r")
		waitFor(b, "the workbench", func() bool { return e.n.Load() > n+1000 })
		fmt.Fprint(e.in, down+right)
		all = append(all, e)
	}
	for b.Loop() {
		before, from := p.cpu(), time.Now()
		var wait sync.WaitGroup
		var mu sync.Mutex
		var waits []time.Duration
		for _, e := range all {
			wait.Go(func() {
				own := teach(b, e, []*end{e}, 50, time.Second/5)
				mu.Lock()
				waits = append(waits, own...)
				mu.Unlock()
			})
		}
		wait.Wait()
		slices.Sort(waits)
		b.ReportMetric(100*float64(p.cpu()-before)/float64(time.Since(from)), "%core")
		b.ReportMetric(p95(waits), "ms-p95")
		b.ReportMetric(float64(p.memory()-empty)/50/1024, "kB/visitor")
	}
	b.ReportMetric(0, "ns/op")
}

// The others' wait beside visitors who pour, flap and flood.
func BenchmarkLoadBesideHostile(b *testing.B) {
	p, presenter := onStage(b)
	watchers := p.watchers(20)
	for b.Loop() {
		measure := func(name string) {
			before, from := p.cpu(), time.Now()
			wait := p95(teach(b, presenter, watchers, 40, time.Second/5))
			b.ReportMetric(wait, "ms-p95-"+name)
			b.ReportMetric(100*float64(p.cpu()-before)/float64(time.Since(from)), "%core-"+name)
		}
		measure("calm")
		for i, name := range []string{"flapping", "flooding", "pouring"} {
			stop := make(chan struct{})
			var wait sync.WaitGroup
			for range 3 {
				wait.Go(func() { pester(p, i, stop) })
			}
			measure(name)
			close(stop)
			wait.Wait()
		}
	}
	b.ReportMetric(0, "ns/op")
}

// pester comes again and again: to pour bytes, to change size, to open channels,
// to offer wrong keys. What it does is bounded: the client would else be the load.
func pester(p *process, i int, stop <-chan struct{}) {
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	c := &gossh.ClientConfig{HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: time.Minute,
		Auth: []gossh.AuthMethod{gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) { return nil, nil })}}
	for {
		select {
		case <-stop:
			return
		default:
		}
		client, err := gossh.Dial("tcp", p.addr, c)
		if err != nil {
			return
		}
		s, err := client.NewSession()
		if err == nil && s.RequestPty("xterm", 100, 300, nil) == nil {
			s.Stdout = io.Discard
			in, _ := s.StdinPipe()
			_ = s.Shell()
			go pour(in, bytes.Repeat([]byte("\x1b7\x1b[C\x1b]"), 40000))
		}
		for n := 0; n < 200 && err == nil; n++ {
			select {
			case <-stop:
				_ = client.Close()
				return
			case <-tick.C:
			}
			switch i % 3 {
			case 0:
				err = s.WindowChange(20+n%80, 80+n%200)
			case 1:
				err = opens(client, "direct-tcpip")
			}
		}
		_ = client.Close()
	}
}
