package host

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"trivet/mechanics/diag"
	"trivet/mechanics/problemset"
	"trivet/mechanics/sheet"
	"trivet/tui/practice"
	"trivet/tui/record"
)

// assignment is a set that visitors practise, in place of a folder of sheets: each has own
// values where the set says so, and a record by key.
type assignment struct {
	set   *problemset.Set
	file  string // of the set, from the root
	state string // the folder of the record
	store record.Store
	most  int // keys that may have a record
}

// newAssignment reads a set and opens its record. Every sheet has to read and, where it has
// variants, to give one: a visitor could mend nothing.
func newAssignment(file, state string) (a *assignment, notice *diag.Error, err error) {
	a = &assignment{most: maxFolders} // anybody can make keys
	if a.file, err = filepath.Abs(file); err != nil {
		return nil, nil, err
	}
	if a.state, err = filepath.Abs(state); err != nil { // commands are done in another folder
		return nil, nil, err
	}
	s, _, err := sheet.Load(a.file)
	switch {
	case err != nil:
		return nil, nil, atFile(file, err)
	case !problemset.Is(s):
		return nil, nil, atFile(file, diag.New("this is a sheet, not a set of problems", "--private with the folder of the sheet"))
	}
	var faults []*diag.Error
	if a.set, faults = problemset.Read(s, a.file, time.Local); len(faults) > 0 {
		return nil, nil, atFile(file, faults[0])
	}
	for _, p := range a.set.Problems {
		if _, _, fault := (practice.Options{Set: a.set}).Personal(p); fault != "" {
			return nil, nil, atFile(file, diag.New(fmt.Sprintf("the problem %q cannot be practised: %s", p.Name, fault), ""))
		}
	}
	a.store, notice, err = record.Open(record.File(a.state))
	if err != nil {
		return nil, notice, atFile(record.File(a.state), err)
	}
	return a, notice, nil
}

// person is whom a visitor's record is of: at first by the comment of the key in its list,
// else by the key.
func (a *assignment) person(who person) (name string, err error) {
	name, err = a.store.Enrol(who.print, "")
	if !errors.Is(err, record.ErrUnknown) {
		return name, err
	}
	switch known, err := a.store.Persons(); {
	case err != nil:
		return "", err
	case len(known) >= a.most:
		return "", errors.New("the host has no room for the work of more visitors")
	}
	return a.store.Enrol(who.print, called(who))
}

func called(who person) string { return cmp.Or(who.note, who.print) }

// options are what a visitor practises. Values are drawn by the name under which the
// visitor became known, and the record goes by the key: another name changes neither.
func (a *assignment) options(who person) (*practice.Options, error) {
	name, err := a.person(who)
	if err != nil {
		return nil, err
	}
	seed, err := a.store.Seed(name)
	if err != nil {
		return nil, err
	}
	store := quota{record.ByKey(a.store, who.print, called(who))}
	return &practice.Options{Keeping: practice.Keeping{Store: store, Person: seed}, Set: a.set, Only: true}, nil
}

// quota is a record that takes no entry longer than anybody writes.
type quota struct{ record.Store }

const maxEntry = 4 << 10 // bytes

func (q quota) Add(person string, events ...record.Event) error {
	for _, e := range events {
		if len(e.Text) > maxEntry {
			return diag.New(fmt.Sprintf("an entry may have %d kB here", maxEntry>>10), "a shorter one")
		}
	}
	return q.Store.Add(person, events...)
}

// open tells whether the set is to be worked on now, so that nothing may give its answers.
func (a *assignment) open(now time.Time) bool { return a.set.Opened(now) && !a.set.Closed(now) }

// The verbs of a visitor of a set, besides those on standard input.
var (
	recordVerb = remoteVerb{name: "record", example: "record --format csv > my.csv", values: []string{"--format"}, noInput: true}
	pageVerb   = remoteVerb{name: "page", example: "page NAME --mine --as pdf > my.pdf", values: []string{"--as", "--by", "--date"}, flags: []string{"--mine", "--task"}, adds: []string{"--output=-"}, word: true, noInput: true}
)

// giving are the verbs that give answers.
var giving = []string{"solve", "check", "sweep"}

