package call

import (
	"fmt"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/report"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
)

// Check is "trivet check". It exits with 0 where every sheet is well, Failed
// where one is not, as typed or somewhere within the ± of its inputs, CantDo where one does not read.
func (c *Call) Check() *cobra.Command {
	return &cobra.Command{
		Use:   "check SHEET...",
		Short: "run every check, one line per sheet",
		Long: "Runs every check of each sheet and compares the reference answers, one line per sheet. " +
			"What holds as typed but not everywhere within the ± of the inputs fails, such as a limit that can be exceeded. Of a set, its sheets are checked.",
		Annotations:       map[string]string{exitNote: "a sheet does not pass", topicNote: "tolerances verdicts"},
		Args:              atLeastOneSheet,
		ValidArgsFunction: SheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			for _, name := range args {
				if set, s := c.set(name); set != nil {
					c.checkSet(set, s)
				} else if s == nil {
					c.check(name)
				} else {
					c.print(unreadable(name))
				}
			}
			return nil
		},
	}
}

func (c *Call) check(name string) readSheet {
	r := c.load(name)
	for _, line := range report.Notes(display(name), r.sheet, r.unread, (*diag.Error).In) { // which are failures here
		fmt.Fprintln(c.Stderr, line)
	}
	c.saysWarnings(r, name, r.doubts)
	if r.solution == nil {
		c.print(unreadable(name))
		return r
	}
	well, line := report.CheckLine(display(name), r.solution, uncertainty.Of(r.sheet, r.solution))
	c.print(line + "\n")
	if !well {
		c.Fail(Failed)
	}
	return r
}

// unreadable is the line of what does not read.
func unreadable(name string) string {
	return fmt.Sprintf("FAILS %s: %s\n", printable.Line(display(name)), statics.Unreadable)
}
