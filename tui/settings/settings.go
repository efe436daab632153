// Package settings keeps what a person likes: one TOML file in the folder of
// settings, and beside it, in the state folder, the sheets opened last. It is
// read leniently: what does not read is reported with its place and its
// default stands.
package settings

import (
	"errors"
	"fmt"
	"io/fs"
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
	Screen                     string // full, or linear: lines of text for a screen reader
}

// Defaults are the settings of a person who has none.
func Defaults() Settings { return Settings{Figures: 3, Up: "+z", Theme: "auto", Screen: "full"} }

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
