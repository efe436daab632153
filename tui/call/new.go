package call

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"trivet/fixtures"
	"trivet/mechanics/diag"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
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
	const long = "Writes a new sheet from one of the starting sheets below. - writes to standard output. From a set of problems it writes the set, " +
		"with its sheets in a folder beside it."
	cmd := &cobra.Command{
		Use:         "new SHEET",
		Short:       "write a sheet from a starting sheet",
		Long:        long,
		Annotations: map[string]string{topicNote: "sheet cells supports"},
		Example:     "trivet new my.toml\ntrivet new --from blank my.toml\ntrivet new --from mast-top my.toml\ntrivet new --from particles week4.toml",
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
		cmd.Long = long + "\n\n```\n" + fixtures.List() + "```\n\nSets of problems: " + say.And(setNames()...) + "."
		cmd.Root().HelpFunc()(cmd, args)
	})
	cmd.Flags().StringVar(&from, "from", defaultFrom, "`NAME` of the sheet to start from")
	_ = cmd.RegisterFlagCompletionFunc("from", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return append(fixtures.Names(append(fixtures.Blanks(), fixtures.Starts()...)), setNames()...), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	})
	return cmd
}

// write writes the sheet to start from to a file that is not there yet; a blank
// one takes the units of the settings.
func (c *Call) write(file, from string) error {
	for _, set := range fixtures.Sets() {
		if set.Name == from {
			return c.writeProblems(file, set)
		}
	}
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

// writeProblems writes a set of problems with its sheets, which lie in a folder beside it.
func (c *Call) writeProblems(file string, of fixtures.Set) error {
	if file == standardIn {
		return diag.New("a set is several files, and cannot be written to standard output", "`"+Program+" new --from "+of.Name+" "+of.Name+".toml`")
	}
	out := classSet{folder: filepath.Dir(file)}
	out.add(filepath.Base(file), []byte(of.Text), "")
	for _, s := range of.Sheets {
		out.add(filepath.Join(of.Name, s.Name+".toml"), []byte(s.Text), "")
	}
	if err := os.MkdirAll(filepath.Join(out.folder, of.Name), 0o777); err != nil { // less what the umask takes
		c.refuse(file, report.FileFault(file, sheet.WriteError(err)))
		return nil
	}
	if c.writeSet(out) {
		c.print(file + ": " + of.Title + ", " + say.Count(len(of.Sheets), "problem") + " in " + filepath.Join(out.folder, of.Name) + "\n")
	}
	return nil
}

// nearStart gives the sheet to start from that a name most likely means.
func nearStart(name string) string {
	return units.Suggest(name, append(fixtures.Names(slices.Concat(fixtures.Blanks(), fixtures.Starts(), fixtures.Published())), setNames()...))
}

// setNames are the names of the sets that come with the program.
func setNames() []string {
	return say.Each(fixtures.Sets(), func(s fixtures.Set) string { return s.Name })
}
