package settings

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// Save writes what differs between two states of a session's settings into the
// file as it is now, made where it is missing. All else in the file stays:
// comments, order, what is unknown or does not read, and what another session
// has changed meanwhile. What is added stands in quotes, as all values of a
// sheet may.
func Save(env []string, was, set Settings) error {
	path, err := Path(env)
	if err != nil {
		return &diag.Error{Msg: err.Error(), Hint: "set HOME to your home folder", Err: err}
	}
	s, stamp, err := sheet.Load(path)
	if errors.Is(err, fs.ErrNotExist) {
		s, err = sheet.Parse(nil)
	}
	if err != nil {
		return err // what does not read is a person's to mend, not ours to replace
	}
	next, err := write(s, was, set)
	if err != nil || next.Text() == s.Text() {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return &diag.Error{Msg: "the settings folder cannot be made", Hint: "make " + filepath.Dir(path) + " yourself", Err: err}
	}
	_, err = sheet.Save(path, next, stamp, false)
	return err
}

func write(s *sheet.Sheet, was, set Settings) (*sheet.Sheet, error) {
	var edits []sheet.Edit
	for i := range keys {
		k := &keys[i]
		text := k.get(&set)
		if text == k.get(&was) {
			continue
		}
		table := slices.ContainsFunc(s.Tables, func(t sheet.Table) bool { return t.Name == k.name })
		row, there := s.Table(k.table).Row(k.name)
		c, plain := row.Cell("")
		switch {
		case k.table == "" && table, there && !plain, there && !c.Readable:
			return nil, diag.New(k.name+" has more than one value in the settings file", k.name+" = "+k.example)
		case there && reads(k, c.Text) == text:
		case there:
			edits = append(edits, sheet.SetCell{Ref: sheet.Ref{Table: k.table, Row: k.name}, Text: text})
		case text != "":
			edits = append(edits, k.add(text))
		}
	}
	next, err := s.Apply(edits...)
	return next, err
}

// reads gives what a text comes to as a setting: "03" is 3.
func reads(k *key, text string) string {
	set := Defaults()
	if k.set(&set, strings.TrimSpace(text)) != nil {
		return "\x00" // no setting's text
	}
	return k.get(&set)
}
