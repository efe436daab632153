package host

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/pace"
)

// programVerb makes the test's own program one that does a verb: it is its first
// argument, since a visitor's commands get no environment.
const programVerb = "as-a-program"

func asProgram(args []string) int {
	switch args[0] {
	case "environment":
		fmt.Println(strings.Join(os.Environ(), " "))
		where, _ := os.Getwd()
		text, _ := io.ReadAll(os.Stdin)
		fmt.Println(where, len(text))
		fmt.Fprintln(os.Stderr, "beside")
		return 7
	case "for ever":
		fmt.Println("begun")
		for n := 0; ; n++ {
			_ = n
		}
	}
	return 1
}

func TestAProgramHasNothingOfTheHost(t *testing.T) {
	t.Setenv("TRIVET_SECRET", "x")
	var out, errs bytes.Buffer
	code := program(os.Args[0])(t.Context(), []string{programVerb, "environment"}, strings.NewReader(lamp), &out, &errs)
	if want := fmt.Sprintf("GOMAXPROCS=1 GOMEMLIMIT=512MiB\n/ %d\n", len(lamp)); code != 7 || out.String() != want || errs.String() != "beside\n" {
		t.Errorf("%d, %q, %q, want %q", code, &out, &errs, want)
	}
}

func TestAProgramThatDoesNotEndIsEnded(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	begun, in := io.Pipe()
	done := make(chan int)
	go func() {
		done <- program(os.Args[0])(ctx, []string{programVerb, "for ever"}, strings.NewReader(""), in, io.Discard)
	}()
	if _, err := io.ReadFull(begun, make([]byte, len("begun\n"))); err != nil {
		t.Fatal(err)
	}
	cancel()
	if code := <-done; code != cannotDo {
		t.Errorf("%d", code)
	}
	if code := program("/nowhere")(t.Context(), nil, nil, io.Discard, io.Discard); code != cannotDo {
		t.Errorf("%d", code)
	}
}

// ran is what came of a command.
type ran struct {
	out, errs string
	code      int
}

func (r *running) runs(client *gossh.Client, command string, in io.Reader) ran {
	r.t.Helper()
	s, err := client.NewSession()
	if err != nil {
		r.t.Fatal(err)
	}
	defer s.Close()
	var out, errs bytes.Buffer
	s.Stdout, s.Stderr = &out, &errs
	stdin, err := s.StdinPipe()
	if err != nil {
		r.t.Fatal(err)
	}
	go func() { // which need not be read to its end
		_, _ = io.Copy(stdin, in)
		_ = stdin.Close()
	}()
	code := 0
	if err := s.Run(command); err != nil {
		exit, ok := err.(*gossh.ExitError)
		if !ok {
			r.t.Fatalf("%s: %v", command, err)
		}
		code = exit.ExitStatus()
	}
	return ran{out.String(), errs.String(), code}
}

// Who sends no sheet, or goes away, keeps nobody from having a sheet solved.
func TestCommandsWaitForNobodysInput(t *testing.T) {
	r := start(t, Settings{}, func(_ context.Context, _ []string, in io.Reader, out, _ io.Writer) int {
		n, _ := io.Copy(io.Discard, in)
		fmt.Fprint(out, n)
		return 0
	})
	for range pace.InputsByKey {
		client, err := r.dial(nil, "")
		if err != nil {
			t.Fatal(err)
		}
		defer client.Close()
		s, err := client.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.StdinPipe(); err != nil {
			t.Fatal(err)
		}
		if err := s.Start("solve -"); err != nil {
			t.Fatal(err)
		}
	}
	waitFor(t, "they are waited for", func() bool { return len(r.inputs) == pace.InputsByKey })
	client, err := r.dial(key(t), "")
	if err != nil {
		t.Fatal(err)
	}
	defer client.Close()
	if got := r.runs(client, "solve -", strings.NewReader(lamp)); got != (ran{out: fmt.Sprint(len(lamp))}) {
		t.Errorf("%+v", got)
	}
}

// starts a command that is not waited for.
func (r *running) starts(k gossh.Signer, command string, in io.Reader) {
	r.t.Helper()
	client, err := r.dial(k, "")
	if err != nil {
		r.t.Fatal(err)
	}
	r.t.Cleanup(func() { _ = client.Close() })
	s, err := client.NewSession()
	if err != nil {
		r.t.Fatal(err)
	}
	if s.Stdin = in; in == nil {
		if _, err := s.StdinPipe(); err != nil {
			r.t.Fatal(err)
		}
	}
	if err := s.Start(command); err != nil {
		r.t.Fatal(err)
	}
}

// However many slow commands one key has sent, another's comes after one of them.
func TestKeysTakeTurns(t *testing.T) {
	const slow = 8
	greedy, other := key(t), key(t)
	began, on := make(chan string), make(chan struct{})
	r := start(t, Settings{Watchers: keys(t, greedy, other)}, func(ctx context.Context, args []string, _ io.Reader, _, _ io.Writer) int {
		select {
		case began <- args[0]:
		case <-ctx.Done():
			return 0
		}
		select {
		case <-on:
		case <-ctx.Done():
		}
		return 0
	})
	users := func(k gossh.Signer) int { return r.shares.Come(gossh.FingerprintSHA256(k.PublicKey())) }
	for i := range slow {
		r.starts(greedy, "solve -", strings.NewReader(lamp))
		waitFor(t, "it waits for its turn", func() bool { return users(greedy) == i+1 })
		if i == 0 {
			<-began
		}
	}
	r.starts(other, "check -", strings.NewReader(lamp))
	waitFor(t, "the other waits for its turn", func() bool { return users(other) == 1 })
	for done := 1; ; done++ {
		on <- struct{}{}
		if <-began == "check" {
			if done > 3 { // one was under way, and one may have been next
				t.Errorf("the other came after %d of %d commands of one key", done, slow)
			}
			break
		}
	}
}