// verb reads a command of a visitor. While the set is open there is none that gives the
// answers of a sheet, whose ever it is.
func (a *assignment) verb(words []string, who person, now time.Time) (args []string, needs bool, why string) {
	name, rest := "", []string(nil)
	if len(words) > 0 {
		name, rest = words[0], words[1:]
	}
	switch {
	case name == recordVerb.name:
		if args, why = recordVerb.arguments(rest); why != "" {
			return nil, false, why
		}
		person, err := a.person(who)
		if err != nil {
			return nil, false, err.Error()
		}
		return slices.Concat([]string{"record", "--state=" + a.state}, args, []string{"--", person}), false, ""
	case name == pageVerb.name && !slices.Contains(rest, "-"):
		return a.page(rest, who, now)
	case a.open(now) && (slices.Contains(giving, name) || name == pageVerb.name && !slices.Contains(rest, "--task")):
		return nil, false, fmt.Sprintf("%s is off while the set %q is open, since it gives answers. Try: %s", name, a.title(), a.allowed())
	}
	return parsed(words, a.verbs(now))
}

// allowed are the commands there are while the set is open.
func (a *assignment) allowed() string {
	return "`page " + a.set.Problems[0].Name + " --mine --as pdf`, the same with --task, `page - --task --as pdf`, record, new or schema"
}

func (a *assignment) title() string { return cmp.Or(a.set.Title, a.set.Name()) }

// verbs are the verbs there are at a moment.
func (a *assignment) verbs(now time.Time) []remoteVerb {
	all := []remoteVerb{pageVerb, recordVerb}
	for _, v := range remoteVerbs {
		if a.open(now) && v.name == pageVerb.name {
			v.example = "page - --task --as pdf < sheet.toml > sheet.pdf"
		}
		if !a.open(now) || !slices.Contains(giving, v.name) {
			all = append(all, v)
		}
	}
	return all
}

// page is a page of a problem of the set, with the visitor's own values: the task, the own
// work, or where the set shows it by now the worked solution.
func (a *assignment) page(words []string, who person, now time.Time) (args []string, needs bool, why string) {
	args, why = pageVerb.arguments(words)
	if why != "" {
		return nil, false, why
	}
	at := slices.IndexFunc(args, func(w string) bool { return !strings.HasPrefix(w, "-") })
	p, ok := a.set.Problem(args[at])
	if !ok {
		var names []string
		for _, p := range a.set.Problems {
			names = append(names, p.Name)
		}
		return nil, false, fmt.Sprintf("the set has no problem %s. Try: %s", echo(args[at]), strings.Join(names, ", "))
	}
	args = slices.Delete(args, at, at+1)
	if !a.set.Opened(now) {
		return nil, false, fmt.Sprintf("the set %q opens on %s", a.title(), a.set.Opens.Format(moment))
	}
	person, err := a.person(who)
	if err != nil {
		return nil, false, err.Error()
	}
	if !slices.Contains(args, "--task") && !slices.Contains(args, "--mine") {
		if why := a.hidden(p, person, now); why != "" {
			return nil, false, why
		}
	}
	own := []string{"page", a.file, "--problem=" + p.Name, "--person=" + person, "--state=" + a.state}
	return slices.Concat(own, args, pageVerb.adds), false, ""
}

// moment is how a time is told.
const moment = "2 January 2006 at 15:04"

// hidden says why a person may not have the worked solution of a problem yet; "" where it
// is open.
func (a *assignment) hidden(p problemset.Problem, person string, now time.Time) string {
	events, err := a.store.Events(person)
	if err != nil {
		return err.Error()
	}
	done := slices.ContainsFunc(record.Summary(events), func(one record.Progress) bool {
		return one.Problem == record.Problem{Set: a.set.Name(), Name: p.Name} && !one.Done.IsZero()
	})
	if a.set.Shows(now, done) {
		return ""
	}
	when := "is not shown"
	switch a.set.Rules.Show {
	case problemset.ShowAnswered:
		when = "opens once you have answered it"
	case problemset.ShowClosed:
		when = "opens when the set closes, on " + a.set.Closes.Format(moment)
	}
	return fmt.Sprintf("the worked solution of %s %s. Try: `page %s --mine --as pdf`, or --task", p.Name, when, p.Name)
}
