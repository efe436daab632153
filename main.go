// Command trivet is a terminal workbench for free-body equilibrium problems.
package main

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"slices"

	"github.com/charmbracelet/x/ansi"
	"github.com/spf13/cobra"
	"golang.org/x/term"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/schema"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui"
	"trivet/tui/call"
	"trivet/tui/host"
	"trivet/tui/settings"
	"trivet/units"
)

// Exit codes, beside 0 where all is well.
const (
	exitFailed = 1 // a check failed, or there is no single solution
	exitCantDo = 2 // the sheet or the call can't be read
)

const (
	standardIn  = "-"
	toolName    = "trivet"
	defaultFrom = "hanging-load" // the sheet to start from where none is named
	helpWidth   = 78             // of the help's text, to fit 80 columns
)

// main leaves signals alone: the workbench takes its own, and everything else may
// stop where it is.
func main() {
	os.Exit(run(context.Background(), os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is the whole program: results go to stdout, errors to stderr, and the
// exit code comes back.
func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	c := &command{stdin: stdin, stdout: stdout, stderr: stderr}
	root := c.root()
	root.SetArgs(args)
	root.SetIn(stdin)
	root.SetOut(stdout)
	root.SetErr(stderr)
	if err := root.ExecuteContext(ctx); err != nil {
		c.refuse(toolName, report.Fault{Msg: err.Error()})
	}
	if c.lost != nil {
		c.refuse(toolName, report.Fault{Msg: "the results cannot be written: " + c.lost.Error()})
	}
	return c.code
}

// command is one call of the program.
type command struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	code           int          // the worst so far
	linear         bool         // the workbench writes lines of text
	sheet          *sheet.Sheet // the last one read
	lost           error        // the first error of writing results: a full disk must not pass for results written
}

func (c *command) print(text string) {
	if _, err := io.WriteString(c.stdout, text); c.lost == nil {
		c.lost = err
	}
}

// refuse says on standard error what can't be done, and why.
func (c *command) refuse(what string, f report.Fault) {
	fmt.Fprintln(c.stderr, f.Where(what))
	c.code = max(c.code, exitCantDo)
}

func (c *command) root() *cobra.Command {
	root := &cobra.Command{
		Use:   toolName + " [SHEET]",
		Short: "a terminal workbench for free-body equilibrium problems",
		Long: "trivet solves free-body equilibrium problems: points, ropes, struts and supports in a sheet,\n" +
			"unit vectors, the labelled system, magnitudes, residuals and checks beside it, live.\n\n" +
			"With a SHEET, or none, it opens the workbench; F1 there lists every key.\n\n" +
			ansi.Wordwrap("Caution: "+report.Caution+".", helpWidth, " "),
		Example:           "  trivet mast.toml\n  trivet new --from mast-top my.toml\n  trivet solve my.toml\n  trivet solve - --format json < my.toml\n  trivet check *.toml",
		Args:              oneSheetOrNone,
		Version:           version(),
		SilenceUsage:      true,
		SilenceErrors:     true,
		ValidArgsFunction: sheetFiles,
		RunE:              func(cmd *cobra.Command, args []string) error { return c.workbench(cmd.Context(), args) },
	}
	root.Flags().BoolVar(&c.linear, "linear", false, "plain lines of text in place of panes, for a screen reader or a slow line")
	root.AddCommand(c.solveCommand(), c.checkCommand(), c.pageCommand(), c.newCommand(), c.schemaCommand(), host.Command(c.stdin, c.stdout, c.stderr))
	root.SetFlagErrorFunc(call.Flag)
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	for _, sub := range root.Commands() { // cobra's own two, in our words
		switch sub.Name() {
		case "help":
			sub.Short, sub.Long = "help on a command", ""
			sub.Args = func(_ *cobra.Command, args []string) error {
				if found, _, err := root.Find(args); len(args) > 0 && (err != nil || found == root) {
					return cmp.Or(mistyped(root, args), fmt.Errorf("there is no command %q: try `%s help`", args[0], toolName))
				}
				return nil
			}
		case "completion":
			sub.Short = "write the completion script of a shell"
			sub.Args = func(*cobra.Command, []string) error {
				return errors.New("name one of four shells: try `trivet completion bash`, or zsh, fish, powershell")
			}
			sub.RunE = func(*cobra.Command, []string) error { return nil } // for the arguments to be looked at
			for _, shell := range sub.Commands() {
				shell.Args = call.Alone
			}
		}
	}
	return root
}

// oneSheetOrNone tells a mistyped command from a sheet.
func oneSheetOrNone(root *cobra.Command, args []string) error {
	err := mistyped(root, args)
	switch {
	case err != nil || len(args) == 0:
		return err
	case args[0] == standardIn:
		return fmt.Errorf("the workbench opens a file, not standard input: try `%s solve -`", toolName)
	case len(args) > 1:
		return fmt.Errorf("the workbench opens one sheet, and here are %d: try `%s solve` for several", len(args), toolName)
	}
	return nil
}

func mistyped(root *cobra.Command, args []string) error {
	var commands []string
	for _, sub := range root.Commands() {
		commands = append(commands, sub.Name())
	}
	if len(args) > 0 && !exists(args[0]) {
		if s := units.Suggest(args[0], commands); s != "" {
			return fmt.Errorf("there is no command %q: did you mean `%s %s`", args[0], toolName, s)
		}
	}
	return nil
}

func exists(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}

func (c *command) solveCommand() *cobra.Command {
	var format string
	var ask []string
	var steps bool
	cmd := &cobra.Command{
		Use:               "solve SHEET...",
		Short:             "solve sheets and print the results; - reads standard input",
		Example:           "  trivet solve mast.toml\n  trivet solve mast.toml --ask 'T1.x' --ask 'angle(T1, T2)'\n  trivet solve - --format json < mast.toml\n  trivet solve mast.toml --format latex > mast.tex",
		Args:              atLeastOneSheet,
		ValidArgsFunction: sheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if err := report.CheckFormat(format, steps, len(args)); err != nil {
				return err
			}
			for i, name := range args {
				c.print(report.Between(format, display(name), i, len(args)))
				c.solve(name, format, steps, ask)
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&format, "format", "text", "`FORM` of the results: "+report.FormatWords())
	cmd.Flags().BoolVar(&steps, "working", false, "write the worked solution behind the results")
	cmd.Flags().StringArrayVar(&ask, "ask", nil, "a `RESULT` to print besides, such as T1.x or 'angle(T1, T2)'; may be repeated")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(report.Formats(), cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func (c *command) checkCommand() *cobra.Command {
	return &cobra.Command{
		Use:               "check SHEET...",
		Short:             "run every check and compare the printed answers; one line a sheet",
		Args:              atLeastOneSheet,
		ValidArgsFunction: sheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			for _, name := range args {
				unreadable := func(string, []report.Fault) {
					c.print(fmt.Sprintf("FAILS %s: %s\n", display(name), statics.Unreadable))
				}
				if sol := c.read(name, unreadable); sol != nil {
					well, line := report.CheckLine(display(name), sol)
					c.print(line + "\n")
					if !well {
						c.code = max(c.code, exitFailed)
					}
				}
			}
			return nil
		},
	}
}

func (c *command) pageCommand() *cobra.Command {
	var out string
	var force bool
	var opt report.PageOptions
	cmd := &cobra.Command{
		Use:               "page SHEET -o FILE",
		Short:             "write a sheet as a page: figure, working, results, checks",
		Long:              report.PageHelp,
		Example:           "  trivet page mast.toml -o mast.pdf\n  trivet page mast.toml -o mast.svg\n  trivet page mast.toml --field --by 'A. Rigger' --date 2026-05-04 -o mast.pdf",
		Args:              atLeastOneSheet,
		ValidArgsFunction: sheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			format, err := report.PageFormat(out, len(args))
			if err != nil {
				return err
			}
			opt.File = display(args[0])
			sol := c.read(args[0], func(string, []report.Fault) {})
			if sol == nil {
				return nil
			}
			opt.Sheet = c.sheet
			if f, ok := report.WritePage(out, format, sol, opt, force); !ok {
				c.refuse(out, f)
			}
			c.judge(sol)
			return nil
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "`FILE` to write; its ending says the format")
	cmd.Flags().BoolVar(&opt.Field, "field", false, "one page for the file of a job: inputs, results, limits, checks, what was assumed")
	cmd.Flags().StringVar(&opt.By, "by", "", "`NAME` of who entered it")
	cmd.Flags().StringVar(&opt.Date, "date", "", "`DATE` of the page; none is written by itself")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is there")
	return cmd
}

func (c *command) newCommand() *cobra.Command {
	var from string
	cmd := &cobra.Command{
		Use:     "new SHEET",
		Short:   "write a new sheet from one of those to start from",
		Long:    "Writes a new sheet from one of those to start from:\n\n" + fixtures.List(),
		Example: "  trivet new my.toml\n  trivet new --from blank my.toml\n  trivet new --from mast-top my.toml",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) != 1 || args[0] == standardIn {
				return errors.New("a new sheet needs one file name: try `trivet new my.toml`")
			}
			return nil
		},
		ValidArgsFunction: sheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			start, ok := fixtures.Get(from)
			if !ok {
				hint := fmt.Sprintf("`%s new --help` lists them", toolName)
				if s := nearStart(from); s != "" {
					hint = fmt.Sprintf("did you mean %q", s)
				}
				return fmt.Errorf("there is no sheet %q to start from: %s", from, hint)
			}
			s, err := sheet.Parse([]byte(start.Text))
			if err == nil && slices.Contains(fixtures.Blanks(), start) {
				like, _ := settings.Load(os.Environ()) // the workbench says what is wrong with them
				s, err = like.NewSheet(s)
			}
			if err != nil {
				return err
			}
			if _, err := sheet.Save(args[0], s, sheet.Stamp{}, false); err != nil {
				c.refuse(args[0], report.FileFault(args[0], err))
				return nil
			}
			c.print(args[0] + ": " + start.Title + "\n")
			return nil
		},
	}
	cmd.Flags().StringVar(&from, "from", defaultFrom, "`NAME` of the sheet to start from")
	_ = cmd.RegisterFlagCompletionFunc("from", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return fixtures.Names(append(fixtures.Blanks(), fixtures.Starts()...)), cobra.ShellCompDirectiveNoFileComp | cobra.ShellCompDirectiveKeepOrder
	})
	return cmd
}