// Nor do commands that wait for a sheet fill the host for others.
func TestAKeyLeavesRoomForOthersInput(t *testing.T) {
	greedy, other := key(t), key(t)
	r := start(t, Settings{Watchers: keys(t, greedy, other)}, func(context.Context, []string, io.Reader, io.Writer, io.Writer) int { return 0 })
	for i := range pace.InputsByKey {
		r.starts(greedy, "solve -", nil)
		waitFor(t, "it waits for its sheet", func() bool { return len(r.inputs) == i+1 })
	}
	for k, want := range map[gossh.Signer]ran{
		greedy: {errs: "trivet: 4 of your commands are still waiting for a sheet. Try: send it, or end one of them with ctrl+c\n", code: cannotDo},
		other:  {},
	} {
		client, err := r.dial(k, "")
		if err != nil {
			t.Fatal(err)
		}
		if got := r.runs(client, "solve -", strings.NewReader(lamp)); got != want {
			t.Errorf("%+v, want %+v", got, want)
		}
		_ = client.Close()
	}
}

// More than a sheet may be is not read, and more than anybody reads is not sent.
func TestCommandsHaveBounds(t *testing.T) {
	r := start(t, Settings{}, func(_ context.Context, args []string, in io.Reader, out, _ io.Writer) int {
		if args[0] == "check" {
			for block := make([]byte, 1<<20); ; {
				if _, err := out.Write(block); err != nil {
					return 0
				}
			}
		}
		n, _ := io.Copy(io.Discard, in)
		fmt.Fprint(out, n)
		return 0
	})
	client, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	defer client.Close()
	if got := r.runs(client, "solve -", io.LimitReader(endless{}, 2<<20)); got != (ran{out: fmt.Sprint(1<<20 + 1)}) {
		t.Errorf("%+v", got)
	}
	got := r.runs(client, "check -", strings.NewReader(lamp))
	if len(got.out) > maxOutput || got.code != cannotDo || got.errs != "trivet: that is more than may be sent from here\n" {
		t.Errorf("%d bytes, %q, %d", len(got.out), got.errs, got.code)
	}
}

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '#'
	}
	return len(p), nil
}

// A client that goes away ends what is done for it.
func TestACommandEndsWithItsClient(t *testing.T) {
	begun, ended := make(chan struct{}), make(chan struct{})
	r := start(t, Settings{}, func(ctx context.Context, _ []string, _ io.Reader, _, _ io.Writer) int {
		close(begun)
		<-ctx.Done()
		close(ended)
		return cannotDo
	})
	client, err := r.dial(nil, "")
	if err != nil {
		t.Fatal(err)
	}
	s, err := client.NewSession()
	if err != nil {
		t.Fatal(err)
	}
	s.Stdin = strings.NewReader(lamp)
	if err := s.Start("solve -"); err != nil {
		t.Fatal(err)
	}
	<-begun
	_ = client.Close()
	select {
	case <-ended:
	case <-time.After(patience):
		t.Fatal("it goes on")
	}
}

func TestCommandsWithoutATerminal(t *testing.T) {
	verbs := func(_ context.Context, args []string, in io.Reader, out, errs io.Writer) int {
		text, _ := io.ReadAll(in)
		fmt.Fprintf(out, "%s of %d bytes\n", strings.Join(args, " "), len(text))
		fmt.Fprintln(errs, "a word beside")
		return 1
	}
	listed, other := key(t), key(t)
	for name, o := range map[string]Settings{
		"near":  {Presenters: keys(t, key(t))},
		"lists": {Watchers: keys(t, listed), Presenters: keys(t, other)},
	} {
		r := start(t, o, verbs)
		client, err := r.dial(listed, "")
		if err != nil {
			t.Fatal(err)
		}
		defer client.Close()
		s, err := client.NewSession()
		if err != nil {
			t.Fatal(err)
		}
		s.Stdin = strings.NewReader(lamp)
		var errs strings.Builder
		s.Stderr = &errs
		out, err := s.Output("solve -")
		exit, _ := err.(*gossh.ExitError)
		if want := fmt.Sprintf("solve - of %d bytes\n", len(lamp)); string(out) != want || exit == nil || exit.ExitStatus() != 1 || errs.String() != "a word beside\n" {
			t.Errorf("%s: %q, %q, %v", name, out, &errs, err)
		}
	}
	r := start(t, Settings{Presenters: keys(t, key(t)), Word: true}, verbs)
	client, err := r.dial(nil, r.doors.Word)
	if err != nil {
		t.Fatal(err)
	}
	defer client.Close()
	s, _ := client.NewSession()
	var errs strings.Builder
	s.Stderr = &errs
	if err := s.Run("solve -"); err == nil || errs.String() != "trivet: commands are for those whose key is in a list of the host's\n" {
		t.Errorf("%v, %q", err, &errs)
	}
}
