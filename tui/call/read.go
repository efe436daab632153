package call

import (
	"fmt"
	"os"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// standardIn is the name that stands for standard input.
const standardIn = "-"

// readSheet is a sheet that was read; its solution is nil where it did not read,
// and the faults say why.
type readSheet struct {
	title    string
	sheet    *sheet.Sheet
	solution *statics.Solution
	faults   []report.Fault
}

// read loads and solves a sheet. What does not read it says on standard error,
// for exit code CantDo; a doubt about what does read costs no exit code.
func (c *Call) read(name string) (r readSheet) {
	var err error
	if name == standardIn {
		r.sheet, err = sheet.Read(c.Stdin)
	} else {
		r.sheet, _, err = sheet.Load(name)
	}
	if err != nil {
		r.faults = []report.Fault{report.FileFault(name, err)}
	} else {
		p, errs := problem.Read(r.sheet)
		if len(errs) == 0 {
			for _, doubt := range report.Faults(r.sheet, p.Doubts) {
				fmt.Fprintln(c.Stderr, doubt.Where(display(name)))
			}
			r.solution = statics.Solve(p)
			return r
		}
		r.title, r.faults = p.Title, report.Faults(r.sheet, errs)
	}
	for _, f := range r.faults {
		c.refuse(display(name), f)
	}
	return r
}

// judge makes the exit code Failed where a check failed or there is no single
// solution.
func (c *Call) judge(s *statics.Solution) {
	if !s.Single() || !s.Well() {
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
		fault.Hint = fmt.Sprintf("try `%s new --from %s my.toml`", Program, name)
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
