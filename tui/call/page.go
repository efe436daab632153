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
// does not read or the page can't be written.
func (c *Call) Page() *cobra.Command {
	var out, as string
	var force bool
	var opt report.PageOptions
	cmd := &cobra.Command{
		Use:               "page SHEET -o FILE",
		Short:             "write a page: figure, working, results",
		Annotations:       map[string]string{exitNote: "the page is written, but a check fails or there is no single solution", topicNote: "pages field"},
		Long:              report.PageHelp + "\n\n" + "Of a set, FILE is a folder: each problem gets its page to hand out, its worked solution, and a table of answers with the names to fill in; --as gives the form, pdf by default.",
		Example:           "trivet page mast.toml -o mast.pdf\ntrivet page mast.toml -o mast.svg\ntrivet page - --as pdf -o - < mast.toml > mast.pdf\ntrivet page mast.toml --field --by 'A. Rigger' --date 2026-05-04 -o mast.pdf\ntrivet page class/beam-01.toml --task -o beam-01.pdf",
		Args:              atLeastOneSheet,
		ValidArgsFunction: SheetFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			opt.Version = cmd.Root().Version
			if set, s := c.set(args[0]); set != nil && len(args) == 1 {
				return c.pageSet(set, out, as, opt, force)
			} else if set == nil && s != nil {
				return nil
			}
			format, err := report.PageOut(out, as, len(args))
			if err != nil {
				return err
			}
			if opt.Task && opt.Field {
				return diag.New("a page is either a task to hand out or a field page", "leave out --task or --field")
			}
			r := c.read(args[0])
			if r.solution == nil {
				return nil
			}
			c.saysWarnings(r, args[0], variant.Contradictions(r.sheet, r.solution.Problem))
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
			c.judge(r.solution, opt.Uncertainty)
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
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is there")
	return cmd
}
