package call

import (
	"cmp"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"trivet/mechanics/diag"
	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/variant"
)

// setPages is the usual form of the pages of a set.
const setPages = "pdf"

// set reads a file as a set, with its text. Both are nil where the file is none, or does
// not read at all: a sheet's reading says why. The set alone is nil where it was said what
// is wrong with it. Standard input is none, since its sheets lie beside no file.
func (c *Call) set(name string) (*problemset.Set, *sheet.Sheet) {
	if name == standardIn {
		return nil, nil
	}
	s, _, err := sheet.Load(name)
	if err != nil || !problemset.Is(s) {
		return nil, nil
	}
	set, faults := problemset.Read(s, name, time.Local)
	if len(faults) == 0 {
		return set, s
	}
	for _, f := range faults {
		c.refuse(name, f)
	}
	return nil, s
}

// checkSet checks the sheets of a set, each once, and whether they do for the set.
func (c *Call) checkSet(set *problemset.Set, s *sheet.Sheet) {
	checked := map[string]readSheet{}
	for _, p := range set.Problems {
		file := set.File(p)
		r, known := checked[file]
		if !known {
			if !exists(file) {
				c.refuse(set.Path, placed(s, p, "sheet", p.Sheet, diag.New(fmt.Sprintf("there is no sheet %q", p.Sheet), "check the name")))
				c.print(unreadable(file))
			} else {
				r = c.check(file)
			}
			checked[file] = r
		}
		if !p.Variant || r.solution == nil {
			continue
		}
		src, err := variant.NewSource(r.sheet, r.solution)
		if err == nil {
			_, err = set.Personal(p, "", src)
		}
		if err != nil {
			why := diag.Of(err)
			why.Msg = fmt.Sprintf("the sheet %q has no variants: %s", p.Sheet, why.Msg)
			fmt.Fprintln(c.Stderr, placed(s, p, "variant", "true", why).In(set.Path))
			c.reasons(err)
			c.Fail(Failed)
		}
	}
}

// placed puts an error at a cell of a problem of a set.
func placed(s *sheet.Sheet, p problemset.Problem, key, text string, e *diag.Error) *diag.Error {
	e.Place = s.Place(sheet.Ref{Table: "problems", Row: p.Name, Key: key}, diag.Whole(text))
	return e
}

// setSheet is a sheet of a class set, by the name of its files.
type setSheet struct {
	name     string
	sheet    *sheet.Sheet
	solution *statics.Solution
}

// varySet writes a class set for each problem of a set, with all its pages. A problem
// without variants is the same sheet for everyone.
func (c *Call) varySet(set *problemset.Set, v varying) {
	out := classSet{folder: v.folder, force: v.force}
	for i, p := range set.Problems {
		first := len(out.files)
		var sheets []setSheet
		if p.Variant {
			sheets = c.addVariants(&out, set.File(p), p.Name, v)
		} else if r := c.read(set.File(p)); r.solution != nil {
			sheets = []setSheet{{p.Name, r.sheet, r.solution}}
			out.add(p.Name+".toml", []byte(r.sheet.Text()), "the same for everyone")
		}
		if sheets == nil {
			return
		}
		c.addPages(&out, sheets, v.as, report.PageOptions{})
		rows := v.count
		if p.Variant {
			rows = 1
		}
		out.addAnswers(p.Name, sheets, rows)
		out.files[first].before = progress(set, i, len(out.files)-first)
	}
	if c.writeSet(out) {
		c.written(out, v.seed)
		for _, p := range set.Problems {
			c.strangers(out, p.Name)
		}
	}
}

// pageSet writes the pages of the sheets of a set.
func (c *Call) pageSet(set *problemset.Set, folder, as string, opt report.PageOptions, o personal, force bool) error {
	switch {
	case folder == "" || folder == standardIn:
		return diag.New("the pages of a set need a folder", "-o class")
	case isPage(folder):
		return diag.New(fmt.Sprintf("the pages of a set need a folder, and %q is called as a page", folder), "-o "+stem(folder)+" --as "+strings.TrimPrefix(filepath.Ext(folder), "."))
	case opt.Task || opt.Field:
		return diag.New("each problem of a set gets a page to hand out and a worked solution", "leave out --task and --field")
	}
	as = cmp.Or(as, setPages)
	if _, err := report.PageOut(standardIn, as, 1); err != nil {
		return err
	}
	if o.mine {
		return c.ownPages(set, folder, as, opt, o, force)
	}
	out := classSet{folder: folder, force: force}
	var solved []readSheet
	for i, p := range set.Problems {
		r := c.read(set.File(p))
		if r.solution == nil {
			return nil
		}
		c.saysWarnings(r, set.File(p), variant.Contradictions(r.sheet, r.solution.Problem))
		first := len(out.files)
		sheets := []setSheet{{p.Name, r.sheet, r.solution}}
		c.addPages(&out, sheets, as, opt)
		out.addAnswers(p.Name, sheets, 0)
		out.files[first].before = progress(set, i, len(out.files)-first)
		solved = append(solved, r)
	}
	if c.writeSet(out) {
		c.listed(out)
		for _, r := range solved {
			c.judge(r.solution, uncertainty.Of(r.sheet, r.solution))
		}
	}
	return nil
}

func isPage(file string) bool {
	_, err := report.PageFormat(file, 1)
	return err == nil
}

// progress says which problem of a set is being written.
func progress(set *problemset.Set, i, files int) string {
	return fmt.Sprintf("%s, problem %d of %d: writing %s", set.Problems[i].Name, i+1, len(set.Problems), say.Count(files, "file"))
}

// addPages adds the page to hand out and the worked solution of each sheet.
func (c *Call) addPages(set *classSet, sheets []setSheet, format string, opt report.PageOptions) {
	for _, s := range sheets {
		page := func(task bool) func() ([]byte, error) {
			return func() ([]byte, error) {
				opt := opt
				opt.Task, opt.File, opt.Sheet, opt.Uncertainty = task, s.name, s.sheet, uncertainty.Of(s.sheet, s.solution)
				return report.Page(format, s.solution, opt)
			}
		}
		set.addMade(s.name+"."+format, page(true), "the page to hand out")
		set.addMade(s.name+"-worked."+format, page(false), "the worked solution, for the instructor")
	}
}

// addAnswers adds the table in which answers are typed for `trivet mark`: the names are to
// be filled in, in so many rows for each sheet.
func (s *classSet) addAnswers(stem string, sheets []setSheet, rows int) {
	head := []string{"name", "sheet"}
	for _, q := range sheets[0].solution.Problem.Results() {
		head = append(head, q.Name)
	}
	table := [][]string{head}
	for _, one := range sheets {
		for range rows {
			row := make([]string, len(head))
			row[1] = one.name
			table = append(table, row)
		}
	}
	s.add(stem+"-answers.csv", []byte(report.CSV(table)), "answers, with the names to fill in")
}
