package host

import (
	"bytes"
	"fmt"
	"io"
	"net"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// sorts of hostile visitors, three of each at a time; typing is a key held by a
// machine, which only private visitors' workbenches hear.
var sorts = []string{"flapping", "flooding", "pouring", "many-sizes", "stalled", "silent", "typing"}

// pester comes again and again: to change size, to open channels, to pour bytes, to
// have other sizes drawn, to read nothing, to say nothing. What it does is bounded:
// the client would else be the load.
func pester(p *process, sort string, k gossh.Signer, stop <-chan struct{}) {
	tick := time.NewTicker(5 * time.Millisecond)
	defer tick.Stop()
	c := clientAs(k)
	for round := 0; ; round++ {
		select {
		case <-stop:
			return
		default:
		}
		tcp, err := net.Dial("tcp", p.addr)
		if err != nil {
			return
		}
		if sort == "silent" {
			select {
			case <-stop:
			case <-time.After(time.Second):
			}
			_ = tcp.Close()
			continue
		}
		wire := &stall{Conn: tcp, gate: make(chan struct{})}
		close(wire.gate)
		conn, chans, reqs, err := gossh.NewClientConn(wire, p.addr, c)
		if err != nil {
			_ = tcp.Close()
			continue
		}
		client := gossh.NewClient(conn, chans, reqs)
		w, h := 300, 100
		if sort == "many-sizes" {
			w, h = 40+round*13%260, 10+round*7%90
		}
		s, err := client.NewSession()
		if err == nil && s.RequestPty("xterm", h, w, nil) == nil {
			s.Stdout = io.Discard
			in, _ := s.StdinPipe()
			_ = s.Shell()
			switch sort {
			case "stalled":
				wire.stop()
			case "flapping", "flooding", "pouring":
				go pour(in, bytes.Repeat([]byte("\x1bi\x1b[C\x1b]"), 40000))
			case "typing":
				go func() {
					fmt.Fprint(in, "\r"+down+right)
					pour(in, bytes.Repeat([]byte("1\x15"), 40000))
				}()
			}
		}
		for n := 0; n < 200 && err == nil; n++ {
			select {
			case <-stop:
				_ = tcp.Close()
				return
			case <-tick.C:
			}
			switch sort {
			case "flapping":
				err = s.WindowChange(20+n%80, 80+n%200)
			case "flooding":
				err = opens(client, "direct-tcpip")
			}
		}
		_ = tcp.Close()
	}
}
