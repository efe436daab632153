package host

import (
	"bytes"
	"context"
	"io"
	"log/slog"
	"strings"
	"testing"
	"time"

	"trivet/tui/host/door"
	"trivet/tui/host/line"
)

// acting are characters of each sort that act on a terminal, and what shows for them.
const (
	acting  = "a\x1b[2J\x1b]0;mine\x07\x00\x7f\u009b2J\u202e\u2066\u200f\u061c\x9bz"
	dots    = "a·[2J·]0;mine····2J·····z"
	actors  = "\x1b\x07\x00\x7f\u009b\u202e\u2066\u200f\u061c"
	written = "one\n" + acting + "\n\ttwo\n"
)

// What a command prints goes to a terminal cleaned. Where there is none its results are
// the bytes they are, a page in PDF among them: the command line has cleaned its texts.
func TestNothingOfACommandActs(t *testing.T) {
	r := start(t, Settings{}, func(_ context.Context, args []string, in io.Reader, out, errs io.Writer) int {
		_, _ = io.Copy(io.Discard, in)
		for _, to := range []io.Writer{out, errs} {
			for _, b := range []byte(written) { // cut anywhere
				_, _ = to.Write([]byte{b})
			}
		}
		return 0
	})
	client, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	defer client.Close()
	shown := "one\n" + dots + "\n\ttwo\n"
	if got := r.runs(client, "page - --as pdf", strings.NewReader(lamp)); got != (ran{out: written, errs: shown}) {
		t.Errorf("%#v", got)
	}
	if got := r.runs(client, "solve "+acting, strings.NewReader("")); got.code != cannotDo || got.errs != "trivet: sheets are read from standard input only. Try: `solve - < sheet.toml` instead of "+dots+"\n" {
		t.Errorf("%#v", got)
	}
	s, err := client.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if err := s.RequestPty("xterm", 24, 80, nil); err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	s.Stdin, s.Stdout = strings.NewReader(lamp), &out
	if err := s.Run("page - --as pdf"); err != nil {
		t.Fatal(err)
	}
	for _, c := range strings.Split(actors, "") {
		if strings.Contains(out.String(), c) {
			t.Errorf("at a terminal this comes: %q", &out)
		}
	}
	if n := strings.Count(out.String(), "z\r\n\ttwo\r\n"); n != 2 {
		t.Errorf("%d times whole at a terminal: %q", n, &out)
	}
}

// The log is read in a terminal too, and what is in it comes from anybody.
func TestNothingOfTheLogActs(t *testing.T) {
	r := start(t, Settings{}, nil)
	for _, text := range append(strings.Split(actors, ""), acting, "a\nb") {
		before := len(r.log.String())
		r.Host.log.Info("came", "visitor", text)
		if got := r.log.String()[before:]; strings.ContainsAny(got, actors) || strings.Count(got, "\n") != 1 || !strings.Contains(got, "msg=came visitor=") {
			t.Errorf("%q is logged as %q", text, got)
		}
	}
}

// leaves is a service that every visitor leaves for a reason.
type leaves string

func (l leaves) attend(v *visitor) { v.end(string(l)) }
func (leaves) end(string)          {}
func (leaves) watch(time.Time)     {}

// The last words name a sheet that was saved, by the name it came with.
func TestNothingOfTheLastWordsActs(t *testing.T) {
	var out bytes.Buffer
	h := &Host{service: leaves("it is saved as " + acting)}
	h.entertain(newVisitor(door.Person{}, 1, slog.New(slog.DiscardHandler), line.Terminal{}, 80, 24, &out, func() {}), &out)
	if _, words, _ := strings.Cut(out.String(), line.Depart); words != "trivet: it is saved as "+dots+"\r\n" {
		t.Errorf("%q", words)
	}
}
