package call

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/doc"
	"trivet/mechanics/printable"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/tui/record"
	"trivet/units"
)

// recordFormats are the forms of a record.
var recordFormats = []string{"text", "csv", "json"}

// asking is what a call of "trivet record" asks for.
type asking struct {
	state, format string
	change        string // of a person: one of changes, "" where the record is printed
	person        string // who changes
}

// changes are what can be done to a person of a record; each but the first with one more
// name.
var changes = []string{"forget", "rename", "merge"}

// Record is "trivet record". It exits with 0 where the record is printed or the person
// is deleted, CantDo where it can't be opened or has no such person.
func (c *Call) Record() *cobra.Command {
	var a asking
	persons := map[string]*string{}
	cmd := &cobra.Command{
		Use:   "record [NAME]",
		Short: "print what was practised, or delete it",
		Long: "Prints a person's record: which problems, each entry with its time and judgement, hints and points. Without NAME it prints everyone's; " +
			"at a desk that is your own.\n\n" +
			"The record is kept on this machine alone. --forget NAME deletes a person with every entry, at once and for good. " +
			"--rename OLD NEW gives a person another name, whose values of a set stay the same; --merge FROM INTO gives the entries and keys of one person to another.",
		Annotations: map[string]string{topicNote: "class"},
		Example:     "trivet record\ntrivet record --format csv > record.csv\ntrivet record --state /var/lib/trivet 'A. Student'\ntrivet record --forget 'A. Student'\ntrivet record --state /var/lib/trivet --rename 'SHA256:k3y' 'A. Student'",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return diag.New(fmt.Sprintf("the record of one person is printed, but %d are named", len(args)), "name one, or none for everyone's")
			}
			return nil
		},
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := a.changing(cmd, persons, args); err != nil {
				return err
			}
			if err := report.KnownFormat(a.format, "", recordFormats); err != nil {
				return err
			}
			return c.record(a, args)
		},
	}
	cmd.Flags().StringVar(&a.state, "state", "", "`FOLDER` in which a host keeps its record; without it the record of this desk")
	cmd.Flags().StringVar(&a.format, "format", "text", "`FORM` of the record: text, csv or json")
	persons["forget"] = cmd.Flags().String("forget", "", "`NAME` of a person to delete")
	persons["rename"] = cmd.Flags().String("rename", "", "`OLD` name of a person, with the new name behind it")
	persons["merge"] = cmd.Flags().String("merge", "", "`FROM`: the person whose entries and keys go to another, named behind it")
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(recordFormats, cobra.ShellCompDirectiveNoFileComp))
	_ = cmd.MarkFlagDirname("state")
	return cmd
}

// changing reads which change of a person is asked for, and refuses what does not go with
// it.
func (a *asking) changing(cmd *cobra.Command, persons map[string]*string, args []string) error {
	behind := map[string]string{"forget": "NAME", "rename": "OLD NEW", "merge": "FROM INTO"}
	for _, change := range changes {
		if !cmd.Flags().Changed(change) {
			continue
		}
		if a.change != "" {
			return diag.New(fmt.Sprintf("--%s and --%s are two changes", a.change, change), "one after the other")
		}
		a.change, a.person = change, *persons[change]
	}
	call := fmt.Sprintf("`%s record --%s %s`", Program, a.change, behind[a.change])
	switch {
	case a.change == "":
	case a.person == "":
		return diag.New(fmt.Sprintf("--%s needs the name of a person", a.change), call)
	case cmd.Flags().Changed("format"):
		return diag.New(fmt.Sprintf("--%s prints no record", a.change), call+" alone")
	case a.change == "forget" && len(args) > 0:
		return diag.New("--forget deletes one person and prints no record", call+" alone")
	case a.change != "forget" && (len(args) == 0 || args[0] == ""):
		return diag.New(fmt.Sprintf("--%s needs two names", a.change), call)
	}
	return nil
}

func (c *Call) record(a asking, names []string) error {
	store, file, err := c.recordOf(a.state)
	if store == nil {
		return err
	}
	defer store.Close()
	known, err := store.Persons()
	switch {
	case err != nil:
		c.refuse(file, err)
	case a.change == "forget":
		c.forget(store, file, a.person, known)
	case a.change == "rename":
		c.changed(file, store.Rename(a.person, names[0]), a.person, names[0], known, "is now called")
	case a.change == "merge":
		c.changed(file, store.Merge(a.person, names[0]), a.person, names[0], known, "is merged into")
	case len(names) == 1 && !slices.Contains(known, names[0]):
		c.refuse(file, nobody(names[0], known))
	case len(names) == 1:
		c.printRecord(store, file, a.format, names)
	default:
		c.printRecord(store, file, a.format, known)
	}
	return nil
}

