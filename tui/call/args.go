package call

import (
	"fmt"
	"slices"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
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
		return diag.New("the workbench opens a file, not standard input", "`"+Program+" solve -`")
	case len(args) > 1:
		return diag.New(fmt.Sprintf("the workbench opens one sheet, but %d are named", len(args)), "`"+Program+" solve` for several")
	}
	return nil
}

// Alone refuses anything behind a command that takes nothing.
func Alone(cmd *cobra.Command, args []string) error {
	if len(args) > 0 {
		return diag.New(fmt.Sprintf("`%s` takes no arguments, but %q is given", cmd.CommandPath(), args[0]), "leave it out")
	}
	return nil
}

// SheetFiles completes the names of files that end as a sheet's do.
func SheetFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}

func atLeastOneSheet(_ *cobra.Command, args []string) error {
	if len(args) == 0 || slices.Contains(args, "") {
		return diag.New("no sheet is named", "a file, or - for standard input")
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
			return diag.New(fmt.Sprintf("unknown command %q", args[0]), "`"+Program+" "+s+"`")
		}
	}
	return nil
}
