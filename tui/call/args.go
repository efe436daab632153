package call

import (
	"errors"
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"trivet/units"
)

// OneSheetOrNone is what the workbench opens; it tells a mistyped command from a
// sheet.
func OneSheetOrNone(root *cobra.Command, args []string) error {
	err := mistyped(root, args)
	switch {
	case err != nil || len(args) == 0:
		return err
	case args[0] == standardIn:
		return fmt.Errorf("the workbench opens a file, not standard input: try `%s solve -`", Program)
	case len(args) > 1:
		return fmt.Errorf("the workbench opens one sheet, and here are %d: try `%s solve` for several", len(args), Program)
	}
	return nil
}

// Alone refuses anything behind a command that takes nothing.
func Alone(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return fmt.Errorf("nothing stands behind `%s`, and here is %q: leave it out", cmd.CommandPath(), args[0])
	}
	return nil
}

// SheetFiles completes the names of files that end as a sheet's do.
func SheetFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}

func atLeastOneSheet(_ *cobra.Command, args []string) error {
	if len(args) == 0 || slices.Contains(args, "") {
		return errors.New("no sheet named: write a file, or - for standard input")
	}
	return nil
}

// mistyped says which command was meant by what is no file.
func mistyped(root *cobra.Command, args []string) error {
	var commands []string
	for _, sub := range root.Commands() {
		commands = append(commands, sub.Name())
	}
	if len(args) > 0 && !exists(args[0]) {
		if s := units.Suggest(args[0], commands); s != "" {
			return fmt.Errorf("there is no command %q: did you mean `%s %s`", args[0], Program, s)
		}
	}
	return nil
}
