package call

import (
	"crypto/rand"
	"errors"
	"fmt"
	"math/big"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/report"
	"trivet/mechanics/variant"
)

// maxVariants is how many variants a class set has at most.
const maxVariants = 999

// varying is what a call of "trivet vary" asks for.
type varying struct {
	count   int
	seed    uint64
	folder  string
	formats []string
	as      string // the form of the pages of a set
	force   bool
}

// Vary is "trivet vary". It exits with 0 where the variants and the key are
// written, CantDo where they are not; then nothing is.
func (c *Call) Vary() *cobra.Command {
	var v varying
	cmd := &cobra.Command{
		Use:   "vary SHEET -n COUNT -o FOLDER",
		Short: "write a class set, and its key",
		Long: "Writes variants of a sheet, NAME-01.toml and so on, and a key for the instructor, NAME-key.csv.\n\n" +
			"Every given with a range gets a value from it, in its steps. A variant is kept only where its verdict is of the same kind. " +
			"Title and statement follow the values; reference answers are left out. The same sheet and seed give the same files.\n\n" +
			"Of a set it writes that for every problem, with the page to hand out and the worked solution of each variant, and a table of answers with the names to fill in, NAME-answers.csv.",
		Annotations:       map[string]string{topicNote: "class"},
		Example:           "trivet vary beam.toml -n 24 -o class\ntrivet vary beam.toml -n 24 -o class --seed 7 --format csv,markdown --force\ntrivet vary week4.toml -n 24 -o class --as pdf",
		Args:              oneSheet("variants are made of one sheet"),
		ValidArgsFunction: SheetFiles,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := v.check(); err != nil {
				return err
			}
			if !cmd.Flags().Changed("seed") {
				v.seed = anySeed()
			}
			if set, s := c.set(args[0]); set != nil {
				c.varySet(set, v)
			} else if s == nil {
				c.vary(args[0], v)
			}
			return nil
		},
	}
	cmd.Flags().IntVarP(&v.count, "count", "n", 0, "`COUNT` of variants")
	cmd.Flags().StringVarP(&v.folder, "output", "o", "", "`FOLDER` to write to; made where it is missing")
	cmd.Flags().Uint64Var(&v.seed, "seed", 0, "`NUMBER` that the values are drawn by; without it any, which is printed")
	cmd.Flags().StringSliceVar(&v.formats, "format", []string{"csv"}, "`FORM` of the key: csv, markdown, or both with a comma")
	cmd.Flags().StringVar(&v.as, "as", setPages, "`FORM` of the pages of a set: md, tex, html, pdf, svg or png")
	cmd.Flags().BoolVar(&v.force, "force", false, "write over files that are there")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(report.KeyFormats, cobra.ShellCompDirectiveNoFileComp))
	_ = cmd.MarkFlagDirname("output")
	return cmd
}

func (v *varying) check() error {
	switch {
	case v.count == 0:
		return diag.New("the number of variants is missing", "-n 24")
	case v.count < 0 || v.count > maxVariants:
		return diag.New(fmt.Sprintf("a class set has 1 to %d variants, not %d", maxVariants, v.count), "")
	case v.folder == "":
		return diag.New("the folder for the variants is missing", "-o class")
	case len(v.formats) == 0:
		v.formats = []string{""}
	}
	for _, f := range v.formats {
		if err := report.KnownFormat(f, " of a key", report.KeyFormats); err != nil {
			return err
		}
	}
	slices.Sort(v.formats)
	v.formats = slices.Compact(v.formats)
	_, err := report.PageOut("-", v.as, 1)
	return err
}

// anySeed is a seed that is short enough to be typed again.
func anySeed() uint64 {
	n, err := rand.Int(rand.Reader, big.NewInt(999_999))
	if err != nil {
		return 1 // cannot be: the system's random numbers do not fail
	}
	return n.Uint64() + 1
}

