package call

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"trivet/mechanics/diag"
	"trivet/mechanics/grade"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// table reads a table of answers. Where it does not read it was said why.
func (c *Call) table(name string) (*grade.Table, bool) {
	var text []byte
	var err error
	if name == standardIn {
		text, err = io.ReadAll(io.LimitReader(c.Stdin, grade.MaxBytes+1))
	} else {
		text, err = readTable(name)
	}
	if err != nil {
		f := report.FileFault(name, err)
		if errors.Is(err, fs.ErrNotExist) {
			f.Hint = "check the name"
		}
		c.refuse(display(name), f)
		return nil, false
	}
	t, fault := grade.ReadTable(text)
	if fault != nil {
		c.refuse(display(name), fault)
		return nil, false
	}
	return t, true
}

// readTable reads no more of a file than is needed to refuse one that is too long.
func readTable(name string) ([]byte, error) {
	switch info, err := os.Stat(name); { // before opening, which would wait at a pipe
	case errors.Is(err, fs.ErrNotExist):
		return nil, &diag.Error{Msg: "there is no such file", Hint: "check the name", Err: err}
	case err == nil && info.IsDir():
		return nil, diag.New("this is a folder", "a table of answers in it")
	case err == nil && !info.Mode().IsRegular():
		return nil, diag.New("this is a pipe or a device, not a file", "- for standard input")
	}
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, grade.MaxBytes+1))
}

// columns reads the head of a table; what is left out of it costs no exit code.
func (c *Call) columns(key *grade.Key, t *grade.Table, name string) (*grade.Columns, bool) {
	cols, fault := key.Columns(t)
	if fault != nil {
		c.refuse(display(name), fault)
		return nil, false
	}
	for _, f := range cols.LeftOut {
		fmt.Fprintln(c.Stderr, f.In(display(name)))
	}
	var without []string
	for _, asked := range key.Asked() {
		if !slices.ContainsFunc(cols.Asked, func(a grade.Asked) bool { return a.Name == asked }) {
			without = append(without, asked)
		}
	}
	if len(without) > 0 {
		fmt.Fprintf(c.Stderr, "%s: the sheet also asks for %s, and the table has no such column\n", display(name), say.And(without...))
	}
	return cols, true
}

// markTable marks a table against one sheet; a column sheet may name variants beside it.
func (c *Call) markTable(class *grade.Class, key *grade.Key, name, answers string) bool {
	t, ok := c.table(answers)
	if !ok {
		return false
	}
	cols, ok := c.columns(key, t, answers)
	if !ok {
		return false
	}
	var folder *variants
	if t.Sheet >= 0 {
		if folder = c.open(filepath.Dir(name), class.Rule); folder == nil {
			return false
		}
		defer folder.root.Close()
		folder.keys[filepath.Base(name)] = key
		folder.together(t)
	}
	c.rows(class, t, cols, func(row grade.Row) (*grade.Key, error) {
		if row.Sheet != "" {
			return folder.key(row.Sheet)
		}
		return key, nil
	})
	return true
}

// markVariants marks a table whose rows name sheets of a folder.
func (c *Call) markVariants(name, answers string, rule grade.Rule) (class grade.Class, ok bool, err error) {
	class = grade.Class{Sheet: name, Rule: rule}
	t, ok := c.table(answers)
	if !ok {
		return class, false, nil
	}
	if t.Sheet < 0 {
		c.refuse(display(answers), &diag.Error{Place: diag.Place{Line: 1}, Msg: "the table has no column \"sheet\", which says whose variant is whose",
			Hint: "add it with the file of each student's variant, or name one sheet in place of the folder"})
		return class, false, nil
	}
	folder := c.open(name, rule)
	if folder == nil {
		return class, false, nil
	}
	defer folder.root.Close()
	var first *grade.Key
	why := errors.New("no row names one")
	for _, row := range t.Rows { // the head is read against the first variant that reads
		if row.Sheet != "" && first == nil {
			first, why = folder.key(row.Sheet)
		}
	}
	if first == nil {
		c.refuse(name, diag.New("no variant of the table can be read: "+why.Error(), ""))
		return class, false, nil
	}
	class.Title = first.Title()
	folder.together(t)
	cols, ok := c.columns(first, t, answers)
	if !ok {
		return class, false, nil
	}
	c.rows(&class, t, cols, func(row grade.Row) (*grade.Key, error) {
		if row.Sheet != "" {
			return folder.key(row.Sheet)
		}
		return nil, diag.New("the column \"sheet\" is blank", "the file of the variant")
	})
	for _, key := range folder.keys {
		if key != nil && key.Title() != class.Title {
			class.Title = "sheets in " + name
			break
		}
	}
	return class, true, nil
}

