// Package call is what a call of the program does without a screen: it reads
// sheets from files and standard input, prints results, and says in our words
// what is wrong with a call. One file holds one command; main puts them together.
package call

import (
	"fmt"
	"io"

	"trivet/mechanics/report"
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
	Stdout, Stderr io.Writer
	Env            []string // as os.Environ gives it

	code int   // the worst so far
	lost error // the first error of writing results: a full disk must not pass for results written
}

// Fail makes the exit code at least so much.
func (c *Call) Fail(code int) { c.code = max(c.code, code) }

// End says on standard error what ended the call, where err is one, and whether
// results were lost. It gives the exit code: 0 where all is well, Failed, CantDo,
// or a greater one that Fail was told.
func (c *Call) End(err error) int {
	if err != nil {
		c.refuse(Program, report.Fault{Msg: err.Error()})
	}
	if c.lost != nil {
		c.refuse(Program, report.Fault{Msg: "the results cannot be written: " + c.lost.Error()})
	}
	return c.code
}

// refuse says on standard error what can't be done, and why.
func (c *Call) refuse(what string, f report.Fault) {
	fmt.Fprintln(c.Stderr, f.Where(what))
	c.Fail(CantDo)
}

func (c *Call) print(text string) {
	if _, err := io.WriteString(c.Stdout, text); c.lost == nil {
		c.lost = err
	}
}
