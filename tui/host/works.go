package host

import (
	"cmp"
	"errors"
	"fmt"
	"path/filepath"

	"trivet/mechanics/diag"
	"trivet/tui/host/door"
	"trivet/tui/practice"
	"trivet/tui/record"
)

// works is the record of what visitors practise, by their keys.
type works struct {
	state string // the folder of the record, from the root
	store record.Store
	most  int // keys that may have a record
}

// openWorks opens the record of a host.
func openWorks(state string) (w *works, notice *diag.Error, err error) {
	w = &works{most: maxFolders} // anybody can make keys
	if w.state, err = filepath.Abs(state); err != nil {
		return nil, nil, err
	}
	if w.store, notice, err = record.Open(record.File(w.state)); err != nil {
		return nil, notice, atFile(record.File(w.state), err)
	}
	return w, notice, nil
}

// person is whom a visitor's record is of: at first by the comment of the key in its list,
// else by the key.
func (w *works) person(who door.Person) (name string, err error) {
	name, err = w.store.Enrol(who.Print, "")
	if !errors.Is(err, record.ErrUnknown) {
		return name, err
	}
	switch known, err := w.store.Persons(); {
	case err != nil:
		return "", err
	case len(known) >= w.most:
		return "", errors.New("the host has no room for the work of more visitors")
	}
	return w.store.Enrol(who.Print, called(who))
}

func called(who door.Person) string { return cmp.Or(who.Note, who.Print) }

// keeping is where a visitor's practice is kept: by the key, so that another name changes neither
// the record nor the values.
func (w *works) keeping(who door.Person) (practice.Keeping, error) {
	name, err := w.person(who)
	if err != nil {
		return practice.Keeping{}, err
	}
	return practice.Keeping{Store: quota{record.ByKey(w.store, who.Print, called(who))}, Person: name}, nil
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
