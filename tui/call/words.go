package call

import (
	"fmt"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/tui/topic"
	"trivet/units"
)

// OwnWords gives the program's command those below it, in the order of the help, and
// our words where the library that reads the command line has its own: for flags,
// help and completion.
func (c *Call) OwnWords(root *cobra.Command, commands ...*cobra.Command) {
	root.SilenceUsage, root.SilenceErrors = true, true // End says what is wrong
	root.SetFlagErrorFunc(Flag)
	root.AddCommand(commands...)
	root.InitDefaultCompletionCmd()
	help := c.help(root)
	root.SetHelpCommand(help)
	root.InitDefaultHelpCmd()
	for _, sub := range root.Commands() {
		if sub.Name() == "completion" {
			completionWords(sub)
			commands = append(commands, sub, help)
		}
	}
	root.SetHelpFunc(func(cmd *cobra.Command, _ []string) {
		if cmd == root {
			c.document(usage(root, commands))
		} else {
			c.document(page(cmd))
		}
	})
	root.InitDefaultVersionFlag()
	if f := root.Flags().Lookup("version"); f != nil {
		f.Usage = "print the version"
	}
	flagWords(root)
}

// flagWords says what --help does, for a command and those below it.
func flagWords(cmd *cobra.Command) {
	cmd.InitDefaultHelpFlag()
	cmd.Flags().Lookup("help").Usage = "print this help"
	for _, sub := range cmd.Commands() {
		flagWords(sub)
	}
}

// help is "trivet help": the help of a command, of a topic, or, of what is both, that of
// the command and below it that of the topic.
func (c *Call) help(root *cobra.Command) *cobra.Command {
	named := func(name string) *cobra.Command {
		if sub, _, err := root.Find([]string{name}); err == nil && sub != root {
			return sub
		}
		return nil
	}
	return &cobra.Command{
		Use:   "help [COMMAND | TOPIC]",
		Short: "print the help of a command or a topic",
		Args: func(_ *cobra.Command, args []string) error {
			switch {
			case len(args) == 0:
				return nil
			case len(args) > 1 && args[0] != "completion":
				return diag.New(fmt.Sprintf("the help is of one command or topic, but %d are named", len(args)), "`"+Program+" help "+args[0]+"`")
			}
			if _, ok := topic.Source(args[0]); ok || named(args[0]) != nil {
				return nil
			}
			names := topic.Names()
			for _, sub := range root.Commands() {
				names = append(names, sub.Name())
			}
			try := "`" + Program + " help`"
			if s := units.Suggest(args[0], names); s != "" {
				try = "`" + Program + " help " + s + "`"
			}
			return diag.New(fmt.Sprintf("unknown command or topic %q", args[0]), try)
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) (words []string, _ cobra.ShellCompDirective) {
			if len(args) == 0 {
				for _, sub := range root.Commands() {
					if sub.Hidden {
						continue
					}
					words = append(words, sub.Name()+"\t"+sub.Short)
				}
				for _, name := range topic.Names() {
					if d, ok := topic.Of(name); ok && named(name) == nil {
						words = append(words, name+"\t"+d.Title)
					}
				}
			}
			return words, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(_ *cobra.Command, args []string) error {
			if len(args) == 0 {
				return root.Help()
			}
			sub, _, err := root.Find(args)
			command := err == nil && sub != root
			if command {
				if err := sub.Help(); err != nil {
					return err
				}
			}
			text, ok := topic.Source(args[0])
			if !ok {
				return nil
			}
			if command {
				c.print("\n")
			}
			if c.width == 0 {
				c.print(text) // for a program, or a file
			} else if d, ok := topic.Of(args[0]); ok {
				c.document(d)
			}
			return nil
		},
	}
}

// completionWords says how the scripts are used.
func completionWords(cmd *cobra.Command) {
	cmd.Use, cmd.Short = "completion SHELL", "print the completion script of a shell"
	cmd.Long = "Prints the script by which a shell completes commands, flags, names of sheets and topics, for bash, zsh, fish or powershell."
	cmd.Example = "source <(trivet completion bash)\ntrivet completion zsh > \"${fpath[1]}/_trivet\"\ntrivet completion fish | source\ntrivet completion powershell | Out-String | Invoke-Expression"
	cmd.Args = func(*cobra.Command, []string) error {
		return diag.New("expected the name of a shell", "`"+Program+" completion bash`, or zsh, fish, powershell")
	}
	cmd.RunE = func(*cobra.Command, []string) error { return nil } // for the arguments to be looked at
	for _, shell := range cmd.Commands() {
		shell.Args = Alone
		shell.Short = "print the script of " + shell.Name()
		shell.Long, shell.Example = "Prints the completion script of "+shell.Name()+".", "trivet completion "+shell.Name()
		if f := shell.Flags().Lookup("no-descriptions"); f != nil {
			f.Usage = "without what each word means"
		}
	}
}
