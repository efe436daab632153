package call

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/practice"
	"trivet/tui/record"
	"trivet/units"
)

// personal says of whom a page is, and of which problem of a set.
type personal struct {
	mine    bool   // the person's own work, to hand in
	problem string // of a set; "" for all
	person  string // by the name in the record; "" for who sits at this desk
	state   string // the folder of the host that keeps the record; "" for this desk

	read func(path string) (*sheet.Sheet, error) // of a set that comes with the program
}

func (o *personal) flags(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&o.mine, "mine", false, "your own work from the record, to hand in: each entry with its judgement, and no solution")
	cmd.Flags().StringVar(&o.problem, "problem", "", "`NAME` of the one problem of a set that the page is of")
	cmd.Flags().StringVar(&o.person, "person", "", "`NAME` of whose work, or whose values of the problem, are meant, as the record has it")
	cmd.Flags().StringVar(&o.state, "state", "", "`FOLDER` in which a host keeps its record; without it the record of this desk")
	_ = cmd.MarkFlagDirname("state")
}

// set is the set that a page is of, nil for a sheet; with one's own work it may be one that
// comes with the program. Where ok is false it was said what is wrong with it.
func (o *personal) set(c *Call, name string) (set *problemset.Set, ok bool) {
	set, s := c.set(name)
	if set != nil || s != nil {
		return set, set != nil
	}
	if comes, ok := practice.BuiltIn(name); o.mine && ok && !exists(name) {
		o.read = comes.Read
		return comes.Set, true
	}
	return nil, true
}

// check refuses what does not go together; of is what the page is of.
func (o *personal) check(opt report.PageOptions, isSet bool) error {
	switch {
	case o.mine && (opt.Task || opt.Field):
		return diag.New("a page with one's own work is neither a task to hand out nor a field page", "leave out --task and --field, or --mine")
	case o.problem != "" && !isSet:
		return diag.New("--problem names a problem of a set, and this is a sheet", "leave it out, or name the file of the set")
	case !o.mine && o.problem == "" && (o.person != "" || o.state != ""):
		return diag.New("--person and --state say whose work or values are meant, and this page has neither", "--mine, or --problem with a set")
	}
	return nil
}

// options are what a person practises, with the record that keeps it; the values of a
// variant are those of the person's first name. Where ok is false it was said why.
func (c *Call) practised(o personal, set *problemset.Set) (opt practice.Options, file string, ok bool, err error) {
	store, file, err := c.recordOf(o.state)
	if store == nil {
		return opt, file, false, err
	}
	opt = practice.Options{Keeping: practice.Keeping{Store: store, Person: o.person}, Set: set, Read: o.read}
	if o.person == "" {
		opt.Person = record.Self(c.Env)
		return opt, file, true, nil
	}
	known, err := store.Persons()
	if err == nil && !slices.Contains(known, o.person) {
		err = nobody(o.person, known)
	}
	if err != nil {
		store.Close()
		c.refuse(file, err)
		return opt, file, false, nil
	}
	return opt, file, true, nil
}

// seeded is the person's own sheet of a problem of a set, solved.
func (c *Call) seeded(opt practice.Options, p problemset.Problem) (r readSheet) {
	s, solution, fault := opt.Personal(p)
	if fault != "" {
		c.refuse(opt.Set.Path, errors.New(fault))
		return r
	}
	return readSheet{title: solution.Problem.Title, sheet: s, solution: solution}
}

// errNothing says that a person has not worked on a problem.
var errNothing = errors.New("nothing was practised")

// ownWork is what a person has done on a problem. Where that is nothing the error is
// errNothing.
func ownWork(opt practice.Options, task practice.Task, r readSheet, loc *time.Location) (*report.Own, error) {
	events, err := opt.Store.Events(opt.Person)
	if err != nil {
		return nil, err
	}
	all := record.Summary(events)
	i := slices.IndexFunc(all, func(p record.Progress) bool { return p.Problem == task.Of })
	if i < 0 {
		return nil, errNothing
	}
	w, err := practice.Begin(opt.Keeping, task, r.solution)
	if err != nil {
		return nil, err
	}
	own := &report.Own{Reached: reached(all[i], loc)}
	for _, item := range w.State().Items {
		if item.Hint == nil {
			own.Entries = append(own.Entries, item.Judgement)
		}
	}
	return own, nil
}

