package host

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"strings"
	"sync/atomic"
	"time"

	"charm.land/ssh"

	"trivet/mechanics/printable"
	"trivet/mechanics/sheet"
	"trivet/tui/host/pace"
	"trivet/tui/host/verb"
)

// cannotDo is the exit code for a call that can't be read, as on a command line.
const cannotDo = 2

// command does a verb for a session without a terminal: on standard input alone,
// so that no file of the host can be named. The sheet is read before a place is
// taken, so that who sends none has nobody waiting.
func (h *Host) command(s *session, in ssh.Session, text string, isTerminal bool) int {
	started := time.Now()
	say := func(msg string) int {
		limit := time.AfterFunc(farewellLimit, func() { _ = in.Close() })
		defer limit.Stop()
		_, _ = io.WriteString(in.Stderr(), printable.Text("trivet: "+msg+"\n"))
		return cannotDo
	}
	words, why := verb.Split(text)
	verbs, needs := verb.All, false
	var args []string
	switch a := h.assignment(); {
	case why != "":
	case a != nil:
		verbs = a.verbs(started)
		args, needs, why = a.verb(words, s.conn.Who, started)
	default:
		args, needs, why = verb.Parse(words, verbs)
	}
	log := func(what string, more ...any) { // without what was written
		s.conn.Commands().Info(h.log, what, append([]any{"visitor", s.conn.Who.Name(), "from", in.RemoteAddr().String()}, more...)...)
	}
	refuse := func(why string) int {
		log("a command refused")
		return say(why)
	}
	switch {
	case strings.TrimSpace(text) == "":
		return say(verb.Help(verbs))
	case !h.anybody && !s.conn.Who.Listed:
		return refuse("commands are for those whose key is in a list of the host's")
	case why != "":
		return refuse(why)
	}
	own, done := h.shares.Of(s.conn.Source())
	defer done()
	var input []byte
	if needs {
		if input, why = h.input(s.ctx, in, own); why != "" {
			return refuse(why)
		}
	}
	late := time.After(commandWait)
	for _, turn := range []chan struct{}{own.Commands, h.commands} { // whose senders wait in the order they came
		select {
		case turn <- struct{}{}:
			defer func() { <-turn }()
		case <-s.ctx.Done():
			return cannotDo
		case <-late:
			return refuse("the host is busy. Try: again in a moment")
		}
	}
	ctx, cancel := context.WithTimeout(s.ctx, commandLimit)
	defer cancel()
	left := new(atomic.Int64)
	left.Store(maxOutput)
	// What is no text, a page in PDF, has to arrive as it is where there is no terminal;
	// the verbs clean their texts themselves.
	out, errs := io.Writer(limited{in, left}), printable.NewWriter(limited{in.Stderr(), left})
	if isTerminal {
		text := printable.NewWriter(out)
		defer text.Close()
		out, errs = text, printable.NewWriter(limited{in, left})
	}
	code := h.run(ctx, args, bytes.NewReader(input), out, errs)
	_ = errs.Close()
	log("a command", "verb", args[0], "code", code, "after", time.Since(started).Round(time.Millisecond).String())
	switch {
	case errors.Is(ctx.Err(), context.DeadlineExceeded):
		return say("that was not done within " + commandLimit.String() + " and is given up: split the problem into several sheets")
	case left.Load() < 0:
		return say("that is more than may be sent from here")
	}
	return code
}

// input reads a whole sheet from standard input, or says why there is none. It may
// be too long: what is cut off then is refused as it would be on a command line.
func (h *Host) input(over context.Context, in io.Reader, own *pace.Share) (text []byte, why string) {
	select {
	case own.Inputs <- struct{}{}:
		defer func() { <-own.Inputs }()
	default:
		return nil, fmt.Sprintf("%d of your commands are still waiting for a sheet. Try: send it, or end one of them with ctrl+c", pace.InputsByKey)
	}
	select {
	case h.inputs <- struct{}{}:
		defer func() { <-h.inputs }()
	default:
		return nil, "the host is busy: try again in a moment"
	}
	type whole struct {
		text []byte
		err  error
	}
	read := make(chan whole, 1)
	go func() {
		b, err := io.ReadAll(io.LimitReader(in, sheet.MaxBytes+1))
		read <- whole{b, err}
	}()
	limit := time.NewTimer(inputLimit)
	defer limit.Stop()
	select {
	case w := <-read:
		if w.err != nil {
			return nil, "the sheet did not arrive"
		}
		return w.text, ""
	case <-limit.C:
		// The reading ends with the channel, which is closed behind this.
		return nil, "no whole sheet came within " + inputLimit.String() + ": try `solve - < sheet.toml`"
	case <-over.Done():
		return nil, "the sheet did not arrive"
	}
}

// limited ends an answer that grows beyond all measure.
type limited struct {
	w    io.Writer
	left *atomic.Int64
}

func (l limited) Write(p []byte) (int, error) {
	if l.left.Add(int64(-len(p))) < 0 {
		return 0, errTooMuch
	}
	return l.w.Write(p)
}

var errTooMuch = errors.New("more than may be sent")