// nearStart gives the sheet to start from that a name most likely means.
func nearStart(name string) string {
	return units.Suggest(name, fixtures.Names(slices.Concat(fixtures.Blanks(), fixtures.Starts(), fixtures.Published())))
}

func (c *command) schemaCommand() *cobra.Command {
	return &cobra.Command{Use: "schema", Short: "print the JSON Schema of a sheet, by which editors complete and check it",
		Args: call.Alone, ValidArgsFunction: cobra.NoFileCompletions,
		Run: func(*cobra.Command, []string) { c.print(string(schema.JSON())) }}
}

func atLeastOneSheet(_ *cobra.Command, args []string) error {
	if len(args) == 0 || slices.Contains(args, "") {
		return errors.New("no sheet named: write a file, or - for standard input")
	}
	return nil
}

func sheetFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}

// read loads and solves a sheet. Where it does not read it says so on standard
// error and through unreadable, and returns nil.
func (c *command) read(name string, unreadable func(title string, faults []report.Fault)) *statics.Solution {
	var s *sheet.Sheet
	var err error
	if name == standardIn {
		s, err = sheet.Read(c.stdin)
	} else {
		s, _, err = sheet.Load(name)
	}
	var faults []report.Fault
	title := ""
	if err != nil {
		faults = []report.Fault{report.FileFault(name, err)}
	} else {
		c.sheet = s
		p, errs := problem.Read(s)
		if len(errs) == 0 {
			for _, doubt := range report.Faults(s, p.Doubts) {
				fmt.Fprintln(c.stderr, doubt.Where(display(name))) // it reads: no exit code for it
			}
			return statics.Solve(p)
		}
		title, faults = p.Title, report.Faults(s, errs)
	}
	for _, f := range faults {
		c.refuse(display(name), f)
	}
	unreadable(title, faults)
	return nil
}

