package host

import (
	"cmp"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"trivet/mechanics/diag"
	"trivet/mechanics/problemset"
	"trivet/mechanics/sheet"
	"trivet/tui/host/door"
	"trivet/tui/host/verb"
	"trivet/tui/practice"
	"trivet/tui/record"
)

// assignment is a set that visitors practise, in place of a folder of sheets: each has own
// values where the set says so, and a record by key.
type assignment struct {
	*works
	set  *problemset.Set
	file string // of the set, from the root
}

// newAssignment reads a set and opens its record. Every sheet has to read and, where it has
// variants, to give one: a visitor could mend nothing.
func newAssignment(file, state string) (a *assignment, notice *diag.Error, err error) {
	a = &assignment{}
	if a.file, err = filepath.Abs(file); err != nil { // commands are done in another folder
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
	a.works, notice, err = openWorks(state)
	return a, notice, err
}

// options are what a visitor practises.
func (a *assignment) options(who door.Person) (*practice.Options, error) {
	keep, err := a.keeping(who)
	return &practice.Options{Keeping: keep, Set: a.set}, err
}

// open tells whether the set is to be worked on now, so that nothing may give its answers.
func (a *assignment) open(now time.Time) bool { return a.set.Opened(now) && !a.set.Closed(now) }

// The verbs of a visitor of a set, besides those on standard input.
var (
	recordVerb = verb.Verb{Name: "record", Example: "record --format csv > my.csv", Values: []string{"--format"}, NoInput: true}
	pageVerb   = verb.Verb{Name: "page", Example: "page NAME --mine --as pdf > my.pdf", Values: []string{"--as", "--by", "--date"}, Flags: []string{"--mine", "--task"}, Adds: []string{"--output=-"}, Word: true, NoInput: true}
)

// giving are the verbs that give answers.
var giving = []string{"solve", "check", "sweep"}

// verb reads a command of a visitor. While the set is open there is none that gives the
// answers of a sheet, whose ever it is.
func (a *assignment) verb(words []string, who door.Person, now time.Time) (args []string, needs bool, why string) {
	name, rest := "", []string(nil)
	if len(words) > 0 {
		name, rest = words[0], words[1:]
	}
	switch {
	case name == recordVerb.Name:
		if args, why = recordVerb.Arguments(rest); why != "" {
			return nil, false, why
		}
		person, err := a.person(who)
		if err != nil {
			return nil, false, err.Error()
		}
		return slices.Concat([]string{"record", "--state=" + a.state}, args, []string{"--", person}), false, ""
	case name == pageVerb.Name && !slices.Contains(rest, "-"):
		return a.page(rest, who, now)
	case a.open(now) && slices.Contains(giving, name):
		return nil, false, a.off(name)
	}
	args, needs, why = verb.Parse(words, a.verbs(now))
	if why == "" && name == pageVerb.Name && a.open(now) && !slices.Contains(args, "--task") { // as it was read: the value of a flag is none
		return nil, false, a.off(name)
	}
	return args, needs, why
}

// off says that a verb is off.
func (a *assignment) off(verb string) string {
	return fmt.Sprintf("%s is off while the set %q is open, since it gives answers. Try: %s", verb, a.title(), a.allowed())
}

// allowed are the commands there are while the set is open.
func (a *assignment) allowed() string {
	return "`page " + a.set.Problems[0].Name + " --mine --as pdf`, the same with --task, `page - --task --as pdf`, record, new or schema"
}

func (a *assignment) title() string { return cmp.Or(a.set.Title, a.set.Name()) }

// verbs are the verbs there are at a moment.
func (a *assignment) verbs(now time.Time) []verb.Verb {
	all := []verb.Verb{pageVerb, recordVerb}
	for _, v := range verb.All {
		if a.open(now) && v.Name == pageVerb.Name {
			v.Example = "page - --task --as pdf < sheet.toml > sheet.pdf"
		}
		if !a.open(now) || !slices.Contains(giving, v.Name) {
			all = append(all, v)
		}
	}
	return all
}

// page is a page of a problem of the set, with the visitor's own values: the task, the own
// work, or where the set shows it by now the worked solution.
func (a *assignment) page(words []string, who door.Person, now time.Time) (args []string, needs bool, why string) {
	args, why = pageVerb.Arguments(words)
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
		return nil, false, fmt.Sprintf("the set has no problem %s. Try: %s", door.Echo(args[at]), strings.Join(names, ", "))
	}
	args = slices.Delete(args, at, at+1)
	if !a.set.Opened(now) {
		return nil, false, fmt.Sprintf("the set %q opens on %s", a.title(), a.set.Opens.Format(problemset.Stamp))
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
	return slices.Concat(own, args, pageVerb.Adds), false, ""
}

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
	return fmt.Sprintf("%s. Try: `page %s --mine --as pdf`, or --task", a.set.Hidden(), p.Name)
}