// rows marks each row against its sheet.
func (c *Call) rows(class *grade.Class, t *grade.Table, cols *grade.Columns, keyOf func(grade.Row) (*grade.Key, error)) {
	for _, a := range cols.Asked {
		class.Questions = append(class.Questions, a.Name)
	}
	for _, row := range t.Rows {
		s := grade.Student{Name: row.Name, Sheet: row.Sheet}
		typed, fault := cols.Typed(t, row)
		if fault != nil {
			s.Fault = fmt.Sprintf("line %d: %s", row.Line, fault.Text())
		} else if key, why := keyOf(row); key == nil {
			s.Fault = why.Error()
		} else {
			s.Marks, s.Notes = key.Mark(typed)
		}
		class.Students = append(class.Students, s)
	}
	c.noValues(class)
}

// variants are the sheets of a folder, each solved once. No name leads out of it.
type variants struct {
	root *os.Root
	rule grade.Rule
	keys map[string]*grade.Key
	whys map[string]error
}

func (c *Call) open(folder string, rule grade.Rule) *variants {
	root, err := os.OpenRoot(folder)
	if err != nil {
		c.refuse(folder, diag.New("the folder cannot be read: "+err.Error(), ""))
		return nil
	}
	return &variants{root, rule, map[string]*grade.Key{}, map[string]error{}}
}

// key is the key of a variant, or why there is none.
func (v *variants) key(name string) (*grade.Key, error) {
	if _, known := v.keys[name]; !known {
		v.keys[name], v.whys[name] = v.load(name)
	}
	return v.keys[name], v.whys[name]
}

// together reads the variants of a table, and lets their keys know of each other.
func (v *variants) together(t *grade.Table) {
	for _, row := range t.Rows {
		if row.Sheet != "" {
			_, _ = v.key(row.Sheet) // why there is none is said at its row
		}
	}
	grade.Variants(v.keys)
}

func (v *variants) load(name string) (*grade.Key, error) {
	if !filepath.IsLocal(name) {
		return nil, diag.New(fmt.Sprintf("the sheet %q is outside the folder", name), "one in the folder")
	}
	file := name
	info, err := v.root.Stat(file)
	if errors.Is(err, fs.ErrNotExist) && filepath.Ext(file) == "" {
		file += ".toml"
		info, err = v.root.Stat(file)
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, diag.New(fmt.Sprintf("there is no sheet %q in the folder", name), "check the name")
	case err != nil:
		return nil, diag.New(fmt.Sprintf("the sheet %q cannot be read in this folder", name), "a file in the folder")
	case !info.Mode().IsRegular():
		return nil, diag.New(fmt.Sprintf("%q is not a file", name), "a sheet")
	}
	f, err := v.root.Open(file)
	if err != nil {
		return nil, diag.New(fmt.Sprintf("the sheet %q may not be read", name), "ask its owner for permission to read it")
	}
	defer f.Close()
	s, err := sheet.Read(f)
	if err != nil {
		return nil, errors.New(report.FileFault(file, err).Short(file))
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		return nil, errors.New(errs[0].Placed(s).Short(file))
	}
	return grade.NewKey(s, statics.Solve(p), v.rule), nil
}