func display(name string) string {
	if name == standardIn {
		return "standard input"
	}
	return name
}

func (c *command) solve(name, format string, steps bool, ask []string) {
	sol := c.read(name, func(title string, faults []report.Fault) {
		if format == "json" {
			c.print(string(report.JSONUnreadable(name, title, faults)))
		}
	})
	if sol == nil {
		return
	}
	for _, result := range ask {
		if q, err := problem.ParseQuery(sol.Problem, result); err != nil {
			c.refuse(display(name), report.Fault{Msg: fmt.Sprintf("--ask %q", result), Hint: err.Error()})
		} else {
			sol.Problem.Asked = append(sol.Problem.Asked, q)
		}
	}
	c.print(report.Results(format, name, sol, steps))
	c.judge(sol)
}

// judge sets the exit code of what was solved.
func (c *command) judge(sol *statics.Solution) {
	if !sol.Single() || !sol.Well() {
		c.code = max(c.code, exitFailed)
	}
}

// workbench opens the terminal program; it needs a terminal at both ends.
func (c *command) workbench(ctx context.Context, args []string) (err error) {
	opt := tui.Options{Linear: c.linear, Env: os.Environ(), Journal: true, Every: tui.WatchEvery}
	if len(args) == 1 {
		opt.Path = args[0]
		opt.Sheet, opt.Stamp, err = sheet.Load(opt.Path)
	} else {
		opt.Start = true
	}
	if err != nil {
		fault := report.FileFault(opt.Path, err)
		if _, start := fixtures.Get(opt.Path); start && !exists(opt.Path) {
			fault.Hint = fmt.Sprintf("try `%s new --from %s my.toml`", toolName, opt.Path)
		}
		c.refuse(opt.Path, fault)
		return nil
	}
	in, okIn := c.stdin.(*os.File)
	out, okOut := c.stdout.(*os.File)
	if !okIn || !okOut || !term.IsTerminal(int(in.Fd())) || !term.IsTerminal(int(out.Fd())) {
		return fmt.Errorf("the workbench needs a terminal at both ends: without one, try `%[1]s solve %[2]s`, or `%[1]s --help`", toolName, cmp.Or(opt.Path, "SHEET"))
	}
	opt.In, opt.Out = in, out
	ctx, signalled := tui.UntilSignal(ctx)
	err = tui.Run(ctx, opt)
	var stopped *tui.Stopped
	if errors.As(err, &stopped) {
		fmt.Fprintf(c.stderr, "%s: %v\n", toolName, stopped) // nobody may be there to read it
		c.code = max(c.code, exitFailed, signalled())
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
