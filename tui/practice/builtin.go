package practice

import (
	"fmt"
	"io/fs"
	"time"

	"trivet/fixtures"
	"trivet/mechanics/problemset"
	"trivet/mechanics/sheet"
	"trivet/tui/record"
)

// BuiltIn is a set that comes with the program, by its name; ok is false where there is none.
func BuiltIn(name string) (o Options, ok bool) {
	for _, of := range fixtures.Sets() {
		if of.Name != name {
			continue
		}
		text, err := sheet.Parse([]byte(of.Text))
		if err != nil {
			return o, false // a test holds that all read
		}
		o.Set, _ = problemset.Read(text, of.File, time.Local)
		o.Read = func(path string) (*sheet.Sheet, error) {
			for _, s := range of.Sheets {
				if s.File == path {
					return sheet.Parse([]byte(s.Text))
				}
			}
			return nil, fs.ErrNotExist
		}
		return o, true
	}
	return o, false
}

// FromFile is a set in a file; set is nil where the file has none that reads.
func FromFile(path string) (set *problemset.Set) {
	s, _, err := sheet.Load(path)
	if err != nil || !problemset.Is(s) {
		return nil
	}
	if set, faults := problemset.Read(s, path, time.Local); len(faults) == 0 {
		return set
	}
	return nil
}

// Standing says how far a person has come: of each set that comes with the program by its name, of
// those in files by their paths, with until when they are open.
func (k Keeping) Standing(paths []string) (says map[string]string) {
	var events []record.Event
	if k.Store != nil {
		events, _ = k.Store.Events(k.Person) // what cannot be read is not told here
	}
	done := map[string]int{}
	begun := map[string]bool{}
	for _, p := range record.Summary(events) {
		begun[p.Set] = true
		if !p.Done.IsZero() {
			done[p.Set]++
		}
	}
	says = map[string]string{}
	for _, path := range paths {
		if set := FromFile(path); set != nil {
			says[path] = fmt.Sprintf("%d of %d done, %s", done[set.Name()], len(set.Problems), times(set, time.Now()))
		}
	}
	for _, of := range fixtures.Sets() {
		if begun[of.Name] {
			says[of.Name] = fmt.Sprintf("%d of %d done", done[of.Name], len(of.Sheets))
		}
	}
	return says
}
