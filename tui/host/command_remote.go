package host

import (
	"bytes"
	"context"
	"io"
	"strings"
	"time"

	"github.com/anmitsu/go-shlex"
)

// cannotDo is the exit code for a call that can't be read, as on a command line.
const cannotDo = 2

const remoteHelp = `trivet: without a terminal there are two verbs, both on standard input:

  ssh HOST solve - < sheet.toml
  ssh HOST solve - --format json --ask T1.x < sheet.toml
  ssh HOST check - < sheet.toml

`

// command does a verb for a session without a terminal: on standard input alone,
// so that no file of the host can be named.
func (h *Host) command(s *session, text string) int {
	started := time.Now()
	say := func(msg string) int {
		_, _ = io.WriteString(s.ch.Stderr(), msg)
		return cannotDo
	}
	limit := time.AfterFunc(commandLimit, func() { _ = s.ch.Close() })
	defer limit.Stop()
	args, why := verb(text)
	switch {
	case strings.TrimSpace(text) == "":
		return say(remoteHelp)
	case !h.anybody && !s.conn.who.listed:
		return say("trivet: solve and check are for those whose key is in a list of the host's\n")
	case why != "":
		return say("trivet: " + why + "\n")
	}
	select {
	case h.commands <- struct{}{}:
		defer func() { <-h.commands }()
	case <-s.over:
		return cannotDo
	case <-time.After(commandLimit / 2):
		return say("trivet: the host is busy: try again in a moment\n")
	}
	ctx, cancel := context.WithTimeout(context.Background(), commandLimit)
	defer cancel()
	out, errs := io.Writer(s.ch), io.Writer(s.ch.Stderr())
	if s.pty {
		out, errs = returns{out}, returns{s.ch}
	}
	code := h.run(ctx, args, s.ch, out, errs)
	h.log.Info("a command", "visitor", s.conn.who.name(), "verb", args[0], "code", code, "after", time.Since(started).Round(time.Millisecond).String())
	return code
}

// verb reads a command: one of two verbs, standard input, and options that name
// no file.
func verb(text string) (args []string, why string) {
	words, err := shlex.Split(text, true)
	if err != nil {
		return nil, "the command does not read: close its quotes"
	}
	if len(words) == 0 || words[0] != "solve" && words[0] != "check" {
		return nil, "there are two verbs here, solve and check: try `solve - < sheet.toml`"
	}
	input := false
	for i := 1; i < len(words); i++ {
		w := words[i]
		name, _, whole := strings.Cut(w, "=")
		switch {
		case w == "-":
			input = true
		case words[0] == "solve" && (name == "--format" || name == "--ask"):
			if !whole {
				if i++; i == len(words) {
					return nil, w + " needs a value behind it"
				}
			}
		case strings.HasPrefix(w, "-"):
			return nil, "there is no option " + printable(w) + " here: --format and --ask of solve are"
		default:
			return nil, "sheets are read from standard input only: write - in place of " + printable(w)
		}
	}
	if !input {
		return nil, "sheets are read from standard input only: try `" + words[0] + " - < sheet.toml`"
	}
	return words, ""
}

// printable is what a visitor typed, as it may go back to a terminal.
func printable(s string) string {
	if len(s) > longestName {
		s = s[:longestName]
	}
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 {
			return '?'
		}
		return r
	}, strings.ToValidUTF8(s, "?"))
}

// returns writes the line ends that a terminal in raw mode needs.
type returns struct{ w io.Writer }

func (r returns) Write(p []byte) (int, error) {
	if _, err := r.w.Write(bytes.ReplaceAll(p, []byte("\n"), []byte("\r\n"))); err != nil {
		return 0, err
	}
	return len(p), nil
}
