package call

import (
	"fmt"

	"github.com/spf13/cobra"

	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/practice"
	"trivet/tui/settings"
)

// Opening is what a session opens: a sheet, or a set to be practised.
type Opening struct {
	Path     string
	Sheet    *sheet.Sheet
	Stamp    sheet.Stamp
	Practice *practice.Options // nil: it is worked on in the workbench
	Linear   bool
}

// Practise is "trivet practise"; open runs the session.
func (c *Call) Practise(open func(*cobra.Command, Opening) error) *cobra.Command {
	var linear bool
	cmd := &cobra.Command{
		Use:   "practise SHEET|SET",
		Short: "work a problem without being shown the answer",
		Long: "Opens a sheet, or the problems of a set, for practice: the task and its picture, and a pane for your own work. " +
			"Each line that you write is judged at once, and no result shows before you have found it. Your work is kept in your record, and goes on where you left it.\n\n" +
			"Sets that come with the program are called by their names: " + say.And(setNames()...) + ".",
		Annotations:       map[string]string{topicNote: "practice"},
		Example:           "trivet practise mast.toml\ntrivet practise particles\ntrivet practise week4.toml",
		Args:              oneSheet("one sheet or one set is practised"),
		ValidArgsFunction: SheetFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			keep, trouble := practice.Own(c.Env)
			if trouble != "" {
				fmt.Fprintln(c.Stderr, Program+": warning: "+trouble)
			}
			if keep.Store != nil {
				defer keep.Store.Close()
			}
			o := Opening{Practice: &practice.Options{Keeping: keep}, Linear: linear}
			set, text := c.set(args[0])
			builtin, comes := practice.BuiltIn(args[0])
			switch {
			case comes && !exists(args[0]):
				builtin.Keeping = keep
				o.Practice = &builtin
			case set != nil:
				o.Practice.Set = set
				_ = settings.Opened(c.Env, args[0]) // it stands on the start screen then; nothing else depends on it
			case text != nil: // it was said what is wrong with the set
				return nil
			default:
				var ok bool
				o.Path = args[0]
				if o.Sheet, o.Stamp, ok = c.Open(o.Path); !ok {
					return nil
				}
			}
			return open(cmd, o)
		},
	}
	cmd.Flags().BoolVar(&linear, "linear", false, "plain lines of text in place of panes, for a screen reader or a slow line")
	return cmd
}
