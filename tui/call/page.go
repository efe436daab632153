package call

import (
	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/report"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/variant"
)

// Page is "trivet page". It exits with 0 where the page is written and the sheet
// is well, Failed where it is written and the sheet is not, CantDo where the sheet
// does not read or the page can't be written. A task and a student's own work tell
// nothing of what was found, so the code does not either.
func (c *Call) Page() *cobra.Command {
	var out, as string
	var force bool
	var opt report.PageOptions
	var o personal
	cmd := &cobra.Command{
		Use:         "page SHEET -o FILE",
		Short:       "write a page: figure, working, results",
		Annotations: map[string]string{exitNote: "the page is written, but a check fails or there is no single solution", topicNote: "pages field"},
		Long: report.PageHelp + "\n\n" + "Of a set, FILE is a folder: each problem gets its page to hand out, its worked solution, and a table of answers with the names to fill in; --as gives the form, pdf by default. " +
			"--problem picks one of them, with the values of --person where these differ. --mine, of a sheet or of a set, is what a student has practised, to hand in.",
		Example:           "trivet page mast.toml -o mast.pdf\ntrivet page mast.toml -o mast.svg\ntrivet page - --as pdf -o - < mast.toml > mast.pdf\ntrivet page mast.toml --field --by 'A. Rigger' --date 2026-05-04 -o mast.pdf\ntrivet page class/beam-01.toml --task -o beam-01.pdf\ntrivet page mast.toml --mine -o mast.pdf\ntrivet page week4.toml --mine -o work",
		Args:              atLeastOneSheet,
		ValidArgsFunction: SheetFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			opt.Version = cmd.Root().Version
			set, ok := o.set(c, args[0])
			if !ok {
				return nil
			}
			if err := o.check(opt, set != nil); err != nil {
				return err
			}
			if set != nil && len(args) == 1 && o.problem == "" {
				return c.pageSet(set, out, as, opt, o, force)
			}
			format, err := report.PageOut(out, as, len(args))
			if err != nil {
				return err
			}
			if opt.Task && opt.Field {
				return diag.New("a page is either a task to hand out or a field page", "leave out --task or --field")
			}
			r, own, err := c.pageSubject(args[0], set, o)
			if r.solution == nil {
				return err
			}
			c.saysWarnings(r, args[0], variant.Contradictions(r.sheet, r.solution.Problem))
			opt.Own, opt.Task = own, opt.Task || own != nil
			opt.File, opt.Sheet, opt.Uncertainty = display(args[0]), r.sheet, uncertainty.Of(r.sheet, r.solution)
			if out == "-" {
				page, err := report.Page(format, r.solution, opt)
				if err != nil {
					return err
				}
				if format == "pdf" || format == "png" {
					c.printAsIs(page)
				} else {
					c.print(string(page))
				}
			} else if err := report.WritePage(out, format, r.solution, opt, force); err != nil {
				c.refuse(out, report.WriteFault(err))
			}
			if !opt.Task { // whose code would say what was found
				c.judge(r.solution, opt.Uncertainty)
			}
			return nil
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "`FILE` to write; its ending gives the format. - is standard output, with --as")
	cmd.Flags().StringVar(&as, "as", "", "`FORM` of the page on standard output, or of the pages of a set: md, tex, html, pdf, svg or png")
	cmd.Flags().BoolVar(&opt.Field, "field", false, "one page for the file of a job: whether it is accepted, inputs, results, limits, checks, what was assumed")
	cmd.Flags().BoolVar(&opt.Task, "task", false, "a page to hand out: the task, its figure, room for the answers, and no result")
	cmd.Flags().StringVar(&opt.By, "by", "", "`NAME` of who prepared it")
	cmd.Flags().StringVar(&opt.Checked, "checked", "", "`NAME` of who checked it, for a field page")
	cmd.Flags().StringVar(&opt.Date, "date", "", "`DATE` of the page, with the time if wanted; none is written by itself")
	o.flags(cmd)
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is there")
	return cmd
}
