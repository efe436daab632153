// Command trivet is a terminal workbench for free-body equilibrium problems.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui"
	"trivet/units"
)

// Exit codes: all well; a check failed or there is no single solution; the
// sheet or the call can't be read.
const (
	exitWell    = 0
	exitFailed  = 1
	exitCantDo  = 2
	standardIn  = "-"
	toolName    = "trivet"
	defaultFrom = "hanging-load" // the sheet to start from where none is named
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
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
		fmt.Fprintf(stderr, "%s: %s\n", toolName, err)
		return exitCantDo
	}
	return c.code
}

// command is one call of the program.
type command struct {
	stdin          io.Reader
	stdout, stderr io.Writer
	code           int
}

func (c *command) root() *cobra.Command {
	root := &cobra.Command{
		Use:   toolName + " [SHEET]",
		Short: "a terminal workbench for free-body equilibrium problems",
		Long: "trivet solves free-body equilibrium problems: points, ropes, struts and supports in a sheet,\n" +
			"unit vectors, the labelled system, magnitudes, residuals and checks beside it, live.\n\n" +
			"With a SHEET, or none, it opens the workbench; F1 there lists every key.\n\n" +
			"Caution: " + report.Caution + ".",
		Example:           "  trivet mast.toml\n  trivet new --from mast-top my.toml\n  trivet solve my.toml\n  trivet solve - --format json < my.toml\n  trivet check *.toml",
		Args:              cobra.MaximumNArgs(1),
		Version:           version(),
		SilenceUsage:      true,
		SilenceErrors:     true,
		ValidArgsFunction: sheetFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			return c.workbench(cmd.Context(), args)
		},
	}
	root.AddCommand(c.solveCommand(), c.checkCommand(), c.newCommand())
	return root
}

func (c *command) solveCommand() *cobra.Command {
	var format string
	var ask []string
	cmd := &cobra.Command{
		Use:               "solve SHEET...",
		Short:             "solve sheets and print the results; - reads standard input",
		Example:           "  trivet solve mast.toml\n  trivet solve mast.toml --ask 'T1.x' --ask 'angle(T1, T2)'\n  trivet solve - --format json < mast.toml",
		Args:              atLeastOneSheet,
		ValidArgsFunction: sheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != "text" && format != "json" {
				return fmt.Errorf("there is no format %q: write text or json", format)
			}
			for i, name := range args {
				if i > 0 && format == "text" {
					fmt.Fprintln(c.stdout)
				}
				c.solve(name, format, ask)
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&format, "format", "text", "text or json")
	cmd.Flags().StringArrayVar(&ask, "ask", nil, "a result to print besides, such as T1.x or 'angle(T1, T2)'; may be repeated")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions([]string{"text", "json"}, cobra.ShellCompDirectiveNoFileComp))
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
				if s := c.read(name, nil); s != nil {
					well, line := report.CheckLine(name, s.solution)
					fmt.Fprintln(c.stdout, line)
					if !well {
						c.worse(exitFailed)
					}
				}
			}
			return nil
		},
	}
}

func (c *command) newCommand() *cobra.Command {
	var from string
	cmd := &cobra.Command{
		Use:     "new SHEET",
		Short:   "write a new sheet from one of those to start from",
		Long:    "Writes a new sheet from one of those to start from:\n\n" + startList(),
		Example: "  trivet new my.toml\n  trivet new --from mast-top my.toml",
		Args:    cobra.ExactArgs(1),
		RunE: func(_ *cobra.Command, args []string) error {
			start, ok := fixtures.Get(from)
			if !ok {
				hint := "the sheets to start from are\n" + startList()
				if s := units.Suggest(from, startNames()); s != "" {
					hint = fmt.Sprintf("did you mean %q", s)
				}
				return fmt.Errorf("there is no sheet %q to start from: %s", from, hint)
			}
			s, err := sheet.Parse([]byte(start.Text))
			if err != nil {
				return err
			}
			if _, err := sheet.Save(args[0], s, sheet.Stamp{}, false); err != nil {
				return err
			}
			fmt.Fprintf(c.stdout, "%s: %s\n", args[0], start.Title)
			return nil
		},
	}
	cmd.Flags().StringVar(&from, "from", defaultFrom, "the sheet to start from")
	_ = cmd.RegisterFlagCompletionFunc("from", func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
		return startNames(), cobra.ShellCompDirectiveNoFileComp
	})
	return cmd
}

func atLeastOneSheet(_ *cobra.Command, args []string) error {
	if len(args) == 0 {
		return errors.New("no sheet named: write a file, or - for standard input")
	}
	return nil
}

