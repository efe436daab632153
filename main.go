// Command trivet is a terminal workbench for free-body equilibrium problems.
//
// It exits with 0 where all is well, with 1 where a check failed or there is no
// single solution, with 2 where the sheet or the call can't be read. A workbench
// that a signal ended exits with 128 and the signal's number.
package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"trivet/mechanics/diag"
	"trivet/tui"
	"trivet/tui/call"
	"trivet/tui/host"
)

// main leaves signals alone: the workbench takes its own, and everything else may
// stop where it is.
func main() {
	os.Exit(run(context.Background(), os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the whole program: results go to stdout, errors to stderr, and the
// exit code comes back.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	c := call.New(stdin, stdout, stderr, os.Environ())
	root := command(c, stdout)
	root.SetArgs(args)
	return c.End(root.ExecuteContext(ctx))
}

// command is the program's command with all those below it. A workbench draws on
// screen itself; all that is printed is the call's.
func command(c *call.Call, screen io.Writer) *cobra.Command {
	var linear bool
	root := &cobra.Command{
		Use:               call.Program + " [SHEET]",
		Short:             "open the workbench",
		Long:              "trivet solves free-body equilibrium problems, in a workbench or by commands.",
		Args:              call.OneSheetOrNone,
		Version:           version(),
		ValidArgsFunction: call.SheetFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			o := call.Opening{Linear: linear}
			if len(args) == 1 {
				var ok bool
				o.Path = args[0]
				if o.Sheet, o.Stamp, ok = c.Open(o.Path); !ok {
					return nil
				}
			}
			return workbench(cmd.Context(), c, screen, o)
		},
	}
	root.SetIn(c.Stdin)
	root.SetOut(c.Stdout) // before OwnWords, whose commands take it along
	root.SetErr(c.Stderr)
	root.Flags().BoolVar(&linear, "linear", false, "plain lines of text in place of panes, for a screen reader or a slow line")
	c.OwnWords(root, c.Solve(), c.Check(), c.Page(), c.Sweep(), c.Vary(), c.Mark(), c.Practise(func(cmd *cobra.Command, o call.Opening) error { return workbench(cmd.Context(), c, screen, o) }), c.Try(), c.Record(), c.New(), host.Command(c.Stdin, screen, c.Stderr), c.Schema())
	return root
}

// workbench opens the terminal program; it needs a terminal at both ends.
func workbench(ctx context.Context, c *call.Call, screen io.Writer, o call.Opening) error {
	opt := tui.Options{
		Path: o.Path, Sheet: o.Sheet, Stamp: o.Stamp, Linear: o.Linear, Practice: o.Practice, Env: c.Env, Version: version(),
		Journal: true, Every: tui.WatchEvery, Start: o.Path == "" && o.Practice == nil,
	}
	in, okIn := c.Stdin.(*os.File)
	out, okOut := screen.(*os.File)
	if !okIn || !okOut || !term.IsTerminal(int(in.Fd())) || !term.IsTerminal(int(out.Fd())) {
		return diag.New("the workbench needs a terminal for its input and its output", fmt.Sprintf("`%[1]s solve %[2]s` or `%[1]s --help`", call.Program, cmp.Or(opt.Path, "SHEET")))
	}
	opt.In, opt.Out = in, out
	ctx, signalled := call.UntilSignal(ctx)
	err := tui.Run(ctx, opt)
	var stopped *tui.Stopped
	if errors.As(err, &stopped) {
		fmt.Fprintf(c.Stderr, "%s: %v\n", call.Program, stopped) // nobody may be there to read it
		c.Fail(max(call.Failed, signalled()))
		return nil
	}
	return err
}

// version is the module's: built or installed in a clone it names the commit;
// under go run there is none.
func version() string {
	if info, ok := debug.ReadBuildInfo(); ok {
		return cmp.Or(info.Main.Version, "(devel)") + ", " + info.GoVersion
	}
	return "unknown"
}
