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
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
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

// file is the name of the settings file in its folder.
const file = "settings.toml"

// Path is where the settings of a session's environment are kept.
func Path(env []string) (string, error) {
	folder, err := xdg.Config(env)
	return filepath.Join(folder, file), err
}

// Load reads the settings. It never fails: what is missing or does not read is
// as in Defaults, and what was passed over is said, on a line each.
func Load(env []string) (set Settings, problems []string) {
	path, err := Path(env)
	if err != nil {
		return Defaults(), nil // nobody keeps settings here
	}
	s, _, err := sheet.Load(path)
	if errors.Is(err, fs.ErrNotExist) {
		return Defaults(), nil
	}
	if err != nil {
		return Defaults(), []string{diag.Of(err).Short(path)}
	}
	set, errs := read(s)
	for _, e := range errs {
		problems = append(problems, e.Short(path))
	}
	return set, problems
}

// read takes the settings out of a text.
func read(s *sheet.Sheet) (set Settings, errs []*diag.Error) {
	set = Defaults()
	fail := func(at diag.Place, e *diag.Error) {
		e.Place = at
		errs = append(errs, e)
	}
	for _, t := range s.Tables {
		if !known(t.Name) {
			fail(s.NamePlace(sheet.Ref{Table: t.Name}), diag.New(fmt.Sprintf("unknown table %q", t.Name), suggest(t.Name, tableNames())))
			continue
		}
		for _, row := range t.Rows {
			ref := sheet.Ref{Table: t.Name, Row: row.Name}
			k := find(ref)
			if k == nil {
				fail(s.NamePlace(ref), diag.New(fmt.Sprintf("unknown setting %q%s", row.Name, in(t.Name)), suggest(row.Name, keyNames(t.Name))))
				continue
			}
			c, ok := row.Cell("")
			if !ok || !c.Readable {
				fail(s.Place(ref, diag.Span{}), diag.New(row.Name+" is a single value", row.Name+" = "+k.example))
				continue
			}
			if err := k.set(&set, strings.TrimSpace(c.Text)); err != nil {
				fail(s.Place(ref, diag.Span{}), err)
			}
		}
	}
	return set, errs
}

func in(table string) string {
	if table == "" {
		return ""
	}
	return " in [" + table + "]"
}

func suggest(wrong string, known []string) string {
	if s := units.Suggest(wrong, known); s != "" {
		return s
	}
	return say.Or(known...)
}
