package call

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/grade"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/units"
)

const markLong = `Marks a table of students' answers against a sheet, and names the mistake that was most likely made.

ANSWERS is a table as a spreadsheet writes it: its first row names the columns, name and one for each result. Where students had variants, the column sheet holds the file of each, and SHEET is the folder of the variants. Instead of a table there may be the students' sheets, with their [answers].

An answer is right where it agrees to the precision written, or to three significant figures; --within 1% sets another tolerance.`

// Mark is "trivet mark". It exits with 0 where all were marked, Failed where some
// row or question could not be, CantDo where the sheet, the table or the call does
// not read.
func (c *Call) Mark() *cobra.Command {
	var format, within string
	cmd := &cobra.Command{
		Use:         "mark SHEET ANSWERS",
		Short:       "mark answers and name likely mistakes",
		Long:        markLong,
		Annotations: map[string]string{exitNote: "a row or a question cannot be marked", topicNote: "marks class"},
		Example:     "trivet mark mast.toml answers.csv\ntrivet mark variants answers.csv --format csv > marks.csv\ntrivet mark mast.toml ada.toml ben.toml --within 1%",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) < 2 || slices.Contains(args, "") {
				return diag.New("a sheet and answers to it are expected", "`"+Program+" mark SHEET ANSWERS.csv`")
			}
			return nil
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) == 0 {
				return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
			}
			return []string{"csv", "toml"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(_ *cobra.Command, args []string) error {
			rule, err := readWithin(within)
			if err != nil {
				return err
			}
			if forms := report.TableFormats(); !slices.Contains(forms, format) {
				return diag.New(fmt.Sprintf("unknown format %q", format), say.Or(forms...))
			}
			class, ok, err := c.mark(args[0], args[1:], rule)
			if err != nil || !ok {
				return err
			}
			c.print(report.Marks(format, class))
			for _, s := range class.Students {
				if s.Fault != "" {
					c.tell(s.Name, s.Fault)
				}
			}
			return nil
		},
	}
	cmd.Flags().StringVar(&within, "within", "", "`SHARE` of the right value by which an answer may be off, such as 1%")
	cmd.Flags().StringVar(&format, "format", "text", "`FORM` of the marks: text, csv, json or markdown")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(report.TableFormats(), cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

// tell says on standard error what could not be marked.
func (c *Call) tell(who, why string) {
	fmt.Fprintln(c.Stderr, diag.New("not marked: "+why, "").In(who))
	c.Fail(Failed)
}

// readWithin reads "1%" or "0.5 %".
func readWithin(text string) (grade.Rule, error) {
	if text == "" {
		return grade.Rule{}, nil
	}
	share, percent := units.Percent(text)
	if !percent || !(share > 0 && share < 1) {
		return grade.Rule{}, diag.New(fmt.Sprintf("--within %q is not a percentage between 0 and 100", text), "--within 1%")
	}
	return grade.Rule{Within: share}, nil
}

// mark holds answers against a sheet, or against those of a folder. Where ok is
// false it was said on standard error why.
func (c *Call) mark(name string, answers []string, rule grade.Rule) (class grade.Class, ok bool, err error) {
	if info, err := os.Stat(name); err == nil && info.IsDir() {
		if len(answers) != 1 {
			return class, false, diag.New(fmt.Sprintf("a folder of variants takes one table of answers, but %d are named", len(answers)), "name one")
		}
		return c.markVariants(name, answers[0], rule)
	}
	if name == standardIn && slices.Contains(answers, standardIn) {
		return class, false, diag.New("standard input cannot be both the sheet and the answers", "a file for one of them")
	}
	r := c.read(name)
	if r.solution == nil {
		return class, false, nil
	}
	key := grade.NewKey(r.sheet, r.solution, rule)
	class = grade.Class{Sheet: display(name), Title: r.solution.Problem.Title, Rule: rule}
	if len(answers) > 1 || filepath.Ext(answers[0]) == ".toml" {
		c.markSheets(&class, key, answers)
		return class, true, nil
	}
	return class, c.markTable(&class, key, name, answers[0]), nil
}

// noValues says which questions the sheet has no single value for.
func (c *Call) noValues(class *grade.Class) {
	for i, name := range class.Questions {
		for _, s := range class.Students {
			if i < len(s.Marks) && s.Marks[i].Verdict == grade.NoValue {
				c.tell(name, s.Marks[i].Says)
				break
			}
		}
	}
}
