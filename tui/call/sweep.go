package call

import (
	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/variant"
	"trivet/tui/grid"
	"trivet/tui/picture"
	"trivet/tui/theme"
)

// Sweep is "trivet sweep". It exits with 0 where every value of the given has a
// single solution and its checks hold, Failed where one has not, CantDo where the
// sheet or the call can't be read.
func (c *Call) Sweep() *cobra.Command {
	var format string
	var plot bool
	var span variant.Span
	cmd := &cobra.Command{
		Use:   "sweep SHEET GIVEN",
		Short: "tabulate the results as a given varies",
		Long: "Solves a sheet for each value of a given and prints the results that are asked, or all unknowns, in a table: by the given's own range and step, or from one value to another in steps.\n\n" +
			"Where something goes slack, slips or exceeds its limit, or there is no equilibrium, the row states it, and values that then have no meaning are left empty. A result without a single value has its range. " +
			"The largest and smallest of each result, by sign, are marked max and min; a limit that is exceeded, or in a range could be, is marked !.",
		Annotations:       map[string]string{exitNote: "a row has no single solution, or a check fails", topicNote: "results field"},
		Example:           "trivet sweep beam.toml pull\ntrivet sweep beam.toml pull --from '100 N' --to '2 kN' --steps 19",
		Args:              sheetAndGiven,
		ValidArgsFunction: sheetThenGivens,
		RunE: func(_ *cobra.Command, args []string) error {
			if err := report.KnownFormat(format, " of a sweep", report.TableFormats); err != nil {
				return err
			}
			c.sweep(args[0], args[1], format, span, plot && format == "text")
			return nil
		},
	}
	cmd.Flags().StringVar(&span.From, "from", "", "`VALUE` to begin with, with its unit")
	cmd.Flags().StringVar(&span.To, "to", "", "`VALUE` to end with")
	cmd.Flags().IntVar(&span.Steps, "steps", 0, "`NUMBER` of steps from one to the other; the given's own step, or 10")
	cmd.Flags().BoolVar(&plot, "plot", false, "draw the curves below the table of text")
	cmd.Flags().StringVar(&format, "format", "text", "`FORM` of the table: text, csv, json or markdown")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(report.TableFormats, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func sheetAndGiven(cmd *cobra.Command, args []string) error {
	if err := atLeastOneSheet(cmd, args); err != nil {
		return err
	}
	if len(args) != 2 {
		return diag.New("a sweep needs a sheet and one of its givens", "`"+Program+" sweep "+args[0]+" W`")
	}
	return nil
}

// sheetThenGivens completes a sheet, and behind it the givens that it has, those
// with a range first.
func sheetThenGivens(cmd *cobra.Command, args []string, typed string) ([]string, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return SheetFiles(cmd, args, typed)
	}
	s, _, err := sheet.Load(args[0])
	if err != nil || len(args) > 1 {
		return nil, cobra.ShellCompDirectiveNoFileComp
	}
	p, _ := problem.Read(s)
	var first, then []string
	for _, g := range p.Givens {
		if g.HasRange {
			first = append(first, g.Name)
		} else {
			then = append(then, g.Name)
		}
	}
	return append(first, then...), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
}

func (c *Call) sweep(name, given, format string, span variant.Span, plot bool) {
	r := c.read(name)
	if r.solution == nil {
		return
	}
	swept, err := variant.Sweep(r.sheet, r.solution, given, span)
	if err != nil {
		c.refuse(display(name), err)
		return
	}
	c.print(report.Sweep(format, name, swept))
	if plot {
		const width, height = 78, 18 // cells
		for _, p := range report.SweepPlots(swept) {
			g := grid.New(width, height)
			picture.DrawPlot(g.All(), p, theme.Characters(c.Env) != theme.Unicode)
			c.print("\n" + g.Render(nil) + "\n")
		}
	}
	for _, row := range swept.Rows {
		if len(row.Says) > 0 {
			c.Fail(Failed)
		}
	}
}
