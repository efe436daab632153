package call

import (
	"bufio"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/tui/practice"
	"trivet/tui/record"
)

// Try is "trivet try". It exits with 0 where everything that the sheet asks for was
// answered rightly, Failed where something was not, CantDo where the sheet does not read.
func (c *Call) Try() *cobra.Command {
	var format string
	var keep bool
	cmd := &cobra.Command{
		Use:   "try SHEET",
		Short: "judge a student's work, line by line",
		Long: "Reads entries from standard input, one a line, and judges each: free bodies, vectors, moments, equations, values. " +
			"No line shows what was not entered. The word hint asks for the next hint; # begins a comment. " +
			"With --record each entry is in your record before its judgement is printed.",
		Annotations:       map[string]string{exitNote: "something that is asked was not answered rightly", topicNote: "practice"},
		Example:           "trivet try mast.toml\ntrivet try mast.toml --format json < entries.txt",
		Args:              oneSheet("entries are judged against one sheet"),
		ValidArgsFunction: SheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != report.JudgementFormats[0] && format != report.JudgementFormats[1] {
				return diag.New(fmt.Sprintf("--format %q is not a form of judgements", format), say.Or(report.JudgementFormats...))
			}
			var to practice.Keeping
			if keep {
				var err error
				if to, err = c.keeping(); err != nil {
					return err
				}
				defer to.Store.Close()
			}
			c.try(args[0], format, to)
			return nil
		},
	}
	cmd.Flags().BoolVar(&keep, "record", false, "keep entries, judgements and hints in your record")
	cmd.Flags().StringVar(&format, "format", report.JudgementFormats[0], "`FORM` of the judgements: "+say.Or(report.JudgementFormats...))
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(report.JudgementFormats, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

// keeping opens the record of this desk.
func (c *Call) keeping() (practice.Keeping, error) {
	file, err := record.Desk(c.Env)
	if err != nil {
		return practice.Keeping{}, diag.New("there is no home folder for the record: "+err.Error(), "leave --record out")
	}
	store, notice, err := record.Open(file)
	if notice != nil {
		fmt.Fprintln(c.Stderr, notice.Warning(file))
	}
	return practice.Keeping{Store: store, Person: record.Self(c.Env)}, err
}

func (c *Call) try(name, format string, to practice.Keeping) {
	if name == "-" {
		c.refuse(Program, diag.New("standard input is for the entries", "the name of a sheet's file"))
		return
	}
	r := c.read(name)
	if r.solution == nil {
		return
	}
	work := practice.New(to, practice.Alone(practice.Name(name, ""), r.sheet), r.solution)
	lines := bufio.NewScanner(c.Stdin)
	lines.Buffer(nil, longestEntry)
	for lines.Scan() {
		line, _, _ := strings.Cut(lines.Text(), "#")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		if line == "hint" {
			h, _, _, err := work.Hint()
			if err != nil {
				c.refuse("record", err)
				return
			}
			c.print(report.Hint(format, h))
			continue
		}
		j, err := work.Enter(line)
		if err != nil {
			c.refuse("record", err)
			return
		}
		c.print(report.Judgement(format, j))
	}
	if err := lines.Err(); err != nil {
		c.refuse(Program, diag.New("an entry cannot be read: "+err.Error(), "shorter lines"))
		return
	}
	if !work.State().Answered {
		c.Fail(Failed)
	}
}

// longestEntry is more than anybody writes in one line.
const longestEntry = 64 << 10
