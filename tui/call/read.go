package call

import (
	"fmt"
	"os"
	"slices"

	"trivet/fixtures"
	"trivet/mechanics/diag"
	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// standardIn is the name that stands for standard input.
const standardIn = "-"

// readSheet is a sheet that was read; its solution is nil where it did not read,
// and the faults say why. Unread is what is typed and read by nothing, doubts what was
// most likely meant otherwise.
type readSheet struct {
	title          string
	sheet          *sheet.Sheet
	solution       *statics.Solution
	faults         []*diag.Error
	unread, doubts []problem.Error
}

// warnings are all that is to be said of a sheet that stops nothing.
func (r readSheet) warnings() []*diag.Error {
	return slices.Concat(report.Faults(r.sheet, r.unread), report.Faults(r.sheet, r.doubts))
}

// read loads and solves a sheet. What does not read it says on standard error,
// for exit code CantDo; a warning costs no exit code.
func (c *Call) read(name string) readSheet {
	r := c.load(name)
	c.saysWarnings(r, name, slices.Concat(r.unread, r.doubts))
	return r
}

func (c *Call) saysWarnings(r readSheet, name string, notes []problem.Error) {
	for _, line := range report.Notes(display(name), r.sheet, notes, (*diag.Error).Warning) {
		fmt.Fprintln(c.Stderr, line)
	}
}

// load is read without the warnings.
func (c *Call) load(name string) (r readSheet) {
	var err error
	if name == standardIn {
		r.sheet, err = sheet.Read(c.Stdin)
	} else {
		r.sheet, _, err = sheet.Load(name)
	}
	switch {
	case err != nil:
		r.faults = []*diag.Error{report.FileFault(name, err)}
	case problemset.Is(r.sheet):
		r.sheet, r.faults = nil, []*diag.Error{diag.New("this is a set of problems, not a sheet", "one of its sheets, or `"+Program+" check` with the file of the set")}
	default:
		p, errs := names.Read(problem.NewReader(), r.sheet)
		r.title, r.faults = p.Title, report.Faults(r.sheet, errs)
		r.unread, r.doubts = p.Unread, p.Doubts
		if len(errs) == 0 {
			r.solution = statics.Solve(p)
		}
	}
	for _, f := range r.faults {
		c.refuse(display(name), f)
	}
	return r
}

// judge makes the exit code Failed where a check failed, or may fail within the ± of
// the inputs, or there is no single solution.
func (c *Call) judge(s *statics.Solution, t *uncertainty.Effect) {
	if !s.Single() || len(uncertainty.Failures(s, t)) > 0 {
		c.Fail(Failed)
	}
}

// Open loads the sheet that the workbench is to open, as text: it need not read
// as a problem. Where ok is false it was said on standard error why, for exit
// code CantDo.
func (c *Call) Open(name string) (s *sheet.Sheet, stamp sheet.Stamp, ok bool) {
	s, stamp, err := sheet.Load(name)
	if err == nil {
		return s, stamp, true
	}
	fault := report.FileFault(name, err)
	if _, start := fixtures.Get(name); start && !exists(name) {
		fault.Hint = fmt.Sprintf("`%s new --from %s my.toml`", Program, name)
	}
	c.refuse(name, fault)
	return nil, stamp, false
}

func exists(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}

// display is what a sheet is called in what is printed.
func display(name string) string {
	if name == standardIn {
		return "standard input"
	}
	return name
}
