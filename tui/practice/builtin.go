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

// Standing says of each set that comes with the program how far a person has come.
func (k Keeping) Standing() (says map[string]string) {
	if k.Store == nil {
		return nil
	}
	events, err := k.Store.Events(k.Person)
	if err != nil {
		return nil
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
	for _, of := range fixtures.Sets() {
		if begun[of.Name] {
			says[of.Name] = fmt.Sprintf("%d of %d done", done[of.Name], len(of.Sheets))
		}
	}
	return says
}
