// Package record keeps what persons have done on problems: every entry with its
// judgement, every hint, and what was reached. It judges nothing itself. What Add has
// taken survives the end of the process, whatever ends it.
package record

import (
	"cmp"
	"errors"
	"path/filepath"
	"slices"
	"time"

	"trivet/mechanics/problemset"
	"trivet/tui/xdg"
)

// Store keeps the events of persons. Its methods may be called at once from several
// goroutines, and several processes may have the same record open. An error that a
// person can do something about is a *diag.Error.
type Store interface {
	// Add adds events of a person, who need not be known yet: all of them or none. When it
	// returns nil they are kept, also where the process is killed the next moment.
	Add(person string, events ...Event) error
	// Persons are all who are known, in the order of their names.
	Persons() ([]string, error)
	// Events are those of a person in the order in which they were added, none where the
	// person is not known.
	Events(person string) ([]Event, error)
	// Forget deletes a person with all events and keys and gives the events, or ErrUnknown.
	Forget(person string) ([]Event, error)
	// Rename gives a person another name, or ErrUnknown, or ErrTaken where another has it.
	Rename(was, name string) error
	// Merge adds the events and keys of one person to those of another, who keeps name and
	// seed; the first is no longer known. It is ErrUnknown where either is not, ErrTaken
	// where both are the same.
	Merge(from, into string) error
	// Enrol is the person to whom a key belongs. A new key is that of a new person, called
	// name, or name and the key where another is called so; without a name it is ErrUnknown.
	Enrol(key, name string) (person string, err error)
	// Seed is what a person's values are drawn by: the name under which the person became
	// known, which no other name changes; that name itself where nobody is known by it.
	Seed(person string) (string, error)
	Close() error
}

// What stands in the way of a change of persons.
var (
	ErrUnknown = errors.New("the record has no such person")
	ErrTaken   = errors.New("the record has a person of this name already")
)

// byKey is a record as one sees it who comes with a key.
type byKey struct {
	Store
	key, name string
}

// ByKey is a store in which there is one person: the one to whom a key belongs, called name
// at first. Names given to Add and Events mean nothing to it, so that who is renamed
// meanwhile goes on in the same record.
func ByKey(s Store, key, name string) Store { return byKey{s, key, name} }

func (k byKey) Add(_ string, events ...Event) error {
	person, err := k.Enrol(k.key, k.name)
	if err != nil {
		return err
	}
	return k.Store.Add(person, events...)
}

func (k byKey) Events(string) ([]Event, error) {
	person, err := k.Enrol(k.key, k.name)
	if err != nil {
		return nil, err
	}
	return k.Store.Events(person)
}

func (k byKey) Seed(string) (string, error) {
	person, err := k.Enrol(k.key, k.name)
	if err != nil {
		return "", err
	}
	return k.Store.Seed(person)
}

// Problem is what was worked on: a problem of a set, or a sheet, where Set is "".
type Problem struct{ Set, Name string }

// What is a kind of event. A record that a newer program wrote may have others.
type What string

// The kinds of event.
const (
	Entry  What = "entry"  // a line was entered, and judged
	Undone What = "undone" // the last entry was taken back; it stays in the record
	Hint   What = "hint"   // a hint was given
	Shown  What = "shown"  // the solution was shown, which ends practice
	Done   What = "done"   // all that is needed was right
)

// Event is one thing that a person has done. The strings of a judgement are the tutor's.
type Event struct {
	At      time.Time // kept to the microsecond
	Problem Problem
	What    What

	Text    string // of an entry, as typed; of one taken back; what a hint said
	Kind    string // of an entry: equation, value ...
	Verdict string // of an entry: right, wrong ...
	Mistake string // the kind of mistake of a wrong entry, "" where none is named

	Stage int // of a hint, from 1

	Points, Of float64 // of Done: the points reached, and those of the problem

	Sheet string // tells the problem as it was from others of its name: with other numbers, or edited
}

// Progress is how far a person has come on a problem.
type Progress struct {
	Problem
	problemset.Result
	Entries     int
	First, Last time.Time // of all events
	Points, Of  float64   // once it is done
}

// Summary gathers events by problem, in the order in which problems were begun. What
// follows the first time that a problem was done changes neither result nor points.
func Summary(events []Event) []Progress {
	var out []Progress
	for _, e := range events {
		i := slices.IndexFunc(out, func(p Progress) bool { return p.Problem == e.Problem })
		if i < 0 {
			i = len(out)
			out = append(out, Progress{Problem: e.Problem, First: e.At})
		}
		p := &out[i]
		p.Last = e.At
		done := !p.Done.IsZero()
		switch {
		case e.What == Entry:
			p.Entries++
		case done:
		case e.What == Hint:
			p.Hints++
		case e.What == Shown:
			p.Shown = true
		case e.What == Done:
			p.Done, p.Points, p.Of = e.At, e.Points, e.Of
		}
	}
	return out
}

// File is the record of a host in its state folder.
func File(folder string) string { return filepath.Join(folder, "record.db") }

// Desk is the record of a person at a desk, by the session's environment.
func Desk(env []string) (string, error) {
	folder, err := xdg.Data(env)
	return File(folder), err
}

// Self is what a person at a desk goes by in the record, by the session's environment.
func Self(env []string) string {
	return cmp.Or(xdg.User(env), "me")
}
