// Package call is what a call of the program does without a screen: it reads
// sheets from files and standard input, prints results, and says in our words
// what is wrong with a call. One file holds one command; main puts them together.
package call

import (
	"fmt"
	"io"
	"os"

	"golang.org/x/term"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
)

// Program is the name that the program goes by in what it says.
const Program = "trivet"

// Exit codes, beside 0 where all is well.
const (
	Failed = 1 // a check failed, or there is no single solution
	CantDo = 2 // the sheet or the call can't be read, or the results can't be written
)

// Call is one call of the program: results go to Stdout, what can't be done to
// Stderr. It belongs to one goroutine.
type Call struct {
	Stdin          io.Reader
	Stdout, Stderr io.Writer // of texts; New has them pass nothing that acts on a terminal
	Env            []string  // as os.Environ gives it

	asIs  io.Writer // standard output for what is no text; Stdout where nil
	width int       // of the terminal that standard output is; 0 where it is none
	code  int       // the worst so far
	lost  error     // the first error of writing results: a full disk must not pass for results written
}

// New is a call whose texts are cleaned, wherever they go: what goes to a pipe or a
// file ends on a terminal too.
func New(stdin io.Reader, stdout, stderr io.Writer, env []string) *Call {
	c := &Call{Stdin: stdin, Stdout: printable.NewWriter(stdout), Stderr: printable.NewWriter(stderr), Env: env}
	f, ok := stdout.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		c.asIs = stdout
	} else if w, _, err := term.GetSize(int(f.Fd())); err == nil && w > 0 {
		c.width = w
	} else {
		c.width = pageWidth
	}
	return c
}

// Fail makes the exit code at least so much.
func (c *Call) Fail(code int) { c.code = max(c.code, code) }

// End says on standard error what ended the call, where err is one, and whether
// results were lost. It gives the exit code: 0 where all is well, Failed, CantDo,
// or a greater one that Fail was told.
func (c *Call) End(err error) int {
	if err != nil {
		c.refuse(Program, err)
	}
	c.close(c.Stdout)
	if c.lost != nil {
		c.refuse(Program, diag.New("the results cannot be written: "+c.lost.Error(), ""))
	}
	c.close(c.Stderr)
	return c.code
}

// close writes what a writer of texts holds back.
func (c *Call) close(w io.Writer) {
	if w, ok := w.(*printable.Writer); ok {
		if err := w.Close(); c.lost == nil {
			c.lost = err
		}
	}
}

// refuse says on standard error what can't be done, and why.
func (c *Call) refuse(what string, err error) {
	fmt.Fprintln(c.Stderr, diag.Of(err).In(what))
	c.Fail(CantDo)
}

func (c *Call) print(text string) {
	if _, err := io.WriteString(c.Stdout, text); c.lost == nil {
		c.lost = err
	}
}

// printAsIs prints what has to arrive byte by byte: a sheet, a page that is no text.
// A terminal, for which neither is meant, gets it as it gets a text.
func (c *Call) printAsIs(data []byte) {
	if c.asIs == nil {
		c.print(string(data))
	} else if _, err := c.asIs.Write(data); c.lost == nil {
		c.lost = err
	}
}
