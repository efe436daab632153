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
	"runtime/debug"
	"strconv"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

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
	s := Settings{Listen: "127.0.0.1:0", Sheet: o[0], Private: o[1], Presenters: o[2], State: o[3], Most: 2000, ByPlace: 2000}
	h, err := New(s, nil, io.Discard)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		return err
	}
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer stop()
	debug.SetGCPercent(s.gcPercent())
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

// clientAs is a client that shows a key, or none and no code.
func clientAs(k gossh.Signer) *gossh.ClientConfig {
	c := &gossh.ClientConfig{HostKeyCallback: gossh.InsecureIgnoreHostKey(), Timeout: time.Minute,
		Auth: []gossh.AuthMethod{gossh.KeyboardInteractive(func(string, string, []string, []bool) ([]string, error) { return nil, nil })}}
	if k != nil {
		c.Auth = []gossh.AuthMethod{gossh.PublicKeys(k)}
	}
	return c
}

func (p *process) visit(k gossh.Signer, w, h int) *end {
	client, err := gossh.Dial("tcp", p.addr, clientAs(k))
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