// oneSheet refuses a call of no sheet or several.
func oneSheet(says string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if err := atLeastOneSheet(cmd, args); err != nil {
			return err
		}
		if len(args) > 1 {
			return diag.New(fmt.Sprintf("%s, but %d are named", says, len(args)), "name one")
		}
		return nil
	}
}

// source reads a sheet to make others of; nil where that is said to be impossible.
func (c *Call) source(name string) *variant.Source {
	r := c.read(name)
	if r.solution == nil {
		return nil
	}
	src, err := variant.NewSource(r.sheet, r.solution)
	if err != nil {
		c.refuse(display(name), err)
		return nil
	}
	return src
}

// stem is what the files made of a sheet are called.
func stem(name string) string {
	if name == standardIn {
		return "sheet"
	}
	base := filepath.Base(name)
	return strings.TrimSuffix(base, filepath.Ext(base))
}

func (c *Call) vary(name string, v varying) {
	set := classSet{folder: v.folder, force: v.force}
	if c.addVariants(&set, name, stem(name), v) != nil && c.writeSet(set) {
		c.written(set, v.seed)
		c.strangers(set, stem(name))
	}
}

// written says what was written, and by which seed.
func (c *Call) written(set classSet, seed uint64) {
	c.print(fmt.Sprintf("seed %d\n", seed))
	c.listed(set)
}

func (c *Call) listed(set classSet) {
	for _, f := range set.files {
		c.print(printable.Line(f.path(set.folder)+": "+f.says) + "\n")
	}
}

// addVariants adds variants of a sheet, called after the stem, and their key. It gives
// them, or nil where it was said why there are none.
func (c *Call) addVariants(set *classSet, name, stem string, v varying) []setSheet {
	src := c.source(name)
	if src == nil {
		return nil
	}
	c.warn(display(name), src)
	drawn, err := src.Draw(variant.Seeded(v.seed), v.count)
	if err != nil {
		c.refuse(display(name), err)
		c.reasons(err)
		return nil
	}
	names := make([]string, len(drawn))
	var out []setSheet
	for i := range drawn {
		number := variant.Number(i+1, v.count)
		names[i] = stem + "-" + number
		if drawn[i], err = src.Finish(drawn[i], "variant "+number); err != nil {
			c.refuse(display(name), err)
			return nil
		}
		set.add(names[i]+".toml", []byte(drawn[i].Sheet.Text()), src.Says(drawn[i]))
		out = append(out, setSheet{names[i], drawn[i].Sheet, drawn[i].Solution})
	}
	key := src.Key(v.seed, drawn, names)
	for _, f := range v.formats {
		set.add(stem+"-key"+report.KeyEnding(f), report.Key(f, src.Solution.Problem.Title, key), "the key, for the instructor")
	}
	return out
}

// reasons says below an error of too few variants which values fail.
func (c *Call) reasons(err error) {
	var few *variant.TooFew
	if errors.As(err, &few) {
		for _, line := range few.Reasons() {
			fmt.Fprintln(c.Stderr, "  "+line)
		}
	}
}

// warn says on standard error what an instructor has to look at: it costs no exit
// code.
func (c *Call) warn(name string, src *variant.Source) {
	s := src.Solution
	if !s.Single() && s.Problem.Expect == "" {
		fmt.Fprintf(c.Stderr, "%s: the sheet itself is %s, and so are its variants\n", name, s.Verdict)
	}
	if strings.TrimSpace(s.Problem.Statement) == "" {
		return
	}
	for _, t := range src.Tasks {
		switch {
		case t.Rivals != "":
			fmt.Fprintln(c.Stderr, diag.New(fmt.Sprintf("in the statement %s could be %s or %s, so it is the same in every variant", t.Value, t.Given, t.Rivals),
				"correct the variants by hand").In(name))
		case t.Times == 0:
			fmt.Fprintln(c.Stderr, diag.New(fmt.Sprintf("the statement does not contain %s = %s in figures, so it is the same in every variant, and %[1]s is listed among the givens", t.Given, t.Value),
				"check that it fits every variant").In(name))
		}
	}
}
