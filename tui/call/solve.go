package call

import (
	"fmt"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/uncertainty"
)

// Solve is "trivet solve". It exits with 0 where every sheet has a single
// solution and every check holds, also within the ± of its inputs, Failed where one has
// not, CantDo where one, or a result asked for, does not read.
func (c *Call) Solve() *cobra.Command {
	var format string
	var ask []string
	var steps bool
	cmd := &cobra.Command{
		Use:               "solve SHEET...",
		Short:             "solve sheets and print the results",
		Long:              "Solves each sheet and prints its results. - reads a sheet from standard input.",
		Annotations:       map[string]string{exitNote: "a sheet has no single solution, or a check fails, as typed or within the ± of the inputs", topicNote: "verdicts results"},
		Example:           "trivet solve mast.toml\ntrivet solve mast.toml --ask 'T1.x' --ask 'angle(T1, T2)'\ntrivet solve - --format json < mast.toml\ntrivet solve mast.toml --format latex > mast.tex",
		Args:              atLeastOneSheet,
		ValidArgsFunction: SheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if err := report.CheckFormat(format, steps, len(args)); err != nil {
				return err
			}
			for i, name := range args {
				c.print(report.Between(format, display(name), i, len(args)))
				c.solve(name, format, steps, ask)
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&format, "format", "text", "`FORM` of the results: "+say.Or(report.Formats...))
	cmd.Flags().BoolVar(&steps, "working", false, "write the worked solution behind the results")
	cmd.Flags().StringArrayVar(&ask, "ask", nil, "a `RESULT` to print besides, such as T1.x or 'angle(T1, T2)'; may be repeated")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(report.Formats, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func (c *Call) solve(name, format string, steps bool, ask []string) {
	r := c.read(name)
	if r.solution == nil {
		if format == "json" {
			c.print(string(report.JSONUnreadable(name, r.title, r.faults, r.warnings()...)))
		}
		return
	}
	p := r.solution.Problem
	for _, result := range ask {
		if q, err := problem.ParseQuery(p, result); err != nil {
			f := diag.Of(err)
			f.Msg = fmt.Sprintf("--ask %q: %s", result, f.Msg)
			c.refuse(display(name), f)
		} else {
			p.Asked = append(p.Asked, q)
		}
	}
	t := uncertainty.Of(r.sheet, r.solution)
	c.print(report.Results(format, name, r.solution, t, steps, r.warnings()))
	c.judge(r.solution, t)
}