// workOn is ownWork, and says where there is none.
func (c *Call) workOn(o personal, opt practice.Options, task practice.Task, r readSheet, file, practised string) *report.Own {
	own, err := ownWork(opt, task, r, time.Local)
	switch {
	case errors.Is(err, errNothing):
		try := "`" + Program + " practise " + practised + "`"
		if o.state != "" { // it is a host's, whose paths mean nothing to a visitor
			file, try = "record", "practise it first"
		}
		err = diag.New(fmt.Sprintf("the record has nothing of %s on %q", opt.Person, task.Of.Name), try)
	case err == nil:
		own.Name = o.person
		return own
	}
	c.refuse(file, err)
	return nil
}

// problemOf is a problem of a set by its name.
func problemOf(set *problemset.Set, name string) (problemset.Problem, error) {
	p, ok := set.Problem(name)
	if ok {
		return p, nil
	}
	names := say.Each(set.Problems, func(p problemset.Problem) string { return p.Name })
	try := units.Suggest(name, names)
	if try == "" {
		try = say.Or(names...)
	}
	return p, diag.New(fmt.Sprintf("the set has no problem %q", name), try)
}

// pageSubject is the sheet that a page is of, and the person's own work where that is
// asked for. The solution is nil where it was said why there is no page.
func (c *Call) pageSubject(name string, set *problemset.Set, o personal) (r readSheet, own *report.Own, err error) {
	switch {
	case set == nil && !o.mine:
		return c.read(name), nil, nil
	case name == standardIn:
		return r, nil, diag.New("the record has no work on standard input", "the file of the sheet by its name")
	}
	var p problemset.Problem
	if set != nil {
		if p, err = problemOf(set, o.problem); err != nil {
			return r, nil, err
		}
	}
	if !o.mine && o.person == "" {
		return c.read(set.File(p)), nil, nil
	}
	opt, file, ok, err := c.practised(o, set)
	if !ok {
		return r, nil, err
	}
	defer opt.Store.Close()
	var task practice.Task
	if set == nil {
		r = c.read(name)
		task = practice.Alone(practice.Name(name, ""), r.sheet)
	} else {
		r = c.seeded(opt, p)
		task = practice.InSet(set, p, r.sheet)
	}
	if r.solution == nil || !o.mine {
		return r, nil, nil
	}
	if own = c.workOn(o, opt, task, r, file, name); own == nil {
		r.solution = nil
	}
	return r, own, nil
}

// ownPages writes a page for each problem of a set on which a person has worked.
func (c *Call) ownPages(set *problemset.Set, folder, as string, page report.PageOptions, o personal, force bool) error {
	opt, file, ok, err := c.practised(o, set)
	if !ok {
		return err
	}
	defer opt.Store.Close()
	out := classSet{folder: folder, force: force}
	for i, p := range set.Problems {
		r := c.seeded(opt, p)
		if r.solution == nil {
			return nil
		}
		own, err := ownWork(opt, practice.InSet(set, p, r.sheet), r, time.Local)
		switch {
		case errors.Is(err, errNothing):
			continue
		case err != nil:
			c.refuse(file, err)
			return nil
		}
		own.Name = o.person
		page := page
		page.Task, page.Own, page.File, page.Sheet = true, own, p.Name, r.sheet
		out.addMade(p.Name+"."+as, func() ([]byte, error) { return report.Page(as, r.solution, page) }, "the work to hand in")
		out.files[len(out.files)-1].before = progress(set, i, 1)
	}
	if len(out.files) == 0 {
		c.refuse(file, diag.New(fmt.Sprintf("the record has nothing of %s on the set %q", opt.Person, set.Name()), "`"+Program+" practise "+set.Path+"`"))
	} else if c.writeSet(out) {
		c.listed(out)
	}
	return nil
}
