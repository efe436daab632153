package call

import (
	"cmp"
	"fmt"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
)

// OwnWords gives the program's command our words where the library that reads the
// command line has its own: for flags, and for the commands help and completion.
// All other commands have been added before.
func OwnWords(root *cobra.Command) {
	root.SilenceUsage, root.SilenceErrors = true, true // End says what is wrong
	root.SetFlagErrorFunc(Flag)
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	for _, sub := range root.Commands() {
		switch sub.Name() {
		case "help":
			sub.Short, sub.Long = "help on a command", ""
			sub.Args = func(_ *cobra.Command, args []string) error {
				if found, _, err := root.Find(args); len(args) > 0 && (err != nil || found == root) {
					return cmp.Or(mistyped(root, args), error(diag.New(fmt.Sprintf("unknown command %q", args[0]), "`"+Program+" help`")))
				}
				return nil
			}
		case "completion":
			sub.Short = "write the completion script of a shell"
			sub.Args = func(*cobra.Command, []string) error {
				return diag.New("expected the name of a shell", "`"+Program+" completion bash`, or zsh, fish, powershell")
			}
			sub.RunE = func(*cobra.Command, []string) error { return nil } // for the arguments to be looked at
			for _, shell := range sub.Commands() {
				shell.Args = Alone
			}
		}
	}
}
