// Package settings keeps what a person likes: one TOML file in the folder of
// settings, and beside it, in the state folder, the sheets opened last. It is
// read leniently: what does not read is reported with its place and its
// default stands.
package settings

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"trivet/mechanics/sheet"
	"trivet/tui/xdg"
	"trivet/units"
)

// Settings are a person's. The zero value of a text leaves the choice to the
// program.
type Settings struct {
	Length, Force, Angle, Mass string // units of new sheets; "" for m, N, deg, kg
	Figures                    int    // of new sheets
	Up                         string // of new sheets in space: "+z" or "+y" ...
	Theme                      string // light, dark, plain, auto
	ASCII                      bool   // plain characters whatever the terminal says
}

// Defaults are the settings of a person who has none.
func Defaults() Settings { return Settings{Figures: 3, Up: "+z", Theme: "auto"} }

// Problem is something in the settings file that was passed over.
type Problem struct {
	File         string
	Line, Column int
	Msg, Hint    string
}

// String is "file:line:column: what, and what would do".
func (p Problem) String() string {
	s := p.File
	if p.Line > 0 {
		s += fmt.Sprintf(":%d:%d", p.Line, p.Column)
	}
	s += ": " + p.Msg
	if p.Hint != "" {
		s += ": " + p.Hint
	}
	return s
}

// file is the name of the settings file in its folder.
const file = "settings.toml"

// Path is where the settings of a session's environment are kept.
func Path(env []string) (string, error) {
	folder, err := xdg.Config(env)
	return filepath.Join(folder, file), err
}

// Load reads the settings. It never fails: what is missing or does not read is
// as in Defaults, and what was passed over is reported.
func Load(env []string) (Settings, []Problem) {
	path, err := Path(env)
	if err != nil {
		return Defaults(), nil // nobody keeps settings here
	}
	s, _, err := sheet.Load(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Defaults(), nil
	}
	if err != nil {
		return Defaults(), []Problem{inFile(path, err)}
	}
	return read(path, s)
}

func inFile(path string, err error) Problem {
	var text *sheet.Error
	var file *sheet.FileError
	switch {
	case errors.As(err, &text):
		return Problem{path, text.Line, text.Column, text.Msg, text.Hint}
	case errors.As(err, &file):
		return Problem{File: path, Msg: file.Msg, Hint: file.Hint}
	}
	return Problem{File: path, Msg: err.Error()}
}

// read takes the settings out of a text.
func read(path string, s *sheet.Sheet) (Settings, []Problem) {
	set := Defaults()
	var problems []Problem
	for _, t := range s.Tables {
		if !known(t.Name) {
			problems = append(problems, at(path, s, sheet.Ref{Table: t.Name}, 0,
				fmt.Sprintf("there is no table of settings %q", t.Name), suggest(t.Name, tableNames())))
			continue
		}
		for _, row := range t.Rows {
			ref := sheet.Ref{Table: t.Name, Row: row.Name}
			k := find(ref)
			if k == nil {
				problems = append(problems, at(path, s, sheet.Ref{Table: t.Name, Row: row.Name, Key: atName}, 0,
					fmt.Sprintf("there is no setting %q%s", row.Name, in(t.Name)), suggest(row.Name, keyNames(t.Name))))
				continue
			}
			c, ok := row.Cell("")
			if !ok || !c.Readable {
				problems = append(problems, at(path, s, ref, 0, fmt.Sprintf("%s is one value", row.Name), "write "+row.Name+" = "+k.example))
				continue
			}
			if msg, hint := k.set(&set, strings.TrimSpace(c.Text)); msg != "" {
				problems = append(problems, at(path, s, ref, 0, msg, hint))
			}
		}
	}
	return set, problems
}

func at(path string, s *sheet.Sheet, ref sheet.Ref, offset int, msg, hint string) Problem {
	line, column := s.Position(ref, offset)
	return Problem{path, line, column, msg, hint}
}

func in(table string) string {
	if table == "" {
		return ""
	}
	return " in [" + table + "]"
}

func suggest(wrong string, known []string) string {
	if s := units.Suggest(wrong, known); s != "" {
		return "did you mean " + strconv.Quote(s)
	}
	return "there are " + strings.Join(known, ", ")
}

// atName is a key that no row has, for the place of the row's name.
const atName = "\x00"

// Save writes the settings into the file as it is now, made where it is missing:
// comments, order and what is unknown stay, and a setting that is at its default
// and not in the file is not added. What is added stands in quotes, as all
// values of a sheet may.
func Save(env []string, set Settings) error {
	path, err := Path(env)
	if err != nil {
		return &sheet.FileError{Msg: err.Error(), Hint: "set HOME", Err: err}
	}
	s, stamp, err := sheet.Load(path)
	if errors.Is(err, fs.ErrNotExist) {
		s, err = sheet.Parse(nil)
	}
	if err != nil {
		return err // what does not read is a person's to mend, not ours to replace
	}
	next, err := write(s, set)
	if err != nil || next.Text() == s.Text() {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return &sheet.FileError{Msg: "the folder of settings cannot be made", Hint: "make " + filepath.Dir(path), Err: err}
	}
	_, err = sheet.Save(path, next, stamp, false)
	return err
}

func write(s *sheet.Sheet, set Settings) (*sheet.Sheet, error) {
	var edits []sheet.Edit
	defaults := Defaults()
	for i := range keys {
		k := &keys[i]
		ref := sheet.Ref{Table: k.table, Row: k.name}
		text := k.get(&set)
		row, there := s.Table(k.table).Row(k.name)
		c, plain := row.Cell("")
		switch {
		case there && plain && c.Readable && strings.TrimSpace(c.Text) == text:
		case there && plain && c.Readable && reads(k, c.Text) == text:
		case there && !plain, there && !c.Readable:
			edits = append(edits, sheet.DeleteRow{Table: k.table, Row: k.name}, k.add(text))
		case there:
			edits = append(edits, sheet.SetCell{Ref: ref, Text: text})
		case text != k.get(&defaults):
			edits = append(edits, k.add(text))
		}
	}
	next, _, err := s.ApplyAll(edits)
	return next, err
}

// reads gives what a text comes to as a setting: "03" is 3.
func reads(k *key, text string) string {
	set := Defaults()
	if msg, _ := k.set(&set, strings.TrimSpace(text)); msg != "" {
		return "\x00" // no setting's text
	}
	return k.get(&set)
}