func sheetFiles(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
}

func startNames() []string {
	var names []string
	for _, s := range fixtures.Starts() {
		names = append(names, s.Name)
	}
	return names
}

func startList() string {
	var b strings.Builder
	for _, s := range fixtures.Starts() {
		fmt.Fprintf(&b, "  %-12s %s\n", s.Name, s.Title)
	}
	return b.String()
}

// worse keeps the worst exit code so far.
func (c *command) worse(code int) { c.code = max(c.code, code) }

// solved is a sheet that read and was solved.
type solved struct {
	sheet    *sheet.Sheet
	solution *statics.Solution
}

// read loads and solves a sheet; where it does not read it says so on stderr,
// through unreadable if that is given, and returns nil.
func (c *command) read(name string, unreadable func(title string, faults []report.Fault)) *solved {
	s, err := c.load(name)
	var faults []report.Fault
	title := ""
	if err != nil {
		faults = []report.Fault{fault(err)}
	} else {
		p, errs := problem.Read(s)
		if len(errs) == 0 {
			return &solved{s, statics.Solve(p)}
		}
		title = p.Title
		for _, e := range errs {
			line, column := s.Position(e.Ref, e.Span.Start)
			f := report.Fault{Line: line, Column: column, Msg: e.Msg, Hint: e.Hint, Source: s.Line(line)}
			if endLine, end := s.Position(e.Ref, e.Span.End); endLine == line {
				f.Width = end - column
			}
			faults = append(faults, f)
		}
	}
	for _, f := range faults {
		fmt.Fprintln(c.stderr, f.Where(display(name)))
	}
	if unreadable != nil {
		unreadable(title, faults)
	}
	c.worse(exitCantDo)
	return nil
}

func (c *command) load(name string) (*sheet.Sheet, error) {
	if name == standardIn {
		return sheet.Read(c.stdin)
	}
	s, _, err := sheet.Load(name)
	return s, err
}

// fault gives an error of the sheet room its place, where it has one.
func fault(err error) report.Fault {
	var text *sheet.Error
	var file *sheet.FileError
	switch {
	case errors.As(err, &text):
		return report.Fault{Line: text.Line, Column: text.Column, Msg: text.Msg, Hint: text.Hint}
	case errors.As(err, &file):
		return report.Fault{Msg: file.Msg, Hint: file.Hint}
	}
	return report.Fault{Msg: err.Error()}
}

func display(name string) string {
	if name == standardIn {
		return "standard input"
	}
	return name
}

func (c *command) solve(name, format string, ask []string) {
	s := c.read(name, func(title string, faults []report.Fault) {
		if format == "json" {
			_, _ = c.stdout.Write(report.JSONUnreadable(name, title, faults))
		}
	})
	if s == nil {
		return
	}
	sol := s.solution
	for _, name := range ask {
		q, err := problem.ParseQuery(sol.Problem, name)
		if err != nil {
			fmt.Fprintf(c.stderr, "%s: --ask %s: %s\n", toolName, name, err)
			c.worse(exitCantDo)
			continue
		}
		sol.Problem.Asked = append(sol.Problem.Asked, q)
	}
	if format == "json" {
		_, _ = c.stdout.Write(report.JSON(name, sol))
	} else {
		_, _ = io.WriteString(c.stdout, report.Text(sol))
	}
	if !sol.Single() || !sol.Well() && sol.Problem.Expect == "" {
		c.worse(exitFailed)
	}
}

// workbench opens the terminal program; it needs a terminal at both ends.
func (c *command) workbench(ctx context.Context, args []string) error {
	in, okIn := c.stdin.(*os.File)
	out, okOut := c.stdout.(*os.File)
	if !okIn || !okOut || !term.IsTerminal(int(in.Fd())) || !term.IsTerminal(int(out.Fd())) {
		return errors.New("the workbench needs a terminal: without one, try `trivet solve SHEET`, or `trivet --help`")
	}
	opt := tui.Options{In: in, Out: out, Env: os.Environ()}
	if len(args) == 1 {
		s, stamp, err := sheet.Load(args[0])
		if err != nil {
			return errors.New(fault(err).Where(args[0]))
		}
		opt.Path, opt.Sheet, opt.Stamp = args[0], s, stamp
	} else {
		start, _ := fixtures.Get(defaultFrom)
		s, err := sheet.Parse([]byte(start.Text))
		if err != nil {
			return err
		}
		opt.Sheet = s
	}
	return tui.Run(ctx, opt)
}

func version() string {
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" {
		return info.Main.Version
	}
	return "unknown"
}