// recordOf opens the record in a host's folder, that of this desk where none is named;
// looking makes none. The store is nil where the error, or what was said, says why.
func (c *Call) recordOf(state string) (_ record.Store, file string, err error) {
	file = record.File(state)
	if state == "" {
		if file, err = record.Desk(c.Env); err != nil {
			return nil, "", diag.New("there is no home folder for the record: "+err.Error(), "--state FOLDER")
		}
	}
	if _, err := os.Stat(file); err != nil {
		return none{}, file, nil
	}
	store, notice, err := record.Open(file)
	if notice != nil {
		fmt.Fprintln(c.Stderr, notice.Warning(file))
	}
	if err != nil {
		c.refuse(file, err)
		return nil, file, nil
	}
	return store, file, nil
}

// none is the record where there is none yet.
type none struct{}

func (none) Add(string, ...record.Event) error     { return errors.ErrUnsupported }
func (none) Persons() ([]string, error)            { return nil, nil }
func (none) Events(string) ([]record.Event, error) { return nil, nil }
func (none) Forget(string) ([]record.Event, error) { return nil, record.ErrUnknown }
func (none) Rename(string, string) error           { return record.ErrUnknown }
func (none) Merge(string, string) error            { return record.ErrUnknown }
func (none) Enrol(string, string) (string, error)  { return "", errors.ErrUnsupported }
func (none) Seed(person string) (string, error)    { return person, nil }
func (none) Close() error                          { return nil }

func nobody(name string, known []string) *diag.Error {
	try := units.Suggest(name, known)
	if try == "" && len(known) > 0 {
		try = say.Or(known[:min(len(known), maxNamed)]...)
	}
	return &diag.Error{Msg: fmt.Sprintf("the record has no person named %q", name), Hint: try, Err: record.ErrUnknown}
}

// maxNamed is how many persons a suggestion names.
const maxNamed = 5

func (c *Call) forget(store record.Store, file, name string, known []string) {
	gone, err := store.Forget(name)
	if errors.Is(err, record.ErrUnknown) {
		err = nobody(name, known)
	}
	if err != nil {
		c.refuse(file, err)
		return
	}
	count := func(what record.What) (n int) {
		for _, e := range gone {
			if e.What == what {
				n++
			}
		}
		return n
	}
	c.print(fmt.Sprintf("%s is deleted: %s and %s on %s\n", printable.Line(name), say.Count(count(record.Entry), "entry"),
		say.Count(count(record.Hint), "hint"), say.Count(len(record.Summary(gone)), "problem")))
}

// changed says that a person has another name or is part of another, or why not.
func (c *Call) changed(file string, err error, was, now string, known []string, says string) {
	switch {
	case errors.Is(err, record.ErrUnknown) && slices.Contains(known, was):
		err = nobody(now, known)
	case errors.Is(err, record.ErrUnknown):
		err = nobody(was, known)
	case errors.Is(err, record.ErrTaken) && was == now:
		err = diag.New("both names are of the same person", "two names")
	case errors.Is(err, record.ErrTaken):
		err = diag.New(fmt.Sprintf("the record has a person named %q already", now), "another name, or --merge where both are one person")
	}
	if err != nil {
		c.refuse(file, err)
		return
	}
	c.print(fmt.Sprintf("%s %s %s\n", printable.Line(was), says, printable.Line(now)))
}

// printRecord prints persons one after the other.
func (c *Call) printRecord(store record.Store, file, format string, persons []string) {
	rows := [][]string{strings.Split("person,set,problem,time,event,entry,kind,verdict,mistake,stage,points,of", ",")}
	for i, name := range persons {
		events, err := store.Events(name)
		if err != nil {
			c.refuse(file, err)
			return
		}
		switch format {
		case "csv":
			rows = append(rows, recordRows(name, events)...)
		case "json":
			c.print(string(recordObject(name, events)))
		default:
			c.print(strings.Repeat("\n", min(i, 1)) + doc.Text(recordDoc(name, events, time.Local)))
		}
	}
	switch {
	case format == "csv":
		c.print(report.CSV(rows))
	case format == "text" && len(persons) == 0:
		c.print("The record is empty.\n")
	}
}

// problemName is what a problem of a record is called.
func problemName(p record.Problem) string {
	if p.Set == "" {
		return p.Name
	}
	return p.Set + ", " + p.Name
}

