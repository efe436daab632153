package call

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"trivet/fixtures"
	"trivet/mechanics/diag"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/tui/settings"
	"trivet/units"
)

// defaultFrom is the sheet to start from where none is named.
const defaultFrom = "hanging-load"

// New is "trivet new". It exits with 0 where the sheet is written, and with
// CantDo where there is none to start from or a file of that name is there.
func (c *Call) New() *cobra.Command {
	var from string
	const long = "Writes a new sheet from one of the starting sheets below. - writes to standard output."
	cmd := &cobra.Command{
		Use:         "new SHEET",
		Short:       "write a sheet from a starting sheet",
		Long:        long,
		Annotations: map[string]string{topicNote: "sheet cells supports"},
		Example:     "trivet new my.toml\ntrivet new --from blank my.toml\ntrivet new --from mast-top my.toml",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 {
				return diag.New("a new sheet needs the name of one file", "`trivet new my.toml`")
			}
			return nil
		},
		ValidArgsFunction: SheetFiles,
		RunE:              func(_ *cobra.Command, args []string) error { return c.write(args[0], from) },
	}
	cmd.SetHelpFunc(func(cmd *cobra.Command, args []string) { // no other call lists the sheets, which have to be opened
		cmd.Long = long + "\n\n```\n" + fixtures.List() + "```"
		cmd.Root().HelpFunc()(cmd, args)
	})
	cmd.Flags().StringVar(&from, "from", defaultFrom, "`NAME` of the sheet to start from")
	_ = cmd.RegisterFlagCompletionFunc("from", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return fixtures.Names(append(fixtures.Blanks(), fixtures.Starts()...)), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	})
	return cmd
}

// write writes the sheet to start from to a file that is not there yet; a blank
// one takes the units of the settings.
func (c *Call) write(file, from string) error {
	start, ok := fixtures.Get(from)
	if !ok {
		return diag.New(fmt.Sprintf("there is no starting sheet %q", from), cmp.Or(nearStart(from), "one of those that `"+Program+" new --help` lists"))
	}
	s, err := sheet.Parse([]byte(start.Text))
	if err == nil && slices.Contains(fixtures.Blanks(), start) {
		like, _ := settings.Load(c.Env) // the workbench says what is wrong with them
		s, err = like.NewSheet(s)
	}
	if err != nil {
		return err
	}
	if file == standardIn { // and out
		c.printAsIs([]byte(s.Text()))
		return nil
	}
	if _, err := sheet.Save(file, s, sheet.Stamp{}, false); err != nil {
		c.refuse(file, report.FileFault(file, err))
		return nil
	}
	c.print(file + ": " + start.Title + "\n")
	return nil
}

// nearStart gives the sheet to start from that a name most likely means.
func nearStart(name string) string {
	return units.Suggest(name, fixtures.Names(slices.Concat(fixtures.Blanks(), fixtures.Starts(), fixtures.Published())))
}