// says is what a record tells of an event beside its time: an entry as it was typed, and
// what came of it.
func says(e record.Event) (entry, judgement string) {
	switch e.What {
	case record.Entry:
		if e.Mistake != "" {
			return e.Text, e.Verdict + ": " + e.Mistake
		}
		return e.Text, e.Verdict
	case record.Undone:
		return "", "the last entry was taken back"
	case record.Hint:
		return "", "hint, stage " + strconv.Itoa(e.Stage)
	case record.Shown:
		return "", "the solution was shown"
	case record.Done:
		return "", "done"
	}
	return e.Text, string(e.What)
}

// reached says in a sentence how far a person has come on a problem; times are those of
// loc.
func reached(p record.Progress, loc *time.Location) string {
	entries := say.Capital(say.Count(p.Entries, "entry"))
	hints := say.Count(p.Hints, "hint")
	switch {
	case p.Done.IsZero() && p.Shown:
		return fmt.Sprintf("%s and %s; the solution was shown.", entries, hints)
	case p.Done.IsZero():
		return fmt.Sprintf("%s and %s; not done.", entries, hints)
	}
	after := ""
	if p.Shown {
		after = " after the solution was shown"
	}
	points := "" // a sheet of no set has none
	if p.Of > 0 {
		points = ": " + units.Compact(p.Points) + " of " + pointsOf(p.Of)
	}
	return fmt.Sprintf("%s and %s; done on %s%s%s.", entries, hints, p.Done.In(loc).Format("2 January 2006 at 15:04"), after, points)
}

func pointsOf(of float64) string {
	if of == 1 {
		return "1 point"
	}
	return units.Compact(of) + " points"
}

func recordDoc(person string, events []record.Event, loc *time.Location) *doc.Doc {
	d := &doc.Doc{Title: person}
	for _, p := range record.Summary(events) {
		table := doc.NewTable("time", "entry", "judgement")
		for _, e := range events {
			if e.Problem == p.Problem {
				entry, judgement := says(e)
				table.Add(doc.Inline{Words: e.At.In(loc).Format(time.DateTime)}, doc.Inline{Words: entry}, doc.Inline{Words: judgement})
			}
		}
		d.Add(doc.Section{Title: problemName(p.Problem), Blocks: []doc.Block{doc.Say(reached(p, loc)), table}})
	}
	return d
}

func recordRows(person string, events []record.Event) (rows [][]string) {
	for _, e := range events {
		row := []string{person, e.Problem.Set, e.Problem.Name, stamp(e.At), string(e.What), e.Text, e.Kind, e.Verdict, e.Mistake, "", "", ""}
		switch e.What {
		case record.Hint:
			row[9] = strconv.Itoa(e.Stage)
		case record.Done:
			row[10], row[11] = units.Compact(e.Points), units.Compact(e.Of)
		}
		rows = append(rows, row)
	}
	return rows
}

func stamp(t time.Time) string { return t.UTC().Format(time.RFC3339) }

// The record of a person in JSON. A time that has not come is null.
type (
	personJSON struct {
		Person   string        `json:"person"`
		Problems []problemJSON `json:"problems"`
	}
	problemJSON struct {
		Set     string      `json:"set"`
		Problem string      `json:"problem"`
		Hints   int         `json:"hints"`
		Shown   bool        `json:"shown"`
		Done    *string     `json:"done"`
		Points  float64     `json:"points"`
		Of      float64     `json:"of"`
		Events  []eventJSON `json:"events"`
	}
	eventJSON struct {
		Time    string `json:"time"`
		Event   string `json:"event"`
		Entry   string `json:"entry,omitempty"`
		Kind    string `json:"kind,omitempty"`
		Verdict string `json:"verdict,omitempty"`
		Mistake string `json:"mistake,omitempty"`
		Stage   int    `json:"stage,omitempty"`
	}
)

func recordObject(person string, events []record.Event) []byte {
	o := personJSON{Person: person, Problems: []problemJSON{}}
	for _, p := range record.Summary(events) {
		one := problemJSON{Set: p.Set, Problem: p.Name, Hints: p.Hints, Shown: p.Shown, Points: p.Points, Of: p.Of}
		if !p.Done.IsZero() {
			done := stamp(p.Done)
			one.Done = &done
		}
		for _, e := range events {
			if e.Problem == p.Problem {
				one.Events = append(one.Events, eventJSON{stamp(e.At), string(e.What), e.Text, e.Kind, e.Verdict, e.Mistake, e.Stage})
			}
		}
		o.Problems = append(o.Problems, one)
	}
	text, err := json.MarshalIndent(o, "", "  ")
	if err != nil { // a number that is not finite: our mistake, not the user's
		panic("call: " + err.Error())
	}
	return append(printable.JSON(text), '\n')
}
